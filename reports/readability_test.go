package reports

import (
	"math"
	"strings"
	"testing"
	"unicode"
)

// grade is the Flesch-Kincaid grade level: 0.39 x words a sentence + 11.8 x
// syllables a word - 15.59.
//
// Source: Kincaid, Fishburne, Rogers and Chissom 1975, Derivation of new
// readability formulas for Navy enlisted personnel (from memory).
//
// A word is a run of letters, apostrophes and hyphens, or a number, which counts
// as one syllable, as common counters have it (common practice, no source). A
// full stop, question mark or exclamation mark ends a sentence.
func grade(text string) float64 {
	words, syllableCount, sentences := 0, 0, 0
	for _, raw := range strings.Fields(text) {
		word := strings.TrimFunc(raw, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
		if word != "" {
			words++
			syllableCount += syllables(word)
		}
		if strings.ContainsAny(raw[len(raw)-1:], ".?!") {
			sentences++
		}
	}
	return 0.39*float64(words)/float64(sentences) + 11.8*float64(syllableCount)/float64(words) - 15.59
}

// asSpoken are units by the syllables of the words that they stand for.
var asSpoken = map[string]int{"kcal": 5, "kj": 4, "kg": 3, "ml": 4, "g": 1}

// syllables counts runs of vowels (a, e, i, o, u, y), less a silent e or es or
// ed at the end, at least one. Each part of a hyphenated word counts by itself.
// It errs by at most one for almost every English word.
func syllables(word string) int {
	if part, rest, hyphened := strings.Cut(word, "-"); hyphened {
		return syllables(part) + syllables(rest)
	}
	w := strings.ToLower(word)
	if spoken, unit := asSpoken[w]; unit {
		return spoken
	}
	count, before := 0, false
	for _, r := range w {
		vowel := strings.ContainsRune("aeiouy", r)
		if vowel && !before {
			count++
		}
		before = vowel
	}
	switch {
	case hasAnySuffix(w, "le", "re") && len(w) > 2 && !strings.ContainsRune("aeiouy", rune(w[len(w)-3])): // muscle, fibre
	case strings.HasSuffix(w, "e"), strings.HasSuffix(w, "ed") && !strings.HasSuffix(w, "ted") && !strings.HasSuffix(w, "ded"),
		strings.HasSuffix(w, "es") && !hasAnySuffix(w, "ses", "ces", "zes", "ches", "shes", "xes", "ges"):
		count--
	}
	return max(1, count)
}

func hasAnySuffix(word string, endings ...string) bool {
	for _, e := range endings {
		if strings.HasSuffix(word, e) {
			return true
		}
	}
	return false
}

func TestSyllables(t *testing.T) {
	for word, want := range map[string]int{
		"plan": 1, "energy": 3, "fibre": 2, "palm": 1, "muscle": 2, "vegetable": 4,
		"carbohydrate": 4, "protein": 2, "measures": 2, "added": 2, "used": 1, "foods": 1,
		"body": 2, "medicine": 3, "high-fibre": 3, "1849": 1, "be": 1, "there": 1, "kcal": 5, "changes": 2,
	} {
		if got := syllables(word); got != want {
			t.Errorf("%s: %d syllables, want %d", word, got, want)
		}
	}
}

// The cat on the mat: six words of one syllable in one sentence give
// 0.39 x 6 + 11.8 x 1 - 15.59 = -1.45, worked out by hand.
func TestGrade(t *testing.T) {
	if got := grade("The cat sat on the mat."); math.Abs(got-(-1.45)) > 1e-9 {
		t.Errorf("got %v, want -1.45", got)
	}
	hard := "Individualised macronutrient apportionment necessitates comprehensive anthropometric characterisation."
	if got := grade(hard); got < 20 {
		t.Errorf("a hard sentence has grade %.1f", got)
	}
}

// gaps are filled as on the paper.
func spoken(sentences ...string) string {
	text := strings.Join(sentences, " ")
	return strings.ReplaceAll(text, "{}", "1850 kcal")
}

func glanceWords() string {
	text := []string{wordsRange, wordsOpening, wordsHand, wordsFoot, wordsCare}
	for _, w := range wordsMeasure {
		text = append(text, w+".")
	}
	return spoken(text...)
}

func whyWords() string {
	text := []string{
		wordsWhy, wordsResting, wordsActivity, wordsActivityGiven, wordsMaintenance, wordsGoalLower, wordsGoalRaise,
		wordsGoalHold, wordsTarget, wordsWhatRange, wordsProtein, wordsFat, wordsCarbohydrate, wordsFibre, wordsMeasures,
		wordsWhyMeasures, wordsStart,
	}
	for _, w := range wordsActivityClass {
		text = append(text, w)
	}
	return spoken(append(text, wordsWhyMeasure[:]...)...)
}

func careText() string {
	text := []string{wordsFoods, wordsFoodsPlain, wordsAsk}
	for _, w := range careWords {
		text = append(text, w)
	}
	return spoken(text...)
}

func TestReadingGrade(t *testing.T) {
	const most = 6 // design of the papers: grade six or lower
	for name, text := range map[string]string{
		"plan at a glance": glanceWords(), "why these numbers": whyWords(), "cautions and foods": careText(),
	} {
		got := grade(text)
		t.Logf("%s: grade %.1f", name, got)
		if got > most {
			t.Errorf("%s: grade %.1f, want %d or lower", name, got, most)
		}
	}
}

package reports

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"handbreadth/domain/energy"
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

// wordsIn returns every text that a source file of this package writes down, so
// that no new sentence is left out. A piece that is no sentence counts as one.
func wordsIn(t *testing.T, name string) string {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	var texts []string
	add := func(text string) {
		if text = strings.TrimSpace(strings.TrimRight(text, ": ")); text == "" || !strings.ContainsAny(text, " ") {
			return // a key or a name
		}
		if !strings.ContainsAny(text[len(text)-1:], ".?!") {
			text += "."
		}
		texts = append(texts, text)
	}
	ast.Inspect(file, func(n ast.Node) bool {
		switch e := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.BinaryExpr:
			if text, isText := joinedText(e); isText {
				add(text)
				return false
			}
		case *ast.BasicLit:
			if text, isText := joinedText(e); isText {
				add(text)
			}
		}
		return true
	})
	return spoken(texts...)
}

// joinedText returns the text of a literal, or of several joined by plus.
func joinedText(e ast.Expr) (text string, isText bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		text, err := strconv.Unquote(e.Value)
		return text, e.Kind == token.STRING && err == nil
	case *ast.BinaryExpr:
		left, leftIs := joinedText(e.X)
		right, rightIs := joinedText(e.Y)
		return left + right, leftIs && rightIs && e.Op == token.ADD
	}
	return "", false
}

func TestWordsInFindsEverySentence(t *testing.T) {
	why := wordsIn(t, "whywords.go")
	for _, sentence := range []string{wordsWhy, wordsGoalRaise, wordsCourse, wordsLegendRule, wordsProteinOn["lean weight"], wordsActivityClass[energy.Active], wordsWhyMeasure[0]} {
		if !strings.Contains(why, spoken(sentence)) {
			t.Errorf("%q is missing from %q", sentence, why)
		}
	}
	if care := wordsIn(t, "carewords.go"); !strings.Contains(care, careWords["lithium"]) || strings.Contains(care, "sglt2_inhibitor") {
		t.Errorf("got %q", care)
	}
}

func TestReadingGrade(t *testing.T) {
	const most = 6 // design of the papers: grade six or lower
	for name, text := range map[string]string{
		"plan at a glance": wordsIn(t, "words.go"), "why these numbers": wordsIn(t, "whywords.go"), "cautions and foods": wordsIn(t, "carewords.go"),
	} {
		got := grade(text)
		t.Logf("%s: grade %.1f", name, got)
		if got > most {
			t.Errorf("%s: grade %.1f, want %d or lower", name, got, most)
		}
	}
}

package food

import (
	"slices"
	"strings"
	"sync"
	"unicode"
)

// Search returns the foods that a text finds: each word of the text must begin
// a word of the food's name, its other names or its class. Case and accents do
// not matter. Foods whose name begins with the text come first, then those with
// the text's words in their name, each in the order of the table. A text without
// a word finds nothing.
func Search(text string) []Food {
	asked := split(text)
	if len(asked) == 0 {
		return nil
	}
	var ranks [3][]Food
	words := theWords()
	for i, f := range theTable().foods {
		if !eachBegins(asked, words[i]) {
			continue
		}
		name := split(f.Name)
		rank := 2
		switch {
		case strings.HasPrefix(strings.Join(name, " "), strings.Join(asked, " ")):
			rank = 0
		case eachBegins(asked, name):
			rank = 1
		}
		ranks[rank] = append(ranks[rank], f)
	}
	return slices.Concat(ranks[0], ranks[1], ranks[2])
}

// eachBegins reports whether each asked word begins one of the words.
func eachBegins(asked, words []string) bool {
	for _, a := range asked {
		if !slices.ContainsFunc(words, func(w string) bool { return strings.HasPrefix(w, a) }) {
			return false
		}
	}
	return true
}

// theWords holds the words of every food, made at the first search.
var theWords = sync.OnceValue(func() [][]string {
	words := make([][]string, len(theTable().foods))
	for i, f := range theTable().foods {
		words[i] = wordsOf(f)
	}
	return words
})

// wordsOf returns the folded words that a food is found by.
func wordsOf(f Food) []string { return split(f.Name + " " + f.also + " " + f.Class.Name()) }

// split folds a text and splits it into its words of letters and digits.
func split(text string) []string {
	return strings.FieldsFunc(fold(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// fold returns a text in lower case, its Latin letters without accents and
// without apostrophes, so that goat's is found as goats.
func fold(text string) string {
	plain := true
	for i := range len(text) {
		if c := text[i]; c >= 0x80 || c == '\'' || c >= 'A' && c <= 'Z' {
			plain = false
			break
		}
	}
	if plain {
		return text
	}
	var out strings.Builder
	for _, r := range text {
		switch {
		case r == '\'' || r == '’' || unicode.Is(unicode.Mn, r):
		case r < 0x80:
			out.WriteRune(unicode.ToLower(r))
		default:
			out.WriteString(unaccented(unicode.ToLower(r)))
		}
	}
	return out.String()
}

// accented lists, for each plain spelling, the lower case letters that fold to
// it: those of the Latin alphabets of Europe, Vietnam and the romanisations of
// Asia's scripts.
var accented = map[string]string{
	"a": "àáâãäåāăąǎạảấầẩẫậắằẳẵặ", "ae": "æ", "b": "ḃ", "c": "çćĉċč", "d": "ďđḍ", "dh": "ð",
	"e": "èéêëēĕėęěẹẻẽếềểễệ", "g": "ĝğġģǧ", "h": "ĥħḥ", "i": "ìíîïĩīĭįıǐịỉ", "j": "ĵ", "k": "ķ",
	"l": "ĺļľŀłḷ", "m": "ṁṃ", "n": "ñńņňŋṅṇ", "o": "òóôõöøōŏőơǒọỏốồổỗộớờởỡợ", "oe": "œ", "r": "ŕŗřṛ",
	"s": "śŝşšșṣ", "ss": "ß", "t": "ţťŧțṭ", "th": "þ", "u": "ùúûüũūŭůűųưǔụủứừửữự", "w": "ŵẁẃẅ", "y": "ýÿŷỳỵỷỹ", "z": "źżžẓ",
}

var plainOf = func() map[rune]string {
	table := map[rune]string{}
	for plain, letters := range accented {
		for _, r := range letters {
			table[r] = plain
		}
	}
	return table
}()

func unaccented(r rune) string {
	if plain, ok := plainOf[r]; ok {
		return plain
	}
	return string(r)
}

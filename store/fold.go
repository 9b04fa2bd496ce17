package store

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// letters that Unicode does not take apart but that people type plainly.
var letters = map[rune]string{
	'ß': "ss", 'æ': "ae", 'œ': "oe", 'ø': "o", 'ł': "l", 'đ': "d", 'ð': "d",
	'þ': "th", 'ı': "i", 'ħ': "h", 'ŧ': "t", 'ŋ': "n", 'ĸ': "k", 'ς': "σ",
}

// fold writes a text as it is searched: lower case, without accents, with
// apostrophes taken out and every other sign turned into one space.
func fold(text string) string {
	var b strings.Builder
	b.Grow(len(text))
	gap := false
	for _, r := range norm.NFKD.String(text) {
		switch r = unicode.ToLower(r); {
		case unicode.Is(unicode.Mn, r), isApostrophe(r):
		case unicode.IsLetter(r), unicode.IsDigit(r), unicode.Is(unicode.Mc, r):
			if gap && b.Len() > 0 {
				b.WriteByte(' ')
			}
			gap = false
			if plain, ok := letters[r]; ok {
				b.WriteString(plain)
			} else {
				b.WriteRune(r)
			}
		default:
			gap = true
		}
	}
	return b.String()
}

func isApostrophe(r rune) bool {
	switch r {
	case '\'', '’', '‘', 'ʼ', '`', '´':
		return true
	}
	return false
}

// nameWords are the words to find a name by: those of its folded form, and
// those that begin after an apostrophe ("O'Brien": obrien, brien).
func nameWords(name, folded string) []string {
	words := strings.Fields(folded)
	if i := strings.IndexFunc(name, isApostrophe); i >= 0 {
		words = append(words, strings.Fields(fold(strings.Map(apostropheToSpace, name)))...)
	}
	return words
}

func apostropheToSpace(r rune) rune {
	if isApostrophe(r) {
		return ' '
	}
	return r
}

package reports

import (
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"handbreadth/assets"
)

const (
	// shownMissing stands for a character that the type family cannot show.
	shownMissing = '□'
	// longestWord is the most characters that stay together; a longer word gets
	// a space, so that it can go to the next line.
	longestWord = 80
	// longestText is the most characters of one text that reach the paper.
	longestText = 4000
)

// clean makes a text safe for the PDF engine and for the type family. What it
// returns is valid UTF-8 on one line, holds nothing above U+FFFF and no control
// character, no word longer than 80 characters, and only characters that every
// face can show. A letter that the faces lack loses its accents where the bare
// letter is there ("ễ" becomes "e"); everything else that is lacking becomes "□".
// Clean text stays as it is.
func clean(text string) string {
	if isPlain(text) {
		return text
	}
	return cleaned(text)
}

// cleaned is [clean] for any text, slower.
func cleaned(text string) string {
	text = norm.NFC.String(strings.ToValidUTF8(text, string(shownMissing)))
	var out strings.Builder
	inWord, total, gap := 0, 0, false
	write := func(r rune) {
		if gap && out.Len() > 0 {
			out.WriteByte(' ')
			inWord = 0
		}
		gap = false
		if inWord == longestWord {
			out.WriteByte(' ')
			inWord = 0
		}
		out.WriteRune(r)
		inWord++
		total++
	}
	for _, r := range text {
		if total >= longestText {
			break
		}
		switch {
		case r == noBreakSpace:
			write(r)
		case unicode.IsSpace(r):
			gap = true
		case unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Mn, r):
			continue // an accent that is left here found no letter
		default:
			for _, shown := range showable(r) {
				write(shown)
			}
		}
	}
	return strings.Trim(out.String(), " "+string(noBreakSpace))
}

// isPlain reports whether a text has nothing to clean: printable ASCII, short
// words and single spaces between them.
func isPlain(text string) bool {
	inWord := 0
	for i := range len(text) {
		switch c := text[i]; {
		case c == ' ':
			if inWord == 0 || i == len(text)-1 {
				return false
			}
			inWord = 0
		case c < ' ' || c > '~' || inWord == longestWord:
			return false
		default:
			inWord++
		}
	}
	return len(text) <= longestText
}

const noBreakSpace = '\u00a0'

// lookalikes are characters that the faces lack and that another one tells as
// well.
var lookalikes = map[rune]rune{'‑': '-', '‒': '–', '―': '—', 'ˈ': '\'', 'ʼ': '’', '⁄': '/', '′': '\'', '″': '"'}

// showable returns what stands on paper for a character: itself, a lookalike,
// its bare letter, or the sign for a missing one.
func showable(r rune) []rune {
	if known(r) {
		return []rune{r}
	}
	if like, ok := lookalikes[r]; ok && known(like) {
		return []rune{like}
	}
	base, _ := utf8.DecodeRuneInString(norm.NFKD.String(string(r)))
	if unicode.IsLetter(r) && unicode.IsLetter(base) && base != r && known(base) {
		return []rune{base}
	}
	return []rune{shownMissing}
}

var (
	knownLock  sync.Mutex
	knownRunes = map[rune]bool{}
)

// known reports whether every face shows the character.
func known(r rune) bool {
	if r > 0xFFFF {
		return false
	}
	knownLock.Lock()
	defer knownLock.Unlock()
	has, looked := knownRunes[r]
	if !looked {
		has = len(assets.Missing(string(r))) == 0
		knownRunes[r] = has
	}
	return has
}

// cleanAll cleans each text and drops those that are empty.
func cleanAll(texts []string) []string {
	var kept []string
	for _, text := range texts {
		if text = clean(text); text != "" {
			kept = append(kept, text)
		}
	}
	return kept
}

package vault

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"github.com/trustelem/zxcvbn/frequency"
)

// Strength says how far a passphrase is likely to hold against somebody who has
// the file and tries for weeks.
type Strength int

// From the weakest to the strongest.
const (
	TooWeak Strength = iota // not accepted
	Fair                    // accepted, and longer is better
	Good
)

// Advice on a passphrase.
type Advice struct {
	Accepted bool
	Strength Strength
	Words    string // a short sentence for the person at the desk, never empty
}

const (
	// leastLength is the fewest signs. NIST SP 800-63B, 5.1.1.2 (from memory):
	// at least eight, and no rules on what kind they are.
	leastLength = 8
	// goodLength is where length alone does it. NIST SP 800-63B-4 (from memory):
	// at least fifteen where nothing else but the password protects.
	goodLength = 15
)

// Advise looks at a passphrase as somebody who tries many would: is it short, is
// it one of those that are tried first, or a single word or name with a few
// digits? It never asks for capitals, digits or signs. Own are words that others
// know to belong to this practice (its name, the practitioner's); they do not
// count as a secret.
func Advise(passphrase string, own ...string) Advice {
	text := normal(passphrase)
	switch n := utf8.RuneCountInString(text); {
	case n == 0:
		return tooWeak("Choose a passphrase: three or four words that do not belong together are easy to keep in mind.")
	case n < leastLength:
		return tooWeak(fmt.Sprintf("Too short: at least %d letters. Three or four words that do not belong together are easy to keep in mind.", leastLength))
	}
	words := wordsOf(text)
	switch {
	case isPattern(text):
		return tooWeak("A pattern such as this is tried first. Choose words instead.")
	case isTriedFirst(text, words):
		return tooWeak("This is among those that are tried first. Add two or three words that do not belong to it.")
	case len(without(words, own)) == 0:
		return tooWeak("Others know these words to be yours. Add two or three that nobody would think of.")
	case lengthWithout(text, words, own) < goodLength, isTwoCommonWords(without(words, own)):
		return Advice{Accepted: true, Strength: Fair, Words: "Fair. One or two words more make it far harder to guess."}
	}
	return Advice{Accepted: true, Strength: Good, Words: "Good. Keep it to yourself, and the recovery sheet somewhere safe."}
}

func tooWeak(words string) Advice { return Advice{Words: words} }

// common are the texts that are tried first: widely used passwords, words and
// names, in lower case. The lists are those of zxcvbn (Wheeler, USENIX Security
// 2016), whose estimator itself would cost every start of the program 28 ms.
var common = sync.OnceValue(func() map[string]bool {
	all := map[string]bool{}
	for _, list := range frequency.FrequencyLists {
		for _, text := range list {
			all[text] = true
		}
	}
	return all
})

// isTriedFirst reports whether the whole, or its only word, is a common one.
func isTriedFirst(text string, words []string) bool {
	lower := strings.ToLower(text)
	if common()[lower] || common()[strings.Join(words, "")] {
		return true
	}
	letters := slices.DeleteFunc(slices.Clone(words), func(w string) bool { return !unicode.IsLetter(firstRune(w)) })
	switch len(letters) {
	case 0:
		return utf8.RuneCountInString(text) < goodLength // a date, a telephone number
	case 1:
		rest := utf8.RuneCountInString(text) - utf8.RuneCountInString(letters[0])
		return common()[letters[0]] && rest <= 6
	}
	return false
}

// isTwoCommonWords reports whether the secret is one or two words of a dictionary
// and nothing else: long enough, and still few enough to try.
func isTwoCommonWords(words []string) bool {
	return len(words) <= 2 && !slices.ContainsFunc(words, func(w string) bool { return !common()[w] })
}

// lengthWithout is the length without the words that are known to be the
// practice's.
func lengthWithout(text string, words, own []string) int {
	known := strings.Join(words, "")
	secret := strings.Join(without(words, own), "")
	return utf8.RuneCountInString(text) - utf8.RuneCountInString(known) + utf8.RuneCountInString(secret)
}

func firstRune(s string) rune {
	r, _ := utf8.DecodeRuneInString(s)
	return r
}

// wordsOf gives the runs of letters and the runs of digits, in lower case.
func wordsOf(text string) []string {
	kind := func(r rune) int {
		switch {
		case unicode.IsLetter(r), unicode.IsMark(r):
			return 1
		case unicode.IsDigit(r):
			return 2
		}
		return 0
	}
	var words []string
	last := 0
	for _, r := range strings.ToLower(text) {
		now := kind(r)
		switch {
		case now == 0:
		case now == last:
			words[len(words)-1] += string(r)
		default:
			words = append(words, string(r))
		}
		last = now
	}
	return words
}

// without leaves out the words that are known to be the practice's.
func without(words, own []string) []string {
	known := map[string]bool{"handbreadth": true}
	for _, text := range own {
		for _, w := range wordsOf(normal(text)) {
			known[w] = true
		}
	}
	return slices.DeleteFunc(slices.Clone(words), func(w string) bool { return known[w] })
}

// rows are the rows of common keyboards, the digits and the alphabet.
var rows = []string{
	"1234567890", "qwertyuiop", "asdfghjkl", "zxcvbnm", "qwertzuiop", "yxcvbnm", "azertyuiop", "qsdfghjklm", "wxcvbn",
	"abcdefghijklmnopqrstuvwxyz",
}

// isPattern reports whether the text is one short piece over and over, or made
// of runs along a row of keys.
func isPattern(text string) bool {
	runes := []rune(strings.ToLower(text))
	for piece := 1; piece <= 4; piece++ {
		if repeats(runes, piece) {
			return true
		}
	}
	jumps := 0
	for i := 1; i < len(runes); i++ {
		if !alongARow(runes[i-1], runes[i]) {
			jumps++
		}
	}
	return jumps*4 < len(runes) // four keys in a row, on the average
}

func repeats(runes []rune, piece int) bool {
	for i := piece; i < len(runes); i++ {
		if runes[i] != runes[i-piece] {
			return false
		}
	}
	return true
}

// alongARow reports whether two signs are the same or neighbours in some row.
func alongARow(a, b rune) bool {
	pair, reverse := string([]rune{a, b}), string([]rune{b, a})
	return a == b || slices.ContainsFunc(rows, func(row string) bool {
		return strings.Contains(row, pair) || strings.Contains(row, reverse)
	})
}

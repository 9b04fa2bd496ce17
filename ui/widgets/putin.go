package widgets

import (
	"sort"
	"strings"
	"unicode"
	"unicode/utf8"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// putIn writes the formula of a step with the client's values in the place of
// the names: "10 × 72.6 + ...". It returns false where an input has no place in
// the formula, or where the formula is a sentence of which a word would be taken
// for a name.
func putIn(s derive.Step, style unit.Style) (string, bool) {
	if s.Formula == "" || len(s.Inputs) == 0 {
		return "", false
	}
	inputs := append([]derive.Input(nil), s.Inputs...)
	sort.SliceStable(inputs, func(i, j int) bool { return len(inputs[i].Name) > len(inputs[j].Name) })
	pieces := []piece{{text: s.Formula}}
	for _, in := range inputs {
		var found bool
		if pieces, found = replaceIn(pieces, in.Name, inputText(in, style)); !found {
			return "", false
		}
	}
	var b strings.Builder
	for _, p := range pieces {
		b.WriteString(p.text)
	}
	return b.String() + " = " + ResultText(s, style), true
}

// piece is a part of a formula: as it was written, or a value already put in.
type piece struct {
	text string
	put  bool
}

// replaceIn puts a value in the place of a name wherever it stands as a whole
// word in what is not yet put in.
func replaceIn(pieces []piece, name, value string) (out []piece, found bool) {
	if name == "" {
		return pieces, false
	}
	for _, p := range pieces {
		rest := p.text
		for !p.put {
			at := wordAt(rest, name)
			if at < 0 {
				break
			}
			found = true
			out = append(out, piece{text: rest[:at]}, piece{text: value, put: true})
			rest = rest[at+len(name):]
		}
		out = append(out, piece{text: rest, put: p.put})
	}
	return out, found
}

// wordAt returns where a name stands as a whole word in a text, or -1.
func wordAt(text, name string) int {
	for from := 0; ; {
		at := strings.Index(text[from:], name)
		if at < 0 {
			return -1
		}
		at += from
		before, _ := utf8.DecodeLastRuneInString(text[:at])
		after, _ := utf8.DecodeRuneInString(text[at+len(name):])
		if !wordRune(before) && !wordRune(after) {
			return at
		}
		from = at + len(name)
	}
}

// wordRune reports whether a rune belongs to a word. The rune error that stands
// for the end of a text does not.
func wordRune(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' }

package unit

import (
	"strings"
	"unicode"
)

// longestText is the most bytes that a quantity or date may be written with;
// what is longer was pasted by mistake.
const longestText = 60

// spaceMarks are the spaces accepted between digits and around units: plain,
// tab, no-break, narrow no-break and thin.
const spaceMarks = " \t\u00a0\u202f\u2009"

// scanner reads a text from the left; rest is what is still to be read.
type scanner struct{ rest string }

// spaces skips spaces and reports whether there were any.
func (s *scanner) spaces() bool {
	before := len(s.rest)
	s.rest = strings.TrimLeft(s.rest, spaceMarks)
	return len(s.rest) < before
}

// done skips spaces and reports whether nothing is left.
func (s *scanner) done() bool {
	s.spaces()
	return s.rest == ""
}

// take skips the text when it comes next, and reports whether it did.
func (s *scanner) take(text string) bool {
	rest, found := strings.CutPrefix(s.rest, text)
	s.rest = rest
	return found
}

// digits reads the digits 0 to 9 that come next; "" when there are none.
func (s *scanner) digits() string {
	return s.run(isDigit)
}

// word reads the unaccented letters that come next, as lower case.
func (s *scanner) word() string {
	return strings.ToLower(s.run(isLetter))
}

func (s *scanner) run(belongs func(byte) bool) string {
	end := 0
	for end < len(s.rest) && belongs(s.rest[end]) {
		end++
	}
	read := s.rest[:end]
	s.rest = s.rest[end:]
	return read
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }

func isLetter(b byte) bool {
	return (b >= 'a' && b <= 'z') || (b >= 'A' && b <= 'Z')
}

// hasForeignDigit reports whether the text has digits of another script or
// width, which are refused by name since they look like those that are read.
func hasForeignDigit(text string) bool {
	for _, r := range text {
		if r > unicode.MaxASCII && unicode.IsDigit(r) {
			return true
		}
	}
	return false
}

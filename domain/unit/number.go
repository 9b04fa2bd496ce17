package unit

import (
	"math"
	"strconv"
	"strings"
)

// number is a count as it was written. "1,800" can be read two ways, as 1.8
// and as 1800; both are kept until the bounds of the quantity decide.
type number struct {
	value   float64
	grouped float64 // the second reading; NaN where there is none
	whole   string  // the digits, where nothing but digits was written
	marked  bool    // written with a decimal or grouping mark
}

// fractions are the parts of one that may follow a whole number.
var fractions = []struct {
	text  string
	value float64
}{
	{"½", 0.5},
	{"¼", 0.25},
	{"¾", 0.75},
	{"1/2", 0.5},
	{"1/4", 0.25},
	{"3/4", 0.75},
}

// number reads the number that comes next and reports whether there was one:
//
//	72   72.5   72,5        decimal point or comma, with digits on both sides
//	1 800   12 345,6        groups of three after any of the accepted spaces
//	1,234.5   1.234,5       two different marks: the last is the decimal one
//	1,800   1.800           one mark and three digits: both readings are kept
//	5½   5 1/2   ½          halves and quarters
//
// There is no sign, exponent or hexadecimal.
func (s *scanner) number() (number, bool) {
	if value, found := s.fraction(); found {
		return number{value: value, grouped: math.NaN()}, true
	}
	lead := s.digits()
	if lead == "" {
		return number{}, false
	}
	all := lead + s.spacedGroups(lead)
	parts, marks := s.markedParts()
	if len(parts) == 0 {
		return s.wholeNumber(lead, all), true
	}
	n := number{marked: true, grouped: math.NaN()}
	last := len(parts) - 1
	if last == 0 {
		n.value = decimal(all, parts[0])
		if all == lead && leadsGroups(lead) && len(parts[0]) == 3 {
			n.grouped = decimal(lead+parts[0], "")
		}
		return n, true
	}
	if all != lead || !leadsGroups(lead) || !areGroups(parts[:last], marks[:last]) {
		return number{}, false
	}
	all = lead + strings.Join(parts[:last], "")
	if marks[last] != marks[0] {
		n.value = decimal(all, parts[last])
		return n, true
	}
	n.value = decimal(all+parts[last], "")
	return n, len(parts[last]) == 3
}

// wholeNumber ends a number without marks: with the fraction that follows it,
// if any.
func (s *scanner) wholeNumber(lead, all string) number {
	n := number{value: decimal(all, ""), grouped: math.NaN()}
	ahead := *s
	ahead.spaces()
	if value, found := ahead.fraction(); found {
		*s = ahead
		n.value += value
		return n
	}
	if lead == all {
		n.whole = lead
	}
	return n
}

// fraction reads a half or quarter that comes next.
func (s *scanner) fraction() (value float64, found bool) {
	for _, f := range fractions {
		if s.take(f.text) {
			return f.value, true
		}
	}
	return 0, false
}

// spacedGroups reads groups of three digits, each after one space.
func (s *scanner) spacedGroups(lead string) string {
	if !leadsGroups(lead) {
		return ""
	}
	groups := ""
	for {
		ahead := *s
		if !ahead.oneSpace() {
			return groups
		}
		group := ahead.digits()
		if len(group) != 3 {
			return groups
		}
		groups += group
		*s = ahead
	}
}

// oneSpace skips a single space.
func (s *scanner) oneSpace() bool {
	for _, space := range spaceMarks {
		if s.take(string(space)) {
			return true
		}
	}
	return false
}

// markedParts reads every run of digits that follows a point or comma.
func (s *scanner) markedParts() (parts []string, marks []byte) {
	for len(s.rest) > 1 && (s.rest[0] == '.' || s.rest[0] == ',') && isDigit(s.rest[1]) {
		marks = append(marks, s.rest[0])
		s.rest = s.rest[1:]
		parts = append(parts, s.digits())
	}
	return parts, marks
}

// leadsGroups reports whether groups of three may follow these digits.
func leadsGroups(lead string) bool { return len(lead) <= 3 && lead[0] != '0' }

// areGroups reports whether all parts have three digits and the same mark.
func areGroups(parts []string, marks []byte) bool {
	for i, part := range parts {
		if len(part) != 3 || marks[i] != marks[0] {
			return false
		}
	}
	return true
}

// decimal is the value of digits before and after the decimal mark. Both are
// digits only, so reading them cannot fail.
func decimal(before, after string) float64 {
	value, err := strconv.ParseFloat(before+"."+after, 64)
	if err != nil {
		return math.NaN()
	}
	return value
}

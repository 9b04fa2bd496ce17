package unit

import (
	"strconv"
	"time"
)

// The years that a typed date may have: a birth or a plan, so that a slip such
// as 0026 or 20266 is caught.
const (
	firstTypedYear = 1900
	lastTypedYear  = 2199
)

// What is said to be accepted where a date is refused.
const (
	dateAccepted   = "a date such as 2026-03-02, 2/3/2026 (day first) or 2 March 2026"
	dateDayAsked   = "a day that exists, written day first, such as 2/3/2026 for 2 March 2026"
	dateYearAsked  = "a year with four digits, such as 2 March 2026"
	dateYearsAsked = "a date in the years 1900 to 2199, such as 2026-03-02"
	digitsAsked    = "the digits 0 to 9; "
)

// ParseDate reads a date as people write it:
//
//	2026-03-02                   year first (also with / or .)
//	2/3/2026 2.3.2026 2-3-2026   always day first: 2 March, in every practice
//	2 March 2026, 2nd Mar 2026, 2-Mar-2026, March 2, 2026
//
// Month names are English, full or short. The year has four digits, 1900 to
// 2199. A text that would only make sense month first (3/13/2026) is refused,
// never turned round. The error is a [Problem] with the field's name.
func ParseDate(field, text string) (Date, error) {
	d, refusal := readDate(text)
	if refusal != "" {
		if hasForeignDigit(text) {
			refusal = digitsAsked + refusal
		}
		return Date{}, Problem{Field: field, Given: text, Accepted: refusal}
	}
	return d, nil
}

// readDate returns the date, or what is accepted instead.
func readDate(text string) (d Date, refusal string) {
	if len(text) > longestText {
		return Date{}, dateAccepted
	}
	var day, month, year string
	s := scanner{text}
	s.spaces()
	first := s.digits()
	switch {
	case first == "":
		day, month, year = s.monthFirst()
	case startsNumericDate(s.rest):
		day, month, year = s.allDigits(first)
	default:
		day, month, year = s.monthSecond(first)
	}
	if !s.done() || len(day) == 0 || len(day) > 2 || month == "" || year == "" {
		return Date{}, dateAccepted
	}
	return assemble(day, month, year)
}

// assemble checks the parts: digits for day and year, digits or a name for the
// month.
func assemble(day, month, year string) (d Date, refusal string) {
	if len(year) != 4 {
		return Date{}, dateYearAsked
	}
	number, known := monthNumber(month)
	if !known {
		return Date{}, dateAccepted
	}
	y, _ := strconv.Atoi(year)
	if y < firstTypedYear || y > lastTypedYear {
		return Date{}, dateYearsAsked
	}
	n, _ := strconv.Atoi(day)
	d, err := NewDate(y, number, n)
	if err != nil {
		return Date{}, dateDayAsked
	}
	return d, ""
}

// startsNumericDate reports whether a separator and a digit come next.
func startsNumericDate(rest string) bool {
	return len(rest) > 1 && isDateMark(rest[0]) && isDigit(rest[1])
}

func isDateMark(b byte) bool { return b == '-' || b == '/' || b == '.' }

// allDigits reads the rest of 2026-03-02 or 2/3/2026, the first part being
// read. Both separators are the same.
func (s *scanner) allDigits(first string) (day, month, year string) {
	mark := s.rest[:1]
	s.take(mark)
	second := s.digits()
	s.take(mark)
	third := s.digits()
	if len(first) == 4 {
		return third, second, first
	}
	return first, second, third
}

// monthSecond reads the rest of 2 March 2026, the day being read.
func (s *scanner) monthSecond(first string) (day, month, year string) {
	s.ordinal()
	s.between()
	month = s.word()
	s.between()
	return first, month, s.digits()
}

// monthFirst reads March 2, 2026.
func (s *scanner) monthFirst() (day, month, year string) {
	month = s.word()
	s.between()
	day = s.digits()
	s.ordinal()
	if !s.between() {
		return "", "", ""
	}
	return day, month, s.digits()
}

// ordinal skips the ending of 1st, 2nd, 3rd, 4th.
func (s *scanner) ordinal() {
	for _, ending := range []string{"st", "nd", "rd", "th"} {
		if s.take(ending) {
			return
		}
	}
}

// between skips what stands between day, month and year, and reports whether
// there was anything: one comma, point or hyphen with spaces around it.
func (s *scanner) between() bool {
	found := s.spaces()
	for _, mark := range []string{",", ".", "-"} {
		if s.take(mark) {
			found = true
			break
		}
	}
	return s.spaces() || found
}

// monthNumber reads one or two digits or an English name of at least three
// letters: mar, sept, march.
func monthNumber(text string) (time.Month, bool) {
	if isDigit(text[0]) {
		n, err := strconv.Atoi(text)
		return time.Month(n), err == nil && len(text) <= 2
	}
	if text == "sept" {
		return time.September, true
	}
	for m := time.January; m <= time.December; m++ {
		name := (&scanner{m.String()}).word()
		if text == name || text == name[:3] {
			return m, true
		}
	}
	return 0, false
}

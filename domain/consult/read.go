package consult

import (
	"math"
	"strconv"
	"strings"

	"handbreadth/domain/unit"
)

// text returns a JSON string; false, with a problem, where it is none.
func (r *reader) text(v value, accepted string) (string, bool) {
	if v.raw[0] != '"' {
		r.refuse(v.path, v.given(), accepted)
		return "", false
	}
	if !wellFormed(v.raw) {
		r.refuse(v.path, v.given(), "text in valid Unicode (UTF-8)")
		return "", false
	}
	return v.given(), true
}

// quantity reads a text with its unit, or a date. A bare number has no unit and
// is refused.
func quantity[T any](r *reader, v value, parse func(field, text string) (T, error)) T {
	parsed, err := parse(v.path, v.given())
	if v.raw[0] == '"' {
		if _, ok := r.text(v, ""); ok {
			r.problems.Keep(err)
		}
		return parsed
	}
	accepted := "a text in quotes"
	if p, isProblem := err.(unit.Problem); isProblem {
		accepted += ": " + p.Accepted
	}
	r.refuse(v.path, v.given(), accepted)
	var none T
	return none
}

// span is what a number may be.
type span struct {
	low, high float64
	words     string // "a number from 15 to 40"
}

// number reads a JSON number within a span; 0 where it cannot be used.
func (r *reader) number(v value, s span) float64 {
	n, err := strconv.ParseFloat(string(v.raw), 64)
	if err != nil || !(n >= s.low && n <= s.high) {
		r.refuse(v.path, v.given(), s.words)
		return 0
	}
	return n
}

// whole reads a whole number within a span.
func (r *reader) whole(v value, s span) int {
	before := len(r.problems)
	n := r.number(v, s)
	if n != math.Trunc(n) {
		r.refuse(v.path, v.given(), s.words)
	}
	if len(r.problems) > before {
		return 0
	}
	return int(n)
}

// flag reads true or false.
func (r *reader) flag(v value) (yes, ok bool) {
	switch string(v.raw) {
	case "true":
		return true, true
	case "false":
		return false, true
	}
	r.refuse(v.path, v.given(), "true or false")
	return false, false
}

// choice reads one of a list of words.
func choice[T ~string](r *reader, v value, words []T) T {
	text, ok := r.text(v, oneOf(words))
	if !ok {
		return ""
	}
	for _, w := range words {
		if string(w) == text {
			return w
		}
	}
	r.refuse(v.path, text, oneOf(words))
	return ""
}

// choiceOr is [choice] where the first of the words is empty in an intake and
// has a name of its own in the file.
func choiceOr[T ~string](r *reader, v value, first string, words []T) T {
	named := append([]T{T(first)}, words[1:]...)
	if chosen := choice(r, v, named); chosen != named[0] {
		return chosen
	}
	return words[0]
}

// oneOf lists words: "lose, maintain or gain".
func oneOf[T ~string](words []T) string {
	plain := make([]string, len(words))
	for i, w := range words {
		plain[i] = string(w)
	}
	last := len(plain) - 1
	if last < 1 {
		return strings.Join(plain, "")
	}
	return strings.Join(plain[:last], ", ") + " or " + plain[last]
}

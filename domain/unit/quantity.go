package unit

import (
	"math"
	"strings"
)

// quantity says how one kind of thing is written: its units, and the bounds
// that it has in the base unit.
type quantity struct {
	accepted  string // told when the text is refused
	low, high float64
	names     map[string]string  // every spelling of a unit: its short name
	factors   map[string]float64 // short name: how many base units
	pairs     []unitPair         // units said together: feet and inches
	per       string             // "day": "a day" or "/day" may follow; empty: nothing may
}

// unitPair is a large unit said together with a small one.
type unitPair struct {
	large, small string
	count        float64 // small units in the large one
	twoDigits    bool    // 1m68: the small number has two digits when bare
	asked        string  // told when the pair is written wrongly
}

// term is a number with its unit's short name, "" when it has none.
type term struct {
	number
	unit string
}

// parse reads a text. A single number without a unit is read in the bare units,
// refused when there are none. The error is a [Problem].
func (q quantity) parse(field, text string, bare ...string) (float64, error) {
	value, refusal := q.read(text, bare)
	if refusal == "" {
		return value, nil
	}
	if hasForeignDigit(text) {
		refusal = digitsAsked + refusal
	}
	return 0, Problem{Field: field, Given: text, Accepted: refusal}
}

// read returns the value in base units, or what is accepted instead.
func (q quantity) read(text string, bare []string) (value float64, refusal string) {
	terms, understood := q.terms(text)
	if !understood {
		return 0, q.accepted
	}
	if len(terms) == 2 {
		return q.together(terms[0], terms[1])
	}
	only := terms[0]
	if only.unit == "" {
		return q.within(only.number, bare...)
	}
	for _, pair := range q.pairs {
		// 5.11 ft is as often meant to be 5 ft 11 in, so it is refused.
		if pair.large == only.unit && only.marked && !pair.twoDigits {
			return 0, pair.asked
		}
	}
	return q.within(only.number, only.unit)
}

// terms splits the whole text into one or two terms.
func (q quantity) terms(text string) (terms []term, understood bool) {
	if len(text) > longestText {
		return nil, false
	}
	s := scanner{text}
	for len(terms) < 2 {
		s.spaces()
		n, found := s.number()
		if !found {
			return nil, false
		}
		s.spaces()
		name, known := q.unit(&s)
		if !known {
			return nil, false
		}
		terms = append(terms, term{n, name})
		if s.done() {
			return terms, true
		}
	}
	return nil, false
}

// unit reads the unit that comes next, as its short name; "" when the text
// ends here or the next number begins.
func (q quantity) unit(s *scanner) (name string, known bool) {
	if q.per != "" && s.each(q.per) {
		return "", true
	}
	for _, sign := range signs {
		if s.take(sign.text) {
			_, known = q.factors[sign.unit]
			return sign.unit, known
		}
	}
	word := s.word()
	if word == "" {
		return "", true
	}
	s.take(".")
	name, known = q.names[word]
	if q.per != "" {
		s.spaces()
		s.each(q.per)
	}
	return name, known
}

// each skips "/day", "/d", "per day" or "a day", or the same of another span,
// and reports whether it did.
func (s *scanner) each(span string) bool {
	ahead := *s
	slash := ahead.take("/")
	if !slash {
		if each := ahead.word(); each != "a" && each != "per" {
			return false
		}
	}
	ahead.spaces()
	if word := ahead.word(); word != span && !(slash && word == span[:1]) {
		return false
	}
	*s = ahead
	return true
}

// signs are the units written as signs, the longer first.
var signs = []struct{ text, unit string }{
	{"''", "in"},
	{"’’", "in"},
	{"′′", "in"},
	{`"`, "in"},
	{"″", "in"},
	{"”", "in"},
	{"'", "ft"},
	{"′", "ft"},
	{"’", "ft"},
	{"%", "%"},
	{"per cent", "%"},
}

// within returns the one value in the bounds that the number has in any of the
// units, in base units.
func (q quantity) within(n number, units ...string) (value float64, refusal string) {
	found := math.NaN()
	for _, name := range units {
		for _, count := range []float64{n.value, n.grouped} {
			candidate := tidy(count * q.factors[name])
			if !(candidate >= q.low && candidate <= q.high) {
				continue
			}
			if !math.IsNaN(found) {
				return 0, q.accepted + twoReadings
			}
			found = candidate
		}
	}
	if math.IsNaN(found) {
		return 0, q.accepted
	}
	return found, ""
}

const twoReadings = "; this could be read two ways, write it without a mark between thousands"

// together adds a pair such as 5 ft 5 in, in base units.
func (q quantity) together(large, small term) (value float64, refusal string) {
	for _, pair := range q.pairs {
		if pair.large != large.unit || (small.unit != "" && small.unit != pair.small) {
			continue
		}
		if large.whole == "" || small.value >= pair.count {
			return 0, pair.asked
		}
		if pair.twoDigits && small.unit == "" && len(small.whole) != 2 {
			return 0, pair.asked
		}
		value = tidy(large.value*q.factors[pair.large] + small.value*q.factors[pair.small])
		if value < q.low || value > q.high {
			return 0, q.accepted
		}
		return value, ""
	}
	return 0, q.accepted
}

// tidy takes the noise of binary fractions off a converted value: a billionth
// of a base unit is far under anything measured.
func tidy(value float64) float64 { return math.Round(value*1e9) / 1e9 }

// spelt makes the table of names from lines such as "lb: lb lbs pound pounds".
func spelt(lines ...string) map[string]string {
	names := map[string]string{}
	for _, line := range lines {
		short, spellings, _ := strings.Cut(line, ":")
		for _, spelling := range strings.Fields(spellings) {
			names[spelling] = short
		}
	}
	return names
}

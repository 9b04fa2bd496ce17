package draft

import (
	"regexp"
	"strconv"
	"strings"

	"handbreadth/domain/unit"
)

// Small amounts that the quantities of the unit package do not know: hours,
// days, grams, a part of weight. The decimal mark is a point or a comma.

// amountText is a number, whole or with a fraction, and a word that may follow.
var amountText = regexp.MustCompile(`^(\d{1,5}(?:[.,]\d+)?)?\s*([½¼¾])?\s*([a-zA-Z%]*)\.?$`)

var partOf = map[string]float64{"": 0, "½": 0.5, "¼": 0.25, "¾": 0.75}

// parseAmount reads a number with one of the units, by how many base units each
// holds; "" is a number without one. It reports whether the text was understood.
func parseAmount(text string, factors map[string]float64) (float64, bool) {
	m := amountText.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil || m[1]+m[2] == "" || (m[2] != "" && strings.ContainsAny(m[1], ".,")) {
		return 0, false
	}
	factor, known := factors[strings.ToLower(m[3])]
	if !known {
		return 0, false
	}
	whole := 0.0
	if m[1] != "" {
		var ok bool
		if whole, ok = plainNumber(m[1]); !ok {
			return 0, false
		}
	}
	return (whole + partOf[m[2]]) * factor, true
}

// plainNumber reads digits with at most one decimal mark. Signs, exponents and
// the like are refused.
func plainNumber(text string) (float64, bool) {
	for _, c := range text {
		if (c < '0' || c > '9') && c != '.' && c != ',' {
			return 0, false
		}
	}
	value, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	return value, err == nil
}

var (
	aWeekText = regexp.MustCompile(`(?i)\s*(?:(?:/|\ba |\bper )\s*week|\bweekly)\s*$`)
	aDayText  = regexp.MustCompile(`(?i)\s*(?:(?:/|\ba |\bper )\s*day|/d|\bdaily)\s*$`)
)

// perWeek takes "a week" off the end of a text, or "a day", and reports whether
// it was a week.
func perWeek(text string) (amount string, per bool) {
	if at := aWeekText.FindStringIndex(text); at != nil {
		return text[:at[0]], true
	}
	return withoutADay(text), false
}

func withoutADay(text string) string {
	if at := aDayText.FindStringIndex(text); at != nil {
		return text[:at[0]]
	}
	return text
}

// number reads a bare number of a span.
func (r *reader) number(field Field, least, most float64, accepted string) (float64, bool) {
	return r.amount(field, least, most, accepted, nil)
}

// amount reads a number of a span that may be followed by one of the words.
func (r *reader) amount(field Field, least, most float64, accepted string, words []string) (float64, bool) {
	text := r.form.Get(field)
	if text == "" {
		return 0, false
	}
	value, ok := plainNumber(withoutWord(text, words))
	if !ok || !(value >= least && value <= most) {
		r.refuse(field, accepted)
		return 0, false
	}
	return value, true
}

// withoutWord takes one of the words off the end of a text.
func withoutWord(text string, words []string) string {
	for _, word := range words {
		if rest, found := strings.CutSuffix(text, word); found {
			return strings.TrimSpace(rest)
		}
	}
	return text
}

// grams reads an amount of food.
func (r *reader) grams(field Field, most unit.Gram, accepted string) (unit.Gram, bool) {
	g, ok := r.amount(field, 0, float64(most), accepted, []string{"g a day", "g/day", "grams", "g"})
	if ok {
		r.out.Understood[field] = r.style.Grams(unit.Gram(g)) + " a day"
	}
	return unit.Gram(g), ok
}

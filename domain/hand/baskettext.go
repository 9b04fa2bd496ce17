package hand

import (
	"regexp"
	"strconv"
	"strings"

	"handbreadth/domain/food"
	"handbreadth/domain/unit"
)

const basketAccepted = `codes of foods with their shares, such as "chicken_breast 2, lentils 0.5"`

// basketFood is a code, and a share that may follow.
var basketFood = regexp.MustCompile(`^([a-z0-9_]+)(?:\s+(\d{1,2}(?:\.\d{1,3})?))?$`)

// ParseBasket reads chosen foods with commas, semicolons or line breaks between;
// a food without a share has 1. The error is the [unit.Problem] of the first
// that cannot be read; [food.BasketChoice.Check] says more.
func ParseBasket(field, text string) (food.BasketChoice, error) {
	var choice food.BasketChoice
	for _, one := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(",;\n", r) }) {
		one = strings.TrimSpace(one)
		if one == "" {
			continue
		}
		m := basketFood.FindStringSubmatch(one)
		if m == nil {
			return nil, unit.Problem{Field: field, Given: one, Accepted: basketAccepted}
		}
		chosen := food.ChosenFood{Code: m[1], Share: 1}
		if m[2] != "" {
			share, _ := strconv.ParseFloat(m[2], 64) // digits, by the pattern
			chosen.Share = unit.Ratio(share)
		}
		choice = append(choice, chosen)
	}
	return choice, nil
}

// BasketText writes a choice so that [ParseBasket] reads it, shares to a
// thousandth.
func BasketText(choice food.BasketChoice) string {
	texts := make([]string, len(choice))
	for i, chosen := range choice {
		texts[i] = chosen.Code
		if chosen.Share != 1 {
			texts[i] += " " + strings.TrimRight(strings.TrimRight(strconv.FormatFloat(float64(chosen.Share), 'f', 3, 64), "0"), ".")
		}
	}
	return strings.Join(texts, ", ")
}

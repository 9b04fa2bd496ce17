package measures

import (
	"slices"

	"handbreadth/domain/food"
	"handbreadth/domain/unit"
)

// basketLine is one food of a measure, as this client's hand holds it.
type basketLine struct {
	Code   string
	Name   string
	Brings string // "81 g: 133 kcal, 25 g protein, 3 g fat, 0 g carbohydrate"
	Share  string // of the basket, in percent
}

// basketLines tells the foods of a measure, in the order in which they were
// chosen, so that a change of share moves nothing.
func basketLines(f food.Filling, by unit.Ratio, style unit.Style) []basketLine {
	sum := unit.Ratio(0)
	for _, one := range f.Foods {
		sum += one.Share
	}
	lines := make([]basketLine, len(f.Foods))
	for i, one := range f.Foods {
		grams := one.Portion * unit.Gram(by)
		brings := one.Brings(grams)
		lines[i] = basketLine{
			Code: one.Code, Name: one.Name, Share: style.Number(100*float64(one.Share/sum), 0) + "%",
			Brings: style.Grams(grams) + ": " + style.Energy(brings.Energy) + ", " + wholeGrams(brings.Protein, style) + " protein, " +
				wholeGrams(brings.Fat, style) + " fat, " + wholeGrams(brings.Carbohydrate, style) + " carbohydrate",
		}
	}
	return lines
}

// shareSteps are the shares that less and more go through.
var shareSteps = []unit.Ratio{0.25, 0.5, 1, 1.5, 2, 3, 4, 6, 8, 10}

// stepped returns the next share up or down; the first and the last stay.
func stepped(share unit.Ratio, up bool) unit.Ratio {
	if up {
		for _, s := range shareSteps {
			if s > share {
				return s
			}
		}
		return share
	}
	for _, s := range slices.Backward(shareSteps) {
		if s < share {
			return s
		}
	}
	return share
}

// The edits of a basket start from what fills the measure now: a choice of its
// own, or the usual foods, which then become one.

// own returns what is chosen for the measure of a filling, and the rest.
func own(choice food.BasketChoice, f food.Filling) (mine, rest food.BasketChoice) {
	for _, chosen := range choice {
		one, _ := food.ByCode(chosen.Code)
		if g, _ := one.Fills(); g == f.Group {
			mine = append(mine, chosen)
		} else {
			rest = append(rest, chosen)
		}
	}
	if f.Chosen {
		return mine, rest
	}
	mine = nil
	for _, one := range f.Foods {
		mine = append(mine, food.ChosenFood{Code: one.Code, Share: one.Share})
	}
	return mine, rest
}

func withFood(choice food.BasketChoice, f food.Filling, code string) food.BasketChoice {
	mine, rest := own(choice, f)
	if slices.ContainsFunc(mine, func(c food.ChosenFood) bool { return c.Code == code }) {
		return choice
	}
	return slices.Concat(rest, mine, food.BasketChoice{{Code: code, Share: 1}})
}

// withoutFood takes a food away; the last one stays, as nothing cannot fill a
// measure.
func withoutFood(choice food.BasketChoice, f food.Filling, code string) food.BasketChoice {
	mine, rest := own(choice, f)
	left := slices.DeleteFunc(slices.Clone(mine), func(c food.ChosenFood) bool { return c.Code == code })
	if len(left) == 0 {
		return choice
	}
	return slices.Concat(rest, left)
}

func withShare(choice food.BasketChoice, f food.Filling, code string, up bool) food.BasketChoice {
	mine, rest := own(choice, f)
	mine = slices.Clone(mine)
	for i := range mine {
		if mine[i].Code == code {
			mine[i].Share = stepped(mine[i].Share, up)
		}
	}
	return slices.Concat(rest, mine)
}

// usualFor takes back what was chosen for a measure.
func usualFor(choice food.BasketChoice, f food.Filling) food.BasketChoice {
	_, rest := own(choice, f)
	return rest
}

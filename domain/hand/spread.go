package hand

import (
	"math"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Between is a count of a measure told as a range: "1 to 2 palms".
type Between struct{ Least, Most unit.Measure }

// Words tells the range with the measure's name.
func (b Between) Words(k Kind) string {
	if b.Least == b.Most {
		return k.Counted(b.Most)
	}
	return b.Least.String() + " to " + k.Counted(b.Most)
}

// Spread returns how far what one measure brings varies, as a share either
// side: from food to food within the basket, every food being as likely as the
// spread of a uniform distribution says, and with the hand. Both are taken as
// independent; eight in ten measures lie within. It looks at what the measure is
// given for: protein of the palm, carbohydrate of the cupped hand, fat of the
// thumb, energy of the fist.
func (c Content) Spread() derive.Derived[unit.Ratio] {
	value, low, high := c.leading()
	hand := 0.0
	if c.Hand.Value > 0 {
		hand = float64(c.Hand.High/c.Hand.Value) - 1
		low, high = low*float64(c.Hand.Value/c.Hand.Low), high*float64(c.Hand.Value/c.Hand.High)
	}
	foods := 0.0
	if value > 0 {
		foods = eightInTen * (high - low) / math.Sqrt(12) / value
	}
	spread := math.Hypot(foods, hand)
	return derive.Exact(unit.Ratio(spread), derive.Step{
		Key: "spread_" + c.Kind.Key(), Label: "Spread of one " + c.Kind.Name(), Formula: "√(spread of the foods² + spread of the hand²)",
		Inputs: []derive.Input{{Name: "spread of the foods", Value: foods}, {Name: "spread of the hand", Value: hand}},
		Result: spread, Source: derive.FromSteps,
		Note: "Eight in ten measures bring what is told, give or take this share.",
	})
}

// leading returns what the measure is given for, of one measure, with the least
// and the most over the basket.
func (c Content) leading() (value, low, high float64) {
	switch c.Kind {
	case Palm:
		return float64(c.Nutrients.Protein), float64(c.Low.Protein), float64(c.High.Protein)
	case CuppedHand:
		return float64(c.Nutrients.Carbohydrate), float64(c.Low.Carbohydrate), float64(c.High.Carbohydrate)
	case Thumb:
		return float64(c.Nutrients.Fat), float64(c.Low.Fat), float64(c.High.Fat)
	}
	return float64(c.Nutrients.Energy), float64(c.Low.Energy), float64(c.High.Energy)
}

// Between returns a count as the range that brings as much within the spread of
// one measure: fewer where a measure brings more, more where it brings less. It
// is told in whole and half measures, and never as nothing where there is one.
func (c Content) Between(n unit.Measure) Between {
	if n <= 0 {
		return Between{}
	}
	spread := float64(c.Spread().Value)
	least := math.Round(halvesInWhole * float64(n) / (1 + spread))
	most := math.Round(halvesInWhole * float64(n) * (1 + spread))
	return Between{whole(int(math.Max(1, least))), whole(int(most))}
}

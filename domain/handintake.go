package domain

import (
	"fmt"

	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

// HandIntake is what was asked and measured about the client's hand, and what
// the client wishes of the meals.
type HandIntake struct {
	Size hand.Size
	// Weighed holds at most one weighing for each measure.
	Weighed []hand.Weighing
	Wishes  []hand.Wish
	// Sizes are the wished sizes of the meals, one a meal; empty: all alike.
	Sizes []hand.MealSize
	// Basket is what the practitioner puts into the measures; empty: the usual
	// foods.
	Basket food.BasketChoice
	// Ranges tells the measures as ranges: "1 to 2 palms".
	Ranges bool
}

// The wished size of a meal beside the others.
const (
	LeastMealSize hand.MealSize = 0.25
	MostMealSize  hand.MealSize = 4
)

// The names of the fields about the hand in problems.
const (
	FieldPalmBreadth = "hand.palm_breadth"
	FieldPalmLength  = "hand.palm_length"
	FieldHandLength  = "hand.hand_length"
	FieldWeighed     = "hand.weighed" // and a point and the key of the measure
	FieldHand        = "hand."        // and the field of its basket
	FieldWishes      = "meal_wishes"
	FieldMealSizes   = "meal_sizes"
)

func (in Intake) checkHand(ps *unit.Problems) {
	h := in.Hand
	optional(ps, FieldPalmBreadth, h.Size.PalmBreadth, hand.LeastPalmBreadth, hand.MostPalmBreadth, "cm", "5 to 13 cm across the knuckles, or nothing")
	optional(ps, FieldPalmLength, h.Size.PalmLength, hand.LeastPalmLength, hand.MostPalmLength, "cm", "7 to 17 cm from the wrist crease to the base of the middle finger, or nothing")
	optional(ps, FieldHandLength, h.Size.HandLength, hand.LeastHandLength, hand.MostHandLength, "cm", "12 to 27 cm from the wrist crease to the tip of the middle finger, or nothing")
	if h.Size.HandLength > 0 && h.Size.HandLength <= h.Size.PalmLength {
		ps.Add(FieldHandLength, given(float64(h.Size.HandLength), "cm"), "a hand longer than its palm, which is "+given(float64(h.Size.PalmLength), "cm"))
	}
	taken := map[hand.Kind]bool{}
	for _, w := range h.Weighed {
		field := FieldWeighed + "." + w.Kind.Key()
		if taken[w.Kind] {
			ps.Add(field, w.Kind.Name(), "one weighing for each measure")
		}
		taken[w.Kind] = true
		addProblem(ps, w.Check(field))
	}
	if wrong, ok := h.Basket.Check().(unit.Problems); ok {
		for _, p := range wrong {
			p.Field = FieldHand + p.Field
			addProblem(ps, p)
		}
	}
	in.checkWishes(ps)
}

func (in Intake) checkWishes(ps *unit.Problems) {
	before := len(*ps)
	for _, w := range in.Hand.Wishes {
		addProblem(ps, w.Check(FieldWishes, in.MealsPerDay))
	}
	if len(*ps) == before {
		if set := hand.Conflict(in.MealsPerDay, in.Hand.Wishes); set != nil {
			ps.Add(FieldWishes, wishWords(set), "wishes that can be kept together: these cannot, so take one of them back")
		}
	}
	if n := len(in.Hand.Sizes); n > 0 && n != in.MealsPerDay {
		ps.Add(FieldMealSizes, fmt.Sprintf("%d sizes", n), fmt.Sprintf("one size for each of the %d meals, or none", in.MealsPerDay))
	}
	for _, size := range in.Hand.Sizes {
		if !within(size, LeastMealSize, MostMealSize) {
			ps.Add(FieldMealSizes, size.String(), "0.25 to 4, where 1 is an even share")
		}
	}
}

func wishWords(wishes []hand.Wish) string {
	words := ""
	for i, w := range wishes {
		if i > 0 {
			words += "; "
		}
		words += w.Words()
	}
	return words
}

func addProblem(ps *unit.Problems, err error) {
	if p, ok := err.(unit.Problem); ok {
		*ps = append(*ps, p)
	}
}

// calibration returns what the client's hand makes of each measure.
func (in Intake) calibration() hand.Calibration {
	return hand.Calibrate(in.Client.EquationSex, in.Height, in.Hand.Size, in.Hand.Weighed...)
}

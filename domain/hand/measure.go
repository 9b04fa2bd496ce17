// Package hand turns grams into hand measures: what a palm, a fist, a cupped
// hand and a thumb hold for a client, and how many of each belong in a meal.
package hand

import (
	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Kind is one of the four hand measures.
type Kind int

// The hand measures.
const (
	Palm       Kind = iota // protein foods
	Fist                   // vegetables
	CuppedHand             // starch and fruit
	Thumb                  // oils and nuts
)

// Kinds lists the measures in the order in which they are shown.
func Kinds() []Kind { return []Kind{Palm, Fist, CuppedHand, Thumb} }

// Name returns the measure's name in the singular: "cupped hand".
func (k Kind) Name() string { return [...]string{"palm", "fist", "cupped hand", "thumb"}[k] }

// Plural returns the measure's name for a count other than one.
func (k Kind) Plural() string { return [...]string{"palms", "fists", "cupped hands", "thumbs"}[k] }

// Foods returns what the measure is for: "protein foods".
func (k Kind) Foods() string {
	return [...]string{"protein foods", "vegetables", "starch and fruit", "oils and nuts"}[k]
}

// Counted returns the name that goes with a count: "1 palm", "1½ palms", "½ fist".
func (k Kind) Counted(n unit.Measure) string {
	if n > 0 && n <= 1 {
		return n.String() + " " + k.Name()
	}
	return n.String() + " " + k.Plural()
}

// Measures is a count of each measure: of a meal or of a day.
type Measures struct {
	Palm, Fist, CuppedHand, Thumb unit.Measure
}

// Of returns the count of one measure.
func (m Measures) Of(k Kind) unit.Measure {
	return [...]unit.Measure{m.Palm, m.Fist, m.CuppedHand, m.Thumb}[k]
}

// Plus returns the sum of two counts.
func (m Measures) Plus(o Measures) Measures {
	return Measures{m.Palm + o.Palm, m.Fist + o.Fist, m.CuppedHand + o.CuppedHand, m.Thumb + o.Thumb}
}

// Nutrients is what an amount of food brings.
type Nutrients struct {
	Energy       unit.Kilocalorie
	Protein      unit.Gram
	Fat          unit.Gram
	Carbohydrate unit.Gram // total, with fibre inside it
	Fibre        unit.Gram
}

// Content is what one measure holds for a client.
type Content struct {
	Kind      Kind
	Grams     derive.Derived[unit.Gram] // with the lightest and heaviest food
	Volume    unit.Millilitre           // 0 for the palm, which is told by weight
	Nutrients Nutrients                 // of one measure, mean over the basket
	Low, High Nutrients                 // least and most over the basket
	// Hand is the size of this client's hand that is in all of these; no steps
	// and nought where they are those of the reference adult.
	Hand     derive.Derived[unit.Ratio]
	Examples []string // "chicken breast", for screen and paper
	Steps    []derive.Step
}

// Contents is what each of the four measures holds.
type Contents [4]Content

// Bring returns what a count of measures brings.
func (c Contents) Bring(m Measures) Nutrients {
	var sum Nutrients
	for _, k := range Kinds() {
		n, each := float64(m.Of(k)), c[k].Nutrients
		sum.Energy += unit.Kilocalorie(n * float64(each.Energy))
		sum.Protein += unit.Gram(n * float64(each.Protein))
		sum.Fat += unit.Gram(n * float64(each.Fat))
		sum.Carbohydrate += unit.Gram(n * float64(each.Carbohydrate))
		sum.Fibre += unit.Gram(n * float64(each.Fibre))
	}
	return sum
}

// Meal is the measures of one meal.
type Meal struct {
	Name     string // "Meal 1"
	Measures Measures
	Brings   Nutrients
}

// Allotment is the measures of a day, meal by meal.
type Allotment struct {
	Meals    []Meal
	Day      Measures
	Brings   Nutrients // of the whole day
	Distance Distance
	Steps    []derive.Step
	// Alternatives are the next nearest days, each with other totals; they have
	// none of their own.
	Alternatives []Allotment
}

// Distance is how far from its targets an allotment lands: what it brings less
// what was aimed at.
type Distance struct {
	Energy       unit.Kilocalorie
	Protein      unit.Gram
	Fat          unit.Gram
	Carbohydrate unit.Gram
	Far          bool   // a target is missed by more than a fifth
	UnderFloor   bool   // wishes keep the fat of the measures under its floor
	Words        string // "about 40 kcal over and 3 g protein under a day"
}

package food

import (
	"strconv"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// palmWeight is what a palm of cooked meat or fish weighs: 3 oz, by four US
// public leaflets (seen).
const palmWeight unit.Gram = 85

// What the figures of a food must show before it fills a measure alone. This
// program's choice, no source: the fist's bound is the middle between a usual
// fist of vegetables and the same volume, two cupped hands, of starch; the
// palm's protein is a quarter of a usual palm's.
const (
	leastPalmProtein  = 5    // g a portion
	mostPalmFat       = 0.70 // of energy
	mostFistEnergy    = 109  // kcal in 240 ml
	mostCuppedHandFat = 0.40 // of energy
	leastThumbFat     = 0.50 // of energy
)

// Fills returns the group whose measure the food fills alone, and false where it
// fills none: it is then counted by what it brings.
func (f Food) Fills() (Group, bool) {
	g, ok := f.Size.group()
	if !ok || !f.eaten() || !f.Class.mayFill(g) {
		return 0, false
	}
	value, bound, atLeast := f.tested(g)
	if atLeast && value < bound || !atLeast && value > bound {
		return 0, false
	}
	if g == Protein && float64(f.Brings(f.Portion).Protein) < leastPalmProtein {
		return 0, false
	}
	return g, true
}

// tested returns the figure that decides whether a food fills the measure of a
// group, its bound, and whether that is the least or the most.
func (f Food) tested(g Group) (value, bound float64, atLeast bool) {
	switch g {
	case Protein:
		return f.fatShare(), mostPalmFat, false
	case Vegetables:
		return float64(f.Brings(f.Portion).Energy), mostFistEnergy, false
	case StarchAndFruit:
		return f.fatShare(), mostCuppedHandFat, false
	}
	return f.fatShare(), leastThumbFat, true
}

// Energy of a gram, kcal. Source: Regulation (EU) 1169/2011, annex XIV (seen).
const (
	energyProtein      = 4
	energyFat          = 9
	energyCarbohydrate = 4
	energyAlcohol      = 7
)

// fatShare returns the share of the food's energy that fat gives.
func (f Food) fatShare() float64 {
	if f.per100.energy == 0 {
		return 0
	}
	return energyFat * f.per100.fat / f.per100.energy
}

var ownChoice = derive.Source{Text: "this program's choice, no source", Confidence: derive.Custom}

var figuresSource = derive.Source{
	Text:       "USDA National Nutrient Database for Standard Reference 28 (2016) and its household measures",
	Confidence: derive.Seen,
}

// FillStep explains which measure the food fills, or that it is counted by what
// it brings.
func (f Food) FillStep() derive.Step {
	step := derive.Step{Key: "fills_" + f.Code, Label: "Which measure " + f.Name + " fills", Source: ownChoice}
	sized, ok := f.Size.group()
	if !ok || !f.eaten() || !f.Class.mayFill(sized) {
		step.Formula = "told by a serving, or of a class that fills no measure alone"
		step.Inputs = []derive.Input{{Name: "class", Text: f.Class.Name()}, {Name: "told by", Text: f.Size.Words()}}
		step.Note = "Counted by what it brings."
		return step
	}
	step.Inputs = []derive.Input{{Name: "told by", Text: f.Size.Words()}}
	f.addTest(&step, sized)
	step.Note = "Counted by what it brings."
	if g, fills := f.Fills(); fills {
		step.Note = "Fills a " + g.Measure() + "."
	}
	return step
}

// addTest tells what decides whether the food fills the measure of a group.
func (f Food) addTest(step *derive.Step, g Group) {
	value, bound, atLeast := f.tested(g)
	step.Result = value
	word := "at most "
	if atLeast {
		word = "at least "
	}
	if g == Vegetables {
		step.Unit = "kcal"
		step.Formula = "energy of 240 ml, " + word + number(bound) + " kcal"
		step.Inputs = append(step.Inputs, derive.Input{Name: "energy of 240 ml", Value: value, Unit: "kcal"})
		return
	}
	step.Formula = "9 × fat / energy, " + word + number(bound)
	step.Inputs = append(step.Inputs,
		derive.Input{Name: "fat in 100 g", Value: f.per100.fat, Unit: "g"},
		derive.Input{Name: "energy in 100 g", Value: f.per100.energy, Unit: "kcal"})
	if g == Protein {
		step.Formula += ", and at least " + number(leastPalmProtein) + " g of protein in the portion"
		step.Inputs = append(step.Inputs, derive.Input{
			Name: "protein of the portion", Value: float64(f.Brings(f.Portion).Protein), Unit: "g",
		})
	}
}

// PortionStep explains how the weight of the portion was made.
func (f Food) PortionStep() derive.Step {
	step := derive.Step{
		Key: "portion_" + f.Code, Label: "Portion of " + f.Name, Result: float64(f.Portion), Unit: "g",
		Source: figuresSource, Note: f.PortionWords,
	}
	if f.from.seq == 0 {
		step.Formula = "the weight of a palm, cooked"
		return step
	}
	step.Formula = number(f.from.factor) + " × household measure " + strconv.Itoa(f.from.seq)
	if f.from.ndb != "" {
		step.Formula += " of a like food, number " + f.from.ndb
		return step
	}
	for _, m := range f.measures {
		if m.Seq == f.from.seq {
			step.Inputs = []derive.Input{{Name: m.Words, Value: float64(m.Grams), Unit: "g"}}
		}
	}
	return step
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

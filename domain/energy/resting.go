package energy

import (
	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Sex is the sex whose equation is used.
type Sex = unit.Sex

// The groups that the published equations know.
const (
	Female = unit.Female
	Male   = unit.Male
)

// RestingBand is the half-width of the band shown around any estimated resting
// energy: what validation studies count is the share of people whose measured
// value lies within 10 % of the estimate. For the default it is about eight in
// ten (82 % without obesity, Frankenfield 2005, from memory; 78 % overall, St
// Jeor 2004, seen), so every band here is meant to hold eight in ten people.
const RestingBand = 0.10

// MeasuredBand is the half-width of the band around a measured value.
// Source: day-to-day variation of 3-5 % within a person (Compher 2006, J Am Diet
// Assoc 106:881, from memory).
const MeasuredBand = 0.05

// eightInTen is the number of standard errors either side that hold 80 % of a
// normal distribution.
const eightInTen = 1.2816

// The accepted span of a measured value, a day.
const (
	LeastMeasured unit.Kilocalorie = 500
	MostMeasured  unit.Kilocalorie = 5000
)

// Resting returns resting energy a day with its band: the measured value where
// there is one, else by the equation. An equation that cannot be used for want
// of lean mass gives way to the default.
func Resting(equation RestingEquation, in RestingInput) derive.Derived[unit.Kilocalorie] {
	if in.Measured > 0 {
		return measured(in.Measured)
	}
	e, known := find(equation)
	if !known || (e.made.needsLean && in.LeanMass <= 0) {
		e, _ = find(MifflinStJeor)
	}
	return e.work(in)
}

func (e Equation) work(in RestingInput) derive.Derived[unit.Kilocalorie] {
	w := e.formula(in)
	half := joined(RestingBand*w.kcal, eightInTen*w.stray)
	low, high := w.kcal-half, w.kcal+half
	note := "What the body spends at complete rest. The range is 10 % either side: " + e.Accuracy + "."
	if w.stray > 0 {
		note = "What the body spends at complete rest. The range joins 10 % either side with the error of lean mass: " + e.Accuracy + "."
	}
	step := derive.Step{
		Key: "resting", Label: "Resting energy", Formula: w.formula,
		Inputs: append([]derive.Input{{Name: "equation", Text: e.Name + ", " + string(in.Sex)}}, w.inputs...),
		Result: w.kcal, Unit: "kcal/day",
		Range: &derive.Range{Low: low, High: high}, Source: e.Source, Note: note,
	}
	return derive.Within(unit.Kilocalorie(w.kcal), unit.Kilocalorie(low), unit.Kilocalorie(high), step)
}

func measured(value unit.Kilocalorie) derive.Derived[unit.Kilocalorie] {
	low, high := value*(1-MeasuredBand), value*(1+MeasuredBand)
	return derive.Within(value, low, high, derive.Step{
		Key: "resting", Label: "Resting energy", Formula: "as measured",
		Inputs: []derive.Input{{Name: "measured", Value: float64(value), Unit: "kcal/day"}},
		Result: float64(value), Unit: "kcal/day",
		Range:  &derive.Range{Low: float64(low), High: float64(high)},
		Source: derive.Source{Text: "indirect calorimetry, as given; day-to-day variation 3-5 % (Compher 2006, J Am Diet Assoc 106:881)", Confidence: derive.Memory},
		Note:   "A measured value wins over any equation.",
	})
}

// Comparison is one equation beside the others.
type Comparison struct {
	Equation Equation
	Suits    bool
	Why      string // why it is not meant for this client; empty where it is
	// Note says what was put in that is not measured; empty where nothing.
	Note    string
	Resting derive.Derived[unit.Kilocalorie]
	Worked  bool // false where a value is missing and nothing was worked out
	Chosen  bool
}

// Compare returns every published equation for a client, the default first.
func Compare(chosen RestingEquation, in RestingInput) []Comparison {
	all := make([]Comparison, 0, len(equations))
	for _, e := range equations {
		c := Comparison{Equation: e, Chosen: e.Code == chosen && in.Measured <= 0}
		c.Suits, c.Why = e.Suits(in)
		if c.Worked = !e.made.needsLean || in.LeanMass > 0; c.Worked {
			c.Resting = e.work(in)
		}
		if e.made.needsLean && c.Worked && !in.LeanMeasured {
			c.Note = "lean mass is an estimate, so the range is wider"
		}
		all = append(all, c)
	}
	return all
}

// Agreement is how far the equations that are meant for a client agree with the
// resting energy that is used.
type Agreement struct {
	Least, Most unit.Kilocalorie // a day, of the equations that suit; nought where none does
	Inside      int              // how many of them lie in the band of the one used
	Of          int
}

// AgreementOf counts the equations that suit beside the resting energy used.
func AgreementOf(all []Comparison, used derive.Derived[unit.Kilocalorie]) Agreement {
	var a Agreement
	for _, c := range all {
		if !c.Suits || !c.Worked {
			continue
		}
		value := c.Resting.Value
		if a.Of == 0 {
			a.Least, a.Most = value, value
		}
		a.Least, a.Most = min(a.Least, value), max(a.Most, value)
		a.Of++
		if value >= used.Low && value <= used.High {
			a.Inside++
		}
	}
	return a
}

// Package energy works out what a person spends and what a goal asks them to
// take in: resting energy, activity, maintenance energy and target energy.
package energy

import (
	"fmt"

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

// RestingEquation names a published equation for resting energy.
type RestingEquation string

// MifflinStJeor is the default equation: the one that came within 10 % of the
// measured value most often in adults (Frankenfield 2005).
const MifflinStJeor RestingEquation = "mifflin_st_jeor"

// RestingEquations lists the equations that can be chosen.
func RestingEquations() []RestingEquation { return []RestingEquation{MifflinStJeor} }

// Valid reports whether the equation is known.
func (e RestingEquation) Valid() bool { return e == MifflinStJeor }

// Name is the equation's name as the trade writes it.
func (e RestingEquation) Name() string {
	if e == MifflinStJeor {
		return "Mifflin-St Jeor"
	}
	return string(e)
}

// RestingInput is what the equations for resting energy need.
type RestingInput struct {
	Sex    Sex
	Age    unit.Year
	Weight unit.Kilogram
	Height unit.Centimetre
}

// Coefficients of Mifflin-St Jeor 1990, simplified form.
const (
	mifflinPerKilogram   = 10
	mifflinPerCentimetre = 6.25
	mifflinPerYear       = 5
	mifflinMale          = 5
	mifflinFemale        = -161
)

// RestingBand is the half-width of the band shown around any estimated resting
// energy: the share of people whose measured value lies within 10 % of the
// estimate is what the validation studies count.
const RestingBand = 0.10

var mifflinSource = derive.Source{
	Text:       "Mifflin et al. 1990, Am J Clin Nutr 51:241-247; range: within 10 % of measured in most adults (Frankenfield 2005, J Am Diet Assoc 105:775-789)",
	Confidence: derive.Seen,
}

// Resting returns resting energy a day with its band of 10 % either side.
//
// Source: Mifflin et al. 1990, Am J Clin Nutr 51:241-247 (498 adults, 19-78
// years): 10 W + 6.25 H - 5 A, + 5 for men, - 161 for women, in kcal a day.
func Resting(equation RestingEquation, in RestingInput) derive.Derived[unit.Kilocalorie] {
	constant, sign := float64(mifflinFemale), "- 161"
	if in.Sex == Male {
		constant, sign = mifflinMale, "+ 5"
	}
	value := mifflinPerKilogram*float64(in.Weight) +
		mifflinPerCentimetre*float64(in.Height) -
		mifflinPerYear*float64(in.Age) + constant
	low, high := value*(1-RestingBand), value*(1+RestingBand)
	step := derive.Step{
		Key:     "resting",
		Label:   "Resting energy",
		Formula: "10 × weight + 6.25 × height − 5 × age " + sign,
		Inputs: []derive.Input{
			{Name: "equation", Text: fmt.Sprintf("%s, %s", equation.Name(), in.Sex)},
			{Name: "weight", Value: float64(in.Weight), Unit: "kg"},
			{Name: "height", Value: float64(in.Height), Unit: "cm"},
			{Name: "age", Value: float64(in.Age), Unit: "years"},
		},
		Result: value, Unit: "kcal/day",
		Range:  &derive.Range{Low: low, High: high},
		Source: mifflinSource,
		Note:   "What the body spends at complete rest.",
	}
	return derive.Within(unit.Kilocalorie(value), unit.Kilocalorie(low), unit.Kilocalorie(high), step)
}

package domain

import (
	"fmt"
	"math"

	"handbreadth/domain/body"
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

func kcalInput(name string, e unit.Kilocalorie) derive.Input {
	return derive.Input{Name: name, Value: float64(e), Unit: "kcal/day"}
}

func daysInput(days int) derive.Input {
	return derive.Input{Name: "days", Value: float64(days), Unit: "days"}
}

// holding returns the energy that holds a weight: the goal's where it is reached,
// and else that of the end. Its range is as wide as that of maintenance.
func (p Plan) holding(c course, end unit.Kilogram, o energy.Outcome) derive.Derived[unit.Kilocalorie] {
	maintenance := p.Maintenance
	value := maintenance.Value
	if o.Change != 0 {
		value = body.HoldingEnergy(c.start, end)
	}
	scale := value / maintenance.Value
	low, high := maintenance.Low*scale, maintenance.High*scale
	return derive.Within(value, low, high, derive.Step{
		Key: "holding", Label: "Energy that holds the new weight",
		Formula: "the energy at which the model's weight settles there",
		Inputs:  []derive.Input{{Name: "weight to hold", Value: float64(end), Unit: "kg"}, kcalInput("maintenance energy now", maintenance.Value)},
		Result:  float64(value), Unit: "kcal/day",
		Range: &derive.Range{Low: float64(low), High: float64(high)}, Source: dynamicModel,
		Note: "The range is as wide as that of maintenance energy. After a loss a little water comes back in the first weeks.",
	})
}

func settles(c course, target unit.Kilocalorie) derive.Derived[unit.Kilogram] {
	value := body.SettledWeight(c.start, target)
	return derive.Exact(value, derive.Step{
		Key: "settles", Label: "Weight at which this energy settles",
		Formula: "the weight at which the model spends what is eaten",
		Inputs:  []derive.Input{kcalInput("target energy", target)},
		Result:  float64(value), Unit: "kg", Source: dynamicModel,
		Note: "Half of the way takes about a year; it assumes that activity and eating stay the same for many years.",
	})
}

// skewed is the part of half the range from which the line counts as far from its
// middle: common practice, no source.
const skewed = 0.25

// skewNote says where half of the courses lie, if the line is far from there; an
// activity class can be much wider on one side of its level.
func (p Plan) skewNote(bands []body.Band) string {
	last := bands[len(bands)-1]
	middle := (last.Low + last.High) / 2
	if math.Abs(float64(middle-last.Weight)) <= skewed*float64(last.High-last.Low)/2 {
		return ""
	}
	side := "lower"
	if middle > last.Weight {
		side = "higher"
	}
	return fmt.Sprintf("The line is drawn at an activity level of %.2f, and %.2f to %.2f is as likely: half of the courses end %s than about %.1f kg.",
		float64(p.Activity.Value), float64(p.Activity.Low), float64(p.Activity.High), side, float64(middle))
}

// essentialFat is the part of weight that a body needs as fat.
// Source: McArdle, Katch and Katch, Exercise Physiology: about 3 % for men and 12 %
// for women (from memory).
func essentialFat(sex unit.Sex) unit.Percent {
	if sex == unit.Male {
		return 3
	}
	return 12
}

// leanNote says where a course leads to less fat than a body needs: the model
// describes nobody there, and stops at [body.LeastFat].
func (p Plan) leanNote(c course, phases []body.Phase, end body.Day) string {
	leanest := end
	if turn := body.After(c.start, phases[0]); turn.FatMass < end.FatMass {
		leanest = turn
	}
	share, least := 100*leanest.FatMass/leanest.Weight, essentialFat(p.Intake.Client.EquationSex)
	switch {
	case leanest.FatMass <= body.LeastFat+1e-6:
		return fmt.Sprintf("The course is not to be followed: body fat would run out, and the model stops at %.1f kg of it. A body needs about %.0f %%.", float64(body.LeastFat), float64(least))
	case float64(share) < float64(least):
		return fmt.Sprintf("The course leads to %.1f %% body fat; a body needs about %.0f %%, and the model was not made for less.", float64(share), float64(least))
	}
	return ""
}

func final(bands []body.Band, note string) derive.Derived[unit.Kilogram] {
	last := bands[len(bands)-1]
	return derive.Within(last.Weight, last.Low, last.High, derive.Step{
		Key: "projection", Label: "Expected weight", Formula: "the model's course, day by day",
		Inputs: []derive.Input{daysInput(last.Day)},
		Result: float64(last.Weight), Unit: "kg",
		Range: &derive.Range{Low: float64(last.Low), High: float64(last.High)}, Source: dynamicModel,
		Note: "Eight in ten courses keep to the range: from the error of resting energy, the width of the activity class and how closely a plan is kept." + after(note),
	})
}

// after sets a note behind another sentence.
func after(note string) string {
	if note == "" {
		return ""
	}
	return " " + note
}

func finalFat(end body.Day, note string) derive.Derived[unit.Kilogram] {
	return derive.Exact(end.FatMass, derive.Step{
		Key: "projected_fat", Label: "Body fat in it",
		Formula: "the model's course; lean tissue follows fat by 10.4 × ln(fat)",
		Inputs:  []derive.Input{daysInput(end.Day)},
		Result:  float64(end.FatMass), Unit: "kg",
		Source: derive.Source{Text: "Hall et al. 2011, Lancet 378:826-837; Forbes curve, Hall 2007, Br J Nutr 97:1059", Confidence: derive.Memory},
		Note:   note,
	})
}

func expected(day int, eaten unit.Kilocalorie, weight unit.Kilogram) derive.Step {
	return derive.Step{
		Key: "expected", Label: "Weight that the model expects beside the static rule",
		Formula: "the model's course at this energy",
		Inputs:  []derive.Input{kcalInput("energy", eaten), daysInput(day)},
		Result:  float64(weight), Unit: "kg", Source: dynamicModel,
	}
}

func halfTime(c course) derive.Derived[unit.Day] {
	linear := body.LinearOf(c.start)
	value := unit.Day(linear.HalfTime)
	return derive.Exact(value, derive.Step{
		Key: "half_time", Label: "Time until half of the change", Formula: "ln 2 × energy density / slope",
		Inputs: []derive.Input{
			{Name: "energy density", Value: linear.Density, Unit: "kJ/kg"},
			{Name: "slope", Value: linear.Slope, Unit: "kJ/kg a day"},
		},
		Result: float64(value), Unit: "days",
		Source: derive.Source{Text: "linear form of Hall et al. 2011, Lancet 378:826-837", Confidence: derive.Memory},
	})
}

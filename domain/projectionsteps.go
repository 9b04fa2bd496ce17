package domain

import (
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

func final(bands []body.Band) derive.Derived[unit.Kilogram] {
	last := bands[len(bands)-1]
	return derive.Within(last.Weight, last.Low, last.High, derive.Step{
		Key: "projection", Label: "Expected weight", Formula: "the model's course, day by day",
		Inputs: []derive.Input{daysInput(last.Day)},
		Result: float64(last.Weight), Unit: "kg",
		Range: &derive.Range{Low: float64(last.Low), High: float64(last.High)}, Source: dynamicModel,
		Note: "Eight in ten courses keep to the range: from the error of resting energy, the width of the activity class and how closely a plan is kept.",
	})
}

func finalFat(end body.Day) derive.Derived[unit.Kilogram] {
	return derive.Exact(end.FatMass, derive.Step{
		Key: "projected_fat", Label: "Body fat in it",
		Formula: "the model's course; lean tissue follows fat by 10.4 × ln(fat)",
		Inputs:  []derive.Input{daysInput(end.Day)},
		Result:  float64(end.FatMass), Unit: "kg",
		Source: derive.Source{Text: "Hall et al. 2011, Lancet 378:826-837; Forbes curve, Hall 2007, Br J Nutr 97:1059", Confidence: derive.Memory},
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

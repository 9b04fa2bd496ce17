package domain

import (
	"handbreadth/domain/body"
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

// Projection is the expected course of the weight with its range.
type Projection struct {
	// Bands is the course day by day, day 0 first.
	Bands  []body.Band
	Phases []body.Phase
	// Reached is the day on which the goal weight is reached and the second
	// phase begins, which holds it; 0 where the course has one phase.
	Reached int
	// Goal is the wished weight; 0 where none was named.
	Goal unit.Kilogram
	// Final is the weight at the end with its range.
	Final derive.Derived[unit.Kilogram]
	// Holding is the energy a day that holds the weight of the goal, or of the
	// end where no goal is reached.
	Holding derive.Derived[unit.Kilocalorie]
	// HalfTime is the time after which half of a change of weight has happened.
	HalfTime derive.Derived[unit.Day]
	start    unit.Kilogram
	change   unit.Kilocalorie
}

// The lengths of a projection.
const (
	// ShortestProjection is drawn where a goal is near or none is named.
	ShortestProjection = 182 // days
	// LongestProjection bounds what is drawn: further away the range says little.
	LongestProjection = 730 // days
	// HeldFor is how long the goal weight is shown as held.
	HeldFor = 91 // days
)

// Static returns the weight that the static rule promises for a day: a straight
// line, that stops where the goal weight is named and reached.
func (p *Projection) Static(day int) unit.Kilogram {
	weight := p.start + unit.Kilogram(float64(p.change)*float64(day)/energy.StaticEnergyPerKilogram)
	switch {
	case p.Goal == 0:
		return weight
	case p.change < 0:
		return max(weight, p.Goal)
	}
	return min(weight, p.Goal)
}

// course is a person as the dynamic model begins with them.
type course struct {
	start  body.Start
	spread body.Spread
}

var dynamicModel = derive.Source{
	Text:       "Hall et al. 2011, Lancet 378:826-837, adult model of weight dynamics, stepped daily",
	Confidence: derive.Memory,
}

func courseOf(p Plan) course {
	fat := float64(p.Body.Fat.Fat.Value) / 100
	resting := body.RestingSpread
	if p.Intake.MeasuredResting > 0 {
		resting = energy.MeasuredBand
	}
	return course{
		start: body.Start{
			Weight: p.Intake.Weight, FatMass: p.Intake.Weight * unit.Kilogram(fat),
			Resting: p.Resting.Value, PAL: p.Activity.Value,
		},
		spread: body.Spread{
			Resting:   resting,
			Activity:  body.ActivitySpread(p.Activity.Value, p.Activity.Low, p.Activity.High),
			Adherence: body.AdherenceSpread,
		},
	}
}

// EnergyFor returns the energy that brings a weight in so many days.
func (c course) EnergyFor(goal unit.Kilogram, days int) (unit.Kilocalorie, bool) {
	found, _, err := body.EnergyFor(c.start, goal, days)
	return found, err == nil
}

// DaysTo returns the first day on which an energy has brought a weight.
func (c course) DaysTo(goal unit.Kilogram, target unit.Kilocalorie) (int, bool) {
	return body.DaysTo(c.start, goal, target)
}

// Source names the model.
func (c course) Source() derive.Source { return dynamicModel }

func project(p Plan, c course, o energy.Outcome) *Projection {
	target := o.Target.Value
	pr := &Projection{Goal: p.Intake.Goal.Weight, start: p.Intake.Weight, change: o.Change}
	if !o.ReachedOn.IsZero() {
		pr.Reached = p.Intake.Date.DaysUntil(o.ReachedOn)
	}
	lead := max(ShortestProjection, pr.Reached)
	if pr.Reached == 0 && o.Change != 0 {
		lead = LongestProjection / 2
	}
	if pr.Reached == 0 || pr.Reached > LongestProjection-HeldFor {
		lead, pr.Reached = min(lead, LongestProjection), 0
		pr.Phases = []body.Phase{{Days: lead, Energy: target}}
	} else {
		lead = pr.Reached
		pr.Phases = []body.Phase{{Days: lead, Energy: target}}
	}
	pr.Holding = holding(c, target, lead)
	if pr.Reached > 0 {
		held := max(HeldFor, ShortestProjection-lead)
		pr.Phases = append(pr.Phases, body.Phase{Days: held, Energy: pr.Holding.Value})
	}
	pr.Bands = body.Fan(c.start, c.spread, pr.Phases...)
	pr.Final = final(pr.Bands)
	pr.HalfTime = halfTime(c)
	return pr
}

func holding(c course, target unit.Kilocalorie, days int) derive.Derived[unit.Kilocalorie] {
	value := body.HoldingEnergy(c.start, target, days)
	return derive.Exact(value, derive.Step{
		Key: "holding", Label: "Energy that holds the new weight",
		Formula: "the energy at which the model's weight stays, once fluid and adaptation have settled",
		Inputs: []derive.Input{
			{Name: "target energy until then", Value: float64(target), Unit: "kcal/day"},
			{Name: "days", Value: float64(days), Unit: "days"},
		},
		Result: float64(value), Unit: "kcal/day", Source: dynamicModel,
	})
}

func final(bands []body.Band) derive.Derived[unit.Kilogram] {
	last := bands[len(bands)-1]
	return derive.Within(last.Weight, last.Low, last.High, derive.Step{
		Key: "projection", Label: "Expected weight", Formula: "the model's course, day by day",
		Inputs: []derive.Input{{Name: "days", Value: float64(last.Day), Unit: "days"}},
		Result: float64(last.Weight), Unit: "kg",
		Range: &derive.Range{Low: float64(last.Low), High: float64(last.High)}, Source: dynamicModel,
		Note: "Eight in ten courses keep to the range: from the error of resting energy, the width of the activity class and how closely a plan is kept.",
	})
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

func (p *Projection) steps() []derive.Step {
	if p == nil {
		return nil
	}
	steps := append([]derive.Step{}, p.Final.Steps...)
	steps = append(steps, p.Holding.Steps...)
	return append(steps, p.HalfTime.Steps...)
}

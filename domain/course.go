package domain

import (
	"handbreadth/domain/body"
	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// course is a person as the dynamic model begins with them.
type course struct {
	start  body.Start
	spread body.Spread
}

var dynamicModel = derive.Source{
	Text:       "Hall et al. 2011, Lancet 378:826-837, adult model of weight dynamics",
	Confidence: derive.Memory,
}

func courseOf(p Plan) course {
	fat := float64(p.Body.Fat.Fat.Value) / 100
	activity, skew := body.ActivitySpread(p.Activity.Value, p.Activity.Low, p.Activity.High)
	return course{
		start: body.Start{
			Weight: p.Intake.Weight, FatMass: p.Intake.Weight * unit.Kilogram(fat),
			Resting: p.Resting.Value, PAL: p.Activity.Value,
		},
		spread: body.Spread{
			Resting:   body.RestingSpread(p.Resting.Value, p.Resting.Low, p.Resting.High),
			Activity:  activity,
			Adherence: body.AdherenceSpread,
			Skew:      skew,
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

// Weights returns the weights on two days of an energy.
func (c course) Weights(target unit.Kilocalorie, first, last int) (from, to unit.Kilogram) {
	return body.WeightsOn(c.start, target, first, last)
}

// Source names the model.
func (c course) Source() derive.Source { return dynamicModel }

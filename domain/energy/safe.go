package energy

import (
	"math"
	"sort"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// floorOf returns the least target that a guard does not speak at: the least
// energy of the sex, or resting energy where that is more.
func floorOf(in GoalInput) unit.Kilocalorie { return max(LeastEnergy(in.Sex), in.Resting) }

// safest returns the energy that lowers weight the fastest inside every guard:
// the rate of loss by the static rule and by the model, the deficit, the least
// energy and resting energy. It is a whole number of kilocalories, rounded up so
// that it stays inside, and never above maintenance energy.
func safest(in GoalInput) derive.Derived[unit.Kilocalorie] {
	maintenance := in.Maintenance.Value
	byRate := unit.Kilocalorie(float64(fastest(in.Weight)) * StaticEnergyPerKilogram / 7)
	least := max(maintenance-min(byRate, MostDeficit), floorOf(in))
	byRule := min(maintenance, unit.Kilocalorie(math.Ceil(float64(least)-rounding)))
	value := in.slowed(byRule)
	slower, inputs := "", []derive.Input{
		{Name: "maintenance energy", Value: float64(maintenance), Unit: "kcal/day"},
		{Name: "fastest loss", Value: float64(fastest(in.Weight)), Unit: "kg/week"},
		{Name: "least energy", Value: float64(LeastEnergy(in.Sex)), Unit: "kcal/day"},
		{Name: "resting energy", Value: float64(in.Resting), Unit: "kcal/day"},
	}
	if value > byRule {
		const name = "energy at which the model loses no faster"
		slower, inputs = ", "+name, append(inputs, derive.Input{Name: name, Value: float64(value), Unit: "kcal/day"})
	}
	return derive.Exact(value, derive.Step{
		Key: "safe_energy", Label: "Least energy inside the guards",
		Formula: "the highest of maintenance energy − 1000, maintenance energy − fastest loss × 7716 / 7, least energy" + slower + " and resting energy, rounded up; never over maintenance energy",
		Inputs:  inputs,
		Result:  float64(value), Unit: "kcal/day",
		Source: derive.Source{Text: "NIH 1998 (rate and deficit); AHA/ACC/TOS 2013 guideline (least energy); resting energy: common practice", Confidence: derive.Memory},
	})
}

// slowed returns the first whole number of kilocalories from an energy on at
// which the model, too, loses no faster than the guard after the first week;
// never above maintenance energy. The loss falls as energy rises.
func (in GoalInput) slowed(least unit.Kilocalorie) unit.Kilocalorie {
	fast := func(e unit.Kilocalorie) bool { return tooFast(-laterRate(in, e).Value, in.Weight) }
	if in.Dynamics == nil || !fast(least) {
		return least
	}
	steps := int(math.Ceil(float64(in.Maintenance.Value - least)))
	more := sort.Search(steps, func(n int) bool { return !fast(least + unit.Kilocalorie(n)) })
	return min(in.Maintenance.Value, least+unit.Kilocalorie(more))
}

// safeSlack keeps a plan by the safe date above the safe energy, whatever the
// solver leaves over.
const safeSlack unit.Kilocalorie = 0.05

// safeDate returns the earliest date on which the goal weight is reached at a
// safe energy and no faster than the rate guard; zero where there is none.
func safeDate(in GoalInput, energy unit.Kilocalorie) unit.Date {
	loss := float64(in.Weight - in.Goal.Weight)
	deficit := in.Maintenance.Value - energy - safeSlack
	if in.Goal.Weight == 0 || loss <= 0 || deficit <= 0 {
		return unit.Date{}
	}
	days := int(math.Ceil(loss * StaticEnergyPerKilogram / float64(deficit)))
	if in.Dynamics != nil {
		reached := false
		if days, reached = in.Dynamics.DaysTo(in.Goal.Weight, energy+safeSlack); !reached {
			return unit.Date{}
		}
	}
	byRate := int(math.Ceil(7*loss/float64(fastest(in.Weight)) - rounding))
	return in.Today.AddDays(max(1, days, byRate))
}

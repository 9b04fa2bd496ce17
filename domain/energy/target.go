package energy

import (
	"math"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// wish is a weight to be reached in so many days.
type wish struct {
	weight unit.Kilogram
	days   int
}

// rateWeeks is how long a wished rate is looked at where no weight was named:
// common practice, no source.
const rateWeeks = 12

// wishOf returns the weight and the days that a goal names, and false where it
// names no date and no rate.
func wishOf(in GoalInput) (wish, bool) {
	g := in.Goal
	switch {
	case g.Energy != 0 || g.Kind == Maintain:
		return wish{}, false
	case g.PerWeek != 0:
		if g.Weight == 0 {
			change := unit.Kilogram(rateWeeks * float64(g.PerWeek))
			if g.Kind == Lose {
				change = -change
			}
			return wish{in.Weight + change, rateWeeks * 7}, true
		}
		weeks := math.Abs(float64(g.Weight-in.Weight)) / float64(g.PerWeek)
		return wish{g.Weight, max(1, int(math.Ceil(weeks*7-rounding)))}, true
	case g.Weight != 0 && !g.By.IsZero():
		return wish{g.Weight, in.Today.DaysUntil(g.By)}, true
	}
	return wish{}, false
}

func (w wish) inputs(in GoalInput) []derive.Input {
	return []derive.Input{
		{Name: "maintenance energy", Value: float64(in.Maintenance.Value), Unit: "kcal/day"},
		{Name: "weight", Value: float64(in.Weight), Unit: "kg"},
		{Name: "goal weight", Value: float64(w.weight), Unit: "kg"},
		{Name: "days", Value: float64(w.days), Unit: "days"},
	}
}

// targetEnergy returns the target, and false where no energy brings the wish.
func targetEnergy(in GoalInput) (derive.Derived[unit.Kilocalorie], bool) {
	g := in.Goal
	maintenance := derive.Input{Name: "maintenance energy", Value: float64(in.Maintenance.Value), Unit: "kcal/day"}
	w, wishes := wishOf(in)
	switch {
	case g.Energy != 0:
		return targetStep(in, g.Energy-in.Maintenance.Value, "energy as agreed",
			[]derive.Input{{Name: "agreed energy", Value: float64(g.Energy), Unit: "kcal/day"}},
			derive.Source{Text: "agreed with the client", Confidence: derive.Arithmetic}, ""), true
	case g.Kind == Maintain:
		return targetStep(in, 0, "maintenance energy", []derive.Input{maintenance}, derive.FromSteps, ""), true
	case wishes && in.Dynamics == nil:
		return staticTarget(in, w), true
	case wishes:
		return dynamicTarget(in, w)
	case g.Kind == Gain:
		return targetStep(in, DefaultSurplus, "maintenance energy + 360",
			[]derive.Input{maintenance},
			derive.Source{Text: "Slater 2019, Front Nutr 6:131 (1500-2000 kJ a day)", Confidence: derive.SeenSecond},
			"No date was named, so a customary surplus is used."), true
	default:
		return defaultLoss(in, maintenance), true
	}
}

func staticTarget(in GoalInput, w wish) derive.Derived[unit.Kilocalorie] {
	change := float64(w.weight-in.Weight) * StaticEnergyPerKilogram / float64(w.days)
	return targetStep(in, unit.Kilocalorie(change),
		"maintenance energy + (goal weight − weight) × 7716 / days", w.inputs(in), staticRule, "")
}

// besideTarget is what the static rule says where the model decides.
func besideTarget(in GoalInput, w wish) derive.Derived[unit.Kilocalorie] {
	d := staticTarget(in, w)
	step, _ := d.Last()
	step.Key, step.Label, step.Note = "static_target", "Target energy by the static rule", "Shown beside the target and not used."
	return derive.Exact(d.Value, step)
}

// mostReached stands for the target of a gain that no energy brings: more than
// any plan accepts, so that none is made of it.
const mostReached unit.Kilocalorie = 12000

func dynamicTarget(in GoalInput, w wish) (derive.Derived[unit.Kilocalorie], bool) {
	energy, inReach := in.Dynamics.EnergyFor(w.weight, w.days)
	note := "The energy that the model follows to this weight on this day; the static rule is shown beside it."
	if !inReach {
		note = "No energy brings this weight by this day."
		if w.weight > in.Weight {
			energy = mostReached
		}
	}
	return targetStep(in, energy-in.Maintenance.Value,
		"the energy a day that ends the course at the goal weight", w.inputs(in), in.Dynamics.Source(), note), inReach
}

func defaultLoss(in GoalInput, maintenance derive.Input) derive.Derived[unit.Kilocalorie] {
	safe := safest(in).Value
	deficit := min(DefaultDeficit, in.Maintenance.Value-safe)
	note := "No date was named, so a customary deficit is used."
	if deficit < DefaultDeficit {
		note = "No date was named; the customary deficit of 500 kcal would pass a guard, so it stops there."
	}
	return targetStep(in, -deficit, "the higher of maintenance energy − 500 and least energy inside the guards",
		[]derive.Input{maintenance, {Name: "least energy inside the guards", Value: float64(safe), Unit: "kcal/day"}},
		derive.Source{Text: "AHA/ACC/TOS 2013 guideline (deficit 500-750 kcal; 1200-1500 kcal for women, 1500-1800 for men); the guards: NIH 1998", Confidence: derive.Memory},
		note)
}

func targetStep(in GoalInput, change unit.Kilocalorie, formula string, inputs []derive.Input, source derive.Source, note string) derive.Derived[unit.Kilocalorie] {
	value := in.Maintenance.Value + change
	return derive.Exact(value, derive.Step{
		Key: "target", Label: "Target energy", Formula: formula, Inputs: inputs,
		Result: float64(value), Unit: "kcal/day", Source: source, Note: note,
	})
}

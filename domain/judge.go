package domain

import (
	"cmp"
	"slices"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/hand"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// asked returns what the plan would do, in the terms in which findings stop: by
// its targets, and by what its measures bring. Advice on fluid is left out of a
// plan where it is stopped, so it is never asked for.
func asked(p Plan, facts screen.Facts, t *Targets) derive.Scope {
	scope := derive.ScopePlan | facts.BroughtScope()
	if t.ProteinPerKg != macro.ProteinKidney || t.ProteinLimited {
		scope |= derive.ScopeProtein
	}
	if t.Shares.Carbohydrate < macro.CarbohydrateShareFloor-shareRounding {
		scope |= derive.ScopeCarbohydrate
	}
	if raisesFibre(p.Intake.UsualFibre, facts.Fibre) {
		scope |= derive.ScopeFibre
	}
	return scope
}

// shareRounding keeps a share that is 45 % but for rounding from counting as less.
const shareRounding unit.Percent = 1e-6

// raisesFibre reports whether a plan brings more fibre than is eaten now. What
// is eaten now and was not told counts as less.
func raisesFibre(usual, brought unit.Gram) bool { return usual == 0 || brought > usual }

// factsOf returns what screening looks at in a plan with a day of measures.
func factsOf(p Plan, outcome energy.Outcome, t *Targets, day hand.Allotment, c course) screen.Facts {
	in := p.Intake
	facts := screen.Facts{
		Age: p.Age, Sex: in.Client.EquationSex, BMI: p.BMI.Value, Weight: in.Weight,
		Goal: in.Goal.Kind, Outcome: outcome, Resting: p.Resting.Value,
		Carbohydrate: t.Split.Available.Value, LeastCarbohydrate: leastCarbohydrate(in),
		// The higher of the fibre aimed at and what the measures bring, as that is
		// what is eaten.
		Fibre: max(t.Fibre.Value, day.Brings.Fibre), UsualFibre: in.UsualFibre,
		Exercise: in.Exercise, Availability: t.Availability,
		Reproduction: reproductionOf(in), Scored: in.Scored,
		MeasuresFar: day.Distance.Far, MeasuresUnderFloor: day.Distance.UnderFloor,
		MealsWished: len(in.Hand.Wishes) > 0, ProteinLimited: t.ProteinLimited,
		Brought: &screen.Brought{Brings: day.Brings, Aim: hand.Nutrients{
			Energy: t.Energy.Value, Protein: t.Protein.Value, Fat: t.Fat.Value,
			Carbohydrate: t.Split.Total.Value, Fibre: t.Fibre.Value,
		}},
	}
	eaten, strays := facts.Eaten()
	if strays {
		facts.Availability = p.availability(eaten)
	}
	facts.GoalBMI = goalBMI(in, outcome)
	if facts.Lowers() && p.followed() && !endsInTime(in) && p.BMI.Value >= screen.UnderweightBMI {
		facts.DaysToUnderweight = c.daysToUnderweight(in.Height, min(eaten, outcome.Target.Value))
	}
	return facts
}

// goalBMI returns the body mass index of the weight that is asked for, by name, by
// date or by rate; 0: none is.
func goalBMI(in Intake, outcome energy.Outcome) unit.KilogramPerSquareMetre {
	if weight := cmp.Or(in.Goal.Weight, outcome.WishedWeight); weight != 0 {
		return unit.BMI(weight, in.Height)
	}
	return 0
}

// endsInTime reports a goal weight that ends a loss: what is lost after it is not
// asked for. One above the present weight, or one to be held, ends nothing.
func endsInTime(in Intake) bool {
	g := in.Goal
	return g.Kind == energy.Lose && g.Weight != 0 && g.Weight < in.Weight
}

// farthestLook is how far a deficit without a goal weight is followed: half a
// year; visits come sooner. Common practice, no source.
const farthestLook = 182 // days

// daysToUnderweight returns the day on which an energy brings the weight under a
// body mass index of 18.5, and 0 where it does not within half a year.
func (c course) daysToUnderweight(height unit.Centimetre, target unit.Kilocalorie) unit.Day {
	days, reached := c.DaysTo(unit.WeightAtBMI(screen.UnderweightBMI, height), target)
	if !reached || days > farthestLook {
		return 0
	}
	return unit.Day(max(days, 1))
}

// judge returns the findings of a plan with a day of measures, and the gate.
func judge(p Plan, outcome energy.Outcome, t *Targets, day hand.Allotment, c course) ([]derive.Finding, screen.Gate) {
	facts := factsOf(p, outcome, t, day, c)
	found := screen.Findings(p.Intake.Screening, facts)
	return found, screen.Judge(found, asked(p, facts, t), p.Intake.Reasons)
}

// alike keeps the alternatives to the day of measures that nothing stops which
// does not stop the day itself.
func alike(p Plan, outcome energy.Outcome, t *Targets, c course) []hand.Allotment {
	var kept []hand.Allotment
	for _, day := range t.Allotment.Alternatives {
		if _, gate := judge(p, outcome, t, day, c); stopsIn(gate.Refers, p.Gate.Refers) && stopsIn(gate.Holds, p.Gate.Holds) && stopsIn(gate.Lifted, p.Gate.Lifted) {
			kept = append(kept, day)
		}
	}
	return kept
}

// stopsIn reports whether each of some findings stands among others, by its code.
func stopsIn(some, others []derive.Finding) bool {
	return !slices.ContainsFunc(some, func(f derive.Finding) bool {
		return !slices.ContainsFunc(others, func(o derive.Finding) bool { return o.Code == f.Code })
	})
}

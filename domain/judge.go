package domain

import (
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// asked returns what the plan would do, in the terms in which findings stop.
// Advice on fluid is left out of a plan where it is stopped, so it is never
// asked for.
func asked(p Plan, outcome energy.Outcome, t *Targets) derive.Scope {
	scope := derive.ScopePlan
	if outcome.Lowers() {
		scope |= derive.ScopeDeficit
	}
	if outcome.Raises() {
		scope |= derive.ScopeSurplus
	}
	if t.ProteinPerKg != macro.ProteinKidney || t.ProteinLimited {
		scope |= derive.ScopeProtein
	}
	if t.Shares.Carbohydrate < macro.CarbohydrateShareFloor-shareRounding {
		scope |= derive.ScopeCarbohydrate
	}
	if raisesFibre(p.Intake.UsualFibre, t) {
		scope |= derive.ScopeFibre
	}
	return scope
}

// shareRounding keeps a share that is 45 % but for rounding from counting as less.
const shareRounding unit.Percent = 1e-6

// raisesFibre reports whether a plan brings more fibre than is eaten now. What
// is eaten now and was not told counts as less.
func raisesFibre(usual unit.Gram, t *Targets) bool {
	return usual == 0 || broughtFibre(t) > usual
}

// broughtFibre is the higher of the fibre aimed at and what the day of measures
// brings, as that is what is eaten.
func broughtFibre(t *Targets) unit.Gram {
	return max(t.Fibre.Value, t.Allotment.Brings.Fibre)
}

func findings(p Plan, outcome energy.Outcome, t *Targets, c course) []derive.Finding {
	in := p.Intake
	facts := screen.Facts{
		Age: p.Age, Sex: in.Client.EquationSex, BMI: p.BMI.Value,
		Goal: in.Goal.Kind, Outcome: outcome, Resting: p.Resting.Value,
		Carbohydrate: t.Split.Available.Value, LeastCarbohydrate: leastCarbohydrate(in),
		Fibre: broughtFibre(t), UsualFibre: in.UsualFibre,
		Exercise: in.Exercise, Availability: t.Availability,
		Reproduction: in.Reproduction, Scored: in.Scored,
		MeasuresFar: t.Allotment.Distance.Far, MeasuresUnderFloor: t.Allotment.Distance.UnderFloor,
		MealsWished: len(in.Hand.Wishes) > 0, ProteinLimited: t.ProteinLimited,
	}
	switch {
	case in.Goal.Weight != 0:
		facts.GoalBMI = unit.BMI(in.Goal.Weight, in.Height)
	case outcome.WishedWeight != 0:
		facts.GoalBMI = unit.BMI(outcome.WishedWeight, in.Height)
	case outcome.Lowers() && p.BMI.Value >= screen.UnderweightBMI:
		facts.DaysToUnderweight = c.daysToUnderweight(in.Height, outcome.Target.Value)
	}
	return screen.Findings(in.Screening, facts)
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

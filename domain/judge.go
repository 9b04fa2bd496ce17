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
	scope := derive.ScopePlan | derive.ScopeFibre
	if outcome.Lowers() {
		scope |= derive.ScopeDeficit
	}
	if outcome.Raises() {
		scope |= derive.ScopeSurplus
	}
	if t.ProteinPerKg != macro.ProteinKidney {
		scope |= derive.ScopeProtein
	}
	if t.Shares.Carbohydrate < macro.CarbohydrateShareFloor-shareRounding {
		scope |= derive.ScopeCarbohydrate
	}
	return scope
}

// shareRounding keeps a share that is 45 % but for rounding from counting as less.
const shareRounding unit.Percent = 1e-6

func findings(p Plan, outcome energy.Outcome, t *Targets) []derive.Finding {
	facts := screen.Facts{
		Age: p.Age, Sex: p.Intake.Client.EquationSex, BMI: p.BMI.Value,
		Goal: p.Intake.Goal.Kind, Outcome: outcome, Resting: p.Resting.Value,
	}
	if p.Intake.Goal.Weight != 0 {
		facts.GoalBMI = unit.BMI(p.Intake.Goal.Weight, p.Intake.Height)
	}
	facts.Carbohydrate, facts.MeasuresFar = t.Carbohydrate.Value, t.Allotment.Distance.Far
	facts.ProteinLimited = t.ProteinLimited
	return screen.Findings(p.Intake.Screening, facts)
}

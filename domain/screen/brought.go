package screen

import (
	"fmt"
	"math"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/hand"
	"handbreadth/domain/macro"
	"handbreadth/domain/unit"
)

// measuresDiffer is the finding of a day whose energy is not that of its target.
const measuresDiffer = "measures_differ"

// Brought is a day of measures beside what it should bring.
type Brought struct{ Brings, Aim hand.Nutrients }

// What the measures bring is what is eaten, so it is screened beside the target.
// A day of half measures that nobody bound lies within a fifth of its targets
// ([hand.WidestMiss]): that is the rounding of halves, and the target stands for
// it. Wishes bind the day, and then only a tenth is rounding: an error that the
// band of maintenance energy has anyway. Floors are nearer, at a twentieth: they
// guard against harm, and the search prefers days that hold them so. This
// program's choices, no source.
const (
	wishedRounding = 0.10
	// FloorRounding is the part of a least energy, or of a least carbohydrate, that
	// the measures may lack.
	FloorRounding = 0.05
	// needRounding is how far beside maintenance energy a day still holds weight.
	needRounding = 0.10
	// proteinRounding is a fifth with wishes too: half a palm is that much.
	proteinRounding = 0.20
	// shareRounding is in points of the share of energy.
	shareRounding unit.Percent = 5
)

// strays reports that an amount that is brought differs from its target by more
// than rounding.
func (f Facts) strays(brings, aim float64) bool {
	rounding := hand.WidestMiss
	if f.MealsWished {
		rounding = wishedRounding
	}
	return math.Abs(brings-aim) > rounding*aim
}

// Eaten returns the energy that counts as eaten: the target, or what the measures
// bring where that differs by more than rounding, and then true.
func (f Facts) Eaten() (unit.Kilocalorie, bool) {
	if f.Brought == nil || !f.strays(float64(f.Brought.Brings.Energy), float64(f.Brought.Aim.Energy)) {
		return f.Outcome.Target.Value, false
	}
	return f.Brought.Brings.Energy, true
}

func (f Facts) maintenance() unit.Kilocalorie { return f.Outcome.Target.Value - f.Outcome.Change }

// change returns the energy that counts as eaten less maintenance energy.
func (f Facts) change() unit.Kilocalorie {
	eaten, strays := f.Eaten()
	if !strays {
		return f.Outcome.Change
	}
	return eaten - f.maintenance()
}

// Lowers reports whether the target or what counts as eaten lowers weight.
func (f Facts) Lowers() bool {
	eaten, strays := f.Eaten()
	return f.Outcome.Lowers() || strays && eaten < f.maintenance()*(1-needRounding)
}

// Raises reports whether the target or what counts as eaten raises weight.
func (f Facts) Raises() bool {
	eaten, strays := f.Eaten()
	return f.Outcome.Raises() || strays && eaten > f.maintenance()*(1+needRounding)
}

// proteinStrays reports protein of the measures away from its target.
func (f Facts) proteinStrays() bool {
	return f.Brought != nil && math.Abs(float64(f.Brought.Brings.Protein-f.Brought.Aim.Protein)) > proteinRounding*float64(f.Brought.Aim.Protein)
}

// carbohydrateShare returns what part of the energy of the measures carbohydrate
// brings, fibre inside it.
func (b Brought) carbohydrateShare() unit.Percent {
	protein := macro.EnergyPerGramProtein * float64(b.Brings.Protein)
	fat := macro.EnergyPerGramFat * float64(b.Brings.Fat)
	carbohydrate := macro.EnergyPerGramCarbohydrate * float64(b.Brings.Carbohydrate)
	if sum := protein + fat + carbohydrate; sum > 0 {
		return unit.Percent(100 * carbohydrate / sum)
	}
	return 0
}

// carbohydrateStrays reports measures that bring less than 45 % of their energy
// as carbohydrate, by more than rounding.
func (f Facts) carbohydrateStrays() bool {
	return f.Brought != nil && f.strays(float64(f.Brought.Brings.Carbohydrate), float64(f.Brought.Aim.Carbohydrate)) &&
		f.Brought.carbohydrateShare() < macro.CarbohydrateShareFloor-shareRounding
}

// BroughtScope returns what the measures do, in the terms in which findings stop.
func (f Facts) BroughtScope() (scope derive.Scope) {
	for does, so := range map[derive.Scope]bool{
		derive.ScopeDeficit: f.Lowers(), derive.ScopeSurplus: f.Raises(),
		derive.ScopeProtein: f.proteinStrays(), derive.ScopeCarbohydrate: f.carbohydrateStrays(),
	} {
		if so {
			scope |= does
		}
	}
	return scope
}

// bring begins a sentence on what the measures bring.
func (f Facts) bring() string {
	if f.MealsWished {
		return "The measures as wished bring"
	}
	return "The measures, as near as halves come, bring"
}

// fromBrought returns what the day of measures gives beside its targets.
func fromBrought(answers Answers, f Facts) []derive.Finding {
	if f.Brought == nil {
		return nil
	}
	found := append(fromLeastBrought(f), fromDifference(f)...)
	if answers.Yes(Kidney) && f.proteinStrays() {
		beside := "less"
		if f.Brought.Brings.Protein > f.Brought.Aim.Protein {
			beside = "more"
		}
		found = append(found, holdOn(Kidney, protein, f.bring()+" over a fifth "+beside+" protein than the plan sets."))
	}
	for _, code := range []Code{GlucoseLowering, SGLT2} {
		if answers.Yes(code) && f.carbohydrateStrays() {
			found = append(found, holdOn(code, carb, f.bring()+" under 40 % of their energy as carbohydrate."))
		}
	}
	return append(found, f.leastCarbohydrateBrought()...)
}

// holdOn is the hold of a question, with what the measures bring as its text. It
// has no figure of a target, because a referral may tell it.
func holdOn(code Code, scope derive.Scope, text string) derive.Finding {
	return derive.Finding{Code: string(code), Level: derive.Hold, Scope: scope | anyComparison, Text: text, Source: derive.FromSteps}
}

// fromLeastBrought speaks where the measures bring less than a least energy and
// the target does not.
func fromLeastBrought(f Facts) []derive.Finding {
	var found []derive.Finding
	target, brings, least := f.Outcome.Target.Value, f.Brought.Brings.Energy, energy.LeastEnergy(f.Sex)
	under := func(floor unit.Kilocalorie) bool { return target >= floor && brings < floor*(1-FloorRounding)-1e-6 }
	if under(energy.VeryLowEnergy) {
		found = append(found, derive.Finding{
			Code: "energy_very_low", Level: derive.Refer, Scope: deficit | anyComparison,
			Text: fmt.Sprintf("%s about %.0f kcal a day: under 800 belongs in clinical care.", f.bring(), float64(brings)), Source: niceVeryLow,
		})
	}
	if under(least) {
		found = append(found, derive.Finding{
			Code: energyLow, Level: derive.Hold, Scope: deficit | anyComparison,
			Text: fmt.Sprintf("%s about %.0f kcal, under %.0f kcal a day.", f.bring(), float64(brings), float64(least)), Source: ahaEnergy,
		})
	}
	return found
}

// fromDifference speaks where the energy that counts as eaten is not the target,
// and of a loss that is too fast by it.
func fromDifference(f Facts) []derive.Finding {
	eaten, strays := f.Eaten()
	if !strays {
		return nil
	}
	beside := "more"
	if eaten < f.Outcome.Target.Value {
		beside = "less"
	}
	found := []derive.Finding{{
		Code: measuresDiffer, Level: derive.Caution, Source: derive.FromSteps,
		Text: fmt.Sprintf("%s about %.0f kcal, %.0f %s than the target, and that is what is eaten: what stops a deficit or a surplus looks at it.",
			f.bring(), float64(eaten), math.Abs(float64(eaten-f.Outcome.Target.Value)), beside),
	}}
	loss := unit.Kilogram(-float64(f.change()) * 7 / energy.StaticEnergyPerKilogram)
	if f.Weight > 0 && !f.Outcome.TooFast && loss > min(energy.FastestLoss, unit.Kilogram(energy.FastestShare*float64(f.Weight))) {
		found = append(found, derive.Finding{
			Code: rateFast, Level: derive.Hold, Scope: deficit | anyComparison, Source: nihRate,
			Text: fmt.Sprintf("%s about %.0f kcal: a loss of %.2f kg a week is over 1 %% of weight or over 1 kg a week.", f.bring(), float64(eaten), float64(loss)),
		})
	}
	return found
}

// leastCarbohydrateBrought speaks where the measures bring less carbohydrate than
// a pregnancy or breastfeeding needs: a referral where wishes bind them, else a
// hold that joins the one on the plan.
func (f Facts) leastCarbohydrateBrought() []derive.Finding {
	available := f.Brought.Brings.Carbohydrate - f.Brought.Brings.Fibre
	if available >= f.LeastCarbohydrate*(1-FloorRounding)-1e-6 {
		return nil
	}
	found := holdOn(Pregnant, plan, fmt.Sprintf("%s less than %.0f g of carbohydrate without fibre.", f.bring(), float64(f.LeastCarbohydrate)))
	found.Source = iomCarbohydrate
	if f.MealsWished {
		found.Level = derive.Refer
		found.Text += " Take a wish back, or let the maternity team's dietitian set the plan."
	}
	return []derive.Finding{found}
}

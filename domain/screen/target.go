package screen

import (
	"fmt"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
)

const (
	energyLow = "energy_low"
	rateFast  = "rate_fast"
)

// fromEnergy returns what the target energy gives.
func fromEnergy(f Facts) []derive.Finding {
	found := fromLeastEnergy(f)
	if f.Outcome.TooFast {
		found = append(found, tooFast(f))
	}
	if f.Outcome.Lowers() && -f.Outcome.Change > energy.MostDeficit {
		found = append(found, derive.Finding{
			Code: "deficit_large", Level: derive.Caution,
			Text: fmt.Sprintf("A deficit of %.0f kcal a day is over the customary 1000.", -float64(f.Outcome.Change)), Source: nihRate,
		})
	}
	if f.Outcome.Change > energy.MostSurplus {
		found = append(found, derive.Finding{
			Code: "surplus_large", Level: derive.Caution,
			Text: "The target is more than 1000 kcal a day over maintenance: with a later date more of the gain is lean, and it is easier to eat.", Source: derive.CommonPractice,
		})
	}
	if f.Outcome.Lowers() && f.Outcome.Target.Value < f.Resting {
		found = append(found, derive.Finding{
			Code: "below_resting", Level: derive.Caution,
			Text: "The target is below resting energy: expect tiredness and hunger; a slower course is kinder.", Source: derive.CommonPractice,
		})
	}
	wants := map[energy.GoalKind]bool{energy.Lose: f.Outcome.Raises(), energy.Gain: f.Outcome.Lowers(), energy.Maintain: f.Outcome.Lowers() || f.Outcome.Raises()}
	if wants[f.Goal] {
		found = append(found, derive.Finding{
			Code: "goal_and_energy_differ", Level: derive.Caution,
			Text: fmt.Sprintf("The goal is to %s weight, but the agreed energy is %+.0f kcal a day beside maintenance.", f.Goal, float64(f.Outcome.Change)), Source: derive.FromSteps,
		})
	}
	return found
}

func fromLeastEnergy(f Facts) []derive.Finding {
	var found []derive.Finding
	target, least := f.Outcome.Target.Value, energy.LeastEnergy(f.Sex)
	if target < energy.VeryLowEnergy {
		found = append(found, derive.Finding{
			Code: "energy_very_low", Level: derive.Refer, Scope: deficit | anyComparison,
			Text: fmt.Sprintf("A target of %.0f kcal is under 800 kcal a day, which belongs in clinical care.", float64(target)), Source: niceVeryLow,
		})
	}
	if target < least {
		found = append(found, derive.Finding{
			Code: energyLow, Level: derive.Hold, Scope: deficit | anyComparison,
			Text: fmt.Sprintf("A target of %.0f kcal is under %.0f kcal a day.", float64(target), float64(least)), Source: ahaEnergy,
		})
	}
	return found
}

func tooFast(f Facts) derive.Finding {
	text := fmt.Sprintf("A loss of %.2f kg a week is over 1 %% of weight or over 1 kg a week.", -float64(f.Outcome.FastestRate))
	if !f.Outcome.SafeDate.IsZero() {
		text += fmt.Sprintf(" The earliest date inside the guards is %s, at %.0f kcal a day.", f.Outcome.SafeDate.Long(), float64(f.Outcome.SafeEnergy))
	} else {
		text += fmt.Sprintf(" Inside the guards the least is %.0f kcal a day.", float64(f.Outcome.SafeEnergy))
	}
	return derive.Finding{Code: rateFast, Level: derive.Hold, Scope: deficit | anyComparison, Text: text, Source: nihRate}
}

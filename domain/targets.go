package domain

import (
	"handbreadth/domain/energy"
	"handbreadth/domain/hand"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

func newTargets(p Plan, outcome energy.Outcome) *Targets {
	in := p.Intake
	floor := fatFloor(p)
	// A wish for an impossible date asks for less than nothing; it is referred
	// below 800 kcal, and split as nought until then.
	energyToSplit := max(outcome.Target.Value, 0)
	protein := macro.Protein(macro.ProteinInput{
		Weight: in.Weight, Height: in.Height, Age: p.Age,
		Direction:      direction(outcome),
		Kidney:         in.Screening.Yes(screen.Kidney),
		AfterBariatric: in.Screening.Yes(screen.BariatricPast),
		Asked:          in.ProteinPerKg,
		Energy:         energyToSplit,
		FatFloor:       floor,
	})
	split := macro.Divide(macro.SplitInput{
		Energy: energyToSplit, Protein: protein.Grams.Value,
		CarbFatBalance: in.CarbFatBalance, FatFloor: floor,
		LeastCarbohydrate: leastCarbohydrate(in),
	})
	t := &Targets{
		Energy: outcome.Target, Protein: protein.Grams, ProteinPerKg: protein.PerKg, ProteinLimited: protein.Capped,
		Fat: split.Fat, Carbohydrate: split.Carbohydrate,
		Fibre:    macro.Fibre(energyToSplit),
		Shares:   macro.SharesOf(protein.Grams.Value, split.Fat.Value, split.Carbohydrate.Value),
		FatFloor: floor, Split: split,
		Contents: hand.Fill(in.Pattern, in.Avoid),
	}
	t.CarbFatBalance = balanceOf(*t)
	t.Allotment = hand.Allot(hand.Aim{
		Meals: in.MealsPerDay, Energy: t.Energy.Value, Protein: t.Protein.Value,
		Fat: t.Fat.Value, Carbohydrate: t.Carbohydrate.Value, FatFloor: floor,
		FewVegetables: in.Screening.Yes(screen.GutNarrowing),
	}, t.Contents)
	return t
}

func fatFloor(p Plan) unit.Percent {
	if screen.RaisesFloor(p.Intake.Client.EquationSex, p.Age, p.BMI.Value) {
		return max(p.Intake.FatFloor, macro.RaisedFatFloor)
	}
	return p.Intake.FatFloor
}

func direction(o energy.Outcome) macro.Direction {
	switch {
	case o.Lowers():
		return macro.Lowering
	case o.Raises():
		return macro.Raising
	}
	return macro.Level
}

// leastCarbohydrate keeps the higher allowance, as one question asks for both.
func leastCarbohydrate(in Intake) unit.Gram {
	if in.Screening.Yes(screen.Pregnant) {
		return macro.CarbohydrateBreastfeeding
	}
	return 0
}

func balanceOf(t Targets) unit.Percent {
	fat := float64(t.Fat.Value) * macro.EnergyPerGramFat
	carbohydrate := float64(t.Carbohydrate.Value) * macro.EnergyPerGramCarbohydrate
	if fat+carbohydrate <= 0 {
		return 0
	}
	return unit.Percent(100 * carbohydrate / (fat + carbohydrate))
}

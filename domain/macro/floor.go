package macro

import (
	"fmt"
	"math"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// FloorInput is what decides the fat floor.
type FloorInput struct {
	Weights
	Energy unit.Kilocalorie // target, a day
	Share  unit.Percent     // of energy
	PerKg  unit.GramPerKilogram
}

// Floor is the least fat of a day.
type Floor struct {
	// Share is the floor in force as a part of energy, grams a kilogram included.
	Share unit.Percent
	Grams derive.Derived[unit.Gram]
	// ByWeight reports that grams a kilogram decide.
	ByWeight bool
}

// FatFloor returns the least fat: the higher of a part of the energy and, where
// asked for, grams for each kilogram of weight (adjusted weight from a BMI of
// 30). The part of the energy never gives way. Grams a kilogram give way to a
// protein of 0.8 g/kg where the energy does not hold both.
func FatFloor(in FloorInput) Floor {
	byShare := gramsAt(in.Energy, in.Share, EnergyPerGramFat)
	steps := []derive.Step{floorStep(in, byShare)}
	on := in.on(BasisByBMI)
	byWeight := unit.Gram(float64(in.PerKg) * float64(on.weight))
	room := (float64(in.Energy) - EnergyPerGramProtein*float64(LeastProteinPerKg)*float64(in.Current)) / EnergyPerGramFat
	limited := float64(byWeight) > room
	grams := unit.Gram(math.Max(float64(byShare), math.Min(float64(byWeight), room)))
	if in.PerKg > 0 {
		steps = append(steps, on.steps...)
		steps = append(steps, weightFloorStep(in, on, byShare, grams, limited))
	}
	floor := Floor{Share: in.Share, Grams: derive.Exact(grams, steps...), ByWeight: grams > byShare}
	if floor.ByWeight {
		floor.Share = unit.Percent(100 * EnergyPerGramFat * float64(grams) / float64(in.Energy))
	}
	return floor
}

func floorStep(in FloorInput, grams unit.Gram) derive.Step {
	return derive.Step{
		Key: "fat_floor", Label: "Fat floor", Formula: "fat floor × target energy / 9",
		Inputs: []derive.Input{
			{Name: "fat floor", Value: float64(in.Share), Unit: "%"},
			{Name: "target energy", Value: float64(in.Energy), Unit: "kcal/day"},
		},
		Result: float64(grams), Unit: "g/day",
		Source: derive.Source{Text: "20-35 % of energy (IOM 2002/2005, EFSA 2010); least 15 %, and 20 % for women of childbearing age and a BMI under 18.5 (WHO/FAO 2010)", Confidence: derive.Seen},
	}
}

func weightFloorStep(in FloorInput, on reckoned, byShare, grams unit.Gram, limited bool) derive.Step {
	formula := "the higher of grams per kg × " + on.name + " and floor by energy"
	inputs := []derive.Input{
		{Name: "grams per kg", Value: float64(in.PerKg), Unit: "g/kg"},
		weightInput(on),
		{Name: "floor by energy", Value: float64(byShare), Unit: "g/day"},
	}
	note := "The floor by energy is lower."
	switch {
	case limited:
		formula = "the higher of (target energy − 4 × 0.8 × weight) / 9 and floor by energy"
		inputs = []derive.Input{
			{Name: "target energy", Value: float64(in.Energy), Unit: "kcal/day"},
			{Name: "weight", Value: float64(in.Current), Unit: "kg"},
			{Name: "floor by energy", Value: float64(byShare), Unit: "g/day"},
			{Name: "grams per kg asked for", Value: float64(in.PerKg), Unit: "g/kg"},
		}
		note = fmt.Sprintf("Held lower, so that %.1f g/kg of protein fits beside it; never under the floor by energy.", float64(LeastProteinPerKg))
	case grams <= byShare:
		note = "The floor by energy is higher and counts."
	}
	return derive.Step{
		Key: "fat_floor", Label: "Fat floor, by weight too", Formula: formula, Inputs: inputs,
		Result: float64(grams), Unit: "g/day",
		Source: derive.Source{Text: "convention; 0.5 to 1.0 g/kg is in use", Confidence: derive.Custom},
		Note:   note,
	}
}

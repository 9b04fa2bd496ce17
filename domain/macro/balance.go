package macro

import (
	"math"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// SplitInput is what the carbohydrate-fat balance works on.
type SplitInput struct {
	Energy  unit.Kilocalorie // target, a day
	Protein unit.Gram
	// CarbFatBalance is the share of the energy left after protein that goes to
	// carbohydrate, 0 to 100.
	CarbFatBalance unit.Percent
	FatFloor       unit.Percent // in force, of energy
	// LeastCarbohydrate is asked for in pregnancy and while breastfeeding; 0: none.
	LeastCarbohydrate unit.Gram
}

// Split is the energy left after protein, shared out.
type Split struct {
	Fat          derive.Derived[unit.Gram]
	Carbohydrate derive.Derived[unit.Gram]
	// AtFloor reports that the balance asked for less fat than the floor.
	AtFloor bool
	// RaisedCarbohydrate reports that the balance asked for less carbohydrate
	// than the least.
	RaisedCarbohydrate bool
	// WallBalance is the balance at which the fat floor is met: the wall that
	// the slider cannot pass.
	WallBalance unit.Percent
}

// Divide shares the energy left after protein between fat and carbohydrate:
// fat is the higher of the floor and (1 - balance) of what is left, and
// carbohydrate takes the rest.
func Divide(in SplitInput) Split {
	left := float64(in.Energy) - EnergyPerGramProtein*float64(in.Protein)
	floorEnergy := float64(in.Energy) * float64(in.FatFloor) / 100
	balanced := (1 - float64(in.CarbFatBalance)/100) * left
	fatEnergy := math.Max(floorEnergy, balanced)
	atFloor := floorEnergy > balanced+1e-9
	raised := false
	if least := EnergyPerGramCarbohydrate * float64(in.LeastCarbohydrate); left-fatEnergy < least-1e-9 {
		if lowered := math.Max(floorEnergy, left-least); lowered < fatEnergy {
			fatEnergy, raised = lowered, true
		}
	}
	fat := unit.Gram(fatEnergy / EnergyPerGramFat)
	carbohydrate := unit.Gram(math.Max(0, left-fatEnergy) / EnergyPerGramCarbohydrate)
	return Split{
		Fat:                derive.Exact(fat, fatStep(in, left, fat, atFloor, raised)),
		Carbohydrate:       derive.Exact(carbohydrate, carbohydrateStep(in, fat, carbohydrate)),
		AtFloor:            atFloor,
		RaisedCarbohydrate: raised,
		WallBalance:        wall(left, floorEnergy),
	}
}

func wall(left, floorEnergy float64) unit.Percent {
	if left <= 0 {
		return 0
	}
	return unit.Percent(100 * math.Max(0, 1-floorEnergy/left))
}

func fatStep(in SplitInput, left float64, fat unit.Gram, atFloor, raised bool) derive.Step {
	note := "The balance decides; the floor is lower."
	switch {
	case raised:
		note = "Lowered so that carbohydrate reaches the least asked for; the floor still holds."
	case atFloor:
		note = "The fat floor decides: the balance asked for less."
	}
	return derive.Step{
		Key: "fat", Label: "Fat",
		Formula: "the higher of floor × target / 9 and (1 − balance) × energy after protein / 9",
		Inputs: []derive.Input{
			{Name: "target energy", Value: float64(in.Energy), Unit: "kcal/day"},
			{Name: "fat floor", Value: float64(in.FatFloor), Unit: "%"},
			{Name: "carbohydrate-fat balance", Value: float64(in.CarbFatBalance), Unit: "%"},
			{Name: "energy after protein", Value: left, Unit: "kcal/day"},
		},
		Result: float64(fat), Unit: "g/day",
		Source: derive.Source{Text: "floor: 20-35 % of energy (IOM 2002/2005, EFSA 2010), least 15 % (WHO/FAO 2010); 9 kcal/g (Regulation (EU) 1169/2011)", Confidence: derive.Seen},
		Note:   note,
	}
}

func carbohydrateStep(in SplitInput, fat, carbohydrate unit.Gram) derive.Step {
	return derive.Step{
		Key: "carbohydrate", Label: "Carbohydrate",
		Formula: "(target energy − 4 × protein − 9 × fat) / 4",
		Inputs: []derive.Input{
			{Name: "target energy", Value: float64(in.Energy), Unit: "kcal/day"},
			{Name: "protein", Value: float64(in.Protein), Unit: "g/day"},
			{Name: "fat", Value: float64(fat), Unit: "g/day"},
		},
		Result: float64(carbohydrate), Unit: "g/day",
		Source: derive.Source{Text: "4 and 9 kcal/g, Regulation (EU) 1169/2011, annex XIV; total carbohydrate, fibre inside it", Confidence: derive.Seen},
		Note:   "Takes what protein and fat leave.",
	}
}

// Fibre returns fibre a day: 14 g for each 1000 kcal.
//
// Source: IOM 2002/2005, adequate intake (from memory).
func Fibre(energy unit.Kilocalorie) derive.Derived[unit.Gram] {
	grams := unit.Gram(float64(energy) / 1000 * float64(FibrePer1000))
	return derive.Exact(grams, derive.Step{
		Key: "fibre", Label: "Fibre", Formula: "14 × target energy / 1000",
		Inputs: []derive.Input{{Name: "target energy", Value: float64(energy), Unit: "kcal/day"}},
		Result: float64(grams), Unit: "g/day",
		Source: derive.Source{Text: "IOM 2002/2005, adequate intake 14 g per 1000 kcal", Confidence: derive.Memory},
	})
}

// Shares is each macro's part of the energy.
type Shares struct{ Protein, Fat, Carbohydrate unit.Percent }

// SharesOf returns each macro's part of their joint energy.
func SharesOf(protein, fat, carbohydrate unit.Gram) Shares {
	p, f, c := EnergyPerGramProtein*float64(protein), EnergyPerGramFat*float64(fat), EnergyPerGramCarbohydrate*float64(carbohydrate)
	total := p + f + c
	if total <= 0 {
		return Shares{}
	}
	return Shares{unit.Percent(100 * p / total), unit.Percent(100 * f / total), unit.Percent(100 * c / total)}
}

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
	// LeastCarbohydrate is the digestible carbohydrate asked for in pregnancy and
	// while breastfeeding; 0: none.
	LeastCarbohydrate unit.Gram
	// Fibre is the fibre aimed at; it lies in the carbohydrate.
	Fibre    derive.Derived[unit.Gram]
	Counting Counting
}

// Split is the energy left after protein, shared out.
type Split struct {
	Fat derive.Derived[unit.Gram]
	// Carbohydrate is in the counting asked for: Total or Available.
	Carbohydrate derive.Derived[unit.Gram]
	// Total is carbohydrate with fibre inside it, Available without; both are
	// there whatever the counting. Beside is the one that Carbohydrate is not.
	Total, Available, Beside derive.Derived[unit.Gram]
	// Fibre is the fibre aimed at, as far as the carbohydrate holds it.
	Fibre derive.Derived[unit.Gram]
	// LeastCarbohydrate is the digestible carbohydrate that was asked for; 0: none.
	LeastCarbohydrate unit.Gram
	// CarbohydrateEnergy is the energy of carbohydrate with its fibre.
	CarbohydrateEnergy unit.Kilocalorie
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
	s := Split{LeastCarbohydrate: in.LeastCarbohydrate, AtFloor: floorEnergy > balanced+1e-9, WallBalance: wall(left, floorEnergy)}
	if least := in.leastEnergy(); left-fatEnergy < least-1e-9 {
		if lowered := math.Max(floorEnergy, left-least); lowered < fatEnergy {
			fatEnergy, s.RaisedCarbohydrate = lowered, true
		}
	}
	fat := unit.Gram(fatEnergy / EnergyPerGramFat)
	s.Fat = derive.Exact(fat, fatStep(in, left, fat, s))
	s.CarbohydrateEnergy = unit.Kilocalorie(math.Max(0, left-fatEnergy))
	in.carbohydrate(&s)
	return s
}

// leastEnergy is the energy of the least carbohydrate with its fibre.
func (in SplitInput) leastEnergy() float64 {
	if in.LeastCarbohydrate == 0 {
		return 0
	}
	return EnergyPerGramCarbohydrate*float64(in.LeastCarbohydrate) + in.Counting.perGramFibre()*float64(in.Fibre.Value)
}

func wall(left, floorEnergy float64) unit.Percent {
	if left <= 0 {
		return 0
	}
	return unit.Percent(100 * math.Max(0, 1-floorEnergy/left))
}

func fatStep(in SplitInput, left float64, fat unit.Gram, s Split) derive.Step {
	note := "The balance decides; the floor is lower."
	switch {
	case s.RaisedCarbohydrate:
		note = "Lowered so that carbohydrate reaches the least asked for; the floor still holds."
	case s.AtFloor:
		note = "The fat floor decides: the balance asked for less."
	}
	const floor = "the higher of fat floor × target energy / 9 and "
	formula := floor + "(1 − carbohydrate-fat balance) × energy after protein / 9"
	inputs := []derive.Input{
		{Name: "fat floor", Value: float64(in.FatFloor), Unit: "%"},
		{Name: "target energy", Value: float64(in.Energy), Unit: "kcal/day"},
		{Name: "carbohydrate-fat balance", Value: float64(in.CarbFatBalance), Unit: "%"},
		{Name: "energy after protein", Value: left, Unit: "kcal/day"},
	}
	if s.RaisedCarbohydrate {
		formula = floor + "(energy after protein − energy of the least carbohydrate) / 9"
		inputs = append(inputs, derive.Input{Name: "energy of the least carbohydrate", Value: in.leastEnergy(), Unit: "kcal/day"})
	}
	return derive.Step{
		Key: "fat", Label: "Fat", Formula: formula, Inputs: inputs,
		Result: float64(fat), Unit: "g/day",
		Source: derive.Source{Text: "arithmetic on the steps above; 9 kcal/g (Regulation (EU) 1169/2011, annex XIV)", Confidence: derive.Seen},
		Note:   note,
	}
}

package macro

import (
	"math"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// carbohydrate turns the energy of carbohydrate into grams, in both countings.
// Fibre is held within what the carbohydrate has room for, so that the grams
// times their factors give the energy under either.
func (in SplitInput) carbohydrate(s *Split) {
	energy, perFibre := float64(s.CarbohydrateEnergy), in.Counting.perGramFibre()
	s.Fibre = in.Fibre
	if room := unit.Gram(energy / perFibre); room < s.Fibre.Value {
		s.Fibre = derive.Exact(room, append(append([]derive.Step{}, in.Fibre.Steps...), fibreLimit(energy, perFibre, room))...)
	}
	fibre := float64(s.Fibre.Value)
	available := unit.Gram(math.Max(0, energy-perFibre*fibre) / EnergyPerGramCarbohydrate)
	total := available + s.Fibre.Value
	if in.Counting == CountAvailable {
		s.Available = derive.Exact(available, in.availableStep(s, available))
		s.Total = derive.Exact(total, conversion("carbohydrate_total", "Total carbohydrate", "available carbohydrate + fibre", "available carbohydrate", available, s.Fibre.Value, total))
		s.Carbohydrate, s.Beside = s.Available, s.Total
		return
	}
	total = unit.Gram(energy / EnergyPerGramCarbohydrate)
	s.Total = derive.Exact(total, in.totalStep(s, total))
	s.Available = derive.Exact(available, conversion("carbohydrate_available", "Available carbohydrate", "total carbohydrate − fibre", "total carbohydrate", total, s.Fibre.Value, available))
	s.Carbohydrate, s.Beside = s.Total, s.Available
}

func (in SplitInput) totalStep(s *Split, grams unit.Gram) derive.Step {
	return derive.Step{
		Key: "carbohydrate", Label: "Carbohydrate",
		Formula: "(target energy − 4 × protein − 9 × fat) / 4",
		Inputs:  in.inputs(s),
		Result:  float64(grams), Unit: "g/day",
		Source: derive.Source{Text: "4 and 9 kcal/g, Regulation (EU) 1169/2011, annex XIV; total carbohydrate, fibre inside it, as the USDA table counts it", Confidence: derive.Seen},
		Note:   "Takes what protein and fat leave.",
	}
}

func (in SplitInput) availableStep(s *Split, grams unit.Gram) derive.Step {
	return derive.Step{
		Key: "carbohydrate", Label: "Carbohydrate, available",
		Formula: "(target energy − 4 × protein − 9 × fat − 2 × fibre) / 4",
		Inputs:  append(in.inputs(s), derive.Input{Name: "fibre", Value: float64(s.Fibre.Value), Unit: "g/day"}),
		Result:  float64(grams), Unit: "g/day",
		Source: derive.Source{Text: "4, 9 and for fibre 2 kcal/g, Regulation (EU) 1169/2011, annex XIV; available carbohydrate, fibre beside it", Confidence: derive.Seen},
		Note:   "Takes what protein, fat and fibre leave.",
	}
}

func (in SplitInput) inputs(s *Split) []derive.Input {
	return []derive.Input{
		{Name: "target energy", Value: float64(in.Energy), Unit: "kcal/day"},
		{Name: "protein", Value: float64(in.Protein), Unit: "g/day"},
		{Name: "fat", Value: float64(s.Fat.Value), Unit: "g/day"},
	}
}

func conversion(key, label, formula, from string, grams, fibre, result unit.Gram) derive.Step {
	return derive.Step{
		Key: key, Label: label, Formula: formula,
		Inputs: []derive.Input{
			{Name: from, Value: float64(grams), Unit: "g/day"},
			{Name: "fibre", Value: float64(fibre), Unit: "g/day"},
		},
		Result: float64(result), Unit: "g/day",
		Source: derive.Source{Text: "Regulation (EU) 1169/2011: carbohydrate on a label is without fibre; the USDA table counts fibre in", Confidence: derive.Seen},
		Note:   "Exact for what is eaten; a label rounds.",
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

func fibreLimit(energy, perGram float64, grams unit.Gram) derive.Step {
	return derive.Step{
		Key: "fibre", Label: "Fibre, held within the carbohydrate", Formula: "energy of carbohydrate / energy of a gram of fibre",
		Inputs: []derive.Input{
			{Name: "energy of carbohydrate", Value: energy, Unit: "kcal/day"},
			{Name: "energy of a gram of fibre", Value: perGram, Unit: "kcal/g"},
		},
		Result: float64(grams), Unit: "g/day", Source: derive.FromSteps,
		Note: "Fibre is a part of carbohydrate, of which little is left here.",
	}
}

// FibreStep is the rise of fibre that a gut takes well in a week.
// Source: common practice, no source.
const FibreStep unit.Gram = 5

// FibreRise returns how much a target lies above what is eaten now, and in how
// many weeks it is reached at [FibreStep] a week; nought where it is not above.
func FibreRise(target, usual unit.Gram) (rise unit.Gram, weeks int) {
	rise = max(0, target-usual)
	return rise, int(math.Ceil(float64(rise/FibreStep) - 1e-9))
}

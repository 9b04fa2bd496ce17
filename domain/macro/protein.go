package macro

import (
	"fmt"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Direction is where target energy lies beside maintenance energy.
type Direction int

// The directions.
const (
	Level Direction = iota
	Lowering
	Raising
)

// ProteinInput is what decides a protein target.
type ProteinInput struct {
	Weight         unit.Kilogram
	Height         unit.Centimetre
	Age            unit.Year
	Direction      Direction
	Kidney         bool                 // chronic kidney disease
	AfterBariatric bool                 // bariatric surgery in the past
	Asked          unit.GramPerKilogram // 0: by situation
	Energy         unit.Kilocalorie     // target, a day
	FatFloor       unit.Percent
}

// ProteinTarget is protein a day and how it came about.
type ProteinTarget struct {
	Grams  derive.Derived[unit.Gram]
	PerKg  unit.GramPerKilogram
	Basis  unit.Kilogram // the weight that it is reckoned on
	Capped bool          // set lower than the situation asks, to fit the energy
}

type perKgChoice struct {
	value  unit.GramPerKilogram
	why    string
	source derive.Source
}

func choosePerKg(in ProteinInput) perKgChoice {
	switch {
	case in.Asked != 0:
		return perKgChoice{in.Asked, "as set by the practitioner", derive.Source{Text: "set by the practitioner", Confidence: derive.Arithmetic}}
	case in.Kidney:
		return perKgChoice{ProteinKidney, "kidney disease", derive.Source{Text: "KDIGO 2024: 0.8 g/kg; equals the RDA of IOM 2002/2005", Confidence: derive.Memory}}
	case in.Direction == Raising:
		return perKgChoice{ProteinRaising, "gaining weight", derive.Source{Text: "ISSN 2017: 1.4-2.0 g/kg with training", Confidence: derive.Memory}}
	case in.Age >= OlderAge:
		return perKgChoice{ProteinOlder, "65 or over", derive.Source{Text: "Deutz 2014 (ESPEN), Clin Nutr 33:929; Bauer 2013 (PROT-AGE), J Am Med Dir Assoc 14:542", Confidence: derive.Seen}}
	case in.Direction == Lowering:
		return perKgChoice{ProteinLowering, "losing weight", derive.Source{Text: "Leidy 2015, Am J Clin Nutr 101:1320S: 1.2-1.6 g/kg", Confidence: derive.Memory}}
	}
	return perKgChoice{ProteinGeneral, "holding weight", derive.CommonPractice}
}

// basis returns the weight that protein is reckoned on, with its name.
func basis(in ProteinInput) (unit.Kilogram, string) {
	if in.Kidney || unit.BMI(in.Weight, in.Height) < AdjustFromBMI {
		return in.Weight, "weight"
	}
	reference := unit.WeightAtBMI(ReferenceBMI, in.Height)
	return reference + AdjustedPartAbove*(in.Weight-reference), "adjusted weight"
}

// Protein returns protein a day: grams a kilogram by situation times the weight
// basis, at least 60 g after bariatric surgery and at least 15 % of energy (but
// for kidney disease and where it was set), at most 35 % of energy (but not
// under 0.8 g/kg) and never so much that the fat floor does not fit.
func Protein(in ProteinInput) ProteinTarget {
	choice := choosePerKg(in)
	weight, name := basis(in)
	steps := basisSteps(in, weight, name)
	grams := unit.Gram(float64(choice.value) * float64(weight))
	steps = append(steps, derive.Step{
		Key: "protein", Label: "Protein", Formula: "grams per kg × " + name,
		Inputs: []derive.Input{
			{Name: "situation", Text: choice.why},
			{Name: "grams per kg", Value: float64(choice.value), Unit: "g/kg"},
			{Name: name, Value: float64(weight), Unit: "kg"},
		},
		Result: float64(grams), Unit: "g/day", Source: choice.source,
	})
	if in.AfterBariatric && !in.Kidney && grams < LeastProteinAfterBariatric {
		grams = LeastProteinAfterBariatric
		steps = append(steps, limitStep("Protein, at least 60 g after bariatric surgery", "the higher of 60 g and what the weight asks", grams, in, weight,
			derive.Source{Text: "AACE/ASMBS 2019", Confidence: derive.Memory}))
	}
	if usual := gramsAt(in.Energy, UsualProteinShare, EnergyPerGramProtein); !in.Kidney && in.Asked == 0 && grams < usual {
		grams = usual
		steps = append(steps, derive.Step{
			Key: "protein", Label: "Protein, at least 15 % of energy", Formula: "15 % × target energy / 4",
			Inputs: []derive.Input{{Name: "target energy", Value: float64(in.Energy), Unit: "kcal/day"}},
			Result: float64(grams), Unit: "g/day", Source: derive.CommonPractice,
			Note: "Inside the 10-35 % of energy of IOM 2002/2005.",
		})
	}
	limit, formula := proteinLimit(in, weight)
	capped := grams > limit
	if capped {
		grams = limit
		steps = append(steps, limitStep("Protein, held within "+formula, "the lower of "+formula+" and what the weight asks", grams, in, weight,
			derive.Source{Text: "IOM 2002/2005: protein 10-35 % of energy", Confidence: derive.Seen}))
	}
	return ProteinTarget{Grams: derive.Exact(grams, steps...), PerKg: choice.value, Basis: weight, Capped: capped}
}

func basisSteps(in ProteinInput, weight unit.Kilogram, name string) []derive.Step {
	if name == "weight" {
		return nil
	}
	return []derive.Step{{
		Key: "protein_basis", Label: "Adjusted weight",
		Formula: "weight at BMI 25 + 0.25 × (weight − weight at BMI 25)",
		Inputs: []derive.Input{
			{Name: "weight", Value: float64(in.Weight), Unit: "kg"},
			{Name: "height", Value: float64(in.Height), Unit: "cm"},
		},
		Result: float64(weight), Unit: "kg",
		Source: derive.Source{Text: "convention; factors of 0.25 to 0.4 are in use", Confidence: derive.Memory},
		Note:   "Used from a BMI of 30, where body weight would overstate the need.",
	}}
}

func proteinLimit(in ProteinInput, weight unit.Kilogram) (unit.Gram, string) {
	const wordsShare = "35 % of energy"
	share := gramsAt(in.Energy, MostProteinShare, EnergyPerGramProtein)
	least := unit.Gram(float64(LeastProteinPerKg) * float64(weight))
	limit, words := share, wordsShare
	if least > share {
		limit, words = least, "0.8 g/kg"
	}
	room := gramsAt(in.Energy, 100-in.FatFloor, EnergyPerGramProtein)
	if room < limit {
		return room, fmt.Sprintf("what the fat floor of %g %% leaves", float64(in.FatFloor))
	}
	return limit, words
}

func gramsAt(energy unit.Kilocalorie, share unit.Percent, perGram float64) unit.Gram {
	return unit.Gram(float64(energy) * float64(share) / 100 / perGram)
}

func limitStep(label, formula string, grams unit.Gram, in ProteinInput, weight unit.Kilogram, source derive.Source) derive.Step {
	return derive.Step{
		Key: "protein", Label: label, Formula: formula,
		Inputs: []derive.Input{
			{Name: "target energy", Value: float64(in.Energy), Unit: "kcal/day"},
			{Name: "weight reckoned with", Value: float64(weight), Unit: "kg"},
			{Name: "fat floor", Value: float64(in.FatFloor), Unit: "%"},
		},
		Result: float64(grams), Unit: "g/day", Source: source,
	}
}

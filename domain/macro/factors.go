package macro

import (
	"fmt"
	"strings"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// EnergyPerGramAlcohol is the energy of a gram of ethanol.
// Source: Regulation (EU) 1169/2011, annex XIV (seen).
const EnergyPerGramAlcohol = 7

// Amounts are grams of what brings energy, as a label in the European Union
// counts them: carbohydrate is available carbohydrate, polyols apart.
type Amounts struct {
	Carbohydrate, Polyols, Protein, Fat, Salatrims unit.Gram
	Alcohol, OrganicAcids, Fibre, Erythritol       unit.Gram
}

// counted is an amount with the energy of a gram in both units.
type counted struct {
	name         string
	grams        unit.Gram
	kilocalories unit.Kilocalorie
	kilojoules   unit.Kilojoule
}

// each pairs the amounts with their factors. Each factor is rounded in its own
// unit: 4 kcal are 16.74 kJ, and 17 is printed.
//
// Source: Regulation (EU) 1169/2011, annex XIV (seen).
func (a Amounts) each() []counted {
	return []counted{
		{"carbohydrate", a.Carbohydrate, EnergyPerGramCarbohydrate, 17},
		{"polyols", a.Polyols, 2.4, 10},
		{"protein", a.Protein, EnergyPerGramProtein, 17},
		{"fat", a.Fat, EnergyPerGramFat, 37},
		{"salatrims", a.Salatrims, 6, 25},
		{"alcohol", a.Alcohol, EnergyPerGramAlcohol, 29},
		{"organic acids", a.OrganicAcids, 3, 13},
		{"fibre", a.Fibre, EnergyPerGramFibre, 8},
		{"erythritol", a.Erythritol, 0, 0},
	}
}

// LabelEnergy is the energy of amounts as a label in the European Union gives it.
type LabelEnergy struct {
	Kilocalories derive.Derived[unit.Kilocalorie]
	Kilojoules   derive.Derived[unit.Kilojoule]
}

// Label returns the energy of amounts by the factors of the regulation, in both
// units, and says how far the two are apart by the rounding of the factors.
func (a Amounts) Label() LabelEnergy {
	var kcal unit.Kilocalorie
	var kilojoules unit.Kilojoule
	var inputs []derive.Input
	var inKcal, inKilojoules []string
	for _, c := range a.each() {
		kcal += unit.Kilocalorie(c.grams) * c.kilocalories
		kilojoules += unit.Kilojoule(c.grams) * c.kilojoules
		if c.grams != 0 {
			inputs = append(inputs, derive.Input{Name: c.name, Value: float64(c.grams), Unit: "g/day"})
			inKcal = append(inKcal, fmt.Sprintf("%g × %s", float64(c.kilocalories), c.name))
			inKilojoules = append(inKilojoules, fmt.Sprintf("%g × %s", float64(c.kilojoules), c.name))
		}
	}
	source := derive.Source{Text: "Regulation (EU) 1169/2011, annex XIV", Confidence: derive.Seen}
	return LabelEnergy{
		Kilocalories: derive.Exact(kcal, derive.Step{
			Key: "label_kcal", Label: "Energy as a label counts it",
			Formula: sumOf(inKcal),
			Inputs:  inputs, Result: float64(kcal), Unit: "kcal/day", Source: source,
			Note: "Carbohydrate is available carbohydrate here, with fibre beside it.",
		}),
		Kilojoules: derive.Exact(kilojoules, derive.Step{
			Key: "label_kj", Label: "Energy as a label counts it, in kilojoules",
			Formula: sumOf(inKilojoules),
			Inputs:  inputs, Result: float64(kilojoules), Unit: "kJ/day", Source: source,
			Note: fmt.Sprintf("The factors are rounded in each unit: this is %+.0f kJ beside 4.184 × the kilocalories.", float64(kilojoules-kcal.Kilojoules())),
		}),
	}
}

// sumOf is the formula of a sum, of nothing too.
func sumOf(terms []string) string {
	if len(terms) == 0 {
		return "0"
	}
	return strings.Join(terms, " + ")
}

// thermic is the part of the energy of a nutrient that digesting it takes.
type thermic struct{ low, high float64 }

// Source: Westerterp 2004, Nutr Metab 1:5 (5-15 % of the day and the order of
// the nutrients seen; the parts themselves from memory).
var (
	thermicProtein      = thermic{0.20, 0.30}
	thermicCarbohydrate = thermic{0.05, 0.10}
	thermicFat          = thermic{0, 0.03}
	thermicAlcohol      = thermic{0.10, 0.30}
)

// ThermicEffect returns the energy that digesting a day takes, as a range with
// its middle. Maintenance energy has it inside; nothing is reckoned with it.
func ThermicEffect(a Amounts) derive.Derived[unit.Kilocalorie] {
	var low, high float64
	for _, n := range []struct {
		energy float64
		part   thermic
	}{
		{EnergyPerGramProtein * float64(a.Protein), thermicProtein},
		{EnergyPerGramCarbohydrate * float64(a.Carbohydrate), thermicCarbohydrate},
		{EnergyPerGramFat * float64(a.Fat), thermicFat},
		{EnergyPerGramAlcohol * float64(a.Alcohol), thermicAlcohol},
	} {
		low, high = low+n.energy*n.part.low, high+n.energy*n.part.high
	}
	value := (low + high) / 2
	return derive.Within(unit.Kilocalorie(value), unit.Kilocalorie(low), unit.Kilocalorie(high), derive.Step{
		Key: "thermic_effect", Label: "Energy that digesting takes",
		Formula: "20-30 % of protein, 5-10 % of carbohydrate, 0-3 % of fat and 10-30 % of alcohol energy",
		Inputs: []derive.Input{
			{Name: "protein", Value: float64(a.Protein), Unit: "g/day"},
			{Name: "carbohydrate", Value: float64(a.Carbohydrate), Unit: "g/day"},
			{Name: "fat", Value: float64(a.Fat), Unit: "g/day"},
		},
		Result: value, Unit: "kcal/day", Range: &derive.Range{Low: low, High: high},
		Source: derive.Source{Text: "Westerterp 2004, Nutr Metab 1:5; the parts by nutrient are textbook values", Confidence: derive.Memory},
		Note:   "Maintenance energy has it inside; it is not taken off again.",
	})
}

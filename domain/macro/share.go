package macro

import (
	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Shares is each macro's part of the energy, and the energy of all three.
type Shares struct {
	Protein, Fat, Carbohydrate unit.Percent
	Energy                     unit.Kilocalorie // a day
}

// SharesOf returns each macro's part of their joint energy, total carbohydrate
// counted.
func SharesOf(protein, fat, carbohydrate unit.Gram) Shares {
	return sharesOf(EnergyPerGramProtein*float64(protein), EnergyPerGramFat*float64(fat), EnergyPerGramCarbohydrate*float64(carbohydrate))
}

// Shares returns each macro's part of the energy that a split and its protein
// bring. The energy of fibre lies in the share of carbohydrate, so that the
// shares are the same under either counting.
func (s Split) Shares(protein unit.Gram) Shares {
	return sharesOf(EnergyPerGramProtein*float64(protein), EnergyPerGramFat*float64(s.Fat.Value), float64(s.CarbohydrateEnergy))
}

func sharesOf(p, f, c float64) Shares {
	total := p + f + c
	if total <= 0 {
		return Shares{}
	}
	return Shares{unit.Percent(100 * p / total), unit.Percent(100 * f / total), unit.Percent(100 * c / total), unit.Kilocalorie(total)}
}

// Band is the acceptable range of a macro as a part of energy, and where a day
// stands in it.
type Band struct {
	Key       string // "protein", "fat", "carbohydrate"
	Name      string
	Low, High unit.Percent
	Share     derive.Derived[unit.Percent]
	Inside    bool
}

// shareRounding keeps a share that is on an edge but for rounding inside it.
const shareRounding unit.Percent = 1e-6

// Bands returns the acceptable macronutrient distribution ranges for adults with
// the shares of a day.
//
// Source: IOM 2002/2005 (seen): protein 10-35 %, fat 20-35 %, carbohydrate
// 45-65 % of energy. EFSA 2010 has the same for fat, and 45-60 % for
// carbohydrate (from memory).
func Bands(s Shares) []Band {
	return []Band{
		band("protein", "Protein", LeastProteinShare, MostProteinShare, s.Protein, s.Energy),
		band("fat", "Fat", DefaultFatFloor, MostFatShare, s.Fat, s.Energy),
		band("carbohydrate", "Carbohydrate", CarbohydrateShareFloor, MostCarbohydrateShare, s.Carbohydrate, s.Energy),
	}
}

func band(key, name string, low, high, share unit.Percent, of unit.Kilocalorie) Band {
	inside := share >= low-shareRounding && share <= high+shareRounding
	note := "Inside the acceptable range."
	switch {
	case !inside && share < low:
		note = "Under the acceptable range."
	case !inside:
		note = "Over the acceptable range."
	}
	return Band{key, name, low, high, derive.Exact(share, derive.Step{
		Key: "share_" + key, Label: name + " as a part of energy", Formula: "energy of the macro / energy of all three × 100",
		Inputs: []derive.Input{
			{Name: "energy of the macro", Value: float64(share) / 100 * float64(of), Unit: "kcal/day"},
			{Name: "energy of all three", Value: float64(of), Unit: "kcal/day"},
			{Name: "range from", Value: float64(low), Unit: "%"},
			{Name: "range to", Value: float64(high), Unit: "%"},
		},
		Result: float64(share), Unit: "%",
		Source: derive.Source{Text: "acceptable macronutrient distribution range, IOM 2002/2005", Confidence: derive.Seen}, Note: note,
	}), inside}
}

// Ceiling is the most of something as a part of energy.
type Ceiling struct {
	Key, Name string
	Share     unit.Percent // of energy
	Grams     derive.Derived[unit.Gram]
}

// Ceilings returns what a day of an energy should not go over.
//
// Source: WHO, healthy diet (seen): saturated fat under 10 % of energy, free
// sugars under 10 % and better under 5 %.
func Ceilings(energy unit.Kilocalorie) []Ceiling {
	return []Ceiling{
		ceiling("saturated_fat", "Saturated fat", 10, EnergyPerGramFat, energy),
		ceiling("free_sugars", "Free sugars", 10, EnergyPerGramCarbohydrate, energy),
		ceiling("free_sugars_better", "Free sugars, better still", 5, EnergyPerGramCarbohydrate, energy),
	}
}

func ceiling(key, name string, share unit.Percent, perGram float64, energy unit.Kilocalorie) Ceiling {
	grams := gramsAt(energy, share, perGram)
	return Ceiling{key, name, share, derive.Exact(grams, derive.Step{
		Key: key, Label: name + ", at most", Formula: "share × target energy / energy of a gram",
		Inputs: []derive.Input{
			{Name: "share", Value: float64(share), Unit: "%"},
			{Name: "target energy", Value: float64(energy), Unit: "kcal/day"},
			{Name: "energy of a gram", Value: perGram, Unit: "kcal/g"},
		},
		Result: float64(grams), Unit: "g/day",
		Source: derive.Source{Text: "WHO, healthy diet", Confidence: derive.Seen},
	})}
}

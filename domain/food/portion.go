package food

import (
	"math"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// ClassPortion is what one portion of a class of foods brings: a fist of milk,
// a cupped hand of fruit, a glass of wine.
type ClassPortion struct {
	Class     Class
	Size      Size   // hand shape of most foods of the class
	Foods     []Food // of which it is the mean
	Grams     derive.Derived[unit.Gram]
	Mean      Amounts
	Low, High Amounts // least and most over the foods
	Counts    Counted // what the mean portion counts as
	Steps     []derive.Step
}

// PortionOf returns what a portion of a class brings to somebody with an eating
// pattern who avoids some allergens, as the plain mean over the foods of the
// class that are eaten as they are, each at its own portion; false where none is
// left.
func PortionOf(c Class, p Pattern, avoid []Allergen) (ClassPortion, bool) {
	portion := ClassPortion{Class: c}
	sizes := map[Size]int{}
	for _, f := range theTable().foods {
		if f.Class != c || !f.eaten() || !f.Suits(p, avoid) {
			continue
		}
		sizes[f.Size]++
		if sizes[f.Size] > sizes[portion.Size] {
			portion.Size = f.Size
		}
		f.Share = 1
		portion.Foods = append(portion.Foods, f)
	}
	if len(portion.Foods) == 0 {
		return portion, false
	}
	portion.sum(UsualPerMeasure(p, avoid))
	return portion, true
}

func (c *ClassPortion) sum(per PerMeasure) {
	var grams, alcohol float64
	low, high := math.Inf(1), math.Inf(-1)
	for i, f := range c.Foods {
		each, g := f.Brings(f.Portion), float64(f.Portion)
		grams += g
		alcohol += f.per100.alcohol.value * g / 100
		low, high = math.Min(low, g), math.Max(high, g)
		if i == 0 {
			c.Low, c.High = each, each
		}
		c.Low, c.High = pick(c.Low, each, math.Min), pick(c.High, each, math.Max)
	}
	n := float64(len(c.Foods))
	c.Mean = Mean(c.Foods)
	c.steps(grams/n, low, high)
	c.Grams = derive.Within(unit.Gram(grams/n), unit.Gram(low), unit.Gram(high), c.Steps[0])
	c.count(alcohol/n, per)
}

// count counts the mean portion as a food of its own would count.
func (c *ClassPortion) count(alcohol float64, per PerMeasure) {
	mean := Food{
		Code: string(c.Class), Name: c.Class.Name(), Class: c.Class, State: StateReady, Size: c.Size, Portion: 100,
		per100: per100{
			energy: float64(c.Mean.Energy), protein: float64(c.Mean.Protein), fat: float64(c.Mean.Fat),
			carbohydrate: float64(c.Mean.Carbohydrate), fibre: figure{float64(c.Mean.Fibre), true},
			alcohol: figure{alcohol, true},
		},
	}
	c.Counts = mean.CountsAs(mean.Portion, per)
	c.Counts.Steps[0].Label = "What " + c.Size.Words() + " of " + c.Class.Name() + " counts as"
	c.Steps = append(c.Steps, c.Counts.Steps...)
}

func (c *ClassPortion) steps(grams, low, high float64) {
	foods := []derive.Input{
		{Name: "foods", Value: float64(len(c.Foods))}, {Name: "told by", Text: c.Size.Words()},
	}
	add := func(key, label, unitName string, value, low, high float64) {
		c.Steps = append(c.Steps, derive.Step{
			Key: key + "_" + string(c.Class), Label: label + " of a portion of " + c.Class.Name(),
			Formula: "mean over the foods, each at its own portion", Inputs: foods,
			Result: value, Unit: unitName, Range: &derive.Range{Low: low, High: high}, Source: figuresSource,
		})
	}
	add("grams", "Weight", "g", grams, low, high)
	add("energy", "Energy", "kcal", float64(c.Mean.Energy), float64(c.Low.Energy), float64(c.High.Energy))
	add("protein", "Protein", "g", float64(c.Mean.Protein), float64(c.Low.Protein), float64(c.High.Protein))
	add("fat", "Fat", "g", float64(c.Mean.Fat), float64(c.Low.Fat), float64(c.High.Fat))
	add("carbohydrate", "Carbohydrate", "g", float64(c.Mean.Carbohydrate), float64(c.Low.Carbohydrate), float64(c.High.Carbohydrate))
	add("fibre", "Fibre", "g", float64(c.Mean.Fibre), float64(c.Low.Fibre), float64(c.High.Fibre))
}

func pick(a, b Amounts, choose func(x, y float64) float64) Amounts {
	return Amounts{
		Energy:       unit.Kilocalorie(choose(float64(a.Energy), float64(b.Energy))),
		Protein:      unit.Gram(choose(float64(a.Protein), float64(b.Protein))),
		Fat:          unit.Gram(choose(float64(a.Fat), float64(b.Fat))),
		Carbohydrate: unit.Gram(choose(float64(a.Carbohydrate), float64(b.Carbohydrate))),
		Fibre:        unit.Gram(choose(float64(a.Fibre), float64(b.Fibre))),
	}
}

package hand

import (
	"math"
	"strconv"

	"handbreadth/domain/derive"
	"handbreadth/domain/food"
	"handbreadth/domain/unit"
)

// Reference is the size of one measure of the reference adult's hand.
type Reference struct {
	Mass   unit.Gram       // of the palm, cooked
	Volume unit.Millilitre // of the others
	Source derive.Source
	Range  string // what published leaflets say
}

// references: four US public leaflets agree on palm, fist and cupped hand; the
// thumb differs between them by a factor of two.
var references = [4]Reference{
	Palm: {
		Mass: 85, Range: "3 oz of cooked meat or fish",
		Source: derive.Source{Text: "3 oz cooked: HPRC (Uniformed Services University) 2019; Mississippi State University Extension; US National Guard; Palomar Health", Confidence: derive.Seen},
	},
	Fist: {
		Volume: 240, Range: "1 cup",
		Source: derive.Source{Text: "1 cup: HPRC 2019; Mississippi State University Extension; US National Guard; Palomar Health", Confidence: derive.Seen},
	},
	CuppedHand: {
		Volume: 120, Range: "half a cup",
		Source: derive.Source{Text: "half a cup: HPRC 2019; Mississippi State University Extension; Palomar Health", Confidence: derive.Seen},
	},
	Thumb: {
		Volume: 15, Range: "1 to 2 tablespoons",
		Source: derive.Source{Text: "1 tablespoon: US National Guard; leaflets say 1 to 2 (Mississippi State University Extension, HPRC 2019)", Confidence: derive.Seen},
	},
}

// ReferenceOf returns the size of one measure of the reference adult's hand.
func ReferenceOf(k Kind) Reference { return references[k] }

// GroupOf returns the group of foods that fills a measure.
func GroupOf(k Kind) food.Group {
	return [...]food.Group{food.Protein, food.Vegetables, food.StarchAndFruit, food.OilsAndNuts}[k]
}

// tableSource names where a basket's figures come from and who set its shares.
func tableSource(chosen bool) derive.Source {
	shares := "common practice"
	if chosen {
		shares = "chosen by the practitioner"
	}
	return derive.Source{
		Text:       "USDA National Nutrient Database for Standard Reference 28 (2016) and its household measures; shares of the basket: " + shares,
		Confidence: derive.Seen,
	}
}

// Fill returns what each measure holds for an eating pattern without the
// avoided allergens: the mean over the basket of foods, with its spread.
func Fill(pattern food.Pattern, avoid []food.Allergen) Contents {
	contents, _ := FillChosen(nil, pattern, avoid)
	return contents
}

// FillChosen returns the same for the foods that the practitioner chose, and how
// each basket came about: where nothing chosen for a measure is fit for the
// client its usual basket stands in, and the filling says so.
func FillChosen(choice food.BasketChoice, pattern food.Pattern, avoid []food.Allergen) (Contents, [4]food.Filling) {
	var contents Contents
	var fillings [4]food.Filling
	for _, k := range Kinds() {
		fillings[k] = choice.Fill(GroupOf(k), pattern, avoid)
		contents[k] = fill(k, fillings[k])
	}
	return contents, fillings
}

// PerMeasure returns the contents as the food table counts against them:
// [food.Food.CountsAs] tells how many of these measures an amount of a food is.
func (c Contents) PerMeasure() food.PerMeasure {
	var per food.PerMeasure
	for _, k := range Kinds() {
		per.Brings[GroupOf(k)] = food.Amounts(c[k].Nutrients)
		per.Size[GroupOf(k)] = c[k].Hand.Value
	}
	return per
}

func fill(k Kind, filling food.Filling) Content {
	basket := filling.Foods
	c := Content{Kind: k, Volume: references[k].Volume}
	var share, grams float64
	lightest, heaviest := math.Inf(1), math.Inf(-1)
	for i, f := range basket {
		each := Nutrients(f.Brings(f.Portion))
		share += float64(f.Share)
		grams += float64(f.Share) * float64(f.Portion)
		lightest = math.Min(lightest, float64(f.Portion))
		heaviest = math.Max(heaviest, float64(f.Portion))
		if i == 0 {
			c.Low, c.High = each, each
		}
		c.Low, c.High = pick(c.Low, each, math.Min), pick(c.High, each, math.Max)
		c.Examples = append(c.Examples, f.Name)
	}
	c.Nutrients = Nutrients(food.Mean(basket))
	c.Steps = contentSteps(k, c, filling, grams/share, lightest, heaviest)
	c.Grams = derive.Within(unit.Gram(grams/share), unit.Gram(lightest), unit.Gram(heaviest), c.Steps[0])
	return c
}

func (n Nutrients) plus(o Nutrients, times float64) Nutrients {
	return Nutrients{
		Energy:       n.Energy + unit.Kilocalorie(times*float64(o.Energy)),
		Protein:      n.Protein + unit.Gram(times*float64(o.Protein)),
		Fat:          n.Fat + unit.Gram(times*float64(o.Fat)),
		Carbohydrate: n.Carbohydrate + unit.Gram(times*float64(o.Carbohydrate)),
		Fibre:        n.Fibre + unit.Gram(times*float64(o.Fibre)),
	}
}

func pick(a, b Nutrients, choose func(x, y float64) float64) Nutrients {
	return Nutrients{
		Energy:       unit.Kilocalorie(choose(float64(a.Energy), float64(b.Energy))),
		Protein:      unit.Gram(choose(float64(a.Protein), float64(b.Protein))),
		Fat:          unit.Gram(choose(float64(a.Fat), float64(b.Fat))),
		Carbohydrate: unit.Gram(choose(float64(a.Carbohydrate), float64(b.Carbohydrate))),
		Fibre:        unit.Gram(choose(float64(a.Fibre), float64(b.Fibre))),
	}
}

func contentSteps(k Kind, c Content, filling food.Filling, grams, lightest, heaviest float64) []derive.Step {
	ref := references[k]
	basket := derive.Input{Name: "foods in the basket", Value: float64(len(filling.Foods))}
	size := derive.Input{Name: "size of the measure", Text: ref.Range}
	steps := []derive.Step{{
		Key: "grams_" + k.Key(), Label: "Weight of one " + k.Name(),
		Formula: "mean portion of the foods that this client eats",
		Inputs:  []derive.Input{size, basket}, Result: grams, Unit: "g",
		Range: &derive.Range{Low: lightest, High: heaviest}, Source: ref.Source,
	}}
	n := c.Nutrients
	parts := []struct {
		key, label, unit string
		value, low, high float64
	}{
		{"energy", "Energy", "kcal", float64(n.Energy), float64(c.Low.Energy), float64(c.High.Energy)},
		{"protein", "Protein", "g", float64(n.Protein), float64(c.Low.Protein), float64(c.High.Protein)},
		{"fat", "Fat", "g", float64(n.Fat), float64(c.Low.Fat), float64(c.High.Fat)},
		{"carbohydrate", "Carbohydrate", "g", float64(n.Carbohydrate), float64(c.Low.Carbohydrate), float64(c.High.Carbohydrate)},
		{"fibre", "Fibre", "g", float64(n.Fibre), float64(c.Low.Fibre), float64(c.High.Fibre)},
	}
	for _, p := range parts {
		steps = append(steps, derive.Step{
			Key: p.key + "_" + k.Key(), Label: p.label + " of one " + k.Name(),
			Formula: "mean over the basket, each food by its share", Inputs: []derive.Input{basket},
			Result: p.value, Unit: p.unit, Range: &derive.Range{Low: p.low, High: p.high}, Source: tableSource(filling.Chosen),
		})
	}
	return steps
}

// Key returns the name of the measure as a key: "cupped_hand".
func (k Kind) Key() string { return [...]string{"palm", "fist", "cupped_hand", "thumb"}[k] }

func countInput(k Kind, n unit.Measure) derive.Input {
	return derive.Input{Name: k.Plural(), Text: strconv.FormatFloat(float64(n), 'f', -1, 64)}
}

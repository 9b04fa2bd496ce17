package hand

import (
	"fmt"
	"math"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Aim is what an allotment should bring and in how many meals.
type Aim struct {
	Meals        int // 1 to 6
	Energy       unit.Kilocalorie
	Protein      unit.Gram
	Fat          unit.Gram
	Carbohydrate unit.Gram
	FatFloor     unit.Percent // of the allotment's own energy
	// LeastEnergy and LeastAvailable are energy and available carbohydrate that no
	// day should bring less of, where there is such a day; 0: none.
	LeastEnergy    unit.Kilocalorie
	LeastAvailable unit.Gram
	// ProteinByItself measures protein on its own target, however little of the
	// energy that is.
	ProteinByItself bool
	// FewVegetables lets vegetables give way where a finding asks for it.
	FewVegetables bool
	// Wishes bound the measures of meals. They must not conflict: see [Conflict].
	Wishes []Wish
	// Sizes are the wished sizes of the meals, one a meal; nil: all alike.
	Sizes []MealSize
}

// Weights of the distance: how much a relative miss of each target counts.
// Common practice, no source: energy and protein matter most for the goal.
const (
	weightEnergy       = 1.5
	weightProtein      = 1.5
	weightFat          = 1.0
	weightCarbohydrate = 1.0
)

// Vegetables are wished for, not filled in: about five fists a day, between one
// and two a meal and at least two a day.
// Source: WHO, at least 400 g or five portions of fruit and vegetables a day
// (seen); the split over meals is common practice, no source.
const (
	wishedFists    = 5
	leastFists     = 2
	mostFistsAMeal = 2
	fewFistsAMeal  = 0.5
)

// WidestMiss: a day whose measures miss a target by more than a fifth is taken only where
// no day comes nearer. This program's choice, no source.
const (
	WidestMiss   = 0.20
	weightBeyond = 1e6
)

// weightUnder is for what a day lacks to the leasts of an aim: a day that holds
// them comes before one that is nearer to its targets.
const weightUnder = 1e9

const halvesInWhole = 2

// fistHalves returns the wished fists of vegetables of a day, in halves.
func (a Aim) fistHalves() int {
	if a.FewVegetables {
		return int(math.Max(1, math.Ceil(fewFistsAMeal*float64(a.Meals)*halvesInWhole)))
	}
	wished := min(max(wishedFists, a.Meals), mostFistsAMeal*a.Meals)
	return max(wished, leastFists) * halvesInWhole
}

// alternatives is how many further days are offered.
const alternatives = 3

// Allot returns the whole and half measures of each meal whose day comes
// nearest to the aim: the least weighted sum of relative misses of energy,
// protein, fat and carbohydrate over every combination of half measures of
// palms, cupped hands and thumbs that the wishes allow and whose fat holds the
// floor, days that hold the leasts first, then those within a fifth of every
// target. Among equals the fewest
// measures win. The day is then shared out as evenly as halves and wishes allow.
// The next nearest days come as alternatives.
func Allot(a Aim, contents Contents) Allotment {
	bounds := boundsOf(a)
	days := nearest(a, contents, bounds)
	out := allotted(a, contents, bounds, days[0].day)
	for _, d := range days[1:] {
		out.Alternatives = append(out.Alternatives, allotted(a, contents, bounds, d.day))
	}
	return out
}

func allotted(a Aim, contents Contents, bounds mealBounds, day Measures) Allotment {
	out := Allotment{Day: day, Meals: share(a, bounds, day, contents), Brings: contents.Bring(day)}
	out.Distance = distanceOf(a, out.Brings)
	out.Steps = allotSteps(a, out)
	return out
}

type totals struct{ energy, protein, fat, carbohydrate, fibre float64 }

func (t totals) plus(o Nutrients, halves int) totals {
	k := float64(halves) / halvesInWhole
	return totals{
		t.energy + k*float64(o.Energy), t.protein + k*float64(o.Protein),
		t.fat + k*float64(o.Fat), t.carbohydrate + k*float64(o.Carbohydrate),
		t.fibre + k*float64(o.Fibre),
	}
}

// tieBreak prefers fewer measures among days that come equally near.
const tieBreak = 1e-9

func whole(halves int) unit.Measure { return unit.Measure(float64(halves) / halvesInWhole) }

func halvesOf(m unit.Measure) int { return int(math.Round(float64(m) * halvesInWhole)) }

func (a Aim) miss(t totals) float64 {
	return weightEnergy*a.relative(t.energy, float64(a.Energy), perKilocalorie) +
		weightProtein*a.relative(t.protein, float64(a.Protein), a.proteinMeasure()) +
		weightFat*a.relative(t.fat, float64(a.Fat), perGramFat) +
		weightCarbohydrate*a.relative(t.carbohydrate, float64(a.Carbohydrate), perGramCarbohydrate) +
		weightUnder*(lack(t.energy, float64(a.LeastEnergy))+lack(t.carbohydrate-t.fibre, float64(a.LeastAvailable)))
}

// lack returns what an amount lacks to its least, as a share of it.
func lack(got, least float64) float64 {
	if least <= 0 {
		return 0
	}
	return math.Max(0, 1-got/least)
}

// proteinMeasure returns the energy of a gram of protein by which a small target
// of it is measured: without end where it is measured by itself.
func (a Aim) proteinMeasure() float64 {
	if a.ProteinByItself {
		return math.Inf(1)
	}
	return perGramProtein
}

// relative returns how far from its target an amount is, as a share of the
// target, and much more for what is beyond a fifth. A target under a tenth of
// the day's energy is measured by that tenth: else a gram beside a target of
// nought would outweigh everything else.
func (a Aim) relative(got, want, energyPerGram float64) float64 {
	const leastShare = 0.10
	measure := math.Max(want, math.Max(1, leastShare*float64(a.Energy)/energyPerGram))
	miss := math.Abs(got-want) / measure
	return miss + weightBeyond*math.Max(0, miss-WidestMiss)
}

// Kilocalories of what a target counts, by which small targets are measured.
const (
	perKilocalorie      = 1
	perGramProtein      = 4
	perGramFat          = 9
	perGramCarbohydrate = 4
)

func distanceOf(a Aim, n Nutrients) Distance {
	d := Distance{
		Energy: n.Energy - a.Energy, Protein: n.Protein - a.Protein,
		Fat: n.Fat - a.Fat, Carbohydrate: n.Carbohydrate - a.Carbohydrate,
	}
	for _, pair := range [...][3]float64{
		{float64(n.Energy), float64(a.Energy), perKilocalorie},
		{float64(n.Protein), float64(a.Protein), a.proteinMeasure()},
		{float64(n.Fat), float64(a.Fat), perGramFat},
		{float64(n.Carbohydrate), float64(a.Carbohydrate), perGramCarbohydrate},
	} {
		d.Far = d.Far || a.relative(pair[0], pair[1], pair[2]) > WidestMiss
	}
	const perGram = 9
	d.UnderFloor = perGram*float64(n.Fat) < float64(a.FatFloor)/100*float64(n.Energy)-1e-6
	d.Words = fmt.Sprintf("A day of these measures brings about %s and %s.",
		beside(float64(d.Energy), 10, "kcal", "energy"), beside(float64(d.Protein), 1, "g", "protein"))
	return d
}

// beside tells a difference in plain words, rounded to a step: "40 kcal more
// energy than the target", "as much protein as the target".
func beside(diff, step float64, unitName, what string) string {
	rounded := math.Round(math.Abs(diff)/step) * step
	switch {
	case rounded == 0:
		return "as much " + what + " as the target"
	case diff > 0:
		return fmt.Sprintf("%.0f %s more %s than the target", rounded, unitName, what)
	}
	return fmt.Sprintf("%.0f %s less %s than the target", rounded, unitName, what)
}

func allotSteps(a Aim, out Allotment) []derive.Step {
	counts := make([]derive.Input, 0, len(Kinds()))
	for _, k := range Kinds() {
		counts = append(counts, countInput(k, out.Day.Of(k)))
	}
	source := derive.Source{Text: "exhaustive search over half measures; weights 1.5 for energy and protein, 1 for fat and carbohydrate: common practice", Confidence: derive.Custom}
	step := func(key, label, unitName string, value float64) derive.Step {
		return derive.Step{
			Key: key, Label: label, Formula: "sum of measures × what one measure brings",
			Inputs: counts, Result: value, Unit: unitName, Source: source,
		}
	}
	b := out.Brings
	steps := []derive.Step{
		step("allotted_energy", "Energy of the measures", "kcal/day", float64(b.Energy)),
		step("allotted_protein", "Protein of the measures", "g/day", float64(b.Protein)),
		step("allotted_fat", "Fat of the measures", "g/day", float64(b.Fat)),
		step("allotted_carbohydrate", "Carbohydrate of the measures", "g/day", float64(b.Carbohydrate)),
		step("allotted_fibre", "Fibre of the measures", "g/day", float64(b.Fibre)),
	}
	for _, k := range Kinds() {
		steps = append(steps, derive.Step{
			Key: "day_" + k.Key(), Label: "A day's " + k.Plural(),
			Formula: countFormula(k), Inputs: []derive.Input{{Name: "meals", Value: float64(a.Meals)}},
			Result: float64(out.Day.Of(k)), Source: countSource(k, source),
		})
	}
	return steps
}

func countFormula(k Kind) string {
	if k == Fist {
		return "about five a day, one to two a meal, at least two a day; not used as filler"
	}
	return "the half measures whose day comes nearest to the targets"
}

func countSource(k Kind, search derive.Source) derive.Source {
	if k == Fist {
		return derive.Source{Text: "WHO: at least 400 g of fruit and vegetables a day; split over meals: common practice", Confidence: derive.Seen}
	}
	return search
}

package food

import (
	"math"
	"strings"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// PerMeasure is one measure of each group, by group: what it brings, and its
// size beside that of the reference hand, 0 for the reference hand itself.
type PerMeasure struct {
	Brings [4]Amounts
	Size   [4]unit.Ratio
}

// UsualPerMeasure returns what a measure filled from the usual baskets brings to
// somebody with an eating pattern who avoids some allergens.
func UsualPerMeasure(p Pattern, avoid []Allergen) PerMeasure {
	var per PerMeasure
	for _, g := range Groups() {
		per.Brings[g] = Mean(Basket(g, p, avoid))
	}
	return per
}

// Counted is the measures that an amount of a food counts as, in halves, by
// group. All are nought where the amount is too small to count.
type Counted struct {
	Measures [4]unit.Measure
	Brings   Amounts // the amount itself, not the measures
	Steps    []derive.Step
}

// Words tells the measures: "½ palm and 1 cupped hand", or "nothing".
func (c Counted) Words() string {
	var parts []string
	for _, g := range Groups() {
		switch n := c.Measures[g]; {
		case n == 0:
		case n <= 1:
			parts = append(parts, n.String()+" "+g.Measure())
		default:
			parts = append(parts, n.String()+" "+g.Measure()+"s")
		}
	}
	if len(parts) == 0 {
		return "nothing"
	}
	last := len(parts) - 1
	if last == 0 {
		return parts[0]
	}
	return strings.Join(parts[:last], ", ") + " and " + parts[last]
}

// What weighs in the count: the energy told in the wrong place, as a share of
// the food's own, and a twentieth more for each kind of measure, so that few are
// told. This program's choice, no source.
const eachKind = 0.05

// CountsAs returns the whole and half measures that come nearest to what a mass
// of the food brings, given one measure of each group. Vegetables
// that fill a fist count by their volume alone, so that they are never filler.
// What fills a palm counts palms by its weight, and what it brings beyond them,
// as fat meat does, by figures. All else counts by energy, protein, fat and
// carbohydrate against palms, cupped hands and thumbs, few of them before many,
// so that berries and avocado count for less than they fill. The energy of
// alcohol counts as that of carbohydrate, common practice without a source.
func (f Food) CountsAs(mass unit.Gram, per PerMeasure) Counted {
	c := Counted{Brings: f.Brings(mass)}
	g, fills := f.Fills()
	one := f.Portion
	if per.Size[g] > 0 {
		one *= unit.Gram(per.Size[g])
	}
	halves := int(math.Round(2 * float64(mass/one)))
	if fills && g == Vegetables {
		c.Measures[g] = halfOf(halves)
		c.Steps = []derive.Step{f.countStep(mass, c, "weight / weight of one fist", []derive.Input{
			{Name: "weight", Value: float64(mass), Unit: "g"}, {Name: "one fist", Value: float64(one), Unit: "g"},
		})}
		return c
	}
	want := macrosOf(c.Brings)
	want.carbohydrate += energyAlcohol * f.per100.alcohol.value * float64(mass) / 100
	from, to := 0, most(want, macrosOf(per.Brings[Protein]))
	if fills && g == Protein {
		from, to = halves, halves+1
	}
	c.Measures = nearest(want, per.Brings, from, to)
	c.Steps = []derive.Step{f.countStep(mass, c, "the half measures that leave least energy in the wrong place, few before many", []derive.Input{
		{Name: "energy", Value: float64(c.Brings.Energy), Unit: "kcal"},
		{Name: "protein", Value: float64(c.Brings.Protein), Unit: "g"},
		{Name: "fat", Value: float64(c.Brings.Fat), Unit: "g"},
		{Name: "carbohydrate", Value: float64(c.Brings.Carbohydrate), Unit: "g"},
	})}
	return c
}

func (f Food) countStep(mass unit.Gram, c Counted, formula string, inputs []derive.Input) derive.Step {
	var sum float64
	for _, n := range c.Measures {
		sum += float64(n)
	}
	return derive.Step{
		Key: "counts_" + f.Code, Label: "What " + number(float64(mass)) + " g of " + f.Name + " counts as",
		Formula: formula, Inputs: inputs, Result: sum, Unit: "measures", Source: ownChoice, Note: c.Words(),
	}
}

// macros is an amount in kilocalories: all of it, and what each macro gives.
type macros struct{ energy, protein, fat, carbohydrate float64 }

func macrosOf(a Amounts) macros {
	return macros{
		float64(a.Energy), energyProtein * float64(a.Protein),
		energyFat * float64(a.Fat), energyCarbohydrate * float64(a.Carbohydrate),
	}
}

func (m macros) apart(o macros) float64 {
	return math.Abs(m.energy-o.energy) + math.Abs(m.protein-o.protein) +
		math.Abs(m.fat-o.fat) + math.Abs(m.carbohydrate-o.carbohydrate)
}

func (m macros) plus(o macros, halves int) macros {
	k := float64(halves) / 2
	return macros{m.energy + k*o.energy, m.protein + k*o.protein, m.fat + k*o.fat, m.carbohydrate + k*o.carbohydrate}
}

// nearest tries every count of half palms from one up to another, and of half
// cupped hands and thumbs up to what alone brings more than the energy wanted.
func nearest(want macros, per [4]Amounts, palmsFrom, palmsTo int) [4]unit.Measure {
	palm, cup, thumb := macrosOf(per[Protein]), macrosOf(per[StarchAndFruit]), macrosOf(per[OilsAndNuts])
	var best [4]unit.Measure
	least := math.Inf(1)
	for p := palmsFrom; p < palmsTo; p++ {
		withPalms := macros{}.plus(palm, p)
		for c := range most(want, cup) {
			withCups := withPalms.plus(cup, c)
			for t := range most(want, thumb) {
				kinds := float64(sign(p) + sign(c) + sign(t))
				cost := want.apart(withCups.plus(thumb, t)) + eachKind*kinds*want.energy
				if cost < least {
					least = cost
					best[Protein], best[StarchAndFruit], best[OilsAndNuts] = halfOf(p), halfOf(c), halfOf(t)
				}
			}
		}
	}
	return best
}

// most returns how many counts of halves to try, from nought.
func most(want, each macros) int {
	const limit = 40
	if each.energy <= 0 {
		return 1
	}
	return int(math.Min(limit, math.Ceil(2*want.energy/each.energy))) + 2
}

func sign(n int) int { return min(n, 1) }

func halfOf(halves int) unit.Measure { return unit.Measure(float64(halves) / 2) }

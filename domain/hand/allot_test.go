package hand

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/food"
	"handbreadth/domain/unit"
)

func anyAim(t *rapid.T) Aim {
	energy := rapid.Float64Range(1200, 3600).Draw(t, "energy")
	protein := rapid.Float64Range(50, 160).Draw(t, "protein")
	floor := rapid.SampledFrom([]unit.Percent{15, 20, 25, 30}).Draw(t, "floor")
	left := energy - 4*protein
	balance := rapid.Float64Range(0.2, 0.8).Draw(t, "balance")
	fat := math.Max(float64(floor)/100*energy, (1-balance)*left) / 9
	return Aim{
		Meals:  rapid.IntRange(1, 6).Draw(t, "meals"),
		Energy: unit.Kilocalorie(energy), Protein: unit.Gram(protein),
		Fat: unit.Gram(fat), Carbohydrate: unit.Gram((left - 9*fat) / 4), FatFloor: floor,
		FewVegetables: rapid.Bool().Draw(t, "few vegetables"),
	}
}

// independent looks at every combination with arithmetic of its own: no bound
// by target, no walk, no shared distance.
func independent(a Aim, c Contents, fists float64) (least float64) {
	const palmsUpTo, cupsUpTo, thumbsUpTo = 20, 50, 40
	least = math.Inf(1)
	for p := 0.0; p <= palmsUpTo; p += 0.5 {
		for h := 0.0; h <= cupsUpTo; h += 0.5 {
			for th := 0.0; th <= thumbsUpTo; th += 0.5 {
				n := c.Bring(Measures{unit.Measure(p), unit.Measure(fists), unit.Measure(h), unit.Measure(th)})
				if 9*float64(n.Fat) < float64(a.FatFloor)/100*float64(n.Energy)-1e-9 {
					continue
				}
				least = math.Min(least, distance(a, n))
			}
		}
	}
	return least
}

// distance is the weighted sum of misses, each miss beyond a fifth counted a
// million times more.
func distance(a Aim, n Nutrients) (sum float64) {
	tenth := float64(a.Energy) / 10
	for _, c := range []struct{ weight, got, want, least float64 }{
		{1.5, float64(n.Energy), float64(a.Energy), tenth},
		{1.5, float64(n.Protein), float64(a.Protein), tenth / 4},
		{1, float64(n.Fat), float64(a.Fat), tenth / 9},
		{1, float64(n.Carbohydrate), float64(a.Carbohydrate), tenth / 4},
	} {
		miss := math.Abs(c.got-c.want) / math.Max(c.want, c.least)
		if miss > 0.2 {
			miss += 1e6 * (miss - 0.2)
		}
		sum += c.weight * miss
	}
	return sum
}

// The walk against a search that shares no code with it.
func TestAllotmentIsTheNearest(t *testing.T) {
	cases := 0
	rapid.Check(t, func(t *rapid.T) {
		if cases++; cases > 12 && !testing.Verbose() {
			return // each case looks at about three hundred thousand days
		}
		a := anyAim(t)
		c := Fill(rapid.SampledFrom(food.Patterns()).Draw(t, "pattern"), nil)
		out := Allot(a, c)
		got, want := distance(a, out.Brings), independent(a, c, float64(out.Day.Fist))
		if math.Abs(got-want) > 1e-6 {
			t.Fatalf("aim %+v: distance %v, nearest is %v (day %+v)", a, got, want, out.Day)
		}
	})
}

func TestAllotmentKeepsItsPromises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := anyAim(t)
		out := Allot(a, Fill(rapid.SampledFrom(food.Patterns()).Draw(t, "pattern"), nil))
		if len(out.Meals) != a.Meals {
			t.Fatalf("%d meals, want %d", len(out.Meals), a.Meals)
		}
		var sum Measures
		for _, m := range out.Meals {
			sum = sum.Plus(m.Measures)
			for _, k := range Kinds() {
				if n := float64(m.Measures.Of(k)) * 2; n < 0 || n != math.Trunc(n) {
					t.Fatalf("%v %s is not in halves", m.Measures.Of(k), k.Plural())
				}
				if spread := math.Abs(float64(m.Measures.Of(k) - out.Meals[0].Measures.Of(k))); spread > 0.5 {
					t.Fatalf("%s are uneven: %+v", k.Plural(), out.Meals)
				}
			}
			if !a.FewVegetables && (m.Measures.Fist < 1 || m.Measures.Fist > 2) {
				t.Fatalf("%v fists in a meal", m.Measures.Fist)
			}
		}
		if sum != out.Day {
			t.Fatalf("meals add to %+v, day is %+v", sum, out.Day)
		}
		if !a.FewVegetables && out.Day.Fist < 2 {
			t.Fatalf("%v fists a day", out.Day.Fist)
		}
		if 9*float64(out.Brings.Fat) < float64(a.FatFloor)/100*float64(out.Brings.Energy)-1e-9 {
			t.Fatalf("fat of the measures is under the floor: %+v", out.Brings)
		}
	})
}

// Source: hand-measures of four US public leaflets (seen): the palm is 3 oz, the
// fist 1 cup, the cupped hand half a cup, the thumb 1 tablespoon; within 2 %.
func TestReferenceSizes(t *testing.T) {
	within := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got/want-1) > 0.02 {
			t.Errorf("%s: %v, want about %v", what, got, want)
		}
	}
	within("palm", float64(ReferenceOf(Palm).Mass), 3*unit.GramPerOunce)
	within("fist", float64(ReferenceOf(Fist).Volume), unit.MillilitrePerUSCup)
	within("cupped hand", float64(ReferenceOf(CuppedHand).Volume), unit.MillilitrePerUSCup/2)
	within("thumb", float64(ReferenceOf(Thumb).Volume), unit.MillilitrePerUSTbsp)
}

func TestContentsFollowThePattern(t *testing.T) {
	omnivore, vegan := Fill(food.Omnivore, nil), Fill(food.Vegan, nil)
	if vegan[Palm].Nutrients.Carbohydrate <= omnivore[Palm].Nutrients.Carbohydrate {
		t.Error("a plant-based palm brings no more carbohydrate than a mixed one")
	}
	for _, c := range Fill(food.Omnivore, []food.Allergen{food.Milk}) {
		for _, name := range c.Examples {
			if name == "butter" || name == "cottage cheese" || name == "Greek yoghurt" {
				t.Errorf("%s among foods without milk", name)
			}
		}
	}
}

func BenchmarkAllot(b *testing.B) {
	a := Aim{Meals: 3, Energy: 1900, Protein: 90, Fat: 70, Carbohydrate: 220, FatFloor: 20}
	c := Fill(food.Omnivore, nil)
	for b.Loop() {
		Allot(a, c)
	}
}

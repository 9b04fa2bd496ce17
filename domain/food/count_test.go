package food

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/unit"
)

func TestWhatCountsAsWhat(t *testing.T) {
	per := UsualPerMeasure(Omnivore, nil)
	for code, want := range map[string]string{
		"lean_beef": "1 palm", "eggs": "1 palm and ½ thumb", "minced_beef_20_fat": "1 palm and 1 thumb", "lentils": "1 palm",
		"spinach": "1 fist", "white_rice": "1 cupped hand", "olive_oil": "1½ thumbs",
		"cola": "2 cupped hands", "spirits_40": "1 cupped hand", "water": "nothing", "black_tea": "nothing", "garlic": "nothing",
	} {
		f, ok := ByCode(code)
		if !ok {
			t.Errorf("no food %s", code)
			continue
		}
		if got := f.CountsAs(f.Portion, per).Words(); got != want {
			t.Errorf("%v g of %s count as %s, want %s", f.Portion, f.Name, got, want)
		}
	}
	if got := (Food{Portion: 100}).CountsAs(0, per).Words(); got != "nothing" {
		t.Errorf("nothing counts as %s", got)
	}
}

// A plant-based palm brings carbohydrate, so for a vegan lentils are all palm;
// what lies beyond the palms is counted against the client's own measures.
func TestCountFollowsTheClientsMeasures(t *testing.T) {
	f, _ := ByCode("chilli_con_carne_with_beans")
	per := UsualPerMeasure(Omnivore, nil)
	larger := per
	for g := range larger.Brings {
		larger.Brings[g] = Amounts{}.plus(per.Brings[g], 2)
		larger.Size[g] = 2
	}
	whole, half := f.CountsAs(400, per).Measures, f.CountsAs(400, larger).Measures
	var sums [2]float64
	for g := range whole {
		sums[0] += float64(whole[g])
		sums[1] += float64(half[g])
	}
	if sums[1] >= sums[0] {
		t.Errorf("%v measures of a hand twice as large, %v of the reference hand", half, whole)
	}
	beef, _ := ByCode("lean_beef")
	if got := beef.CountsAs(170, larger).Words(); got != "1 palm" {
		t.Errorf("170 g of beef are %s of a hand twice as large", got)
	}
}

// bruteCount searches for the least cost on its own: every combination up to
// twenty halves of each measure, written out anew.
func bruteCount(f Food, mass float64, per PerMeasure) (least float64) {
	k := mass / 100
	e, p := k*f.per100.energy, k*f.per100.protein*4
	fat, c := k*f.per100.fat*9, k*(f.per100.carbohydrate*4+f.per100.alcohol.value*7)
	least = math.Inf(1)
	for palms := 0.0; palms <= 10; palms += 0.5 {
		for cups := 0.0; cups <= 10; cups += 0.5 {
			for thumbs := 0.0; thumbs <= 10; thumbs += 0.5 {
				least = math.Min(least, costOf(per, [4]float64{e, p, fat, c}, palms, cups, thumbs))
			}
		}
	}
	return least
}

func costOf(per PerMeasure, want [4]float64, palms, cups, thumbs float64) float64 {
	var cost float64
	have := [4]float64{}
	for _, m := range []struct {
		n    float64
		each Amounts
	}{{palms, per.Brings[Protein]}, {cups, per.Brings[StarchAndFruit]}, {thumbs, per.Brings[OilsAndNuts]}} {
		have[0] += m.n * float64(m.each.Energy)
		have[1] += m.n * float64(m.each.Protein) * 4
		have[2] += m.n * float64(m.each.Fat) * 9
		have[3] += m.n * float64(m.each.Carbohydrate) * 4
		if m.n > 0 {
			cost += 0.05 * want[0]
		}
	}
	for i := range have {
		cost += math.Abs(have[i] - want[i])
	}
	return cost
}

// The count against a search that shares no code with it.
func TestCountIsTheNearest(t *testing.T) {
	var counted []Food
	for _, f := range All() {
		if g, fills := f.Fills(); !fills || g == StarchAndFruit || g == OilsAndNuts {
			counted = append(counted, f)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(counted).Draw(t, "food")
		per := UsualPerMeasure(rapid.SampledFrom(Patterns()).Draw(t, "pattern"), nil)
		most := 500.0 // kcal: within ten of each measure
		if f.per100.energy > 0 {
			most = math.Min(most, 100*most/f.per100.energy)
		}
		mass := rapid.Float64Range(1, most).Draw(t, "grams")
		c := f.CountsAs(unit.Gram(mass), per)
		k := mass / 100
		got := costOf(per, [4]float64{
			k * f.per100.energy, 4 * k * f.per100.protein, 9 * k * f.per100.fat, k * (4*f.per100.carbohydrate + 7*f.per100.alcohol.value),
		}, float64(c.Measures[Protein]), float64(c.Measures[StarchAndFruit]), float64(c.Measures[OilsAndNuts]))
		if want := bruteCount(f, mass, per); got > want+1e-6 {
			t.Fatalf("%.0f g of %s: %s costs %.2f, the nearest %.2f", mass, f.Name, c.Words(), got, want)
		}
		if c.Measures[Vegetables] != 0 || len(c.Steps) != 1 || c.Steps[0].Note != c.Words() {
			t.Fatalf("%s: %+v", f.Name, c)
		}
	})
}

func TestEveryFoodSaysWhatItCountsAs(t *testing.T) {
	per := UsualPerMeasure(Omnivore, nil)
	for _, f := range All() {
		c := f.CountsAs(f.Portion, per)
		var sum float64
		for _, n := range c.Measures {
			sum += float64(n)
		}
		kcal := float64(f.Brings(f.Portion).Energy)
		if kcal > 60 && sum == 0 || kcal < 15 && sum > 1 || sum > 9 {
			t.Errorf("%v g of %s, %.0f kcal: %s", f.Portion, f.Name, kcal, c.Words())
		}
		if g, fills := f.Fills(); fills && (g == Protein || g == Vegetables) && c.Measures[g] != 1 {
			t.Errorf("one %s of %s counts as %s", g.Measure(), f.Name, c.Words())
		}
	}
}

func TestPortionsOfClasses(t *testing.T) {
	sizes := map[Class]Size{
		ClassMilk: SizeFist, ClassEgg: SizePalm, ClassPulse: SizePalm, ClassFruit: SizeCuppedHand, ClassSoup: SizeFist,
		ClassCheese: SizeServing, ClassAlcohol: SizeServing, ClassDish: SizeServing,
	}
	for _, c := range Classes() {
		p, ok := PortionOf(c, Omnivore, nil)
		if !ok {
			t.Errorf("%s: no portion", c)
			continue
		}
		if want, checked := sizes[c]; checked && p.Size != want {
			t.Errorf("%s is told by %s", c, p.Size.Words())
		}
		for _, span := range [][3]float64{
			{float64(p.Low.Energy), float64(p.Mean.Energy), float64(p.High.Energy)},
			{float64(p.Low.Protein), float64(p.Mean.Protein), float64(p.High.Protein)},
			{float64(p.Grams.Low), float64(p.Grams.Value), float64(p.Grams.High)},
		} {
			if !(span[0] <= span[1] && span[1] <= span[2]) {
				t.Errorf("%s: %v", c, span)
			}
		}
		for _, step := range p.Steps {
			if step.Formula == "" || step.Source.Text == "" || len(step.Inputs) == 0 {
				t.Errorf("%s: %+v", c, step)
			}
		}
		for _, f := range p.Foods {
			if !f.eaten() {
				t.Errorf("%s is not eaten as it is", f.Name)
			}
		}
	}
	if p, ok := PortionOf(ClassMeat, Vegan, nil); ok {
		t.Errorf("a vegan's portion of meat: %+v", p)
	}
	if p, ok := PortionOf(ClassMilk, Vegan, []Allergen{TreeNuts}); !ok || len(p.Foods) < 2 {
		t.Errorf("plant drinks without nuts: %d", len(p.Foods))
	}
}

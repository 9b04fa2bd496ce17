package food

import (
	"math"
	"strings"
	"testing"
)

// The hand measures are 3 oz, a cup, half a cup and a tablespoon by four US
// public leaflets (seen); that one portion of what fills them is a sane amount
// of energy is common practice, no source.
func TestPortionsThatFillAMeasureAreSane(t *testing.T) {
	bounds := [4]struct{ leastKcal, mostKcal, leastGrams, mostGrams float64 }{
		Protein:        {50, 350, 75, 210},
		Vegetables:     {2, mostFistEnergy, 15, 260},
		StarchAndFruit: {10, 150, 7, 170},
		OilsAndNuts:    {5, 130, 5, 17},
	}
	for _, g := range Groups() {
		for _, f := range Table(g) {
			kcal, grams, b := float64(f.Brings(f.Portion).Energy), float64(f.Portion), bounds[g]
			if kcal < b.leastKcal || kcal > b.mostKcal || grams < b.leastGrams || grams > b.mostGrams {
				t.Errorf("a %s of %s: %.0f g, %.0f kcal", g.Measure(), f.Name, grams, kcal)
			}
			if of, ok := f.Size.group(); !ok || of != g {
				t.Errorf("%s fills a %s but is told by %s", f.Name, g.Measure(), f.Size.Words())
			}
		}
	}
}

func TestEveryPortionIsSane(t *testing.T) {
	for _, f := range All() {
		kcal := float64(f.Brings(f.Portion).Energy)
		if f.Portion < 2 || f.Portion > 370 || kcal > 650 {
			t.Errorf("%s: %v g (%s), %.0f kcal", f.Name, f.Portion, f.PortionWords, kcal)
		}
		if f.Cup != 0 && (f.Cup < 7 || f.Cup > 420) { // puffed rice to mousse
			t.Errorf("%s: a cup of %v g", f.Name, f.Cup)
		}
		for _, m := range f.measures {
			if strings.ContainsAny(m.Words, "=;:\"") || m.Words != strings.TrimSpace(m.Words) {
				t.Errorf("%s: measure %q", f.Name, m.Words)
			}
		}
	}
}

// Cooked meat, poultry and fish that fill a palm are 3 oz, to a quarter of a gram.
func TestPalmOfMeatIsThreeOunces(t *testing.T) {
	for _, f := range Table(Protein) {
		switch f.Class {
		case ClassMeat, ClassPoultry, ClassFish:
			if math.Abs(float64(f.Portion)-85) > 0.25 {
				t.Errorf("%s: %v g", f.Name, f.Portion)
			}
		}
	}
}

// The fist's bound is the middle between a fist of vegetables and two cupped
// hands of starch, as far as whole kilocalories say it.
func TestFistBoundIsTheMiddle(t *testing.T) {
	fist := float64(Mean(Basket(Vegetables, Omnivore, nil)).Energy)
	starch := 2 * float64(Mean(Basket(StarchAndFruit, Omnivore, nil)).Energy)
	if middle := (fist + starch) / 2; math.Abs(middle-mostFistEnergy) > 1 {
		t.Errorf("the middle is %.1f kcal, the bound %d", middle, mostFistEnergy)
	}
}

func TestWhatFillsWhat(t *testing.T) {
	fills := map[string]string{
		"salmon": "palm", "eggs": "palm", "lentils": "palm", "greek_yoghurt": "palm", "tempeh": "palm", "minced_beef_20_fat": "palm",
		"spinach": "fist", "butternut_squash": "fist", "kimchi": "fist",
		"peas": "cupped hand", "parsnips": "cupped hand", "naan": "cupped hand", "raisins": "cupped hand", "chestnuts": "cupped hand", "yam": "cupped hand",
		"avocado": "thumb", "green_olives": "thumb", "almonds": "thumb", "ghee": "thumb",
		"bacon": "", "salami": "", "duck_with_skin": "", "beef_tongue": "", "croissant": "", "chips": "", "cheddar": "",
		"whole_milk": "", "hummus": "", "red_wine": "", "chicken_breast_raw": "", "white_rice_dry": "", "egg_raw": "", "cassava_raw": "",
	}
	for code, want := range fills {
		f, ok := ByCode(code)
		if !ok {
			t.Errorf("no food %s", code)
			continue
		}
		got := ""
		if g, fills := f.Fills(); fills {
			got = g.Measure()
		}
		if got != want {
			t.Errorf("%s fills %q, want %q", f.Name, got, want)
		}
	}
}

func TestFillAndPortionExplainThemselves(t *testing.T) {
	for _, f := range All() {
		fill, portion := f.FillStep(), f.PortionStep()
		if fill.Formula == "" || len(fill.Inputs) == 0 || fill.Source.Text == "" || fill.Note == "" {
			t.Errorf("%s: %+v", f.Name, fill)
		}
		if portion.Formula == "" || portion.Result != float64(f.Portion) || portion.Source.Text == "" {
			t.Errorf("%s: %+v", f.Name, portion)
		}
		if g, fills := f.Fills(); fills != strings.HasPrefix(fill.Note, "Fills") || fills && !strings.Contains(fill.Note, g.Measure()) {
			t.Errorf("%s fills: %v %v, but %q", f.Name, g, fills, fill.Note)
		}
	}
	lentils, _ := ByCode("lentils")
	if step := lentils.PortionStep(); step.Formula != "0.5 × household measure 1" || step.Inputs[0].Value != 198 || step.Result != 99 {
		t.Errorf("%+v", step)
	}
	kefir, _ := ByCode("kefir")
	if step := kefir.PortionStep(); !strings.Contains(step.Formula, "01088") {
		t.Errorf("%+v", step)
	}
}

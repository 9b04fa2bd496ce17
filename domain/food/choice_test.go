package food

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/unit"
)

func TestChoiceFillsTheMeasure(t *testing.T) {
	choice := BasketChoice{{"salmon", 2}, {"lentils", 1}, {"olive_oil", 1}}
	palm := choice.Fill(Protein, Omnivore, nil)
	if !palm.Chosen || palm.FellBack || len(palm.Foods) != 2 || palm.Foods[0].Share != 2 || palm.Foods[1].Share != 1 {
		t.Fatalf("%+v", palm)
	}
	// Source: USDA SR 28, 85 g of salmon and half a cup of lentils, by shares.
	if want := (2*206*0.85 + 116*0.99) / 3; math.Abs(float64(Mean(palm.Foods).Energy)-want) > 0.01 {
		t.Errorf("%v kcal, want %v", Mean(palm.Foods).Energy, want)
	}
	if words := palm.Words(); words != "The palm is filled with the chosen foods." {
		t.Error(words)
	}
	fist := choice.Fill(Vegetables, Omnivore, nil)
	if fist.Chosen || fist.FellBack || fist.Words() != "" || len(fist.Foods) != len(Basket(Vegetables, Omnivore, nil)) {
		t.Errorf("nothing was chosen for the fist: %+v", fist)
	}
}

func TestChoiceLeavesOutWhatIsUnfit(t *testing.T) {
	choice := BasketChoice{{"salmon", 1}, {"firm_tofu", 1}, {"lentils", 1}, {"greek_yoghurt", 1}}
	f := choice.Fill(Protein, Vegan, nil)
	if !f.Chosen || len(f.Foods) != 2 || len(f.LeftOut) != 2 {
		t.Fatalf("%+v", f)
	}
	if words := f.Words(); !strings.Contains(words, "salmon is not vegan") || !strings.Contains(words, "Greek yoghurt is not vegan") {
		t.Error(words)
	}
	back := BasketChoice{{"salmon", 1}, {"cod", 1}}.Fill(Protein, Omnivore, []Allergen{FishFlesh})
	if back.Chosen || !back.FellBack || len(back.Foods) == 0 {
		t.Fatalf("%+v", back)
	}
	if words := back.Words(); !strings.Contains(words, "usual foods") || !strings.Contains(words, "salmon contains fish") {
		t.Error(words)
	}
}

func TestChoiceCheck(t *testing.T) {
	choice := BasketChoice{
		{"salmon", 1},
		{"unicorn", 1},
		{"whole_milk", 1},
		{"salmon", 1},
		{"cod", 0},
		{"haddock", -1},
		{"tilapia", 11},
		{"carp", unit.Ratio(math.NaN())},
	}
	var problems unit.Problems
	if err := choice.Check(); !errors.As(err, &problems) {
		t.Fatalf("%v", err)
	}
	want := []struct{ field, given string }{
		{"basket[1].code", "unicorn"},
		{"basket[2].code", "whole_milk"},
		{"basket[3].code", "salmon"},
		{"basket[4].share", "0"},
		{"basket[5].share", "-1"},
		{"basket[6].share", "11"},
		{"basket[7].share", "NaN"},
	}
	if len(problems) != len(want) {
		t.Fatalf("%v", problems)
	}
	for i, w := range want {
		if problems[i].Field != w.field || problems[i].Given != w.given {
			t.Errorf("%+v, want %v", problems[i], w)
		}
	}
	if err := (BasketChoice{{"salmon", 1}, {"almonds", 0.5}}).Check(); err != nil {
		t.Error(err)
	}
}

// Whatever is chosen, a measure is never empty and never holds what is avoided.
func TestChoiceIsNeverEmptyNorUnfit(t *testing.T) {
	codes := []string{"unicorn"}
	for _, f := range All() {
		codes = append(codes, f.Code)
	}
	rapid.Check(t, func(t *rapid.T) {
		var choice BasketChoice
		for range rapid.IntRange(0, 8).Draw(t, "foods") {
			choice = append(choice, ChosenFood{
				rapid.SampledFrom(codes).Draw(t, "code"), unit.Ratio(rapid.Float64Range(-1, 12).Draw(t, "share")),
			})
		}
		p := rapid.SampledFrom(Patterns()).Draw(t, "pattern")
		avoid := rapid.SliceOfNDistinct(rapid.SampledFrom(Allergens()), 0, 15, rapid.ID).Draw(t, "avoid")
		for _, g := range Groups() {
			f := choice.Fill(g, p, avoid)
			if len(f.Foods) == 0 || f.Chosen && f.FellBack {
				t.Fatalf("%+v", f)
			}
			for _, food := range f.Foods {
				if of, fills := food.Fills(); !food.Suits(p, avoid) || !fills || of != g || !(food.Share > 0) {
					t.Fatalf("%s in the %s of %s avoiding %v", food.Name, g.Measure(), p, avoid)
				}
			}
			if (f.FellBack || len(f.LeftOut) > 0) && f.Words() == "" {
				t.Fatal("nothing is said of what was left out")
			}
		}
	})
}

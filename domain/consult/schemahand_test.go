package consult

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"handbreadth/domain/food"
	"handbreadth/domain/hand"
)

func TestParseReadsTheHandAndTheMeals(t *testing.T) {
	in := parsed(t, sample(t, "hand.json"))
	of := func(code string) food.Food {
		f, known := food.ByCode(code)
		if !known {
			t.Fatalf("no food %s", code)
		}
		return f
	}
	want := in.Hand
	want.Size = hand.Size{PalmBreadth: 7.5, PalmLength: 10.16, HandLength: 17.2}
	want.Weighed = []hand.Weighing{{Kind: hand.CuppedHand, Food: of("white_rice"), Grams: 68}, {Kind: hand.Palm, Food: of("cod"), Grams: 72.5}}
	want.Basket = food.BasketChoice{{Code: "salmon", Share: 2}, {Code: "lentils", Share: 1}}
	want.Ranges = true
	want.Wishes = []hand.Wish{hand.Lock(3, hand.CuppedHand, 0), {Kind: hand.Palm, Least: 3, Most: 6}, {Kind: hand.Thumb, Most: 7, Meal: 0}}
	want.Sizes = []hand.MealSize{hand.Light, hand.Usual, hand.Large}
	if !reflect.DeepEqual(in.Hand, want) {
		t.Errorf("got  %+v\nwant %+v", in.Hand, want)
	}
	f := written(t, sample(t, "hand.json"))
	if f.Meals[2].CuppedHand != 0 || f.MeasuresPerDay.Palm < 3 || f.MeasuresPerDay.Palm > 6 || f.MeasuresPerDay.Thumb > 7 {
		t.Errorf("the wishes are not kept: %+v", f.Meals)
	}
	if got := f.HandFactors.CuppedHand; math.Abs(got-68.0/79) > 1e-4 {
		t.Errorf("a cupped hand of 68 g of rice, of 79 g by the reference: %v", got)
	}
	seen := map[Measures]bool{f.MeasuresPerDay: true}
	for _, other := range f.Alternatives {
		seen[other] = true
	}
	if len(f.Alternatives) != 3 || len(seen) != 4 {
		t.Errorf("%+v beside %+v", f.Alternatives, f.MeasuresPerDay)
	}
}

func TestFaultsOfTheHandAreNamed(t *testing.T) {
	base := sample(t, "example.json")
	for field, c := range map[string]changes{
		"hand":                    {"hand": `[]`},
		"hand.thumb":              {"hand": `{"thumb":"5 cm"}`},
		"hand.palm_breadth":       {"hand": `{"palm_breadth":8}`},
		"hand.hand_length":        {"hand": `{"palm_length":"12 cm","hand_length":"12 cm"}`},
		"hand.weighed":            {"hand": `{"weighed":[]}`},
		"hand.weighed.palm.food":  {"hand": `{"weighed":{"palm":{"grams":80}}}`},
		"hand.weighed.palm.grams": {"hand": `{"weighed":{"palm":{"food":"cod"}}}`},
		"hand.weighed.palm":       {"hand": `{"weighed":{"palm":{"food":"white_rice","grams":80}}}`},
		"hand.weighed.fist.food":  {"hand": `{"weighed":{"fist":{"food":"ambrosia","grams":80}}}`},
		"hand.basket":             {"hand": `{"basket":{}}`},
		"hand.basket[0].share":    {"hand": `{"basket":[{"code":"cod","share":11}]}`},
		"hand.basket[1].code":     {"hand": `{"basket":[{"code":"cod"},{"share":1}]}`},
		"hand.ranges":             {"hand": `{"ranges":"yes"}`},
		"meal_wishes":             {"meal_wishes": `["meal 1: palm 3","day: palm 2"]`},
		"meal_wishes[1]":          {"meal_wishes": `["meal 1: palm 3","palm 2"]`},
		"meal_sizes":              {"meal_sizes": `["light","usual"]`},
		"meal_sizes[0]":           {"meal_sizes": `["tiny","usual","usual"]`},
	} {
		if got := fields(problemsOf(t, changed(t, base, c))); got != field {
			t.Errorf("%v: problems of %q, want %s", c, got, field)
		}
	}
	far := problemsOf(t, changed(t, base, changes{"meal_wishes": `["meal 4: palm 1"]`}))
	if fields(far) != "meal_wishes" || !strings.Contains(far[0].Accepted, "1 to 3") {
		t.Errorf("%v", far)
	}
}

// The README's wishes are read.
func TestReadmeWishes(t *testing.T) {
	row := ""
	for _, line := range strings.Split(readmeText(t), "\n") {
		if strings.HasPrefix(line, "| `meal_wishes`") {
			row = line
		}
	}
	read := 0
	for _, text := range codes(row)[1:] {
		if _, err := hand.ParseWish("meal_wishes", text); err != nil {
			t.Errorf("%q: %v", text, err)
		}
		read++
	}
	if read < 4 {
		t.Errorf("%d wishes are told", read)
	}
}

package hand

import (
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/food"
	"handbreadth/domain/unit"
)

func TestWishesAreReadAsTheyAreWritten(t *testing.T) {
	for text, want := range map[string][]Wish{
		"":    nil,
		" ; ": nil,
		"meal 1: cupped hand 0; day: palm 2 to 3":     {{1, CuppedHand, 0, 0}, {0, Palm, 2, 3}},
		"Meal 12:  Cupped  Hands 1.5":                 {{12, CuppedHand, 1.5, 1.5}},
		"day: thumbs at most 4\nday: fist at least ½": {{0, Thumb, 0, 4}, {0, Fist, 0.5, MostMeasures}},
		"meal 2: palms 1½ to 2,0":                     {{2, Palm, 1.5, 2}},
	} {
		got, err := ParseWishes("meal_wishes", text)
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
}

func TestWishesThatCannotBeReadAreNamed(t *testing.T) {
	for _, text := range []string{
		"palm 2", "meal: palm 2", "meal 0: palm 2", "meal 1: handful 2", "meal 1: palm", "meal 1: palm two", "meal 1: palm 2.3",
		"meal 1: palm 3 to 2", "day: palm 49", "day: palm at most", "day: palm at least 1 to 2", "meal 1: palm -1", "meal 123: palm 1",
		"day: palm 1 to", "day: palm ½½", "day: palm 1; meal 1: palm 1e3", "meal 1 palm 2", "day: palm2",
	} {
		wishes, err := ParseWishes("meal_wishes", text)
		p, ok := err.(unit.Problem)
		if !ok || wishes != nil || p.Field != "meal_wishes" || p.Given == "" || p.Accepted == "" {
			t.Errorf("%q: %v, %v", text, wishes, err)
		}
	}
}

func TestWishesComeBackFromTheirText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wishes := make([]Wish, rapid.IntRange(1, 6).Draw(t, "wishes"))
		for i := range wishes {
			least := rapid.IntRange(0, halvesOf(MostMeasures)).Draw(t, "least")
			wishes[i] = Wish{
				rapid.IntRange(0, 6).Draw(t, "meal"), rapid.SampledFrom(Kinds()).Draw(t, "kind"),
				whole(least), whole(rapid.IntRange(least, halvesOf(MostMeasures)).Draw(t, "most")),
			}
		}
		got, err := ParseWishes("meal_wishes", WishesText(wishes))
		if err != nil || !reflect.DeepEqual(got, wishes) {
			t.Fatalf("%q: %v, %v", WishesText(wishes), got, err)
		}
	})
}

// Whatever the text: wishes that stand their own check and come back from their
// text, or a problem that names the field.
func FuzzWishes(f *testing.F) {
	for _, text := range []string{
		"meal 1: cupped hand 0; day: palm 2 to 3", "day: thumb at most 4", "day: fist at least 5½", "meal 2: palm 1,5", ":", "meal 1:", "day: palm 1 to 2 to 3",
		"meal 1: palm ½½", "MEAL 6: THUMBS 48", "day: cupped hand at least at most 1", "\x00;\n;;", "meal 99: fist 0 to 0",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		wishes, err := ParseWishes("meal_wishes", text)
		if err != nil {
			if p, ok := err.(unit.Problem); !ok || p.Field != "meal_wishes" || p.Accepted == "" {
				t.Fatalf("%T %v", err, err)
			}
			return
		}
		for _, w := range wishes {
			if err := w.Check("meal_wishes", 99); err != nil {
				t.Fatal(err)
			}
		}
		again, err := ParseWishes("meal_wishes", WishesText(wishes))
		if err != nil || !reflect.DeepEqual(again, wishes) {
			t.Fatalf("%v became %v: %v", wishes, again, err)
		}
	})
}

func TestMealSizesHaveNames(t *testing.T) {
	for _, size := range MealSizes() {
		if got, ok := ParseMealSize(" " + strings.ToUpper(size.String())); !ok || got != size {
			t.Errorf("%v: %v %v", size, got, ok)
		}
	}
	if _, ok := ParseMealSize("huge"); ok {
		t.Error("huge is read as a size")
	}
	if MealSize(1.25).String() != "1.25" {
		t.Error("a size without a name does not tell its share")
	}
}

func TestBasketsComeBackFromTheirText(t *testing.T) {
	codes := make([]string, 0, 700)
	for _, g := range food.Groups() {
		for _, f := range food.Table(g) {
			codes = append(codes, f.Code)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		var choice food.BasketChoice
		for _, code := range rapid.SliceOfNDistinct(rapid.SampledFrom(codes), 1, 5, rapid.ID[string]).Draw(t, "codes") {
			share := rapid.IntRange(1, 40).Draw(t, "quarters")
			choice = append(choice, food.ChosenFood{Code: code, Share: unit.Ratio(share) / 4})
		}
		got, err := ParseBasket("hand.basket", BasketText(choice))
		if err != nil || !reflect.DeepEqual(got, choice) {
			t.Fatalf("%q: %v, %v", BasketText(choice), got, err)
		}
	})
	for _, text := range []string{"chicken breast", "lentils -1", "lentils 0.5 1", "Lentils", "lentils 1e2"} {
		_, err := ParseBasket("hand.basket", text)
		if p, ok := err.(unit.Problem); !ok || p.Field != "hand.basket" || p.Given != text {
			t.Errorf("%q: %v", text, err)
		}
	}
	if got, err := ParseBasket("hand.basket", " lentils ;\n, almonds 2"); err != nil || len(got) != 2 || got[0].Share != 1 || got[1].Share != 2 {
		t.Errorf("%v, %v", got, err)
	}
}

// The reference of a weighing follows the food's cup: 158 g of cooked white rice
// (USDA SR28, NDB 20045, seen) is a fist, and half of it a cupped hand. A slice
// of bread and a palm of rice say nothing of a hand.
func TestWeighingReference(t *testing.T) {
	of := func(code string) food.Food {
		f, known := food.ByCode(code)
		if !known {
			t.Fatalf("no food %s", code)
		}
		return f
	}
	for _, c := range []struct {
		kind Kind
		code string
		want unit.Gram
	}{
		{Fist, "white_rice", 158},
		{CuppedHand, "white_rice", 79},
		{Palm, "white_rice", 0},
		{Palm, "chicken_breast", 85},
		{CuppedHand, "wholemeal_bread", 0},
		{Thumb, "olive_oil", 13.5},
	} {
		w := Weighing{c.kind, of(c.code), c.want}
		if got := w.Reference(); got != c.want {
			t.Errorf("%s of %s: %v g, want %v", c.kind.Name(), c.code, got, c.want)
		}
		if err := w.Check("hand.weighed"); (err == nil) != (c.want > 0) {
			t.Errorf("%s of %s: %v", c.kind.Name(), c.code, err)
		}
	}
}

package food

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func names(foods []Food) []string {
	out := make([]string, len(foods))
	for i, f := range foods {
		out[i] = f.Name
	}
	return out
}

func TestSearchFinds(t *testing.T) {
	cases := []struct {
		text, name string
	}{
		{"lentil", "lentils"},
		{"LENTIL", "lentils"},
		{"chick br", "chicken breast"},
		{"breast chicken", "chicken breast"},
		{"eggplant", "aubergine"},
		{"zucch", "courgette"},
		{"garbanzo", "chickpeas"},
		{"shrimp", "prawns"},
		{"cilantro", "coriander leaves"},
		{"gruyere", "Gruyère"},
		{"GRUYÈRE", "Gruyère"},
		{"queso anejo", "queso añejo"},
		{"pina colada", "piña colada"},
		{"Éclair", "éclair"},
		{"phở", "rice noodles"},
		{"pho\u031b\u0309", "rice noodles"},
		{"goats milk", "goat's milk"},
		{"goat’s", "goat's milk"},
		{"starchy", "peas"},
		{"  rice,   brown ", "brown rice"},
		{"5 %", "minced beef, 5 % fat"},
	}
	for _, c := range cases {
		if found := names(Search(c.text)); !slices.Contains(found, c.name) {
			t.Errorf("%q finds %d foods without %s: %v", c.text, len(found), c.name, found[:min(5, len(found))])
		}
	}
	for _, text := range []string{"", "  ", ",.", "%"} {
		if found := Search(text); len(found) != 0 {
			t.Errorf("%q finds %d foods", text, len(found))
		}
	}
	if found := Search("zzz"); len(found) != 0 {
		t.Errorf("zzz finds %v", names(found))
	}
}

// A word is found by its beginning, not by its middle.
func TestSearchBeginsWords(t *testing.T) {
	for _, name := range names(Search("nut")) {
		f, _ := ByName(name)
		if !slices.ContainsFunc(wordsOf(f), func(w string) bool { return strings.HasPrefix(w, "nut") }) {
			t.Errorf("nut finds %s", name)
		}
	}
	if slices.Contains(names(Search("nut")), "butternut squash") {
		t.Error("nut finds butternut squash")
	}
}

// ByName finds a food by its whole name.
func ByName(name string) (Food, bool) {
	for _, f := range All() {
		if f.Name == name {
			return f, true
		}
	}
	return Food{}, false
}

func TestSearchPutsNamesFirst(t *testing.T) {
	found := names(Search("egg"))
	if len(found) == 0 || !strings.HasPrefix(found[0], "egg") {
		t.Fatalf("egg finds %v", found)
	}
	last := 0
	for i, name := range found {
		if strings.HasPrefix(name, "egg") {
			if i > last+1 {
				t.Errorf("%s is number %d", name, i)
			}
			last = i
		}
	}
}

func TestEveryFoodIsFoundByItsName(t *testing.T) {
	for _, f := range All() {
		if found := names(Search(f.Name)); !slices.Contains(found, f.Name) {
			t.Errorf("%s is not found by its name", f.Name)
		}
		if found := names(Search(strings.ToUpper(f.Name))); len(found) == 0 || !slices.Contains(found, f.Name) {
			t.Errorf("%s is not found in capitals", f.Name)
		}
	}
}

func TestListsHoldOnlyWhatFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.SampledFrom(Patterns()).Draw(t, "pattern")
		avoid := rapid.SliceOfNDistinct(rapid.SampledFrom(Allergens()), 0, 15, rapid.ID).Draw(t, "avoid")
		all := ListCounted(p, avoid, nil)
		for _, g := range Groups() {
			list := ListFor(g, p, avoid, nil)
			for _, f := range list {
				if of, fills := f.Fills(); !fills || of != g {
					t.Fatalf("%s in the list of the %s", f.Name, g.Measure())
				}
			}
			for _, f := range Basket(g, p, avoid) {
				if !slices.ContainsFunc(list, func(o Food) bool { return o.Code == f.Code }) {
					t.Fatalf("%s is in the basket but not in the list", f.Name)
				}
			}
			all = append(all, list...)
		}
		for _, f := range all {
			if !f.Suits(p, avoid) || !f.eaten() {
				t.Fatalf("%s for %s avoiding %v", f.Name, p, avoid)
			}
		}
	})
	all := 0
	for _, g := range Groups() {
		all += len(ListFor(g, Omnivore, nil, nil))
	}
	if counted := len(ListCounted(Omnivore, nil, nil)); all < 400 || counted < 200 || all+counted > len(All()) {
		t.Errorf("%d foods fill a measure, %d are counted, %d in all", all, counted, len(All()))
	}
}

func TestListsLeaveOutDislikes(t *testing.T) {
	dislikes := []string{"liver", "fish", "Brussels sprouts", "tempeh", "berries", "MUSHROOM"}
	full, left := 0, 0
	for _, g := range Groups() {
		full += len(ListFor(g, Omnivore, nil, nil))
		for _, f := range ListFor(g, Omnivore, nil, dislikes) {
			left++
			if f.Class == ClassFish || strings.Contains(f.Name, "liver") || strings.Contains(f.Name, "mushroom") ||
				f.Code == "tempeh" || f.Code == "brussels_sprouts" {
				t.Errorf("%s is disliked", f.Name)
			}
		}
	}
	if gone := full - left; gone < 50 || gone > 80 { // fish and seafood are about fifty of them
		t.Errorf("%d of %d foods are left out", gone, full)
	}
}

func TestDislikesAreWholeWords(t *testing.T) {
	for _, c := range []struct {
		dislike string
		code    string
		gone    bool
	}{
		{"nut", "butternut_squash", false},
		{"pea", "peanuts", false},
		{"pea", "peas", true},
		{"peas", "peas", true},
		{"tomatoes", "sun_dried_tomatoes", true},
		{"tomato", "tomatoes", true},
		{"cherry", "cherries", true},
		{"radish", "radishes", true},
		{"pork", "bacon", true},
		{"pork", "ham_lean", true},
		{"pork", "lean_beef", false},
		{"red pepper", "green_pepper", false},
		{"red_pepper", "red_pepper", true},
		{"", "peas", false},
		{"aubergine", "aubergine", true},
		{"swiss", "swiss_chard", true},
	} {
		f, ok := ByCode(c.code)
		if !ok {
			t.Fatalf("no food %s", c.code)
		}
		left := listed([]Food{f}, Omnivore, nil, []string{c.dislike})
		if gone := len(left) == 0; gone != c.gone {
			t.Errorf("dislike %q, %s: gone %v", c.dislike, f.Name, gone)
		}
	}
}

func BenchmarkSearch(b *testing.B) {
	Search("warm")
	for b.Loop() {
		Search("chick br")
	}
}

func BenchmarkListFor(b *testing.B) {
	for b.Loop() {
		ListFor(Protein, Pescatarian, []Allergen{Milk}, []string{"liver", "anchovies"})
	}
}

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		if _, err := parse(foodsCSV); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCountsAs(b *testing.B) {
	f, _ := ByCode("cheese_pizza")
	per := UsualPerMeasure(Omnivore, nil)
	for b.Loop() {
		f.CountsAs(f.Portion, per)
	}
}

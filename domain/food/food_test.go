package food

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

var groups = []Group{Protein, Vegetables, StarchAndFruit, OilsAndNuts}

// combinations calls f with every set of avoided allergens.
func combinations(f func(avoid []Allergen)) {
	all := Allergens()
	for bits := 0; bits < 1<<len(all); bits += 7 { // every set is too many; a prime step meets each allergen in both states
		var avoid []Allergen
		for i, a := range all {
			if bits&(1<<i) != 0 {
				avoid = append(avoid, a)
			}
		}
		f(avoid)
	}
	f(all)
}

func TestBasketsAreNeverEmptyAndNeverHoldWhatIsAvoided(t *testing.T) {
	combinations(func(avoid []Allergen) {
		for _, p := range Patterns() {
			for _, g := range groups {
				basket := Basket(g, p, avoid)
				if len(basket) == 0 {
					t.Fatalf("group %v is empty for %s avoiding %v", g, p, avoid)
				}
				for _, f := range basket {
					for _, a := range avoid {
						if f.Contains(a) {
							t.Fatalf("%s contains %s", f.Name, a)
						}
					}
				}
			}
		}
	})
}

func TestPatternsNest(t *testing.T) {
	patterns := Patterns()
	for i := 1; i < len(patterns); i++ {
		for _, g := range groups {
			wider := map[string]bool{}
			for _, f := range Basket(g, patterns[i-1], nil) {
				wider[f.Name] = true
			}
			for _, f := range Basket(g, patterns[i], nil) {
				if !wider[f.Name] {
					t.Errorf("%s is in %s but not in %s", f.Name, patterns[i], patterns[i-1])
				}
			}
		}
	}
}

func TestUnknownAllergensCountAsContained(t *testing.T) {
	f := Food{Name: "unlabelled"}
	for _, a := range Allergens() {
		if !f.Contains(a) {
			t.Errorf("%s is taken as free of %s", f.Name, a)
		}
	}
}

func TestEveryFoodHasItsAllergensStated(t *testing.T) {
	for _, g := range groups {
		for _, f := range Table(g) {
			if !f.known {
				t.Errorf("%s: allergens not stated", f.Name)
			}
			if f.Share <= 0 || f.Portion <= 0 || f.PortionWords == "" {
				t.Errorf("%s: share %v, portion %v %q", f.Name, f.Share, f.Portion, f.PortionWords)
			}
		}
	}
}

func TestParseAllergenWords(t *testing.T) {
	for _, word := range AllergenWords() {
		for _, spelt := range []string{word, word + "s"} {
			if _, ok := ParseAllergen(spelt); !ok {
				t.Errorf("%q is not understood", spelt)
			}
		}
	}
	for _, a := range Allergens() {
		found, ok := ParseAllergen(string(a))
		if !ok || found[0] != a {
			t.Errorf("%s reads as %v", a, found)
		}
	}
	if found, ok := ParseAllergen("chocolate"); ok {
		t.Errorf("chocolate reads as %v", found)
	}
	if found, _ := ParseAllergen("Tree Nuts"); len(found) != 1 || found[0] != TreeNuts {
		t.Errorf("Tree Nuts reads as %v", found)
	}
}

func readTable(t *testing.T, path string) []map[string]string {
	t.Helper()
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, name := range lines[0] {
			row[name] = line[i]
		}
		out = append(out, row)
	}
	return out
}

func close2(t *testing.T, what string, got float64, text string) {
	t.Helper()
	want, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return // the table leaves the cell empty
	}
	// The reference rows round to three decimals at portions of up to 180 g.
	if math.Abs(got-want) > 0.02+0.002*math.Abs(want) {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

// Source: USDA SR 28 (2016) through rows computed apart from this program.
func TestPortionsAgainstPublishedRows(t *testing.T) {
	byNumber := map[string]map[string]string{}
	for _, row := range readTable(t, "../../testdata/reference/hand-portion-foods.csv") {
		byNumber[row["ndb_no"]+"@"+row["grams"]] = row
	}
	checked := 0
	for _, g := range groups {
		for _, f := range Table(g) {
			row, ok := byNumber[f.NDB+"@"+strconv.FormatFloat(float64(f.Portion), 'f', -1, 64)]
			if !ok {
				continue
			}
			got := f.Brings(f.Portion)
			close2(t, f.Name+" energy", float64(got.Energy), row["kcal"])
			close2(t, f.Name+" protein", float64(got.Protein), row["protein_g"])
			close2(t, f.Name+" fat", float64(got.Fat), row["fat_g"])
			close2(t, f.Name+" carbohydrate", float64(got.Carbohydrate), row["carb_g"])
			checked++
		}
	}
	if checked < 4 {
		t.Errorf("only %d foods were checked", checked)
	}
}

// Source: USDA SR 28, the whole table where it is at hand.
func TestTableAgainstReferenceFolder(t *testing.T) {
	folder := os.Getenv("HANDBREADTH_REFERENCE")
	if folder == "" {
		t.Log("HANDBREADTH_REFERENCE is not set: the food table was not checked row by row")
		return
	}
	usda := map[string]map[string]string{}
	for _, row := range readTable(t, filepath.Join(folder, "foods", "usda-sr28.csv")) {
		usda[row["ndb_no"]] = row
	}
	for _, g := range groups {
		for _, f := range Table(g) {
			row, ok := usda[f.NDB]
			if !ok {
				t.Errorf("%s: no row %s", f.Name, f.NDB)
				continue
			}
			got := f.Brings(100)
			close2(t, f.Name+" energy", float64(got.Energy), row["energy_kcal"])
			close2(t, f.Name+" protein", float64(got.Protein), row["protein_g"])
			close2(t, f.Name+" fat", float64(got.Fat), row["fat_g"])
			close2(t, f.Name+" carbohydrate", float64(got.Carbohydrate), row["carb_g"])
			close2(t, f.Name+" fibre", float64(got.Fibre), row["fibre_g"])
		}
	}
}

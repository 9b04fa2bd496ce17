package food

import (
	"encoding/csv"
	"errors"
	"strconv"
	"strings"
	"testing"

	"handbreadth/domain/unit"
)

// lines returns the embedded table's header and the lines of some foods, cell by
// cell, to spoil.
func lines(t *testing.T, codes ...string) [][]string {
	t.Helper()
	all, err := csv.NewReader(strings.NewReader(foodsCSV)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	kept := all[:1]
	for _, code := range codes {
		for _, line := range all {
			if line[0] == code {
				kept = append(kept, line)
			}
		}
	}
	if len(kept) != len(codes)+1 {
		t.Fatalf("not all of %v are in the table", codes)
	}
	return kept
}

func written(t *testing.T, lines [][]string) string {
	t.Helper()
	var out strings.Builder
	if err := csv.NewWriter(&out).WriteAll(lines); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestParseNamesLineAndColumn(t *testing.T) {
	cases := []struct{ column, cell, accepts string }{
		{"code", "Rye Bread", "lower case"},
		{"code", "lentils", "line 2 has it"},
		{"name", "", "a name"},
		{"name", " rye bread", "a name"},
		{"name", "Lentils", "line 2 has it"},
		{"class", "bred", "meat, poultry"},
		{"state", "boiled", "raw, cooked"},
		{"origin", "animal", "plant, dairy_or_egg"},
		{"ndb", "1806", "five digits"},
		{"ndb", "18O60", "five digits"},
		{"ndb", "16070", "line 2 has it"},
		{"energy_kcal", "", "0 to 930"},
		{"energy_kcal", "931", "0 to 930"},
		{"energy_kcal", "-1", "0 to 930"},
		{"energy_kcal", "1e2", "0 to 930"},
		{"energy_kcal", "NaN", "0 to 930"},
		{"energy_kcal", "0x10", "0 to 930"},
		{"protein_g", "8,5", "0 to 100"},
		{"protein_g", "8.", "0 to 100"},
		{"protein_g", ".8", "0 to 100"},
		{"protein_g", "1.2.3", "0 to 100"},
		{"protein_g", "1234567890123", "0 to 100"},
		{"carbohydrate_g", "99", "beside protein, fat and alcohol"},
		{"saturated_g", "9", "at most the fat"},
		{"fibre_g", "60", "at most the carbohydrate"},
		{"sugars_g", "60", "at most the carbohydrate"},
		{"iron_mg", "x", "or nothing"},
		{"measures", "1 slice = 32", "measures such as"},
		{"measures", "1: 1 slice = 0", "measures such as"},
		{"measures", "0: 1 slice = 32", "measures such as"},
		{"cup_g", "heavy", "grams of 240 ml"},
		{"cup_from", "1 x 2", "where cup_g is given"},
		{"size", "hand", "palm, fist"},
		{"portion_g", "0", "above 0"},
		{"portion_g", "33", "make portion_g"},
		{"portion_from", "9 x 1", "make portion_g"},
		{"portion_from", "2 × 1", "2 x 0.5"},
		{"portion_from", "weight", "make portion_g"},
		{"portion_words", "", "words"},
		{"allergens", "", "unknown, none"},
		{"allergens", "gluten oats", "unknown, none"},
		{"cuisines", "martian", "african"},
		{"share", "11", "0 to 10"},
		{"share", "-1", "0 to 10"},
	}
	for _, c := range cases {
		table := lines(t, "lentils", "rye_bread")
		table[2][columnAt(c.column)] = c.cell
		foods, err := parse(written(t, table))
		var problems unit.Problems
		if !errors.As(err, &problems) || len(problems) != 1 {
			t.Errorf("%s %q: %d foods, %v", c.column, c.cell, len(foods), err)
			continue
		}
		want := columnAt(c.column)
		if c.column == "portion_g" && c.cell == "33" {
			want = columnAt("portion_from") // that is where the two do not agree
		}
		p := problems[0]
		if p.Field != "line 3, column "+columns[want].name || !strings.Contains(p.Accepted, c.accepts) {
			t.Errorf("%s %q: %v, want it to say %q", c.column, c.cell, p, c.accepts)
		}
		if want == columnAt(c.column) && p.Given != c.cell {
			t.Errorf("%s %q: given is told as %q", c.column, c.cell, p.Given)
		}
	}
}

// A food of the usual basket must fill its measure; a sausage does not.
func TestParseKeepsTheUsualBasketToWhatFills(t *testing.T) {
	table := lines(t, "pork_sausages")
	table[1][columnAt("share")] = "1"
	if _, err := parse(written(t, table)); err == nil || !strings.Contains(err.Error(), "line 2, column share") {
		t.Errorf("a sausage in the usual basket: %v", err)
	}
}

func TestParseRefusesWhatIsNoTable(t *testing.T) {
	good := written(t, lines(t, "lentils"))
	swapped := lines(t, "lentils")
	swapped[0][1], swapped[0][2] = swapped[0][2], swapped[0][1]
	for _, c := range []struct{ what, text, says string }{
		{"nothing", "", "line 1"},
		{"two columns exchanged", written(t, swapped), "line 1, column 2"},
		{"a column too few", "code,name\n", "line 1, character"},
		{"a cell too many", strings.TrimRight(good, "\n") + ",x\n", "line 2, character"},
		{"a quote in the middle", strings.Replace(good, "lentils,", "len\"tils,", 1), "line 2, character"},
		{"a quote that never ends", good + `"`, "line 3, character"},
	} {
		if _, err := parse(c.text); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want it to say %q", c.what, err, c.says)
		}
	}
}

func TestParseTellsEveryLineThatIsWrong(t *testing.T) {
	table := lines(t, "lentils", "rye_bread", "cod")
	table[1][columnAt("share")], table[3][columnAt("size")] = "many", "fin"
	_, err := parse(written(t, table))
	var problems unit.Problems
	if !errors.As(err, &problems) || len(problems) != 2 || problems[0].Field != "line 2, column share" || problems[1].Field != "line 4, column size" {
		t.Errorf("%v", err)
	}
}

// What parses agrees with itself, whatever the text; what does not says where.
func FuzzParse(f *testing.F) {
	head, rest, _ := strings.Cut(foodsCSV, "\n")
	some := strings.SplitN(rest, "\n", 40)
	f.Add(head + "\n" + some[0] + "\n" + some[20] + "\n")
	f.Add(head + "\n" + some[5] + "\n" + some[5] + "\n")
	f.Add(head + "\n" + strings.Replace(some[7], "1 x 1", "3 x 0.25", 1))
	f.Add(head + "\n" + strings.ReplaceAll(some[9], "0", "9999999"))
	f.Add("code,name\n\"")
	f.Fuzz(func(t *testing.T, text string) {
		foods, err := parse(text)
		if err != nil {
			var problems unit.Problems
			if !errors.As(err, &problems) || len(problems) == 0 {
				t.Fatalf("%T %v", err, err)
			}
			for _, p := range problems {
				if !strings.HasPrefix(p.Field, "line ") || p.Accepted == "" {
					t.Fatalf("%+v", p)
				}
			}
			return
		}
		numbers := map[string]bool{}
		for _, food := range foods {
			if numbers[food.NDB] {
				t.Fatalf("number %s twice", food.NDB)
			}
			numbers[food.NDB] = true
			checkWhole(t, food)
		}
	})
}

// checkWhole checks what must hold for any food that parsed.
func checkWhole(t *testing.T, f Food) {
	t.Helper()
	n := f.per100
	for _, v := range []float64{n.energy, n.protein, n.fat, n.carbohydrate, n.fibre.value, n.sugars.value, n.vitaminD.value} {
		if !(v >= 0 && v <= 1e6) {
			t.Fatalf("%s: figure %v", f.Code, v)
		}
	}
	if !(f.Portion > 0) || f.Name == "" || f.Code == "" || len(f.NDB) != 5 {
		t.Fatalf("%+v", f)
	}
	if f.Share > 0 {
		if _, fills := f.Fills(); !fills {
			t.Fatalf("%s has a share but fills nothing", f.Code)
		}
	}
}

// The reader of numbers against the standard library's.
func TestDecimalReadsAsTheLibraryDoes(t *testing.T) {
	for _, text := range []string{"0", "7", "31.02", "0.35", "100", "884", "902", "82.475", "0.001", "123456789012", "0.1", "4.35"} {
		want, err := strconv.ParseFloat(text, 64)
		if got, ok := decimal(text); err != nil || !ok || got != want {
			t.Errorf("%s: %v, %v, want %v", text, got, ok, want)
		}
	}
}

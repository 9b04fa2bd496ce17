package food

import (
	"crypto/sha256"
	"encoding/csv"
	"encoding/hex"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"handbreadth/domain/unit"
)

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

// referenceFolder returns the folder of the whole reference, or skips.
func referenceFolder(t *testing.T) string {
	t.Helper()
	folder := os.Getenv("HANDBREADTH_REFERENCE")
	if folder == "" {
		t.Skip("HANDBREADTH_REFERENCE names no folder: only the rows beside this test were checked, not every food")
	}
	return filepath.Join(folder, "foods")
}

// checkFigures compares each food whose row is there with it, figure by figure,
// and returns how many were. Figures are carried over, so they must be equal;
// what the source leaves empty must be unknown.
func checkFigures(t *testing.T, rows []map[string]string) (checked int) {
	t.Helper()
	byNumber := map[string]map[string]string{}
	for _, row := range rows {
		byNumber[row["ndb_no"]] = row
	}
	for _, f := range All() {
		row, ok := byNumber[f.NDB]
		if !ok {
			continue
		}
		checked++
		n := f.per100
		for column, got := range map[string]figure{
			"energy_kcal": {n.energy, true}, "protein_g": {n.protein, true}, "fat_g": {n.fat, true},
			"carb_g": {n.carbohydrate, true}, "fibre_g": n.fibre, "sugars_g": n.sugars, "alcohol_g": n.alcohol,
			"sat_fat_g": n.saturated, "sodium_mg": n.sodium, "potassium_mg": n.potassium, "calcium_mg": n.calcium,
			"iron_mg": n.iron, "vit_c_mg": n.vitaminC, "vit_d_ug": n.vitaminD,
		} {
			want, err := strconv.ParseFloat(row[column], 64)
			if got.known != (err == nil) || got.value != want {
				t.Errorf("%s, %s of number %s: %+v, the source has %q", f.Name, column, f.NDB, got, row[column])
			}
		}
	}
	return checked
}

// Source: rows of USDA SR 28 (2016, public domain), copied beside this test.
func TestFiguresAgainstRowsOfTheSource(t *testing.T) {
	if checked := checkFigures(t, readTable(t, "testdata/usda-sr28-part.csv")); checked < 100 {
		t.Errorf("only %d foods were checked", checked)
	}
}

// Source: USDA SR 28, the whole table where it is at hand.
func TestFiguresAgainstTheWholeSource(t *testing.T) {
	rows := readTable(t, filepath.Join(referenceFolder(t), "usda-sr28.csv"))
	if checked := checkFigures(t, rows); checked != len(All()) {
		t.Errorf("%d of %d foods were found in the source", checked, len(All()))
	}
}

// checkedFigures is the sum of what the whole source was last compared with: code,
// number, figures, measures and how portions were made. Whoever changes one of
// these runs the tests with HANDBREADTH_REFERENCE set, which compares them all,
// and puts the new sum here.
const checkedFigures = "3f119ffde3f5297f135a62d3903b53f784efa0165b8c6e5f900076080f1f9738"

func TestNothingChangedSinceTheSourceWasCompared(t *testing.T) {
	var cells strings.Builder
	for _, row := range readTable(t, "foods.csv") {
		for _, c := range columns {
			switch {
			case strings.HasSuffix(c.name, "_g"), strings.HasSuffix(c.name, "_mg"), strings.HasSuffix(c.name, "_ug"),
				strings.HasSuffix(c.name, "_kcal"), strings.HasSuffix(c.name, "_from"), c.name == "ndb", c.name == "code", c.name == "measures":
				cells.WriteString(row[c.name] + "\n")
			}
		}
	}
	sum := sha256.Sum256([]byte(cells.String()))
	if got := hex.EncodeToString(sum[:]); got != checkedFigures {
		t.Errorf("figures, measures or portions changed: compare them with the source, then note the sum %s", got)
	}
}

// volumeOf returns the millilitres that a household measure of the source is,
// and 0 where it is none. A cup of 240 ml and a tablespoon of 15 ml are those of
// US food labels, 21 CFR 101.9(b)(5) (from memory).
func volumeOf(row map[string]string) float64 {
	words := strings.ToLower(row["measure"])
	amount, _ := strconv.ParseFloat(row["amount"], 64)
	for _, v := range []struct {
		begins string
		each   float64
	}{
		{"serving 1/2 cup", 120},
		{"serving 1/4 cup", 60},
		{"serving 2 tbsp", 30},
		{"serving 1 tbsp", 15},
		{"serving 1 cup", 240},
		{"serving 8 fl oz", 240},
		{"cup", 240},
		{"tbsp", 15},
		{"tablespoon", 15},
		{"tsp", 5},
		{"teaspoon", 5},
		{"fl oz", 30},
	} {
		if strings.HasPrefix(words, v.begins) {
			return amount * v.each
		}
	}
	return 0
}

// checkMeasures compares household measures, cup weights and portions with the
// source's measures, and returns how many measures were.
func checkMeasures(t *testing.T, rows []map[string]string) (checked int) {
	t.Helper()
	byMeasure, has := map[string]map[string]string{}, map[string]bool{}
	for _, row := range rows {
		byMeasure[row["ndb_no"]+"/"+row["seq"]] = row
		has[row["ndb_no"]] = true
	}
	for _, f := range All() {
		if !has[f.NDB] && (f.from.ndb == "" || !has[f.from.ndb]) {
			continue
		}
		for _, m := range f.measures {
			row := byMeasure[f.NDB+"/"+strconv.Itoa(m.Seq)]
			if grams, err := strconv.ParseFloat(row["gram_weight"], 64); err != nil || grams != float64(m.Grams) {
				t.Errorf("%s, measure %d: %v g, the source has %q", f.Name, m.Seq, m.Grams, row["gram_weight"])
			}
			checked++
		}
		if f.Cup > 0 {
			if ml, _ := f.made(t, f.cup, f.Cup, byMeasure); math.Abs(ml-240) > 0.2 {
				t.Errorf("%s: cup_from is %v ml", f.Name, ml)
			}
		}
		f.checkPortion(t, byMeasure)
	}
	return checked
}

// made returns the volume of a measure times its factor, 0 where it is no
// volume, after checking that the weight is that of the measure.
func (f Food) made(t *testing.T, from derivedFrom, weight unit.Gram, rows map[string]map[string]string) (ml float64, row map[string]string) {
	t.Helper()
	number := f.NDB
	if from.ndb != "" {
		number = from.ndb
	}
	row = rows[number+"/"+strconv.Itoa(from.seq)]
	grams, err := strconv.ParseFloat(row["gram_weight"], 64)
	if err != nil || math.Abs(grams*from.factor-float64(weight)) > 0.06 { // to a tenth of a gram
		t.Errorf("%s: %v g from %+v, the source has %q", f.Name, weight, from, row["gram_weight"])
	}
	return volumeOf(row) * from.factor, row
}

func (f Food) checkPortion(t *testing.T, rows map[string]map[string]string) {
	t.Helper()
	if f.from.seq == 0 {
		return
	}
	ml, row := f.made(t, f.from, f.Portion, rows)
	if ml == 0 {
		return
	}
	want := map[Size][]float64{
		SizeFist: {240}, SizeCuppedHand: {120, 60, 30}, SizeThumb: {15}, SizePalm: {120},
	}[f.Size]
	for _, w := range want {
		if math.Abs(ml-w) < 0.2 {
			return
		}
	}
	if want != nil {
		t.Errorf("%s: a %s of %v ml from %q", f.Name, f.Size, ml, row["measure"])
	}
}

// Source: household measures of USDA SR 28, rows copied beside this test.
func TestMeasuresAgainstRowsOfTheSource(t *testing.T) {
	if checked := checkMeasures(t, readTable(t, "testdata/usda-sr28-measures-part.csv")); checked < 200 {
		t.Errorf("only %d measures were checked", checked)
	}
}

// Source: household measures of USDA SR 28, the whole table where it is at hand.
func TestMeasuresAgainstTheWholeSource(t *testing.T) {
	rows := readTable(t, filepath.Join(referenceFolder(t), "usda-sr28-measures.csv"))
	if checked := checkMeasures(t, rows); checked < 1500 {
		t.Errorf("only %d measures were checked", checked)
	}
}

func almost(t *testing.T, what string, got float64, text string) {
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

// Source: USDA SR 28 (2016) through rows computed apart from this program, in
// the measures of the leaflets.
func TestPortionsAgainstPublishedRows(t *testing.T) {
	checked := 0
	for _, row := range readTable(t, "../../testdata/reference/hand-portion-foods.csv") {
		f, ok := ByNDB(row["ndb_no"])
		grams, err := strconv.ParseFloat(row["grams"], 64)
		if err != nil {
			t.Fatal(err)
		}
		if !ok {
			continue
		}
		got := f.Brings(unit.Gram(grams))
		almost(t, f.Name+" energy", float64(got.Energy), row["kcal"])
		almost(t, f.Name+" protein", float64(got.Protein), row["protein_g"])
		almost(t, f.Name+" fat", float64(got.Fat), row["fat_g"])
		almost(t, f.Name+" carbohydrate", float64(got.Carbohydrate), row["carb_g"])
		almost(t, f.Name+" fibre", float64(got.Fibre), row["fibre_g"])
		checked++
	}
	if checked < 15 {
		t.Errorf("only %d rows were checked", checked)
	}
}

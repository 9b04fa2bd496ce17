package energy

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// rows reads a table of published values as maps from column to text.
func rows(t *testing.T, path string) []map[string]string {
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
	if len(out) == 0 {
		t.Fatalf("%s has no rows", path)
	}
	return out
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func checkMifflin(t *testing.T, table []map[string]string) {
	t.Helper()
	checked := 0
	for _, row := range table {
		age, whole := strconv.Atoi(row["age_years"])
		if row["equation"] != "mifflin_1990_simplified" || whole != nil {
			continue
		}
		sex := Female
		if row["sex"] == "m" {
			sex = Male
		}
		got := Resting(MifflinStJeor, RestingInput{
			Sex: sex, Age: unit.Year(age),
			Weight: unit.Kilogram(number(t, row["weight_kg"])), Height: unit.Centimetre(number(t, row["height_cm"])),
		})
		// Printed to three decimals.
		if want := number(t, row["expected_kcal"]); math.Abs(float64(got.Value)-want) > 0.0005 {
			t.Errorf("%v: got %v, want %v", row, got.Value, want)
		}
		checked++
	}
	if checked == 0 {
		t.Error("no row was checked")
	}
}

// Source: Mifflin et al. 1990, Am J Clin Nutr 51:241-247 (seen).
func TestMifflinAgainstPublishedRows(t *testing.T) {
	checkMifflin(t, rows(t, "../../testdata/reference/mifflin.csv"))
}

func TestMifflinAgainstReferenceFolder(t *testing.T) {
	folder := os.Getenv("HANDBREADTH_REFERENCE")
	if folder == "" {
		t.Log("HANDBREADTH_REFERENCE is not set: the larger table was not checked")
		return
	}
	checkMifflin(t, rows(t, filepath.Join(folder, "resting-energy.csv")))
}

// Source: a handbook's worked example, woman of 25, 60 kg, 160 cm: 1314 kcal
// (seen in a secondary copy).
func TestMifflinHandbookExample(t *testing.T) {
	got := Resting(MifflinStJeor, RestingInput{Sex: Female, Age: 25, Weight: 60, Height: 160})
	if math.Round(float64(got.Value)) != 1314 {
		t.Errorf("got %v", got.Value)
	}
}

// Source: FAO/WHO/UNU 2004, section 5.4 (seen): resting 5.45 MJ at PAL 1.85 is
// 10.08 MJ = 2410 kcal a day; section 5.2 (seen in a secondary copy): 7.30 MJ at
// PAL 2.25 is 16.42 MJ = 3925 kcal.
func TestMaintenanceFAOExamples(t *testing.T) {
	for _, row := range rows(t, "../../testdata/reference/published-values.csv") {
		if row["id"] != "fao_2004_requirement" && row["id"] != "fao_2004_tee" {
			continue
		}
		given := map[string]float64{}
		for _, pair := range strings.Split(row["inputs"], ";") {
			name, value, _ := strings.Cut(pair, "=")
			given[name] = number(t, value)
		}
		resting := derive.Exact(unit.Kilojoule(given["BMR_MJ"] * 1000).Kilocalories())
		level := Activity{PAL: unit.PAL(given["PAL"])}.Level()
		got := float64(Maintenance(resting, level).Value)
		if row["unit"] == "MJ/d" {
			got = float64(unit.Kilocalorie(got).Kilojoules()) / 1000
		}
		if want := number(t, row["published_value"]); math.Abs(got-want) > number(t, row["tolerance"])+0.005 {
			t.Errorf("%s: got %v, want %v", row["inputs"], got, want)
		}
	}
}

// Source: Wishnofsky 1958 as 32.2 MJ/kg, to 0.1 (Hall 2008, seen).
func TestStaticRuleInSI(t *testing.T) {
	got := float64(unit.Kilocalorie(StaticEnergyPerKilogram).Kilojoules()) / 1000
	if math.Abs(got-32.2) > 0.1 {
		t.Errorf("got %v MJ/kg", got)
	}
}

// Source: NASEM 2023 class limits and EFSA 2013 levels (both seen): each level
// lies inside its class, and the classes meet.
func TestActivityClasses(t *testing.T) {
	want := map[Category][3]float64{
		Inactive: {1.4, 1.0, 1.53}, LowActive: {1.6, 1.53, 1.68}, Active: {1.8, 1.68, 1.85}, VeryActive: {2.0, 1.85, 2.5},
	}
	for _, c := range Classes() {
		w := want[c.Category]
		if float64(c.Level) != w[0] || float64(c.Level) < w[1] || float64(c.Level) >= w[2] {
			t.Errorf("%s: level %v, want %v inside %v to %v", c.Category, c.Level, w[0], w[1], w[2])
		}
	}
}

package macro

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"handbreadth/domain/unit"
)

// row is a line of macros.csv: named figures put in and expected.
type row struct{ in, want map[string]float64 }

// rows reads the rows of one kind: those of testdata, and of the larger set where
// HANDBREADTH_REFERENCE names its folder.
func rows(t *testing.T, id string) []row {
	t.Helper()
	files := []string{"../../testdata/reference/macros.csv"}
	if folder := os.Getenv("HANDBREADTH_REFERENCE"); folder != "" {
		files = append(files, filepath.Join(folder, "macros.csv"))
	}
	var found []row
	for _, name := range files {
		file, err := os.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		lines, err := csv.NewReader(file).ReadAll()
		file.Close()
		if err != nil {
			t.Fatal(err)
		}
		for _, line := range lines[1:] {
			if line[0] == id {
				found = append(found, row{figures(t, line[1]), figures(t, line[2])})
			}
		}
	}
	if len(found) == 0 {
		t.Fatalf("no rows of %s", id)
	}
	return found
}

func figures(t *testing.T, text string) map[string]float64 {
	t.Helper()
	all := map[string]float64{}
	for _, pair := range strings.Split(text, ";") {
		name, value, _ := strings.Cut(pair, "=")
		v, err := strconv.ParseFloat(value, 64)
		if err != nil {
			t.Fatal(err)
		}
		all[name] = v
	}
	return all
}

func amounts(in map[string]float64) Amounts {
	return Amounts{
		Carbohydrate: unit.Gram(in["carb_g"]), Protein: unit.Gram(in["protein_g"]), Fat: unit.Gram(in["fat_g"]),
		Fibre: unit.Gram(in["fibre_g"]), Alcohol: unit.Gram(in["alcohol_g"]), OrganicAcids: unit.Gram(in["organic_g"]),
		Erythritol: unit.Gram(in["erythritol_g"]), Salatrims: unit.Gram(in["salatrim_g"]), Polyols: unit.Gram(in["polyol_g"]),
	}
}

// Source: Regulation (EU) 1169/2011, annex XIV (seen).
func TestLabelEnergyAgainstPublishedRows(t *testing.T) {
	for _, r := range rows(t, "eu_1169_2011_energy") {
		label := amounts(r.in).Label()
		near(t, "kcal", float64(label.Kilocalories.Value), r.want["kcal"], 5e-5)
		near(t, "kJ", float64(label.Kilojoules.Value), r.want["kJ"], 5e-5)
	}
}

// Source: Regulation (EU) 1169/2011, annex XIV (seen): polyols 2.4 kcal, 10 kJ. The
// first row of the table is 965 kJ beside 4.184 x 230 = 962.32: 3 kJ of rounding.
func TestLabelEnergySaysTheRounding(t *testing.T) {
	label := Amounts{Fat: 10, Carbohydrate: 20, Protein: 15}.Label()
	step, _ := label.Kilojoules.Last()
	if !strings.Contains(step.Note, "+3 kJ") {
		t.Errorf("note %q", step.Note)
	}
	polyols := Amounts{Polyols: 10}.Label()
	near(t, "polyols", float64(polyols.Kilocalories.Value), 24, 1e-9)
	near(t, "polyols", float64(polyols.Kilojoules.Value), 100, 1e-9)
}

// Source: thermochemical calorie, 4.184 J (exact by definition).
func TestKilojoulesAgainstRows(t *testing.T) {
	for _, r := range rows(t, "kcal_to_kJ") {
		near(t, "kJ", float64(unit.Kilocalorie(r.in["kcal"]).Kilojoules()), r.want["kJ"], 1e-9)
	}
}

// Source: 20-30/5-10/0-3/10-30 % of the energy of protein, carbohydrate, fat and
// alcohol (from memory; Westerterp 2004 has the order and 5-15 % of the day, seen).
func TestThermicEffectAgainstRows(t *testing.T) {
	for _, r := range rows(t, "thermic_effect_range") {
		effect := ThermicEffect(amounts(r.in))
		near(t, "low", float64(effect.Low), r.want["low_kcal"], 5e-5)
		near(t, "high", float64(effect.High), r.want["high_kcal"], 5e-5)
		if effect.Value < effect.Low || effect.Value > effect.High {
			t.Errorf("%v outside %v to %v", effect.Value, effect.Low, effect.High)
		}
	}
	// A mixed day of 2000 kcal lies within 5-15 % of its energy (seen).
	day := ThermicEffect(Amounts{Protein: 90, Carbohydrate: 230, Fat: 80})
	if day.Value < 100 || day.Value > 300 {
		t.Errorf("mixed day %v kcal", day.Value)
	}
}

// Source: WHO, healthy diet (seen): saturated fat and free sugars.
func TestCeilingsAgainstPublishedRows(t *testing.T) {
	for _, r := range rows(t, "sat_fat_10pct") {
		near(t, "saturated fat", float64(Ceilings(unit.Kilocalorie(r.in["kcal"]))[0].Grams.Value), r.want["g"], 5e-5)
	}
	for _, r := range rows(t, "free_sugar_10_5pct") {
		ceilings := Ceilings(unit.Kilocalorie(r.in["kcal"]))
		near(t, "free sugars, 10 %", float64(ceilings[1].Grams.Value), r.want["g10"], 5e-4)
		near(t, "free sugars, 5 %", float64(ceilings[2].Grams.Value), r.want["g5"], 5e-4)
	}
}

// Source: IOM 2002/2005: 14 g per 1000 kcal (from memory).
func TestFibreAgainstRows(t *testing.T) {
	for _, r := range rows(t, "fibre_14g_per_1000kcal") {
		near(t, "fibre", float64(Fibre(unit.Kilocalorie(r.in["kcal"])).Value), r.want["fibre_g"], 5e-4)
	}
}

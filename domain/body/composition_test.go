package body

import (
	"math"
	"strconv"
	"testing"

	"handbreadth/domain/unit"
)

func figureOf(t *testing.T, row map[string]string) (Figure, bool) {
	f := Figure{Sex: unit.Female}
	if row["sex"] == "m" {
		f.Sex = unit.Male
	}
	if row["age_years"] != "" {
		age, err := strconv.Atoi(row["age_years"])
		if err != nil {
			return f, false // ages here are completed years
		}
		f.Age = unit.Year(age)
	}
	for column, field := range map[string]*unit.Centimetre{"height_cm": &f.Height, "neck_cm": &f.Neck, "waist_cm": &f.Waist, "hip_cm": &f.Hip} {
		if row[column] != "" {
			*field = unit.Centimetre(num(t, row, column))
		}
	}
	if row["weight_kg"] != "" {
		f.Weight = unit.Kilogram(num(t, row, "weight_kg"))
	}
	return f, true
}

// Deurenberg was seen; the others are from memory, so those rows show only that
// two programs agree. Printed to four decimals.
func TestBodyFatAgainstPublishedRows(t *testing.T) {
	methods := map[string]func(Figure) FatEstimate{
		"deurenberg_1991_adult": deurenberg, "jackson_2002_quadratic": jackson,
		"jackson_2002_log_as_used_in_Hall_2011": jacksonLog, "gallagher_2000_4C": gallagher,
		"navy_hodgdon_beckett_1984_siri_cm": func(f Figure) FatEstimate { e, _ := tapeFat(f); return e },
	}
	checked := map[string]int{}
	for _, row := range table(t, "../../testdata/reference/body-composition.csv") {
		method, ours := methods[row["equation"]]
		f, whole := figureOf(t, row)
		if !ours || !whole {
			continue
		}
		if got, want := float64(method(f).Fat.Value), num(t, row, "expected"); math.Abs(got-want) > 0.0001 {
			t.Errorf("%v: got %v, want %v", row, got, want)
		}
		checked[row["equation"]]++
	}
	for name := range methods {
		if checked[name] == 0 {
			t.Errorf("%s: no row was checked", name)
		}
	}
}

// Source: Gallagher 2000, healthy ranges (from memory): women of 20-39 years 21
// to 33 % at BMI 18.5 and 25, men 8 to 20 %.
func TestGallagherRanges(t *testing.T) {
	at := func(sex unit.Sex, bmi float64) float64 {
		return float64(gallagher(Figure{Sex: sex, Age: 30, Height: 170, Weight: unit.WeightAtBMI(unit.KilogramPerSquareMetre(bmi), 170)}).Fat.Value)
	}
	for _, c := range []struct {
		sex       unit.Sex
		bmi, want float64
	}{{unit.Female, 18.5, 21}, {unit.Female, 25, 33}, {unit.Male, 18.5, 8}} {
		if got := at(c.sex, c.bmi); math.Abs(got-c.want) > 0.6 {
			t.Errorf("%s BMI %v: %v %%, want %v", c.sex, c.bmi, got, c.want)
		}
	}
}

func TestReferenceWeightsAgainstPublishedRows(t *testing.T) {
	checked := map[string]int{}
	for _, row := range table(t, "../../testdata/reference/reference-weights.csv") {
		if row["height_cm"] == "" {
			continue
		}
		height, sex := unit.Centimetre(num(t, row, "height_cm")), unit.Female
		if row["sex"] == "m" {
			sex = unit.Male
		}
		var got float64
		switch row["equation"] {
		case "devine_1974_kg":
			got = float64(devine(sex, height).Value)
		case "hamwi_1964_kg_from_lb":
			got = float64(hamwi(sex, height).Value)
		case "peterson_2016_universal":
			got = float64(peterson(height, num(t, row, "bmi_or_inputs")).Value)
		case "weight_at_bmi":
			got = float64(unit.WeightAtBMI(unit.KilogramPerSquareMetre(num(t, row, "bmi_or_inputs")), height))
		default:
			continue
		}
		if want := num(t, row, "expected_kg"); math.Abs(got-want) > 0.0001 {
			t.Errorf("%v: got %v, want %v", row, got, want)
		}
		checked[row["equation"]]++
	}
	if len(checked) != 4 {
		t.Errorf("checked only %v", checked)
	}
}

// Convention: 61.5 kg reference and 110 kg give 73.625 kg (row
// adjusted_body_weight_factor_0.25, from memory).
func TestAdjustedWeight(t *testing.T) {
	if got := float64(AdjustedWeight(110, 61.5).Value); math.Abs(got-73.625) > 1e-9 {
		t.Errorf("got %v", got)
	}
}

// Source: NICE NG246 examples (seen): at 64 in, 29 in is healthy and 32 in is
// not; at 70 in, 36 in is not. The classes: NICE CG189 (seen).
func TestWaistToHeight(t *testing.T) {
	for _, c := range []struct {
		height, waist float64
		want          float64
	}{{64, 29, 0.4}, {64, 32, 0.5}, {70, 36, 0.5}, {170, 101.9, 0.5}, {170, 102, 0.6}, {170, 67.9, 0}} {
		ratio := WaistToHeight(Figure{Height: unit.Centimetre(c.height), Waist: unit.Centimetre(c.waist)}).Value
		if got := ClassOf(float64(ratio), WaistToHeightLimits()); got.From != c.want {
			t.Errorf("%v of %v: class from %v, want from %v", c.waist, c.height, got.From, c.want)
		}
	}
}

// Source: WHO TRS 894 and WHO 2004 action points (rows of the screening table).
func TestBMIClasses(t *testing.T) {
	for _, c := range []struct {
		population Population
		bmi, want  float64
	}{{WorldPoints, 18.4, 0}, {WorldPoints, 18.5, 18.5}, {WorldPoints, 29.9, 25}, {WorldPoints, 30, 30}, {WorldPoints, 34.9, 30}, {AsianPoints, 27.5, 27.5}, {AsianPoints, 32.4, 27.5}, {AsianPoints, 32.5, 32.5}, {AsianPoints, 37.5, 37.5}} {
		if got := ClassOf(c.bmi, BMILimits(c.population)); got.From != c.want {
			t.Errorf("%s %v: class from %v, want from %v", c.population, c.bmi, got.From, c.want)
		}
	}
}

func TestTrustedMethod(t *testing.T) {
	f := Figure{Sex: unit.Male, Age: 40, Weight: 90, Height: 180}
	if m := Fat(f).Method; m != FatGallagher {
		t.Errorf("BMI only: %s", m)
	}
	f.Weight = 130
	if m := Fat(f).Method; m != FatJacksonLog {
		t.Errorf("BMI 40: %s", m)
	}
	f.Neck, f.Waist = 42, 110
	if m := Fat(f).Method; m != FatTape {
		t.Errorf("tape: %s", m)
	}
	f.MeasuredFat = 31
	if e := Fat(f); e.Method != FatMeasured || e.Fat.Value != 31 {
		t.Errorf("measured: %+v", e)
	}
}

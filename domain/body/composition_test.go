package body

import (
	"math"
	"strings"
	"testing"

	"handbreadth/domain/unit"
)

func figureOf(t *testing.T, p published) Figure {
	return Figure{
		Sex: unit.Sex(p.given["sex"]), Age: unit.Year(p.number(t, "age")),
		Weight: unit.Kilogram(p.number(t, "weight")), Height: unit.Centimetre(p.number(t, "height")),
		Neck: unit.Centimetre(p.number(t, "neck")), Waist: unit.Centimetre(p.number(t, "waist")), Hip: unit.Centimetre(p.number(t, "hip")),
	}
}

// bodyChecks are what the program makes of a row of body.txt.
var bodyChecks = map[string]func(t *testing.T, p published) float64{
	"bmi": func(t *testing.T, p published) float64 { return bmiOf(figureOf(t, p)) },
	"deurenberg_1991": func(t *testing.T, p published) float64 {
		return float64(deurenberg(figureOf(t, p)).Fat.Value)
	},
	"jackson_2002": func(t *testing.T, p published) float64 { return float64(jackson(figureOf(t, p)).Fat.Value) },
	"jackson_2002_log": func(t *testing.T, p published) float64 {
		return float64(jacksonLog(figureOf(t, p)).Fat.Value)
	},
	"gallagher_2000": func(t *testing.T, p published) float64 { return float64(gallagher(figureOf(t, p)).Fat.Value) },
	"tape": func(t *testing.T, p published) float64 {
		e, ok := tapeFat(figureOf(t, p))
		if !ok {
			t.Errorf("%v: the tape says nothing", p.given)
		}
		return float64(e.Fat.Value)
	},
	"devine": func(t *testing.T, p published) float64 {
		f := figureOf(t, p)
		return float64(devine(f.Sex, f.Height).Value)
	},
	"hamwi": func(t *testing.T, p published) float64 {
		f := figureOf(t, p)
		return float64(hamwi(f.Sex, f.Height).Value)
	},
	"peterson": func(t *testing.T, p published) float64 {
		return float64(peterson(figureOf(t, p).Height, p.number(t, "bmi")).Value)
	},
	"weight_at_bmi": func(t *testing.T, p published) float64 {
		return float64(unit.WeightAtBMI(unit.KilogramPerSquareMetre(p.number(t, "bmi")), figureOf(t, p).Height))
	},
	"waist_to_height": func(t *testing.T, p published) float64 {
		return ClassOf(float64(WaistToHeight(figureOf(t, p)).Value), WaistToHeightLimits()).From
	},
}

// checkPublished compares every row of a table, and fails for a check without a
// row or a row without a check.
func checkPublished(t *testing.T, name string, checks map[string]func(*testing.T, published) float64) {
	t.Helper()
	checked := map[string]int{}
	for _, row := range readPublished(t, name) {
		worksOut, known := checks[row.check]
		if !known {
			t.Fatalf("no check is called %s", row.check)
		}
		if got := worksOut(t, row); math.Abs(got-row.want) > row.within+1e-9 {
			t.Errorf("%s (%s, %s) %v: got %v, want %v within %v", row.check, row.source, row.confidence, row.given, got, row.want, row.within)
		}
		checked[row.check]++
	}
	for check := range checks {
		if checked[check] == 0 {
			t.Errorf("%s: no row was checked", check)
		}
	}
}

// Each block of the table names its source and whether it was seen. Rows from
// memory show only that two programs agree.
func TestBodyAgainstPublishedRows(t *testing.T) { checkPublished(t, "body.txt", bodyChecks) }

// folderNames maps the equations of the larger tables to the checks of body.txt;
// those that the program does not have are named too.
var folderNames = map[string]string{
	"bmi": "bmi", "deurenberg_1991_adult": "deurenberg_1991", "jackson_2002_quadratic": "jackson_2002",
	"jackson_2002_log_as_used_in_Hall_2011": "jackson_2002_log", "gallagher_2000_4C": "gallagher_2000",
	"navy_hodgdon_beckett_1984_siri_cm": "tape", "dod_circumference_inch_form": "",
	"devine_1974_kg": "devine", "hamwi_1964_kg_from_lb": "hamwi", "peterson_2016_universal": "peterson",
	"weight_at_bmi": "weight_at_bmi", "adjusted_body_weight_factor_0.25": "", "adjusted_body_weight_factor_0.4": "",
}

func TestBodyAgainstReferenceFolder(t *testing.T) {
	checked := 0
	for name, want := range map[string]string{"body-composition.csv": "expected", "reference-weights.csv": "expected_kg"} {
		for _, row := range readFolder(t, name) {
			check, known := folderNames[row["equation"]]
			if !known {
				t.Errorf("no equation is called %s", row["equation"])
			}
			if check == "" || strings.Contains(row["age_years"], ".") {
				continue // ages here are completed years
			}
			p := published{given: map[string]string{
				"sex": map[string]string{"m": "male", "f": "female"}[row["sex"]], "age": row["age_years"], "weight": row["weight_kg"],
				"height": row["height_cm"], "neck": row["neck_cm"], "waist": row["waist_cm"], "hip": row["hip_cm"], "bmi": row["bmi_or_inputs"],
			}}
			if got := bodyChecks[check](t, p); math.Abs(got-parsed(t, row[want])) > 0.0001 {
				t.Errorf("%v: got %v", row, got)
			}
			checked++
		}
	}
	t.Logf("%d rows were checked", checked)
}

// Convention: 61.5 kg reference and 110 kg give 73.625 kg (row
// adjusted_body_weight_factor_0.25, from memory).
func TestAdjustedWeight(t *testing.T) {
	if got := float64(AdjustedWeight(110, 61.5).Value); math.Abs(got-73.625) > 1e-9 {
		t.Errorf("got %v", got)
	}
}

// The edges of the classes. Source: NICE CG189 (seen).
func TestWaistToHeight(t *testing.T) {
	for _, c := range []struct {
		height, waist float64
		want          float64
	}{{170, 101.9, 0.5}, {170, 102, 0.6}, {170, 67.9, 0}, {170, 85, 0.5}} {
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

// WHO 2008 (its table seen in a citing article, doi 10.1155/2013/906495): increased
// above 94 and 80 cm, substantially increased above 102 and 88 cm.
func TestWaistClasses(t *testing.T) {
	for _, c := range []struct {
		sex   unit.Sex
		waist float64
		want  int
	}{
		{unit.Male, 94, 0},
		{unit.Male, 94.1, 1},
		{unit.Male, 102, 1},
		{unit.Male, 102.1, 2},
		{unit.Female, 80, 0},
		{unit.Female, 80.1, 1},
		{unit.Female, 88, 1},
		{unit.Female, 88.1, 2},
	} {
		if got, want := ClassOf(c.waist, WaistLimits(c.sex)), WaistLimits(c.sex)[c.want]; got != want {
			t.Errorf("%s, %v cm: %q, want %q", c.sex, c.waist, got.Name, want.Name)
		}
	}
}

package energy

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

func restingInput(t *testing.T, p published) RestingInput {
	return RestingInput{
		Sex: Sex(p.given["sex"]), Age: unit.Year(p.number(t, "age")),
		Weight: unit.Kilogram(p.number(t, "weight")), Height: unit.Centimetre(p.number(t, "height")),
		LeanMass: unit.Kilogram(p.number(t, "lean")),
	}
}

func reproduction(t *testing.T, p published) Reproduction {
	r := Reproduction{Weeks: int(p.number(t, "week"))}
	if bmi := p.number(t, "bmi_before"); bmi > 0 {
		r.PrePregnant = unit.WeightAtBMI(unit.KilogramPerSquareMetre(bmi), unit.Centimetre(p.number(t, "height")))
	}
	switch p.given["feeding"] {
	case "first_half_year":
		r.Breastfeeding = FirstHalfYear
	case "second_half_year":
		r.Breastfeeding = SecondHalfYear
	}
	return r
}

// worksOut returns what the program makes of a row, and false for a check that
// it does not know.
func worksOut(t *testing.T, p published) (float64, bool) {
	in, class := restingInput(t, p), Category(p.given["activity"])
	switch p.check {
	case "dri_2005_normal":
		return float64(iomNormal(in, class).Value), true
	case "dri_2005_overweight":
		return float64(iomOverweight(in, class).Value), true
	case "dri_2023":
		return float64(nasem(in, class, reproduction(t, p)).Value), true
	case "maintenance":
		resting := derive.Exact(unit.Kilocalorie(p.number(t, "resting")))
		return float64(Maintenance(resting, Activity{PAL: unit.PAL(p.number(t, "pal"))}.Level()).Value), true
	case "efsa_average":
		const healthyBMI, moderate = 22, 1.6
		in.Weight = unit.WeightAtBMI(healthyBMI, in.Height)
		return moderate * float64(Resting(HenryWeightHeight, in).Value), true
	case "static_change":
		return p.number(t, "change") * p.number(t, "days") / StaticEnergyPerKilogram, true
	case "static_density":
		return float64(unit.Kilocalorie(p.number(t, "kilograms")*StaticEnergyPerKilogram).Kilojoules()) / 1000, true
	case "exercise":
		pursuit := Pursuit{MET: MET(p.number(t, "met"))}
		if listed, ok := PursuitByCode(p.given["code"]); ok {
			pursuit = listed
		}
		return float64(Exercise(pursuit, in.Weight, Hour(p.number(t, "minutes")/60)).Value), true
	}
	e, known := find(RestingEquation(p.check))
	if !known {
		return 0, false
	}
	return float64(e.work(in).Value), true
}

// Every published row; each block of the table names its source and whether it
// was seen. Rows from memory show only that two programs agree.
func TestAgainstPublishedRows(t *testing.T) {
	checked := map[string]int{}
	for _, row := range readPublished(t, "energy.txt") {
		got, known := worksOut(t, row)
		if !known {
			t.Fatalf("no check is called %s", row.check)
		}
		if math.Abs(got-row.want) > row.within+1e-9 {
			t.Errorf("%s (%s, %s) %v: got %v, want %v within %v", row.check, row.source, row.confidence, row.given, got, row.want, row.within)
		}
		checked[row.check]++
	}
	for _, e := range equations {
		if checked[string(e.Code)] == 0 {
			t.Errorf("%s: no row was checked", e.Name)
		}
	}
	for _, name := range []string{"dri_2005_normal", "dri_2005_overweight", "dri_2023", "maintenance", "efsa_average", "exercise", "static_change", "static_density"} {
		if checked[name] == 0 {
			t.Errorf("%s: no row was checked", name)
		}
	}
}

// Every MET of the list is one that a published row has, or is marked as from
// memory.
func TestMETsAgainstPublishedRows(t *testing.T) {
	seen := map[string]published{}
	for _, row := range readPublished(t, "energy.txt") {
		if row.check == "exercise" {
			seen[row.given["code"]] = row
		}
	}
	for _, p := range pursuits {
		row, listed := seen[p.Code]
		if listed && float64(p.MET) != row.number(t, "met") {
			t.Errorf("%s: %v MET, published %s", p.Name, p.MET, row.given["met"])
		}
		if p.Source.Confidence == derive.Seen && (!listed || row.confidence != string(derive.Seen)) {
			t.Errorf("%s is marked as seen, but no row was", p.Name)
		}
	}
}

// folderNames maps the equations of the larger table to those of the program.
// Those it does not have are named too, so that a new one does not pass unseen.
var folderNames = map[string]RestingEquation{
	"mifflin_1990_simplified": MifflinStJeor, "henry_2005_weight_kcal": HenryWeight,
	"henry_2005_weight_height_kcal": HenryWeightHeight, "schofield_fao2004_weight": Schofield,
	"harris_benedict_roza_1984": HarrisBenedict1984, "owen_1986_1987": Owen, "muller_2004": Mueller2004,
	"cunningham_1980": Cunningham1980, "cunningham_1991": KatchMcArdle, "katch_mcardle": KatchMcArdle,
	"mifflin_1990_full": "", "mifflin_1990_ffm": "", "harris_benedict_1919": "", "fao_who_unu_1985_weight": "",
	"henry_2005_weight_MJ": "", "henry_2005_weight_height_MJ": "", "iom_2005_bee": "", "muller_2004_ffm_fm": "",
}

func TestRestingAgainstReferenceFolder(t *testing.T) {
	checked := 0
	for _, row := range readFolder(t, "resting-energy.csv") {
		equation, known := folderNames[row["equation"]]
		if !known {
			t.Errorf("no equation is called %s", row["equation"])
		}
		age, fraction := strconv.Atoi(row["age_years"])
		if row["age_years"] == "" {
			age, fraction = 40, nil
		}
		if equation == "" || fraction != nil || age < 18 {
			continue // ages here are completed years, and the program is for adults
		}
		p := published{given: map[string]string{
			"sex": map[string]string{"m": "male", "f": "female"}[row["sex"]], "age": strconv.Itoa(age),
			"weight": row["weight_kg"], "height": row["height_cm"], "lean": row["ffm_kg"],
		}}
		e, _ := find(equation)
		if got, want := float64(e.work(restingInput(t, p)).Value), parsed(t, row["expected_kcal"]); math.Abs(got-want) > 0.001 {
			t.Errorf("%v: got %v, want %v", row, got, want)
		}
		checked++
	}
	t.Logf("%d rows were checked", checked)
}

func TestMeasuredValueWins(t *testing.T) {
	got := Resting(Owen, RestingInput{Sex: Female, Age: 25, Weight: 55, Height: 160, Measured: 1234})
	if got.Value != 1234 || got.Low >= got.Value || got.High <= got.Value {
		t.Errorf("got %+v", got)
	}
}

// Each equation is said to suit only the people whom it was made from. Sources
// of the limits: Mifflin 1990 (19-78 years, seen); Owen 1986 and 1987 (women of
// 18-65 years and 43-143 kg, seen; men of 18-82 years to 171 kg, from memory).
func TestSuits(t *testing.T) {
	base := RestingInput{Sex: Female, Age: 40, Weight: 70, Height: 170, LeanMass: 48, LeanMeasured: true}
	with := func(change func(*RestingInput)) RestingInput { in := base; change(&in); return in }
	cases := []struct {
		name string
		in   RestingInput
		not  []RestingEquation
	}{
		{"everything is known", base, nil},
		{"lean mass is estimated", with(func(in *RestingInput) { in.LeanMeasured = false }), []RestingEquation{Cunningham1980, KatchMcArdle}},
		{"lean mass is not known", with(func(in *RestingInput) { in.LeanMass = 0 }), []RestingEquation{Cunningham1980, KatchMcArdle}},
		{"a man of 180 kg", with(func(in *RestingInput) { in.Sex = Male; in.Weight = 180 }), []RestingEquation{Owen}},
		{"a woman of 150 kg", with(func(in *RestingInput) { in.Weight = 150 }), []RestingEquation{Owen}},
		{"a woman of 42 kg", with(func(in *RestingInput) { in.Weight = 42 }), []RestingEquation{Owen}},
		{"18 years", with(func(in *RestingInput) { in.Age = 18 }), []RestingEquation{MifflinStJeor}},
		{"80 years", with(func(in *RestingInput) { in.Age = 80 }), []RestingEquation{MifflinStJeor, Owen}},
	}
	for _, c := range cases {
		for _, got := range Compare(MifflinStJeor, c.in) {
			code := got.Equation.Code
			if want := !slices.Contains(c.not, code); got.Suits != want || (got.Why == "") != got.Suits {
				t.Errorf("%s: %s suits %v: %q", c.name, code, got.Suits, got.Why)
			}
			if got.Chosen != (code == MifflinStJeor) {
				t.Errorf("%s: %s is chosen: %v", c.name, code, got.Chosen)
			}
			needsLean := code == Cunningham1980 || code == KatchMcArdle
			if got.Worked != (!needsLean || c.in.LeanMass > 0) || (got.Note != "") != (needsLean && got.Worked && !c.in.LeanMeasured) {
				t.Errorf("%s: %s worked %v, note %q", c.name, code, got.Worked, got.Note)
			}
		}
	}
}

// An estimate of lean mass widens the range: 10 % either side joined with the
// error of what was put in (root of the sum of squares, by hand).
func TestLeanMassWidensTheRange(t *testing.T) {
	in := RestingInput{Sex: Male, Age: 30, Weight: 80, Height: 180, LeanMass: 62, LeanError: 3}
	got := Resting(KatchMcArdle, in)
	value := 370 + 21.6*62
	half := math.Hypot(0.1*value, 1.2816*21.6*3)
	if math.Abs(float64(got.High-got.Value)-half) > 1e-9 || math.Abs(float64(got.Value-got.Low)-half) > 1e-9 {
		t.Errorf("%v to %v around %v, want %v either side", got.Low, got.High, got.Value, half)
	}
}

func TestAgreement(t *testing.T) {
	in := RestingInput{Sex: Female, Age: 40, Weight: 70, Height: 170}
	all := Compare(MifflinStJeor, in)
	used := Resting(MifflinStJeor, in)
	a := AgreementOf(all, used)
	// By hand, kcal: Mifflin 1401.5; Henry 8.18 x 70 + 502 x 1.7 - 11.6 = 1414.4 and
	// 9.74 x 70 + 694 = 1375.8; Schofield 8.126 x 70 + 845.6 = 1414.4; revised
	// Harris-Benedict 1448.3; Owen 1297.6; Müller (3.29 - 0.5808 + 3.21) MJ = 1414.7.
	if a.Of != 7 || a.Inside != 7 || math.Abs(float64(a.Least)-1297.6) > 0.1 || math.Abs(float64(a.Most)-1448.3) > 0.1 {
		t.Errorf("%+v", a)
	}
	if low := AgreementOf(all, measured(900)); low.Inside != 0 || low.Of != 7 {
		t.Errorf("beside a measured 900 kcal: %+v", low)
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

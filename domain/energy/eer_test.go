package energy

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/unit"
)

var iomClasses = map[string]Category{
	"sedentary": Inactive, "inactive": Inactive, "low_active": LowActive, "active": Active, "very_active": VeryActive,
}

// Source: IOM 2005 table of estimated energy requirements at 30 years, 48 cells
// (seen), each to 3 kcal.
func TestDRI2005Table(t *testing.T) {
	checked := 0
	for _, row := range rows(t, "../../testdata/reference/published-values.csv") {
		if row["id"] != "iom_2005_eer_table" {
			continue
		}
		given := map[string]string{}
		for _, pair := range strings.Split(row["inputs"], ";") {
			name, value, _ := strings.Cut(pair, "=")
			given[name] = value
		}
		in := RestingInput{Sex: Female, Age: 30, Weight: unit.Kilogram(number(t, given["weight_kg"])), Height: unit.Centimetre(100 * number(t, given["height_m"]))}
		if given["sex"] == "m" {
			in.Sex = Male
		}
		got := float64(iomNormal(in, iomClasses[given["activity"]]).Value)
		if want := number(t, row["published_value"]); math.Abs(got-want) > number(t, row["tolerance"]) {
			t.Errorf("%s: got %v, want %v", row["inputs"], got, want)
		}
		checked++
	}
	if checked < 20 {
		t.Errorf("only %d cells were checked", checked)
	}
}

// The rows of the total-energy table; what was seen: their confidence column.
func TestTotalEnergyAgainstPublishedRows(t *testing.T) {
	checked := map[string]int{}
	for _, row := range rows(t, "../../testdata/reference/total-energy.csv") {
		age, notWhole := strconv.Atoi(row["age_years"])
		if notWhole != nil {
			continue
		}
		in := RestingInput{Sex: Female, Age: unit.Year(age), Weight: unit.Kilogram(number(t, row["weight_kg"])), Height: unit.Centimetre(number(t, row["height_cm"]))}
		if row["sex"] == "m" {
			in.Sex = Male
		}
		class, name := iomClasses[row["activity"]], row["equation"]
		var got float64
		switch {
		case name == "iom_2005_eer_normal_weight":
			got = float64(iomNormal(in, class).Value)
		case name == "iom_2005_tee_overweight":
			got = float64(iomOverweight(in, class).Value)
		case strings.HasPrefix(name, "nasem_2023_eer"):
			got = float64(nasem(in, class, reproductionOf(t, name, in)).Value)
		default:
			t.Fatalf("unknown row %s", name)
		}
		if want := number(t, row["expected_kcal"]); math.Abs(got-want) > 0.001 {
			t.Errorf("%v: got %v, want %v", row, got, want)
		}
		checked[strings.SplitN(name, "_week", 2)[0]]++
	}
	if len(checked) != 6 {
		t.Errorf("checked only %v", checked)
	}
}

// reproductionOf reads the week and the BMI before pregnancy out of a row's name.
func reproductionOf(t *testing.T, name string, in RestingInput) Reproduction {
	if strings.Contains(name, "lactation_0_6mo") {
		return Reproduction{Breastfeeding: FirstHalfYear}
	}
	if strings.Contains(name, "lactation_7_12mo") {
		return Reproduction{Breastfeeding: SecondHalfYear}
	}
	_, rest, pregnant := strings.Cut(name, "_week")
	if !pregnant {
		return Reproduction{}
	}
	week, class, _ := strings.Cut(rest, "_")
	before := map[string]unit.KilogramPerSquareMetre{"underweight": 17, "normal": 22, "overweight": 27, "obese": 33}[class]
	return Reproduction{Weeks: int(number(t, week)), PrePregnant: unit.WeightAtBMI(before, in.Height)}
}

func TestLevelOfDay(t *testing.T) {
	p := func(code string) Pursuit { f, _ := PursuitByCode(code); return f }
	office := []Span{{p("07030"), 8}, {p("11580"), 8}, {p("17190"), 1}, {p("05010"), 1}}
	got, err := LevelOfDay(office)
	if err != nil {
		t.Fatal(err)
	}
	// By hand: (8 x 0.95 + 8 x 1.5 + 3.5 + 3.3 + 6 x 1.3) / 24 / 0.9 = 1.583.
	if math.Abs(float64(got.Value)-34.2/24/0.9) > 1e-9 {
		t.Errorf("got %v", got.Value)
	}
	if step, _ := got.Last(); !strings.Contains(step.Inputs[len(step.Inputs)-1].Name, "not told") {
		t.Error("the hours that were filled in are not named")
	}
	if quiet := QuietHours(office); math.Abs(float64(quiet)-6) > 1e-9 {
		t.Errorf("%v quiet hours, want 6", quiet)
	}
}

func TestFaultsOfADay(t *testing.T) {
	p := func(code string) Pursuit { f, _ := PursuitByCode(code); return f }
	changed := p("12030")
	changed.MET = 1
	cases := []struct {
		name  string
		spans []Span
		index int
		part  DayPart
	}{
		{"25 hours", []Span{{p("07030"), 18}, {p("11580"), 7}}, 0, WholeDay},
		{"no hours", []Span{{p("07030"), 8}, {p("11580"), 0}}, 1, DayHours},
		{"hours that are no number", []Span{{p("07030"), Hour(math.NaN())}}, 0, DayHours},
		{"an activity that is not listed", []Span{{Pursuit{Code: "99999", MET: 3}, 2}}, 0, DayPursuit},
		{"a MET that is not the list's", []Span{{changed, 2}}, 0, DayPursuit},
		{"a day that nobody keeps up", []Span{{p("12050"), 10}}, 0, WholeDay},
	}
	for _, c := range cases {
		faults := DayFaults(c.spans)
		if len(faults) != 1 || faults[0].Index != c.index || faults[0].Part != c.part || faults[0].Accepted == "" {
			t.Errorf("%s: %+v", c.name, faults)
		}
		if _, err := LevelOfDay(c.spans); err == nil {
			t.Errorf("%s: a level came out", c.name)
		}
	}
}

func TestLevelOfDayStaysInBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		left := 24.0
		var spans []Span
		for _, p := range rapid.SliceOfN(rapid.SampledFrom(pursuits), 0, 6).Draw(t, "pursuits") {
			h := rapid.Float64Range(0.01, left/2).Draw(t, "hours")
			left -= h
			spans = append(spans, Span{p, Hour(h)})
		}
		got, err := LevelOfDay(spans)
		if err != nil && levelOf(spans) > MostPAL {
			return
		}
		if err != nil || got.Value < LeastPAL || got.Value > MostPAL || got.Low > got.Value || got.High < got.Value {
			t.Fatalf("%+v, %v", got, err)
		}
	})
}

// Source: Compendium 2011 convention, rows of the table of METs: net energy
// above 1 MET.
func TestExerciseAgainstRows(t *testing.T) {
	checked := 0
	for _, row := range rows(t, "../../testdata/reference/mets-2011-compendium.csv") {
		p, ok := PursuitByCode(row["code"])
		if !ok {
			continue
		}
		if float64(p.MET) != number(t, row["met"]) {
			t.Errorf("%s: %v MET, want %s", p.Name, p.MET, row["met"])
		}
		got := float64(Exercise(p, unit.Kilogram(number(t, row["weight_kg"])), Hour(number(t, row["minutes"])/60)).Value)
		if want := number(t, row["net_kcal_above_1_met"]); math.Abs(got-want) > 0.001 {
			t.Errorf("%s: %v kcal, want %v", p.Name, got, want)
		}
		checked++
	}
	if checked < 20 {
		t.Errorf("only %d rows were checked", checked)
	}
}

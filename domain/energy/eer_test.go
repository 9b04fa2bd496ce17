package energy

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// By hand: DRI 2005 at 30 years, 60 kg and 165 cm, low active: 354 - 207.3 + 1.12
// x (561.6 + 1197.9) = 2117.3 kcal; the second trimester adds 340, and the first
// half-year of breastfeeding 330 (from memory).
func TestCrossChecksWithReproduction(t *testing.T) {
	in := RestingInput{Sex: Female, Age: 30, Weight: 60, Height: 165}
	low := Activity{Category: LowActive}
	dri2005 := func(in RestingInput, r Reproduction) float64 { return float64(CrossChecks(in, low, r)[0].Energy.Value) }
	const alone = 354 - 6.91*30 + 1.12*(9.36*60+726*1.65)
	for _, c := range []struct {
		name  string
		r     Reproduction
		added float64
	}{
		{"neither", Reproduction{}, 0},
		{"first trimester", Reproduction{Weeks: 13}, 0},
		{"second trimester", Reproduction{Weeks: 14}, 340},
		{"third trimester", Reproduction{Weeks: 28}, 452},
		{"breast milk only", Reproduction{Breastfeeding: FirstHalfYear}, 330},
		{"beside food", Reproduction{Breastfeeding: SecondHalfYear}, 400},
	} {
		if got := dri2005(in, c.r); math.Abs(got-alone-c.added) > 1e-9 {
			t.Errorf("%s: %v kcal, want %v", c.name, got, alone+c.added)
		}
	}
	// The weight before pregnancy is what the equation asks for.
	heavier := in
	heavier.Weight = 70
	if got := dri2005(heavier, Reproduction{Weeks: 20, PrePregnant: 60}); math.Abs(got-alone-340) > 1e-9 {
		t.Errorf("with the weight before: %v", got)
	}
	// The equations were made from women, whichever sex stands in the others.
	other := in
	other.Sex = Male
	for i, c := range CrossChecks(other, low, Reproduction{Weeks: 20}) {
		if c.Energy.Value != CrossChecks(in, low, Reproduction{Weeks: 20})[i].Energy.Value {
			t.Errorf("%s depends on the sex of the other equations", c.Name)
		}
	}
	in.Age = 18
	if got := CrossChecks(in, low, Reproduction{}); got != nil {
		t.Errorf("18 years: %+v", got)
	}
}

// Source: IOM 2005, classes of the level (seen): sedentary 1.0-1.39, low active
// 1.4-1.59, active 1.6-1.89, very active 1.9-2.5; NASEM 2023 (seen): under 1.53,
// 1.68 and 1.85. The energies of 2005 for a man of 30 years, 70 kg and 175 cm are
// by hand from its coefficients, as are those of 2023 (from memory).
func TestCrossChecksByLevel(t *testing.T) {
	in := RestingInput{Sex: Male, Age: 30, Weight: 70, Height: 175}
	const (
		sedentary, lowActive, active, veryActive = 2434.10, 2660.48, 2948.60, 3421.94
		inactive23                               = 753.07 - 10.83*30 + 6.50*175 + 14.10*70
		low23                                    = 581.47 - 10.83*30 + 8.30*175 + 14.94*70
		active23                                 = 1004.82 - 10.83*30 + 6.52*175 + 15.91*70
		very23                                   = -517.88 - 10.83*30 + 15.61*175 + 19.11*70
	)
	for _, c := range []struct {
		name         string
		a            Activity
		in2005, in23 float64
	}{
		{"1.39", Activity{PAL: 1.39}, sedentary, inactive23},
		{"1.4", Activity{PAL: 1.4}, lowActive, inactive23},
		{"1.45", Activity{PAL: 1.45}, lowActive, inactive23},
		{"1.53", Activity{PAL: 1.53}, lowActive, low23},
		{"1.6", Activity{PAL: 1.6}, active, low23},
		{"1.68", Activity{PAL: 1.68}, active, active23},
		{"1.87", Activity{PAL: 1.87}, active, very23},
		{"1.9", Activity{PAL: 1.9}, veryActive, very23},
		{"customary 1.375", Activity{Customary: "light"}, sedentary, inactive23},
		{"customary 1.55", Activity{Customary: "moderate"}, lowActive, low23},
		{"by name, inactive", Activity{Category: Inactive}, sedentary, inactive23},
		{"by name, low active", Activity{Category: LowActive}, lowActive, low23},
		{"by name, active", Activity{Category: Active}, active, active23},
		{"by name, very active", Activity{Category: VeryActive}, veryActive, very23},
	} {
		got := CrossChecks(in, c.a, Reproduction{})
		if math.Abs(float64(got[0].Energy.Value)-c.in2005) > 0.01 || math.Abs(float64(got[1].Energy.Value)-c.in23) > 0.01 {
			t.Errorf("%s: %.2f and %.2f, want %.2f and %.2f", c.name, got[0].Energy.Value, got[1].Energy.Value, c.in2005, c.in23)
		}
	}
}

// Source: EFSA 2013 (seen): 70, 260 and 500 kcal by trimester, 500 for the first
// half-year of breastfeeding; NASEM 2023 (from memory): 380 for the second.
func TestMaintenanceWithReproduction(t *testing.T) {
	maintenance := derive.Within[unit.Kilocalorie](2000, 1800, 2200)
	for _, c := range []struct {
		r     Reproduction
		added unit.Kilocalorie
	}{
		{Reproduction{}, 0},
		{Reproduction{PrePregnant: 60}, 0},
		{Reproduction{Weeks: 1}, 70},
		{Reproduction{Weeks: 13}, 70},
		{Reproduction{Weeks: 14}, 260},
		{Reproduction{Weeks: 27}, 260},
		{Reproduction{Weeks: 28}, 500},
		{Reproduction{Weeks: 42}, 500},
		{Reproduction{Breastfeeding: FirstHalfYear}, 500},
		{Reproduction{Breastfeeding: SecondHalfYear}, 380},
		{Reproduction{Weeks: 20, Breastfeeding: SecondHalfYear}, 640},
	} {
		got := WithReproduction(maintenance, c.r)
		if got.Value != 2000+c.added || got.Low != 1800+c.added || got.High != 2200+c.added {
			t.Errorf("%+v: %v to %v around %v, want %v more", c.r, got.Low, got.High, got.Value, c.added)
		}
	}
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

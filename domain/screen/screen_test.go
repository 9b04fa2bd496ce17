package screen

import (
	"strings"
	"testing"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

// table is the safety table written out apart from the code: for each question,
// the level of a yes and what it stops. Sources as the safety table names them;
// all from memory.
var table = map[Code][]string{
	Pregnant:           {"refer deficit", "hold plan"},
	EatingDisorderNow:  {"refer plan"},
	EatingDisorderPast: {"hold deficit"},
	SuicidalThoughts:   {"refer plan"},
	UnexplainedLoss:    {"refer deficit", "hold plan"},
	Type1Diabetes:      {"refer plan"},
	GlucoseLowering:    {"hold deficit, carbohydrate"},
	SGLT2:              {"hold carbohydrate"},
	GLP1:               {"caution "},
	Kidney:             {"hold deficit, protein"},
	KidneySevere:       {"refer plan"},
	BariatricRecent:    {"refer plan"},
	BariatricPast:      {"hold deficit, fibre"},
	CancerTreatment:    {"refer deficit", "hold plan"},
	HeartOrLiver:       {"refer deficit, fluid"},
	Lithium:            {"hold deficit, fluid"},
	Warfarin:           {"caution "},
	BloodPressure:      {"caution "},
	ThyroidUntreated:   {"refer deficit"},
	ThyroidTreated:     {"caution "},
	MissedPeriods:      {"refer deficit"},
	Gallstones:         {"caution "},
	GutNarrowing:       {"hold fibre"},
	Swallowing:         {"refer plan"},
}

func adult() Facts {
	out := energy.Outcome{Target: derive.Exact(unit.Kilocalorie(2000))}
	return Facts{Age: 40, Sex: energy.Male, BMI: 27, Goal: energy.Maintain, Outcome: out, Resting: 1500, Carbohydrate: 220}
}

// losing is the adult with a target below maintenance.
func losing() Facts {
	f := adult()
	f.Outcome.Change = -300
	return f
}

func TestGallstonesSpeakWhereLossIsPlanned(t *testing.T) {
	answers := Answers{}.AllNo().With(Gallstones, Yes)
	if level(Findings(answers, adult()), string(Gallstones)) != 0 || level(Findings(answers, losing()), string(Gallstones)) != derive.Caution {
		t.Error("gallstones speak at the wrong time")
	}
}

// stops words what a finding does, without the comparison, which every hold and
// refer includes.
func stops(t *testing.T, f derive.Finding) string {
	t.Helper()
	serious := f.Level == derive.Hold || f.Level == derive.Refer
	if serious != f.Scope.Covers(derive.ScopeComparison) {
		t.Errorf("%s %s: comparison in scope %v", f.Code, f.Level, f.Scope)
	}
	return f.Level.String() + " " + (f.Scope &^ derive.ScopeComparison).String()
}

func TestEveryQuestionAgainstTheSafetyTable(t *testing.T) {
	if len(Questions()) != len(table) {
		t.Errorf("%d questions, the table has %d", len(Questions()), len(table))
	}
	for code, want := range table {
		for _, f := range Findings(Answers{}.AllNo(), adult()) {
			if f.Code == string(code) {
				t.Errorf("%s fires on no", code)
			}
		}
		var got []string
		for _, f := range Findings(Answers{}.AllNo().With(code, Yes), losing()) {
			if f.Code == string(code) {
				got = append(got, stops(t, f))
			}
		}
		if strings.Join(got, "; ") != strings.Join(want, "; ") {
			t.Errorf("%s: got %q, want %q", code, got, want)
		}
	}
}

func TestNotAskedIsNeverNo(t *testing.T) {
	for _, q := range Questions() {
		answers := Answers{}.AllNo()
		delete(answers, q.Code)
		gate := Judge(Findings(answers, adult()), derive.ScopePlan, nil)
		if !gate.Held() || gate.Holds[0].Code != NotAskedCode {
			t.Errorf("%s not asked: %+v", q.Code, gate)
		}
		if missing := Unasked(answers); len(missing) != 1 || missing[0] != q.Code {
			t.Errorf("%s not asked, listed as %v", q.Code, missing)
		}
	}
	if gate := Judge(Findings(Answers{}.AllNo(), adult()), derive.ScopePlan, nil); !gate.Open() {
		t.Errorf("all asked and no: %+v", gate)
	}
}

func level(found []derive.Finding, code string) derive.Level {
	for _, f := range found {
		if f.Code == code {
			return f.Level
		}
	}
	return 0
}

// The computed rows of the safety table, at their edges.
func TestComputedFindingsAtTheirEdges(t *testing.T) {
	lowers := func(f *Facts, target, change unit.Kilocalorie) {
		f.Outcome = energy.Outcome{Target: derive.Exact(target), Change: change}
	}
	cases := []struct {
		name   string
		code   string
		change func(*Facts)
		want   derive.Level
	}{
		{"17", "under_18", func(f *Facts) { f.Age = 17 }, derive.Refer},
		{"18", "under_18", func(f *Facts) { f.Age = 18 }, 0},
		{"goal BMI 18.4", "target_underweight", func(f *Facts) { f.GoalBMI = 18.4 }, derive.Refer},
		{"goal BMI 18.5", "target_underweight", func(f *Facts) { f.GoalBMI = 18.5 }, 0},
		{"no goal weight", "target_underweight", func(f *Facts) {}, 0},
		{"BMI 18.4", "underweight_now", func(f *Facts) { f.BMI = 18.4 }, derive.Refer},
		{"BMI 18.5", "underweight_now", func(f *Facts) { f.BMI = 18.5 }, 0},
		{"BMI 15.9, NICE CG32 (seen)", "refeeding_risk", func(f *Facts) { f.BMI = 15.9 }, derive.Refer},
		{"BMI 16", "refeeding_risk", func(f *Facts) { f.BMI = 16 }, 0},
		{"men under 1500", "energy_low", func(f *Facts) { lowers(f, 1499, -300) }, derive.Hold},
		{"men at 1500", "energy_low", func(f *Facts) { lowers(f, 1500, -300) }, 0},
		{"women at 1200", "energy_low", func(f *Facts) { f.Sex = energy.Female; lowers(f, 1200, -300) }, 0},
		{"women under 1200", "energy_low", func(f *Facts) { f.Sex = energy.Female; lowers(f, 1199, -300) }, derive.Hold},
		{"under 800", "energy_very_low", func(f *Facts) { lowers(f, 799, -900) }, derive.Refer},
		{"800", "energy_very_low", func(f *Facts) { lowers(f, 800, -900) }, 0},
		{"64", "older_adult", func(f *Facts) { f.Age = 64 }, 0},
		{"65, BMI 27", "older_adult", func(f *Facts) { f.Age = 65 }, derive.Hold},
		{"65, BMI 30, not frail", "older_adult", func(f *Facts) { f.Age = 65; f.BMI = 30 }, derive.Caution},
		{"woman of 49", "fat_floor_raised", func(f *Facts) { f.Sex = energy.Female; f.Age = 49 }, derive.Note},
		{"woman of 50", "fat_floor_raised", func(f *Facts) { f.Sex = energy.Female; f.Age = 50 }, 0},
		{"man, BMI 18", "fat_floor_raised", func(f *Facts) { f.BMI = 18 }, derive.Note},
		{"deficit over 1000", "deficit_large", func(f *Facts) { lowers(f, 2000, -1001) }, derive.Caution},
		{"under resting", "below_resting", func(f *Facts) { f.Resting = 2100; lowers(f, 2000, -500) }, derive.Caution},
		{"under 130 g", "carbohydrate_low", func(f *Facts) { f.Carbohydrate = 129 }, derive.Note},
		{"measures far from the targets", "measures_far", func(f *Facts) { f.MeasuresFar = true }, derive.Caution},
		{"too fast", "rate_fast", func(f *Facts) { lowers(f, 2000, -900); f.Outcome.TooFast = true }, derive.Hold},
		{"meant to lose, energy raises", "goal_and_energy_differ", func(f *Facts) { f.Goal = energy.Lose; lowers(f, 2600, 300) }, derive.Caution},
	}
	for _, c := range cases {
		f := adult()
		c.change(&f)
		if got := level(Findings(Answers{}.AllNo(), f), c.code); got != c.want {
			t.Errorf("%s: %s is %v, want %v", c.name, c.code, got, c.want)
		}
	}
}

func TestFrailtyNotAskedIsNotNo(t *testing.T) {
	f := adult()
	f.Age, f.BMI = 70, 32
	for answer, want := range map[Answer]derive.Level{NotAsked: derive.Hold, No: derive.Caution, Yes: derive.Hold} {
		if got := level(Findings(Answers{}.AllNo().With(Frail, answer), f), "older_adult"); got != want {
			t.Errorf("frail %v: %v, want %v", answer, got, want)
		}
	}
}

func TestFluidAdviceIsDroppedWhereItIsStopped(t *testing.T) {
	for _, code := range []Code{HeartOrLiver, Lithium} {
		for _, f := range Findings(Answers{}.AllNo().With(code, Yes), adult()) {
			if f.Code == "fluid" || strings.Contains(f.Text, "drink with it") {
				t.Errorf("%s: advice to drink remains: %s", code, f.Text)
			}
		}
	}
	if level(Findings(Answers{}.AllNo(), adult()), "fluid") != derive.Note {
		t.Error("the note on fluid is missing where nothing stops it")
	}
}

func TestReferBeatsHoldAndReasonsLiftHoldsOnly(t *testing.T) {
	found := Findings(Answers{}.AllNo().With(Pregnant, Yes), adult())
	reasons := Reasons{string(Pregnant): {Text: "agreed with the midwife"}}
	if gate := Judge(found, derive.ScopePlan, reasons); !gate.Open() || len(gate.Lifted) != 1 {
		t.Errorf("plan with a reason: %+v", gate)
	}
	if gate := Judge(found, derive.ScopePlan|derive.ScopeDeficit, reasons); !gate.Referred() || gate.Held() {
		t.Errorf("deficit with a reason: %+v", gate)
	}
	blank := Reasons{string(Pregnant): {Text: "  "}}
	if gate := Judge(found, derive.ScopePlan, blank); !gate.Held() {
		t.Errorf("plan with a blank reason: %+v", gate)
	}
}

// The program never diagnoses and never blames.
func TestWordsOfFindings(t *testing.T) {
	f := adult()
	f.Age, f.BMI, f.GoalBMI = 70, 15, 17
	answers := Answers{}
	for _, q := range Questions() {
		answers[q.Code] = Yes
	}
	for _, found := range Findings(answers, f) {
		for _, word := range []string{"you have", "diagnos", "bad food", "good food", "cheat", "fail "} {
			if strings.Contains(strings.ToLower(found.Text), word) {
				t.Errorf("%s says %q: %s", found.Code, word, found.Text)
			}
		}
		if found.Text == "" || found.Source.Text == "" || found.Source.Confidence == "" {
			t.Errorf("%s lacks text or source", found.Code)
		}
	}
}

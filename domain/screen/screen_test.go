package screen

import (
	"slices"
	"strings"
	"testing"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

// row is a line of the safety table: what a yes does, and how well its source
// was confirmed.
type row struct {
	does []string
	seen derive.Confidence
}

// table is the safety table written out apart from the code: for each question,
// the level of a yes and what it stops. The sources stand in questions.go and
// sources.go; here is what was seen of each: NICE NG69 on nice.org.uk; Murdoch
// 2019 on bjgp.org; the DRI tables; the ESC's own site; Weinsier 1995 and Gebhard
// 1996 by their abstracts; KDOQI 2020 as PMC8045140 has it; the rest in copies by
// others, or from memory.
var table = map[Code]row{
	Pregnant:           {[]string{"refer deficit", "hold plan"}, derive.Seen},
	EatingDisorderNow:  {[]string{"refer plan"}, derive.Seen},
	EatingDisorderPast: {[]string{"hold deficit"}, derive.Memory},
	SuicidalThoughts:   {[]string{"refer plan"}, derive.SeenSecond},
	UnexplainedLoss:    {[]string{"refer deficit", "hold plan"}, derive.SeenSecond},
	Type1Diabetes:      {[]string{"refer plan"}, derive.Memory},
	GlucoseLowering:    {[]string{"hold deficit, carbohydrate"}, derive.Seen},
	SGLT2:              {[]string{"hold carbohydrate"}, derive.Seen},
	GLP1:               {[]string{"caution "}, derive.SeenSecond},
	Kidney:             {[]string{"hold deficit, protein"}, derive.SeenSecond},
	KidneySevere:       {[]string{"refer plan"}, derive.Seen},
	BariatricRecent:    {[]string{"refer plan"}, derive.Memory},
	BariatricPast:      {[]string{"hold deficit, fibre"}, derive.SeenSecond},
	CancerTreatment:    {[]string{"refer deficit", "hold plan"}, derive.SeenSecond},
	HeartOrLiver:       {[]string{"refer deficit, fluid"}, derive.Seen},
	Lithium:            {[]string{"hold deficit, fluid"}, derive.SeenSecond},
	Warfarin:           {[]string{"caution "}, derive.Seen},
	BloodPressure:      {[]string{"caution "}, derive.Custom},
	ThyroidUntreated:   {[]string{"refer deficit"}, derive.Memory},
	ThyroidTreated:     {[]string{"caution "}, derive.SeenSecond},
	MissedPeriods:      {[]string{"refer deficit"}, derive.Memory},
	Gallstones:         {[]string{"caution "}, derive.Seen},
	GutNarrowing:       {[]string{"hold fibre"}, derive.Custom},
	Swallowing:         {[]string{"refer plan"}, derive.Custom},
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
				if f.Source.Confidence != want.seen {
					t.Errorf("%s: source %s, want %s", code, f.Source.Confidence, want.seen)
				}
			}
		}
		if strings.Join(got, "; ") != strings.Join(want.does, "; ") {
			t.Errorf("%s: got %q, want %q", code, got, want.does)
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
		want   string // level and scope; "" where it does not speak
	}{
		{"17", "under_18", func(f *Facts) { f.Age = 17 }, "refer plan"},
		{"18", "under_18", func(f *Facts) { f.Age = 18 }, ""},
		{"goal BMI 18.4", "target_underweight", func(f *Facts) { f.GoalBMI = 18.4 }, "refer plan"},
		{"goal BMI 18.5", "target_underweight", func(f *Facts) { f.GoalBMI = 18.5 }, ""},
		{"no goal weight", "target_underweight", func(f *Facts) {}, ""},
		{"an open deficit that ends under 18.5", "course_underweight", func(f *Facts) { f.DaysToUnderweight = 90 }, "hold deficit"},
		{"an open deficit that does not", "course_underweight", func(f *Facts) {}, ""},
		{"BMI 18.4", "underweight_now", func(f *Facts) { f.BMI = 18.4 }, "refer deficit"},
		{"BMI 18.4, gaining", "underweight_now", func(f *Facts) { f.BMI = 18.4; lowers(f, 2300, 300) }, "refer deficit; caution "},
		{"BMI 18.5", "underweight_now", func(f *Facts) { f.BMI = 18.5 }, ""},
		{"BMI 15.9, NICE CG32 (seen)", "refeeding_risk", func(f *Facts) { f.BMI = 15.9 }, "refer plan"},
		{"BMI 16", "refeeding_risk", func(f *Facts) { f.BMI = 16 }, ""},
		{"men under 1500, AHA/ACC/TOS 2013 (seen in a secondary copy)", "energy_low", func(f *Facts) { lowers(f, 1499, -300) }, "hold deficit"},
		{"men at 1500", "energy_low", func(f *Facts) { lowers(f, 1500, -300) }, ""},
		{"women at 1200", "energy_low", func(f *Facts) { f.Sex = energy.Female; lowers(f, 1200, -300) }, ""},
		{"women under 1200", "energy_low", func(f *Facts) { f.Sex = energy.Female; lowers(f, 1199, -300) }, "hold deficit"},
		{"under 800, NICE CG189 (seen)", "energy_very_low", func(f *Facts) { lowers(f, 799, -900) }, "refer deficit"},
		{"800", "energy_very_low", func(f *Facts) { lowers(f, 800, -900) }, ""},
		{"64", "older_adult", func(f *Facts) { f.Age = 64 }, ""},
		{"65, BMI 27", "older_adult", func(f *Facts) { f.Age = 65 }, "hold deficit"},
		{"65, BMI 30, not frail", "older_adult", func(f *Facts) { f.Age = 65; f.BMI = 30 }, "caution "},
		{"woman of 49, WHO/FAO 2010 (from memory)", "fat_floor_raised", func(f *Facts) { f.Sex = energy.Female; f.Age = 49 }, "note "},
		{"woman of 50", "fat_floor_raised", func(f *Facts) { f.Sex = energy.Female; f.Age = 50 }, ""},
		{"man, BMI 18", "fat_floor_raised", func(f *Facts) { f.BMI = 18 }, "note "},
		{"deficit over 1000, NIH 1998 (seen in a secondary copy)", "deficit_large", func(f *Facts) { lowers(f, 2000, -1001) }, "caution "},
		{"surplus over 1000", "surplus_large", func(f *Facts) { lowers(f, 4000, 1001) }, "caution "},
		{"under resting", "below_resting", func(f *Facts) { f.Resting = 2100; lowers(f, 2000, -500) }, "caution "},
		{"under 130 g, IOM 2002/2005 (seen)", "carbohydrate_low", func(f *Facts) { f.Carbohydrate = 129.9 }, "note "},
		{"130 g", "carbohydrate_low", func(f *Facts) { f.Carbohydrate = 130 }, ""},
		{"175 g not kept, IOM 2002/2005 (seen)", "pregnant_or_breastfeeding", func(f *Facts) { f.LeastCarbohydrate = 175; f.Carbohydrate = 174 }, "refer plan"},
		{"175 g kept", "pregnant_or_breastfeeding", func(f *Facts) { f.LeastCarbohydrate = 175; f.Carbohydrate = 175 }, ""},
		{"a course under 18.5 within four weeks", "course_underweight", func(f *Facts) { f.DaysToUnderweight = 28 }, "refer deficit"},
		{"a course under 18.5 later", "course_underweight", func(f *Facts) { f.DaysToUnderweight = 29 }, "hold deficit"},
		{"measures far from the targets", "measures_far", func(f *Facts) { f.MeasuresFar = true }, "caution "},
		{"fat of the measures under its floor", "measures_under_floor", func(f *Facts) { f.MeasuresUnderFloor = true }, "caution "},
		{"protein held", "protein_limited", func(f *Facts) { f.ProteinLimited = true }, "note "},
		{"too fast, NIH 1998 (seen in a secondary copy)", "rate_fast", func(f *Facts) { lowers(f, 2000, -900); f.Outcome.TooFast = true }, "hold deficit"},
		{"meant to lose, energy raises", "goal_and_energy_differ", func(f *Facts) { f.Goal = energy.Lose; lowers(f, 2600, 300) }, "caution "},
		{"availability under 30, Burke 2018 (seen)", "energy_availability_low", func(f *Facts) { f.Availability = EnergyAvailability(1799, 300, 50) }, "hold deficit"},
		{"availability of 30", "energy_availability_low", func(f *Facts) { f.Availability = EnergyAvailability(1800, 300, 50) }, ""},
		{"availability not assessed", "energy_availability_low", func(f *Facts) {}, ""},
		{"usual fibre not told", "fibre_step", func(f *Facts) { f.Fibre = 28 }, "note "},
		{"fibre rises by 5 g", "fibre_step", func(f *Facts) { f.Fibre, f.UsualFibre = 28, 23 }, ""},
		{"fibre rises by more", "fibre_step", func(f *Facts) { f.Fibre, f.UsualFibre = 28, 22 }, "note "},
		{"water, EFSA 2010 (seen)", "fluid", func(f *Facts) {}, "note "},
	}
	for _, c := range cases {
		f := adult()
		c.change(&f)
		var got []string
		for _, found := range Findings(Answers{}.AllNo(), f) {
			if found.Code == c.code {
				got = append(got, stops(t, found))
			}
		}
		if strings.Join(got, "; ") != c.want {
			t.Errorf("%s: %s is %q, want %q", c.name, c.code, got, c.want)
		}
	}
}

// What the measures bring, at the edges of what counts as rounding: a tenth with
// wishes, a fifth without; a twentieth beside a floor. This program's choices.
func TestWhatTheMeasuresBring(t *testing.T) {
	brings := func(kcal unit.Kilocalorie, wished bool) func(*Facts) {
		return func(f *Facts) {
			f.MealsWished = wished
			f.Brought = &Brought{Brings: hand.Nutrients{Energy: kcal, Carbohydrate: 200}, Aim: hand.Nutrients{Energy: 2000, Carbohydrate: 200}}
		}
	}
	for _, c := range []struct {
		name   string
		change func(*Facts)
		scope  derive.Scope
	}{
		{"1801 of 2000, wished", brings(1801, true), 0},
		{"1799 of 2000, wished", brings(1799, true), derive.ScopeDeficit},
		{"1799 of 2000", brings(1799, false), 0},
		{"1601 of 2000", brings(1601, false), 0},
		{"1599 of 2000", brings(1599, false), derive.ScopeDeficit},
		{"2201 of 2000, wished", brings(2201, true), derive.ScopeSurplus},
		{"2399 of 2000", brings(2399, false), 0},
	} {
		f := adult()
		c.change(&f)
		if got := f.BroughtScope(); got != c.scope {
			t.Errorf("%s: %v, want %v", c.name, got, c.scope)
		}
		if told := level(Findings(Answers{}.AllNo(), f), measuresDiffer) == derive.Caution; told != (c.scope != 0) {
			t.Errorf("%s: told %v", c.name, told)
		}
	}
	for kcal, want := range map[unit.Kilocalorie]derive.Level{1424: derive.Hold, 1426: 0} {
		f := adult()
		brings(kcal, true)(&f)
		if got := level(Findings(Answers{}.AllNo(), f), energyLow); got != want {
			t.Errorf("%v kcal beside 1500: %v", kcal, got)
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
	for _, code := range []Code{HeartOrLiver, Lithium, KidneySevere} {
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

// EFSA 2010, EFSA Journal 8(3):1459 (abstract seen): 2.0 litres for women, 0.3 more
// in pregnancy, about 0.7 more while breastfeeding.
func TestFluidInPregnancyAndBreastfeeding(t *testing.T) {
	for _, c := range []struct {
		told energy.Reproduction
		yes  Answer
		says []string
	}{
		{energy.Reproduction{}, No, []string{"2.0", "2.5"}},
		{energy.Reproduction{Weeks: 20}, No, []string{"2.3"}},
		{energy.Reproduction{Breastfeeding: energy.FirstHalfYear}, Yes, []string{"2.7"}},
		{energy.Reproduction{}, Yes, []string{"2.3", "2.7"}},
	} {
		f := adult()
		f.Reproduction = c.told
		text := textOf(Findings(Answers{}.AllNo().With(Pregnant, c.yes), f), "fluid")
		for _, amount := range []string{"2.0", "2.3", "2.5", "2.7"} {
			if strings.Contains(text, amount) != slices.Contains(c.says, amount) {
				t.Errorf("%+v, %v: %q", c.told, c.yes, text)
			}
		}
	}
}

// Pregnancy and breastfeeding raise the fat floor whatever sex the equations have.
func TestPregnancyRaisesTheFatFloor(t *testing.T) {
	for _, c := range []struct {
		told energy.Reproduction
		yes  Answer
		want derive.Level
	}{{energy.Reproduction{}, No, 0}, {energy.Reproduction{}, Yes, derive.Note}, {energy.Reproduction{Weeks: 8}, No, derive.Note}} {
		f := adult()
		f.Reproduction = c.told
		if got := level(Findings(Answers{}.AllNo().With(Pregnant, c.yes), f), "fat_floor_raised"); got != c.want {
			t.Errorf("%+v, %v: %v", c.told, c.yes, got)
		}
	}
}

// A referral has no plan, so nothing speaks of one; nothing that stops is lost.
func TestReferralSaysNothingOfAPlan(t *testing.T) {
	f := losing()
	f.Resting, f.MeasuresFar, f.MeasuresUnderFloor, f.ProteinLimited = 2100, true, true, true
	before := Findings(Answers{}.AllNo().With(ThyroidUntreated, Yes), f)
	after := WithoutFigures(before)
	for _, code := range []string{"measures_far", "measures_under_floor", "below_resting", "protein_limited", "fluid"} {
		if level(before, code) == 0 || level(after, code) != 0 {
			t.Errorf("%s: %v in a plan, %v in a referral", code, level(before, code), level(after, code))
		}
	}
	for _, found := range before {
		if found.Level >= derive.Hold && level(after, found.Code) != found.Level {
			t.Errorf("%s is lost", found.Code)
		}
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

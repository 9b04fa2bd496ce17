package screen

import (
	"strings"
	"testing"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

func scores(code string, points int) Scored {
	return Scored{Scores: Scores{code: {points, true}}}
}

// What was told elsewhere stands for a yes, whatever the question was answered
// with: SCOFF 2 (Morgan 1999, seen), MUST 2 (BAPEN 2003, seen), MST 2 (Ferguson
// 1999, seen on reprints), a loss over 5 % (GLIM 2019, seen in a secondary copy).
func TestWhatImpliesAYes(t *testing.T) {
	cases := []struct {
		name  string
		facts func(*Facts)
		code  Code
		fires bool
	}{
		{"SCOFF 1", func(f *Facts) { f.Scored = scores(SCOFF, 1) }, EatingDisorderNow, false},
		{"SCOFF 2", func(f *Facts) { f.Scored = scores(SCOFF, 2) }, EatingDisorderNow, true},
		{"SCOFF 2, not asked", func(f *Facts) { f.Scored = Scored{Scores: Scores{SCOFF: {2, false}}} }, EatingDisorderNow, false},
		{"MUST 1", func(f *Facts) { f.Scored = scores(MUST, 1) }, UnexplainedLoss, false},
		{"MUST 2", func(f *Facts) { f.Scored = scores(MUST, 2) }, UnexplainedLoss, true},
		{"MUST 0 at a BMI of 18", func(f *Facts) { f.Scored = scores(MUST, 0); f.BMI = 18 }, UnexplainedLoss, true},
		{"no MUST at a BMI of 18", func(f *Facts) { f.BMI = 18 }, UnexplainedLoss, false},
		{"no MUST, BMI 18.4 and a loss of 3 %", func(f *Facts) { f.Scored.RecentLoss = loss(3); f.BMI = 18.4 }, UnexplainedLoss, true},
		{"no MUST, BMI 18.4 and no loss", func(f *Facts) { f.Scored.RecentLoss = loss(0); f.BMI = 18.4 }, UnexplainedLoss, false},
		{"no MUST, BMI 20 and a loss of 5 %", func(f *Facts) { f.Scored.RecentLoss = loss(5); f.BMI = 20 }, UnexplainedLoss, true},
		{"no MUST, BMI 20.1 and a loss of 5 %", func(f *Facts) { f.Scored.RecentLoss = loss(5); f.BMI = 20.1 }, UnexplainedLoss, false},
		{"MST 1", func(f *Facts) { f.Scored = scores(MST, 1) }, UnexplainedLoss, false},
		{"MST 2", func(f *Facts) { f.Scored = scores(MST, 2) }, UnexplainedLoss, true},
		{"a loss of 5 %", func(f *Facts) { f.Scored.RecentLoss = loss(5) }, UnexplainedLoss, false},
		{"a loss over 5 %", func(f *Facts) { f.Scored.RecentLoss = loss(5.1) }, UnexplainedLoss, true},
		{"week 1", func(f *Facts) { f.Reproduction.Weeks = 1 }, Pregnant, true},
		{"breastfeeding", func(f *Facts) { f.Reproduction.Breastfeeding = energy.SecondHalfYear }, Pregnant, true},
	}
	for _, c := range cases {
		f := losing()
		c.facts(&f)
		for _, answer := range []Answer{No, Yes} {
			var got []string
			for _, found := range Findings(Answers{}.AllNo().With(c.code, answer), f) {
				if found.Code == string(c.code) {
					got = append(got, stops(t, found))
				}
			}
			want := ""
			if c.fires || answer == Yes {
				want = strings.Join(table[c.code].does, "; ")
			}
			if strings.Join(got, "; ") != want {
				t.Errorf("%s, answered %v: got %q, want %q", c.name, answer, got, want)
			}
		}
	}
}

func TestScoreIsTold(t *testing.T) {
	f := adult()
	f.Scored = scores(SCOFF, 3)
	found := Findings(Answers{}.AllNo(), f)
	if text := textOf(found, string(EatingDisorderNow)); !strings.HasPrefix(text, "SCOFF 3 of 5, positive from 2.") {
		t.Errorf("text %q", text)
	}
}

func textOf(found []derive.Finding, code string) string {
	for _, f := range found {
		if f.Code == code {
			return f.Text
		}
	}
	return ""
}

// 65 or over with obesity: a larger deficit is a caution that tells the energy at
// 500 kcal less than maintenance (ESPEN 2022, from memory).
func TestOlderAdultIsToldTheWishThatWouldDo(t *testing.T) {
	cases := []struct {
		target, change unit.Kilocalorie
		says           string
	}{
		{1800, -700, "a target of 2000 kcal"},
		{1500, -500, "500 kcal a day at most"},
		{1300, -600, "a target of 1500 kcal"}, // 1400 would be under a man's least energy
	}
	for _, c := range cases {
		f := adult()
		f.Age, f.BMI = 70, 33
		f.Outcome = energy.Outcome{Target: derive.Exact(c.target), Change: c.change}
		found := Findings(Answers{}.AllNo(), f)
		if level(found, olderAdult) != derive.Caution || !strings.Contains(textOf(found, olderAdult), c.says) {
			t.Errorf("%v less: %q", c.change, textOf(found, olderAdult))
		}
	}
}

func TestFibreStepTellsRiseAndWeeks(t *testing.T) {
	f := adult()
	f.Fibre, f.UsualFibre = 28, 14
	if text := textOf(Findings(Answers{}.AllNo(), f), "fibre_step"); !strings.Contains(text, "by 14 g, from 14 to 28 g") || !strings.Contains(text, "3 weeks") {
		t.Errorf("text %q", text)
	}
}

// The threshold comes from lean people who train: with overweight and no training
// told nothing is assessed.
func TestWhereAvailabilityIsAssessed(t *testing.T) {
	for _, c := range []struct {
		name     string
		exercise unit.Kilocalorie
		trains   bool
		bmi      unit.KilogramPerSquareMetre
		assessed bool
	}{
		{"lean, no training told", 0, false, 24.9, true},
		{"overweight, no training told", 0, false, 25, false},
		{"overweight, training told", 300, false, 32, true},
		{"overweight, trains, energy not told", 0, true, 26, true},
	} {
		got := Availability(AvailabilityInput{Target: 1400, Exercise: c.exercise, Trains: c.trains, Lean: 50, BMI: c.bmi})
		if (len(got.Steps) > 0) != c.assessed {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}

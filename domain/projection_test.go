package domain

import (
	"math"
	"strings"
	"testing"

	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

// A projection loses and then holds; the phases meet on the day that is told,
// and the held weight stays near the goal.
func TestProjectionLosesAndHolds(t *testing.T) {
	p := planOf(t, func(*Intake) {})
	pr := p.Projection
	if len(pr.Phases) != 2 || pr.Phases[0].Days != pr.Reached || pr.Phases[0].Energy != p.Targets.Energy.Value || pr.Phases[1].Energy != pr.Holding.Value {
		t.Fatalf("phases %+v, reached on day %d", pr.Phases, pr.Reached)
	}
	if len(pr.Bands) != pr.Reached+max(HeldFor, HeldProjection-pr.Reached)+1 {
		t.Errorf("%d days", len(pr.Bands))
	}
	for _, b := range pr.Bands[pr.Reached:] {
		// The water that comes back over the first weeks.
		if off := float64(b.Weight - pr.Goal); off < -0.1 || off > 0.8 {
			t.Errorf("day %d: held at %v, the goal is %v", b.Day, b.Weight, pr.Goal)
		}
	}
	last := pr.Bands[len(pr.Bands)-1]
	if pr.Final.Value != last.Weight || pr.Final.Low != last.Low || pr.Final.High != last.High {
		t.Errorf("final %v, the last day %+v", pr.Final, last)
	}
	lostFat := p.Intake.Weight*unit.Kilogram(p.Body.Fat.Fat.Value)/100 - pr.FinalFat.Value
	if share := float64(lostFat) / float64(p.Intake.Weight-last.Weight); share < 0.6 || share > 0.9 {
		t.Errorf("fat is %v of the loss", share) // 1 - 10.4 / (10.4 + 26), Forbes: about 0.71
	}
	if len(pr.Settles.Steps) != 0 || pr.Short {
		t.Errorf("reached, and still settles at %v", pr.Settles.Value)
	}
}

// The line of the static rule is straight and stops at the goal: by hand, 3500
// kcal a pound.
func TestStaticLine(t *testing.T) {
	p := planOf(t, func(in *Intake) { in.Goal = energy.Goal{Kind: energy.Lose, Weight: 68, Energy: 1804} })
	perDay := float64(p.Goal.Change) * unit.KilogramPerPound / 3500
	if got, want := float64(p.Projection.Static(10)), 72.6+10*perDay; math.Abs(got-want) > 1e-9 {
		t.Errorf("day 10: %v, want %v", got, want)
	}
	if got := p.Projection.Static(5000); got != 68 {
		t.Errorf("far away: %v", got)
	}
	held := planOf(t, func(in *Intake) { in.Goal = energy.Goal{Kind: energy.Maintain, Weight: 60} })
	if got := held.Projection.Static(100); got != 72.6 {
		t.Errorf("held: %v", got)
	}
	if pr := held.Projection; pr.Goal != 0 || pr.Short || pr.Promise.Day != 0 || len(pr.Phases) != 1 || len(pr.Bands) != HeldProjection+1 {
		t.Errorf("held: goal %v, short %v, promise %+v, %d days", pr.Goal, pr.Short, pr.Promise, len(pr.Bands)-1)
	}
	open := planOf(t, func(in *Intake) { in.Goal = energy.Goal{Kind: energy.Lose} })
	if pr := open.Projection; len(pr.Bands) != OpenProjection+1 || pr.Promise.Day != OpenProjection || pr.Promise.Promised >= pr.Promise.Expected.Value {
		t.Errorf("without a goal weight: %d days, promise %+v", len(pr.Bands)-1, pr.Promise)
	}
}

func TestWeekly(t *testing.T) {
	p := planOf(t, func(*Intake) {})
	weeks, bands := p.Projection.Weekly(), p.Projection.Bands
	for i, w := range weeks[:len(weeks)-1] {
		if w != bands[7*i] {
			t.Errorf("row %d is day %d", i, w.Day)
		}
	}
	if last := weeks[len(weeks)-1]; last != bands[len(bands)-1] || last.Day == weeks[len(weeks)-2].Day {
		t.Errorf("last row is day %d of %d", last.Day, len(bands)-1)
	}
}

// A goal ten years away is drawn whole.
func TestProjectionOfTenYears(t *testing.T) {
	p := planOf(t, func(in *Intake) { in.Goal.By = in.Date.AddDays(LongestGoal) })
	if p.Projection.Reached != LongestGoal || len(p.Projection.Bands) != LongestGoal+HeldFor+1 {
		t.Errorf("reached on day %d of %d", p.Projection.Reached, len(p.Projection.Bands)-1)
	}
	if off := math.Abs(float64(p.Projection.Bands[LongestGoal].Weight - 66)); off > 0.001 {
		t.Errorf("off by %v kg", off)
	}
}

// Half of the courses are not either side of a line that is drawn low in a wide
// class: that is said, and where they are.
func TestASkewedClassIsSaid(t *testing.T) {
	for category, told := range map[energy.Category]bool{
		energy.Inactive: false, energy.LowActive: false, energy.Active: false, energy.VeryActive: true,
	} {
		p := planOf(t, func(in *Intake) {
			in.Activity = energy.Activity{Category: category}
			in.Goal = energy.Goal{Kind: energy.Maintain}
		})
		if got := len(p.Projection.Notes) == 1; got != told {
			t.Errorf("%s: notes %q", category, p.Projection.Notes)
		}
		step, _ := p.Projection.Final.Last()
		if told && !strings.HasSuffix(step.Note, p.Projection.Notes[0]) {
			t.Errorf("%s: the step says %q", category, step.Note)
		}
	}
}

// A course to less fat than a body needs says so. The least is that of McArdle,
// Katch and Katch: 3 % for men, 12 % for women (from memory).
func TestACourseToTooLittleFatSaysSo(t *testing.T) {
	for _, c := range []struct {
		name  string
		sex   energy.Sex
		fat   unit.Percent
		loses unit.Kilocalorie
		notes string
	}{
		{"runs out", energy.Male, 3, 1200, "would run out"},
		{"under 3 %", energy.Male, 4, 300, "a body needs about 3 %"},
		{"a woman under 12 %", energy.Female, 14, 250, "a body needs about 12 %"},
		{"inside", energy.Male, 20, 300, ""},
	} {
		in := exampleIntake()
		in.Client.EquationSex, in.Height, in.Weight, in.Body.Fat = c.sex, 180, 80, c.fat
		in.Activity = energy.Activity{PAL: 1.8}
		in.Goal = energy.Goal{Kind: energy.Maintain}
		p, _ := outcomeOf(in)
		in.Goal = energy.Goal{Kind: energy.Lose, Energy: p.Maintenance.Value - c.loses}
		p, o := outcomeOf(in)
		pr := project(p, courseOf(p), o)
		all := strings.Join(pr.Notes, " ")
		if !strings.Contains(all, c.notes) || (c.notes == "") != (all == "") {
			t.Errorf("%s: %.1f kg of fat at the end, notes %q", c.name, pr.FinalFat.Value, all)
		}
	}
}

package domain

import (
	"math"
	"strings"
	"testing"

	"handbreadth/domain/body"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

// A lean body loses more for its deficit than the static rule has it: by the
// Forbes curve (Hall 2007, Br J Nutr 97:1059) 6 kg of fat make 10.4/16.4 of a
// change lean, which comes to about 19 MJ a kilogram beside the rule's 32. No week
// of the course after the first may pass the guard that the rule keeps to.
func TestLeanBodiesAreKeptToTheRate(t *testing.T) {
	lean := func(change func(*Intake)) (Intake, Plan, energy.Outcome) {
		in := exampleIntake()
		in.Client.EquationSex, in.Client.Born = energy.Male, in.Date.AddDays(-25*366)
		in.Height, in.Weight, in.Body.Fat, in.Activity = 180, 75, 8, energy.Activity{PAL: 2.2}
		change(&in)
		p, o := outcomeOf(in)
		return in, p, o
	}
	weekly := func(in Intake, e unit.Kilocalorie) (fastest float64) {
		c := courseOf(func() Plan { p, _ := outcomeOf(in); return p }())
		course := body.Course(c.start, body.Phase{Days: 70, Energy: e})
		for day := 7; day+7 <= 70; day++ {
			fastest = max(fastest, float64(course[day].Weight-course[day+7].Weight))
		}
		return fastest
	}
	in, p, o := lean(func(in *Intake) { in.Goal = energy.Goal{Kind: energy.Lose, Energy: 3036} })
	if loss := weekly(in, 3036); loss < 0.9 || !o.TooFast || guardOf(in, o, p) != "rate_fast" || math.Abs(float64(o.FastestRate)+loss) > 0.01 {
		t.Errorf("losing %.2f kg a week: told %.2f, too fast %v", loss, o.FastestRate, o.TooFast)
	}
	if loss := weekly(in, o.SafeEnergy); loss > 0.75+1e-6 || loss < 0.745 {
		t.Errorf("the safe energy of %v loses %.3f kg a week, the guard is 0.75", o.SafeEnergy, loss)
	}
	in, p, o = lean(func(in *Intake) { in.Goal = energy.Goal{Kind: energy.Lose} })
	if code := guardOf(in, o, p); code != "" {
		t.Errorf("the program's own %v kcal gives %s", o.Target.Value, code)
	}
	for number := range 600 {
		in := losingIntake(number)
		if in.Validate() != nil {
			continue
		}
		_, o := outcomeOf(in)
		guard := math.Min(1, float64(in.Weight)/100)
		if loss := weekly(in, o.SafeEnergy); o.Lowers() && loss > guard+1e-3 {
			t.Fatalf("losingIntake(%d): the safe energy of %v loses %.3f kg a week, the guard is %.3f", number, o.SafeEnergy, loss, guard)
		}
	}
}

// The rate that is told is the one that is too fast: 1 kg in 6 days is 7/6 kg a
// week, whatever the static rule makes of the energy.
func TestTheFastestRateIsTold(t *testing.T) {
	in := exampleIntake()
	in.Weight = 90
	in.Goal = energy.Goal{Kind: energy.Lose, Weight: 89, By: in.Date.AddDays(6)}
	if _, o := outcomeOf(in); !o.TooFast || math.Abs(float64(o.FastestRate)+7.0/6) > 1e-9 {
		t.Errorf("told %v kg a week, too fast %v", o.FastestRate, o.TooFast)
	}
	p, err := NewPlan(in)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range p.Findings {
		if f.Code == "rate_fast" {
			if !strings.Contains(f.Text, "1.17 kg a week") {
				t.Error(f.Text)
			}
			return
		}
	}
	t.Error("no finding")
}

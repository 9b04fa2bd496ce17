package targets

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

func TestTheWishInForce(t *testing.T) {
	for _, c := range []struct {
		pairs []string
		kind  energy.GoalKind
		want  wish
		named bool
	}{
		{nil, energy.Lose, byDate, true},
		{[]string{"goal.by", ""}, energy.Lose, byDate, false},
		{[]string{"goal.by", "", "goal.per_week", "0.5 kg"}, energy.Lose, byRate, true},
		{[]string{"goal.kcal_per_day", "1900"}, energy.Lose, byEnergy, true},
		{[]string{"goal.kcal_per_day", "1900"}, energy.Maintain, byEnergy, true},
		{nil, energy.Maintain, byEnergy, false},
	} {
		form := with(c.pairs...)
		got, named := wishOf(func(f draft.Field) string { return form[f] }, c.kind)
		if got != c.want || named != c.named {
			t.Errorf("%v: %v %v", c.pairs, got, named)
		}
	}
}

// Saying a goal in another way keeps the course: the target moves by no more than
// the rounding of what is typed.
func TestTurningKeepsTheCourse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		style := unit.Style{System: rapid.SampledFrom([]unit.System{unit.Metric, unit.USCustomary, unit.UKCustomary}).Draw(t, "system")}
		s := draft.NewSession(with("goal.by", unit.Date{Year: 2026, Month: 3, Day: 2}.AddDays(rapid.IntRange(120, 400).Draw(t, "days")).String()), style)
		before, planned := s.Plan()
		if !planned || before.Goal == nil {
			t.Skip("referred")
		}
		to := rapid.SampledFrom([]wish{byRate, byEnergy}).Draw(t, "to")
		s.SetAll(newMemory().turn(byDate, to, s.Get, &before, style))
		after, planned := s.Plan()
		if !planned || after.Goal == nil {
			t.Fatalf("no plan after turning: %v", s.Reading().Problems)
		}
		if got, _ := wishOf(s.Get, energy.Lose); got != to {
			t.Fatalf("the form says it by %v", got)
		}
		// A twentieth of a kilogram a week is rounded by half of it at most: 0.025
		// x 7716 / 7 = 28 kcal by the static rule, a little more by the model.
		if off := math.Abs(float64(after.Goal.Target.Value - before.Goal.Target.Value)); off > 45 {
			t.Fatalf("the target moves by %v kcal", off)
		}
	})
}

func TestTurningBackFindsWhatWasTyped(t *testing.T) {
	s := opened(answers())
	m := newMemory()
	turn := func(from, to wish) {
		p, _ := s.Plan()
		s.SetAll(m.turn(from, to, s.Get, &p, s.Style()))
	}
	turn(byDate, byRate)
	if got := s.Get(draft.GoalPerWeek); got != "0.3 kg" || s.Get(draft.GoalBy) != "" {
		t.Fatalf("a rate of %q, a date of %q", got, s.Get(draft.GoalBy))
	}
	turn(byRate, byDate)
	if got := s.Get(draft.GoalBy); got != "2026-08-31" {
		t.Errorf("the date comes back as %q", got)
	}
	turn(byDate, byRate)
	s.Set(draft.GoalPerWeek, "0.2 kg")
	turn(byRate, byDate)
	p, _ := s.Plan()
	if got := s.Get(draft.GoalBy); got == "2026-08-31" || p.Goal.ReachedOn.DaysUntil(unit.Date{Year: 2026, Month: 12, Day: 7}) != 0 {
		t.Errorf("a slower rate leads to %q, %v", got, p.Goal.ReachedOn)
	}
}

// Without a plan nothing can be worked out, and nothing that was typed is lost.
func TestTurningWithoutAPlanLosesNothing(t *testing.T) {
	s := opened(with("weight", ""))
	m := newMemory()
	s.SetAll(m.turn(byDate, byEnergy, s.Get, nil, s.Style()))
	if s.Get(draft.GoalBy) != "" {
		t.Error("two ways at once")
	}
	s.SetAll(m.turn(byEnergy, byDate, s.Get, nil, s.Style()))
	if got := s.Get(draft.GoalBy); got != "2026-08-31" {
		t.Errorf("the date is %q", got)
	}
}

func TestWhatIsWrittenCanBeRead(t *testing.T) {
	for _, system := range []unit.System{unit.Metric, unit.USCustomary, unit.UKCustomary} {
		style := unit.Style{System: system}
		for _, rate := range []unit.KilogramPerWeek{-0.1, 0.25, -0.5, 1, 1.9} {
			text := rateText(rate, style)
			read, err := unit.ParseRateIn("goal.per_week", text, system)
			if err != nil || math.Abs(float64(read)-math.Abs(float64(rate))) > 0.026 {
				t.Errorf("%v is written %q and read %v, %v", rate, text, read, err)
			}
		}
		if rateText(0.01, style) != "" || rateText(3, style) != "" {
			t.Error("a rate that is not accepted is written")
		}
	}
}

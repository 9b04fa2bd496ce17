package chart

import (
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"handbreadth/domain"
	"handbreadth/domain/body"
	"handbreadth/domain/energy"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// straight is an invented course that loses a kilogram in ten days, with a range
// of a kilogram either side, and a static rule that loses twice as fast.
func straight(days int) Course {
	c := Course{Start: unit.Date{Year: 2026, Month: time.March, Day: 2}, Goal: 70}
	for day := range days + 1 {
		w := 80 - unit.Kilogram(day)/10
		c.Bands = append(c.Bands, body.Band{Day: day, Weight: w, Low: w - 1, High: w + 1})
	}
	c.Static = func(day int) unit.Kilogram { return max(70, 80-unit.Kilogram(day)/5) }
	return c
}

func TestSayReadsOneDay(t *testing.T) {
	c := straight(100)
	for _, w := range []struct {
		day  int
		want Words
	}{
		{0, Words{"2 March 2026", "at the start", "80 kg", "79 to 81 kg", "80 kg"}},
		{7, Words{"9 March 2026", "after 1 week", "79.3 kg", "78.3 to 80.3 kg", "78.6 kg"}},
		{10, Words{"12 March 2026", "in week 2", "79 kg", "78 to 80 kg", "78 kg"}},
		{70, Words{"11 May 2026", "after 10 weeks", "73 kg", "72 to 74 kg", "70 kg"}},
		{900, Words{"10 June 2026", "in week 15", "70 kg", "69 to 71 kg", "70 kg"}},
		{-5, Words{"2 March 2026", "at the start", "80 kg", "79 to 81 kg", "80 kg"}},
	} {
		if got := c.Say(w.day, unit.Style{}); got != w.want {
			t.Errorf("day %d: %+v, want %+v", w.day, got, w.want)
		}
	}
	c.Static = nil
	if got := c.Say(7, unit.Style{}).Static; got != "" {
		t.Errorf("nothing to compare with says %q", got)
	}
}

func TestRangesNameTheUnitOnce(t *testing.T) {
	for _, c := range []struct {
		system unit.System
		want   string
	}{
		{unit.Metric, "63.5 to 76.2 kg"},
		{unit.USCustomary, "140 to 168 lb"},
		{unit.UKCustomary, "10 st to 12 st"},
	} {
		if got := between(63.5029318, 76.2035182, unit.Style{System: c.system}); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	if got := between(70, 70, unit.Style{}); got != "70 kg" {
		t.Errorf("no range says %q", got)
	}
}

// The rule loses 10 kg at a kilogram in five days: 50 days, by hand.
func TestStaticRuleEndsAtTheGoal(t *testing.T) {
	if day, reaches := straight(100).staticEnd(); day != 50 || !reaches {
		t.Errorf("day %d, %v", day, reaches)
	}
	if day, reaches := straight(40).staticEnd(); day != 40 || reaches {
		t.Errorf("too short a course: day %d, %v", day, reaches)
	}
}

func TestBetweenTwoDaysIsBetweenTheirWeights(t *testing.T) {
	c := straight(20)
	if b := c.at(4.5); !near(float64(b.Weight), 79.55) || !near(float64(b.Low), 78.55) || !near(float64(b.High), 80.55) {
		t.Errorf("%+v", b)
	}
	if c.at(-3) != c.Bands[0] || c.at(99) != c.Bands[20] {
		t.Error("outside of the course it is not held at its ends")
	}
}

func near(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }

func TestTableListsWhatMatters(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		last := rapid.IntRange(1, 830).Draw(t, "last")
		c := straight(last)
		c.Reached = rapid.IntRange(0, last).Draw(t, "reached")
		days := c.tableDays()
		for _, must := range []int{0, c.Reached, last} {
			if !slices.Contains(days, must) {
				t.Fatalf("day %d is missing in %v", must, days)
			}
		}
		if !slices.IsSorted(days) || len(slices.Compact(slices.Clone(days))) != len(days) || len(days) > 32 {
			t.Fatalf("%d days: %v", len(days), days)
		}
	})
}

func TestCourseOfAPlan(t *testing.T) {
	for name, want := range map[string]struct {
		phases  []string
		static  bool
		reached bool
	}{
		"lose": {[]string{"Lose", "Hold"}, true, true},
		"gain": {[]string{"Gain", "Hold"}, true, true},
		"hold": {[]string{"Hold"}, false, false},
		"open": {[]string{"Lose"}, true, false},
		"far":  {[]string{"Lose"}, true, false},
	} {
		p, c := planned(t, goals()[name], unit.Style{})
		var phases []string
		for _, phase := range c.Phases {
			phases = append(phases, phase.Words[len(phase.Words)-1])
		}
		if !slices.Equal(phases, want.phases) || (c.Static != nil) != want.static || (c.Reached > 0) != want.reached {
			t.Errorf("%s: phases %v, static %v, reached %d", name, phases, c.Static != nil, c.Reached)
		}
		if end := c.Phases[len(c.Phases)-1].To; end != c.last() || len(c.Bands) != len(p.Projection.Bands) {
			t.Errorf("%s: the phases end on day %d of %d", name, end, c.last())
		}
	}
}

func TestReferralHasNoCourse(t *testing.T) {
	in := intake()
	in.Screening[screen.Type1Diabetes] = screen.Yes
	p, err := domain.NewPlan(in)
	if err != nil {
		t.Fatal(err)
	}
	if _, known := Of(p, unit.Style{}); known {
		t.Error("a referred plan has a course")
	}
}

// An energy over maintenance leads away from a lower weight: no line of the rule
// to it is drawn.
func TestNoPromiseTheWrongWay(t *testing.T) {
	in := intake()
	in.Goal = energy.Goal{Kind: energy.Lose, Weight: 70, Energy: 2700}
	p, err := domain.NewPlan(in)
	if err != nil {
		t.Fatal(err)
	}
	if c, known := Of(p, unit.Style{}); known && c.Static != nil {
		t.Errorf("the rule promises %v on day 50", c.Static(50))
	}
}

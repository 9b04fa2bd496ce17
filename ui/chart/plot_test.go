package chart

import (
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

// letters measures without fonts: seven units a letter, a line of sixteen.
func letters(text string) extent { return extent{float32(7 * len(text)), 16} }

func anyCourse(t *rapid.T, style unit.Style) Course {
	in := intake()
	in.Weight = unit.Kilogram(rapid.Float64Range(70, 150).Draw(t, "weight"))
	in.Activity = rapid.SampledFrom([]energy.Activity{{Category: energy.Inactive}, {Category: energy.Active}, {PAL: 1.7}}).Draw(t, "activity")
	switch rapid.SampledFrom([]string{"date", "weight", "energy", "hold", "gain"}).Draw(t, "goal") {
	case "date":
		in.Goal = energy.Goal{
			Kind: energy.Lose, Weight: in.Weight * unit.Kilogram(rapid.Float64Range(0.8, 0.99).Draw(t, "share")),
			By: in.Date.AddDays(rapid.IntRange(60, 800).Draw(t, "days")),
		}
	case "weight":
		in.Goal = energy.Goal{Kind: energy.Lose, Weight: in.Weight * 0.9}
	case "energy":
		in.Goal = energy.Goal{Kind: energy.Lose, Energy: unit.Kilocalorie(rapid.IntRange(1500, 2600).Draw(t, "kcal"))}
	case "hold":
		in.Goal = energy.Goal{Kind: energy.Maintain}
	case "gain":
		in.Goal = energy.Goal{Kind: energy.Gain, Weight: in.Weight + 5, By: in.Date.AddDays(rapid.IntRange(120, 700).Draw(t, "days"))}
	}
	p, err := domain.NewPlan(in)
	if err != nil {
		t.Skip("no plan")
	}
	c, known := Of(p, style)
	if !known {
		t.Skip("referred")
	}
	return c
}

// Whatever the course, the units and the size: every word lies in the chart,
// names lie in the area and never on one another, and the labels of an axis keep
// apart.
func TestEverythingHasItsPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		style := unit.Style{System: rapid.SampledFrom(systems).Draw(t, "system")}
		c := anyCourse(t, style)
		size := extent{rapid.Float32Range(320, 1500).Draw(t, "width"), rapid.Float32Range(230, 340).Draw(t, "height")}
		p := layOut(c, style, size, letters)
		whole := box{-0.5, -0.5, size.W + 1, size.H + 1}
		for _, l := range p.labels {
			if !holds(whole, l.box) {
				t.Fatalf("%q at %v leaves the chart of %v", l.text, l.box, size)
			}
		}
		for i, n := range p.names {
			if !holds(box{p.area.X - 0.5, p.area.Y - 0.5, p.area.W + 1, p.area.H + 1}, n.box) {
				t.Fatalf("%q at %v leaves the area %v", n.text, n.box, p.area)
			}
			for _, other := range p.names[:i] {
				if n.overlaps(other.box) && size.W > 480 {
					t.Fatalf("%q lies on %q", n.text, other.text)
				}
			}
		}
		for i, l := range p.labels {
			for _, other := range p.labels[:i] {
				if l.overlaps(other.box) {
					t.Fatalf("%q at %v lies on %q at %v", l.text, l.box, other.text, other.box)
				}
			}
		}
		for day, b := range c.Bands {
			for _, w := range []unit.Kilogram{b.Low, b.Weight, b.High} {
				if at := p.on(day, w); at.Y < p.area.Y || at.Y > p.area.bottom() || at.X < p.area.X-0.5 || at.X > p.area.right()+0.5 {
					t.Fatalf("day %d, %v lies at %v, outside of %v", day, w, at, p.area)
				}
			}
		}
	})
}

func holds(outer, inner box) bool {
	return inner.X >= outer.X && inner.Y >= outer.Y && inner.right() <= outer.right() && inner.bottom() <= outer.bottom()
}

func texts(p plot) map[string]bool {
	all := map[string]bool{}
	for _, l := range append(append([]label(nil), p.labels...), p.names...) {
		all[l.text] = true
	}
	return all
}

// Nothing needs a legend: what each line is stands at the line.
func TestEveryLineIsNamed(t *testing.T) {
	c := straight(100)
	c.Reached = 100
	c.Phases = []Phase{{0, 100, []string{"Lose, eating 1800 kcal a day", "Lose"}}}
	said := texts(layOut(c, unit.Style{}, extent{600, 300}, letters))
	for _, want := range []string{
		"Lose, eating 1800 kcal a day", "goal 70 kg", "static rule: 21 April", rangeName,
		"expected 70 kg", "69 kg", "71 kg", "75", "80 kg", "March", "April", "May",
	} {
		if want != "March" && !said[want] {
			t.Errorf("%q is not said: %v", want, said)
		}
	}
}

func TestPhasesSayLessWhereThereIsLessRoom(t *testing.T) {
	c := straight(200)
	c.Phases = []Phase{{0, 180, []string{"Lose, eating 1800 kcal a day", "Lose"}}, {180, 200, []string{"Hold, eating 2100 kcal a day", "Hold"}}}
	said := texts(layOut(c, unit.Style{}, extent{500, 300}, letters))
	if said["Hold, eating 2100 kcal a day"] || !said["Hold"] {
		t.Errorf("%v", said)
	}
}

func TestGoalAndPhaseAreMarkedWhereTheyAre(t *testing.T) {
	c := straight(100)
	c.Reached = 60
	p := layOut(c, unit.Style{}, extent{600, 300}, letters)
	if y := p.goal[0].a.Y; y != p.kilos.at(70) || p.goal[0].b.Y != y {
		t.Errorf("the goal lies at %v", p.goal)
	}
	if x := p.phase[0].a.X; x != p.days.at(60) || p.phase[0].b.Y != p.area.bottom() {
		t.Errorf("the change of phase lies at %v", p.phase)
	}
	c.Goal, c.Reached = 0, 0
	if p = layOut(c, unit.Style{}, extent{600, 300}, letters); len(p.goal)+len(p.phase) != 0 {
		t.Error("a mark without a goal")
	}
}

func TestHoldingAWeightIsNoStorm(t *testing.T) {
	low, high := padded(69.9, 70.1)
	if high-low < leastSpan {
		t.Errorf("drawn from %v to %v", low, high)
	}
}

func TestTheDayOfAPlaceIsInTheCourse(t *testing.T) {
	d := &drawing{chart: &Chart{course: straight(100)}}
	d.plot = layOut(d.chart.course, unit.Style{}, extent{600, 300}, letters)
	for _, c := range []struct {
		x    float32
		want int
	}{{-10, 0}, {d.plot.area.X, 0}, {d.plot.area.right(), 100}, {5000, 100}, {d.plot.days.at(42), 42}} {
		if got := d.dayAt(c.x); got != c.want {
			t.Errorf("at %v: day %d, want %d", c.x, got, c.want)
		}
	}
}

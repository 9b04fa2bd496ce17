package chart

import (
	"sort"

	"handbreadth/domain"
	"handbreadth/domain/body"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

// Course is what a chart shows.
type Course struct {
	Start unit.Date // day 0
	// Bands is the course day by day, day 0 first.
	Bands []body.Band
	// Static is the weight that the static rule promises for a day; nil where
	// there is nothing to compare with.
	Static func(day int) unit.Kilogram
	Goal   unit.Kilogram // 0: none named
	// Reached is the day on which the goal is reached and held from then on; 0
	// where the course has one phase.
	Reached int
	Phases  []Phase
}

// Phase is a span of the course with one energy.
type Phase struct {
	From, To int // days
	// Words say what happens in it, the fullest first; what fits is shown.
	Words []string
}

// Of returns the course of a plan, and false where the plan has none: where a
// referral takes its place.
func Of(p domain.Plan, style unit.Style) (Course, bool) {
	pr := p.Projection
	if pr == nil || len(pr.Bands) == 0 {
		return Course{}, false
	}
	c := Course{Start: p.Intake.Date, Bands: pr.Bands, Goal: pr.Goal, Reached: pr.Reached}
	if p.Intake.Goal.Kind == energy.Maintain {
		c.Goal = 0
	}
	if p.Goal.Lowers() || p.Goal.Raises() {
		toGoal := p.Intake.Goal.Weight - p.Intake.Weight
		if c.Goal == 0 || (toGoal < 0) == p.Goal.Lowers() {
			c.Static = pr.Static
		}
	}
	verb := map[bool]string{true: "Lose", false: "Gain"}[p.Goal.Lowers()]
	if !p.Goal.Lowers() && !p.Goal.Raises() {
		verb = "Hold"
	}
	from := 0
	for _, phase := range pr.Phases {
		c.Phases = append(c.Phases, Phase{From: from, To: from + phase.Days, Words: phaseWords(verb, phase.Energy, style)})
		from, verb = from+phase.Days, "Hold"
	}
	return c, true
}

func phaseWords(verb string, e unit.Kilocalorie, style unit.Style) []string {
	return []string{verb + ", eating " + style.EnergyPerDay(e), verb + ", " + style.Energy(e), verb}
}

// last is the last day of the course.
func (c Course) last() int { return len(c.Bands) - 1 }

// end is the day that matters most: when the goal is reached, else the last.
func (c Course) end() int {
	if c.Reached > 0 {
		return c.Reached
	}
	return c.last()
}

// at returns the band at a moment between two days.
func (c Course) at(day float64) body.Band {
	last := c.last()
	if last <= 0 || day <= 0 {
		return c.Bands[0]
	}
	if day >= float64(last) {
		return c.Bands[last]
	}
	i := int(day)
	part := unit.Kilogram(day - float64(i))
	a, b := c.Bands[i], c.Bands[i+1]
	return body.Band{
		Day: i, Weight: a.Weight + part*(b.Weight-a.Weight),
		Low: a.Low + part*(b.Low-a.Low), High: a.High + part*(b.High-a.High),
	}
}

// staticEnd is the day on which the static rule reaches the goal, or the last.
func (c Course) staticEnd() (day int, reaches bool) {
	if c.Goal == 0 || c.Static(c.last()) != c.Goal {
		return c.last(), false
	}
	return sort.Search(c.last(), func(d int) bool { return c.Static(d) == c.Goal }), true
}

// span returns the least and the greatest weight that are drawn.
func (c Course) span() (low, high unit.Kilogram) {
	low, high = c.Bands[0].Low, c.Bands[0].High
	take := func(w unit.Kilogram) { low, high = min(low, w), max(high, w) }
	for _, b := range c.Bands {
		take(b.Low)
		take(b.High)
	}
	if c.Goal != 0 {
		take(c.Goal)
	}
	if c.Static != nil {
		take(c.Static(c.last()))
	}
	return low, high
}

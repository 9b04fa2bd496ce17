package chart

import (
	"slices"
	"strconv"

	"handbreadth/domain/unit"
)

// Words are what the chart says of one day.
type Words struct {
	Date     string // "31 August 2026"
	After    string // "after 26 weeks", "in week 27"
	Expected string // "70 kg"
	Range    string // "67.2 to 72.9 kg"
	Static   string // "66.5 kg"; "" where there is nothing to compare with
}

// Summary returns what the course says of the day that matters most: when the goal
// is reached, else the last.
func (c Course) Summary(style unit.Style) Words { return c.Say(c.end(), style) }

// Say returns what the course says of a day.
func (c Course) Say(day int, style unit.Style) Words {
	day = min(max(day, 0), c.last())
	b := c.Bands[day]
	w := Words{
		Date: c.Start.AddDays(day).Long(), After: after(day),
		Expected: style.Weight(b.Weight), Range: between(b.Low, b.High, style),
	}
	if c.Static != nil {
		w.Static = style.Weight(c.Static(day))
	}
	return w
}

// after tells days in the way that people count them: "after 26 weeks", or "in
// week 27" between two.
func after(day int) string {
	switch {
	case day == 0:
		return "at the start"
	case day == week:
		return "after 1 week"
	case day%week == 0:
		return "after " + strconv.Itoa(day/week) + " weeks"
	}
	return "in week " + strconv.Itoa(day/week+1)
}

// between tells a range of weight, its unit once where that reads well.
func between(low, high unit.Kilogram, style unit.Style) string {
	a, b := style.Weight(low), style.Weight(high)
	if a == b {
		return a
	}
	if style.System != unit.UKCustomary {
		const unitLength = len(" kg")
		a = a[:len(a)-unitLength]
	}
	return a + " to " + b
}

func dayAndMonth(d unit.Date) string { return strconv.Itoa(d.Day) + " " + d.Month.String() }

// tableDays are the days that the table lists: every so many weeks, so that it
// stays a page long, with the day on which the goal is reached and the last.
func (c Course) tableDays() []int {
	const most = 27
	step := week
	for _, weeks := range []int{1, 2, 4} {
		step = weeks * week
		if c.last()/step < most {
			break
		}
	}
	days := []int{c.last()}
	for day := 0; day < c.last(); day += step {
		days = append(days, day)
	}
	if c.Reached > 0 {
		days = append(days, c.Reached)
	}
	slices.Sort(days)
	return slices.Compact(days)
}

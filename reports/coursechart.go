package reports

import (
	"fmt"

	"handbreadth/domain"
	dynamics "handbreadth/domain/body"
	"handbreadth/domain/unit"
)

// courseChart draws the expected course of the weight: a line, the range as a
// hatched band, the static rule as a broken line, and where the goal is reached
// and held from then on.
type courseChart struct {
	writer
	course *domain.Projection
}

const (
	plotHigh     = 46.0
	legendSample = 9.0
	phaseHigh    = 7.0 // over the plot: the energy of each phase
	axisHigh     = 13.0
	mostPoints   = 120 // of a line
)

func (k courseChart) height(w float64) float64 {
	return k.legendHigh(w) + phaseHigh + plotHigh + axisHigh
}

func (k courseChart) draw(c canvas) {
	k.legend(c)
	top := c.y + k.legendHigh(c.w) + phaseHigh
	marks := weightMarks(k.style.System, k.lowest(), k.highest())
	labels := make([]string, len(marks))
	wide := 0.0
	for i, m := range marks {
		labels[i] = k.style.Weight(m)
		wide = max(wide, width(regular, sizeBody, labels[i]))
	}
	const between, margin = 2.5, 3 // to the labels; for the last week's number
	left, right, foot := c.x+wide+between, c.x+c.w-margin, top+plotHigh
	x := scale{0, float64(k.last().Day), left, right}
	y := scale{float64(marks[0]), float64(marks[len(marks)-1]), foot, top}
	for i, m := range marks {
		at := y.at(float64(m))
		c.line(left, at, right, at, 0.15, hairline)
		c.textRight(regular, sizeBody, ink, left-between, at+middle(sizeBody), labels[i])
	}
	k.weeks(c, x, foot)
	k.curves(c, x, y)
	k.phases(c, x, top, foot)
	c.line(left, foot, right, foot, 0.4, ink)
	c.line(left, top, left, foot, 0.4, ink)
}

// middle is how far under the middle of a line its baseline lies.
func middle(size float64) float64 {
	const halfCapital = 0.36 // of the type size
	return halfCapital * size / pointsPerMM
}

func (k courseChart) last() dynamics.Band { return k.course.Bands[len(k.course.Bands)-1] }

// lowest and highest span everything that is drawn.
func (k courseChart) lowest() unit.Kilogram {
	low := k.course.Bands[0].Weight
	for _, b := range k.course.Bands {
		low = min(low, b.Low)
	}
	return min(low, k.course.Static(k.ruleUntil()))
}

func (k courseChart) highest() unit.Kilogram {
	high := k.course.Bands[0].Weight
	for _, b := range k.course.Bands {
		high = max(high, b.High)
	}
	return max(high, k.course.Static(k.ruleUntil()))
}

// ruleUntil is the day to which the static rule is drawn: where it comes to the
// goal, or the end.
func (k courseChart) ruleUntil() int {
	for _, b := range k.course.Bands {
		if k.course.Goal != 0 && k.course.Static(b.Day) == k.course.Goal {
			return b.Day
		}
	}
	return k.last().Day
}

func (k courseChart) curves(c canvas, x, y scale) {
	bands := thinned(k.course.Bands, k.course.Reached)
	line, upper, lower := make([]point, len(bands)), make([]point, len(bands)), make([]point, len(bands))
	for i, b := range bands {
		at := x.at(float64(b.Day))
		line[i] = point{at, y.at(float64(b.Weight))}
		upper[i] = point{at, y.at(float64(b.High))}
		lower[len(bands)-1-i] = point{at, y.at(float64(b.Low))}
	}
	c.shaded(append(upper, lower...), tint(k.hue, bandTint), tint(k.hue, bandHatch))
	until := k.ruleUntil()
	c.polyline([]point{
		{x.at(0), y.at(float64(k.course.Static(0)))}, {x.at(float64(until)), y.at(float64(k.course.Static(until)))},
	}, ruleWeight, ink, ruleDash...)
	c.polyline(line, lineWeight, k.hue)
}

// How the three curves are told apart without colour.
const (
	bandTint   = 0.12
	bandHatch  = 0.45
	lineWeight = 1.0 // mm
	ruleWeight = 0.5 // mm
)

var ruleDash = []float64{2.2, 1.6}

// thinned keeps enough days of a course to draw it: evenly spaced ones, the day
// on which the goal is reached and the last.
func thinned(bands []dynamics.Band, reached int) []dynamics.Band {
	every := max(1, len(bands)/mostPoints)
	var kept []dynamics.Band
	for i, b := range bands {
		if i%every == 0 || b.Day == reached || i == len(bands)-1 {
			kept = append(kept, b)
		}
	}
	return kept
}

// weeks marks the weeks under the plot.
func (k courseChart) weeks(c canvas, x scale, foot float64) {
	const tick = 1.2
	for _, week := range weekMarks(k.last().Day) {
		at := x.at(float64(week * daysInWeek))
		c.line(at, foot, at, foot+tick, 0.3, ink)
		label := fmt.Sprint(week)
		start := min(at-width(regular, sizeBody, label)/2, c.x+c.w-width(regular, sizeBody, label))
		c.text(regular, sizeBody, ink, start, foot+tick+ascent(sizeBody), label)
	}
	title := wordsWeeks + k.date
	c.textRight(regular, sizeBody, muted, x.to, foot+tick+lineHeight(sizeBody)+ascent(sizeBody), title)
}

// phases writes the energy of each phase over the plot and marks the change.
func (k courseChart) phases(c canvas, x scale, top, foot float64) {
	const gap = 2.0
	from := 0
	for i, p := range k.course.Phases {
		left, right := x.at(float64(from)), x.at(float64(from+p.Days))
		labels := []string{k.style.EnergyPerDay(p.Energy), k.style.Energy(p.Energy)}
		if i > 0 {
			c.line(left, top-phaseHigh+1, left, foot, 0.35, ink, 0.2, 1.1)
			left += gap
			labels = append([]string{wordsChartHold + k.style.EnergyPerDay(p.Energy)}, labels...)
		}
		c.text(regular, sizeBody, ink, left, top-phaseHigh+1+ascent(sizeBody), firstFitting(right-left, labels))
		from += p.Days
	}
}

// firstFitting returns the first of the labels that fits a width, and nothing
// where none does: the words under the chart tell it too.
func firstFitting(wide float64, labels []string) string {
	for _, label := range labels {
		if width(regular, sizeBody, label) <= wide {
			return label
		}
	}
	return ""
}

// legendEntry is a name and how its curve is drawn from x on, around a height.
type legendEntry struct {
	name   string
	sample func(c canvas, x, middle float64)
}

const (
	sampleBetween = 2.0 // a sample and its name
	entryBetween  = 7.0
)

func (e legendEntry) wide() float64 {
	return legendSample + sampleBetween + width(regular, sizeBody, e.name) + entryBetween
}

func (k courseChart) entries() []legendEntry {
	return []legendEntry{
		{wordsLegendLine, func(c canvas, x, middle float64) {
			c.polyline([]point{{x, middle}, {x + legendSample, middle}}, lineWeight, k.hue)
		}},
		{wordsLegendBand, func(c canvas, x, middle float64) {
			const half = 1.8
			c.shaded([]point{{x, middle - half}, {x + legendSample, middle - half}, {x + legendSample, middle + half}, {x, middle + half}},
				tint(k.hue, bandTint), tint(k.hue, bandHatch))
		}},
		{wordsLegendRule, func(c canvas, x, middle float64) {
			c.polyline([]point{{x, middle}, {x + legendSample, middle}}, ruleWeight, ink, ruleDash...)
		}},
	}
}

// legendPlaces are where the entries stand: side by side as far as they fit.
func (k courseChart) legendPlaces(w float64) []point {
	var places []point
	at := point{}
	for _, e := range k.entries() {
		if at.x > 0 && at.x+e.wide()-entryBetween > w {
			at = point{0, at.y + lineHeight(sizeBody)}
		}
		places = append(places, at)
		at.x += e.wide()
	}
	return places
}

func (k courseChart) legendHigh(w float64) float64 {
	const after = 2.0
	places := k.legendPlaces(w)
	return places[len(places)-1].y + lineHeight(sizeBody) + after
}

// legend shows how the curves are drawn.
func (k courseChart) legend(c canvas) {
	entries := k.entries()
	for i, at := range k.legendPlaces(c.w) {
		entries[i].sample(c, c.x+at.x, c.y+at.y+lineHeight(sizeBody)/2)
		c.text(regular, sizeBody, ink, c.x+at.x+legendSample+sampleBetween, c.y+at.y+ascent(sizeBody), entries[i].name)
	}
}

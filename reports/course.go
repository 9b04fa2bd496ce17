package reports

import (
	"slices"

	dynamics "handbreadth/domain/body"
	"handbreadth/domain/derive"
)

// moving reports whether there is a course to show: the target changes the
// weight, and the model knows the client.
func (w writer) moving() bool {
	return w.plan.Projection != nil && (w.plan.Goal.Lowers() || w.plan.Goal.Raises())
}

// courseBlocks show where the target leads: in words beside the drawing, and as
// a short table under them, all on one page.
func (w writer) courseBlocks() []block {
	arrival := w.arrival()
	words := w.reasonBlock(reason{
		label: "Where this may lead", value: w.style.Weight(arrival.Weight),
		words: w.courseWords(), steps: w.courseSteps(),
	})
	chart := courseChart{writer: w, course: w.plan.Projection}
	return []block{stack{
		gap(2),
		columns{left: stack{words}, right: stack{chart}},
		gap(2),
		courseTable{writer: w, rows: w.courseRows()},
		gap(2),
	}}
}

// arrival is the day of the course that matters most: that on which the goal is
// reached, or the last.
func (w writer) arrival() dynamics.Band {
	p := w.plan.Projection
	if p.Reached > 0 && p.Reached < len(p.Bands) {
		return p.Bands[p.Reached]
	}
	return p.Bands[len(p.Bands)-1]
}

func (w writer) dateOf(day int) string { return w.plan.Intake.Date.AddDays(day).Long() }

func (w writer) courseWords() string {
	p := w.plan.Projection
	words := wordsCourse
	if p.Short {
		words += " " + fill(wordsCourseShort, w.style.Weight(p.Settles.Value))
	}
	if p.Promise.Day == 0 {
		return words
	}
	words += " " + fill(wordsCourseRule, w.style.EnergyPerDay(p.Promise.Energy), w.style.Weight(p.Promise.Promised),
		w.dateOf(p.Promise.Day), w.style.Weight(p.Promise.Expected.Value))
	switch behind := p.Promise.Expected.Value - p.Promise.Promised; {
	case w.plan.Goal.Raises() && behind < 0:
		words += " " + wordsNeedsMore
	case w.plan.Goal.Lowers() && behind > 0:
		words += " " + wordsNeedsLess
	}
	return words
}

// courseSteps are the sums behind the course.
func (w writer) courseSteps() []derive.Step {
	p := w.plan.Projection
	steps := slices.Concat(p.Final.Steps, p.Promise.Expected.Steps)
	if p.Short {
		steps = append(steps, p.Settles.Steps...)
	}
	return steps
}

// holding is the energy for the time after.
func (w writer) holding() reason {
	p := w.plan.Projection
	value, name := w.style.EnergyValue(p.Holding.Value)
	words := wordsHoldingLess
	if p.Holding.Value > w.plan.Maintenance.Value {
		words = wordsHoldingMore
	}
	return reason{
		label: "To hold the new weight", value: w.style.Number(value, 0), unit: name,
		words: words, steps: p.Holding.Steps,
	}
}

// courseRow is one time of the course in words.
type courseRow struct{ when, expected, band, rule string }

// toldWeeks are the times that the table tells beside arrival and end.
var toldWeeks = []int{4, 12, 26, 52}

func (w writer) courseRows() []courseRow {
	var rows []courseRow
	for _, day := range toldDays(w.arrival().Day, len(w.plan.Projection.Bands)-1) {
		rows = append(rows, w.rowOf(day))
	}
	return rows
}

// toldDays are the days of the table: round weeks, and not so near to arrival or
// end that two rows would tell the same.
func toldDays(arrival, last int) []int {
	const apart = 5 * daysInWeek
	days := []int{arrival, last}
	for _, week := range toldWeeks {
		if day := week * daysInWeek; day <= last-apart && (day <= arrival-apart || day >= arrival+apart) {
			days = append(days, day)
		}
	}
	slices.Sort(days)
	return slices.Compact(days)
}

func (w writer) rowOf(day int) courseRow {
	p := w.plan.Projection
	b := p.Bands[day]
	when := w.style.Number(float64(day)/daysInWeek, 0) + " weeks"
	if day == p.Reached {
		when += ", your goal"
	}
	return courseRow{
		when: when, expected: w.style.Weight(b.Weight),
		band: w.style.Weight(b.Low) + " to " + w.style.Weight(b.High), rule: w.style.Weight(p.Static(day)),
	}
}

// courseTable tells the course without the drawing.
type courseTable struct {
	writer
	rows []courseRow
}

// courseColumns are where the columns begin, as parts of the width.
var courseColumns = [...]float64{0, 0.27, 0.46, 0.80}

const rowGap = 1.2 // over and under a row's rule

func (t courseTable) height(float64) float64 {
	return float64(len(t.rows)+1)*(lineHeight(sizeBody)+rowGap) + rowGap
}

func (t courseTable) draw(c canvas) {
	t.row(c, bold, t.hue, courseRow{"After", "We expect", "It may be from", "Old rule"})
	for _, r := range t.rows {
		c.y += lineHeight(sizeBody) + rowGap
		c.line(c.x, c.y-rowGap/2, c.x+c.w, c.y-rowGap/2, 0.15, hairline)
		t.row(c, regular, ink, r)
	}
}

func (t courseTable) row(c canvas, f face, hue colour, r courseRow) {
	for i, cell := range [...]string{r.when, r.expected, r.band, r.rule} {
		c.text(f, sizeBody, hue, c.x+courseColumns[i]*c.w, c.y+ascent(sizeBody), cell)
	}
}

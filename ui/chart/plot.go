package chart

import (
	"handbreadth/domain/unit"
)

// measurer returns the width and height of a label.
type measurer func(text string) extent

// label is a text with its place.
type label struct {
	text string
	box
	rank   rank
	ground ground
}

// ground is what a name in the area stands on.
type ground int

const (
	onCard ground = iota
	onBand
)

// rank says how a label is set.
type rank int

const (
	quiet  rank = iota // axes and ranges
	strong             // what the chart is about
)

// segment is a straight line.
type segment struct{ a, b point }

// plot is where everything in a chart goes.
type plot struct {
	area        box
	days, kilos axis

	grid   []segment // at the weights of the axis
	months []segment // short marks below the area
	goal   []segment // empty or one line
	phase  []segment // empty or one line, at the change of phase
	labels []label
	// names are the labels inside of the area, which stand on a ground of their
	// own.
	names []label
}

// The distances of a chart.
const (
	topRoom   float32 = 8  // above the names of the phases
	nameGap   float32 = 6  // between a line and its name
	axisGap   float32 = 8  // between the area and the labels of the axes
	monthMark float32 = 4  // length of the marks on the date axis
	namePad   float32 = 3  // ground round a name
	rowsApart float32 = 44 // least distance between two weights of the axis
)

// leastSpan is the least span of weight that is drawn, so that holding a weight
// does not look like a storm.
const leastSpan unit.Kilogram = 4

// padding is the share of the span that is left free above and below.
const padding = 0.07

// layOut gives everything its place in a chart of a size.
func layOut(c Course, style unit.Style, size extent, measure measurer) plot {
	var p plot
	line := measure("Hg").H
	low, high := padded(c.span())
	p.area = box{Y: topRoom + line + nameGap, H: 0}
	p.area.H = size.H - p.area.Y - axisGap - 2*line
	p.kilos = axis{low: float64(low), high: float64(high), from: p.area.bottom(), to: p.area.Y}
	ticks := weightTicks(low, high, max(2, int(p.area.H/rowsApart)), style)
	ends := endNames(c, style)
	left, right := float32(0), float32(0)
	for _, t := range ticks {
		left = max(left, measure(t.label).W)
	}
	for _, e := range ends {
		right = max(right, measure(e.text).W+1)
	}
	p.area.X = left + axisGap
	p.area.W = max(1, size.W-p.area.X-right-axisGap)
	p.days = axis{low: 0, high: float64(max(1, c.last())), from: p.area.X, to: p.area.right()}
	p.weightAxis(ticks, left, measure)
	p.dateAxis(c, measure)
	p.lines(c)
	p.endLabels(ends, measure)
	p.phaseLabels(c, measure)
	p.nameLines(c, style, measure)
	return p
}

func padded(low, high unit.Kilogram) (unit.Kilogram, unit.Kilogram) {
	if lack := leastSpan - (high - low); lack > 0 {
		low, high = low-lack/2, high+lack/2
	}
	free := padding * (high - low)
	return low - free, high + free
}

func (p *plot) weightAxis(ticks []tick, left float32, measure measurer) {
	for _, t := range ticks {
		y := p.kilos.at(t.at)
		p.grid = append(p.grid, segment{point{p.area.X, y}, point{p.area.right(), y}})
		e := measure(t.label)
		p.labels = append(p.labels, label{text: t.label, box: box{left - e.W, y - e.H/2, e.W, e.H}})
	}
}

func (p *plot) dateAxis(c Course, measure measurer) {
	room := func(text string) float32 { return measure(text).W }
	top := p.area.bottom()
	for _, t := range monthTicks(c.Start, c.last(), p.area.W, room) {
		x := p.days.at(t.at)
		p.months = append(p.months, segment{point{x, top}, point{x, top + monthMark}})
		e := measure(t.label)
		p.labels = append(p.labels, label{text: t.label, box: box{x - e.W/2, top + axisGap, e.W, e.H}})
		if t.below != "" {
			b := measure(t.below)
			p.labels = append(p.labels, label{text: t.below, box: box{x - b.W/2, top + axisGap + e.H, b.W, b.H}})
		}
	}
}

func (p *plot) lines(c Course) {
	if c.Goal != 0 {
		y := p.kilos.at(float64(c.Goal))
		p.goal = []segment{{point{p.area.X, y}, point{p.area.right(), y}}}
	}
	if c.Reached > 0 {
		x := p.days.at(float64(c.Reached))
		p.phase = []segment{{point{x, p.area.Y - nameGap}, point{x, p.area.bottom()}}}
	}
}

// on returns the place of a weight on a day.
func (p *plot) on(day int, w unit.Kilogram) point {
	return point{p.days.at(float64(day)), p.kilos.at(float64(w))}
}

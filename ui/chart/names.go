package chart

import (
	"handbreadth/domain/unit"
)

// endName is a name at the right end of the chart, beside what it names.
type endName struct {
	text   string
	weight unit.Kilogram
	rank   rank
}

// endNames are the names at the right end, from top to bottom: the range and
// the expected weight in it.
func endNames(c Course, style unit.Style) []endName {
	last := c.Bands[c.last()]
	names := []endName{
		{style.Weight(last.High), last.High, quiet},
		{"expected " + style.Weight(last.Weight), last.Weight, strong},
		{style.Weight(last.Low), last.Low, quiet},
	}
	return names
}

func (p *plot) endLabels(ends []endName, measure measurer) {
	middles := make([]float32, len(ends))
	height := measure("Hg").H
	for i, e := range ends {
		middles[i] = p.kilos.at(float64(e.weight))
	}
	for i, y := range spread(middles, height, p.area.Y-height/2, p.area.bottom()+height/2) {
		e := measure(ends[i].text)
		p.labels = append(p.labels, label{text: ends[i].text, box: box{p.area.right() + axisGap, y - e.H/2, e.W, e.H}, rank: ends[i].rank})
	}
}

// phaseLabels names each phase above its span, as fully as fits.
func (p *plot) phaseLabels(c Course, measure measurer) {
	for i, phase := range c.Phases {
		from, to := p.days.at(float64(phase.From)), p.days.at(float64(phase.To))
		if i > 0 {
			from += nameGap
		}
		if i == len(c.Phases)-1 {
			to = p.area.right() + axisGap
		}
		for _, words := range phase.Words {
			e := measure(words)
			if e.W > to-from-nameGap {
				continue
			}
			p.labels = append(p.labels, label{text: words, box: box{from, topRoom, e.W, e.H}, rank: strong})
			break
		}
	}
}

// rangeName is what the range is called in the chart.
const rangeName = "8 in 10 stay in here"

// nameLines names the range near the right end, then the goal and the static
// rule, each where it covers least of the lines.
func (p *plot) nameLines(c Course, style unit.Style, measure measurer) {
	p.nameRange(c, measure)
	if c.Goal != 0 {
		y := p.kilos.at(float64(c.Goal))
		p.name(c, "goal "+style.Weight(c.Goal), measure, point{p.area.X + nameGap, y}, point{p.area.right(), y}, point{p.area.X + p.area.W/2, y})
	}
	if c.Static == nil {
		return
	}
	end, reaches := c.staticEnd()
	words := "static rule"
	if reaches {
		words += ": " + dayAndMonth(c.Start.AddDays(end))
	}
	at := p.on(end, c.Static(end))
	places := []point{{at.X - measure(words).W - 2*nameGap, at.Y}, {at.X + nameGap, at.Y}}
	for _, part := range []int{3, 2, 1} {
		day := end * part / 4
		places = append(places, p.on(day, c.Static(day)))
	}
	p.name(c, words, measure, places...)
}

// nameRange writes the name of the range between the expected line and the upper
// edge where there is room, else above the edge.
func (p *plot) nameRange(c Course, measure measurer) {
	e := measure(rangeName)
	x := p.area.right() - nameGap - e.W
	from, to := c.at(p.days.value(x)), c.at(p.days.value(x+e.W))
	top := max(p.kilos.at(float64(from.High)), p.kilos.at(float64(to.High)))
	bottom := min(p.kilos.at(float64(from.Weight)), p.kilos.at(float64(to.Weight)))
	y := top + (bottom-top-e.H)/2
	if bottom-top < e.H+namePad {
		y = min(p.kilos.at(float64(from.High)), p.kilos.at(float64(to.High))) - e.H - namePad
	}
	p.setName(c, rangeName, p.inside(box{x - namePad, y, e.W + 2*namePad, e.H}))
}

// name sets a name above or below one of several places, the first of which is
// the best, where it covers least.
func (p *plot) name(c Course, words string, measure measurer, places ...point) {
	e := measure(words)
	var best box
	least := -1
	for _, at := range places {
		for _, y := range []float32{at.Y - nameGap/2 - e.H, at.Y + nameGap/2} {
			b := p.inside(box{at.X - namePad, y, e.W + 2*namePad, e.H})
			if hides := p.covers(c, b); least < 0 || hides < least {
				best, least = b, hides
			}
		}
	}
	p.setName(c, words, best)
}

// inside moves a box into the area.
func (p *plot) inside(b box) box {
	b.X = max(min(b.X, p.area.right()-b.W), p.area.X+1)
	b.Y = max(min(b.Y, p.area.bottom()-b.H), p.area.Y)
	return b
}

// covers counts how much of the lines a box would cover, and much more where it
// would cover another name.
func (p *plot) covers(c Course, b box) int {
	const step, ofAName = 4, 1000
	hidden := 0
	for _, other := range p.names {
		if b.overlaps(other.box) {
			hidden += ofAName
		}
	}
	for x := b.X; x <= b.right(); x += step {
		day := p.days.value(x)
		if p.within(b, float64(c.at(day).Weight)) {
			hidden++
		}
		if c.Static == nil || day < 0 {
			continue
		}
		if end, _ := c.staticEnd(); int(day) <= end && p.within(b, float64(c.Static(int(day)))) {
			hidden++
		}
	}
	return hidden
}

func (p *plot) within(b box, weight float64) bool {
	y := p.kilos.at(weight)
	return y > b.Y-1 && y < b.bottom()+1
}

// setName takes a name, unless it is wider than the area. One that lies wholly in
// the range stands on its tint.
func (p *plot) setName(c Course, words string, b box) {
	if b.W > p.area.W-1 {
		return
	}
	ground := onBand
	for _, x := range []float32{b.X, b.right()} {
		band := c.at(p.days.value(x))
		if p.kilos.at(float64(band.High)) > b.Y || p.kilos.at(float64(band.Low)) < b.bottom() {
			ground = onCard
		}
	}
	p.names = append(p.names, label{text: words, box: b, ground: ground})
}

package reports

import (
	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

// glance is the plan on one page: energy, macros, the measures of each meal and
// the next step. Where the meals do not fit under the figures, they get a page
// of their own and the hands are explained on the first.
func (w writer) glance() [][]block {
	top := []block{w.opening()}
	if !w.withoutNumbers {
		top = append(top, w.energy(), w.macros())
	}
	closing := w.agreed()
	used := stack(top).height(w.inner()) + closing.height(w.inner())
	for _, size := range tableSizes {
		table := w.table(size)
		if used+table.height(w.inner()) <= w.room() {
			return [][]block{append(top, table, closing)}
		}
	}
	first, second := append(top, w.measureKey()), w.tablePages()
	if closing.height(w.inner()) > w.left(first) {
		return [][]block{first, append(second, closing)}
	}
	return [][]block{append(first, closing), second}
}

func (w writer) opening() block {
	if w.withoutNumbers {
		return stack{title(PageGlance.Name(true), w.forWhom()), body(wordsOpening), gap(3)}
	}
	return title(PageGlance.Name(false), w.forWhom())
}

func (w writer) forWhom() string {
	if w.reader == "" {
		return w.date
	}
	return "For " + w.reader + ", " + w.date
}

// energy is the target in large figures with its range in plain words.
func (w writer) energy() block {
	value, name := w.style.EnergyValue(w.targets.Energy.Value)
	low, high := energyRange(w.plan)
	return stack{
		beside{
			left:     figure{label: "Energy for a day", value: w.style.Number(value, 0), unit: name, hue: w.hue},
			right:    body(fill(wordsRange, w.energyAbout(low), w.energyAbout(high))),
			leftWide: 62, between: 8,
		},
		gap(3),
	}
}

// energyRange returns the span in which the right target may lie. Where the
// target carries no range of its own, it is that of maintenance energy, moved
// by the change that was agreed.
func energyRange(p domain.Plan) (low, high unit.Kilocalorie) {
	t := p.Targets.Energy
	if t.Low < t.High {
		return t.Low, t.High
	}
	change := p.Goal.Change
	return p.Maintenance.Low + change, p.Maintenance.High + change
}

// figure is one large number with a label over it.
type figure struct {
	label, value, unit string
	hue                colour
}

func (f figure) height(float64) float64 { return lineHeight(sizeBody) + lineHeight(sizeFigure) }

func (f figure) draw(c canvas) {
	c.text(bold, sizeBody, f.hue, c.x, c.y+ascent(sizeBody), f.label)
	baseline := c.y + lineHeight(sizeBody) + ascent(sizeFigure) - 0.6
	c.text(bold, sizeFigure, ink, c.x, baseline, f.value)
	c.text(regular, sizeHeading, ink, c.x+width(bold, sizeFigure, f.value)+2, baseline, f.unit)
}

// macros is the bar of energy by macro with its legend.
func (w writer) macros() block {
	t := w.targets
	grams := func(d derive.Derived[unit.Gram]) string { return w.style.Grams(d.Value) }
	return macroBar{
		hue: w.hue,
		parts: []macroPart{
			{"Protein", grams(t.Protein), float64(t.Shares.Protein), solid},
			{"Fat", grams(t.Fat), float64(t.Shares.Fat), hatch},
			{"Carbohydrate", grams(t.Carbohydrate), float64(t.Shares.Carbohydrate), dots},
		},
		beside: [2]string{"Fibre", grams(t.Fibre)},
	}
}

type macroPart struct {
	name, amount string
	share        float64 // of the energy, in percent
	pattern      pattern
}

// macroBar shows the macros' shares of the energy by length and pattern. Fibre
// stands beside them, as it lies within carbohydrate.
type macroBar struct {
	parts  []macroPart
	beside [2]string
	hue    colour
}

const (
	barHigh    = 8.0
	swatch     = 5.0
	legendHigh = 13.0
)

func (macroBar) height(float64) float64 { return barHigh + 3.5 + legendHigh + 4 }

func (m macroBar) draw(c canvas) {
	total := 0.0
	for _, p := range m.parts {
		total += p.share
	}
	x := c.x
	for _, p := range m.parts {
		if total > 0 {
			wide := p.share / total * c.w
			c.patterned(x, c.y, wide, barHigh, p.pattern, m.hue)
			x += wide
		}
	}
	y := c.y + barHigh + 3.5
	each := c.w / float64(len(m.parts)+1)
	for i, p := range m.parts {
		x := c.x + float64(i)*each
		c.patterned(x, y+0.4, swatch, swatch, p.pattern, m.hue)
		m.entry(c, x+swatch+2.5, y, p.name, p.amount)
	}
	m.entry(c, c.x+float64(len(m.parts))*each+swatch+2.5, y, m.beside[0], m.beside[1])
}

func (macroBar) entry(c canvas, x, y float64, name, amount string) {
	c.text(regular, sizeBody, ink, x, y+ascent(sizeBody), name)
	c.text(bold, sizeHeading, ink, x, y+lineHeight(sizeBody)+ascent(sizeHeading)-0.3, amount)
}

// agreed is the next step and the next visit.
func (w writer) agreed() block {
	return stack{
		gap(6),
		beside{
			left:     toWrite{label: "My next step", text: w.nextStep, lines: 1, hue: w.hue},
			right:    toWrite{label: "My next visit", text: w.nextVisit, lines: 1, hue: w.hue},
			leftWide: 0.62 * w.inner(), between: 8,
		},
	}
}

// measureKey explains each measure with a large drawing.
func (w writer) measureKey() block {
	return stack{
		gap(2),
		heading("Your hand is the measure", w.hue),
		body(wordsHand),
		gap(2),
		keyRow{writer: w, high: 30},
		gap(2),
	}
}

// amountAbout is about how much food a count of measures is: the palm by
// weight, the others by volume.
func (w writer) amountAbout(k hand.Kind, n unit.Measure) string {
	content := w.targets.Contents[k]
	if content.Volume == 0 {
		return "about " + w.gramsAbout(unit.Gram(n)*content.Grams.Value)
	}
	return "about " + w.volumeAbout(unit.Millilitre(n)*content.Volume)
}

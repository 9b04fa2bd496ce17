package reports

import (
	"fmt"
	"math"
	"strings"

	"handbreadth/domain/derive"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

// reason is one number of the plan with its plain words, and in small type what
// other ways say and the steps that led to it.
type reason struct {
	label, value, unit string
	words              string
	aside              string
	steps              []derive.Step
}

// columnsBetween is the space between the two columns of reasons.
const columnsBetween = 8.0

// why is the page of reasons: the numbers in two columns, then the course.
func (w writer) why() []block {
	if w.withoutNumbers {
		return w.whyMeasures()
	}
	head := title(PageWhy.Name(false), wordsWhy)
	var reasons []block
	all := append(w.energyReasons(), w.foodReasons()...)
	if w.moving() {
		all = append(all, w.holding())
	}
	for _, r := range all {
		reasons = append(reasons, w.reasonBlock(r))
	}
	blocks := append([]block{head}, w.inColumns(reasons, w.room()-head.height(w.inner()))...)
	if w.moving() {
		blocks = append(blocks, w.courseBlocks()...)
	}
	return blocks
}

// inColumns lays blocks out in two columns, down the left one first. The first
// pair fills the room that is left on the page, and each further one a page.
func (w writer) inColumns(items []block, room float64) []block {
	wide := (w.inner() - columnsBetween) / 2
	var pages []block
	for len(items) > 0 {
		left, right := evenly(items, wide)
		if max(stack(left).height(wide), stack(right).height(wide)) > room {
			left, right = filled(items, wide, room)
		}
		if len(left) == 0 {
			left = items[:1] // it needs a page of its own
		}
		pages = append(pages, columns{stack(left), stack(right)})
		items, room = items[len(left)+len(right):], w.room()
	}
	return pages
}

// evenly splits blocks into two columns as even in height as can be.
func evenly(items []block, wide float64) (left, right []block) {
	best, least := 0, math.Inf(1)
	for i := range len(items) + 1 {
		if high := max(stack(items[:i]).height(wide), stack(items[i:]).height(wide)); high < least {
			best, least = i, high
		}
	}
	return items[:best], items[best:]
}

// filled takes as many blocks as fit into two columns of a height.
func filled(items []block, wide, room float64) (left, right []block) {
	column := func(items []block) int {
		n := 0
		for n < len(items) && stack(items[:n+1]).height(wide) <= room {
			n++
		}
		return n
	}
	n := column(items)
	return items[:n], items[n : n+column(items[n:])]
}

// columns is two stacks of equal width with a line between them.
type columns struct{ left, right stack }

func (k columns) pair(w float64) beside {
	return beside{left: k.left, right: k.right, leftWide: (w - columnsBetween) / 2, between: columnsBetween}
}

func (k columns) height(w float64) float64 { return k.pair(w).height(w) }

func (k columns) draw(c canvas) {
	const short = 3.0 // of the foot, where the last block ends in a gap
	middle := c.x + c.w/2
	c.line(middle, c.y+1, middle, c.y+k.height(c.w)-short, 0.2, hairline)
	k.pair(c.w).draw(c)
}

func (w writer) reasonBlock(r reason) block {
	blocks := stack{reasonHead{r, w.hue}, para{text: r.words, size: sizeBody, colour: ink, after: 0.8}}
	if r.aside != "" {
		blocks = append(blocks, para{text: clean(r.aside), size: sizeSmall, colour: muted, after: 0.6})
	}
	return append(blocks, w.smallPrint(r.steps), gap(3))
}

// smallPrint tells each step as a sum, and a source once after the steps that
// follow each other with it.
func (w writer) smallPrint(steps []derive.Step) stack {
	var lines stack
	for i, s := range steps {
		line := para{text: clean(w.sum(s)), size: sizeSmall, colour: muted}
		if i+1 == len(steps) || steps[i+1].Source != s.Source {
			line.text, line.after = line.text+" "+clean(source(s.Source)), 0.6
		}
		lines = append(lines, line)
	}
	return lines
}

// reasonHead is what a number is, and at the other end of the line the number.
type reasonHead struct {
	reason
	hue colour
}

func (reasonHead) height(float64) float64 { return lineHeight(sizeHeading) + 0.8 }

func (h reasonHead) draw(c canvas) {
	const between = 3.0
	baseline := c.y + ascent(sizeHeading)
	wide := width(bold, sizeHeading, h.value)
	if h.unit != "" {
		wide += width(regular, sizeBody, " "+h.unit)
	}
	label := fitting(bold, sizeHeading, c.w-wide-between, h.label)
	c.text(bold, label, ink, c.x, baseline, h.label)
	c.text(bold, sizeHeading, h.hue, c.x+c.w-wide, baseline, h.value)
	if h.unit != "" {
		c.textRight(regular, sizeBody, muted, c.x+c.w, baseline, h.unit)
	}
}

// kcalPerDay is the unit of the formulas, whatever the practice speaks in.
const kcalPerDay = "kcal/day"

// sum writes a step as a formula with its values and its result.
func (w writer) sum(s derive.Step) string {
	text := s.Label + ": " + s.Formula
	values := make([]string, 0, len(s.Inputs))
	for _, in := range s.Inputs {
		values = append(values, in.Name+" "+w.inputOf(in))
	}
	if len(values) > 0 {
		text += "; with " + strings.Join(values, ", ")
	}
	text += "; gives " + withUnit(w.resultOf(s.Result), s.Unit)
	if s.Unit == kcalPerDay && w.style.EnergyIn == unit.InKilojoules {
		text += ", which is " + w.style.Energy(unit.Kilocalorie(s.Result)) + "/day"
	}
	if s.Range != nil {
		text += fmt.Sprintf(" (%s to %s)", w.resultOf(s.Range.Low), w.resultOf(s.Range.High))
	}
	return text + "."
}

// inputOf writes a value that a formula was given. A value that came out of an
// earlier sum is rounded as that was.
func (w writer) inputOf(in derive.Input) string {
	switch {
	case in.Text != "":
		return in.Text
	case in.Unit == kcalPerDay:
		return withUnit(w.resultOf(in.Value), in.Unit)
	}
	return withUnit(w.figureOf(in.Value), in.Unit)
}

func source(s derive.Source) string {
	text := "Source: " + s.Text
	if s.Confidence == derive.Memory {
		text += " (quoted from memory)"
	}
	return text + "."
}

const handWide = 36.0 // the column of the drawings

// whyMeasures is the page of reasons without a number on it.
func (w writer) whyMeasures() []block {
	blocks := []block{title(PageWhy.Name(true), wordsWhyMeasures)}
	for _, k := range hand.Kinds() {
		blocks = append(blocks, stack{beside{
			left:     handBlock{sheet: w.sheet, kind: k, high: 26},
			right:    stack{heading(sentence(k.Plural())+" for "+k.Foods(), w.hue), body("One " + k.Name() + " is " + wordsMeasure[k] + "."), body(wordsWhyMeasure[k])},
			leftWide: handWide, between: 4,
		}, gap(6)})
	}
	return append(blocks, stack{heading("A start, not a test", w.hue), body(wordsStart), gap(3)})
}

// handBlock is one drawing in the middle of its column.
type handBlock struct {
	sheet *sheet
	kind  hand.Kind
	high  float64
}

func (h handBlock) height(float64) float64 { return h.high }

func (h handBlock) draw(c canvas) {
	p := h.sheet.picture(pictureKey{kind: h.kind, large: h.high >= largeFrom})
	high := min(h.high, c.w/p.aspect())
	c.place(p, c.x, c.y+(h.high-high)/2, high)
}

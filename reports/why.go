package reports

import (
	"fmt"
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

const valueWide = 36.0 // the column of the numbers

// why is the page of reasons: one block a number.
func (w writer) why() []block {
	if w.withoutNumbers {
		return w.whyMeasures()
	}
	blocks := []block{title(PageWhy.Name(false), wordsWhy)}
	for _, r := range w.energyReasons() {
		blocks = append(blocks, w.reasonBlock(r))
	}
	if w.moving() {
		blocks = append(blocks, w.courseBlocks()...)
	}
	for _, r := range w.foodReasons() {
		blocks = append(blocks, w.reasonBlock(r))
	}
	return blocks
}

func (w writer) reasonBlock(r reason) block {
	right := stack{heading(r.label, ink), para{text: r.words, size: sizeBody, colour: ink, after: 1.2}}
	if r.aside != "" {
		right = append(right, para{text: clean(r.aside), size: sizeSmall, colour: muted, after: 0.8})
	}
	return beside{
		left:     quantity{value: r.value, unit: r.unit, hue: w.hue},
		right:    append(right, w.smallPrint(r.steps), gap(3.6)),
		leftWide: valueWide, between: 4,
	}
}

// smallPrint tells each step as a sum, and a source once after the steps that
// follow each other with it.
func (w writer) smallPrint(steps []derive.Step) stack {
	var lines stack
	for i, s := range steps {
		lines = append(lines, para{text: clean(w.sum(s)), size: sizeSmall, colour: muted})
		if i+1 == len(steps) || steps[i+1].Source != s.Source {
			lines = append(lines, para{text: clean(source(s.Source)), face: italic, size: sizeSmall, colour: muted, after: 0.8})
		}
	}
	return lines
}

// quantity is the number that a reason explains.
type quantity struct {
	value, unit string
	hue         colour
}

func (q quantity) height(float64) float64 { return lineHeight(sizeValue) + lineHeight(sizeBody) }

func (q quantity) draw(c canvas) {
	baseline := c.y + ascent(sizeHeading)
	c.text(bold, fitting(bold, sizeValue, c.w, q.value), q.hue, c.x, baseline, q.value)
	c.text(regular, fitting(regular, sizeBody, c.w, q.unit), muted, c.x, baseline+lineHeight(sizeBody)+0.4, q.unit)
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

// whyMeasures is the page of reasons without a number on it.
func (w writer) whyMeasures() []block {
	blocks := []block{title(PageWhy.Name(true), wordsWhyMeasures)}
	for _, k := range hand.Kinds() {
		blocks = append(blocks, stack{beside{
			left:     handBlock{sheet: w.sheet, kind: k, high: 26},
			right:    stack{heading(sentence(k.Plural())+" for "+k.Foods(), w.hue), body("One " + k.Name() + " is " + wordsMeasure[k] + "."), body(wordsWhyMeasure[k])},
			leftWide: valueWide, between: 4,
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

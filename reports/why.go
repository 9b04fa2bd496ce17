package reports

import (
	"fmt"
	"strings"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

// reason is one number of the plan with its plain words, and in small type the
// steps that led to it.
type reason struct {
	label, value, unit string
	words              string
	steps              []derive.Step
}

const valueWide = 36.0 // the column of the numbers

// why is the page of reasons: one block a number.
func (w writer) why() []block {
	if w.withoutNumbers {
		return w.whyMeasures()
	}
	blocks := []block{title(PageWhy.Name(false), wordsWhy)}
	for _, r := range w.reasons() {
		blocks = append(blocks, w.reasonBlock(r))
	}
	return blocks
}

func (w writer) reasonBlock(r reason) block {
	right := stack{heading(r.label, ink), para{text: r.words, size: sizeBody, colour: ink, after: 1.2}}
	for _, s := range r.steps {
		right = append(right,
			para{text: clean(w.sum(s)), size: sizeSmall, colour: muted},
			para{text: clean(source(s.Source)), face: italic, size: sizeSmall, colour: muted, after: 0.8})
	}
	return beside{
		left:     quantity{value: r.value, unit: r.unit, hue: w.hue},
		right:    append(right, gap(3.6)),
		leftWide: valueWide, between: 4,
	}
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
	c.text(regular, sizeBody, muted, c.x, baseline+lineHeight(sizeBody)+0.4, q.unit)
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

func (w writer) reasons() []reason {
	p, t := w.plan, w.targets
	energyOf := func(e unit.Kilocalorie) (string, string) {
		value, name := w.style.EnergyValue(e)
		return w.style.Number(value, 0), name + " a day"
	}
	list := make([]reason, 0, 11)
	add := func(label, value, unitName, words string, steps ...derive.Step) {
		list = append(list, reason{label, value, unitName, words, steps})
	}
	value, name := energyOf(p.Resting.Value)
	add("At rest", value, name, wordsResting, p.Resting.Steps...)
	add("Moving about", "× "+w.figureOf(float64(p.Activity.Value)), "", w.activityWords(), p.Activity.Steps...)
	value, name = energyOf(p.Maintenance.Value)
	add("To hold your weight", value, name,
		fill(wordsMaintenance, w.energyAbout(p.Maintenance.Low), w.energyAbout(p.Maintenance.High)), p.Maintenance.Steps...)
	value, name = w.change()
	add("Your goal", value, name, w.goalWords(), p.Goal.Rate.Steps...)
	value, name = energyOf(t.Energy.Value)
	add("Your target", value, name, wordsTarget, t.Energy.Steps...)
	low, high := energyRange(p)
	lowest, highest := w.energyAbout(low), w.energyAbout(high)
	add("What the range means", w.span(low, high), name, fill(wordsWhatRange, lowest, highest))
	add("Protein", w.style.Grams(t.Protein.Value), "a day", wordsProtein, t.Protein.Steps...)
	add("Fat and its floor", w.style.Grams(t.Fat.Value), "a day", fill(wordsFat, w.style.Percent(t.FatFloor)), t.Fat.Steps...)
	add("Carbohydrate", w.style.Grams(t.Carbohydrate.Value), "a day", wordsCarbohydrate, t.Carbohydrate.Steps...)
	add("Fibre", w.style.Grams(t.Fibre.Value), "a day", wordsFibre, t.Fibre.Steps...)
	value, name = energyOf(t.Allotment.Brings.Energy)
	add("From numbers to hands", value, name, wordsMeasures, w.allottedSteps()...)
	return list
}

// span writes a range of energy without its unit: "1590–2110".
func (w writer) span(low, high unit.Kilocalorie) string {
	from, _, _ := strings.Cut(w.energyAbout(low), " ")
	to, _, _ := strings.Cut(w.energyAbout(high), " ")
	return from + "–" + to
}

// allottedSteps are the sums of what the day's measures bring.
func (w writer) allottedSteps() []derive.Step {
	var steps []derive.Step
	for _, s := range w.targets.Allotment.Steps {
		if s.Key == "allotted_energy" {
			steps = append(steps, s)
		}
	}
	return steps
}

func (w writer) activityWords() string {
	chosen := w.plan.Intake.Activity
	if chosen.PAL == 0 {
		for _, class := range energy.Classes() {
			if class.Category == chosen.Category {
				return wordsActivity + " " + wordsActivityClass[class.Category]
			}
		}
	}
	return wordsActivity + " " + wordsActivityGiven
}

// change is what the goal adds to maintenance energy.
func (w writer) change() (value, name string) {
	o := w.plan.Goal
	if !o.Lowers() && !o.Raises() {
		return "0", ""
	}
	amount, name := w.style.EnergyValue(o.Change)
	sign := "+"
	if amount < 0 {
		sign, amount = "−", -amount
	}
	return sign + w.style.Number(amount, 0), name + " a day"
}

func (w writer) goalWords() string {
	o := w.plan.Goal
	rate := o.Rate.Value
	if rate < 0 {
		rate = -rate
	}
	switch {
	case o.Lowers():
		return fill(wordsGoalLower, w.style.Rate(rate))
	case o.Raises():
		return fill(wordsGoalRaise, w.style.Rate(rate))
	}
	return wordsGoalHold
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

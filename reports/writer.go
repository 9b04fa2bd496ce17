package reports

import (
	"math"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/unit"
)

// writer knows the plan and the look of its paper; it makes the blocks of each
// kind of page.
type writer struct {
	house
	sheet          *sheet
	plan           domain.Plan
	targets        *domain.Targets
	withoutNumbers bool
}

func (w writer) inner() float64 { return w.sheet.inner() }
func (w writer) room() float64  { return w.sheet.room() }

// fill puts values into the gaps of a sentence, in order. A value with a figure
// in it stays on one line.
func fill(sentence string, values ...string) string {
	for _, v := range values {
		if strings.ContainsAny(v, "0123456789") {
			v = together(v)
		}
		sentence = strings.Replace(sentence, "{}", v, 1)
	}
	return sentence
}

// energyAbout writes an energy to the nearest ten of its unit.
func (w writer) energyAbout(e unit.Kilocalorie) string {
	const step = 10
	value, name := w.style.EnergyValue(e)
	return w.style.Number(math.Round(value/step)*step, 0) + " " + name
}

// toFives rounds a mass to five grams, which is as near as a hand comes.
func toFives(grams float64) unit.Gram {
	const step = 5
	return unit.Gram(math.Max(step, math.Round(grams/step)*step))
}

// figureOf writes a number that goes into a formula with as many decimals as it
// needs, two at most.
func (w writer) figureOf(value float64) string {
	const most, noise = 2, 1e-9
	for decimals := 0; decimals < most; decimals++ {
		scale := math.Pow10(decimals)
		if math.Abs(value*scale-math.Round(value*scale)) < noise*math.Max(1, math.Abs(value)) {
			return w.style.Number(value, decimals)
		}
	}
	return w.style.Number(value, most)
}

// resultOf writes what a formula gives: whole from 100 on, else as figureOf.
func (w writer) resultOf(value float64) string {
	const whole = 100
	if math.Abs(value) >= whole {
		return w.style.Number(value, 0)
	}
	return w.figureOf(value)
}

func withUnit(figure, unitName string) string {
	return together(strings.TrimSpace(figure + " " + unitName))
}

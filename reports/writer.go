package reports

import (
	"fmt"
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

// fill puts values into the gaps of a sentence, in order. A value stays on one
// line.
func fill(sentence string, values ...string) string {
	for _, v := range values {
		sentence = strings.Replace(sentence, "{}", together(v), 1)
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

// figureOf writes a number of a formula with as many decimals as it needs, two
// at most.
func (w writer) figureOf(value float64) string {
	const most, noise = 2, 1e-9
	for decimals := 0; decimals < most; decimals++ {
		scale := math.Pow10(decimals)
		if math.Abs(value*scale-math.Round(value*scale)) < noise*math.Max(1, math.Abs(value)) {
			return w.style.Number(value, decimals)
		}
	}
	if math.Abs(value) >= 100 {
		return w.style.Number(value, 0)
	}
	return w.style.Number(value, most)
}

// withUnit writes a figure and its unit.
func (w writer) withUnit(value float64, unitName string) string {
	return together(strings.TrimSpace(fmt.Sprintf("%s %s", w.figureOf(value), unitName)))
}

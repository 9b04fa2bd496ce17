package reports

import (
	"math"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/hand"
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

// energyFrom writes the lower end of a span of energies: the unit follows the
// upper one.
func (w writer) energyFrom(e unit.Kilocalorie) string {
	figure, _, _ := strings.Cut(w.energyAbout(e), " ")
	return figure
}

// The amounts of food are told as near as a hand comes: to tens from 200 on, to
// fives from 20 on, to ones below.
const (
	inTens  = 200
	inFives = 20
)

func asHandsCome(amount float64) float64 {
	step := 1.0
	switch {
	case amount >= inTens:
		step = 10
	case amount >= inFives:
		step = 5
	}
	return math.Max(1, math.Round(amount/step)*step)
}

// gramsAbout writes the mass of food in a hand.
func (w writer) gramsAbout(g unit.Gram) string {
	return w.style.Grams(unit.Gram(asHandsCome(float64(g))))
}

// volumeAbout writes the volume of food in a hand. The cups and spoons of US
// customary units are as coarse by themselves.
func (w writer) volumeAbout(v unit.Millilitre) string {
	if w.style.System == unit.USCustomary {
		return w.style.Volume(v)
	}
	return w.style.Volume(unit.Millilitre(asHandsCome(float64(v))))
}

// ownHand tells the client how large the hand is beside the usual one, where
// that differs by more than a twentieth: of the palm, or else of the first
// measure that differs. Else it is empty.
func (w writer) ownHand() string {
	const near = 0.05
	for _, k := range hand.Kinds() {
		if of := float64(w.targets.Calibration.Factors[k].Value); math.Abs(of-1) > near {
			return fill(wordsOwnHand, k.Name(), w.style.Number(of, 1))
		}
	}
	return ""
}

// figureOf writes a number that goes into a formula with as many decimals as it
// needs, two at most.
func (w writer) figureOf(value float64) string { return w.upTo(value, 2) }

// resultOf writes what a formula gives to three digits or so: whole from 100 on.
func (w writer) resultOf(value float64) string {
	const whole, tenths = 100, 10
	switch size := math.Abs(value); {
	case size >= whole:
		return w.upTo(value, 0)
	case size >= tenths:
		return w.upTo(value, 1)
	}
	return w.upTo(value, 2)
}

// upTo writes a number with so many decimals at most, and none that is nought.
func (w writer) upTo(value float64, most int) string {
	const noise = 1e-9
	for decimals := range most {
		scale := math.Pow10(decimals)
		if math.Abs(value*scale-math.Round(value*scale)) < noise*math.Max(1, math.Abs(value)) {
			return w.style.Number(value, decimals)
		}
	}
	return w.style.Number(value, most)
}

func withUnit(figure, unitName string) string {
	return together(strings.TrimSpace(figure + " " + unitName))
}

package hand

import (
	"fmt"
	"math"

	"handbreadth/domain/derive"
	"handbreadth/domain/food"
	"handbreadth/domain/unit"
)

// Size is what a tape says of a hand; 0: not measured.
type Size struct {
	PalmBreadth unit.Centimetre // across the knuckles of the four fingers
	PalmLength  unit.Centimetre // from the wrist crease to the base of the middle finger
	HandLength  unit.Centimetre // from the wrist crease to the tip of the middle finger
}

// The sizes that are accepted: well outside the survey's fifth and
// ninety-fifth percentiles of both sexes.
const (
	LeastPalmBreadth unit.Centimetre = 5
	MostPalmBreadth  unit.Centimetre = 13
	LeastPalmLength  unit.Centimetre = 7
	MostPalmLength   unit.Centimetre = 17
	LeastHandLength  unit.Centimetre = 12
	MostHandLength   unit.Centimetre = 27
)

// Weighing is one measure of a food as this client's hand took it, weighed in a
// kitchen. It wins over the tape for its measure.
type Weighing struct {
	Kind  Kind
	Food  food.Food
	Grams unit.Gram
}

// The factors that a weighing may come to: outside, something else than one
// measure was weighed.
const (
	LeastWeighed = 0.4
	MostWeighed  = 2.5
)

// Calibration is what the client's hand makes of each measure.
type Calibration struct {
	Size      Size // that was reckoned with, every length filled in
	Estimated bool // whether a length came from stature and sex
	// Factors tell each measure beside that of the reference adult.
	Factors [4]derive.Derived[unit.Ratio]
}

// sizeLaw is how a length of the hand follows stature: a regression line with
// its standard error, and the survey's mean, in millimetres.
type sizeLaw struct{ intercept, slope, see, mean float64 }

type handLaw struct{ breadth, palm, length sizeLaw }

// Source: ANSUR II survey (US Army 2012, open data, 4082 men, 1986 women), means
// and least-squares lines on stature, computed from the data (seen).
var handLaws = map[unit.Sex]handLaw{
	unit.Male: {
		breadth: sizeLaw{35.842, 0.029848, 3.882, 88.26},
		palm:    sizeLaw{22.611, 0.053436, 5.043, 116.46},
		length:  sizeLaw{21.743, 0.097673, 7.356, 193.28},
	},
	unit.Female: {
		breadth: sizeLaw{32.101, 0.02828, 3.387, 78.15},
		palm:    sizeLaw{19.058, 0.055045, 4.776, 108.70},
		length:  sizeLaw{16.234, 0.101229, 7.676, 181.08},
	},
}

var surveySource = derive.Source{Text: "ANSUR II, US Army 2012, open data: means and lines on stature of 4082 men and 1986 women", Confidence: derive.Seen}

const millimetresPerCentimetre = 10

// ReferenceSize returns the hand of the reference adult, whose measures are
// those of the published leaflets: half way between the means of both sexes.
func ReferenceSize() Size {
	m, f := handLaws[unit.Male], handLaws[unit.Female]
	middle := func(a, b sizeLaw) unit.Centimetre {
		return unit.Centimetre((a.mean + b.mean) / 2 / millimetresPerCentimetre)
	}
	return Size{middle(m.breadth, f.breadth), middle(m.palm, f.palm), middle(m.length, f.length)}
}

// tapeError is the standard deviation of a length taken with a tape: about 2 mm,
// common practice, no source.
const tapeError = 2.0 // mm

// extent is a length with its standard deviation as a share of it.
type extent struct {
	value unit.Centimetre
	error float64
}

func (l sizeLaw) of(measured, stature unit.Centimetre) (extent, bool) {
	if measured > 0 {
		return extent{measured, tapeError / millimetresPerCentimetre / float64(measured)}, false
	}
	mm := l.intercept + l.slope*float64(stature)*millimetresPerCentimetre
	return extent{unit.Centimetre(mm / millimetresPerCentimetre), l.see / mm}, true
}

// Calibrate returns how large each measure of a client's hand is beside the
// reference adult: as weighed, else as measured with a tape, else as estimated
// from stature and sex.
//
// The palm is scaled by breadth times palm length, which assumes that its
// thickness is the same for everybody; the fist and the cupped hand by breadth
// squared times palm length, which assumes that hands have one shape; the thumb
// by breadth squared times hand length, as its own size was not surveyed. The
// scale laws are this program's choice; the lengths are those of ANSUR II.
func Calibrate(sex unit.Sex, stature unit.Centimetre, measured Size, weighed ...Weighing) Calibration {
	law := handLaws[sex]
	breadth, b := law.breadth.of(measured.PalmBreadth, stature)
	palm, p := law.palm.of(measured.PalmLength, stature)
	length, l := law.length.of(measured.HandLength, stature)
	c := Calibration{Size: Size{breadth.value, palm.value, length.value}, Estimated: b || p || l}
	reference := ReferenceSize()
	area := scale{"palm breadth × palm length, beside the reference hand", []dimension{
		{"palm breadth", breadth, reference.PalmBreadth, 1, b}, {"palm length", palm, reference.PalmLength, 1, p},
	}}
	volume := scale{"palm breadth² × palm length, beside the reference hand", []dimension{
		{"palm breadth", breadth, reference.PalmBreadth, 2, b}, {"palm length", palm, reference.PalmLength, 1, p},
	}}
	thumb := scale{"palm breadth² × hand length, beside the reference hand", []dimension{
		{"palm breadth", breadth, reference.PalmBreadth, 2, b}, {"hand length", length, reference.HandLength, 1, l},
	}}
	for _, k := range Kinds() {
		c.Factors[k] = [...]scale{Palm: area, Fist: volume, CuppedHand: volume, Thumb: thumb}[k].factor(k)
	}
	for _, w := range weighed {
		c.Factors[w.Kind] = w.factor()
	}
	return c
}

// ReferenceCalibration is that of the reference adult: every factor is 1.
func ReferenceCalibration() Calibration {
	c := Calibration{Size: ReferenceSize()}
	for _, k := range Kinds() {
		c.Factors[k] = derive.Exact[unit.Ratio](1, derive.Step{
			Key: "hand_" + k.Key(), Label: sizeLabel(k), Formula: "the reference adult's hand",
			Result: 1, Source: surveySource,
		})
	}
	return c
}

// dimension is a length, the reference hand's, and the power that it counts with.
type dimension struct {
	name      string
	is        extent
	reference unit.Centimetre
	power     float64
	estimated bool
}

type scale struct {
	formula string
	by      []dimension
}

// eightInTen is the number of standard deviations either side that hold 80 % of
// a normal distribution.
const eightInTen = 1.2816

// factor multiplies the dimensions. Errors of one hand go together (a hand that
// is broader than its stature says is longer as well), so that they are added,
// which is the wider of the two ways.
func (s scale) factor(k Kind) derive.Derived[unit.Ratio] {
	value, spread := 1.0, 0.0
	inputs := make([]derive.Input, 0, 2*len(s.by))
	note := "As measured with a tape, give or take 2 mm."
	for _, d := range s.by {
		value *= math.Pow(float64(d.is.value/d.reference), d.power)
		spread += d.power * d.is.error
		inputs = append(inputs,
			derive.Input{Name: d.name, Value: float64(d.is.value), Unit: "cm"},
			derive.Input{Name: "reference " + d.name, Value: float64(d.reference), Unit: "cm"})
		if d.estimated {
			note = "Estimated from stature and sex: measure the hand to narrow the range."
		}
	}
	return sizeFactor(k, value, eightInTen*spread, s.formula, inputs, surveySource, note+" Eight in ten hands lie in the range.")
}

// weighingError is the standard deviation of one weighing, as a share: a hand
// does not take the same twice. Common practice, no source.
const weighingError = 0.08

func (w Weighing) factor() derive.Derived[unit.Ratio] {
	value := w.Ratio()
	return sizeFactor(w.Kind, float64(value), eightInTen*weighingError, "weighed / weight of the reference measure",
		[]derive.Input{
			{Name: "food", Text: w.Food.Name},
			{Name: "weighed", Value: float64(w.Grams), Unit: "g"},
			{Name: "reference measure", Value: float64(w.Reference()), Unit: "g"},
		},
		derive.Source{Text: "weighed in a kitchen; reference: household measures of USDA SR28 (2016)", Confidence: derive.Seen},
		"What was weighed wins over the tape. A hand does not take the same twice: eight in ten weighings lie in the range.")
}

// cupVolume is what the cup weight of a food is told for.
const cupVolume unit.Millilitre = 240

// Reference returns what the reference hand takes of the food in this measure:
// by volume where the food is told by it, else the portion that fills the
// measure. It is nought for pieces, such as bread, and for what is no food of a
// palm, because they say nothing of a hand.
func (w Weighing) Reference() unit.Gram {
	if volume := references[w.Kind].Volume; volume > 0 && w.Food.Cup > 0 {
		return w.Food.Cup * unit.Gram(volume/cupVolume)
	}
	if group, fills := w.Food.Fills(); !fills || group != GroupOf(w.Kind) || w.Kind == CuppedHand {
		return 0
	}
	return w.Food.Portion
}

// Ratio returns what was weighed beside the reference measure of the food.
func (w Weighing) Ratio() unit.Ratio { return unit.Ratio(w.Grams / w.Reference()) }

// Check says what keeps a weighing from being used.
func (w Weighing) Check(field string) error {
	reference := w.Reference()
	if reference > 0 && w.Ratio() >= LeastWeighed && w.Ratio() <= MostWeighed {
		return nil
	}
	wrong := unit.Problem{Field: field, Given: fmt.Sprintf("%g g of %s", float64(w.Grams), w.Food.Name)}
	if reference == 0 {
		wrong.Accepted = "a food whose " + w.Kind.Name() + " can be weighed: no pieces, and in the palm a protein food"
		return wrong
	}
	wrong.Accepted = fmt.Sprintf("the weight of one %s: %.0f to %.0f g", w.Kind.Name(), LeastWeighed*float64(reference), MostWeighed*float64(reference))
	return wrong
}

func sizeLabel(k Kind) string { return "Size of this client's " + k.Name() }

func sizeFactor(k Kind, value, spread float64, formula string, inputs []derive.Input, source derive.Source, note string) derive.Derived[unit.Ratio] {
	low, high := value/(1+spread), value*(1+spread)
	return derive.Within(unit.Ratio(value), unit.Ratio(low), unit.Ratio(high), derive.Step{
		Key: "hand_" + k.Key(), Label: sizeLabel(k), Formula: formula, Inputs: inputs,
		Result: value, Range: &derive.Range{Low: low, High: high}, Source: source, Note: note,
	})
}

// Scaled returns contents as this client's hand holds them.
func (c Contents) Scaled(by Calibration) Contents {
	var scaled Contents
	for _, k := range Kinds() {
		scaled[k] = c[k].scaled(by.Factors[k])
	}
	return scaled
}

func (c Content) scaled(by derive.Derived[unit.Ratio]) Content {
	f := float64(by.Value)
	c.Hand = by
	c.Volume *= unit.Millilitre(f)
	c.Nutrients = Nutrients{}.plus(c.Nutrients, f)
	c.Low, c.High = Nutrients{}.plus(c.Low, float64(by.Low)), Nutrients{}.plus(c.High, float64(by.High))
	steps := append([]derive.Step{}, by.Steps...)
	for _, s := range c.Steps {
		s.Formula += " × size of the hand"
		s.Inputs = append(append([]derive.Input{}, s.Inputs...), derive.Input{Name: "size of the hand", Value: f})
		s.Result *= f
		if s.Range != nil {
			s.Range = &derive.Range{Low: s.Range.Low * float64(by.Low), High: s.Range.High * float64(by.High)}
		}
		steps = append(steps, s)
	}
	c.Steps = steps
	c.Grams = derive.Within(c.Grams.Value*unit.Gram(f), c.Grams.Low*unit.Gram(by.Low), c.Grams.High*unit.Gram(by.High), steps[:len(by.Steps)+1]...)
	return c
}

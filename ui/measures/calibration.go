package measures

import (
	"slices"
	"strings"

	"handbreadth/domain/derive"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// factor is the size of one of the client's measures, in words.
type factor struct {
	Label string // "Palm"
	Value string // "0.87 of the reference palm"
	Span  string // "estimated; eight in ten between 0.79 and 0.96"
	Steps []derive.Step
}

// calibrated returns the size of the client's hand, and whether it is known: it
// needs a height and which equation is used, or every length. Without, it is the
// reference hand.
func calibrated(r draft.Reading) (hand.Calibration, bool) {
	in := r.Intake
	in.Hand.Size = usable(r)
	all := in.Hand.Size.PalmBreadth > 0 && in.Hand.Size.PalmLength > 0 && in.Hand.Size.HandLength > 0
	_, wrong := r.Problems[draft.Height]
	if all || (in.Height > 0 && !wrong && in.Client.EquationSex.Valid()) {
		return hand.Calibrate(in.Client.EquationSex, in.Height, in.Hand.Size, in.Hand.Weighed...), true
	}
	return hand.ReferenceCalibration(), false
}

// usable returns the lengths that were measured and can be.
func usable(r draft.Reading) hand.Size {
	size := r.Intake.Hand.Size
	for field, length := range map[draft.Field]*unit.Centimetre{
		draft.PalmBreadth: &size.PalmBreadth, draft.PalmLength: &size.PalmLength, draft.HandLength: &size.HandLength,
	} {
		if _, wrong := r.Problems[field]; wrong {
			*length = 0
		}
	}
	return size
}

// factorsOf tells the size of each measure and how it is known.
func factorsOf(c hand.Calibration, r draft.Reading, style unit.Style) [4]factor {
	var told [4]factor
	for _, k := range hand.Kinds() {
		f := c.Factors[k]
		two := func(v unit.Ratio) string { return style.Number(float64(v), 2) }
		told[k] = factor{
			Label: capital(k.Name()), Steps: f.Steps,
			Value: two(f.Value) + " of the reference " + k.Name(),
			Span:  knownBy(k, r) + "; eight in ten between " + two(f.Low) + " and " + two(f.High),
		}
	}
	return told
}

// knownBy says how the size of a measure is known.
func knownBy(k hand.Kind, r draft.Reading) string {
	h := r.Intake.Hand
	for _, w := range h.Weighed {
		if w.Kind == k {
			return "weighed"
		}
	}
	size := usable(r)
	length := size.PalmLength
	if k == hand.Thumb {
		length = size.HandLength
	}
	switch {
	case size.PalmBreadth > 0 && length > 0:
		return "measured"
	case size.PalmBreadth > 0 || length > 0:
		return "measured in part"
	}
	return "estimated"
}

// handSummary says in a line how the hand is known.
func handSummary(c hand.Calibration, known bool, r draft.Reading, style unit.Style) string {
	if !known {
		return "the reference hand, until height and sex are told"
	}
	var ways []string
	for _, k := range hand.Kinds() {
		if way := knownBy(k, r); !slices.Contains(ways, way) {
			ways = append(ways, way)
		}
	}
	return listed(ways, "") + ": palm " + style.Number(float64(c.Factors[hand.Palm].Value), 2) +
		", fist " + style.Number(float64(c.Factors[hand.Fist].Value), 2) + " of the reference hand"
}

// The lengths that a tape takes, by their numbers in the drawing.
var lengths = []struct {
	Field      draft.Field
	Label      string
	Metric, US string // examples
}{
	{draft.PalmBreadth, "1  Palm breadth, across the knuckles", "8.1 cm", "3.2 in"},
	{draft.PalmLength, "2  Palm length, wrist crease to middle finger", "11.2 cm", "4.4 in"},
	{draft.HandLength, "3  Hand length, wrist crease to fingertip", "18.6 cm", "7.3 in"},
}

const tapeHow = "With a soft tape, the hand flat, fingers together. What is not measured is estimated from height and sex."

// estimateHint tells what is reckoned with where a length was not measured.
func estimateHint(field draft.Field, c hand.Calibration, known bool, style unit.Style) string {
	if !known {
		return "Such as " + exampleOf(field, style) + "."
	}
	size := map[draft.Field]unit.Centimetre{
		draft.PalmBreadth: c.Size.PalmBreadth, draft.PalmLength: c.Size.PalmLength, draft.HandLength: c.Size.HandLength,
	}[field]
	return "Estimated at " + style.Length(size) + " until it is measured."
}

func exampleOf(field draft.Field, style unit.Style) string {
	for _, l := range lengths {
		if l.Field == field {
			if style.System == unit.USCustomary {
				return l.US
			}
			return l.Metric
		}
	}
	return ""
}

// weighedTold is what is told of a weighing.
type weighedTold struct {
	Value string // "92 g of chicken breast"
	Food  string // "Chicken breast: the reference palm takes 85 g."
	Hint  string
}

func weighedWords(code, grams string, k hand.Kind, style unit.Style) weighedTold {
	f, known := food.ByCode(code)
	if !known {
		return weighedTold{Value: "not weighed", Food: "No food is chosen yet.", Hint: "Choose the food first."}
	}
	reference := hand.Weighing{Kind: k, Food: f}.Reference()
	told := weighedTold{
		Value: f.Name + ", to be weighed",
		Food:  capital(f.Name) + ": the reference " + k.Name() + " takes " + style.Grams(reference) + ".",
		Hint:  "Such as " + style.Grams(reference) + ".",
	}
	if grams != "" {
		told.Value = strings.TrimSuffix(strings.TrimSpace(grams), " g") + " g of " + f.Name
	}
	return told
}

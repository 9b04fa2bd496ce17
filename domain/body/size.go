package body

import (
	"math"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Population chooses the points at which BMI speaks.
type Population string

// The sets of points.
const (
	WorldPoints Population = "who"   // WHO, all populations
	AsianPoints Population = "asian" // WHO 2004 action points for Asian populations
)

// Limit is a value at which a measurement changes its class.
type Limit struct {
	From float64
	Name string
}

// BMILimits returns the classes of body mass index, lowest first.
//
// Source: WHO TRS 894 (seen in a secondary copy); WHO expert consultation 2004,
// Lancet 363:157-163 (seen): action points 23.0, 27.5, 32.5, 37.5.
func BMILimits(p Population) []Limit {
	if p == AsianPoints {
		return []Limit{{0, "under 18.5"}, {18.5, "18.5 to 22.9"}, {23, "23 to 27.4, first action point"}, {27.5, "27.5 to 32.4, second action point"}, {32.5, "32.5 to 37.4, third action point"}, {37.5, "37.5 and over, fourth action point"}}
	}
	return []Limit{{0, "under 18.5"}, {18.5, "18.5 to 24.9"}, {25, "25 to 29.9"}, {30, "30 to 34.9"}, {35, "35 to 39.9"}, {40, "40 and over"}}
}

// ClassOf returns the class that a value falls in.
func ClassOf(value float64, limits []Limit) Limit {
	class := limits[0]
	for _, l := range limits {
		if value >= l.From {
			class = l
		}
	}
	return class
}

// WaistLimits returns the classes of waist for a sex, in centimetres.
//
// Source: WHO 2008 expert consultation (its table seen in a citing article,
// doi 10.1155/2013/906495): more than 94 and 102 cm for men, more than 80 and 88 cm
// for women.
func WaistLimits(s unit.Sex) []Limit {
	if s == unit.Male {
		return []Limit{{0, "94 cm or less"}, {over(94), "more than 94 cm, increased"}, {over(102), "more than 102 cm, high"}}
	}
	return []Limit{{0, "80 cm or less"}, {over(80), "more than 80 cm, increased"}, {over(88), "more than 88 cm, high"}}
}

// over returns the first number above a limit that a source prints as "more than".
func over(limit float64) float64 { return math.Nextafter(limit, math.Inf(1)) }

// WaistSpeaksBelow is the BMI from which waist to height adds nothing.
// Source: NICE NG246 (seen).
const WaistSpeaksBelow unit.KilogramPerSquareMetre = 35

// WaistToHeightLimits returns the classes of the waist-to-height ratio, which
// are used where BMI is under 35.
//
// Source: NICE CG189/NG246 (seen).
func WaistToHeightLimits() []Limit {
	return []Limit{{0, "under 0.4"}, {0.4, "0.4 to 0.49, healthy"}, {0.5, "0.5 to 0.59, increased"}, {0.6, "0.6 or more, high"}}
}

// WaistToHeight returns the ratio of waist to height.
func WaistToHeight(f Figure) derive.Derived[unit.Ratio] {
	value := unit.Ratio(f.Waist / f.Height)
	return derive.Exact(value, derive.Step{
		Key: "waist_to_height", Label: "Waist to height", Formula: "waist / height",
		Inputs: []derive.Input{girth("waist", f.Waist), girth("height", f.Height)}, Result: float64(value),
		Source: derive.Source{Text: "NICE CG189/NG246", Confidence: derive.Seen},
		Note:   "Speaks where BMI is under 35.",
	})
}

// HealthyWeight returns the weights that have a BMI of 18.5 to 25 at a height;
// the value is the middle.
//
// Source: WHO (seen in a secondary copy).
func HealthyWeight(height unit.Centimetre, p Population) derive.Derived[unit.Kilogram] {
	const lowest = 18.5
	highest := unit.KilogramPerSquareMetre(25)
	if p == AsianPoints {
		highest = 23
	}
	low, high := unit.WeightAtBMI(lowest, height), unit.WeightAtBMI(highest, height)
	middle := (low + high) / 2
	return derive.Within(middle, low, high, derive.Step{
		Key: "healthy_weight", Label: "Healthy weight range", Formula: "BMI × height², between the limits",
		Inputs: []derive.Input{girth("height", height)}, Result: float64(middle), Unit: "kg",
		Range:  &derive.Range{Low: float64(low), High: float64(high)},
		Source: derive.Source{Text: "WHO, BMI 18.5 to 25 (23 at the Asian action points)", Confidence: derive.SeenSecond},
	})
}

// ReferenceWeight is a weight for a height by one convention.
type ReferenceWeight struct {
	Name   string
	Weight derive.Derived[unit.Kilogram]
}

// ReferenceWeights returns the reference weights in use, the one that the
// program reckons with first.
func ReferenceWeights(sex unit.Sex, height unit.Centimetre) []ReferenceWeight {
	return []ReferenceWeight{
		{"Peterson 2016 at BMI 22", peterson(height, 22)},
		{"Devine 1974", devine(sex, height)},
		{"Hamwi 1964", hamwi(sex, height)},
	}
}

// Source: Peterson 2016, Am J Clin Nutr 103:1197 (formula from memory; its
// accuracy of 0.5-0.7 % seen and reproduced).
func peterson(height unit.Centimetre, bmi float64) derive.Derived[unit.Kilogram] {
	value := 2.2*bmi + 3.5*bmi*(height.Metres()-1.5)
	return reference(value, "2.2 × BMI + 3.5 × BMI × (height in metres − 1.5)",
		[]derive.Input{{Name: "BMI", Value: bmi, Unit: "kg/m²"}, {Name: "height in metres", Value: height.Metres(), Unit: "m"}},
		derive.Source{Text: "Peterson 2016, Am J Clin Nutr 103:1197-1203", Confidence: derive.Memory})
}

// Source: Devine 1974 (seen in a secondary copy).
func devine(sex unit.Sex, height unit.Centimetre) derive.Derived[unit.Kilogram] {
	base, formula := 45.5, "45.5 + 2.3 × inches over 60"
	if sex == unit.Male {
		base, formula = 50, "50 + 2.3 × inches over 60"
	}
	return reference(base+2.3*inchesOver60(height), formula, overInputs(height),
		derive.Source{Text: "Devine 1974, Drug Intell Clin Pharm 8:650", Confidence: derive.SeenSecond})
}

// Source: Hamwi 1964, 106 lb and 6 lb an inch for men, 100 and 5 for women (from
// memory).
func hamwi(sex unit.Sex, height unit.Centimetre) derive.Derived[unit.Kilogram] {
	pounds, formula := 100+5*inchesOver60(height), "(100 + 5 × inches over 60) × 0.45359237"
	if sex == unit.Male {
		pounds, formula = 106+6*inchesOver60(height), "(106 + 6 × inches over 60) × 0.45359237"
	}
	return reference(pounds*unit.KilogramPerPound, formula, overInputs(height),
		derive.Source{Text: "Hamwi 1964, Changing dietary concepts", Confidence: derive.Memory})
}

func inchesOver60(height unit.Centimetre) float64 {
	return math.Max(0, float64(height)/unit.CentimetrePerInch-60)
}

func overInputs(height unit.Centimetre) []derive.Input {
	return []derive.Input{{Name: "inches over 60", Value: inchesOver60(height), Unit: "in"}}
}

func reference(value float64, formula string, inputs []derive.Input, source derive.Source) derive.Derived[unit.Kilogram] {
	return derive.Exact(unit.Kilogram(value), derive.Step{
		Key: "reference_weight", Label: "Reference weight", Formula: formula,
		Inputs: inputs, Result: value, Unit: "kg", Source: source,
		Note: "A convention for reckoning, not a goal.",
	})
}

// AdjustedPart of the weight above the reference counts in the adjusted weight.
// Source: convention; factors of 0.25 to 0.4 are in use (from memory).
const AdjustedPart = 0.25

// AdjustedWeight returns the reference weight and a part of what is above it.
func AdjustedWeight(weight, reference unit.Kilogram) derive.Derived[unit.Kilogram] {
	value := reference + AdjustedPart*(weight-reference)
	return derive.Exact(value, derive.Step{
		Key: "adjusted_weight", Label: "Adjusted weight", Formula: "reference + 0.25 × (weight − reference)",
		Inputs: []derive.Input{{Name: "weight", Value: float64(weight), Unit: "kg"}, {Name: "reference", Value: float64(reference), Unit: "kg"}},
		Result: float64(value), Unit: "kg",
		Source: derive.Source{Text: "convention; factors of 0.25 to 0.4 are in use", Confidence: derive.Custom},
	})
}

package body

import (
	"math"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Figure is what is known of a body.
type Figure struct {
	Sex              unit.Sex
	Age              unit.Year
	Weight           unit.Kilogram
	Height           unit.Centimetre
	Neck, Waist, Hip unit.Centimetre // 0: not measured
	MeasuredFat      unit.Percent    // of weight, by a method named by the practitioner; 0: none
}

// FatMethod names a way to know body fat.
type FatMethod string

// The ways to know body fat.
const (
	FatMeasured   FatMethod = "measured"
	FatTape       FatMethod = "tape"
	FatGallagher  FatMethod = "gallagher_2000"
	FatDeurenberg FatMethod = "deurenberg_1991"
	FatJackson    FatMethod = "jackson_2002"
	FatJacksonLog FatMethod = "jackson_2002_log"
)

// FatEstimate is body fat by one method.
type FatEstimate struct {
	Method FatMethod
	Name   string
	Fat    derive.Derived[unit.Percent] // of weight
}

// Measured reports that something beside height and weight was measured: fat
// itself, or girths with a tape.
func (e FatEstimate) Measured() bool { return e.Method == FatMeasured || e.Method == FatTape }

// The least and most body fat that an estimate may give; outside, the equation
// has left the people whom it was made from.
const (
	leastFat unit.Percent = 3
	mostFat  unit.Percent = 65
)

// Fat returns body fat by the method that is trusted most for what is known:
// measured, then tape, then Gallagher up to a BMI of 35 and the logarithmic
// Jackson form above, as Hall 2011 uses it.
func Fat(f Figure) FatEstimate {
	if f.MeasuredFat > 0 {
		return measuredFat(f)
	}
	if e, ok := tapeFat(f); ok {
		return e
	}
	const mostGallagherBMI = 35 // the people of the study
	if unit.BMI(f.Weight, f.Height) <= mostGallagherBMI {
		return gallagher(f)
	}
	return jacksonLog(f)
}

// FatEstimates returns body fat by every method that what is known allows, the
// trusted one first.
func FatEstimates(f Figure) []FatEstimate {
	first := Fat(f)
	all := []FatEstimate{first}
	others := []FatEstimate{gallagher(f), deurenberg(f), jackson(f), jacksonLog(f)}
	if e, ok := tapeFat(f); ok {
		others = append([]FatEstimate{e}, others...)
	}
	for _, e := range others {
		if e.Method != first.Method {
			all = append(all, e)
		}
	}
	return all
}

func measuredFat(f Figure) FatEstimate {
	// repeat is the error of common methods, in percentage points: common
	// practice, no source.
	const repeat = 3
	return FatEstimate{FatMeasured, "Measured", fatValue(float64(f.MeasuredFat), repeat, "as measured",
		[]derive.Input{{Name: "measured", Value: float64(f.MeasuredFat), Unit: "%"}},
		derive.Source{Text: "as given by the practitioner; 3 points either side: common practice", Confidence: derive.Custom})}
}

// Source: Hodgdon and Beckett 1984, Naval Health Research Center reports 84-11
// and 84-29 (from memory; the inch form of a Department of Defense instruction
// agrees within a point). Lengths in centimetres, base-ten logarithms.
func tapeFat(f Figure) (FatEstimate, bool) {
	var density float64
	var formula string
	inputs := []derive.Input{girth("waist", f.Waist), girth("neck", f.Neck), girth("height", f.Height)}
	if f.Sex == unit.Male {
		if f.Neck <= 0 || f.Waist <= f.Neck {
			return FatEstimate{}, false
		}
		density = 1.0324 - 0.19077*math.Log10(float64(f.Waist-f.Neck)) + 0.15456*math.Log10(float64(f.Height))
		formula = "495 / (1.0324 − 0.19077 log(waist − neck) + 0.15456 log(height)) − 450"
	} else {
		if f.Neck <= 0 || f.Waist <= 0 || f.Hip <= 0 || f.Waist+f.Hip <= f.Neck {
			return FatEstimate{}, false
		}
		density = 1.29579 - 0.35004*math.Log10(float64(f.Waist+f.Hip-f.Neck)) + 0.22100*math.Log10(float64(f.Height))
		formula = "495 / (1.29579 − 0.35004 log(waist + hip − neck) + 0.22100 log(height)) − 450"
		inputs = append(inputs, girth("hip", f.Hip))
	}
	const standardError = 3.6
	return FatEstimate{FatTape, "Tape (Hodgdon and Beckett)", fatValue(495/density-450, standardError, formula, inputs,
		derive.Source{Text: "Hodgdon and Beckett 1984, Naval Health Research Center reports 84-11 and 84-29", Confidence: derive.Memory})}, true
}

// Source: Gallagher 2000, Am J Clin Nutr 72:694-701 (from memory; its published
// healthy ranges are reproduced).
func gallagher(f Figure) FatEstimate {
	male := boolean(f.Sex == unit.Male)
	bmi, age := bmiOf(f), float64(f.Age)
	value := 64.5 - 848/bmi + 0.079*age - 16.4*male + 0.05*male*age + 39.0*male/bmi
	formula := "64.5 − 848 / BMI + 0.079 × age"
	if f.Sex == unit.Male {
		formula += " − 16.4 + 0.05 × age + 39.0 / BMI"
	}
	const standardError = 4.1 // 2.8 to 5.4 over the study's groups
	return FatEstimate{FatGallagher, "Gallagher 2000", fatValue(value, standardError, formula, bmiInputs(f),
		derive.Source{Text: "Gallagher 2000, Am J Clin Nutr 72:694-701", Confidence: derive.Memory})}
}

// Source: Deurenberg 1991, Br J Nutr 65:105-114 (seen).
func deurenberg(f Figure) FatEstimate {
	value := 1.20*bmiOf(f) + 0.23*float64(f.Age) - 10.8*boolean(f.Sex == unit.Male) - 5.4
	formula := "1.20 × BMI + 0.23 × age − 5.4"
	if f.Sex == unit.Male {
		formula = "1.20 × BMI + 0.23 × age − 10.8 − 5.4"
	}
	const standardError = 4.1
	return FatEstimate{FatDeurenberg, "Deurenberg 1991", fatValue(value, standardError, formula, bmiInputs(f),
		derive.Source{Text: "Deurenberg 1991, Br J Nutr 65:105-114; runs high with obesity", Confidence: derive.Seen})}
}

// jacksonError: the study's standard errors are about 5 points (from memory).
const jacksonError = 5

// Source: Jackson 2002, Int J Obes 26:789-796, quadratic form (from memory; the
// published gap between the sexes is reproduced).
func jackson(f Figure) FatEstimate {
	bmi := bmiOf(f)
	value, formula := 4.35*bmi-0.05*bmi*bmi-46.24, "4.35 × BMI − 0.05 × BMI² − 46.24"
	if f.Sex == unit.Male {
		value, formula = 3.76*bmi-0.04*bmi*bmi-47.80, "3.76 × BMI − 0.04 × BMI² − 47.80"
	}
	return FatEstimate{FatJackson, "Jackson 2002", fatValue(value, jacksonError, formula, bmiInputs(f)[:1],
		derive.Source{Text: "Jackson 2002, Int J Obes 26:789-796", Confidence: derive.Memory})}
}

// Source: the logarithmic form with age that Hall 2011 uses (from memory).
func jacksonLog(f Figure) FatEstimate {
	age, ln := float64(f.Age), math.Log(bmiOf(f))
	value, formula := 0.14*age+39.96*ln-102.01, "0.14 × age + 39.96 × ln(BMI) − 102.01"
	if f.Sex == unit.Male {
		value, formula = 0.14*age+37.31*ln-103.94, "0.14 × age + 37.31 × ln(BMI) − 103.94"
	}
	return FatEstimate{FatJacksonLog, "Jackson 2002, with age", fatValue(value, jacksonError, formula, bmiInputs(f),
		derive.Source{Text: "Jackson 2002, Int J Obes 26:789-796, as used by Hall 2011, Lancet 378:826", Confidence: derive.Memory})}
}

func fatValue(value, standardError float64, formula string, inputs []derive.Input, source derive.Source) derive.Derived[unit.Percent] {
	bound := func(v float64) unit.Percent { return min(mostFat, max(leastFat, unit.Percent(v))) }
	note := "The range is one standard error either side."
	if bound(value) != unit.Percent(value) {
		note = "The equation has left the people whom it was made from; the result is held between 3 and 65 %."
	}
	low, mid, high := bound(value-standardError), bound(value), bound(value+standardError)
	return derive.Within(mid, low, high, derive.Step{
		Key: "body_fat", Label: "Body fat", Formula: formula, Inputs: inputs,
		Result: float64(mid), Unit: "%", Range: &derive.Range{Low: float64(low), High: float64(high)}, Source: source,
		Note: note,
	})
}

func bmiOf(f Figure) float64 { return float64(unit.BMI(f.Weight, f.Height)) }

func bmiInputs(f Figure) []derive.Input {
	return []derive.Input{{Name: "BMI", Value: bmiOf(f), Unit: "kg/m²"}, {Name: "age", Value: float64(f.Age), Unit: "years"}}
}

func girth(name string, l unit.Centimetre) derive.Input {
	return derive.Input{Name: name, Value: float64(l), Unit: "cm"}
}

func boolean(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// LeanMass returns weight without its fat.
func LeanMass(f Figure) derive.Derived[unit.Kilogram] {
	fat := Fat(f).Fat
	of := func(p unit.Percent) unit.Kilogram { return f.Weight * unit.Kilogram(1-float64(p)/100) }
	value := of(fat.Value)
	step := derive.Step{
		Key: "lean_mass", Label: "Lean mass", Formula: "weight × (1 − body fat)",
		Inputs: []derive.Input{{Name: "weight", Value: float64(f.Weight), Unit: "kg"}, {Name: "body fat", Value: float64(fat.Value), Unit: "%"}},
		Result: float64(value), Unit: "kg", Range: &derive.Range{Low: float64(of(fat.High)), High: float64(of(fat.Low))},
		Source: derive.FromSteps,
	}
	return derive.Within(value, of(fat.High), of(fat.Low), append(fat.Steps, step)...)
}

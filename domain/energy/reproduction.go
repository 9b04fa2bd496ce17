package energy

import (
	"slices"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Reproduction is what is known of a pregnancy or of breastfeeding. It is for
// holding weight only.
type Reproduction struct {
	Weeks         int              // of pregnancy, 1 to 42; 0: not pregnant, or not told
	PrePregnant   unit.Kilogram    // weight before, for the energy laid down; 0: not told
	Breastfeeding BreastfeedingAge // how old the child is
	// StageNotTold says that the client is pregnant or breastfeeding and that
	// neither the week nor the age of the child was told.
	StageNotTold bool
}

// BreastfeedingAge is how old a breastfed child is.
type BreastfeedingAge int

// The ages that the equations know.
const (
	NotBreastfeeding BreastfeedingAge = iota
	FirstHalfYear                     // 0-6 months, breast milk only
	SecondHalfYear                    // 7-12 months, beside other food
)

// Told reports whether a pregnancy or breastfeeding was told.
func (r Reproduction) Told() bool { return r.Weeks > 0 || r.Breastfeeding != NotBreastfeeding }

// The weeks at which the second and the third trimester begin.
const (
	secondTrimester = 14
	thirdTrimester  = 28
)

// trimester returns 1, 2 or 3, and 0 where no pregnancy was told.
func (r Reproduction) trimester() int {
	switch {
	case r.Weeks >= thirdTrimester:
		return 3
	case r.Weeks >= secondTrimester:
		return 2
	case r.Weeks > 0:
		return 1
	}
	return 0
}

// additions is what is added to the energy of a day, by trimester and by the
// age of a breastfed child.
type additions struct {
	trimesters [4]float64
	feeding    [3]float64
}

// Source: EFSA 2013, EFSA Journal 11(1):3005: 70, 260 and 500 kcal by trimester,
// 500 for the first half-year of breastfeeding (seen). It gives none for the
// second half-year; there the 380 of NASEM 2023 stand in (from memory).
var efsaAdditions = additions{[4]float64{0, 70, 260, 500}, [3]float64{0, 500, 380}}

// Source: IOM 2005 (from memory): 340 and 452 kcal in the second and third
// trimester, 330 and 400 for the half-years of breastfeeding.
var dri2005Additions = additions{[4]float64{0, 0, 340, 452}, [3]float64{0, 330, 400}}

// of returns what is added: the highest addition where no stage was told.
func (a additions) of(r Reproduction) float64 {
	if r.StageNotTold && !r.Told() {
		return max(slices.Max(a.trimesters[:]), slices.Max(a.feeding[:]))
	}
	total := a.trimesters[r.trimester()]
	if age := int(r.Breastfeeding); age > 0 && age < len(a.feeding) {
		total += a.feeding[age]
	}
	return total
}

// WithReproduction adds to maintenance energy what a pregnancy or breastfeeding
// takes, and the highest that can apply where no stage was told. Where neither
// was told, it changes nothing.
//
// Source: EFSA 2013, EFSA Journal 11(1):3005 (seen).
func WithReproduction(maintenance derive.Derived[unit.Kilocalorie], r Reproduction) derive.Derived[unit.Kilocalorie] {
	if !r.Told() && !r.StageNotTold {
		return maintenance
	}
	note := "For holding weight only. The maternity team's advice comes first."
	if !r.Told() {
		note = "No week and no age of the child was told: the highest addition counts. " + note
	}
	return adding(maintenance, efsaAdditions.of(r), derive.Step{
		Key: "maintenance", Label: "Maintenance energy, with pregnancy or breastfeeding",
		Formula: "maintenance energy + addition",
		Inputs:  []derive.Input{{Name: "maintenance energy", Value: float64(maintenance.Value), Unit: "kcal/day"}},
		Source:  derive.Source{Text: "EFSA 2013, EFSA Journal 11(1):3005: 70, 260 and 500 kcal by trimester, 500 in the first half-year of breastfeeding; second half-year: NASEM 2023, from memory", Confidence: derive.Seen},
		Note:    note,
	})
}

func withDRI2005(total derive.Derived[unit.Kilocalorie], r Reproduction) derive.Derived[unit.Kilocalorie] {
	if !r.Told() {
		return total
	}
	return adding(total, dri2005Additions.of(r), derive.Step{
		Key: "cross_check", Label: "Total energy, DRI 2005, with pregnancy or breastfeeding",
		Formula: "total energy + addition",
		Inputs:  []derive.Input{{Name: "total energy", Value: float64(total.Value), Unit: "kcal/day"}},
		Source:  derive.Source{Text: "IOM 2005, Dietary Reference Intakes for energy, chapter 5", Confidence: derive.Memory},
	})
}

// adding completes a step that adds to a value, and appends it.
func adding(to derive.Derived[unit.Kilocalorie], addition float64, step derive.Step) derive.Derived[unit.Kilocalorie] {
	more := unit.Kilocalorie(addition)
	value, low, high := to.Value+more, to.Low+more, to.High+more
	step.Inputs = append(step.Inputs, derive.Input{Name: "addition", Value: addition, Unit: "kcal/day"})
	step.Result, step.Unit = float64(value), "kcal/day"
	if low != high {
		step.Range = &derive.Range{Low: float64(low), High: float64(high)}
	}
	return derive.Within(value, low, high, append(append([]derive.Step{}, to.Steps...), step)...)
}

// Additions of NASEM 2023 (from memory), kcal a day. Its equations for pregnancy
// hold from the second trimester.
const (
	perPregnantWeek    = 9.16
	firstHalfYearAdds  = 540 - 140
	secondHalfYearAdds = 380
)

// laidDown is the energy of tissue gained in pregnancy, by BMI before it.
func laidDown(bmi unit.KilogramPerSquareMetre) float64 {
	switch {
	case bmi < 18.5:
		return 300
	case bmi < 25:
		return 200
	case bmi < 30:
		return 150
	}
	return -50
}

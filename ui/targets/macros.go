package targets

import (
	"fmt"
	"math"

	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/macro"
	"handbreadth/domain/unit"
)

// band is the acceptable range of a macro as a part of energy.
type band struct{ Low, High unit.Percent }

// The acceptable macronutrient distribution ranges for adults.
// Source: IOM 2002/2005 (seen): protein 10-35 %, fat 20-35 %, carbohydrate 45-65 %.
var (
	proteinBand      = band{10, macro.MostProteinShare}
	fatBand          = band{macro.DefaultFatFloor, 35}
	carbohydrateBand = band{macro.CarbohydrateShareFloor, 65}
)

// macroOf tells a macro as its part of the energy, beside the usual range; the
// bar tells the grams.
func macroOf(d derive.Derived[unit.Gram], share unit.Percent, b band, style unit.Style) row {
	return row{Value: wholePercent(share, style) + " of energy", Note: b.words(share, style), Steps: d.Steps}
}

func wholePercent(p unit.Percent, style unit.Style) string {
	return style.Percent(unit.Percent(math.Round(float64(p))))
}

// words tells the range and where the share stands beside it.
func (b band) words(share unit.Percent, style unit.Style) string {
	span := style.Number(float64(b.Low), 0) + " to " + style.Percent(b.High)
	rounded := unit.Percent(math.Round(float64(share)))
	switch {
	case rounded < b.Low:
		return "under the usual range of " + span
	case rounded > b.High:
		return "over the usual range of " + span
	}
	return "in the usual range of " + span
}

func fibreNote(style unit.Style) string {
	return style.Grams(macro.FibrePer1000) + " for each " + style.Energy(1000) + ", inside the carbohydrate"
}

// proteinWhy tells the amount for each kilogram, why, and on which weight:
// "1.2 g/kg (losing weight) on the weight of 72.6 kg".
func proteinWhy(steps []derive.Step, style unit.Style) string {
	if len(steps) == 0 {
		return ""
	}
	words := ""
	for _, step := range steps {
		if step.Key == "protein" && step.Label == "Protein" {
			words = situationWords(step.Inputs, style)
			break
		}
	}
	if last := steps[len(steps)-1]; last.Key == "protein" && last.Label != "Protein" {
		words += ". " + last.Label
	}
	return words
}

func situationWords(inputs []derive.Input, style unit.Style) string {
	why, perKg, name, weight := "", "", "weight", ""
	for _, in := range inputs {
		switch {
		case in.Text != "":
			why = in.Text
		case in.Unit == "g/kg":
			perKg = style.Number(in.Value, 1) + " g/kg"
		case in.Unit == "kg":
			name, weight = in.Name, style.Weight(unit.Kilogram(in.Value))
		}
	}
	return fmt.Sprintf("%s (%s) on the %s of %s", perKg, why, name, weight)
}

// balance is the carbohydrate-fat balance as the slider shows it.
type balance struct {
	Wall         unit.Percent
	Why          string // why the slider stops at the wall
	Kept         string // what keeps carbohydrate above the balance; "" for nothing
	Floor        string // why the floor stands where it stands
	FloorInForce string
}

func balanceOf(p domain.Plan, style unit.Style) balance {
	t := p.Targets
	return balance{
		Wall: t.Split.WallBalance, Why: wallWords(t, style), Kept: keptWords(t, style),
		Floor: floorWords(p, style), FloorInForce: style.Percent(t.FatFloor),
	}
}

// wallWords says why the slider stops.
func wallWords(t *domain.Targets, style unit.Style) string {
	return "at " + wholePercent(t.Split.WallBalance, style) + " fat meets its floor of " + style.Percent(t.FatFloor) + " of energy and goes no lower."
}

// keptWords says what keeps carbohydrate above what the balance asks for; "" where
// nothing does.
func keptWords(t *domain.Targets, style unit.Style) string {
	if !t.Split.RaisedCarbohydrate {
		return ""
	}
	carbohydrate := unit.Percent(math.Round(float64(t.CarbFatBalance)))
	return fmt.Sprintf("Carbohydrate is kept at %s or more in pregnancy and while breastfeeding: it gets %s of the energy left after protein.",
		style.Grams(macro.CarbohydrateBreastfeeding), style.Percent(carbohydrate))
}

// floorWords says why the floor stands where it stands.
func floorWords(p domain.Plan, style unit.Style) string {
	floor, usual := p.Targets.FatFloor, style.Percent(macro.DefaultFatFloor)
	least := style.Percent(macro.LeastFatFloor)
	switch {
	case floor > p.Intake.FatFloor:
		return "The floor is kept at " + style.Percent(floor) + " for women of childbearing age and for a BMI under 18.5 (WHO/FAO 2010)."
	case floor == macro.DefaultFatFloor:
		return "A floor of " + usual + " is the lower edge of the range for adults (IOM 2002/2005, EFSA 2010)."
	}
	return "The floor is as set here. The usual one is " + usual + "; none is under " + least + " (WHO/FAO 2010)."
}

// balanceText is what the slider writes into the form: whole percents, rounded
// up at the wall, so that the thumb stays there.
func balanceText(p unit.Percent, atWall bool) string {
	whole := math.Round(float64(p))
	if atWall {
		whole = math.Ceil(float64(p) - 1e-9)
	}
	return unit.Style{}.Number(whole, 0) + "%"
}

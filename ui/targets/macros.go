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

// macroRow is a macro in grams with its part of the energy.
type macroRow struct {
	row
	Share string // "24% of energy"
	Band  string // "usual range 10 to 35%"
}

func macroOf(d derive.Derived[unit.Gram], share unit.Percent, b band, style unit.Style) macroRow {
	return macroRow{
		row:   row{Value: style.Grams(d.Value), Steps: d.Steps},
		Share: wholePercent(share, style) + " of energy",
		Band:  b.words(share, style),
	}
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
// "1.2 g/kg for losing weight, on a weight of 72.6 kg".
func proteinWhy(steps []derive.Step, style unit.Style) string {
	if len(steps) == 0 {
		return ""
	}
	words := ""
	for _, step := range steps {
		if step.Key == "protein" && len(step.Inputs) > 0 {
			words = situationWords(step.Inputs, style)
			break
		}
	}
	if last := steps[len(steps)-1]; last.Key == "protein" && len(last.Inputs) == 0 {
		words += " " + last.Label + "."
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
	return fmt.Sprintf("%s (%s) on the %s of %s.", perKg, why, name, weight)
}

// balance is the carbohydrate-fat balance as the slider shows it.
type balance struct {
	Value   unit.Percent // in force: what was asked for, stopped by the wall
	Wall    unit.Percent
	Caption string
	Floor   string // the floor in force and why: "20% of energy ..."
}

func balanceOf(p domain.Plan, style unit.Style) balance {
	t := p.Targets
	return balance{
		Value: min(p.Intake.CarbFatBalance, t.Split.WallBalance), Wall: t.Split.WallBalance,
		Caption: caption(p, style), Floor: floorWords(p, style),
	}
}

// caption says what the balance does, or why it stops.
func caption(p domain.Plan, style unit.Style) string {
	t := p.Targets
	carbohydrate := unit.Percent(math.Round(float64(t.CarbFatBalance)))
	shared := fmt.Sprintf("Of the energy left after protein, %s goes to carbohydrate and %s to fat.",
		style.Percent(carbohydrate), style.Percent(100-carbohydrate))
	wall := wholePercent(t.Split.WallBalance, style)
	floor := style.Percent(t.FatFloor)
	switch {
	case t.Split.RaisedCarbohydrate:
		return shared + " Carbohydrate is kept at " + style.Grams(macro.CarbohydrateBreastfeeding) +
			" or more in pregnancy and while breastfeeding, so fat gives way down to its floor."
	case t.Split.AtFloor, p.Intake.CarbFatBalance >= t.Split.WallBalance-0.5:
		return shared + " It stops at " + wall + ": there fat meets its floor of " + floor + " of energy."
	}
	return shared + " It can go up to " + wall + ", where fat meets its floor of " + floor + " of energy."
}

// floorWords says why the floor stands where it stands.
func floorWords(p domain.Plan, style unit.Style) string {
	floor := p.Targets.FatFloor
	least := style.Percent(macro.LeastFatFloor)
	switch {
	case floor > p.Intake.FatFloor:
		return "Kept at " + style.Percent(floor) + " for women of childbearing age and for a BMI under 18.5 (WHO/FAO 2010)."
	case floor == macro.DefaultFatFloor:
		return "20% is the lower edge of the range for adults (IOM 2002/2005, EFSA 2010). It can be set from " + least + " to " + style.Percent(macro.MostFatFloor) + "."
	}
	return "As set here. The usual floor is " + style.Percent(macro.DefaultFatFloor) + "; no adult plan goes under " + least + " (WHO/FAO 2010)."
}

// balanceText is what the slider writes into the form.
func balanceText(p unit.Percent) string {
	return unit.Style{}.Number(math.Round(float64(p)), 0) + "%"
}

package targets

import (
	"math"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/widgets"
)

// energyView is what the body spends, and what the equations say side by side.
type energyView struct {
	Resting, Activity, Maintenance row
	Checks                         []row // other published ways to total energy

	Strip     []widgets.StripValue
	Equations []energy.RestingEquation // of the strip's values; the measured one has none
	Chosen    int
	Low, High float64
	Caption   string

	Measured string // "not measured", or the value
}

func energyOf(p domain.Plan, style unit.Style) energyView {
	v := energyView{
		Resting:  row{Value: style.Energy(p.Resting.Value), Note: likely(p.Resting.Low, p.Resting.High, style), Steps: p.Resting.Steps},
		Activity: row{Value: style.Number(float64(p.Activity.Value), 2), Note: activityNote(p, style), Steps: p.Activity.Steps},
		Maintenance: row{
			Value: style.Energy(p.Maintenance.Value), Note: likely(p.Maintenance.Low, p.Maintenance.High, style), Steps: p.Maintenance.Steps,
		},
		Chosen: -1, Measured: "not measured",
	}
	for _, c := range p.CrossChecks {
		v.Checks = append(v.Checks, checkRow(c, p, style))
	}
	v.strip(p, style)
	return v
}

func (v *energyView) strip(p domain.Plan, style unit.Style) {
	measured := p.Intake.MeasuredResting > 0
	low, _ := style.EnergyValue(p.Resting.Low)
	high, _ := style.EnergyValue(p.Resting.High)
	v.Low, v.High = low, high
	if measured {
		v.Measured = style.Energy(p.Intake.MeasuredResting)
		v.add(widgets.StripValue{Label: "Measured", Text: v.Measured, Why: "A measured value wins over any equation."}, p.Resting.Value, "", style)
		v.Chosen = 0
	}
	for _, c := range p.Equations {
		if !c.Worked {
			continue
		}
		if c.Chosen {
			v.Chosen = len(v.Strip)
		}
		v.add(widgets.StripValue{
			Label: c.Equation.Name, Text: style.Energy(c.Resting.Value),
			Hollow: !c.Suits, Why: whyNot(c), Closed: measured,
		}, c.Resting.Value, c.Equation.Code, style)
	}
	v.Caption = stripCaption(p, measured)
}

func (v *energyView) add(value widgets.StripValue, at unit.Kilocalorie, code energy.RestingEquation, style unit.Style) {
	value.Value, _ = style.EnergyValue(at)
	v.Strip = append(v.Strip, value)
	v.Equations = append(v.Equations, code)
}

func whyNot(c energy.Comparison) string {
	if !c.Suits {
		return "not meant for this client: " + c.Why
	}
	return c.Note
}

func stripCaption(p domain.Plan, measured bool) string {
	band := "The band is " + wholePercentOf(p.Resting.Value, p.Resting.High) + " either side of the one in use"
	if measured {
		band = "The band is " + wholePercentOf(p.Resting.Value, p.Resting.High) + " either side of the measured value"
	}
	a := p.Agreement
	if a.Of == 0 {
		return band + "."
	}
	return band + "; " + counted(float64(a.Inside), "equation") + " of the " + unit.Style{}.Number(float64(a.Of), 0) + " meant for this client lie in it."
}

// wholePercentOf is how far a bound lies from a value, in whole percents.
func wholePercentOf(value, bound unit.Kilocalorie) string {
	return unit.Style{}.Number(math.Round(100*math.Abs(float64(bound/value)-1)), 0) + "%"
}

// checkRow sets another way to total energy beside maintenance.
func checkRow(c energy.CrossCheck, p domain.Plan, style unit.Style) row {
	name, _, _ := strings.Cut(c.Name, ",")
	m := p.Maintenance
	where := "inside the likely range"
	if c.Energy.Value < m.Low || c.Energy.Value > m.High {
		where = "outside of the likely range"
	}
	beside := "the same"
	if by := math.Round(100 * (float64(c.Energy.Value/m.Value) - 1)); by > 0 {
		beside = unit.Style{}.Number(by, 0) + "% over"
	} else if by < 0 {
		beside = unit.Style{}.Number(-by, 0) + "% under"
	}
	return row{Label: name, Value: style.Energy(c.Energy.Value), Note: beside + ", " + where, Steps: c.Energy.Steps}
}

// activityNote tells the way in which the activity was told.
func activityNote(p domain.Plan, style unit.Style) string {
	a := p.Intake.Activity
	within := style.Number(float64(p.Activity.Low), 2) + " to " + style.Number(float64(p.Activity.High), 2)
	switch {
	case len(a.Day) > 0:
		return "from the hours of the day, likely " + within
	case a.Customary != "":
		return "a customary factor, by convention; likely " + within
	case a.PAL != 0:
		return "given as a number, likely " + within
	}
	for _, c := range energy.Classes() {
		if c.Category == a.Category {
			return lower(c.Name) + ", " + within
		}
	}
	return within
}

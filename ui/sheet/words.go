package sheet

import (
	"fmt"
	"math"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/chart"
)

const (
	emptyLead   = "They appear here while the intake is filled in. Birth date, sex, height and weight give the first."
	waitingLead = "The target and the measures appear when these are filled in."
	heldWords   = "Held until a reason is recorded"
)

// title is the heading of what the sheet says instead of a target.
func (v view) title() string {
	switch v.State {
	case empty:
		return "No figures yet"
	case referred:
		return "No target"
	}
	return ""
}

func referredLead(refers int) string {
	if refers == 1 {
		return "One finding asks for a referral first, so no target is set. The handout section writes the referral note."
	}
	return fmt.Sprintf("%d findings ask for a referral first, so no target is set. The handout section writes the referral note.", refers)
}

func earlyLead(stops int) string {
	if stops == 1 {
		return "One answer asks for a referral first, so no target will be set. With the intake filled in, the handout section writes the referral note."
	}
	return fmt.Sprintf("%d answers ask for a referral first, so no target will be set. With the intake filled in, the handout section writes the referral note.", stops)
}

// energyFigure tells an energy with its range.
func energyFigure(d derive.Derived[unit.Kilocalorie], style unit.Style) figure {
	return figure{Value: style.Energy(d.Value), Note: likely(d.Low, d.High, style), Steps: d.Steps}
}

// gramFigure tells a macro with its part of the energy.
func gramFigure(d derive.Derived[unit.Gram], share unit.Percent, style unit.Style) figure {
	return figure{
		Value: style.Grams(d.Value), Steps: d.Steps,
		Note: style.Percent(unit.Percent(math.Round(float64(share)))) + " of energy",
	}
}

// likely tells a range of energy: "likely 1640 to 2130".
func likely(low, high unit.Kilocalorie, style unit.Style) string {
	if low >= high {
		return ""
	}
	return "likely " + rounded(low, style) + " to " + rounded(high, style)
}

// rounded writes an energy to the nearest 10 kcal or 50 kJ, so that a range
// does not claim more than is known.
func rounded(e unit.Kilocalorie, style unit.Style) string {
	value, _ := style.EnergyValue(max(e, 0))
	step := 10.0
	if style.EnergyIn == unit.InKilojoules {
		step = 50
	}
	return style.Number(math.Round(value/step)*step, 0)
}

// targetNote tells how sure the target is: as sure as the maintenance energy
// that it is reckoned from. An energy that was agreed has no range; what is not
// sure then is where it leads.
func targetNote(p domain.Plan, style unit.Style) string {
	if p.Intake.Goal.Energy != 0 {
		return "as agreed"
	}
	m := p.Maintenance
	return likely(m.Low+p.Goal.Change, m.High+p.Goal.Change, style)
}

// expectedNote tells when the weight is expected, and its range.
func expectedNote(w chart.Words) string {
	return w.Date + "; 8 in 10: " + w.Range
}

// otherEquations tells what the other equations that are meant for the client say
// to resting energy.
func otherEquations(p domain.Plan, style unit.Style) string {
	var list []string
	for _, c := range p.Equations {
		if c.Worked && c.Suits && !c.Chosen {
			list = append(list, c.Equation.Name+" "+style.Energy(c.Resting.Value))
		}
	}
	if len(list) == 0 {
		return ""
	}
	return "Other equations: " + strings.Join(list, "; ") + "."
}

// otherTotals tells what other published ways say to maintenance energy.
func otherTotals(p domain.Plan, style unit.Style) string {
	var list []string
	for _, c := range p.CrossChecks {
		list = append(list, c.Name+" "+style.Energy(c.Energy.Value))
	}
	if len(list) == 0 {
		return ""
	}
	return "Other ways: " + strings.Join(list, "; ") + "."
}

// aside says where the target stands beside maintenance.
func aside(o energy.Outcome, style unit.Style) string {
	switch {
	case o.Lowers():
		return style.Energy(-o.Change) + " under maintenance"
	case o.Raises():
		return style.Energy(o.Change) + " over maintenance"
	}
	return "the same as maintenance"
}

// overMeals tells over how many meals a day's measures are spread.
func overMeals(meals int) string {
	if meals == 1 {
		return "in one meal"
	}
	return fmt.Sprintf("over %d meals", meals)
}

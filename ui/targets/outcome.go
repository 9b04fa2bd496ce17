package targets

import (
	"math"

	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

// outcome is what a goal comes to. A row without a value is not shown.
type outcome struct {
	Target  row // "− 494 kcal = target energy"
	Reached row // when the goal is reached, and how fast on average
	First   row // the rate of the first weeks
	Holding row // the energy that holds the new weight
	Half    row // after how long half of the change has happened
	Static  row // what the static rule says to the same wish
	Why     string
	// Never says that the goal is not reached; Unmodelled that there is no course.
	Never      string
	Unmodelled string
}

func outcomeOf(p domain.Plan, s state, style unit.Style) outcome {
	o, pr := *p.Goal, p.Projection
	out := outcome{Target: row{
		Label: stepWords(o, style), Value: style.Energy(o.Target.Value), Note: targetNote(p, s, style),
		Steps: append(append([]derive.Step{}, p.Maintenance.Steps...), o.Target.Steps...),
	}}
	if o.Lowers() || o.Raises() {
		out.First = row{Value: signed(o.Rate.Value, style), Note: "by the static rule; later it slows", Steps: o.Rate.Steps}
	}
	if pr == nil {
		out.Unmodelled = "The model of weight knows no pregnancy and no breastfeeding, so no course is drawn."
		return out
	}
	out.Reached = reached(p, style)
	out.Holding = row{Label: holdingLabel(pr, o, style), Value: style.Energy(pr.Holding.Value), Note: holdingNote(p, style), Steps: pr.Holding.Steps}
	if !o.Lowers() && !o.Raises() {
		out.Holding = row{}
		return out
	}
	out.Half = row{Value: span(pr.HalfTime.Value), Note: "the rest comes more and more slowly", Steps: pr.HalfTime.Steps}
	out.Static, out.Why = static(p, style), why(o, style)
	if pr.Short {
		out.Never = never(p, style)
	}
	return out
}

// reached tells when the goal is reached and the mean rate until then, or where
// the course ends.
func reached(p domain.Plan, style unit.Style) row {
	o, pr := *p.Goal, p.Projection
	if o.ReachedOn.IsZero() {
		end := p.Intake.Date.AddDays(len(pr.Bands) - 1)
		return row{
			Label: "Expected on " + end.Long(), Value: style.Weight(pr.Final.Value),
			Note: "8 in 10 between " + style.Weight(pr.Final.Low) + " and " + style.Weight(pr.Final.High), Steps: pr.Final.Steps,
		}
	}
	days := unit.Day(p.Intake.Date.DaysUntil(o.ReachedOn))
	return row{
		Label: style.Weight(p.Intake.Goal.Weight) + " is reached", Value: o.ReachedOn.Long(),
		Note: "in " + span(days) + ", " + signed(o.MeanRate.Value, style) + " on average", Steps: o.MeanRate.Steps,
	}
}

func holdingLabel(pr *domain.Projection, o energy.Outcome, style unit.Style) string {
	if !o.ReachedOn.IsZero() && pr.Goal != 0 {
		return "To hold " + style.Weight(pr.Goal)
	}
	return "To hold it then"
}

func holdingNote(p domain.Plan, style unit.Style) string {
	less := p.Maintenance.Value - p.Projection.Holding.Value
	switch {
	case less > 0.5:
		return style.Energy(less) + " less than maintenance now"
	case less < -0.5:
		return style.Energy(-less) + " more than maintenance now"
	}
	return ""
}

// never tells that the target's course settles before the goal.
func never(p domain.Plan, style unit.Style) string {
	pr := p.Projection
	words := "This energy does not reach " + style.Weight(pr.Goal) + " within ten years."
	if len(pr.Settles.Steps) > 0 {
		words += " The weight settles at about " + style.Weight(pr.Settles.Value) + "."
	}
	return words
}

// static is what the static rule says to the same wish, and what the model
// expects of it.
func static(p domain.Plan, style unit.Style) row {
	pr, o := p.Projection.Promise, *p.Goal
	if pr.Day == 0 {
		return row{}
	}
	steps := append(append([]derive.Step{}, o.StaticTarget.Steps...), pr.Expected.Steps...)
	return row{
		Value: style.Energy(pr.Energy), Steps: steps,
		Note: "promises " + style.Weight(pr.Promised) + " on " + p.Intake.Date.AddDays(pr.Day).Long() + "; the model expects " + style.Weight(pr.Expected.Value),
	}
}

// why explains what is wrong with the promise.
func why(o energy.Outcome, style unit.Style) string {
	amount := style.Energy(energy.StaticEnergyPerKilogram) + " for every kilogram"
	if style.System != unit.Metric {
		amount = style.Energy(energy.StaticEnergyPerKilogram*unit.KilogramPerPound) + " for every pound"
	}
	spends := "a lighter body spends less"
	if o.Raises() {
		spends = "a heavier body spends more"
	}
	return "It disappoints: it counts " + amount + " and takes the body's need as fixed, but " + spends + "."
}

// signed writes a rate with its sign.
func signed(r unit.KilogramPerWeek, style unit.Style) string {
	if r > 0 {
		return "+" + style.Rate(r)
	}
	return style.Rate(r)
}

// span tells a time in days, weeks or months, whichever people would say.
func span(d unit.Day) string {
	const week, year = 7, 365.25
	days := float64(d)
	switch {
	case days < 2*week:
		return counted(days, "day")
	case days < year:
		return counted(days/week, "week")
	}
	return counted(days*12/year, "month")
}

func counted(n float64, what string) string {
	whole := unit.Style{}.Number(math.Round(n), 0)
	if whole == "1" {
		return "1 " + what
	}
	return whole + " " + what + "s"
}

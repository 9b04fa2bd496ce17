package targets

import (
	"math"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// goalWords is what was asked for and what it comes to.
type goalWords struct {
	Asked   string // "To lose weight: 66 kg by 31 August 2026."
	ComesTo string // "500 kcal a day under maintenance."
	Rate    row    // what the static rule promises
	Why     string // why it disappoints
	Fast    string // where the course is too fast
	Safe    fix    // the way out of it
}

func goalOf(p domain.Plan, style unit.Style) goalWords {
	g, o := p.Intake.Goal, *p.Goal
	words := goalWords{Asked: asked(g, style), ComesTo: comesTo(o, style)}
	if o.Lowers() || o.Raises() {
		words.Rate, words.Why = rate(g, o, style), why(o, style)
	}
	if o.TooFast {
		words.Fast, words.Safe = tooFast(o, style), safe(g, o, style)
	}
	return words
}

func asked(g energy.Goal, style unit.Style) string {
	what := map[energy.GoalKind]string{
		energy.Lose: "To lose weight", energy.Maintain: "To hold the weight", energy.Gain: "To gain weight",
	}[g.Kind]
	var parts []string
	if g.Weight != 0 && g.Kind != energy.Maintain {
		parts = append(parts, "to "+style.Weight(g.Weight))
	}
	if !g.By.IsZero() && g.Kind != energy.Maintain {
		parts = append(parts, "by "+g.By.Long())
	}
	if g.Energy != 0 {
		parts = append(parts, "eating "+style.EnergyPerDay(g.Energy)+", as agreed")
	}
	if len(parts) == 0 {
		return what + "."
	}
	return what + ", " + strings.Join(parts, " ") + "."
}

func comesTo(o energy.Outcome, style unit.Style) string {
	switch {
	case o.Lowers():
		return "That is " + style.Energy(-o.Change) + " a day under maintenance."
	case o.Raises():
		return "That is " + style.Energy(o.Change) + " a day over maintenance."
	}
	return "That is as much as maintenance takes."
}

// rate is what the static rule promises: a rate, and a date where a weight was
// named.
func rate(g energy.Goal, o energy.Outcome, style unit.Style) row {
	promised := row{Value: style.Rate(o.Rate.Value), Steps: o.Rate.Steps}
	if o.Raises() {
		promised.Value = "+" + promised.Value
	}
	if g.Weight != 0 && !o.ReachedOn.IsZero() {
		promised.Note = style.Weight(g.Weight) + " on " + o.ReachedOn.Long() + ", says the rule"
	}
	return promised
}

// why explains what is wrong with the promise.
func why(o energy.Outcome, style unit.Style) string {
	amount := style.Energy(energy.StaticEnergyPerKilogram) + " for every kilogram"
	if style.System != unit.Metric {
		amount = style.Energy(energy.StaticEnergyPerKilogram*unit.KilogramPerPound) + " for every pound"
	}
	if o.Raises() {
		return "This is what most people expect, and it disappoints. The rule counts " + amount +
			" and takes the body's need as fixed, but a heavier body spends more, so the gain slows. Take it as the first weeks' course."
	}
	return "This is what most people expect, and it disappoints. The rule counts " + amount +
		" and takes the body's need as fixed, but a lighter body spends less, so the loss slows. Take it as the first weeks' course."
}

func tooFast(o energy.Outcome, style unit.Style) string {
	words := "This is faster than 1% of weight or " + style.Weight(energy.FastestLoss) + " a week."
	if o.SafeDate.IsZero() {
		return words + " Inside the guards the least is " + style.EnergyPerDay(o.SafeEnergy) + "."
	}
	return words + " The earliest date inside the guards is " + o.SafeDate.Long() + ", at " + style.EnergyPerDay(o.SafeEnergy) + "."
}

// safe is the button that brings the goal inside the guards: a later date
// where a weight was named, else more energy.
func safe(g energy.Goal, o energy.Outcome, style unit.Style) fix {
	if !o.SafeDate.IsZero() {
		changes := []change{{draft.GoalBy, o.SafeDate.Long()}}
		if g.Energy != 0 {
			changes = append([]change{{draft.GoalEnergy, ""}}, changes...)
		}
		return fix{"Take " + o.SafeDate.Long(), changes}
	}
	text := upToTen(o.SafeEnergy, style)
	changes := []change{{draft.GoalEnergy, text}}
	if !g.By.IsZero() {
		changes = append([]change{{draft.GoalBy, ""}}, changes...)
	}
	return fix{"Take " + text + " a day", changes}
}

// upToTen writes an energy up to the next ten, so that rounding does not lead
// out of the guards.
func upToTen(e unit.Kilocalorie, style unit.Style) string {
	value, name := style.EnergyValue(e)
	const step, noise = 10, 1e-6
	return style.Number(math.Ceil(value/step-noise)*step, 0) + " " + name
}

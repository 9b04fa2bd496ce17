package targets

import (
	"math"
	"slices"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// unsafe reports whether a plan asks for less energy, or for a faster loss, than
// the guards allow.
func unsafe(o energy.Outcome) bool {
	const rounding = 0.5 // kcal
	return o.Lowers() && (o.TooFast || o.Target.Value < o.SafeEnergy-rounding)
}

// unsafeWords say which guard is passed, and what lies inside of it.
func unsafeWords(p domain.Plan, style unit.Style) string {
	o := *p.Goal
	words := "This passes " + guardWords(p, style) + "."
	if o.SafeDate.IsZero() {
		return words + " Inside the guards the least is " + style.EnergyPerDay(o.SafeEnergy) + "."
	}
	return words + " The earliest date inside the guards is " + o.SafeDate.Long() + ", at " + style.EnergyPerDay(o.SafeEnergy) + "."
}

func guardWords(p domain.Plan, style unit.Style) string {
	o, least := *p.Goal, energy.LeastEnergy(p.Intake.Client.EquationSex)
	switch {
	case o.TooFast:
		return "the guard of 1% of weight or " + style.Weight(energy.FastestLoss) + " a week"
	case o.Target.Value < least:
		return "the least of " + style.EnergyPerDay(least)
	}
	return "the customary deficit of " + style.EnergyPerDay(energy.MostDeficit)
}

// offers are the buttons that bring a goal inside the guards: first in the way in
// which it was wished, then as an energy.
func offers(p domain.Plan, style unit.Style) []fix {
	o, g := *p.Goal, p.Intake.Goal
	var list []fix
	if !o.SafeDate.IsZero() {
		if text := slower(p, style); g.PerWeek != 0 && text != "" {
			list = append(list, fix{"Take " + text + " a week", byRate.only(text)})
		} else {
			list = append(list, fix{"Take " + o.SafeDate.Long(), byDate.only(o.SafeDate.Long())})
		}
	}
	text := upToTen(o.SafeEnergy, style)
	list = append(list, fix{"Take " + text + " a day", byEnergy.only(text)})
	if g.Energy != 0 {
		slices.Reverse(list)
	}
	return list
}

// slower is the rate that reaches the goal on the earliest safe date, rounded
// down, so that rounding does not lead out of the guards; "" where that takes
// longer than a goal may.
func slower(p domain.Plan, style unit.Style) string {
	in := p.Intake
	days := in.Date.DaysUntil(p.Goal.SafeDate)
	if days <= 0 {
		return ""
	}
	loss, step := math.Abs(float64(in.Goal.Weight-in.Weight)), rateStep(style)
	rate := math.Floor(7*loss/float64(days)/step+rateNoise) * step
	if rate <= 0 || 7*loss/rate > domain.LongestGoal {
		return ""
	}
	return rateText(unit.KilogramPerWeek(rate), style)
}

// upToTen writes an energy up to the next ten, for the same reason.
func upToTen(e unit.Kilocalorie, style unit.Style) string {
	value, name := style.EnergyValue(e)
	const step, noise = 10, 1e-6
	return style.Number(math.Ceil(value/step-noise)*step, 0) + " " + name
}

// rescue is the button that leads out of a referral which only the wish has
// brought: it takes the earliest safe date. A referred plan shows no figure, so
// the button names none.
func rescue(p domain.Plan) fix {
	for _, f := range p.Gate.Refers {
		if f.Code != codeVeryLow {
			return fix{}
		}
	}
	in := p.Intake
	in.Goal.By, in.Goal.PerWeek, in.Goal.Energy = unit.Date{}, 0, 0
	calm, err := domain.NewPlan(in)
	if err != nil || calm.Goal == nil || calm.Goal.SafeDate.IsZero() {
		return fix{}
	}
	in.Goal.By = calm.Goal.SafeDate
	if safe, err := domain.NewPlan(in); err != nil || safe.Gate.Referred() {
		return fix{}
	}
	return fix{"Take the earliest safe date", byDate.only(calm.Goal.SafeDate.Long())}
}

// The findings that a goal itself brings.
const (
	codeVeryLow     = "energy_very_low"
	codeUnderweight = "target_underweight"
)

// goalFields are the fields that say the goal.
var goalFields = []draft.Field{draft.GoalKind, draft.GoalWeight, draft.GoalBy, draft.GoalPerWeek, draft.GoalEnergy}

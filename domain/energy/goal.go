package energy

import (
	"math"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// GoalKind is what the client wants their weight to do.
type GoalKind string

// The kinds of goal.
const (
	Lose     GoalKind = "lose"
	Maintain GoalKind = "maintain"
	Gain     GoalKind = "gain"
)

// Valid reports whether the kind is known.
func (k GoalKind) Valid() bool { return k == Lose || k == Maintain || k == Gain }

// Goal is what was agreed: a kind, and where it makes sense a weight and a
// date, or an energy instead.
type Goal struct {
	Kind   GoalKind
	Weight unit.Kilogram // 0: none named
	By     unit.Date     // zero: no date named
	// PerWeek is the wished change of weight a week, without a sign; 0: none
	// named. It takes the place of a date.
	PerWeek unit.KilogramPerWeek
	Energy  unit.Kilocalorie // a day; 0: reckoned from weight and date
}

// StaticEnergyPerKilogram is the energy of a kilogram of body weight by the
// static rule of 3500 kcal a pound.
// Source: Wishnofsky 1958, Am J Clin Nutr 6:542. It promises more than happens
// (Hall 2008, Int J Obes 32:573), so results of it are labelled as such.
const StaticEnergyPerKilogram = 3500 / unit.KilogramPerPound

// Defaults and guards of the goal.
const (
	// DefaultDeficit is used where no date and no energy is named.
	// Source: AHA/ACC/TOS 2013 guideline: 500-750 kcal a day (from memory).
	DefaultDeficit unit.Kilocalorie = 500
	// DefaultSurplus is used where no date and no energy is named.
	// Source: Slater 2019, Front Nutr 6:131: 1500-2000 kJ a day (seen in a secondary
	// copy); 360 kcal are 1506 kJ.
	DefaultSurplus unit.Kilocalorie = 360
	// MostDeficit is the deficit above which the plan speaks up.
	// Source: NIH 1998 clinical guidelines: 500-1000 kcal a day (from memory).
	MostDeficit unit.Kilocalorie = 1000
	// MostSurplus is the surplus above which the plan speaks up: common
	// practice, no source.
	MostSurplus unit.Kilocalorie = 1000
	// FastestShare is the share of body weight that may be lost in a week.
	FastestShare = 0.01
	// FastestLoss is the weight that may be lost in a week.
	// Source: NIH 1998: 0.5-1 kg a week (from memory).
	FastestLoss unit.Kilogram = 1
)

// LeastEnergy returns the target below which a plan that lowers weight is held:
// 1200 kcal for women, 1500 for men.
// Source: AHA/ACC/TOS 2013 guideline (from memory).
func LeastEnergy(sex Sex) unit.Kilocalorie {
	if sex == Male {
		return 1500
	}
	return 1200
}

// VeryLowEnergy is the target below which weight is lowered only in clinical
// care. Source: NICE CG189, very-low-calorie diets (from memory).
const VeryLowEnergy unit.Kilocalorie = 800

// Dynamics is how a weight answers to energy over time. Package body has the
// model; it is handed in, because siblings do not know each other.
type Dynamics interface {
	// EnergyFor returns the energy a day that brings the weight in so many days,
	// at least 1, and false where none does.
	EnergyFor(goal unit.Kilogram, days int) (unit.Kilocalorie, bool)
	// DaysTo returns the first day on which an energy has brought the weight, and
	// false where it does not within ten years.
	DaysTo(goal unit.Kilogram, energy unit.Kilocalorie) (int, bool)
	// Weights returns the weights on two days of an energy, day 0 being the start
	// and the first day not after the last.
	Weights(energy unit.Kilocalorie, first, last int) (from, to unit.Kilogram)
	// Source names the model.
	Source() derive.Source
}

// GoalInput is what the arithmetic of a goal needs.
type GoalInput struct {
	Goal        Goal
	Today       unit.Date
	Sex         Sex
	Weight      unit.Kilogram
	Resting     unit.Kilocalorie // a day
	Maintenance derive.Derived[unit.Kilocalorie]
	Dynamics    Dynamics // nil: the static rule decides
}

// Outcome is what a goal comes to.
type Outcome struct {
	Target derive.Derived[unit.Kilocalorie] // a day
	// Change is target less maintenance: below nought it lowers weight.
	Change unit.Kilocalorie
	// Rate is the first rate of change by the static rule; loss is negative.
	Rate derive.Derived[unit.KilogramPerWeek]
	// ReachedOn is when the goal weight is reached; zero where it is not within
	// ten years, or where no weight was named.
	ReachedOn unit.Date
	// WishedWeight and WishedDays are the weight and the time that a date or a
	// rate asks for; nought where neither was named.
	WishedWeight unit.Kilogram
	WishedDays   int
	// MeanRate is the mean rate until then, or until the wished date; nought
	// where there is neither.
	MeanRate derive.Derived[unit.KilogramPerWeek]
	// LaterRate is the rate by the model once the water of the first week has
	// gone. It has no steps where the model does not decide or the target does not
	// lower weight.
	LaterRate derive.Derived[unit.KilogramPerWeek]
	// FastestRate is the fastest loss of Rate, MeanRate of a wish and LaterRate,
	// negative: what TooFast looks at. It is nought where nothing is lost.
	FastestRate unit.KilogramPerWeek
	// StaticTarget and StaticReachedOn are what the static rule says to the same
	// wish. StaticTarget has no steps where the wish names no date and no rate.
	StaticTarget    derive.Derived[unit.Kilocalorie]
	StaticReachedOn unit.Date
	// OutOfReach reports a wish that no energy brings: the target is then nought
	// for a loss, and the most that is searched for a gain.
	OutOfReach bool
	// TooFast reports a FastestRate beyond FastestShare or FastestLoss. The water
	// of the first week does not count, unless the wish itself asks for it.
	TooFast bool
	// SafeEnergy and SafeDate are the nearest wish inside the guards, set where
	// the target lowers weight. SafeDate is zero where no weight was named or
	// SafeEnergy does not reach it: then no date is safe. SafeSteps is the
	// derivation of SafeEnergy.
	SafeEnergy unit.Kilocalorie
	SafeSteps  []derive.Step
	SafeDate   unit.Date
}

// Lowers reports whether the target is below maintenance, whatever the goal is
// called. Less than half a kilocalorie is rounding.
func (o Outcome) Lowers() bool { return o.Change < -0.5 }

// Raises reports whether the target is above maintenance.
func (o Outcome) Raises() bool { return o.Change > 0.5 }

var staticRule = derive.Source{
	Text:       "static rule, 3500 kcal a pound (Wishnofsky 1958, Am J Clin Nutr 6:542); real change slows with time (Hall 2008, Int J Obes 32:573)",
	Confidence: derive.Seen,
}

// Work returns the target energy of a goal. The goal must have passed validation.
func Work(in GoalInput) Outcome {
	target, inReach := targetEnergy(in)
	maintenance := in.Maintenance.Value
	out := Outcome{Target: target, Change: target.Value - maintenance, OutOfReach: !inReach}
	if math.Abs(float64(out.Change)) < 1e-6 {
		out.Change = 0
	}
	out.Rate = rate(target.Value, maintenance, out.Change)
	out.StaticReachedOn = reachedByRule(in, out.Change)
	out.ReachedOn = reachedOn(in, out)
	out.FastestRate = min(0, out.Rate.Value)
	if w, wishes := wishOf(in); wishes {
		out.WishedWeight, out.WishedDays = w.weight, w.days
		out.StaticTarget, out.MeanRate = besideTarget(in, w), meanRate(in.Weight, w.weight, w.days)
		out.FastestRate = min(out.FastestRate, out.MeanRate.Value)
	} else if !out.ReachedOn.IsZero() {
		out.MeanRate = meanRate(in.Weight, in.Goal.Weight, in.Today.DaysUntil(out.ReachedOn))
	}
	if out.Lowers() {
		out.LaterRate = laterRate(in, out.Target.Value)
		out.FastestRate = min(out.FastestRate, out.LaterRate.Value)
		safe := safest(in)
		out.SafeEnergy, out.SafeSteps, out.SafeDate = safe.Value, safe.Steps, safeDate(in, safe.Value)
	}
	out.TooFast = tooFast(-out.FastestRate, in.Weight)
	return out
}

func rate(target, maintenance, change unit.Kilocalorie) derive.Derived[unit.KilogramPerWeek] {
	perWeek := float64(change) * 7 / StaticEnergyPerKilogram
	return derive.Exact(unit.KilogramPerWeek(perWeek), derive.Step{
		Key: "rate", Label: "First rate of change", Formula: "(target energy − maintenance energy) × 7 / 7716",
		Inputs: []derive.Input{
			{Name: "target energy", Value: float64(target), Unit: "kcal/day"},
			{Name: "maintenance energy", Value: float64(maintenance), Unit: "kcal/day"},
		},
		Result: perWeek, Unit: "kg/week", Source: staticRule,
		Note: "What the static rule promises for the first weeks; later it slows.",
	})
}

// fastest returns the loss a week that is within the guards.
func fastest(weight unit.Kilogram) unit.Kilogram {
	return min(FastestLoss, unit.Kilogram(FastestShare*float64(weight)))
}

// rounding keeps arithmetic from passing a guard that the figures do not.
const rounding = 1e-9

func tooFast(loss unit.KilogramPerWeek, weight unit.Kilogram) bool {
	return float64(loss) > float64(fastest(weight))+rounding
}

func meanRate(weight, goal unit.Kilogram, days int) derive.Derived[unit.KilogramPerWeek] {
	value := unit.KilogramPerWeek(7 * float64(goal-weight) / float64(days))
	return derive.Exact(value, derive.Step{
		Key: "mean_rate", Label: "Mean rate of change", Formula: "(goal weight − weight) × 7 / days",
		Inputs: []derive.Input{
			{Name: "goal weight", Value: float64(goal), Unit: "kg"},
			{Name: "weight", Value: float64(weight), Unit: "kg"},
			{Name: "days", Value: float64(days), Unit: "days"},
		},
		Result: float64(value), Unit: "kg/week", Source: derive.FromSteps,
	})
}

// The week in which the model's rate is looked at: glycogen and its water have
// settled by its first day, and no later week is faster (a test of courses shows it).
const (
	laterFrom = 7
	laterTo   = 14
)

// laterRate returns the rate of change by the model after the first week. The
// static rule has the energy of a kilogram for a body with much fat; a lean one
// loses faster (Hall 2008, Int J Obes 32:573).
func laterRate(in GoalInput, target unit.Kilocalorie) derive.Derived[unit.KilogramPerWeek] {
	if in.Dynamics == nil {
		return derive.Derived[unit.KilogramPerWeek]{}
	}
	from, to := in.Dynamics.Weights(target, laterFrom, laterTo)
	value := unit.KilogramPerWeek(to - from)
	return derive.Exact(value, derive.Step{
		Key: "later_rate", Label: "Rate of change after the first week", Formula: "weight on day 14 − weight on day 7",
		Inputs: []derive.Input{
			{Name: "weight on day 7", Value: float64(from), Unit: "kg"},
			{Name: "weight on day 14", Value: float64(to), Unit: "kg"},
		},
		Result: float64(value), Unit: "kg/week", Source: in.Dynamics.Source(),
		Note: "What the model expects at the target energy when the water of the first days has gone.",
	})
}

// reachedOn returns the day on which the target brings the goal weight.
func reachedOn(in GoalInput, out Outcome) unit.Date {
	g := in.Goal
	switch {
	case g.Weight == 0 || g.Kind == Maintain || out.Change == 0 || out.OutOfReach:
		return unit.Date{}
	case in.Dynamics == nil:
		return out.StaticReachedOn
	}
	if w, wishes := wishOf(in); wishes {
		return in.Today.AddDays(w.days)
	}
	days, reached := in.Dynamics.DaysTo(g.Weight, out.Target.Value)
	if !reached || days == 0 {
		return unit.Date{}
	}
	return in.Today.AddDays(days)
}

func reachedByRule(in GoalInput, change unit.Kilocalorie) unit.Date {
	if in.Goal.Weight == 0 || in.Goal.Kind == Maintain || change == 0 {
		return unit.Date{}
	}
	days := float64(in.Goal.Weight-in.Weight) * StaticEnergyPerKilogram / float64(change)
	const farthest = 365 * 20
	if days <= 0 || days > farthest {
		return unit.Date{}
	}
	return in.Today.AddDays(int(math.Ceil(days - rounding)))
}

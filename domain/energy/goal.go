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
	Weight unit.Kilogram    // 0: none named
	By     unit.Date        // zero: no date named
	Energy unit.Kilocalorie // a day; 0: reckoned from weight and date
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
	// Source: Slater 2019, Front Nutr 6:131: 1500-2000 kJ a day (from memory).
	DefaultSurplus unit.Kilocalorie = 350
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

// GoalInput is what the arithmetic of a goal needs.
type GoalInput struct {
	Goal        Goal
	Today       unit.Date
	Sex         Sex
	Weight      unit.Kilogram
	Maintenance derive.Derived[unit.Kilocalorie]
}

// Outcome is what a goal comes to.
type Outcome struct {
	Target derive.Derived[unit.Kilocalorie] // a day
	// Change is target less maintenance: below nought it lowers weight.
	Change unit.Kilocalorie
	// Rate is the first rate of change by the static rule; loss is negative.
	Rate derive.Derived[unit.KilogramPerWeek]
	// ReachedOn is when the static rule reaches the goal weight; zero where it
	// does not or where no weight was named.
	ReachedOn unit.Date
	// TooFast reports a loss beyond FastestShare or FastestLoss.
	TooFast bool
	// SafeEnergy and SafeDate are the nearest wish inside the guards, set where
	// the goal loses weight. SafeDate is zero where no weight was named or no
	// deficit is left inside the guards.
	SafeEnergy unit.Kilocalorie
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

// Work returns the target energy of a goal, with its rate by the static rule.
// The goal must have passed validation.
func Work(in GoalInput) Outcome {
	target := targetEnergy(in)
	maintenance := in.Maintenance.Value
	out := Outcome{Target: target, Change: target.Value - maintenance}
	if math.Abs(float64(out.Change)) < 1e-6 {
		out.Change = 0
	}
	out.Rate = rate(out.Change)
	out.TooFast = tooFast(-out.Rate.Value, in.Weight)
	out.ReachedOn = reachedOn(in, out.Change)
	if out.Lowers() {
		out.SafeEnergy, out.SafeDate = safest(in)
	}
	return out
}

func targetEnergy(in GoalInput) derive.Derived[unit.Kilocalorie] {
	g := in.Goal
	maintenance := derive.Input{Name: "maintenance energy", Value: float64(in.Maintenance.Value), Unit: "kcal/day"}
	switch {
	case g.Energy != 0:
		return targetStep(in, g.Energy-in.Maintenance.Value, "energy as agreed",
			[]derive.Input{{Name: "agreed energy", Value: float64(g.Energy), Unit: "kcal/day"}},
			derive.Source{Text: "agreed with the client", Confidence: derive.Arithmetic}, "")
	case g.Kind == Maintain:
		return targetStep(in, 0, "maintenance energy", []derive.Input{maintenance}, derive.FromSteps, "")
	case g.Weight != 0 && !g.By.IsZero():
		days := float64(in.Today.DaysUntil(g.By))
		change := float64(g.Weight-in.Weight) * StaticEnergyPerKilogram / days
		return targetStep(in, unit.Kilocalorie(change),
			"maintenance energy + (goal weight − weight) × 7716 / days",
			[]derive.Input{
				maintenance,
				{Name: "weight", Value: float64(in.Weight), Unit: "kg"},
				{Name: "goal weight", Value: float64(g.Weight), Unit: "kg"},
				{Name: "days", Value: days, Unit: "days"},
			}, staticRule, "")
	case g.Kind == Gain:
		return targetStep(in, DefaultSurplus, "maintenance energy + 350",
			[]derive.Input{maintenance},
			derive.Source{Text: "Slater 2019, Front Nutr 6:131 (1500-2000 kJ a day)", Confidence: derive.Memory},
			"No date was named, so a customary surplus is used.")
	default:
		return defaultLoss(in, maintenance)
	}
}

func defaultLoss(in GoalInput, maintenance derive.Input) derive.Derived[unit.Kilocalorie] {
	room := max(0, in.Maintenance.Value-LeastEnergy(in.Sex))
	deficit := min(DefaultDeficit, room)
	note := "No date was named, so a customary deficit is used."
	if deficit < DefaultDeficit {
		note = "No date was named; the customary deficit of 500 kcal would pass under the least energy, so it stops there."
	}
	return targetStep(in, -deficit, "the higher of maintenance energy − 500 and the least energy, never over maintenance",
		[]derive.Input{maintenance, {Name: "least energy", Value: float64(LeastEnergy(in.Sex)), Unit: "kcal/day"}},
		derive.Source{Text: "AHA/ACC/TOS 2013 guideline (deficit 500-750 kcal; 1200-1500 kcal for women, 1500-1800 for men)", Confidence: derive.Memory},
		note)
}

func targetStep(in GoalInput, change unit.Kilocalorie, formula string, inputs []derive.Input, source derive.Source, note string) derive.Derived[unit.Kilocalorie] {
	value := in.Maintenance.Value + change
	return derive.Exact(value, derive.Step{
		Key: "target", Label: "Target energy", Formula: formula, Inputs: inputs,
		Result: float64(value), Unit: "kcal/day", Source: source, Note: note,
	})
}

func rate(change unit.Kilocalorie) derive.Derived[unit.KilogramPerWeek] {
	perWeek := float64(change) * 7 / StaticEnergyPerKilogram
	return derive.Exact(unit.KilogramPerWeek(perWeek), derive.Step{
		Key: "rate", Label: "First rate of change", Formula: "(target energy − maintenance energy) × 7 / 7716",
		Inputs: []derive.Input{{Name: "target − maintenance", Value: float64(change), Unit: "kcal/day"}},
		Result: perWeek, Unit: "kg/week", Source: staticRule,
		Note: "What the static rule promises for the first weeks; later it slows.",
	})
}

// fastest returns the loss a week that is within the guards.
func fastest(weight unit.Kilogram) unit.Kilogram {
	return min(FastestLoss, unit.Kilogram(FastestShare*float64(weight)))
}

func tooFast(loss unit.KilogramPerWeek, weight unit.Kilogram) bool {
	const rounding = 1e-9
	return float64(loss) > float64(fastest(weight))+rounding
}

func reachedOn(in GoalInput, change unit.Kilocalorie) unit.Date {
	if in.Goal.Weight == 0 || change == 0 {
		return unit.Date{}
	}
	days := float64(in.Goal.Weight-in.Weight) * StaticEnergyPerKilogram / float64(change)
	const farthest = 365 * 20
	if days <= 0 || days > farthest {
		return unit.Date{}
	}
	return in.Today.AddDays(int(math.Ceil(days - 1e-9)))
}

// safest returns the energy and, where a goal weight is named, the earliest
// date that stay within the rate guard, the deficit guard and the least energy.
func safest(in GoalInput) (unit.Kilocalorie, unit.Date) {
	byRate := unit.Kilocalorie(float64(fastest(in.Weight)) * StaticEnergyPerKilogram / 7)
	room := max(0, in.Maintenance.Value-LeastEnergy(in.Sex))
	deficit := min(byRate, MostDeficit, room)
	energy := in.Maintenance.Value - deficit
	if in.Goal.Weight == 0 || in.Goal.Weight >= in.Weight || deficit < 1 {
		return energy, unit.Date{}
	}
	days := math.Ceil(float64(in.Weight-in.Goal.Weight) * StaticEnergyPerKilogram / float64(deficit))
	return energy, in.Today.AddDays(int(days))
}

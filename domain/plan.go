package domain

import (
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// Plan is what an intake comes to.
type Plan struct {
	Intake      Intake
	Age         unit.Year
	BMI         derive.Derived[unit.KilogramPerSquareMetre]
	Resting     derive.Derived[unit.Kilocalorie] // a day
	Activity    derive.Derived[unit.PAL]
	Maintenance derive.Derived[unit.Kilocalorie] // a day
	Findings    []derive.Finding                 // gravest first
	Gate        screen.Gate
	// Goal is what the goal comes to. It is nil where a referral takes the
	// plan's place: then no target exists.
	Goal *energy.Outcome
	// Targets is nil where Goal is. Where Gate.Held(), the targets are there to
	// be looked at and must not be issued.
	Targets *Targets
}

// Targets is the day's energy split into macros and hand measures.
type Targets struct {
	Energy       derive.Derived[unit.Kilocalorie]
	Protein      derive.Derived[unit.Gram]
	ProteinPerKg unit.GramPerKilogram
	// ProteinLimited reports that protein was set lower than asked, to fit.
	ProteinLimited bool
	Fat            derive.Derived[unit.Gram]
	Carbohydrate   derive.Derived[unit.Gram]
	Fibre          derive.Derived[unit.Gram]
	Shares         macro.Shares
	FatFloor       unit.Percent // in force
	// CarbFatBalance is the balance that came out, after floor and least
	// carbohydrate; the intake has what was asked for.
	CarbFatBalance unit.Percent
	Split          macro.Split
	Contents       hand.Contents
	Allotment      hand.Allotment
}

// Issuable reports whether the plan may leave the desk.
func (p Plan) Issuable() bool { return p.Gate.Open() && p.Targets != nil }

// NewPlan computes the whole plan. It is pure: the same intake gives the same
// plan. The error is [unit.Problems] and lists everything that is missing.
func NewPlan(in Intake) (Plan, error) {
	if err := in.Validate(); err != nil {
		return Plan{}, err
	}
	p := Plan{Intake: in, Age: in.Age()}
	p.BMI = bodyMassIndex(in.Weight, in.Height)
	p.Resting = energy.Resting(in.RestingEquation, energy.RestingInput{
		Sex: in.Client.EquationSex, Age: p.Age, Weight: in.Weight, Height: in.Height,
	})
	p.Activity = in.Activity.Level()
	p.Maintenance = energy.Maintenance(p.Resting, p.Activity)
	outcome := energy.Work(energy.GoalInput{
		Goal: in.Goal, Today: in.Date, Sex: in.Client.EquationSex,
		Weight: in.Weight, Maintenance: p.Maintenance,
	})
	if target := outcome.Target.Value; target > MostEnergyAsked {
		return Plan{}, unit.Problems{{Field: FieldGoalBy, Given: in.Goal.By.String(), Accepted: "a later date: this one asks for more than 10000 kcal a day"}}
	}
	targets := newTargets(p, outcome)
	p.Findings = findings(p, outcome, targets)
	p.Gate = screen.Judge(p.Findings, asked(p, outcome, targets), in.Reasons)
	if p.Gate.Referred() {
		p.Findings = screen.WithoutFigures(p.Findings)
		p.Gate = screen.Judge(p.Findings, p.Gate.Asked, in.Reasons)
		return p, nil
	}
	p.Goal, p.Targets = &outcome, targets
	return p, nil
}

func bodyMassIndex(weight unit.Kilogram, height unit.Centimetre) derive.Derived[unit.KilogramPerSquareMetre] {
	value := unit.BMI(weight, height)
	return derive.Exact(value, derive.Step{
		Key: "bmi", Label: "Body mass index", Formula: "weight / height²",
		Inputs: []derive.Input{
			{Name: "weight", Value: float64(weight), Unit: "kg"},
			{Name: "height", Value: height.Metres(), Unit: "m"},
		},
		Result: float64(value), Unit: "kg/m²",
		Source: derive.Source{Text: "WHO", Confidence: derive.SeenSecond},
	})
}

func newTargets(p Plan, outcome energy.Outcome) *Targets {
	in := p.Intake
	floor := fatFloor(p)
	// A wish for an impossible date asks for less than nothing; it is referred
	// below 800 kcal, and split as nought until then.
	energyToSplit := max(outcome.Target.Value, 0)
	protein := macro.Protein(macro.ProteinInput{
		Weight: in.Weight, Height: in.Height, Age: p.Age,
		Direction:      direction(outcome),
		Kidney:         in.Screening.Yes(screen.Kidney),
		AfterBariatric: in.Screening.Yes(screen.BariatricPast),
		Asked:          in.ProteinPerKg,
		Energy:         energyToSplit,
		FatFloor:       floor,
	})
	split := macro.Divide(macro.SplitInput{
		Energy: energyToSplit, Protein: protein.Grams.Value,
		CarbFatBalance: in.CarbFatBalance, FatFloor: floor,
		LeastCarbohydrate: leastCarbohydrate(in),
	})
	t := &Targets{
		Energy: outcome.Target, Protein: protein.Grams, ProteinPerKg: protein.PerKg, ProteinLimited: protein.Capped,
		Fat: split.Fat, Carbohydrate: split.Carbohydrate,
		Fibre:    macro.Fibre(energyToSplit),
		Shares:   macro.SharesOf(protein.Grams.Value, split.Fat.Value, split.Carbohydrate.Value),
		FatFloor: floor, Split: split,
		Contents: hand.Fill(in.Pattern, in.Avoid),
	}
	t.CarbFatBalance = balanceOf(*t)
	t.Allotment = hand.Allot(hand.Aim{
		Meals: in.MealsPerDay, Energy: t.Energy.Value, Protein: t.Protein.Value,
		Fat: t.Fat.Value, Carbohydrate: t.Carbohydrate.Value, FatFloor: floor,
		FewVegetables: in.Screening.Yes(screen.GutNarrowing),
	}, t.Contents)
	return t
}

func fatFloor(p Plan) unit.Percent {
	if screen.RaisesFloor(p.Intake.Client.EquationSex, p.Age, p.BMI.Value) {
		return max(p.Intake.FatFloor, macro.RaisedFatFloor)
	}
	return p.Intake.FatFloor
}

func direction(o energy.Outcome) macro.Direction {
	switch {
	case o.Lowers():
		return macro.Lowering
	case o.Raises():
		return macro.Raising
	}
	return macro.Level
}

// leastCarbohydrate keeps the higher allowance, as one question asks for both.
func leastCarbohydrate(in Intake) unit.Gram {
	if in.Screening.Yes(screen.Pregnant) {
		return macro.CarbohydrateBreastfeeding
	}
	return 0
}

func balanceOf(t Targets) unit.Percent {
	fat := float64(t.Fat.Value) * macro.EnergyPerGramFat
	carbohydrate := float64(t.Carbohydrate.Value) * macro.EnergyPerGramCarbohydrate
	if fat+carbohydrate <= 0 {
		return 0
	}
	return unit.Percent(100 * carbohydrate / (fat + carbohydrate))
}

// asked returns what the plan would do, in the terms in which findings stop.
// Advice on fluid is left out of a plan where it is stopped, so it is never
// asked for.
func asked(p Plan, outcome energy.Outcome, t *Targets) derive.Scope {
	scope := derive.ScopePlan | derive.ScopeFibre
	if outcome.Lowers() {
		scope |= derive.ScopeDeficit
	}
	if outcome.Raises() {
		scope |= derive.ScopeSurplus
	}
	if t.ProteinPerKg != macro.ProteinKidney {
		scope |= derive.ScopeProtein
	}
	if t.Shares.Carbohydrate < macro.CarbohydrateShareFloor-shareRounding {
		scope |= derive.ScopeCarbohydrate
	}
	return scope
}

// shareRounding keeps a share that is 45 % but for rounding from counting as less.
const shareRounding unit.Percent = 1e-6

func findings(p Plan, outcome energy.Outcome, t *Targets) []derive.Finding {
	facts := screen.Facts{
		Age: p.Age, Sex: p.Intake.Client.EquationSex, BMI: p.BMI.Value,
		Goal: p.Intake.Goal.Kind, Outcome: outcome, Resting: p.Resting.Value,
	}
	if p.Intake.Goal.Weight != 0 {
		facts.GoalBMI = unit.BMI(p.Intake.Goal.Weight, p.Intake.Height)
	}
	facts.Carbohydrate, facts.MeasuresFar = t.Carbohydrate.Value, t.Allotment.Distance.Far
	facts.ProteinLimited = t.ProteinLimited
	return screen.Findings(p.Intake.Screening, facts)
}

// Derivation returns every step of the plan in the order of the computation.
func (p Plan) Derivation() []derive.Step {
	var steps []derive.Step
	steps = append(steps, p.BMI.Steps...)
	steps = append(steps, p.Resting.Steps...)
	steps = append(steps, p.Activity.Steps...)
	steps = append(steps, p.Maintenance.Steps...)
	if p.Targets == nil {
		return steps
	}
	t := p.Targets
	steps = append(steps, t.Energy.Steps...)
	steps = append(steps, p.Goal.Rate.Steps...)
	steps = append(steps, t.Protein.Steps...)
	steps = append(steps, t.Fat.Steps...)
	steps = append(steps, t.Carbohydrate.Steps...)
	steps = append(steps, t.Fibre.Steps...)
	for _, c := range t.Contents {
		steps = append(steps, c.Steps...)
	}
	return append(steps, t.Allotment.Steps...)
}

// Baskets returns the foods that each measure can be filled with.
func (p Plan) Baskets() map[hand.Kind][]food.Food {
	all := make(map[hand.Kind][]food.Food, 4)
	for _, k := range hand.Kinds() {
		all[k] = food.Basket(hand.GroupOf(k), p.Intake.Pattern, p.Intake.Avoid)
	}
	return all
}

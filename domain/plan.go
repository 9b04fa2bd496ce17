package domain

import (
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// Plan is what an intake comes to.
type Plan struct {
	Intake  Intake
	Age     unit.Year
	BMI     derive.Derived[unit.KilogramPerSquareMetre]
	Body    Composition
	Resting derive.Derived[unit.Kilocalorie] // a day
	// Equations are the published equations for resting energy side by side.
	Equations   []energy.Comparison
	Activity    derive.Derived[unit.PAL]
	Maintenance derive.Derived[unit.Kilocalorie] // a day
	// CrossChecks are other published ways to total energy, shown and not used.
	CrossChecks []energy.CrossCheck
	Findings    []derive.Finding // gravest first
	Gate        screen.Gate
	// Goal is what the goal comes to. It is nil where a referral takes the
	// plan's place: then no target exists.
	Goal *energy.Outcome
	// Projection is the course that the target leads to. It is nil where Goal is.
	Projection *Projection
	// Targets is nil where Goal is. Where Gate.Held(), the targets are there to
	// be looked at and must not be issued.
	Targets *Targets
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
	p.Body = composition(in)
	resting := energy.RestingInput{
		Sex: in.Client.EquationSex, Age: p.Age, Weight: in.Weight, Height: in.Height,
		LeanMass: p.Body.Lean.Value, Measured: in.MeasuredResting,
	}
	p.Resting, p.Equations = energy.Resting(in.RestingEquation, resting), energy.Compare(in.RestingEquation, resting)
	p.Activity = in.Activity.Level()
	p.Maintenance = energy.Maintenance(p.Resting, p.Activity)
	p.CrossChecks = energy.CrossChecks(resting, in.Activity, in.Reproduction)
	course := courseOf(p)
	outcome := energy.Work(energy.GoalInput{
		Goal: in.Goal, Today: in.Date, Sex: in.Client.EquationSex,
		Weight: in.Weight, Maintenance: p.Maintenance, Dynamics: course,
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
	p.Goal, p.Targets, p.Projection = &outcome, targets, project(p, course, outcome)
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

// Derivation returns every step of the plan in the order of the computation.
func (p Plan) Derivation() []derive.Step {
	var steps []derive.Step
	steps = append(steps, p.BMI.Steps...)
	steps = append(steps, p.Body.Lean.Steps...)
	steps = append(steps, p.Resting.Steps...)
	steps = append(steps, p.Activity.Steps...)
	steps = append(steps, p.Maintenance.Steps...)
	if p.Targets == nil {
		return steps
	}
	t := p.Targets
	steps = append(steps, t.Energy.Steps...)
	steps = append(steps, p.Goal.Rate.Steps...)
	steps = append(steps, p.Projection.steps()...)
	steps = append(steps, t.macroSteps()...)
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

package domain

import (
	"slices"
	"strings"

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
	Equations []energy.Comparison
	Agreement energy.Agreement
	Activity  derive.Derived[unit.PAL]
	// Maintenance energy a day, with what a pregnancy or breastfeeding adds.
	Maintenance derive.Derived[unit.Kilocalorie]
	// CrossChecks are other published ways to total energy, shown and not used;
	// none where they would need the stage of a pregnancy that was not told.
	CrossChecks []energy.CrossCheck
	Findings    []derive.Finding // gravest first
	Gate        screen.Gate
	// Goal is what the goal comes to. It is nil where a referral takes the
	// plan's place: then no target exists.
	Goal *energy.Outcome
	// OutOfReach reports a wish that no energy brings. It is known too where a
	// referral takes the plan's place.
	OutOfReach bool
	// Projection is the course that the target leads to. It is nil where Goal is,
	// and with pregnancy or breastfeeding, which the model does not know.
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
	p.spend()
	course := courseOf(p)
	outcome := energy.Work(p.goalInput(course))
	if outcome.Target.Value > MostEnergyAsked {
		return Plan{}, unit.Problems{tooMuch(in)}
	}
	p.OutOfReach = outcome.OutOfReach
	targets := newTargets(p, outcome)
	p.Findings, p.Gate = judge(p, outcome, targets, targets.Allotment, course)
	if p.Gate.Referred() {
		p.Findings = screen.WithoutFigures(p.Findings)
		p.Gate = screen.Judge(p.Findings, p.Gate.Asked, in.Reasons)
		return p, nil
	}
	targets.Allotment.Alternatives = alike(p, outcome, targets, course)
	p.Goal, p.Targets = &outcome, targets
	if p.followed() {
		p.Projection = project(p, course, outcome)
	}
	return p, nil
}

// spend fills in what the client spends.
func (p *Plan) spend() {
	in := p.Intake
	lean := p.Body.Lean
	resting := energy.RestingInput{
		Sex: in.Client.EquationSex, Age: p.Age, Weight: in.Weight, Height: in.Height,
		LeanMass: lean.Value, LeanError: (lean.High - lean.Low) / 2, LeanMeasured: p.Body.Fat.Measured(),
		Measured: in.MeasuredResting,
	}
	p.Resting, p.Equations = energy.Resting(in.RestingEquation, resting), energy.Compare(in.RestingEquation, resting)
	p.Agreement = energy.AgreementOf(p.Equations, p.Resting)
	p.Activity = in.Activity.Level()
	reproduction := reproductionOf(in)
	p.Maintenance = energy.WithReproduction(energy.Maintenance(p.Resting, p.Activity), reproduction)
	if p.Age < screen.AdultAge {
		forAdults(&p.Resting, &p.Maintenance)
	}
	if !reproduction.StageNotTold {
		p.CrossChecks = energy.CrossChecks(resting, in.Activity, reproduction)
	}
}

// forAdults says in the last step of an energy that it is not valid for a client
// who still grows.
func forAdults(energies ...*derive.Derived[unit.Kilocalorie]) {
	for _, e := range energies {
		steps := slices.Clone(e.Steps)
		if last := len(steps) - 1; last >= 0 {
			steps[last].Note = strings.TrimSpace("Made for adults: not valid under 18. " + steps[last].Note)
		}
		e.Steps = steps
	}
}

// reproductionOf returns what was told of a pregnancy or of breastfeeding, and
// that no stage was where the one question for both has all that is known.
func reproductionOf(in Intake) energy.Reproduction {
	r := in.Reproduction
	r.StageNotTold = in.Screening.Yes(screen.Pregnant) && !r.Told()
	return r
}

// followed reports whether the model of weight dynamics knows the client: it was
// made from adults who are neither pregnant nor breastfeeding.
func (p *Plan) followed() bool {
	return !p.Intake.Screening.Yes(screen.Pregnant) && !p.Intake.Reproduction.Told()
}

func (p *Plan) goalInput(c course) energy.GoalInput {
	in := energy.GoalInput{
		Goal: p.Intake.Goal, Today: p.Intake.Date, Sex: p.Intake.Client.EquationSex,
		Weight: p.Intake.Weight, Resting: p.Resting.Value, Maintenance: p.Maintenance,
	}
	if p.followed() {
		in.Dynamics = c
	}
	return in
}

// tooMuch names the field that asks for more energy than any plan accepts.
func tooMuch(in Intake) unit.Problem {
	const more = ": this one asks for more than 10000 kcal a day"
	switch {
	case !in.Goal.By.IsZero():
		return unit.Problem{Field: FieldGoalBy, Given: in.Goal.By.String(), Accepted: "a later date" + more}
	case in.Goal.PerWeek != 0:
		return unit.Problem{Field: FieldGoalPerWeek, Given: given(float64(in.Goal.PerWeek), "kg a week"), Accepted: "a slower rate" + more}
	}
	return unit.Problem{Field: FieldActivity, Given: given(float64(in.Activity.Level().Value), ""), Accepted: "a lower level of activity" + more}
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
	steps = append(steps, p.Body.WaistToHeight.Steps...)
	steps = append(steps, p.Resting.Steps...)
	steps = append(steps, p.Activity.Steps...)
	steps = append(steps, p.Maintenance.Steps...)
	if p.Targets == nil {
		return steps
	}
	t := p.Targets
	steps = append(steps, t.Energy.Steps...)
	steps = append(steps, p.Goal.Rate.Steps...)
	steps = append(steps, p.Goal.MeanRate.Steps...)
	steps = append(steps, p.Goal.LaterRate.Steps...)
	steps = append(steps, p.Goal.StaticTarget.Steps...)
	steps = append(steps, p.Goal.SafeSteps...)
	steps = append(steps, p.Projection.steps()...)
	steps = append(steps, t.macroSteps()...)
	for _, c := range t.Contents {
		steps = append(steps, c.Steps...)
	}
	return append(steps, t.Allotment.Steps...)
}

// Baskets returns the foods that each measure is filled with: those that the
// practitioner chose, as far as they suit the client, else the usual ones.
func (p Plan) Baskets() map[hand.Kind][]food.Food {
	all := make(map[hand.Kind][]food.Food, 4)
	for _, k := range hand.Kinds() {
		all[k] = p.Intake.Hand.Basket.Fill(hand.GroupOf(k), p.Intake.Pattern, p.Intake.Avoid).Foods
	}
	return all
}

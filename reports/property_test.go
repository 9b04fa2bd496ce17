package reports

import (
	"errors"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// anyIntake draws an intake in which most questions are answered with no, so
// that many plans can be issued.
func anyIntake(t *rapid.T) domain.Intake {
	in := domain.NewIntake()
	in.Date = unit.Date{Year: 2026, Month: 3, Day: 2}
	in.Client = domain.Client{
		Name:        rapid.String().Draw(t, "name"),
		Born:        in.Date.AddDays(-rapid.IntRange(16*365, 95*365).Draw(t, "days of age")),
		EquationSex: rapid.SampledFrom([]energy.Sex{energy.Female, energy.Male}).Draw(t, "sex"),
	}
	in.Height = unit.Centimetre(rapid.Float64Range(130, 215).Draw(t, "height"))
	in.Weight = unit.WeightAtBMI(unit.KilogramPerSquareMetre(rapid.Float64Range(17, 55).Draw(t, "BMI")), in.Height)
	in.Activity = energy.Activity{PAL: unit.PAL(rapid.Float64Range(1.2, 2.5).Draw(t, "PAL"))}
	in.Goal = anyGoal(t, in)
	in.MeasuredResting = rapid.SampledFrom([]unit.Kilocalorie{0, 0, 1400}).Draw(t, "measured")
	in.RestingEquation = rapid.SampledFrom(energy.RestingEquations()).Draw(t, "equation")
	in.Body.Fat = rapid.SampledFrom([]unit.Percent{0, 0, 12, 45}).Draw(t, "fat")
	in.UsualFibre = rapid.SampledFrom([]unit.Gram{0, 8, 28, 60}).Draw(t, "fibre")
	in.Counting = rapid.SampledFrom(macro.Countings()).Draw(t, "counting")
	in.ProteinBasis = rapid.SampledFrom(macro.Bases()).Draw(t, "basis")
	in.FatFloorPerKg = rapid.SampledFrom([]unit.GramPerKilogram{0, 0, 1}).Draw(t, "floor")
	in.Reproduction.Breastfeeding = rapid.SampledFrom([]energy.BreastfeedingAge{0, 0, 0, 0, energy.FirstHalfYear}).Draw(t, "breastfeeding")
	in.MealsPerDay = rapid.IntRange(domain.LeastMeals, domain.MostMeals).Draw(t, "meals")
	in.Pattern = rapid.SampledFrom(food.Patterns()).Draw(t, "pattern")
	in.Avoid = rapid.SliceOfNDistinct(rapid.SampledFrom(food.Allergens()), 0, 6, rapid.ID).Draw(t, "avoid")
	in.CarbFatBalance = unit.Percent(rapid.IntRange(10, 90).Draw(t, "balance"))
	answers := screen.Answers{}
	for _, q := range rapid.SliceOfNDistinct(rapid.SampledFrom(screen.Questions()), 0, 3, func(q screen.Question) screen.Code { return q.Code }).Draw(t, "yes") {
		answers[q.Code] = screen.Yes
	}
	in.Screening = answers.AllNo()
	return lifted(in)
}

// anyGoal draws a goal that is told in one of the ways: without more, with a
// weight, by a date, at a rate or as an energy.
func anyGoal(t *rapid.T, in domain.Intake) energy.Goal {
	g := energy.Goal{Kind: rapid.SampledFrom([]energy.GoalKind{energy.Lose, energy.Maintain, energy.Gain}).Draw(t, "goal")}
	by := unit.Kilogram(rapid.Float64Range(0.01, 0.2).Draw(t, "change"))
	weight := in.Weight * (1 - by)
	switch g.Kind {
	case energy.Maintain:
		return g
	case energy.Gain:
		weight = in.Weight * (1 + by)
	}
	switch rapid.IntRange(0, 4).Draw(t, "way") {
	case 1:
		g.Weight = weight
	case 2:
		g.Weight, g.By = weight, in.Date.AddDays(rapid.IntRange(30, 3600).Draw(t, "days"))
	case 3:
		g.Weight, g.PerWeek = weight, unit.KilogramPerWeek(rapid.Float64Range(0.05, 0.9).Draw(t, "rate"))
	case 4:
		g.Weight, g.Energy = weight, unit.Kilocalorie(rapid.Float64Range(1300, 3500).Draw(t, "energy"))
	}
	return g
}

func anyOptions(t *rapid.T, logo []byte) Options {
	text := rapid.StringN(0, 40, -1)
	return Options{
		Paper: Paper(rapid.IntRange(0, 1).Draw(t, "paper")),
		Style: unit.Style{
			System:       unit.System(rapid.IntRange(0, 2).Draw(t, "system")),
			EnergyIn:     unit.EnergyUnit(rapid.IntRange(0, 1).Draw(t, "energy")),
			DecimalComma: rapid.Bool().Draw(t, "comma"),
		},
		Brand: Brand{
			Practice: text.Draw(t, "practice"), Practitioner: text.Draw(t, "practitioner"), Registration: text.Draw(t, "registration"),
			Contact: rapid.SliceOfN(text, 0, 3).Draw(t, "contact"), Footer: text.Draw(t, "footer"),
			Logo: rapid.SampledFrom([][]byte{nil, logo}).Draw(t, "logo"), Colour: rapid.StringMatching(`#[0-9A-F]{6}`).Draw(t, "colour"),
		},
		WithoutNumbers:  rapid.Bool().Draw(t, "without numbers"),
		ClientFirstName: text.Draw(t, "first name"), PlanVersion: rapid.IntRange(0, 40).Draw(t, "version"),
		NextStep: text.Draw(t, "step"), NextVisit: text.Draw(t, "visit"),
	}
}

// Whatever the plan and whatever is typed: a paper or a typed refusal, never a
// panic; and the paper tells the plan.
func TestAnyPlanMakesItsPaper(t *testing.T) {
	logo := testLogo(t)
	rapid.Check(t, func(r *rapid.T) {
		plan, err := domain.NewPlan(anyIntake(r))
		if err != nil {
			r.Skip(err)
		}
		opt := anyOptions(r, logo)
		pdf, err := Handout(plan, opt)
		if !plan.Issuable() {
			var not *NotIssuableError
			if !errors.As(err, &not) {
				r.Fatalf("a plan that may not be issued: %v", err)
			}
			checkReferral(t, r, plan, opt)
			return
		}
		if err != nil {
			r.Fatal(err)
		}
		path := written(t, pdf, nil)
		text := textOf(t, path)
		checkTells(t, plan, opt, text)
		if opt.WithoutNumbers {
			opt.Brand, opt.ClientFirstName, opt.NextStep, opt.NextVisit = Brand{}, "", "", ""
			pdf, err := Handout(plan, opt)
			checkNoNumbers(t, textOf(t, written(t, pdf, err)))
		}
		for _, f := range plan.Findings {
			if careWords[f.Code] == "" {
				r.Errorf("no plain words for %s", f.Code)
			}
		}
		if t.Failed() {
			r.FailNow()
		}
	})
}

func checkReferral(t *testing.T, r *rapid.T, plan domain.Plan, opt Options) {
	pdf, err := Referral(plan, opt)
	if !plan.Gate.Referred() {
		var not *NotReferredError
		if !errors.As(err, &not) {
			r.Fatalf("a plan that nothing refers: %v", err)
		}
		return
	}
	if err != nil {
		r.Fatal(err)
	}
	mustHold(t, flow(t, written(t, pdf, nil)), "To whom it may concern", "What we found", plan.Gate.Refers[0].Code, "Your answer")
	if t.Failed() {
		r.FailNow()
	}
}

package domain

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// exampleIntake is an invented adult without anything that stops a plan.
func exampleIntake() Intake {
	in := NewIntake()
	in.Date = unit.Date{Year: 2026, Month: time.March, Day: 2}
	in.Client = Client{Name: "Example", Born: unit.Date{Year: 1990, Month: time.May, Day: 17}, EquationSex: energy.Female}
	in.Height, in.Weight = 168, 72.6
	in.Activity = energy.Activity{Category: energy.LowActive}
	in.Goal = energy.Goal{Kind: energy.Lose, Weight: 66, By: unit.Date{Year: 2026, Month: time.August, Day: 31}}
	in.Screening = screen.Answers{}.AllNo()
	return in
}

func anyIntake(t *rapid.T) Intake {
	in := NewIntake()
	in.Date = unit.Date{Year: 2026, Month: time.March, Day: 2}
	in.Client.Born = in.Date.AddDays(-rapid.IntRange(5*365, 95*365).Draw(t, "days of life"))
	in.Client.EquationSex = rapid.SampledFrom([]energy.Sex{energy.Female, energy.Male}).Draw(t, "sex")
	in.Height = unit.Centimetre(rapid.Float64Range(145, 205).Draw(t, "height"))
	bmi := rapid.Float64Range(14, 50).Draw(t, "bmi")
	in.Weight = min(MostWeight, max(LeastWeight, unit.WeightAtBMI(unit.KilogramPerSquareMetre(bmi), in.Height)))
	in.Activity = rapid.SampledFrom([]energy.Activity{{Category: energy.Inactive}, {Category: energy.Active}, {Category: energy.VeryActive}, {PAL: 1.62}, {PAL: 1}}).Draw(t, "activity")
	in.Goal = anyGoal(t, in)
	in.MealsPerDay = rapid.IntRange(1, 6).Draw(t, "meals")
	in.Pattern = rapid.SampledFrom(food.Patterns()).Draw(t, "pattern")
	in.Avoid = rapid.SliceOfN(rapid.SampledFrom(food.Allergens()), 0, 4).Draw(t, "avoid")
	in.CarbFatBalance = unit.Percent(rapid.IntRange(0, 100).Draw(t, "balance"))
	in.FatFloor = unit.Percent(rapid.IntRange(15, 40).Draw(t, "floor"))
	in.ProteinPerKg = rapid.SampledFrom([]unit.GramPerKilogram{0, 0.8, 1.6, 2.5}).Draw(t, "protein")
	in.Screening = anyAnswers(t)
	return in
}

func anyGoal(t *rapid.T, in Intake) energy.Goal {
	g := energy.Goal{Kind: rapid.SampledFrom([]energy.GoalKind{energy.Lose, energy.Maintain, energy.Gain}).Draw(t, "kind")}
	switch how := rapid.SampledFrom([]string{"nothing", "energy", "weight and date"}).Draw(t, "how"); {
	case how == "energy":
		g.Energy = unit.Kilocalorie(rapid.IntRange(400, 5000).Draw(t, "kcal"))
	case how == "weight and date" && g.Kind != energy.Maintain:
		share := rapid.Float64Range(0.03, 0.3).Draw(t, "share")
		g.Weight = in.Weight * unit.Kilogram(1-share)
		if g.Kind == energy.Gain {
			g.Weight = in.Weight * unit.Kilogram(1+share)
		}
		g.Weight = min(MostWeight, max(LeastWeight, g.Weight))
		g.By = in.Date.AddDays(rapid.IntRange(1, 700).Draw(t, "days"))
	}
	return g
}

func anyAnswers(t *rapid.T) screen.Answers {
	answers := screen.Answers{}.AllNo()
	for range rapid.IntRange(0, 3).Draw(t, "not no") {
		q := rapid.SampledFrom(screen.Questions()).Draw(t, "question")
		answers[q.Code] = rapid.SampledFrom([]screen.Answer{screen.Yes, screen.NotAsked}).Draw(t, "answer")
	}
	return answers
}

// Over random intakes: nothing inside the scope of a refer or of a hold without
// its reason may be issued, fat is never under its floor, and grams times
// factors give the energy.
func TestNothingUnsafeIsIssued(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := anyIntake(t)
		p, err := NewPlan(in)
		if err != nil {
			return // an impossible wish, such as a goal weight out of bounds
		}
		lowers := p.Goal != nil && p.Goal.Lowers()
		for _, f := range p.Findings {
			stops := f.Scope.Covers(derive.ScopePlan) || (lowers && f.Scope.Covers(derive.ScopeDeficit))
			if stops && (f.Level == derive.Refer || f.Level == derive.Hold) && p.Issuable() {
				t.Fatalf("issued although %s says %s: %+v", f.Code, f.Level, f)
			}
		}
		if p.Gate.Referred() != (p.Targets == nil) {
			t.Fatalf("referred %v, targets %v", p.Gate.Referred(), p.Targets)
		}
		if len(screen.Unasked(in.Screening)) > 0 && p.Issuable() {
			t.Fatal("issued although something was not asked")
		}
		if p.Targets != nil {
			checkTargets(t, p)
		}
	})
}

func checkTargets(t *rapid.T, p Plan) {
	g := p.Targets
	target := float64(g.Energy.Value)
	if lowers := p.Goal.Lowers(); p.Issuable() && lowers && g.Energy.Value < energy.LeastEnergy(p.Intake.Client.EquationSex) {
		t.Fatalf("issued %v kcal", target)
	}
	fat := 9 * float64(g.Fat.Value)
	if fat < float64(g.FatFloor)/100*target-1e-6 || fat < 0.15*target-1e-6 {
		t.Fatalf("fat brings %v of %v kcal, floor %v %%", fat, target, g.FatFloor)
	}
	if sum := 4*float64(g.Protein.Value) + fat + 4*float64(g.Carbohydrate.Value); math.Abs(sum-target) > 1e-6 {
		t.Fatalf("grams bring %v, target %v", sum, target)
	}
	if p.Intake.Screening.Yes(screen.Kidney) && p.Issuable() && p.Intake.ProteinPerKg == 0 &&
		math.Abs(float64(g.Protein.Value)-0.8*float64(p.Intake.Weight)) > 1e-6 && !tight(p) {
		t.Fatalf("kidney disease: protein %v at %v kg", g.Protein.Value, p.Intake.Weight)
	}
}

// tight reports that energy is too little for 0.8 g/kg beside the fat floor.
func tight(p Plan) bool {
	return 4*0.8*float64(p.Intake.Weight) > float64(p.Targets.Energy.Value)*(1-float64(p.Targets.FatFloor)/100)
}

func TestEveryNumberHasADerivationWithASource(t *testing.T) {
	p, err := NewPlan(exampleIntake())
	if err != nil {
		t.Fatal(err)
	}
	steps := map[string]derive.Step{}
	for _, s := range p.Derivation() {
		if s.Label == "" || s.Formula == "" || s.Source.Text == "" || s.Source.Confidence == "" {
			t.Errorf("step %q lacks label, formula or source: %+v", s.Key, s)
		}
		if s.Range != nil && s.Range.Low > s.Range.High {
			t.Errorf("step %q has a range that runs backwards: %+v", s.Key, s.Range)
		}
		steps[s.Key] = s
	}
	b := p.Targets.Allotment.Brings
	shown := map[string]float64{
		"bmi": float64(p.BMI.Value), "resting": float64(p.Resting.Value), "pal": float64(p.Activity.Value),
		"maintenance": float64(p.Maintenance.Value), "target": float64(p.Targets.Energy.Value), "rate": float64(p.Goal.Rate.Value),
		"protein": float64(p.Targets.Protein.Value), "fat": float64(p.Targets.Fat.Value),
		"carbohydrate": float64(p.Targets.Carbohydrate.Value), "fibre": float64(p.Targets.Fibre.Value),
		"allotted_energy": float64(b.Energy), "allotted_protein": float64(b.Protein), "allotted_fat": float64(b.Fat),
		"allotted_carbohydrate": float64(b.Carbohydrate), "allotted_fibre": float64(b.Fibre),
		"day_palm": float64(p.Targets.Allotment.Day.Palm), "day_thumb": float64(p.Targets.Allotment.Day.Thumb),
		"grams_palm": float64(p.Targets.Contents[hand.Palm].Grams.Value), "protein_palm": float64(p.Targets.Contents[hand.Palm].Nutrients.Protein),
	}
	for key, value := range shown {
		if s, ok := steps[key]; !ok || math.Abs(s.Result-value) > 1e-9 {
			t.Errorf("%s: shown %v, derived %+v", key, value, s)
		}
	}
}

func TestNewPlanIsPure(t *testing.T) {
	a, _ := NewPlan(exampleIntake())
	b, _ := NewPlan(exampleIntake())
	if a.Targets.Allotment.Day != b.Targets.Allotment.Day || a.Targets.Energy.Value != b.Targets.Energy.Value {
		t.Error("the same intake gave two plans")
	}
}

func TestValidateNamesEveryProblem(t *testing.T) {
	err := Intake{}.Validate()
	problems, ok := err.(unit.Problems)
	if !ok {
		t.Fatalf("got %v", err)
	}
	named := map[string]bool{}
	for _, p := range problems {
		if p.Accepted == "" {
			t.Errorf("%s does not say what is accepted", p.Field)
		}
		named[p.Field] = true
	}
	for _, field := range []string{FieldDate, FieldBorn, FieldSex, FieldHeight, FieldWeight, FieldActivity, FieldGoalKind, FieldMeals, FieldPattern, FieldFloor, FieldEquation} {
		if !named[field] {
			t.Errorf("%s is not named", field)
		}
	}
}

func TestValidateGoals(t *testing.T) {
	cases := []struct {
		name  string
		goal  energy.Goal
		field string
	}{
		{"lose to more", energy.Goal{Kind: energy.Lose, Weight: 90}, FieldGoal},
		{"gain to less", energy.Goal{Kind: energy.Gain, Weight: 60}, FieldGoal},
		{"date without weight", energy.Goal{Kind: energy.Lose, By: unit.Date{Year: 2026, Month: time.June, Day: 1}}, FieldGoal},
		{"date before the visit", energy.Goal{Kind: energy.Lose, Weight: 70, By: unit.Date{Year: 2026, Month: time.March, Day: 2}}, FieldGoalBy},
		{"date and energy", energy.Goal{Kind: energy.Lose, Weight: 70, Energy: 1800, By: unit.Date{Year: 2026, Month: time.June, Day: 1}}, FieldGoalBy},
		{"energy too small", energy.Goal{Kind: energy.Lose, Energy: 100}, FieldGoalKcal},
		{"not a number", energy.Goal{Kind: energy.Lose, Energy: unit.Kilocalorie(math.NaN())}, FieldGoalKcal},
		{"fine", energy.Goal{Kind: energy.Lose, Weight: 70}, ""},
	}
	for _, c := range cases {
		in := exampleIntake()
		in.Goal = c.goal
		problems, _ := in.Validate().(unit.Problems)
		if c.field == "" && len(problems) > 0 || c.field != "" && (len(problems) != 1 || problems[0].Field != c.field) {
			t.Errorf("%s: got %v, want a problem with %q", c.name, problems, c.field)
		}
	}
}

// Pregnancy keeps carbohydrate at 210 g or more, as one question asks for
// pregnancy and breastfeeding. Source: IOM 2005 (from memory).
func TestPregnancyKeepsCarbohydrate(t *testing.T) {
	in := exampleIntake()
	in.Goal = energy.Goal{Kind: energy.Maintain}
	in.CarbFatBalance = 30
	in.Screening = in.Screening.With(screen.Pregnant, screen.Yes)
	p, err := NewPlan(in)
	if err != nil {
		t.Fatal(err)
	}
	if !p.Gate.Held() || p.Targets.Carbohydrate.Value < 210-1e-9 {
		t.Errorf("held %v, carbohydrate %v", p.Gate.Held(), p.Targets.Carbohydrate.Value)
	}
}

func BenchmarkNewPlan(b *testing.B) {
	in := exampleIntake()
	for b.Loop() {
		if _, err := NewPlan(in); err != nil {
			b.Fatal(err)
		}
	}
}

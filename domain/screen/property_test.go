package screen

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

func anyFacts(t *rapid.T) Facts {
	amount := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	f := Facts{
		Age: unit.Year(rapid.IntRange(5, 95).Draw(t, "age")), Sex: rapid.SampledFrom([]energy.Sex{energy.Female, energy.Male}).Draw(t, "sex"),
		BMI:  unit.KilogramPerSquareMetre(amount("bmi", 13, 45)),
		Goal: rapid.SampledFrom([]energy.GoalKind{energy.Lose, energy.Maintain, energy.Gain}).Draw(t, "goal"),
		Outcome: energy.Outcome{
			Target: derive.Exact(unit.Kilocalorie(amount("target", 300, 4000))), Change: unit.Kilocalorie(amount("change", -1500, 1500)),
			TooFast: rapid.Bool().Draw(t, "too fast"),
		},
		DaysToUnderweight: unit.Day(rapid.SampledFrom([]float64{0, 90}).Draw(t, "days to underweight")),
		Resting:           1500, Carbohydrate: unit.Gram(amount("carbohydrate", 0, 400)),
		LeastCarbohydrate: rapid.SampledFrom([]unit.Gram{0, 175, 210}).Draw(t, "least"),
		Fibre:             unit.Gram(amount("fibre", 5, 50)), UsualFibre: unit.Gram(rapid.SampledFrom([]float64{0, 10, 30}).Draw(t, "usual")),
		Exercise: unit.Kilocalorie(rapid.SampledFrom([]float64{0, 400}).Draw(t, "exercise")),
		Scored:   anyScored(t), MeasuresFar: rapid.Bool().Draw(t, "far"),
		MeasuresUnderFloor: rapid.Bool().Draw(t, "under floor"), MealsWished: rapid.Bool().Draw(t, "wished"),
	}
	f.Weight = unit.Kilogram(amount("weight", 40, 150))
	if rapid.Bool().Draw(t, "measures known") {
		energies := func(name string) hand.Nutrients {
			return hand.Nutrients{
				Energy: unit.Kilocalorie(amount(name+" energy", 300, 4000)), Protein: unit.Gram(amount(name+" protein", 0, 250)),
				Fat: unit.Gram(amount(name+" fat", 0, 200)), Carbohydrate: unit.Gram(amount(name+" carbohydrate", 0, 400)), Fibre: unit.Gram(amount(name+" fibre", 0, 50)),
			}
		}
		f.Brought = &Brought{Brings: energies("brought"), Aim: energies("aim")}
		f.Brought.Aim.Energy = f.Outcome.Target.Value
	}
	f.Reproduction.Weeks = rapid.SampledFrom([]int{0, 0, 0, 20}).Draw(t, "weeks")
	f.Availability = Availability(AvailabilityInput{Target: f.Outcome.Target.Value, Exercise: f.Exercise, Lean: 50, BMI: f.BMI})
	return f
}

func anyScored(t *rapid.T) Scored {
	answers := []Answer{NotAsked, No, Yes}
	s := Scored{
		Scores:          Scores{},
		RecentLoss:      Told[unit.Percent]{unit.Percent(rapid.Float64Range(0, 20).Draw(t, "loss")), rapid.Bool().Draw(t, "loss asked")},
		DaysOfLittle:    Told[unit.Day]{unit.Day(rapid.Float64Range(0, 14).Draw(t, "days")), rapid.Bool().Draw(t, "days asked")},
		LowElectrolytes: rapid.SampledFrom(answers).Draw(t, "electrolytes"),
		AlcoholOrDrugs:  rapid.SampledFrom(answers).Draw(t, "drugs"),
	}
	for _, q := range Questionnaires() {
		s.Scores[q.Code] = Score{rapid.IntRange(0, q.Most).Draw(t, q.Code), rapid.Bool().Draw(t, q.Code+" asked")}
	}
	return s
}

func anyAnswers(t *rapid.T) Answers {
	all := Answers{}.AllNo()
	for _, q := range Questions() {
		if rapid.IntRange(0, 9).Draw(t, string(q.Code)) == 0 {
			all[q.Code] = rapid.SampledFrom([]Answer{NotAsked, Yes}).Draw(t, "answer")
		}
	}
	all[Frail] = rapid.SampledFrom([]Answer{NotAsked, No, Yes}).Draw(t, "frail")
	return all
}

// stopped is the gravest level for each thing that can be stopped.
func stopped(found []derive.Finding) map[derive.Scope]derive.Level {
	all := map[derive.Scope]derive.Level{}
	for bit := derive.ScopeDeficit; bit <= derive.ScopeComparison; bit <<= 1 {
		for _, f := range found {
			if f.Level >= derive.Hold && f.Scope.Covers(bit|derive.ScopePlan) { // what stops any plan stops this one
				all[bit] = max(all[bit], f.Level)
			}
		}
	}
	return all
}

func milder(t *rapid.T, what string, before, after []derive.Finding) {
	t.Helper()
	was, is := stopped(before), stopped(after)
	for bit, level := range was {
		if is[bit] < level {
			t.Fatalf("%s: %v was %v and is %v", what, bit, level, is[bit])
		}
	}
}

// No two findings have one code and level; they come gravest first; each has
// text, source and, where it stops something, the comparison in its scope.
func TestFindingsAreWellMade(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		found := Findings(anyAnswers(t), anyFacts(t))
		seen := map[saying]bool{}
		for i, f := range found {
			if seen[saying{f.Code, f.Level}] {
				t.Fatalf("%s %v twice", f.Code, f.Level)
			}
			seen[saying{f.Code, f.Level}] = true
			if i > 0 && found[i-1].Level < f.Level {
				t.Fatalf("%s after %s", f.Code, found[i-1].Code)
			}
			serious := f.Level >= derive.Hold
			if f.Text == "" || f.Source.Text == "" || f.Source.Confidence == "" || serious != f.Scope.Covers(derive.ScopeComparison) || serious != (f.Scope != 0) {
				t.Fatalf("%+v", f)
			}
			if f.Level == derive.Hold && !slices.Contains(HoldCodes(), f.Code) {
				t.Fatalf("%s holds and is not among the codes that can", f.Code)
			}
		}
	})
}

// Findings are monotone: worse news never opens what was stopped.
func TestFindingsAreMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		answers, f := anyAnswers(t), anyFacts(t)
		before := Findings(answers, f)

		code := rapid.SampledFrom(Questions()).Draw(t, "question").Code
		if answers.Of(code) == No {
			milder(t, "yes to "+string(code), before, Findings(answers.With(code, Yes), f))
		}
		thinner := f
		thinner.BMI = unit.KilogramPerSquareMetre(rapid.Float64Range(13, float64(f.BMI)).Draw(t, "thinner"))
		thinner.Availability = Availability(AvailabilityInput{Target: f.Outcome.Target.Value, Exercise: f.Exercise, Lean: 50, BMI: thinner.BMI})
		milder(t, "a lower BMI", before, Findings(answers, thinner))

		// The day of measures is found anew for another target.
		kept, down := f, unit.Kilocalorie(rapid.Float64Range(0, 1000).Draw(t, "less"))
		kept.Brought = nil
		less := kept
		less.Outcome.Target.Value -= down
		less.Availability = Availability(AvailabilityInput{Target: less.Outcome.Target.Value, Exercise: f.Exercise, Lean: 50, BMI: f.BMI})
		milder(t, "less energy", Findings(answers, kept), Findings(answers, less))

		if f.Brought != nil && f.Brought.Brings.Energy <= f.Brought.Aim.Energy {
			eaten, day := f, *f.Brought
			day.Brings.Energy = max(0, day.Brings.Energy-down)
			eaten.Brought = &day
			milder(t, "measures that bring less", before, Findings(answers, eaten))
			if scope := f.BroughtScope(); eaten.BroughtScope()&scope != scope {
				t.Fatalf("measures that bring less: %v became %v", scope, eaten.BroughtScope())
			}
		}

		worse := f
		worse.Scored.RecentLoss.Value += unit.Percent(rapid.Float64Range(0, 10).Draw(t, "more loss"))
		worse.Scored.DaysOfLittle.Value += unit.Day(rapid.Float64Range(0, 10).Draw(t, "more days"))
		for _, q := range Questionnaires() {
			if s := f.Scored.Scores[q.Code]; s.Asked {
				worse.Scored.Scores = Scores{q.Code: {min(q.Most, s.Points+1), true}}
				kept := f
				kept.Scored.Scores = Scores{q.Code: s}
				milder(t, "a higher "+q.Code, Findings(answers, kept), Findings(answers, worse))
			}
		}
	})
}

// A referral tells no figure of the target: what two targets with the same
// findings say is the same.
func TestReferredFindingsTellNoFigureOfTheTarget(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		answers, f := anyAnswers(t), anyFacts(t)
		other := f
		other.Outcome.Target.Value += 7
		other.Outcome.Change += 3
		other.Outcome.SafeEnergy += 11
		other.DaysToUnderweight *= 1.2
		other.Carbohydrate += 2
		if f.Brought != nil {
			day := *f.Brought
			day.Aim.Energy += 7
			day.Brings.Energy += 5
			day.Brings.Protein, day.Aim.Protein = day.Brings.Protein*1.01, day.Aim.Protein*1.01
			day.Brings.Carbohydrate++
			other.Brought = &day
		}
		other.Fibre += 4
		other.Availability = Availability(AvailabilityInput{Target: other.Outcome.Target.Value, Exercise: f.Exercise, Lean: 50, BMI: f.BMI})
		a, b := Findings(answers, f), Findings(answers, other)
		kept := func(f Facts) bool { return f.Carbohydrate >= f.LeastCarbohydrate }
		alike := func(a, b []derive.Finding) bool {
			return slices.EqualFunc(a, b, func(x, y derive.Finding) bool { return x.Code == y.Code && x.Level == y.Level })
		}
		if kept(f) != kept(other) || !alike(a, b) || !alike(fromBrought(answers, f), fromBrought(answers, other)) {
			return
		}
		a, b = WithoutFigures(a), WithoutFigures(b)
		for i := range a {
			if a[i].Text != b[i].Text {
				t.Fatalf("%s tells a figure: %q, %q", a[i].Code, a[i].Text, b[i].Text)
			}
		}
	})
}

// Each code that a reason can be recorded for does hold somewhere.
func TestEveryHoldCodeCanHold(t *testing.T) {
	holds := map[string]bool{}
	note := func(found []derive.Finding) {
		for _, f := range found {
			holds[f.Code] = holds[f.Code] || f.Level == derive.Hold
		}
	}
	for _, q := range Questions() {
		note(Findings(Answers{}.AllNo().With(q.Code, Yes), adult()))
	}
	low, old, little := losing(), adult(), adult()
	low.Outcome.Target.Value, low.Outcome.TooFast = 1400, true
	low.Availability = EnergyAvailability(1400, 200, 50)
	low.DaysToUnderweight = 60
	old.Age = 70
	little.Scored.DaysOfLittle = days(7)
	for _, f := range []Facts{low, old, little} {
		note(Findings(Answers{}, f))
	}
	for _, code := range HoldCodes() {
		if !holds[code] {
			t.Errorf("%s did not hold", code)
		}
		delete(holds, code)
	}
	for code, held := range holds {
		if held {
			t.Errorf("%s holds and is not listed", code)
		}
	}
}

// The same for the findings that come up seldom: an older adult's larger deficit.
func TestReferredOlderAdultIsToldNoTarget(t *testing.T) {
	f := losing()
	f.Age, f.BMI, f.Outcome.Change = 70, 33, -700
	told := textOf(WithoutFigures(Findings(Answers{}.AllNo(), f)), olderAdult)
	if told == "" || strings.Contains(told, "target") || !strings.Contains(textOf(Findings(Answers{}.AllNo(), f), olderAdult), "target") {
		t.Errorf("told %q", told)
	}
}

// Pregnancy refers a deficit by the question and any plan by the carbohydrate:
// one finding says and stops both.
func TestJoinedFindingsStopBoth(t *testing.T) {
	f := losing()
	f.Carbohydrate, f.LeastCarbohydrate = 120, 175
	var refers []derive.Finding
	for _, found := range Findings(Answers{}.AllNo().With(Pregnant, Yes), f) {
		if found.Code == string(Pregnant) && found.Level == derive.Refer {
			refers = append(refers, found)
		}
	}
	if len(refers) != 1 || !refers[0].Scope.Covers(derive.ScopePlan) || !refers[0].Scope.Covers(derive.ScopeDeficit) || !strings.Contains(refers[0].Text, "175 g") {
		t.Errorf("refers %+v", refers)
	}
}

package domain

import (
	"math"
	"testing"
	"time"

	"handbreadth/domain/energy"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

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

// Every field that was told wrongly is named, once, with what was given and what
// is accepted.
func TestValidateNamesWhatWasToldWrongly(t *testing.T) {
	sleep, _ := energy.PursuitByCode("07030")
	run, _ := energy.PursuitByCode("12050")
	day := func(spans ...energy.Span) func(*Intake) {
		return func(in *Intake) { in.Activity = energy.Activity{Day: spans} }
	}
	rate := func(change func(*energy.Goal)) func(*Intake) {
		return func(in *Intake) {
			in.Goal = energy.Goal{Kind: energy.Lose, PerWeek: 0.3}
			change(&in.Goal)
		}
	}
	cases := []struct {
		name   string
		change func(*Intake)
		field  string
	}{
		{"a thin neck", func(in *Intake) { in.Body.Neck = 19 }, "body.neck"},
		{"a thick neck", func(in *Intake) { in.Body.Neck = 81 }, "body.neck"},
		{"a small waist", func(in *Intake) { in.Body.Waist = 12 }, "body.waist"},
		{"a waist under the neck", func(in *Intake) { in.Body.Neck, in.Body.Waist = 40, 40 }, "body.waist"},
		{"a wide hip", func(in *Intake) { in.Body.Hip = 251 }, "body.hip"},
		{"no number", func(in *Intake) { in.Body.Hip = unit.Centimetre(math.NaN()) }, "body.hip"},
		{"little fat", func(in *Intake) { in.Body.Fat = 2.9 }, "body.fat_percent"},
		{"much fat", func(in *Intake) { in.Body.Fat = 66 }, "body.fat_percent"},
		{"unknown points", func(in *Intake) { in.Body.Points = "nordic" }, "body.points"},
		{"little measured", func(in *Intake) { in.MeasuredResting = 499 }, "measured_resting_kcal_per_day"},
		{"much measured", func(in *Intake) { in.MeasuredResting = 5001 }, "measured_resting_kcal_per_day"},
		{"less than no exercise", func(in *Intake) { in.Exercise = -1 }, "exercise_kcal_per_day"},
		{"much exercise", func(in *Intake) { in.Exercise = 4001 }, "exercise_kcal_per_day"},
		{"no activity", func(in *Intake) { in.Activity = energy.Activity{} }, "activity"},
		{"an unknown class beside a day", func(in *Intake) {
			in.Activity = energy.Activity{Category: "lively", Day: []energy.Span{{Pursuit: sleep, Hours: 8}}}
		}, "activity"},
		{"an unknown factor", func(in *Intake) { in.Activity = energy.Activity{Customary: "heavy"} }, "activity.customary"},
		{"25 hours", day(energy.Span{Pursuit: sleep, Hours: 24}, energy.Span{Pursuit: run, Hours: 1}), "activity.day"},
		{"a day nobody keeps up", day(energy.Span{Pursuit: run, Hours: 10}), "activity.day"},
		{"no hours", day(energy.Span{Pursuit: sleep, Hours: 8}, energy.Span{Pursuit: run}), SpanField(1, energy.DayHours)},
		{"an unknown activity", day(energy.Span{Pursuit: energy.Pursuit{Code: "x"}, Hours: 1}), SpanField(0, energy.DayPursuit)},
		{"week 43", func(in *Intake) { in.Reproduction.Weeks = 43 }, "reproduction.weeks"},
		{"week -1", func(in *Intake) { in.Reproduction.Weeks = -1 }, "reproduction.weeks"},
		{"a weight before of 10 kg", func(in *Intake) { in.Reproduction.PrePregnant = 10 }, "reproduction.weight_before"},
		{"an unknown age of the child", func(in *Intake) { in.Reproduction.Breastfeeding = 3 }, "reproduction.breastfeeding"},
		{"a slow rate", rate(func(g *energy.Goal) { g.PerWeek = 0.04 }), "goal.per_week"},
		{"a fast rate", rate(func(g *energy.Goal) { g.PerWeek = 2.1 }), "goal.per_week"},
		{"a rate with a sign", rate(func(g *energy.Goal) { g.PerWeek = -0.5 }), "goal.per_week"},
		{"a rate to hold", rate(func(g *energy.Goal) { g.Kind = energy.Maintain }), "goal.per_week"},
		{"a rate and an energy", rate(func(g *energy.Goal) { g.Energy = 1800 }), "goal.per_week"},
		{"a rate and a date", rate(func(g *energy.Goal) {
			g.Weight, g.By = 70, unit.Date{Year: 2026, Month: time.June, Day: 1}
		}), "goal.per_week"},
		{"a rate of eleven years", rate(func(g *energy.Goal) { g.Weight, g.PerWeek = 42, 0.05 }), "goal.per_week"},
		{"little fat a kilogram", func(in *Intake) { in.FatFloorPerKg = 0.2 }, "fat_floor_g_per_kg"},
		{"much fat a kilogram", func(in *Intake) { in.FatFloorPerKg = 1.6 }, "fat_floor_g_per_kg"},
		{"an unknown basis", func(in *Intake) { in.ProteinBasis = "ideal" }, "protein_basis"},
		{"an unknown training", func(in *Intake) { in.Training = "chess" }, "training"},
		{"much fibre", func(in *Intake) { in.UsualFibre = 151 }, "usual_fibre_g_per_day"},
		{"an unknown counting", func(in *Intake) { in.Counting = "net" }, "carbohydrate_counted"},
		{"an unknown equation", func(in *Intake) { in.RestingEquation = "guess" }, "resting_equation"},
		{"a score over the most", func(in *Intake) { in.Scored.Scores = screen.Scores{screen.SCOFF: {Points: 6, Asked: true}} }, "scored.scoff"},
		{"a score under nought", func(in *Intake) { in.Scored.Scores = screen.Scores{screen.MST: {Points: -1, Asked: true}} }, "scored.mst"},
		{"an unknown questionnaire", func(in *Intake) { in.Scored.Scores = screen.Scores{"quiz": {}} }, "scored.quiz"},
		{"a loss of 61 %", func(in *Intake) { in.Scored.RecentLoss = screen.Told[unit.Percent]{Value: 61, Asked: true} }, FieldRecentLoss},
		{"less than no days", func(in *Intake) { in.Scored.DaysOfLittle = screen.Told[unit.Day]{Value: -1, Asked: true} }, FieldDaysOfLittle},
		{"an answer that is none", func(in *Intake) { in.Scored.LowElectrolytes = 3 }, FieldLowElectrolytes},
		{"another answer that is none", func(in *Intake) { in.Scored.AlcoholOrDrugs = -1 }, FieldAlcoholOrDrugs},
	}
	for _, c := range cases {
		in := exampleIntake()
		c.change(&in)
		problems, _ := in.Validate().(unit.Problems)
		if len(problems) != 1 || problems[0].Field != c.field || problems[0].Accepted == "" {
			t.Errorf("%s: got %v, want one problem with %s", c.name, problems, c.field)
		}
	}
}

// The edges of every span are accepted.
func TestValidateAcceptsTheEdges(t *testing.T) {
	for name, change := range map[string]func(*Intake){
		"least of the body": func(in *Intake) {
			in.Body = BodyMeasures{Neck: 20, Waist: 20.1, Hip: 20, Fat: 3}
			in.MeasuredResting = 500
		},
		"most of the body": func(in *Intake) {
			in.Body = BodyMeasures{Neck: 80, Waist: 250, Hip: 250, Fat: 65}
			in.MeasuredResting, in.Exercise = 5000, 4000
		},
		"slowest rate":       func(in *Intake) { in.Goal = energy.Goal{Kind: energy.Lose, PerWeek: 0.05} },
		"fastest rate":       func(in *Intake) { in.Goal = energy.Goal{Kind: energy.Gain, PerWeek: 2} },
		"pregnant, male sex": func(in *Intake) { in.Client.EquationSex, in.Reproduction.Weeks = energy.Male, 42 },
		"macros":             func(in *Intake) { in.FatFloorPerKg, in.UsualFibre = 1.5, 150 },
		"scores": func(in *Intake) {
			in.Scored.Scores = screen.Scores{screen.SCOFF: {Points: 5, Asked: true}, screen.MUST: {Points: 6, Asked: true}, screen.MST: {}}
			in.Scored.RecentLoss = screen.Told[unit.Percent]{Asked: true}
		},
	} {
		in := exampleIntake()
		change(&in)
		if err := in.Validate(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

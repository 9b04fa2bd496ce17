package domain

import (
	"math/rand/v2"
	"time"

	"pgregory.net/rapid"

	"handbreadth/domain/body"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// draws is where random intakes come from: rapid, which shrinks what fails, or
// a seed, which is quick.
type draws interface {
	whole(low, high int) int // both included
	number(low, high float64) float64
}

type rapidDraws struct{ *rapid.T }

func (d rapidDraws) whole(low, high int) int { return rapid.IntRange(low, high).Draw(d.T, "whole") }
func (d rapidDraws) number(low, high float64) float64 {
	return rapid.Float64Range(low, high).Draw(d.T, "number")
}

type seeded struct{ *rand.Rand }

func (d seeded) whole(low, high int) int          { return low + d.IntN(high-low+1) }
func (d seeded) number(low, high float64) float64 { return low + (high-low)*d.Float64() }

func oneIn(d draws, n int) bool { return d.whole(1, n) == 1 }

func pick[T any](d draws, all []T) T { return all[d.whole(0, len(all)-1)] }

func anyIntake(t *rapid.T) Intake { return randomIntake(rapidDraws{t}) }

// randomIntake returns an intake with every field that a plan looks at: many
// would be stopped, and few are refused.
func randomIntake(d draws) Intake {
	in := NewIntake()
	in.Date = unit.Date{Year: 2026, Month: time.March, Day: 2}
	youngest := 18
	if oneIn(d, 20) {
		youngest = 5
	}
	in.Client.Born = in.Date.AddDays(-d.whole(youngest*365+5, 95*365))
	in.Client.EquationSex = pick(d, []energy.Sex{energy.Female, energy.Male})
	in.Height = unit.Centimetre(d.number(145, 205))
	bmi := unit.KilogramPerSquareMetre(d.number(17, 45))
	if oneIn(d, 10) {
		bmi = unit.KilogramPerSquareMetre(d.number(13, 60))
	}
	in.Weight = min(MostWeight, max(LeastWeight, unit.WeightAtBMI(bmi, in.Height)))
	randomBody(d, &in)
	in.Activity = randomActivity(d)
	in.Goal = randomGoal(d, in)
	randomFood(d, &in)
	randomMacros(d, &in)
	randomScreening(d, &in)
	return in
}

func randomBody(d draws, in *Intake) {
	if oneIn(d, 4) {
		in.Body.Fat = unit.Percent(d.number(5, 60))
	}
	if oneIn(d, 3) {
		in.Body.Neck = unit.Centimetre(d.number(28, 48))
		in.Body.Waist = unit.Centimetre(d.number(55, 140))
		in.Body.Hip = unit.Centimetre(d.number(70, 150))
	}
	in.Body.Points = pick(d, []body.Population{"", body.WorldPoints, body.AsianPoints})
	in.RestingEquation = pick(d, energy.RestingEquations())
	if oneIn(d, 6) {
		in.MeasuredResting = unit.Kilocalorie(d.number(900, 2800))
	}
	if oneIn(d, 4) {
		in.Exercise = unit.Kilocalorie(d.whole(50, 1500))
	}
	if oneIn(d, 15) {
		in.Reproduction.Weeks = d.whole(1, 42)
	}
	if oneIn(d, 15) {
		in.Reproduction.Breastfeeding = pick(d, []energy.BreastfeedingAge{energy.FirstHalfYear, energy.SecondHalfYear})
	}
	if oneIn(d, 15) {
		in.Reproduction.PrePregnant = in.Weight * unit.Kilogram(d.number(0.85, 1))
	}
}

func randomActivity(d draws) energy.Activity {
	switch d.whole(1, 4) {
	case 1:
		return energy.Activity{PAL: unit.PAL(d.number(1, 2.5))}
	case 2:
		return energy.Activity{Customary: pick(d, energy.Multipliers()).Code}
	case 3:
		sleep, _ := energy.PursuitByCode("07030")
		day := []energy.Span{{Pursuit: sleep, Hours: energy.Hour(d.number(5, 9))}}
		for range d.whole(0, 3) {
			day = append(day, energy.Span{Pursuit: pick(d, energy.Pursuits()), Hours: energy.Hour(d.number(0.25, 3))})
		}
		return energy.Activity{Day: day}
	}
	return energy.Activity{Category: pick(d, energy.Classes()).Category}
}

func randomGoal(d draws, in Intake) energy.Goal {
	g := energy.Goal{Kind: pick(d, []energy.GoalKind{energy.Lose, energy.Lose, energy.Maintain, energy.Gain})}
	share := d.number(0.03, 0.3)
	if g.Kind == energy.Gain {
		share = -share
	}
	weight := min(MostWeight, max(LeastWeight, in.Weight*unit.Kilogram(1-share)))
	switch d.whole(1, 6) {
	case 1:
		g.Energy = unit.Kilocalorie(d.whole(400, 5000))
		if oneIn(d, 2) && g.Kind != energy.Maintain {
			g.Weight = weight
		}
	case 2, 3:
		if g.Kind != energy.Maintain {
			g.Weight, g.By = weight, in.Date.AddDays(d.whole(1, 1200))
		}
	case 4:
		if g.Kind != energy.Maintain {
			g.PerWeek = unit.KilogramPerWeek(d.number(0.05, 1.2))
			if oneIn(d, 2) {
				g.Weight = weight
			}
		}
	case 5:
		if g.Kind != energy.Maintain {
			g.Weight = weight
		}
	}
	return g
}

func randomFood(d draws, in *Intake) {
	in.MealsPerDay = d.whole(LeastMeals, MostMeals)
	in.Pattern = pick(d, food.Patterns())
	for range d.whole(0, 3) {
		in.Avoid = append(in.Avoid, pick(d, food.Allergens()))
	}
	if oneIn(d, 4) {
		in.Hand.Size = hand.Size{PalmBreadth: unit.Centimetre(d.number(6, 11)), PalmLength: unit.Centimetre(d.number(8, 13))}
	}
	switch d.whole(1, 6) {
	case 1:
		in.Hand.Wishes = []hand.Wish{hand.Lock(d.whole(1, in.MealsPerDay), hand.CuppedHand, unit.Measure(d.whole(0, 2)))}
	case 2:
		for _, k := range hand.Kinds() {
			n := unit.Measure(d.whole(0, 20))
			wish := pick(d, []hand.Wish{{Kind: k, Most: n}, {Kind: k, Least: n, Most: hand.MostMeasures}, {Kind: k, Most: hand.MostMeasures}})
			in.Hand.Wishes = append(in.Hand.Wishes, wish)
		}
	}
}

func randomMacros(d draws, in *Intake) {
	in.CarbFatBalance = unit.Percent(d.whole(0, 100))
	in.FatFloor = unit.Percent(d.whole(15, 40))
	in.FatFloorPerKg = pick(d, []unit.GramPerKilogram{0, 0, 0.5, 1, 1.5})
	in.ProteinPerKg = pick(d, []unit.GramPerKilogram{0, 0, 0.8, 1.6, 2.5})
	in.ProteinBasis = pick(d, macro.Bases())
	in.Training = pick(d, macro.Trainings())
	in.UsualFibre = pick(d, []unit.Gram{0, 12, 40, 80})
	in.Counting = pick(d, macro.Countings())
}

func randomScreening(d draws, in *Intake) {
	in.Screening = screen.Answers{}.AllNo()
	if oneIn(d, 2) {
		for range d.whole(1, 3) {
			in.Screening[pick(d, screen.Questions()).Code] = pick(d, []screen.Answer{screen.Yes, screen.NotAsked})
		}
	}
	if oneIn(d, 10) {
		in.Screening[screen.Frail] = pick(d, []screen.Answer{screen.Yes, screen.NotAsked})
	}
	if oneIn(d, 8) {
		q := pick(d, screen.Questionnaires())
		in.Scored.Scores = screen.Scores{q.Code: {Points: d.whole(0, q.Most), Asked: true}}
	}
	if oneIn(d, 8) {
		in.Scored.RecentLoss = screen.Told[unit.Percent]{Value: unit.Percent(d.number(0, 20)), Asked: true}
		in.Scored.DaysOfLittle = screen.Told[unit.Day]{Value: unit.Day(d.whole(0, 14)), Asked: true}
		in.Scored.LowElectrolytes = pick(d, []screen.Answer{screen.NotAsked, screen.No, screen.Yes})
		in.Scored.AlcoholOrDrugs = pick(d, []screen.Answer{screen.NotAsked, screen.No, screen.Yes})
	}
	if oneIn(d, 2) {
		in.Reasons = screen.Reasons{}
		for _, code := range reasonable {
			if oneIn(d, 2) {
				in.Reasons[code] = screen.Reason{Text: "agreed with the doctor", Date: in.Date}
			}
		}
	}
}

// reasonable are codes that a reason may be given for, those of findings that
// no reason lifts among them.
var reasonable = append([]string{
	screen.NotAskedCode, "energy_low", "energy_very_low", "rate_fast", "older_adult", "energy_availability_low",
	"target_underweight", "course_underweight", "underweight_now", "under_18", "refeeding_risk",
}, questionCodes()...)

func questionCodes() []string {
	var codes []string
	for _, q := range screen.Questions() {
		codes = append(codes, string(q.Code))
	}
	return codes
}

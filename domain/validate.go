package domain

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"handbreadth/domain/body"
	"handbreadth/domain/energy"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// Validate lists everything that keeps a plan from being computed. It returns
// [unit.Problems], or nil.
func (in Intake) Validate() error {
	var ps unit.Problems
	in.checkPerson(&ps)
	in.checkBody(&ps)
	in.checkActivity(&ps)
	in.checkReproduction(&ps)
	in.checkGoal(&ps)
	in.checkSettings(&ps)
	in.checkMacros(&ps)
	in.checkScored(&ps)
	in.checkHand(&ps)
	return ps.Err()
}

func (in Intake) checkPerson(ps *unit.Problems) {
	if in.Date.IsZero() {
		ps.Add(FieldDate, "", acceptedDate)
	}
	switch {
	case in.Client.Born.IsZero():
		ps.Add(FieldBorn, "", acceptedDate)
	case !in.Date.IsZero() && (!in.Client.Born.Before(in.Date) || in.Age() > OldestAge):
		ps.Add(FieldBorn, in.Client.Born.String(), "a birth date before the visit, at most 120 years back")
	}
	if !in.Client.EquationSex.Valid() {
		ps.Add(FieldSex, string(in.Client.EquationSex), "female or male: the sex whose equation is used")
	}
	if !within(in.Height, LeastHeight, MostHeight) {
		ps.Add(FieldHeight, given(float64(in.Height), "cm"), acceptedHeight)
	}
	if !within(in.Weight, LeastWeight, MostWeight) {
		ps.Add(FieldWeight, given(float64(in.Weight), "kg"), acceptedWeight)
	}
}

func (in Intake) checkBody(ps *unit.Problems) {
	b := in.Body
	optional(ps, FieldNeck, b.Neck, LeastGirth, MostNeck, "cm", acceptedNeck)
	optional(ps, FieldWaist, b.Waist, LeastGirth, MostGirth, "cm", acceptedGirth)
	optional(ps, FieldHip, b.Hip, LeastGirth, MostGirth, "cm", acceptedGirth)
	optional(ps, FieldFatPercent, b.Fat, LeastFatPercent, MostFatPercent, "%", "body fat of 3 to 65 % of weight, or nothing")
	if b.Waist >= LeastGirth && b.Neck >= LeastGirth && b.Waist <= b.Neck {
		ps.Add(FieldWaist, given(float64(b.Waist), "cm"), "a waist larger than the neck, which is "+given(float64(b.Neck), "cm"))
	}
	if b.Points != "" && b.Points != body.WorldPoints && b.Points != body.AsianPoints {
		ps.Add(FieldPoints, string(b.Points), "who or asian: the points at which body mass index speaks")
	}
}

func (in Intake) checkActivity(ps *unit.Problems) {
	a := in.Activity
	if !a.Told() {
		ps.Add(FieldActivity, "", acceptedLevel)
	}
	if a.Category != "" && !a.Category.Valid() {
		ps.Add(FieldActivity, string(a.Category), acceptedLevel)
	} else {
		optional(ps, FieldActivity, a.PAL, energy.LeastPAL, energy.MostPAL, "", acceptedLevel)
	}
	if _, known := energy.MultiplierByCode(a.Customary); a.Customary != "" && !known {
		ps.Add(FieldCustomary, a.Customary, acceptedCodes(energy.Multipliers(), func(m energy.Multiplier) string { return m.Code }))
	}
	in.checkDay(ps)
	optional(ps, FieldExercise, in.Exercise, 0, MostExercise, "kcal", "the energy of training on an average day, 0 to 4000 kcal")
}

func (in Intake) checkDay(ps *unit.Problems) {
	if len(in.Activity.Day) == 0 {
		return
	}
	for _, f := range energy.DayFaults(in.Activity.Day) {
		field := FieldActivityDay
		if f.Part != energy.WholeDay {
			field = SpanField(f.Index, f.Part)
		}
		ps.Add(field, f.Given, f.Accepted)
	}
}

func (in Intake) checkReproduction(ps *unit.Problems) {
	r := in.Reproduction
	if r.Weeks < 0 || r.Weeks > LongestPregnancy {
		ps.Add(FieldPregnantWeeks, strconv.Itoa(r.Weeks), "a week of pregnancy from 1 to 42, or nothing")
	}
	optional(ps, FieldWeightBefore, r.PrePregnant, LeastWeight, MostWeight, "kg", acceptedWeight)
	if _, known := Breastfeeding()[r.Breastfeeding]; !known && r.Breastfeeding != energy.NotBreastfeeding {
		ps.Add(FieldBreastfeeding, strconv.Itoa(int(r.Breastfeeding)), acceptedBreastfeeding)
	}
}

func (in Intake) checkGoal(ps *unit.Problems) {
	g := in.Goal
	if !g.Kind.Valid() {
		ps.Add(FieldGoalKind, string(g.Kind), "lose, maintain or gain")
		return
	}
	if g.Weight != 0 {
		in.checkGoalWeight(ps)
	}
	if !g.By.IsZero() {
		in.checkGoalDate(ps)
	}
	if g.PerWeek != 0 {
		in.checkGoalRate(ps)
	}
	optional(ps, FieldGoalKcal, g.Energy, LeastEnergyAsked, MostEnergyAsked, "kcal", "an energy of 400 to 10000 kcal a day")
}

func (in Intake) checkGoalWeight(ps *unit.Problems) {
	g, text := in.Goal, given(float64(in.Goal.Weight), "kg")
	switch {
	case !within(g.Weight, LeastWeight, MostWeight):
		ps.Add(FieldGoal, text, acceptedWeight)
	case g.Kind == energy.Lose && g.Weight >= in.Weight && in.Weight > 0:
		ps.Add(FieldGoal, text, "a weight below the present one, as the goal is to lose")
	case g.Kind == energy.Gain && g.Weight <= in.Weight:
		ps.Add(FieldGoal, text, "a weight above the present one, as the goal is to gain")
	}
}

func (in Intake) checkGoalDate(ps *unit.Problems) {
	g, text := in.Goal, in.Goal.By.String()
	switch {
	case g.Energy != 0:
		ps.Add(FieldGoalBy, text, "a date or an energy, not both")
	case g.Kind != energy.Maintain && g.Weight == 0:
		ps.Add(FieldGoal, "", "the weight to be reached by "+text)
	case !in.Date.IsZero() && !g.By.After(in.Date):
		ps.Add(FieldGoalBy, text, "a date after the visit")
	case !in.Date.IsZero() && in.Date.DaysUntil(g.By) > LongestGoal:
		ps.Add(FieldGoalBy, text, "a date within ten years of the visit")
	}
}

func (in Intake) checkGoalRate(ps *unit.Problems) {
	g, text := in.Goal, given(float64(in.Goal.PerWeek), "kg a week")
	switch {
	case !within(g.PerWeek, LeastPerWeek, MostPerWeek):
		ps.Add(FieldGoalPerWeek, text, acceptedRate)
	case g.Kind == energy.Maintain:
		ps.Add(FieldGoalPerWeek, text, "nothing, as the goal is to maintain")
	case !g.By.IsZero():
		ps.Add(FieldGoalPerWeek, text, "a rate or a date, not both")
	case g.Energy != 0:
		ps.Add(FieldGoalPerWeek, text, "a rate or an energy, not both")
	case within(g.Weight, LeastWeight, MostWeight) && in.Weight > 0 && in.rateDays() > LongestGoal:
		ps.Add(FieldGoalPerWeek, text, "a faster rate, or a nearer weight: this one takes more than ten years")
	}
}

// rateDays is how long the wished rate takes to the wished weight.
func (in Intake) rateDays() float64 {
	return 7 * math.Abs(float64(in.Goal.Weight-in.Weight)) / float64(in.Goal.PerWeek)
}

func (in Intake) checkSettings(ps *unit.Problems) {
	if in.MealsPerDay < LeastMeals || in.MealsPerDay > MostMeals {
		ps.Add(FieldMeals, strconv.Itoa(in.MealsPerDay), "1 to 6 meals a day")
	}
	if !in.Pattern.Valid() {
		ps.Add(FieldPattern, string(in.Pattern), "omnivore, pescatarian, vegetarian or vegan")
	}
	if !in.RestingEquation.Valid() {
		ps.Add(FieldEquation, string(in.RestingEquation),
			acceptedCodes(energy.RestingEquations(), func(c energy.RestingEquation) string { return string(c) }))
	}
	optional(ps, FieldMeasuredResting, in.MeasuredResting, energy.LeastMeasured, energy.MostMeasured, "kcal",
		"a measured resting energy of 500 to 5000 kcal a day, or nothing")
}

func (in Intake) checkMacros(ps *unit.Problems) {
	if !within(in.CarbFatBalance, 0, 100) {
		ps.Add(FieldBalance, given(float64(in.CarbFatBalance), "%"), "0 to 100 %")
	}
	if !within(in.FatFloor, macro.LeastFatFloor, macro.MostFatFloor) {
		ps.Add(FieldFloor, given(float64(in.FatFloor), "%"), "15 to 40 %")
	}
	optional(ps, FieldFloorPerKg, in.FatFloorPerKg, LeastFatFloorPerKg, MostFatFloorPerKg, "g/kg", "0.3 to 1.5 g/kg, or nothing")
	optional(ps, FieldProtein, in.ProteinPerKg, macro.LeastProteinPerKg, macro.MostProteinPerKg, "g/kg", "0.8 to 2.5 g/kg, or nothing")
	oneOf(ps, FieldProteinBasis, in.ProteinBasis, macro.Bases())
	oneOf(ps, FieldTraining, in.Training, macro.Trainings())
	optional(ps, FieldUsualFibre, in.UsualFibre, 0, MostUsualFibre, "g", "the fibre eaten on a usual day, 0 to 150 g, or nothing")
	oneOf(ps, FieldCounting, in.Counting, macro.Countings())
}

func (in Intake) checkScored(ps *unit.Problems) {
	s := in.Scored
	known := map[string]bool{}
	for _, q := range screen.Questionnaires() {
		known[q.Code] = true
		if score := s.Scores[q.Code]; score.Asked && (score.Points < 0 || score.Points > q.Most) {
			ps.Add(ScoreField(q.Code), strconv.Itoa(score.Points), "a score of 0 to "+strconv.Itoa(q.Most)+", or nothing where it was not asked")
		}
	}
	for _, code := range slices.Sorted(maps.Keys(s.Scores)) {
		if !known[code] {
			ps.Add(ScoreField(code), code, acceptedCodes(screen.Questionnaires(), func(q screen.Questionnaire) string { return q.Code }))
		}
	}
	if s.RecentLoss.Asked && !within(s.RecentLoss.Value, 0, MostRecentLoss) {
		ps.Add(FieldRecentLoss, written(float64(s.RecentLoss.Value), "%"), "a loss of 0 to 60 % of weight, or nothing where it was not asked")
	}
	if s.DaysOfLittle.Asked && !within(s.DaysOfLittle.Value, 0, MostDaysOfLittle) {
		ps.Add(FieldDaysOfLittle, written(float64(s.DaysOfLittle.Value), "days"), "0 to 365 days, or nothing where it was not asked")
	}
	checkAnswer(ps, FieldLowElectrolytes, s.LowElectrolytes)
	checkAnswer(ps, FieldAlcoholOrDrugs, s.AlcoholOrDrugs)
}

func checkAnswer(ps *unit.Problems, field string, a screen.Answer) {
	if a != screen.NotAsked && a != screen.No && a != screen.Yes {
		ps.Add(field, strconv.Itoa(int(a)), "yes, no, or nothing where it was not asked")
	}
}

// within is false for what is not a number.
func within[T ~float64](value, low, high T) bool { return value >= low && value <= high }

// optional checks a value that may be left out, which is nought.
func optional[T ~float64](ps *unit.Problems, field string, value, low, high T, unitName, accepted string) {
	if value != 0 && !within(value, low, high) {
		ps.Add(field, given(float64(value), unitName), accepted)
	}
}

// oneOf checks a choice of which the empty one is the default.
func oneOf[T ~string](ps *unit.Problems, field string, value T, choices []T) {
	for _, c := range choices {
		if value == c {
			return
		}
	}
	ps.Add(field, string(value), acceptedCodes(choices, func(c T) string { return string(c) })+", or nothing")
}

func acceptedCodes[T any](all []T, code func(T) string) string {
	var words []string
	for _, one := range all {
		if c := code(one); c != "" {
			words = append(words, c)
		}
	}
	return "one of " + strings.Join(words, ", ")
}

// given tells a value as it was given; nought is nothing.
func given(value float64, unitName string) string {
	if value == 0 {
		return ""
	}
	return written(value, unitName)
}

func written(value float64, unitName string) string {
	return strings.TrimSpace(strconv.FormatFloat(value, 'g', 6, 64) + " " + unitName)
}

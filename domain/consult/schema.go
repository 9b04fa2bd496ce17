package consult

import (
	"fmt"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/macro"
	"handbreadth/domain/unit"
)

const nameAccepted = "a name, which may not be blank"

var (
	sexes     = []energy.Sex{energy.Female, energy.Male}
	goalKinds = []energy.GoalKind{energy.Lose, energy.Maintain, energy.Gain}
)

var (
	kcalSpan     = spanOf(float64(domain.LeastEnergyAsked), float64(domain.MostEnergyAsked), "a number of kilocalories a day")
	exerciseSpan = spanOf(0, float64(domain.MostExercise), "a number of kilocalories a day")
	measuredSpan = spanOf(float64(energy.LeastMeasured), float64(energy.MostMeasured), "a number of kilocalories a day")
	mealsSpan    = spanOf(domain.LeastMeals, domain.MostMeals, "a whole number")
	balanceSpan  = spanOf(0, 100, "a number")
	floorSpan    = spanOf(float64(macro.LeastFatFloor), float64(macro.MostFatFloor), "a number")
	perKgSpan    = spanOf(float64(domain.LeastFatFloorPerKg), float64(domain.MostFatFloorPerKg), "a number of grams")
	proteinSpan  = spanOf(float64(macro.LeastProteinPerKg), float64(macro.MostProteinPerKg), "a number of grams")
	fibreSpan    = spanOf(1, float64(domain.MostUsualFibre), "a number of grams")
)

func spanOf(low, high float64, words string) span {
	if !strings.Contains(words, " from ") {
		words += fmt.Sprintf(" from %g to %g", low, high)
	}
	return span{low: low, high: high, words: words}
}

// The names of the choices that an intake leaves empty.
const (
	byBMI   = "by_bmi"
	noneYet = "none"
	total   = "total"
)

// rootFields is the schema of the consult file, in the order of the README.
var rootFields = []field{
	{"date", func(r *reader, v value, in *domain.Intake) { in.Date = quantity(r, v, unit.ParseDate) }},
	{"client", func(r *reader, v value, in *domain.Intake) { r.fields(v, in, clientFields) }},
	{"height", func(r *reader, v value, in *domain.Intake) { in.Height = quantity(r, v, unit.ParseHeight) }},
	{"weight", func(r *reader, v value, in *domain.Intake) { in.Weight = quantity(r, v, unit.ParseWeight) }},
	{"activity", readActivity},
	{"goal", func(r *reader, v value, in *domain.Intake) { r.fields(v, in, goalFields) }},
	{"body", func(r *reader, v value, in *domain.Intake) { r.fields(v, in, bodyFields) }},
	{"measured_resting_kcal_per_day", func(r *reader, v value, in *domain.Intake) {
		in.MeasuredResting = unit.Kilocalorie(r.number(v, measuredSpan))
	}},
	{"exercise_kcal_per_day", func(r *reader, v value, in *domain.Intake) {
		in.Exercise = unit.Kilocalorie(r.number(v, exerciseSpan))
	}},
	{"training", func(r *reader, v value, in *domain.Intake) {
		in.Training = choiceOr(r, v, noneYet, macro.Trainings())
	}},
	{"reproduction", func(r *reader, v value, in *domain.Intake) { r.fields(v, in, reproductionFields) }},
	{"meals_per_day", func(r *reader, v value, in *domain.Intake) { in.MealsPerDay = r.whole(v, mealsSpan) }},
	{"eating_pattern", func(r *reader, v value, in *domain.Intake) { in.Pattern = choice(r, v, food.Patterns()) }},
	{"avoid", readAvoid},
	{"usual_fibre_g_per_day", func(r *reader, v value, in *domain.Intake) {
		in.UsualFibre = unit.Gram(r.number(v, fibreSpan))
	}},
	{"hand", readHand},
	{"meal_wishes", readWishes},
	{"meal_sizes", readSizes},
	{"screening", readScreening},
	{"scored", func(r *reader, v value, in *domain.Intake) { r.fields(v, in, scoredFields()) }},
	{"carb_fat_balance_percent", func(r *reader, v value, in *domain.Intake) {
		in.CarbFatBalance = unit.Percent(r.number(v, balanceSpan))
	}},
	{"fat_floor_percent", func(r *reader, v value, in *domain.Intake) {
		in.FatFloor = unit.Percent(r.number(v, floorSpan))
	}},
	{"fat_floor_g_per_kg", func(r *reader, v value, in *domain.Intake) {
		in.FatFloorPerKg = unit.GramPerKilogram(r.number(v, perKgSpan))
	}},
	{"protein_g_per_kg", func(r *reader, v value, in *domain.Intake) {
		in.ProteinPerKg = unit.GramPerKilogram(r.number(v, proteinSpan))
	}},
	{"protein_basis", func(r *reader, v value, in *domain.Intake) {
		in.ProteinBasis = choiceOr(r, v, byBMI, macro.Bases())
	}},
	{"carbohydrate_counted", func(r *reader, v value, in *domain.Intake) {
		in.Counting = choiceOr(r, v, total, macro.Countings())
	}},
	{"resting_equation", func(r *reader, v value, in *domain.Intake) {
		in.RestingEquation = choice(r, v, energy.RestingEquations())
	}},
	{"hold_reasons", readReasons},
}

var clientFields = []field{
	{"name", readName},
	{"born", func(r *reader, v value, in *domain.Intake) { in.Client.Born = quantity(r, v, unit.ParseDate) }},
	{"equation_sex", func(r *reader, v value, in *domain.Intake) { in.Client.EquationSex = choice(r, v, sexes) }},
}

var goalFields = []field{
	{"kind", func(r *reader, v value, in *domain.Intake) { in.Goal.Kind = choice(r, v, goalKinds) }},
	{"weight", func(r *reader, v value, in *domain.Intake) { in.Goal.Weight = quantity(r, v, unit.ParseWeight) }},
	{"by", func(r *reader, v value, in *domain.Intake) { in.Goal.By = quantity(r, v, unit.ParseDate) }},
	{"per_week", func(r *reader, v value, in *domain.Intake) { in.Goal.PerWeek = quantity(r, v, unit.ParseRate) }},
	{"kcal_per_day", func(r *reader, v value, in *domain.Intake) {
		in.Goal.Energy = unit.Kilocalorie(r.number(v, kcalSpan))
	}},
}

func readName(r *reader, v value, in *domain.Intake) {
	text, ok := r.text(v, nameAccepted)
	if ok && !visible(text) {
		r.refuse(v.path, text, nameAccepted)
	}
	in.Client.Name = strings.TrimSpace(text)
}

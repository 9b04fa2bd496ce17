package domain

import (
	"strconv"

	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

// The accepted spans of an intake. They are wide enough for any adult and stop
// what can only be a slip of the pen; where a plan could hurt, screening speaks.
const (
	LeastMeals                        = 1
	MostMeals                         = 6
	DefaultMeals                      = 3
	LeastHeight      unit.Centimetre  = 100
	MostHeight       unit.Centimetre  = 250
	LeastWeight      unit.Kilogram    = 20
	MostWeight       unit.Kilogram    = 400
	LeastGirth       unit.Centimetre  = 20 // of neck, waist and hip
	MostGirth        unit.Centimetre  = 250
	MostNeck         unit.Centimetre  = 80
	LeastFatPercent  unit.Percent     = 3
	MostFatPercent   unit.Percent     = 65
	MostExercise     unit.Kilocalorie = 4000 // a day
	LeastEnergyAsked unit.Kilocalorie = 400
	MostEnergyAsked  unit.Kilocalorie = 10000
	OldestAge        unit.Year        = 120

	LeastPerWeek unit.KilogramPerWeek = 0.05
	MostPerWeek  unit.KilogramPerWeek = 2

	LeastFatFloorPerKg unit.GramPerKilogram = 0.3
	MostFatFloorPerKg  unit.GramPerKilogram = 1.5
	MostUsualFibre     unit.Gram            = 150

	LongestPregnancy = 42 // weeks

	MostRecentLoss   unit.Percent = 60
	MostDaysOfLittle unit.Day     = 365

	// LongestGoal is the farthest date of a goal.
	LongestGoal = 365 * 10 // days
)

// The names of the fields in problems: those of the consult file.
const (
	FieldDate             = "date"
	FieldBorn             = "client.born"
	FieldSex              = "client.equation_sex"
	FieldHeight           = "height"
	FieldWeight           = "weight"
	FieldNeck             = "body.neck"
	FieldWaist            = "body.waist"
	FieldHip              = "body.hip"
	FieldFatPercent       = "body.fat_percent"
	FieldPoints           = "body.points"
	FieldActivity         = "activity" // a class or a PAL
	FieldActivityDay      = "activity.day"
	FieldCustomary        = "activity.customary"
	FieldExercise         = "exercise_kcal_per_day"
	FieldGoalKind         = "goal.kind"
	FieldGoal             = "goal.weight"
	FieldGoalBy           = "goal.by"
	FieldGoalPerWeek      = "goal.per_week"
	FieldGoalKcal         = "goal.kcal_per_day"
	FieldMeals            = "meals_per_day"
	FieldPattern          = "eating_pattern"
	FieldBalance          = "carb_fat_balance_percent"
	FieldFloor            = "fat_floor_percent"
	FieldFloorPerKg       = "fat_floor_g_per_kg"
	FieldProtein          = "protein_g_per_kg"
	FieldProteinBasis     = "protein_basis"
	FieldTraining         = "training"
	FieldUsualFibre       = "usual_fibre_g_per_day"
	FieldCounting         = "carbohydrate_counted"
	FieldEquation         = "resting_equation"
	FieldMeasuredResting  = "measured_resting_kcal_per_day"
	FieldPregnantWeeks    = "reproduction.weeks"
	FieldWeightBefore     = "reproduction.weight_before"
	FieldBreastfeeding    = "reproduction.breastfeeding"
	FieldScored           = "scored" // followed by the code of a questionnaire: scored.scoff
	FieldRecentLoss       = "scored.recent_loss_percent"
	FieldDaysOfLittle     = "scored.days_of_little_food"
	FieldLowElectrolytes  = "scored.low_electrolytes"
	FieldAlcoholOrDrugs   = "scored.alcohol_or_listed_medicine"
	acceptedDate          = "a date, such as 2026-03-02"
	acceptedHeight        = "a height of 100 to 250 cm, such as 168 cm or 5 ft 6 in"
	acceptedWeight        = "a weight of 20 to 400 kg, such as 72.5 kg, 160 lb or 11 st 6 lb"
	acceptedGirth         = "a girth of 20 to 250 cm, such as 84 cm or 33 in"
	acceptedNeck          = "a girth of 20 to 80 cm, such as 36 cm or 14 in"
	acceptedLevel         = "inactive, low_active, active or very_active, or a PAL of 1.0 to 2.5"
	acceptedRate          = "a change of 0.05 to 2 kg a week, without a sign"
	acceptedBreastfeeding = "first_half_year or second_half_year, or nothing"
)

// SpanField names a part of one activity of a told day, from 0:
// "activity.day[2].hours".
func SpanField(index int, part energy.DayPart) string {
	return FieldActivityDay + "[" + strconv.Itoa(index) + "]." + string(part)
}

// ScoreField names the score of a questionnaire: "scored.scoff".
func ScoreField(code string) string { return FieldScored + "." + code }

// Breastfeeding lists the words for the age of a breastfed child, by what they
// mean; not breastfeeding has none.
func Breastfeeding() map[energy.BreastfeedingAge]string {
	return map[energy.BreastfeedingAge]string{
		energy.FirstHalfYear: "first_half_year", energy.SecondHalfYear: "second_half_year",
	}
}

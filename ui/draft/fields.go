package draft

// The fields that the plan is worked out from.
const (
	Date            Field = "date"
	Name            Field = "client.name"
	Born            Field = "client.born"
	Sex             Field = "client.equation_sex"
	Height          Field = "height"
	Weight          Field = "weight"
	Neck            Field = "body.neck"
	Waist           Field = "body.waist"
	Hip             Field = "body.hip"
	FatPercent      Field = "body.fat_percent"
	Points          Field = "body.points" // the points at which BMI speaks: a population
	MeasuredResting Field = "measured_resting_kcal_per_day"
	RestingEquation Field = "resting_equation"
	Activity        Field = "activity" // the code of a class, or one of the other ways
	PAL             Field = "activity.pal"
	Customary       Field = "activity.customary" // the code of a customary factor
	Exercise        Field = "exercise_kcal_per_day"
	Training        Field = "training"
	GoalKind        Field = "goal.kind"
	GoalWeight      Field = "goal.weight"
	GoalBy          Field = "goal.by"
	GoalPerWeek     Field = "goal.per_week"
	GoalEnergy      Field = "goal.kcal_per_day"
	Meals           Field = "meals_per_day"
	Pattern         Field = "eating_pattern"
	Avoid           Field = "avoid" // codes of allergens with commas between
	UsualFibre      Field = "usual_fibre_g_per_day"
	Balance         Field = "carb_fat_balance_percent"
	FatFloor        Field = "fat_floor_percent"
	FatFloorPerKg   Field = "fat_floor_g_per_kg"
	Protein         Field = "protein_g_per_kg"
	ProteinBasis    Field = "protein_basis"
	Counting        Field = "carbohydrate_counted"
	PregnantWeeks   Field = "reproduction.weeks"
	WeightBefore    Field = "reproduction.weight_before"
	Breastfeeding   Field = "reproduction.breastfeeding"
	RecentLoss      Field = "scored.recent_loss_percent"
	DaysOfLittle    Field = "scored.days_of_little_food"
	LowElectrolytes Field = "scored.low_electrolytes"
	AlcoholOrDrugs  Field = "scored.alcohol_or_listed_medicine"
)

// The ways of telling the activity otherwise than by a class: values of
// [Activity].
const (
	ActivityAsNumber    = "pal"       // [PAL] speaks
	ActivityAsCustomary = "customary" // [Customary] speaks
	ActivityAsDay       = "day"       // the fields of [DayHours] speak
)

// Day is the field of what is wrong with a told day as a whole, and of what is
// missing where none of its hours are told. Nothing is typed into it.
const Day Field = "activity.day"

// DayHours returns the field of the hours that an average day has of a pursuit,
// by its code.
func DayHours(code string) Field { return Day + Field("."+code) }

// NoTraining is the value of [Training] that says that nothing is trained, as
// against not asked.
const NoTraining = "none"

// The fields of the conversation that no computation reads. What is wrong with
// one of them is told and never stops a plan.
const (
	Why            Field = "why" // why they came, in their words
	OtherGoals     Field = "goals_beyond_weight"
	Importance     Field = "importance" // 0 to 10
	Confidence     Field = "confidence" // 0 to 10
	UsualDay       Field = "usual_day"  // as eaten now
	Dislikes       Field = "dislikes"
	MealTimes      Field = "meal_times"
	Sleep          Field = "sleep"
	Cooking        Field = "cooking" // and the time for it
	WhoCooks       Field = "who_cooks"
	EatingOut      Field = "eating_out"
	Budget         Field = "budget"
	FoodInsecurity Field = "food_insecurity"
	ShiftWork      Field = "shift_work"
	Fasting        Field = "religious_fasting"
	PastAttempts   Field = "past_attempts"
	Medicines      Field = "medicines"
	Supplements    Field = "supplements"
	BloodPressure  Field = "blood_pressure" // "128/82"
	PressureDate   Field = "blood_pressure_date"
	Laboratory     Field = "laboratory" // one value with its date a line
	Consent        Field = "consent"    // [AnswerYes] or [AnswerNo]
	ConsentDate    Field = "consent_date"
	// WithoutNumbers is [AnswerYes] where the client is to see no weights, energy
	// and grams.
	WithoutNumbers Field = "without_numbers"
	Notes          Field = "notes"
	NextStep       Field = "next_step"
	NextVisit      Field = "next_visit"
)

package screen

import "handbreadth/domain/unit"

// Scored is what was asked beside the yes-or-no questions: the scored
// questionnaires, and the details that the refeeding criteria ask for.
type Scored struct {
	// Scores holds the published score of each questionnaire that was asked.
	Scores Scores
	// RecentLoss is the unplanned loss of weight in the last 3 to 6 months.
	RecentLoss Told[unit.Percent]
	// DaysOfLittle is days of little or no food, up to now.
	DaysOfLittle    Told[unit.Day]
	LowElectrolytes Answer // low potassium, phosphate or magnesium before feeding
	AlcoholOrDrugs  Answer // alcohol misuse, insulin, chemotherapy, antacids or diuretics
}

// Told is a value that may not have been asked for; nought is an answer.
type Told[T ~float64] struct {
	Value T
	Asked bool
}

// Known returns the value, nought where it was not asked for.
func (t Told[T]) Known() T {
	if !t.Asked {
		return 0
	}
	return t.Value
}

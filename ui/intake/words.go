package intake

import (
	"slices"
	"strings"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// labels has the label of each field as the section shows it.
var labels = map[draft.Field]string{
	draft.Name: "Name", draft.Born: "Date of birth", draft.Date: "Date of this visit", draft.Sex: "Sex whose equation is used",
	draft.Why: "In their words", draft.OtherGoals: "Goals other than weight, optional",
	draft.Importance: "It matters, 0 to 10", draft.Confidence: "They are sure, 0 to 10",
	draft.GoalKind: "What the weight should do", goalWay: "How the pace is agreed", draft.GoalWeight: "Weight to reach",
	draft.GoalBy: "By when", draft.GoalPerWeek: "Change of weight a week", draft.GoalEnergy: "Energy a day",
	draft.Height: "Height", draft.Weight: "Weight",
	draft.Waist: "Waist", draft.Hip: "Hip", draft.Neck: "Neck", draft.FatPercent: "Body fat, measured",
	draft.MeasuredResting: "Resting energy, measured", draft.Points: "Values at which body mass index speaks",
	activityWay: "How the activity is told", draft.Activity: "An ordinary week", draft.Customary: "Customary factor, a convention",
	draft.PAL: "PAL", draft.Day: "An average day",
	draft.Training: "Training", draft.Exercise: "Energy of training on an average day, optional",
	draft.UsualDay: "What is eaten and drunk on an ordinary day", draft.UsualFibre: "Fibre on such a day, optional",
	draft.Pattern: "Eating pattern", draft.Avoid: "Allergens to avoid", draft.Dislikes: "Foods they do not like",
	draft.Meals: "Meals a day", draft.MealTimes: "When they eat",
	draft.Sleep: "Sleep", draft.ShiftWork: "Shift work", draft.Cooking: "Cooking, and the time for it", draft.WhoCooks: "Who shops and cooks",
	draft.EatingOut: "Eating out", draft.Budget: "Money for food", draft.FoodInsecurity: "Enough food to the end of the month",
	draft.Fasting: "Religious fasting", draft.PastAttempts: "What was tried before",
	draft.Medicines: "Medicines", draft.Supplements: "Supplements", draft.BloodPressure: "Blood pressure", draft.PressureDate: "Measured on",
	draft.Laboratory: "Laboratory values", draft.Consent: "Consent to keep these notes", draft.ConsentDate: "Given or refused on",
	draft.WithoutNumbers: "What the client would rather see", draft.Notes: "Notes",
}

// needs names what a plan still needs, inside a sentence.
var needs = map[draft.Field]string{
	draft.Date: "the date", draft.Born: "the date of birth", draft.Sex: "the sex for the equation",
	draft.Height: "height", draft.Weight: "weight", draft.Activity: "the activity", draft.PAL: "the PAL",
	draft.Customary: "the factor", draft.Day: "the hours of the day",
	draft.GoalKind: "the goal", draft.GoalWeight: "the weight to reach",
}

const needed = "needed for a plan"

// isMissing reports whether a plan still needs a field.
func isMissing(field draft.Field, r draft.Reading) bool { return slices.Contains(r.Missing, field) }

// understand reads a text as if it stood in a field: how it was understood, and
// what is wrong with it as a [unit.Problem].
func understand(session *draft.Session, field draft.Field, text string) (string, error) {
	r := session.Try(field, text)
	if p, wrong := r.Wrong(field); wrong {
		return "", p
	}
	return understood(field, r), nil
}

// understood tells how a field was read. A rating says it itself.
func understood(field draft.Field, r draft.Reading) string {
	words, ok := r.Understood[field]
	if !ok {
		return ""
	}
	switch field {
	case draft.Importance, draft.Confidence:
		return ""
	case draft.Born:
		if age := r.Intake.Age(); age >= 0 {
			words += ", " + years(age) + " old at this visit"
		}
	case draft.Date:
		words = weekday(r.Intake.Date) + words
	case draft.GoalBy:
		words = weekday(r.Intake.Goal.By) + words
	}
	return "= " + words
}

func weekday(d unit.Date) string { return d.Weekday().String() + " " }

// joined lists words in a sentence: "a, b and c".
func joined(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " and " + words[last]
}

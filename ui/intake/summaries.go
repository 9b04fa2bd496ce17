package intake

import (
	"strconv"
	"strings"

	"handbreadth/domain/body"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

func whySummary(form draft.Form, r draft.Reading) string {
	var told []string
	if why := brief(form.Get(draft.Why)); why != "" {
		told = append(told, why)
	}
	if told == nil {
		if goals := brief(form.Get(draft.OtherGoals)); goals != "" {
			told = append(told, goals)
		}
	}
	for _, rated := range []struct {
		field draft.Field
		word  string
	}{{draft.Importance, "matters "}, {draft.Confidence, "sure "}} {
		if words := r.Understood[rated.field]; words != "" {
			told = append(told, rated.word+words)
		}
	}
	return strings.Join(told, "; ")
}

func bodySummary(r draft.Reading, style unit.Style) string {
	b := r.Intake.Body
	var told []string
	for _, girth := range []struct {
		value unit.Centimetre
		word  string
	}{{b.Waist, "waist "}, {b.Hip, "hip "}, {b.Neck, "neck "}} {
		if girth.value != 0 {
			told = append(told, girth.word+style.Length(girth.value))
		}
	}
	if b.Fat != 0 {
		told = append(told, "body fat "+style.Percent(b.Fat))
	}
	if e := r.Intake.MeasuredResting; e != 0 {
		told = append(told, "resting "+style.Energy(e))
	}
	if b.Points == body.AsianPoints {
		told = append(told, "points for Asian populations")
	}
	return sentence(strings.Join(told, ", "))
}

func trainingSummary(form draft.Form, r draft.Reading, style unit.Style) string {
	var told []string
	if form.Get(draft.Training) != "" {
		told = append(told, trainingWords[r.Intake.Training])
	}
	if e := r.Intake.Exercise; e != 0 {
		told = append(told, style.EnergyPerDay(e))
	}
	return strings.Join(told, ", ")
}

func eatenSummary(form draft.Form, r draft.Reading, style unit.Style) string {
	var told []string
	if day := brief(form.Get(draft.UsualDay)); day != "" {
		told = append(told, day)
	}
	if fibre := r.Intake.UsualFibre; fibre != 0 {
		told = append(told, style.Grams(fibre)+" of fibre")
	}
	return strings.Join(told, "; ")
}

func mealsSummary(form draft.Form, r draft.Reading) string {
	var told []string
	if form.Get(draft.Meals) != "" {
		told = append(told, mealsWords(r.Intake.MealsPerDay))
	}
	if times := brief(form.Get(draft.MealTimes)); times != "" {
		told = append(told, times)
	}
	return strings.Join(told, "; ")
}

// contextWords names what was told of the life around food.
var contextWords = map[draft.Field]string{
	draft.Sleep: "sleep", draft.ShiftWork: "shift work", draft.Cooking: "cooking", draft.WhoCooks: "who cooks", draft.EatingOut: "eating out",
	draft.Budget: "money", draft.FoodInsecurity: "enough food", draft.Fasting: "fasting", draft.PastAttempts: "what was tried",
}

func contextSummary(form draft.Form) string {
	var told []string
	for _, field := range parts[partOf(draft.Sleep)].Fields {
		if form.Get(field) != "" {
			told = append(told, contextWords[field])
		}
	}
	if len(told) == 0 {
		return ""
	}
	return "Told: " + joined(told)
}

func healthSummary(form draft.Form, r draft.Reading) string {
	var told []string
	for _, field := range []draft.Field{draft.Medicines, draft.Supplements} {
		if text := brief(form.Get(field)); text != "" {
			told = append(told, text)
		}
	}
	for _, field := range []draft.Field{draft.BloodPressure, draft.Laboratory} {
		if words := r.Understood[field]; words != "" {
			told = append(told, words)
		}
	}
	return strings.Join(told, "; ")
}

func consentSummary(form draft.Form, r draft.Reading) string {
	var told []string
	if answer := map[string]string{draft.AnswerYes: "Given", draft.AnswerNo: "Not given"}[form.Get(draft.Consent)]; answer != "" {
		told = append(told, answer)
	}
	if date := r.Understood[draft.ConsentDate]; date != "" {
		told = append(told, date)
	}
	if form.Get(draft.WithoutNumbers) == draft.AnswerYes {
		told = append(told, "rather without numbers")
	}
	return sentence(strings.Join(told, ", "))
}

func mealsWords(n int) string {
	if n == 1 {
		return "1 meal a day"
	}
	return strconv.Itoa(n) + " meals a day"
}

package intake

import (
	"slices"

	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/widgets"
)

// part is one fold of the section.
type part struct {
	Key    string
	Title  string
	Fields []draft.Field
	// Essential parts are open at first.
	Essential bool
	// Empty is what the closed head says while nothing is in the fold.
	Empty string
}

// The choices of a way are of this section only: what they choose is which
// fields of the form are filled in.
const (
	goalWay     draft.Field = "goal.way"
	activityWay draft.Field = "activity.way"
)

// parts are the folds in the order of a conversation.
var parts = []part{
	{Key: "who", Title: "Who", Essential: true, Fields: []draft.Field{draft.Name, draft.Born, draft.Sex, draft.Date}},
	{Key: "why", Title: "Why they came", Essential: true, Empty: "Optional: their words, other goals, how much it matters", Fields: []draft.Field{draft.Why, draft.OtherGoals, draft.Importance, draft.Confidence}},
	{Key: "goal", Title: "Goal and date", Essential: true, Fields: []draft.Field{draft.GoalKind, goalWay, draft.GoalWeight, draft.GoalBy, draft.GoalPerWeek, draft.GoalEnergy}},
	{Key: "measurements", Title: "Height and weight", Essential: true, Fields: []draft.Field{draft.Height, draft.Weight}},
	{
		Key: "body", Title: "More measurements", Empty: "Optional: waist, neck, hip, body fat, resting energy",
		Fields: []draft.Field{draft.Waist, draft.Hip, draft.Neck, draft.FatPercent, draft.MeasuredResting, draft.Points},
	},
	{Key: "activity", Title: "Activity", Essential: true, Fields: activityFields()},
	{Key: "training", Title: "Training", Empty: "Optional: strength or endurance, its energy", Fields: []draft.Field{draft.Training, draft.Exercise}},
	{Key: "eaten", Title: "The usual day now", Empty: "Optional: what is eaten now, its fibre", Fields: []draft.Field{draft.UsualDay, draft.UsualFibre}},
	{Key: "food", Title: "Eating pattern", Empty: "Optional: pattern, allergies, dislikes", Fields: []draft.Field{draft.Pattern, draft.Avoid, draft.Dislikes}},
	{Key: "meals", Title: "Meals", Empty: "Optional: how many, and when; three until told", Fields: []draft.Field{draft.Meals, draft.MealTimes}},
	{
		Key: "context", Title: "Life around food", Empty: "Optional: sleep, kitchen, money, shifts, fasting",
		Fields: []draft.Field{
			draft.Sleep, draft.ShiftWork, draft.Cooking, draft.WhoCooks, draft.EatingOut, draft.Budget,
			draft.FoodInsecurity, draft.Fasting, draft.PastAttempts,
		},
	},
	{
		Key: "health", Title: "Health", Empty: "Optional: medicines, blood pressure, laboratory",
		Fields: []draft.Field{draft.Medicines, draft.Supplements, draft.BloodPressure, draft.PressureDate, draft.Laboratory},
	},
	{Key: "consent", Title: "Consent", Empty: "Not asked yet", Fields: []draft.Field{draft.Consent, draft.ConsentDate, draft.WithoutNumbers}},
	{Key: "notes", Title: "Anything else", Essential: true, Empty: "Optional", Fields: []draft.Field{draft.Notes}},
}

func activityFields() []draft.Field {
	fields := []draft.Field{activityWay, draft.Activity, draft.Customary, draft.PAL, draft.Day}
	for _, p := range energy.Pursuits() {
		fields = append(fields, draft.DayHours(p.Code))
	}
	return fields
}

// partOf returns the index of the fold of a field, -1 where it has none.
func partOf(field draft.Field) int {
	return slices.IndexFunc(parts, func(p part) bool { return slices.Contains(p.Fields, field) })
}

// markOf says what is wrong or missing in a fold, else what was filled in.
func markOf(p part, form draft.Form, r draft.Reading, style unit.Style) widgets.FoldMark {
	problems := 0
	var missing []string
	for _, field := range p.Fields {
		if _, bad := r.Wrong(field); bad {
			problems++
		}
		if slices.Contains(r.Missing, field) {
			missing = append(missing, needs[field])
		}
	}
	switch {
	case problems > 0:
		return widgets.FoldMark{Text: counted(problems) + " to mend", Kind: widgets.MarkWrong}
	case len(missing) > 0:
		return widgets.FoldMark{Text: "Still needed: " + joined(missing), Kind: widgets.MarkWanting}
	}
	told := summaryOf(p.Key, form, r, style)
	if told == "" {
		told = p.Empty
	}
	return widgets.FoldMark{Text: told}
}

// isShown reports whether a field is of use with what was answered so far, and
// with the way of the goal that was picked.
func isShown(field draft.Field, form draft.Form, picked draft.Field) bool {
	switch field {
	case goalWay, draft.GoalWeight:
		return movesWeight(form)
	case draft.GoalBy, draft.GoalPerWeek:
		return movesWeight(form) && (field == wayOfGoal(form, picked) || form.Get(field) != "")
	case draft.GoalEnergy:
		return form.Get(draft.GoalKind) == goalHold || field == wayOfGoal(form, picked) || form.Get(field) != ""
	case draft.Activity, draft.Customary, draft.PAL, draft.Day:
		return field == wayOfActivity(form)
	}
	return true
}

// movesWeight reports whether the goal is another weight.
func movesWeight(form draft.Form) bool {
	kind := form.Get(draft.GoalKind)
	return kind == goalLose || kind == goalGain
}

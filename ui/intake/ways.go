package intake

import (
	"handbreadth/domain/energy"
	"handbreadth/ui/draft"
)

// way is one of several ways to tell the same thing: the field in which it is
// told, and its words.
type way struct {
	Field draft.Field
	Label string
}

// goalWays are the ways to say how fast a weight changes. The last is none.
var goalWays = []way{
	{draft.GoalBy, "By a date"},
	{draft.GoalPerWeek, "So much a week"},
	{draft.GoalEnergy, "By an energy"},
	{"", "Not agreed yet"},
}

// wayOfGoal returns the field in which the pace is told: the one that is filled
// in, else the one that was picked to be.
func wayOfGoal(form draft.Form, picked draft.Field) draft.Field {
	first := draft.Field("")
	for _, w := range goalWays {
		if w.Field == "" || form.Get(w.Field) == "" {
			continue
		}
		if w.Field == picked {
			return picked
		}
		if first == "" {
			first = w.Field
		}
	}
	if first == "" {
		return picked
	}
	return first
}

// pickGoalWay returns what changes in the form when another way is picked: what
// was told in the others goes, and what was told in this one before comes back.
func pickGoalWay(form draft.Form, to draft.Field, before map[draft.Field]string) map[draft.Field]string {
	changes := map[draft.Field]string{}
	for _, w := range goalWays {
		if w.Field == "" {
			continue
		}
		text := form[w.Field]
		switch {
		case w.Field == to && text == "" && before[to] != "":
			changes[to] = before[to]
		case w.Field != to && text != "":
			before[w.Field] = text
			changes[w.Field] = ""
		}
	}
	return changes
}

// activityWays are the ways to tell the activity.
var activityWays = []way{
	{draft.Activity, "As described"},
	{draft.Day, "From the day"},
	{draft.PAL, "A number"},
	{draft.Customary, "A customary factor"},
}

// activityValues are what the field of the activity holds for the ways that are
// no class.
var activityValues = map[draft.Field]string{
	draft.Day: draft.ActivityAsDay, draft.PAL: draft.ActivityAsNumber, draft.Customary: draft.ActivityAsCustomary,
}

// wayOfActivity returns the field in which the activity is told.
func wayOfActivity(form draft.Form) draft.Field {
	chosen := form.Get(draft.Activity)
	for field, value := range activityValues {
		if value == chosen {
			return field
		}
	}
	return draft.Activity
}

// isClass reports whether a value of the activity is a described class.
func isClass(text string) bool {
	for _, c := range energy.Classes() {
		if string(c.Category) == text {
			return true
		}
	}
	return false
}

// indexOf returns the place of a field among ways; the last stands for none.
func indexOf(ways []way, field draft.Field) int {
	for i, w := range ways {
		if w.Field == field {
			return i
		}
	}
	return -1
}

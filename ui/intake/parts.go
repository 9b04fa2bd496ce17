package intake

import (
	"slices"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// part is one fold of the section.
type part struct {
	Key    string
	Title  string
	Fields []draft.Field
}

// parts are the folds in the order of a conversation.
var parts = []part{
	{"who", "Who", []draft.Field{draft.Name, draft.Born, draft.Sex}},
	{"visit", "The visit", []draft.Field{draft.Why, draft.Date}},
	{"measurements", "Measurements", []draft.Field{draft.Height, draft.Weight}},
	{"activity", "Activity", []draft.Field{draft.Activity, draft.PAL}},
	{"goal", "Goal", []draft.Field{draft.GoalKind, draft.GoalWeight, draft.GoalBy, draft.GoalEnergy}},
	{"food", "Food", []draft.Field{draft.Pattern, draft.Avoid, draft.Meals}},
	{"notes", "Notes", []draft.Field{draft.Notes}},
}

// partOf returns the index of the fold of a field, -1 where it has none.
func partOf(field draft.Field) int {
	return slices.IndexFunc(parts, func(p part) bool { return slices.Contains(p.Fields, field) })
}

// mark is what the head of a fold says at its right.
type mark struct {
	Text string
	Kind markKind
}

type markKind int

const (
	summary markKind = iota // what was filled in
	wanting                 // what a plan still needs
	wrong                   // something cannot be read
)

// markOf says what is wrong or missing in a fold, else what was filled in.
func markOf(p part, form draft.Form, r draft.Reading, style unit.Style) mark {
	problems := 0
	var missing []string
	for _, field := range p.Fields {
		if _, bad := r.Problems[field]; bad {
			problems++
		}
		if slices.Contains(r.Missing, field) {
			missing = append(missing, needs[field])
		}
	}
	switch {
	case problems > 0:
		return mark{counted(problems) + " to mend", wrong}
	case len(missing) > 0:
		return mark{"Still needed: " + joined(missing), wanting}
	}
	return mark{summaryOf(p.Key, form, r, style), summary}
}

// isShown reports whether a field is of use with what was answered so far.
func isShown(field draft.Field, form draft.Form) bool {
	kind := form.Get(draft.GoalKind)
	switch field {
	case draft.PAL:
		return form.Get(draft.Activity) == draft.ActivityAsNumber
	case draft.GoalWeight, draft.GoalBy:
		return kind == goalLose || kind == goalGain
	case draft.GoalEnergy:
		return kind != "" || form.Get(draft.GoalEnergy) != ""
	}
	return true
}

package intake

import (
	"slices"
	"strings"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// labels has the label of each field as the section shows it.
var labels = map[draft.Field]string{
	draft.Name: "Name", draft.Born: "Date of birth", draft.Sex: "Sex whose equation is used",
	draft.Why: "Why they came", draft.Date: "Date of this visit",
	draft.Height: "Height", draft.Weight: "Weight",
	draft.Activity: "An ordinary week", draft.PAL: "PAL",
	draft.GoalKind: "What the weight should do", draft.GoalWeight: "Weight to reach", draft.GoalBy: "By when",
	draft.GoalEnergy: "Energy a day, instead of a date",
	draft.Pattern:    "Eating pattern", draft.Avoid: "Allergens to avoid", draft.Meals: "Meals a day",
	draft.Notes: "Anything else",
}

// needs names what a plan still needs, inside a sentence.
var needs = map[draft.Field]string{
	draft.Date: "the date", draft.Born: "the date of birth", draft.Sex: "the sex for the equation",
	draft.Height: "height", draft.Weight: "weight", draft.Activity: "the activity", draft.PAL: "the PAL",
	draft.GoalKind: "the goal", draft.GoalWeight: "the weight to reach",
}

const (
	hintDate = "Such as 2026-03-02, 2/3/2026 (day first) or 2 March 2026."
	needed   = "needed for a plan"
)

// hint says what a field accepts, in the units of the practice.
func hint(field draft.Field, style unit.Style) string {
	switch field {
	case draft.Born, draft.Date:
		return hintDate
	case draft.GoalBy:
		return "Such as 31 August 2026 or 2026-08-31."
	case draft.Sex:
		return "The energy equations know two groups. This says which one to use; it is no question about gender."
	case draft.Why:
		return "In their own words."
	case draft.Height:
		return heightHint(style.System)
	case draft.Weight, draft.GoalWeight:
		return weightHint(style.System)
	case draft.PAL:
		return "A number from 1.0 to 2.5: how many times resting energy the whole day takes."
	case draft.GoalEnergy:
		return energyHint(style.EnergyIn)
	case draft.Pattern:
		return "Foods of every kind are used until a pattern is chosen."
	case draft.Avoid:
		return "Left out of the measures and the food list. Named as food labels in the EU and the US name them."
	case draft.Meals:
		return "Three until a number is chosen."
	}
	return ""
}

func weightHint(system unit.System) string {
	switch system {
	case unit.USCustomary:
		return "160 lb, 72.5 kg, 11 st 6 lb. A bare number is pounds."
	case unit.UKCustomary:
		return "11 st 6 lb, 72.5 kg, 160 lb. The unit is needed."
	}
	return "72.5 kg, 160 lb, 11 st 6 lb. A bare number is kg."
}

func heightHint(system unit.System) string {
	switch system {
	case unit.USCustomary:
		return "5 ft 6 in, 168 cm. A bare number is inches."
	case unit.UKCustomary:
		return "5 ft 6 in, 168 cm. The unit is needed."
	}
	return "168 cm, 1.68 m, 5 ft 6 in. A bare number is cm or m."
}

func energyHint(in unit.EnergyUnit) string {
	if in == unit.InKilojoules {
		return "7500 kJ, 1800 kcal. A bare number is kJ."
	}
	return "1800 kcal, 7500 kJ. A bare number is kcal."
}

// isMissing reports whether a plan still needs a field.
func isMissing(field draft.Field, r draft.Reading) bool { return slices.Contains(r.Missing, field) }

// hintNow is the hint as the answers so far have it: what a default does is of
// no interest once something was chosen.
func hintNow(field draft.Field, form draft.Form, style unit.Style) string {
	if (field == draft.Pattern || field == draft.Meals) && form.Get(field) != "" {
		return ""
	}
	return hint(field, style)
}

// understand reads a text as if it stood in a field: how it was understood, and
// what is wrong with it as a [unit.Problem].
func understand(form draft.Form, style unit.Style, field draft.Field, text string) (string, error) {
	form = form.Clone()
	form[field] = text
	r := draft.Read(form, style)
	if p, wrong := r.Problems[field]; wrong {
		return "", p
	}
	return understood(field, r), nil
}

// understood tells how a field was read.
func understood(field draft.Field, r draft.Reading) string {
	words, ok := r.Understood[field]
	if !ok {
		return ""
	}
	switch field {
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

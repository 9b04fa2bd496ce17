package intake

import "handbreadth/ui/draft"

// The client of these tests is invented.
func filled() draft.Form {
	return draft.Form{
		draft.Date: "2026-03-02", draft.Name: "Robin Sample", draft.Born: "17 May 1990", draft.Sex: "female",
		draft.Why:    "Tired after lunch, and the stairs have become hard. Wants to cook again instead of buying sandwiches.",
		draft.Height: "5 ft 6 in", draft.Weight: "11 st 6 lb", draft.Activity: "low_active",
		draft.GoalKind: "lose", draft.GoalWeight: "66 kg", draft.GoalBy: "2026-08-31",
		draft.Pattern: "vegetarian", draft.Avoid: "peanut, tree_nut", draft.Meals: "3",
		draft.Notes: "Works shifts; shares the kitchen with two others.",
	}
}

// told is an invented client who was asked everything.
func told() draft.Form {
	return with(filled(),
		"goals_beyond_weight", "Stairs without a rest", "importance", "8", "confidence", "6",
		"body.waist", "33 in", "body.hip", "104 cm", "body.neck", "34,5 cm", "body.fat_percent", "33", "measured_resting_kcal_per_day", "6200 kJ", "body.points", "asian",
		"activity", "day", "activity.day.07030", "7:30", "activity.day.11580", "8", "activity.day.17190", "45 min", "activity.day.02054", "2 h a week",
		"training", "strength", "exercise_kcal_per_day", "90 kcal", "usual_day", "Coffee and toast at seven, a sandwich at the desk, pasta in the evening, crisps before bed.",
		"usual_fibre_g_per_day", "16", "dislikes", "Liver, olives", "meal_times", "7:00, 12:30 and 20:00",
		"sleep", "Six hours, broken", "cooking", "Half an hour on weekdays", "budget", "Tight at the end of the month",
		"medicines", "Thyroxine 50 micrograms", "blood_pressure", "128/82", "blood_pressure_date", "2026-02-20",
		"laboratory", "HbA1c 41 mmol/mol, 2 February 2026\nFerritin 20 µg/l", "consent", "yes", "consent_date", "2026-03-02", "without_numbers", "yes",
	)
}

func withProblems() draft.Form {
	return with(filled(), "weight", "heavy", "client.born", "2031-01-01", "goal.weight", "", "goal.kcal_per_day", "1700",
		"activity", draft.ActivityAsNumber, "activity.pal", "9", "avoid", "peanut, moonbeams", "client.equation_sex", "",
		"importance", "11", "body.waist", "wide", "blood_pressure", "82/128")
}

// with sets fields by their names; an empty text takes one out.
func with(form draft.Form, pairs ...string) draft.Form {
	for i := 0; i < len(pairs); i += 2 {
		form[draft.Field(pairs[i])] = pairs[i+1]
		if pairs[i+1] == "" {
			delete(form, draft.Field(pairs[i]))
		}
	}
	return form
}

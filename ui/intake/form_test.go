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

func withProblems() draft.Form {
	form := filled()
	form[draft.Weight] = "heavy"
	form[draft.Born] = "2031-01-01"
	form[draft.GoalWeight] = ""
	form[draft.GoalEnergy] = "1700"
	form[draft.Activity] = draft.ActivityAsNumber
	form[draft.PAL] = "9"
	form[draft.Avoid] = "peanut, moonbeams"
	delete(form, draft.Sex)
	return form
}

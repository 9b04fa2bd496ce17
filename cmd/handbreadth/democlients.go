package main

import (
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/screen"
	"handbreadth/ui/draft"
)

// demoClients are the invented clients, the one that opens last at the end.
func demoClients() []demoClient {
	return []demoClient{begun(), referred(), held(), older(), imperial(), regular()}
}

// begun has an intake that stopped in the middle.
func begun() demoClient {
	return demoClient{years: 23, visits: []demoVisit{{ago: 1, unasked: true, next: 6, form: draft.Form{
		draft.Name: "Jun Paperkite", draft.Sex: string(energy.Male),
		draft.Why:    "Works nights at the harbour and eats whatever the machine sells.",
		draft.Height: "174 cm", draft.Pattern: string(food.Vegan),
	}}}}
}

// referred has an answer that sends the client elsewhere first.
func referred() demoClient {
	return demoClient{years: 29, visits: []demoVisit{{ago: 4, yes: []screen.Code{screen.Type1Diabetes}, form: draft.Form{
		draft.Name: "Kofi Riverstone", draft.Sex: string(energy.Male),
		draft.Why:    "Wants more energy for evening football.",
		draft.Height: "181 cm", draft.Weight: "77 kg", draft.Activity: string(energy.Active),
		draft.GoalKind: string(energy.Maintain), draft.Pattern: string(food.Omnivore), draft.Meals: "4",
	}}}}
}

// held waits for a reason.
func held() demoClient {
	return demoClient{years: 33, visits: []demoVisit{{ago: 2, next: 12, yes: []screen.Code{screen.Pregnant}, form: draft.Form{
		draft.Name: "Amina Lantern", draft.Sex: string(energy.Female),
		draft.Why:    "Breastfeeding a four-month-old and forgets to eat.",
		draft.Height: "163 cm", draft.Weight: "64.5 kg", draft.Activity: string(energy.LowActive),
		draft.GoalKind: string(energy.Maintain), draft.Pattern: string(food.Omnivore), draft.Meals: "5",
	}}}}
}

// older is a plan for someone of 67 who eats no meat and avoids milk.
func older() demoClient {
	return demoClient{years: 67, visits: []demoVisit{{ago: 9, next: 19, keep: true, form: draft.Form{
		draft.Name: "Rosalind Thimble", draft.Sex: string(energy.Female),
		draft.Why:    "Wants to keep her strength for the allotment garden.",
		draft.Height: "158 cm", draft.Weight: "61 kg", draft.Activity: string(energy.Active),
		draft.GoalKind: string(energy.Maintain), draft.Pattern: string(food.Vegetarian), draft.Avoid: "milk", draft.Meals: "3",
		draft.NextStep: "Beans or tofu at lunch on four days.",
	}}}}
}

// imperial was typed in stones and feet.
func imperial() demoClient {
	return demoClient{years: 57, visits: []demoVisit{{ago: 0, goal: 240, next: 21, form: draft.Form{
		draft.Name: "Oskar Tidewater", draft.Sex: string(energy.Male),
		draft.Why:    "Trousers have become tight; the stairs are long.",
		draft.Height: "5 ft 11 in", draft.Weight: "15 st 4 lb", draft.Activity: string(energy.Inactive),
		draft.GoalKind: string(energy.Lose), draft.GoalWeight: "14 st", draft.Pattern: string(food.Pescatarian), draft.Meals: "3",
	}}}}
}

// regular has an older plan, and a newer one after some weeks.
func regular() demoClient {
	first := demoVisit{ago: 35, goal: 147, keep: true, form: draft.Form{
		draft.Name: "Wren Applecart", draft.Sex: string(energy.Female),
		draft.Why:    "Wants to feel lighter on the bicycle, without giving up bread.",
		draft.Height: "168 cm", draft.Weight: "79.5 kg", draft.Activity: string(energy.LowActive),
		draft.GoalKind: string(energy.Lose), draft.GoalWeight: "72 kg", draft.Pattern: string(food.Omnivore),
		draft.Avoid: "peanut", draft.Meals: "3", draft.NextStep: "Two fists of vegetables at dinner.",
	}}
	second := demoVisit{ago: 7, goal: 147, next: 21, keep: true, form: draft.Form{}}
	for field, text := range first.form {
		second.form[field] = text
	}
	second.form[draft.Weight] = "77.8 kg"
	second.form[draft.Balance] = "50"
	second.form[draft.NextStep] = "Breakfast with a palm of protein on workdays."
	return demoClient{years: 41, visits: []demoVisit{first, second}}
}

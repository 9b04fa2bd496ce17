package handout

import (
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// The client of these tests is invented.
func answers() draft.Form {
	form := draft.Form{
		draft.Date: "2026-03-02", draft.Name: "Robin Sample", draft.Born: "1990-05-17",
		draft.Sex: "female", draft.Height: "168 cm", draft.Weight: "78 kg", draft.Activity: "low_active",
		draft.GoalKind: "lose", draft.GoalWeight: "70 kg", draft.GoalBy: "2026-08-31",
		draft.Meals: "3", draft.Pattern: "omnivore",
	}
	for _, q := range screen.Questions() {
		form[draft.Screening(q.Code)] = draft.AnswerNo
	}
	return form
}

// with returns the answers with some of them changed; "" takes one away.
func with(pairs ...string) draft.Form {
	form := answers()
	for i := 0; i < len(pairs); i += 2 {
		if pairs[i+1] == "" {
			delete(form, draft.Field(pairs[i]))
			continue
		}
		form[draft.Field(pairs[i])] = pairs[i+1]
	}
	return form
}

func opened(form draft.Form) *draft.Session { return draft.NewSession(form, unit.Style{}) }

// galleryForms are the states in which the screen is looked at.
func galleryForms() map[string]draft.Form {
	return map[string]draft.Form{
		"open": with("next_step", "Two fists of vegetables at dinner on five days, with the bread that is there anyway.",
			"next_visit", "2026-03-30"),
		"problem":  with("next_visit", "2026-02-02"),
		"held":     with("screening.lithium", "yes", "screening.warfarin", ""),
		"referred": with("screening.type_1_diabetes", "yes"),
		"waiting":  {draft.Date: "2026-03-02"},
		"unread":   with("weight", "heavy"),
	}
}

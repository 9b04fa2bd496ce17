package screening

import (
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// invented is an invented adult of whom nothing was asked yet.
func invented() draft.Form {
	return draft.Form{
		draft.Date: "2 March 2026", draft.Born: "17 May 1990", draft.Sex: "female", draft.Height: "168 cm", draft.Weight: "72.6 kg",
		draft.Activity: "low_active", draft.GoalKind: "lose", draft.GoalWeight: "66 kg", draft.GoalBy: "31 August 2026",
	}
}

// askedOf is the invented adult with every question answered no but for those
// named, which are yes.
func askedOf(yes ...screen.Code) draft.Form {
	form := invented()
	for _, q := range screen.Questions() {
		form[draft.Screening(q.Code)] = draft.AnswerNo
	}
	for _, code := range yes {
		form[draft.Screening(code)] = draft.AnswerYes
	}
	return form
}

// scored is an invented adult of whom more was asked: the questionnaires, and
// what a loss and a pregnancy point to.
func scored() draft.Form {
	return with(askedOf(screen.UnexplainedLoss, screen.Pregnant),
		"reproduction.weeks", "24", "reproduction.weight_before", "70 kg", "reproduction.breastfeeding", "no",
		"scored.recent_loss_percent", "4 kg", "scored.days_of_little_food", "3", "scored.low_electrolytes", "no",
		"scored.scoff.sick", "no", "scored.scoff.control", "yes", "scored.scoff.food", "yes", "scored.must.ill", "no", "scored.mst", "1")
}

func with(form draft.Form, pairs ...string) draft.Form {
	for i := 0; i < len(pairs); i += 2 {
		form[draft.Field(pairs[i])] = pairs[i+1]
	}
	return form
}

func outcomeOfForm(form draft.Form) outcome {
	s := draft.NewSession(form, unit.Style{})
	plan, ok := s.Plan()
	return outcomeOf(plan, ok, s.Reading())
}

package targets

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
		"normal":     answers(),
		"held":       with("screening.lithium", "yes", "screening.warfarin", "yes", "goal.by", "2026-05-04", "activity", "active"),
		"referred":   with("screening.type_1_diabetes", "yes"),
		"toofast":    with("goal.by", "2026-03-20"),
		"empty":      {draft.Date: "2026-03-02"},
		"waiting":    with("weight", "heavy", "height", "", "goal.kind", "", "screening.lithium", ""),
		"vegan6":     with("eating_pattern", "vegan", "meals_per_day", "6", "avoid", "peanut, sesame", "carb_fat_balance_percent", "95"),
		"hold":       with("goal.kind", "maintain", "measured_resting_kcal_per_day", "1420", "usual_fibre_g_per_day", "14", "training", "strength"),
		"gain":       with("goal.kind", "gain", "goal.weight", "84 kg", "goal.by", "", "goal.per_week", "0.2 kg", "carbohydrate_counted", "available"),
		"impossible": with("goal.kind", "gain", "goal.weight", "120 kg", "goal.by", "2026-04-01"),
		"both":       with("goal.kcal_per_day", "1900 kcal"),
		"pregnant": with("screening.pregnant_or_breastfeeding", "yes", "goal.kind", "maintain", "reproduction.weeks", "20",
			"hold_reasons.pregnant_or_breastfeeding.text", "Agreed with the midwife"),
		"short": with("goal.by", "", "goal.kcal_per_day", "2250", "weight", "140 kg", "fat_floor_g_per_kg", "0.8"),
	}
}

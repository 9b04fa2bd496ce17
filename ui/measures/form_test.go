package measures

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

// wished is a day with locks, a light breakfast and counts told as ranges.
func wished() draft.Form {
	return with("meal_wishes", "meal 1: palm 1; meal 3: cupped hand 0; day: fist 6; meal 2: thumb at most 1½", "meal_sizes", "light, usual, large")
}

// measured is a hand under the tape, with a palm that was weighed.
func measured() draft.Form {
	return with("hand.palm_breadth", "7.4 cm", "hand.palm_length", "10,3 cm", "hand.weighed.palm.food", "chicken_breast", "hand.weighed.palm.grams", "74 g",
		"hand.hand_length", "38 cm", "hand.weighed.fist.food", "white_rice")
}

// chosen is a basket that the practitioner chose, one food of which does not suit.
func chosen() draft.Form {
	return with("hand.basket", "salmon 2, lentils, chicken_breast 1.5, peanut_butter, olive_oil 3", "avoid", "peanut, fish")
}

// galleryForms are the states in which the screen is looked at.
func galleryForms() map[string]draft.Form {
	return map[string]draft.Form{
		"normal":   answers(),
		"ranges":   with("hand.ranges", "yes"),
		"held":     with("screening.lithium", "yes", "screening.warfarin", "yes", "goal.by", "2026-05-04", "activity", "active"),
		"referred": with("screening.type_1_diabetes", "yes"),
		"empty":    {draft.Date: "2026-03-02"},
		"waiting":  with("weight", "heavy", "height", "", "goal.kind", "", "screening.lithium", ""),
		"vegan6":   with("eating_pattern", "vegan", "meals_per_day", "6", "avoid", "peanut, sesame", "carb_fat_balance_percent", "95"),
		"conflict": with("meal_wishes", "day: palm 3; meal 1: palm 2; meal 2: palm 2; meal 3: thumb 1"),
		"taken":    with("meal_wishes", "day: palm 4; day: cupped hand 9; day: thumb 6"),
	}
}

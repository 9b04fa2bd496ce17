package screen

import "handbreadth/domain/derive"

// withoutFigures says again, without a figure of the target, what findings on
// the target say. Where a referral takes a plan's place nobody should read a
// target out of its findings.
var withoutFigures = map[string]string{
	"energy_very_low":        "What is asked for comes to under 800 kcal a day, which belongs in clinical care.",
	"energy_low":             "What is asked for comes to less than the least energy of a plan outside clinical care.",
	"rate_fast":              "The loss that is asked for is over 1 % of weight or over 1 kg a week.",
	"deficit_large":          "What is asked for is over the customary deficit of 1000 kcal a day.",
	"goal_and_energy_differ": "The goal and the agreed energy point different ways.",
	"carbohydrate_low":       "Carbohydrate would be under the allowance of 130 g a day.",
}

// WithoutFigures returns the findings as a referral tells them: the same codes,
// levels and scopes, with no figure of the target in any text.
func WithoutFigures(found []derive.Finding) []derive.Finding {
	told := make([]derive.Finding, len(found))
	for i, f := range found {
		if text, speaks := withoutFigures[f.Code]; speaks {
			f.Text = text
		}
		told[i] = f
	}
	return told
}

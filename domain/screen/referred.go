package screen

import "handbreadth/domain/derive"

// saying is a finding of one code at one level.
type saying struct {
	code  string
	level derive.Level
}

// withoutFigures says again, without a figure of the target, what findings on
// the target say. Where a referral takes a plan's place nobody should read a
// target out of its findings.
var withoutFigures = map[saying]string{
	{"energy_very_low", derive.Refer}:          "What is asked for, or what the measures bring, comes to under 800 kcal a day, which belongs in clinical care.",
	{energyLow, derive.Hold}:                   "What is asked for, or what the measures bring, comes to less than the least energy of a plan outside clinical care.",
	{courseUnderweight, derive.Hold}:           "Kept up, what is asked for leads under a BMI of 18.5: name a goal weight, so that the plan ends before.",
	{rateFast, derive.Hold}:                    "The loss that is asked for is over 1 % of weight or over 1 kg a week.",
	{availabilityLow, derive.Hold}:             "What is asked for leaves under 30 kcal for each kilogram of fat-free mass: periods, bone and recovery can suffer.",
	{"deficit_large", derive.Caution}:          "What is asked for is over the customary deficit of 1000 kcal a day.",
	{"goal_and_energy_differ", derive.Caution}: "The goal and the agreed energy point different ways.",
	{olderAdult, derive.Caution}:               "65 or over: a deficit of 500 kcal a day at most, protein at 1.0-1.2 g/kg or more, and strength exercise protect muscle.",
	{"carbohydrate_low", derive.Note}:          "Carbohydrate would be under the allowance of 130 g a day.",
	{measuresDiffer, derive.Caution}:           "The measures come to another energy than the plan sets: take a wish back, or look at the foods.",
	{"fibre_step", derive.Note}:                "Raise fibre by no more than about 5 g a week.",
}

// ofAPlan are findings that speak of a plan that there is not, where a referral
// takes its place. An amount of fluid is one: whoever takes over sets it.
var ofAPlan = map[string]bool{
	"measures_far": true, "measures_under_floor": true, "below_resting": true,
	"surplus_large": true, "protein_limited": true, "fluid": true,
}

// WithoutFigures returns the findings as a referral tells them: with no figure of
// the target in any text, and without those that speak of a plan. None that stops
// anything is left out.
func WithoutFigures(found []derive.Finding) []derive.Finding {
	told := make([]derive.Finding, 0, len(found))
	for _, f := range found {
		if ofAPlan[f.Code] {
			continue
		}
		if text, speaks := withoutFigures[saying{f.Code, f.Level}]; speaks {
			f.Text = text
		}
		told = append(told, f)
	}
	return told
}

package screen

import (
	"fmt"
	"math"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/macro"
	"handbreadth/domain/unit"
)

// OlderMostDeficit is the deficit above which a plan for an older adult speaks
// up: the low end of a moderate restriction of about 500 kcal.
// Source: ESPEN 2022 guideline on nutrition in geriatrics.
const OlderMostDeficit unit.Kilocalorie = 500

const olderAdult = "older_adult"

func fromAge(answers Answers, f Facts) []derive.Finding {
	if f.Age < AdultAge {
		return []derive.Finding{{
			Code: "under_18", Level: derive.Refer, Scope: plan | anyComparison,
			Text:   "Under 18: growth comes first. A paediatric dietitian or the family doctor advises. Resting and maintenance energy come from equations for adults and do not hold.",
			Source: derive.Source{Text: "trade consensus", Confidence: derive.Custom},
		}}
	}
	if f.Age < macro.OlderAge {
		return nil
	}
	frail := answers.Of(Frail)
	if f.BMI >= ObesityBMI && frail == No {
		return []derive.Finding{{Code: olderAdult, Level: derive.Caution, Text: olderAndObese(f), Source: espenOlder}}
	}
	text := "65 or over with a BMI under 30: losing weight can cost muscle and bone. Agree it with the doctor."
	switch {
	case frail == Yes:
		text = "65 or over and frail: losing weight can cost muscle and bone. Agree it with the doctor."
	case f.BMI >= ObesityBMI:
		text = "65 or over, and frailty was not asked about: ask before losing weight is planned."
	}
	return []derive.Finding{{Code: olderAdult, Level: derive.Hold, Scope: deficit | anyComparison, Text: text, Source: espenOlder}}
}

// olderAndObese tells the wish that would do, where the deficit is too large.
func olderAndObese(f Facts) string {
	if -f.change() <= OlderMostDeficit {
		return "65 or over: keep a deficit to 500 kcal a day at most, protein at 1.0-1.2 g/kg or more, and strength exercise."
	}
	maintenance := f.maintenance()
	wish := max(maintenance-OlderMostDeficit, min(maintenance, energy.LeastEnergy(f.Sex)))
	return fmt.Sprintf("65 or over, and this deficit is over 500 kcal a day: a target of %.0f kcal keeps to it and protects muscle; protein at 1.0-1.2 g/kg or more, and strength exercise.", float64(wish))
}

// courseUnderweight is the finding of a deficit that leads under a BMI of 18.5.
const courseUnderweight = "course_underweight"

// soonUnderweight is within what time a course under a BMI of 18.5 is referred:
// before a usual next visit. Common practice, no source.
const soonUnderweight unit.Day = 28

// fromCourse looks at where a deficit that no goal weight ends leads.
func fromCourse(f Facts) []derive.Finding {
	switch {
	case f.DaysToUnderweight <= 0:
		return nil
	case f.DaysToUnderweight <= soonUnderweight:
		return []derive.Finding{{
			Code: courseUnderweight, Level: derive.Refer, Scope: deficit | anyComparison,
			Text: "This deficit leads under a BMI of 18.5 within four weeks: energy is not set below need.", Source: whoUnderweight,
		}}
	}
	weeks := math.Ceil(float64(f.DaysToUnderweight) / 7)
	return []derive.Finding{{
		Code: courseUnderweight, Level: derive.Hold, Scope: deficit | anyComparison,
		Text:   fmt.Sprintf("Kept up, this deficit leads under a BMI of 18.5 in about %.0f weeks: name a goal weight, so that the plan ends before.", weeks),
		Source: whoUnderweight,
	}}
}

func fromWeight(f Facts) []derive.Finding {
	var found []derive.Finding
	if f.GoalBMI != 0 && f.GoalBMI < UnderweightBMI {
		found = append(found, derive.Finding{
			Code: "target_underweight", Level: derive.Refer, Scope: plan | anyComparison,
			Text: fmt.Sprintf("The weight that is asked for gives a BMI of %.2f, under 18.5: no plan is made for it.", float64(f.GoalBMI)), Source: whoUnderweight,
		})
	}
	found = append(found, fromCourse(f)...)
	if f.BMI >= UnderweightBMI {
		return found
	}
	found = append(found, derive.Finding{
		Code: "underweight_now", Level: derive.Refer, Scope: deficit | anyComparison,
		Text: fmt.Sprintf("BMI %.1f, under 18.5: energy is not set below need.", float64(f.BMI)), Source: niceRefeeding,
	})
	if f.Raises() {
		found = append(found, derive.Finding{
			Code: "underweight_now", Level: derive.Caution,
			Text: "BMI under 18.5: raise energy in steps and watch for refeeding problems; a doctor should know of the plan.", Source: niceRefeeding,
		})
	}
	return found
}

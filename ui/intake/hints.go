package intake

import (
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

const hintDate = "Such as 2 March 2026 or 2/3/2026 (day first)."

// hints says what a field accepts, where that is the same in all units.
var hints = map[draft.Field]string{
	draft.Born: hintDate, draft.Date: hintDate, draft.PressureDate: hintDate, draft.ConsentDate: hintDate,
	draft.GoalBy:         "Such as 31 August 2026 or 2026-08-31.",
	draft.Sex:            "Which of the two groups of the energy equations. It is no question about gender.",
	draft.OtherGoals:     "Such as stairs without a rest, better sleep, cooking again.",
	draft.Importance:     "10 is most. Optional.",
	draft.Confidence:     "10 is surest. Optional.",
	draft.PAL:            "A number from 1.0 to 2.5: how many times resting energy the whole day takes.",
	draft.Customary:      "In common use, without a published source. The described classes and the day are to be preferred.",
	draft.FatPercent:     "31 %, by a scan, a scale or calipers. From 3 to 65.",
	draft.Points:         "The values of the WHO for all populations, or its action points for Asian populations. All, until chosen.",
	draft.Training:       "Says how much protein is asked for.",
	draft.UsualDay:       "Before any target: in words or in measures, from getting up to going to bed.",
	draft.UsualFibre:     "18 g, from 0 to 150. Then the plan says how far fibre rises.",
	draft.Pattern:        "Foods of every kind are used until a pattern is chosen.",
	draft.Avoid:          "Left out of the measures and the food list. Named as food labels in the EU and the US name them.",
	draft.Dislikes:       "Such as liver, olives. Kept for the talk about foods.",
	draft.Meals:          "Three until a number is chosen.",
	draft.MealTimes:      "Such as 7:30, 12:30 and 19:00; later at weekends.",
	draft.PastAttempts:   "What helped, what did not, and why it ended.",
	draft.Medicines:      "Name and dose, as on the packet.",
	draft.Supplements:    "Vitamins, minerals, protein powders, herbs.",
	draft.BloodPressure:  "128/82, in mmHg.",
	draft.Laboratory:     "One a line with its unit and date: HbA1c 41 mmol/mol, 2 March 2026.",
	draft.Consent:        "Asked as local rules have it.",
	draft.WithoutNumbers: "A wish that is noted for the talk. The papers do not follow it by themselves yet.",
}

// hint says what a field accepts, in the units of the practice.
func hint(field draft.Field, style unit.Style) string {
	switch field {
	case draft.Height:
		return heightHint(style.System)
	case draft.Weight, draft.GoalWeight:
		return weightHint(style.System)
	case draft.Waist, draft.Hip, draft.Neck:
		return lengthHint(field, style.System)
	case draft.GoalPerWeek:
		return rateHint(style.System)
	case draft.GoalEnergy:
		return energyHint(style.EnergyIn, "1800 kcal", "7500 kJ")
	case draft.MeasuredResting:
		return "By indirect calorimetry; it takes the place of every equation. " + energyHint(style.EnergyIn, "1480 kcal", "6200 kJ")
	case draft.Exercise:
		return "Over rest, a week's training divided by seven. " + energyHint(style.EnergyIn, "250 kcal", "1000 kJ")
	}
	return hints[field]
}

func weightHint(system unit.System) string {
	switch system {
	case unit.USCustomary:
		return "160 lb, 72.5 kg, 11 st 6 lb. A bare number is pounds."
	case unit.UKCustomary:
		return "11 st 6 lb, 72.5 kg, 160 lb. The unit is needed."
	}
	return "72.5 kg, 160 lb, 11 st 6 lb. A bare number is kg."
}

func heightHint(system unit.System) string {
	switch system {
	case unit.USCustomary:
		return "5 ft 6 in, 168 cm. A bare number is inches."
	case unit.UKCustomary:
		return "5 ft 6 in, 168 cm. The unit is needed."
	}
	return "168 cm, 1.68 m, 5 ft 6 in. A bare number is cm or m."
}

// lengthHint tells a girth as it may be, and how a bare number is read.
func lengthHint(field draft.Field, system unit.System) string {
	metric, us := "84 cm", "33 in"
	switch field {
	case draft.Neck:
		metric, us = "36 cm", "14 in"
	case draft.Hip:
		metric, us = "102 cm", "40 in"
	}
	switch system {
	case unit.USCustomary:
		return us + ", " + metric + ". A bare number is inches."
	case unit.UKCustomary:
		return metric + ", " + us + ". The unit is needed."
	}
	return metric + ", " + us + ". A bare number is cm."
}

func rateHint(system unit.System) string {
	switch system {
	case unit.USCustomary:
		return "1 lb, ½ lb, 0.5 kg. A bare number is pounds."
	case unit.UKCustomary:
		return "1 lb, ½ lb, 0.5 kg. The unit is needed."
	}
	return "0.5 kg, 1 lb, ½ lb. A bare number is kg."
}

// energyHint tells an energy in both units, the practice's first.
func energyHint(in unit.EnergyUnit, kcal, kilojoules string) string {
	if in == unit.InKilojoules {
		return kilojoules + ", " + kcal + ". A bare number is kJ."
	}
	return kcal + ", " + kilojoules + ". A bare number is kcal."
}

// hintNow is the hint as the answers so far have it: what a default does is of
// no interest once something was chosen, and an energy stands for something else
// where the weight should stay.
func hintNow(field draft.Field, form draft.Form, style unit.Style) string {
	switch field {
	case draft.Pattern, draft.Meals:
		if form.Get(field) != "" {
			return ""
		}
	case draft.GoalEnergy:
		if form.Get(draft.GoalKind) == goalHold {
			return "Where another than maintenance is agreed; optional. " + hint(field, style)
		}
	}
	return hint(field, style)
}

package screening

import (
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// The details that are asked for where a question or a figure points to them.
var (
	pregnancyFields = []draft.Field{draft.PregnantWeeks, draft.WeightBefore, draft.Breastfeeding}
	refeedingFields = []draft.Field{draft.RecentLoss, draft.DaysOfLittle, draft.LowElectrolytes, draft.AlcoholOrDrugs}
)

var detailLabels = map[draft.Field]string{
	draft.PregnantWeeks: "Weeks of pregnancy, completed", draft.WeightBefore: "Weight before it, optional",
	draft.Breastfeeding: "Breastfeeding a child of",
	draft.RecentLoss:    "Weight lost without trying in 3 to 6 months", draft.DaysOfLittle: "Days of little or no food, up to now",
	draft.LowElectrolytes: "Low potassium, phosphate or magnesium in the blood?",
	draft.AlcoholOrDrugs:  "Alcohol misuse, or insulin, chemotherapy, antacids or water tablets?",
}

// detailHint says what a detail accepts.
func detailHint(field draft.Field, style unit.Style) string {
	switch field {
	case draft.PregnantWeeks:
		return "24, from 1 to 42. Empty where there is none."
	case draft.WeightBefore:
		return weightHint(style.System)
	case draft.RecentLoss:
		return "6 %, 4 kg or 9 lb; 0 for none. A bare number is percent."
	case draft.DaysOfLittle:
		return "5, from 0 to 365; 0 for none."
	}
	return ""
}

func weightHint(system unit.System) string {
	switch system {
	case unit.USCustomary:
		return "150 lb, 68 kg. A bare number is pounds."
	case unit.UKCustomary:
		return "10 st 10 lb, 68 kg. The unit is needed."
	}
	return "68 kg, 150 lb. A bare number is kg."
}

const (
	pregnancyLead = "With these, maintenance energy follows the pregnancy or the breastfeeding. The maternity or health team comes first."
	refeedingLead = "Weight was lost, or BMI is under 18.5: eating more after a time of little food can be dangerous. What is not asked is not taken as no."
	refeedingFrom = "NICE CG32, recommendation 1.4.6; in this program's words"
)

// pregnancyAsked reports whether the details of a pregnancy or of breastfeeding
// are asked for.
func pregnancyAsked(r draft.Reading, form draft.Form) bool {
	switch r.Intake.Screening.Of(screen.Pregnant) {
	case screen.Yes:
		return true
	case screen.NotAsked:
		return anyTold(form, pregnancyFields)
	}
	return false
}

// refeedingAsked reports whether the details of the refeeding criteria are asked
// for: at a BMI under 18.5, where a loss was told in any way, and where one of
// them was told already.
func refeedingAsked(r draft.Reading, form draft.Form) bool {
	in := r.Intake
	if in.Screening.Yes(screen.UnexplainedLoss) || anyTold(form, refeedingFields) {
		return true
	}
	if in.Weight > 0 && in.Height > 0 && unit.BMI(in.Weight, in.Height) < screen.UnderweightBMI {
		return true
	}
	for _, code := range []string{screen.MUST, screen.MST} {
		if q, _ := screen.QuestionnaireByCode(code); in.Scored.Scores[code].Positive(q.Positive) {
			return true
		}
	}
	return false
}

func anyTold(form draft.Form, fields []draft.Field) bool {
	for _, field := range fields {
		if form.Get(field) != "" {
			return true
		}
	}
	return false
}

package targets

import (
	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/screen"
	"handbreadth/ui/draft"
)

// wayToReason leads to where the first hold is lifted.
func wayToReason(p domain.Plan) way {
	code := p.Gate.Holds[0].Code
	if code != screen.NotAskedCode {
		return way{"Record a reason", sectionScreening, draft.Reason(code, draft.ReasonText)}
	}
	w := way{Label: "Ask the screening questions", Section: sectionScreening}
	if missing := screen.Unasked(p.Intake.Screening); len(missing) > 0 {
		w.Field = draft.Screening(missing[0])
	}
	return w
}

// wayToCause leads to the answer that a referral rests on; the goal can be
// changed here.
func wayToCause(f derive.Finding) way {
	switch f.Code {
	case codeVeryLow, codeUnderweight:
		return way{}
	case "under_18":
		return way{"See the birth date", sectionIntake, draft.Born}
	case "underweight_now", "refeeding_risk":
		return way{"See the weight", sectionIntake, draft.Weight}
	}
	return way{"See the answer in screening", sectionScreening, draft.Screening(screen.Code(f.Code))}
}

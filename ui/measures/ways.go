package measures

import (
	"handbreadth/domain"
	"handbreadth/domain/screen"
	"handbreadth/ui/draft"
)

// The sections that this one leads to.
const (
	sectionIntake    = "intake"
	sectionScreening = "screening"
)

const (
	referredLead = "A referral comes first, so no measures are given."
	heldLead     = "A reason is needed first. The measures are here to be looked at and are not printed until then."
)

// title is the heading of the notice.
func (s state) title() string {
	switch s {
	case waiting:
		return "More is needed"
	case referred:
		return "No measures"
	case held:
		return "On hold"
	}
	return ""
}

func waitingLead(r draft.Reading) string {
	if len(r.Problems) > 0 {
		return "An answer could not be read, so the day is not reckoned yet. The sheet beside says which."
	}
	return "The measures of the day appear when the intake has what they need. What one measure holds is told below already."
}

func wayToWant(r draft.Reading) way {
	if len(r.Missing) == 0 {
		return way{}
	}
	return way{"Go on with the intake", sectionIntake, r.Missing[0]}
}

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

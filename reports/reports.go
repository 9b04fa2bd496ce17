package reports

import (
	"handbreadth/domain"
)

// Handout returns the client's paper as a PDF. The error is a
// [*NotIssuableError] where the plan may not leave the desk,
// [unit.Problems] where the options cannot be used, and wraps [ErrPaper] where
// the engine failed.
func Handout(plan domain.Plan, opt Options) ([]byte, error) {
	if !plan.Issuable() {
		return nil, notIssuable(plan)
	}
	return nil, ErrPaper
}

// Referral returns the note to a clinician as a PDF where a referral takes the
// plan's place. The error is a [*NotReferredError] where it does not, and else
// as of [Handout].
func Referral(plan domain.Plan, opt Options) ([]byte, error) {
	if !plan.Gate.Referred() {
		return nil, &NotReferredError{}
	}
	return nil, ErrPaper
}

func notIssuable(plan domain.Plan) error {
	gate := plan.Gate
	if gate.Referred() {
		return &NotIssuableError{Referred: true, Findings: gate.Refers}
	}
	return &NotIssuableError{Findings: gate.Holds}
}

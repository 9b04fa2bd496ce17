package reports

import (
	"errors"
	"strings"

	"handbreadth/domain/derive"
)

// ErrPaper is wrapped by every failure of the PDF engine.
var ErrPaper = errors.New("the paper could not be made")

// NotIssuableError says that a plan may not leave the desk: a referral takes
// its place, or a hold has no reason yet.
type NotIssuableError struct {
	Referred bool             // ask for Referral instead
	Findings []derive.Finding // that stop it
}

// Error names the findings that stop the plan.
func (e *NotIssuableError) Error() string {
	why := "a hold has no reason yet"
	if e.Referred {
		why = "a referral takes its place"
	}
	return "the plan may not be issued: " + why + " (" + codes(e.Findings) + ")"
}

// NotReferredError says that a referral was asked for where nothing refers.
type NotReferredError struct{}

// Error says so.
func (*NotReferredError) Error() string {
	return "no referral is due: nothing that was found refers this plan to a clinician"
}

func codes(found []derive.Finding) string {
	names := make([]string, len(found))
	for i, f := range found {
		names[i] = f.Code
	}
	return strings.Join(names, ", ")
}

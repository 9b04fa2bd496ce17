package screen

import (
	"strings"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Reason is why the practitioner lifts a hold.
type Reason struct {
	Text         string
	By           string    // who decided
	Registration string    // their registration, as the local register writes it
	Date         unit.Date // when
	Prescriber   string    // contacted or not, and the answer
}

// Given reports whether anything was written.
func (r Reason) Given() bool { return strings.TrimSpace(r.Text) != "" }

// Reasons holds a reason for each lifted hold, by the code of the finding.
type Reasons map[string]Reason

// Gate says whether what was asked for may be issued.
type Gate struct {
	Asked  derive.Scope     // what the plan would do
	Refers []derive.Finding // that cover it
	Holds  []derive.Finding // that cover it and have no reason
	Lifted []derive.Finding // that cover it and have a reason
}

// Referred reports that a referral takes the plan's place.
func (g Gate) Referred() bool { return len(g.Refers) > 0 }

// Held reports that a reason is missing.
func (g Gate) Held() bool { return !g.Referred() && len(g.Holds) > 0 }

// Open reports that the plan may be issued.
func (g Gate) Open() bool { return len(g.Refers) == 0 && len(g.Holds) == 0 }

// Judge sorts the findings by what they do to what was asked for. Refer beats
// hold: a reason lifts a hold and never a referral.
func Judge(findings []derive.Finding, asked derive.Scope, reasons Reasons) Gate {
	gate := Gate{Asked: asked}
	for _, f := range findings {
		if !f.Scope.Covers(asked) {
			continue
		}
		switch {
		case f.Level == derive.Refer:
			gate.Refers = append(gate.Refers, f)
		case f.Level == derive.Hold && reasons[f.Code].Given():
			gate.Lifted = append(gate.Lifted, f)
		case f.Level == derive.Hold:
			gate.Holds = append(gate.Holds, f)
		}
	}
	return gate
}

// computedHolds are the holds that come of figures, not of a question alone.
var computedHolds = []string{NotAskedCode, energyLow, rateFast, olderAdult, availabilityLow, refeedingUnsure, courseUnderweight}

// HoldCodes lists the codes of the findings that can hold something, the
// computed ones first: those for which a reason can be recorded.
func HoldCodes() []string {
	codes := append([]string{}, computedHolds...)
	for _, q := range questions {
		for _, e := range q.effects {
			if e.level == derive.Hold {
				codes = append(codes, string(q.Code))
				break
			}
		}
	}
	return codes
}

package reports

import (
	"strings"
	"testing"

	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// A referral note tells every score and answer that the criteria asked for, and
// nothing of what was not asked.
func TestReferralTellsScores(t *testing.T) {
	in := woman()
	in.Scored = screen.Scored{
		Scores:          screen.Scores{screen.SCOFF: {Points: 3, Asked: true}, screen.MUST: {Points: 0, Asked: true}},
		RecentLoss:      screen.Told[unit.Percent]{Value: 7.5, Asked: true},
		LowElectrolytes: screen.No,
	}
	pdf, err := Referral(planOf(t, in), options(t))
	path := written(t, pdf, err)
	checkBoxes(t, path, "scores")
	text := flow(t, path)
	mustHold(t, text, "What was scored and asked",
		"SCOFF (signs of an eating disorder): 3 of 5; 2 or more counts as positive.", "Morgan, Reid and Lacey 1999",
		"MUST (risk of malnutrition): 0 of 6;", "in the last 3 to 6 months: 7.5%.", "Low potassium, phosphate or magnesium: no.",
		"eating_disorder_current, refer.")
	for _, unasked := range []string{"MST (", "Days of little", "Alcohol misuse, or insulin"} {
		if strings.Contains(text, unasked) {
			t.Errorf("the note tells %q, which was not asked", unasked)
		}
	}
	in = woman()
	in.Screening = in.Screening.With(screen.ThyroidUntreated, screen.Yes)
	if pdf, err := Referral(planOf(t, in), options(t)); strings.Contains(flow(t, written(t, pdf, err)), "What was scored") {
		t.Error("nothing was scored, and the note tells of it")
	}
}

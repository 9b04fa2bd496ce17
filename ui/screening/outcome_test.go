package screening

import (
	"strings"
	"testing"

	"handbreadth/domain/derive"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

func TestOutcomeSortsByWhatItDoes(t *testing.T) {
	for _, c := range []struct {
		name   string
		form   draft.Form
		lead   string
		glance string
		title  string // of the holds, where there are any
	}{
		{"nothing yet", draft.Form{}, leadEmpty, "", ""},
		{"a yes before the intake is complete", draft.Form{"screening.suicidal_thoughts": "yes"}, leadUnplanned, "1 finding asks for a referral", ""},
		{"nothing asked", invented(), heldLead(1), "1 finding holds the plan", "On hold"},
		{"all no", askedOf(), leadOpen, "", ""},
		{"one hold", askedOf(screen.Lithium), heldLead(1), "1 finding holds the plan", "On hold"},
		{"two holds", askedOf(screen.Lithium, screen.EatingDisorderPast), heldLead(2), "2 findings hold the plan", "On hold"},
		{"a reason", with(askedOf(screen.Lithium), "hold_reasons.lithium.text", "agreed"), leadLifted, "", "Reason recorded"},
		{"one of two reasons", with(askedOf(screen.Lithium, screen.EatingDisorderPast), "hold_reasons.lithium.text", "agreed"), heldLead(1), "1 finding holds the plan", "On hold"},
		{"a referral", askedOf(screen.Type1Diabetes), leadReferred, "1 finding asks for a referral", ""},
		{"a caution", askedOf(screen.Warfarin), leadOpen, "1 finding asks for care", ""},
	} {
		o := outcomeOfForm(c.form)
		title := ""
		if len(o.Groups[holds]) > 0 {
			title = o.title(holds)
		}
		if o.Lead != c.lead || o.glance() != c.glance || title != c.title {
			t.Errorf("%s: lead %q, glance %q, holds %q", c.name, o.Lead, o.glance(), title)
		}
	}
}

func TestAReferralAsksForNoReason(t *testing.T) {
	o := outcomeOfForm(askedOf(screen.Pregnant, screen.Lithium))
	if len(o.Groups[refers]) == 0 || len(o.Groups[holds]) == 0 {
		t.Fatalf("%+v", o.Groups)
	}
	if codes, first := o.reasons(); len(codes) != 0 || first != "" {
		t.Errorf("reasons are asked for %v", codes)
	}
}

func TestReasonsForHoldsThatCoverWhatIsAsked(t *testing.T) {
	form := askedOf(screen.Lithium, screen.Kidney)
	if codes, _ := outcomeOfForm(form).reasons(); strings.Join(codes, " ") != "kidney_disease lithium" {
		t.Errorf("losing weight: %v", codes)
	}
	hold := with(askedOf(screen.Lithium), "goal.kind", "maintain")
	o := outcomeOfForm(hold)
	if codes, _ := o.reasons(); len(codes) != 0 || len(o.Groups[idle]) != 1 {
		t.Errorf("holding the weight: %v, idle %v", codes, o.Groups[idle])
	}
}

func TestEveryFindingIsToldOnce(t *testing.T) {
	for _, q := range screen.Questions() {
		form := askedOf(q.Code)
		plan, ok := draft.NewSession(form, unit.Style{}).Plan()
		told := 0
		for _, items := range outcomeOfForm(form).Groups {
			told += len(items)
		}
		if !ok || told != len(plan.Findings) {
			t.Errorf("%s: %d findings told, the plan has %d", q.Code, told, len(plan.Findings))
		}
	}
}

func TestAnswersSpeakBeforeThePlan(t *testing.T) {
	for _, q := range screen.Questions() {
		o := outcomeOfForm(draft.Form{draft.Screening(q.Code): draft.AnswerYes})
		told := 0
		for _, items := range o.Groups {
			for _, it := range items {
				asksOn := q.Code == screen.UnexplainedLoss && it.Finding.Code == "refeeding_not_asked"
				if (it.Finding.Code != string(q.Code) && !asksOn) || it.Reason {
					t.Errorf("%s gave %+v", q.Code, it)
				}
				told++
			}
		}
		if told == 0 && q.Code != screen.Gallstones { // these speak where loss is planned
			t.Errorf("%s is not told before the plan", q.Code)
		}
	}
	if o := outcomeOfForm(draft.Form{"screening.lithium": "no"}); o.Lead != leadEmpty {
		t.Errorf("a no is told: %+v", o)
	}
}

// The notes below the rows, against the safety table (from memory): level and
// scope of each question.
func TestNotesSayWhatAYesStops(t *testing.T) {
	for code, want := range map[screen.Code]string{
		screen.SuicidalThoughts: "Refer: no plan at all.",
		screen.HeartOrLiver:     "Refer: no target under maintenance, no advice to drink more.",
		screen.Kidney:           "Hold: no target under maintenance, no protein other than 0.8 g/kg until a reason is recorded.",
		screen.SGLT2:            "Hold: no low carbohydrate until a reason is recorded.",
		screen.GutNarrowing:     "Hold: no rise in fibre until a reason is recorded.",
		screen.Warfarin:         "",
		screen.CancerTreatment:  "Refer: no target under maintenance. Hold: no plan at all until a reason is recorded.",
	} {
		if got := noteOf(code, screen.Yes); got != want {
			t.Errorf("%s: %q, want %q", code, got, want)
		}
		if noteOf(code, screen.No) != "" || noteOf(code, screen.NotAsked) != "" {
			t.Errorf("%s speaks without a yes", code)
		}
	}
	for _, f := range []derive.Scope{derive.ScopeDeficit, derive.ScopeSurplus, derive.ScopePlan, derive.ScopeProtein, derive.ScopeCarbohydrate, derive.ScopeFibre, derive.ScopeFluid} {
		if stopped(f) == "" {
			t.Errorf("scope %v has no words", f)
		}
	}
}

func TestProgressCountsFrailtyFrom65(t *testing.T) {
	for _, c := range []struct {
		form draft.Form
		want string
	}{
		{draft.Form{}, "0 of 24 asked"},
		{with(invented(), "screening.lithium", "no", "screening.warfarin", "yes"), "2 of 24 asked"},
		{with(invented(), "client.born", "1955-01-01"), "0 of 25 asked"},
		{with(askedOf(), "client.born", "1955-01-01"), "24 of 25 asked"},
		{askedOf(), "All 24 asked"},
	} {
		missing, all := open(draft.Read(c.form, unit.Style{}))
		if got := progressWords(len(missing), all); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestWordsCount(t *testing.T) {
	for n, want := range map[int]string{1: "1 question", 12: "12 questions"} {
		if !strings.Contains(confirmWords(n), want) || !strings.Contains(doneWords(n), want) {
			t.Errorf("%d: %q, %q", n, confirmWords(n), doneWords(n))
		}
	}
	if confirmLabel(12) != "Yes, all 12 were asked" || confirmLabel(1) != "Yes, it was asked" {
		t.Error("the button does not name how many")
	}
}

func TestReasonStatusAndLender(t *testing.T) {
	form := draft.Form{}
	if got := reasonStatus("lithium", form); !strings.Contains(got, "held until") {
		t.Errorf("empty: %q", got)
	}
	with(form, "hold_reasons.lithium.text", "agreed", "hold_reasons.lithium.by", "R. Sample", "hold_reasons.lithium.date", "2026-03-02")
	if got := reasonStatus("lithium", form); got != "Recorded. For a full record add the registration and whether the prescriber was contacted." {
		t.Errorf("in part: %q", got)
	}
	if from, ok := lender("kidney_disease", []string{"kidney_disease", "lithium"}, form); !ok || from != "lithium" {
		t.Errorf("lender %q, %v", from, ok)
	}
	if _, ok := lender("lithium", []string{"kidney_disease", "lithium"}, form); ok {
		t.Error("a reason that says who decided takes it from another")
	}
	if _, ok := lender("kidney_disease", []string{"kidney_disease"}, form); ok {
		t.Error("a reason that is not shown lends")
	}
	with(form, "hold_reasons.lithium.registration", "1", "hold_reasons.lithium.prescriber", "not contacted")
	if got := reasonStatus("lithium", form); got != "Recorded in full." {
		t.Errorf("full: %q", got)
	}
}

func TestFieldsAreTakenApart(t *testing.T) {
	if code, ok := codeOf(draft.Reason("lithium", draft.ReasonDate)); !ok || code != "lithium" {
		t.Errorf("%q, %v", code, ok)
	}
	if code, ok := questionOf(draft.Screening(screen.Kidney)); !ok || code != screen.Kidney {
		t.Errorf("%q, %v", code, ok)
	}
	for _, f := range []draft.Field{draft.Weight, "", "hold_reasons."} {
		if _, ok := codeOf(f); ok {
			t.Errorf("%q is a reason", f)
		}
		if _, ok := questionOf(f); ok {
			t.Errorf("%q is a question", f)
		}
	}
}

func TestListHasEveryQuestionOnce(t *testing.T) {
	seen := map[screen.Code]int{}
	for _, r := range allRows() {
		seen[r.Code]++
	}
	for _, q := range screen.Questions() {
		if seen[q.Code] != 1 {
			t.Errorf("%s stands %d times", q.Code, seen[q.Code])
		}
	}
	if seen[screen.Frail] != 1 || len(seen) != len(screen.Questions())+1 {
		t.Errorf("%d rows, frailty %d times", len(seen), seen[screen.Frail])
	}
}

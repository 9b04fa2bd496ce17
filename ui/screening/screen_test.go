package screening

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets/widgettest"
)

func opened(t *testing.T, form draft.Form) (*Screen, *draft.Session, fyne.Canvas) {
	t.Helper()
	widgettest.Program(t, theme.Light)
	session := draft.NewSession(form, unit.Style{})
	s := New(session)
	window := widgettest.Window(t, s.Object(), widgettest.LaptopWidth, 700)
	return s, session, window.Canvas()
}

func TestAllOthersNoAsksFirstAndKeepsWhatWasAnswered(t *testing.T) {
	_, s, c := opened(t, with(invented(), "screening.glp1_medicine", "yes"))
	widgettest.Press(t, "screening.all_no")
	if got := s.Get(draft.Screening(screen.Lithium)); got != "" {
		t.Fatalf("answered before it was confirmed: %q", got)
	}
	if widgettest.Focused(c) != "screening.all_no.back" {
		t.Errorf("the focus is at %q", widgettest.Focused(c))
	}
	widgettest.Press(t, "screening.all_no.confirm")
	if s.Get(draft.Screening(screen.GLP1)) != draft.AnswerYes || s.Get(draft.Screening(screen.Lithium)) != draft.AnswerNo {
		t.Errorf("answers: %v", s.Form())
	}
	if plan, ok := s.Plan(); !ok || !plan.Gate.Open() {
		t.Errorf("gate: %+v", plan.Gate)
	}
	s.Undo()
	if s.Get(draft.Screening(screen.Lithium)) != "" || s.Get(draft.Screening(screen.GLP1)) != draft.AnswerYes {
		t.Error("one undo does not take back all of it, and only it")
	}
}

func TestAllOthersNoIsTakenBackByItsButton(t *testing.T) {
	sc, s, c := opened(t, invented())
	widgettest.Press(t, "screening.all_no")
	widgettest.Press(t, "screening.all_no.confirm")
	if sc.progress.Text() != "All 24 asked" || sc.others.ask.Visible() {
		t.Errorf("progress %q", sc.progress.Text())
	}
	widgettest.Press(t, "screening.all_no.undo")
	if s.Get(draft.Screening(screen.Lithium)) != "" || sc.progress.Text() != "0 of 24 asked" {
		t.Error("not taken back")
	}
	if sc.others.below.Visible() || widgettest.Focused(c) != "screening.all_no" {
		t.Errorf("the focus is at %q", widgettest.Focused(c))
	}
	widgettest.Press(t, "screening.all_no")
	widgettest.Press(t, "screening.all_no.back")
	if sc.others.below.Visible() || s.Get(draft.Screening(screen.Lithium)) != "" {
		t.Error("going back does something")
	}
}

func TestTakingBackEndsWithTheNextChange(t *testing.T) {
	sc, s, _ := opened(t, invented())
	widgettest.Press(t, "screening.all_no")
	widgettest.Press(t, "screening.all_no.confirm")
	s.Set(draft.Weight, "71 kg")
	if sc.others.back.Visible() && sc.others.below.Visible() {
		t.Error("another change would be taken back")
	}
	sc.others.onBack()
	if s.Get(draft.Weight) != "71 kg" {
		t.Error("another change was taken back")
	}
}

func TestKeysAnswer(t *testing.T) {
	sc, s, _ := opened(t, invented())
	q := sc.rows[screen.Lithium]
	q.TypedRune('y')
	if s.Get(draft.Screening(screen.Lithium)) != draft.AnswerYes || q.note == "" {
		t.Error("y is not yes")
	}
	q.TypedRune('n')
	if s.Get(draft.Screening(screen.Lithium)) != draft.AnswerNo || q.note != "" {
		t.Error("n is not no")
	}
	q.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	if s.Get(draft.Screening(screen.Lithium)) != "" {
		t.Error("Delete does not take the answer back")
	}
	s.Set(draft.Weight, "71 kg")
	s.Set(draft.Screening(screen.Lithium), draft.AnswerYes)
	if s.Undo(); q.Answer() != screen.NotAsked {
		t.Error("the row does not follow undo")
	}
}

func TestTypingAReasonLiftsTheHoldAndKeepsTheFocus(t *testing.T) {
	sc, s, c := opened(t, askedOf(screen.Lithium, screen.EatingDisorderPast))
	sc.Focus(draft.Reason("lithium", draft.ReasonText))
	if widgettest.Focused(c) != "screening.hold_reasons.lithium.text" {
		t.Fatalf("the focus is at %q", widgettest.Focused(c))
	}
	test.Type(c.Focused(), "agreed with the prescriber")
	if widgettest.Focused(c) != "screening.hold_reasons.lithium.text" {
		t.Errorf("the focus went to %q", widgettest.Focused(c))
	}
	if s.Get(draft.Reason("lithium", draft.ReasonText)) != "agreed with the prescriber" {
		t.Errorf("reason %q", s.Get(draft.Reason("lithium", draft.ReasonText)))
	}
	if plan, _ := s.Plan(); len(plan.Gate.Lifted) != 1 || len(plan.Gate.Holds) != 1 {
		t.Error("the hold is not lifted, or the other is")
	}
	if got := sc.findings.lead.Text(); got != heldLead(1) {
		t.Errorf("lead %q", got)
	}
	widgettest.Press(t, "screening.see")
	if widgettest.Focused(c) != "screening.hold_reasons.eating_disorder_history.text" {
		t.Errorf("the way leads to %q", widgettest.Focused(c))
	}
}

func TestWhoDecidedIsTakenFromTheOtherReason(t *testing.T) {
	sc, s, _ := opened(t, askedOf(screen.Lithium, screen.EatingDisorderPast))
	for part, text := range map[draft.ReasonPart]string{draft.ReasonBy: "R. Sample", draft.ReasonRegistration: "N 1", draft.ReasonDate: "2026-03-02"} {
		s.Set(draft.Reason("lithium", part), text)
	}
	widgettest.Press(t, "screening.hold_reasons.eating_disorder_history.copy")
	if s.Get(draft.Reason("eating_disorder_history", draft.ReasonRegistration)) != "N 1" {
		t.Error("not taken over")
	}
	other := sc.findings.cards["eating_disorder_history hold"].reason
	if other.fields[draft.ReasonBy].Text() != "R. Sample" || other.copy.Visible() {
		t.Error("not shown")
	}
	s.Undo()
	if s.Get(draft.Reason("eating_disorder_history", draft.ReasonBy)) != "" {
		t.Error("one undo does not take it back")
	}
}

func TestAReferralLeadsToTheNote(t *testing.T) {
	sc, s, _ := opened(t, askedOf(screen.Lithium))
	went := ""
	sc.OnGo = func(section string, _ draft.Field) { went = section }
	if sc.findings.note.Visible() {
		t.Error("there is no referral yet")
	}
	sc.rows[screen.Type1Diabetes].TypedRune('y')
	if sc.findings.lead.Text() != leadReferred || !sc.findings.note.Visible() {
		t.Errorf("lead %q", sc.findings.lead.Text())
	}
	if sc.findings.cards["lithium hold"].reason.object.Visible() {
		t.Error("a reason is asked for beside a referral")
	}
	widgettest.Press(t, "screening.referral")
	if went != "handout" {
		t.Errorf("went to %q", went)
	}
	s.Undo()
	if !sc.findings.cards["lithium hold"].reason.object.Visible() {
		t.Error("the reason is not asked for again")
	}
}

func TestWhyQuestionsWereNotAskedIsWrittenBehindAButton(t *testing.T) {
	sc, s, c := opened(t, invented())
	card := sc.findings.cards["not_asked hold"]
	if card.reason.object.Visible() {
		t.Error("the form is open")
	}
	widgettest.Press(t, "screening.not_asked.reason")
	if widgettest.Focused(c) != "screening.hold_reasons.not_asked.text" {
		t.Fatalf("the focus is at %q", widgettest.Focused(c))
	}
	test.Type(c.Focused(), "would not answer")
	if plan, _ := s.Plan(); !plan.Gate.Open() || !card.reason.object.Visible() {
		t.Errorf("gate %+v", plan.Gate)
	}
	for _, q := range screen.Questions() {
		s.Set(draft.Screening(q.Code), draft.AnswerNo)
	}
	if sc.findings.groups[holds].object.Visible() {
		t.Error("the hold is still shown")
	}
}

func TestFrailtyIsAskedFrom65(t *testing.T) {
	sc, s, c := opened(t, invented())
	sc.Focus(draft.Screening(screen.Frail))
	if sc.rows[screen.Frail].object.Visible() || c.Focused() != nil {
		t.Error("frailty is asked of an adult of 35")
	}
	s.Set(draft.Born, "1955-01-01")
	sc.Focus(draft.Screening(screen.Frail))
	if !sc.rows[screen.Frail].object.Visible() || widgettest.Focused(c) != "screening.frail" {
		t.Error("frailty is not asked at 71")
	}
	widgettest.Press(t, "screening.all_no")
	widgettest.Press(t, "screening.all_no.confirm")
	if s.Get(draft.Screening(screen.Frail)) != draft.AnswerNo {
		t.Error("all others no leaves frailty out")
	}
}

func TestFocusOnWhatIsNotThereChangesNothing(t *testing.T) {
	sc, _, c := opened(t, invented())
	for _, field := range []draft.Field{"", draft.Weight, draft.Reason("lithium", draft.ReasonText), "screening.nothing"} {
		if sc.Focus(field); c.Focused() != nil {
			t.Errorf("%q took the focus", field)
		}
	}
	if sc.Focus(draft.Screening(screen.Warfarin)); widgettest.Focused(c) != "screening.warfarin" {
		t.Errorf("the focus is at %q", widgettest.Focused(c))
	}
}

// BenchmarkShow makes the section and lays it out for the first time;
// BenchmarkAnswer is one answer.
func BenchmarkShow(b *testing.B) {
	test.NewTempApp(b).Settings().SetTheme(theme.New(theme.Light, 1))
	for b.Loop() {
		w := test.NewWindow(New(draft.NewSession(askedOf(screen.Lithium), unit.Style{})).Object())
		w.Resize(fyne.NewSize(958, 700))
		w.Canvas().Capture()
		w.Close()
	}
}

func BenchmarkAnswer(b *testing.B) {
	test.NewTempApp(b).Settings().SetTheme(theme.New(theme.Light, 1))
	session := draft.NewSession(askedOf(), unit.Style{})
	test.NewTempWindow(b, New(session).Object()).Resize(fyne.NewSize(958, 700))
	for i := 0; b.Loop(); i++ {
		session.Set(draft.Screening(screen.Lithium), []string{"yes", "no"}[i%2])
	}
}

package screening

import (
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// invented is an invented adult of whom nothing was asked yet.
func invented() draft.Form {
	return draft.Form{
		draft.Date: "2 March 2026", draft.Born: "17 May 1990", draft.Sex: "female", draft.Height: "168 cm", draft.Weight: "72.6 kg",
		draft.Activity: "low_active", draft.GoalKind: "lose", draft.GoalWeight: "66 kg", draft.GoalBy: "31 August 2026",
	}
}

func open(t *testing.T, form draft.Form) (*Screen, *draft.Session) {
	t.Helper()
	widgets.ResetNames()
	s := draft.NewSession(form, unit.Style{})
	screen := New(s)
	inWindow(t, theme.Light, screen, fyne.NewSize(958, 700))
	return screen, s
}

func inWindow(t *testing.T, v theme.Variant, s *Screen, size fyne.Size) fyne.Window {
	t.Helper()
	app := test.NewTempApp(t)
	app.Settings().SetTheme(theme.New(v, 1))
	w := test.NewTempWindow(t, container.NewStack(canvas.NewRectangle(theme.Colour(theme.Paper)), s.Object()))
	w.SetPadded(false)
	w.Resize(size)
	return w
}

func press(t *testing.T, name string) {
	t.Helper()
	button, ok := widgets.Named()[name].(fyne.Tappable)
	if !ok {
		t.Fatalf("no button %s", name)
	}
	button.Tapped(nil)
}

func TestAllOthersNoAsksFirstAndKeepsWhatWasAnswered(t *testing.T) {
	_, s := open(t, invented())
	s.Set(draft.Screening(screen.GLP1), draft.AnswerYes)
	press(t, "screening.all_no")
	if got := s.Get(draft.Screening(screen.Lithium)); got != "" {
		t.Fatalf("answered before it was confirmed: %q", got)
	}
	press(t, "screening.all_no.confirm")
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

func TestKeysAnswer(t *testing.T) {
	sc, s := open(t, invented())
	q := sc.questions[screen.Lithium]
	q.TypedRune('y')
	if s.Get(draft.Screening(screen.Lithium)) != draft.AnswerYes {
		t.Error("y is not yes")
	}
	q.TypedRune('n')
	if s.Get(draft.Screening(screen.Lithium)) != draft.AnswerNo {
		t.Error("n is not no")
	}
	q.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	if s.Get(draft.Screening(screen.Lithium)) != "" {
		t.Error("Delete does not take the answer back")
	}
}

func TestReasonLiftsAHold(t *testing.T) {
	sc, s := open(t, invented())
	press(t, "screening.all_no")
	press(t, "screening.all_no.confirm")
	sc.questions[screen.Lithium].TypedRune('y')
	if got := sc.outcome.heading.Text(); got != "Held: one finding needs a reason before the plan can be given out." {
		t.Errorf("heading: %s", got)
	}
	row := sc.outcome.made["lithiumhold"]
	if row == nil || row.reason.object.Hidden {
		t.Fatal("no place for the reason")
	}
	row.reason.fields[draft.ReasonText].OnChanged("agreed with the prescriber")
	if got := sc.outcome.heading.Text(); got != "Open: every hold has its reason." {
		t.Errorf("heading: %s", got)
	}
	if plan, _ := s.Plan(); !plan.Issuable() {
		t.Error("the plan is still held")
	}
}

func TestReferralTellsWhereToGo(t *testing.T) {
	sc, _ := open(t, invented())
	press(t, "screening.all_no")
	press(t, "screening.all_no.confirm")
	sc.questions[screen.Type1Diabetes].TypedRune('y')
	if got := sc.outcome.heading.Text(); got != "Referred: no plan is made here. The referral note is in Handout." {
		t.Errorf("heading: %s", got)
	}
}

func TestFrailtyIsAskedFrom65(t *testing.T) {
	sc, s := open(t, invented())
	if !sc.questions[screen.Frail].Hidden {
		t.Error("frailty is asked of an adult of 35")
	}
	s.Set(draft.Born, "1955-01-01")
	if sc.questions[screen.Frail].Hidden {
		t.Error("frailty is not asked at 71")
	}
	press(t, "screening.all_no")
	press(t, "screening.all_no.confirm")
	if s.Get(draft.Screening(screen.Frail)) != draft.AnswerNo {
		t.Error("all others no leaves frailty out")
	}
}

func TestIncompleteIntakeSaysSo(t *testing.T) {
	sc, _ := open(t, draft.Form{})
	if got := sc.outcome.heading.Text(); got != "What the answers mean shows once the intake has what a plan needs." {
		t.Errorf("heading: %s", got)
	}
}

// TestGallery writes pictures into the folder named by HANDBREADTH_GALLERY.
func TestGallery(t *testing.T) {
	folder := os.Getenv("HANDBREADTH_GALLERY")
	if folder == "" {
		t.Log("HANDBREADTH_GALLERY is not set: no pictures")
		return
	}
	held := invented()
	for _, q := range screen.Questions() {
		held[draft.Screening(q.Code)] = draft.AnswerNo
	}
	held[draft.Screening(screen.Lithium)] = draft.AnswerYes
	for name, form := range map[string]draft.Form{"begun": invented(), "held": held} {
		for _, v := range []theme.Variant{theme.Light, theme.Dark} {
			widgets.ResetNames()
			test.NewTempApp(t).Settings().SetTheme(theme.New(v, 1))
			w := inWindow(t, v, New(draft.NewSession(form, unit.Style{})), fyne.NewSize(958, 2400))
			file, err := os.Create(filepath.Join(folder, "screening-"+name+map[theme.Variant]string{theme.Light: "-light", theme.Dark: "-dark"}[v]+".png"))
			if err != nil {
				t.Fatal(err)
			}
			if err := png.Encode(file, w.Canvas().Capture()); err != nil {
				t.Fatal(err)
			}
			file.Close()
		}
	}
}

package intake

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// opened shows the section of a form in a window.
func opened(t *testing.T, form draft.Form) (*Screen, *draft.Session, fyne.Canvas) {
	t.Helper()
	program(t, theme.Light)
	session := draft.NewSession(form, unit.Style{})
	s := New(session)
	window := inWindow(t, s.Object(), 958, 700)
	return s, session, window.Canvas()
}

func (s *Screen) field(name draft.Field) *typed { return s.controls[name].(*typed) }

func focusedName(c fyne.Canvas) string {
	for name, object := range widgets.Named() {
		target, ok := object.(fyne.Focusable)
		if f, is := object.(widgets.Focuser); is {
			target, ok = f.FocusTarget(), true
		}
		if ok && target == c.Focused() {
			return name
		}
	}
	return ""
}

func TestTabGoesThroughTheConversation(t *testing.T) {
	_, _, c := opened(t, filled())
	var got []string
	for range 26 {
		c.FocusNext()
		got = append(got, focusedName(c))
	}
	want := []string{
		"intake.fold.who", "intake.client.name", "intake.client.born", "intake.client.equation_sex",
		"intake.fold.visit", "intake.why", "intake.date",
		"intake.fold.measurements", "intake.height", "intake.weight",
		"intake.fold.activity", "intake.activity",
		"intake.fold.goal", "intake.goal.kind", "intake.goal.weight", "intake.goal.by", "intake.goal.kcal_per_day",
		"intake.fold.food", "intake.eating_pattern", "intake.avoid", "intake.meals_per_day",
		"intake.fold.notes", "intake.notes", "intake.fold.who",
	}
	for i, name := range want {
		if got[i] != name {
			t.Fatalf("tab %d is at %q, want %q (all: %v)", i, got[i], name, got)
		}
	}
}

func TestEveryKeystrokeGoesIntoTheForm(t *testing.T) {
	s, session, c := opened(t, draft.Form{})
	s.Focus(draft.Weight)
	for _, step := range []struct{ key, form string }{{"7", "7"}, {"2", "72"}, {",", "72,"}, {"5", "72,5"}} {
		test.Type(c.Focused(), step.key)
		if got := session.Get(draft.Weight); got != step.form {
			t.Fatalf("after %q the form has %q", step.key, got)
		}
	}
	if got := s.field(draft.Weight).Understood(); got != "= 72.5 kg" {
		t.Errorf("understood as %q", got)
	}
	c.Focus(nil)
	if session.Reading().Intake.Weight != 72.5 {
		t.Error("the weight was not read")
	}
}

func TestProblemsAreSaidWhenTheFieldIsLeft(t *testing.T) {
	s, _, c := opened(t, draft.Form{})
	s.Focus(draft.Weight)
	test.Type(c.Focused(), "heavy")
	if p := s.field(draft.Weight).Problem(); p != "" {
		t.Errorf("told while typing: %q", p)
	}
	c.FocusNext()
	if p := s.field(draft.Weight).Problem(); p == "" {
		t.Error("not told after leaving")
	}
}

func TestAProblemOfAnotherFieldIsTold(t *testing.T) {
	s, session, c := opened(t, filled())
	s.Focus(draft.GoalEnergy)
	test.Type(c.Focused(), "1700")
	if p := s.field(draft.GoalBy).Problem(); p == "" {
		t.Error("a date beside an energy is not told")
	}
	for {
		if _, more := session.Undo(); !more {
			break
		}
	}
	if p := s.field(draft.GoalBy).Problem(); p != "" || s.field(draft.GoalEnergy).Text() != "" {
		t.Errorf("after undo: %q", p)
	}
}

func TestChangesFromOutsideLeaveTheCursor(t *testing.T) {
	s, session, c := opened(t, filled())
	s.Focus(draft.Name)
	entry := c.Focused().(interface{ CursorTextOffset() int })
	c.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	before := entry.CursorTextOffset()
	session.Set(draft.Weight, "80 kg")
	session.Set(draft.GoalKind, goalGain)
	if got := s.field(draft.Weight).Text(); got != "80 kg" {
		t.Errorf("the field still says %q", got)
	}
	if s.controls[draft.GoalKind].(*chosen).Selected() != 2 {
		t.Error("the goal does not follow")
	}
	if entry.CursorTextOffset() != before || before == 0 || focusedName(c) != "intake.client.name" {
		t.Errorf("the cursor moved from %d to %d", before, entry.CursorTextOffset())
	}
}

func TestFocusOpensTheFold(t *testing.T) {
	s, _, c := opened(t, filled())
	at := partOf(draft.Avoid)
	s.folds[at].setOpen(false)
	if got := s.folds[at].head.mark.Text(); got != "Vegetarian, 3 meals a day, without peanuts and tree nuts" {
		t.Errorf("the folded head says %q", got)
	}
	s.Focus(draft.Avoid)
	if !s.folds[at].isOpen() || focusedName(c) != "intake.avoid" {
		t.Errorf("open %v, focus at %q", s.folds[at].isOpen(), focusedName(c))
	}
	scroll := s.page.Scroll()
	top := fyne.CurrentApp().Driver().AbsolutePositionForObject(s.controls[draft.Avoid].Target()).Y
	if top < 0 || top > scroll.Size().Height {
		t.Errorf("the chips are at %v of a view of %v", top, scroll.Size().Height)
	}
	s.Focus("no.such.field")
}

func TestHeadsFoldByKeyAndPassOtherKeysOn(t *testing.T) {
	s, _, c := opened(t, filled())
	head := s.folds[0].head
	c.Focus(head)
	press := func(key fyne.KeyName) { head.TypedKey(&fyne.KeyEvent{Name: key}) }
	for _, step := range []struct {
		key  fyne.KeyName
		open bool
	}{
		{fyne.KeySpace, false}, {fyne.KeyReturn, true}, {fyne.KeyRight, true}, {fyne.KeyLeft, false}, {fyne.KeyLeft, false}, {fyne.KeyRight, true},
	} {
		if press(step.key); s.folds[0].isOpen() != step.open {
			t.Errorf("after %s open is %v", step.key, s.folds[0].isOpen())
		}
	}
	var passed fyne.KeyName
	c.SetOnTypedKey(func(e *fyne.KeyEvent) { passed = e.Name })
	if press(fyne.KeyEscape); passed != fyne.KeyEscape {
		t.Error("Escape does not reach the window")
	}
	press(fyne.KeyLeft)
	if press(fyne.KeyDown); focusedName(c) != "intake.fold.visit" {
		t.Errorf("down from a folded part leads to %q", focusedName(c))
	}
}

func TestWhatIsOfUseAppears(t *testing.T) {
	s, session, _ := opened(t, draft.Form{})
	if s.boxes[draft.GoalWeight].Visible() || s.boxes[draft.PAL].Visible() || s.goalHint.Visible() {
		t.Error("fields of no use are shown")
	}
	session.Set(draft.GoalKind, goalLose)
	session.Set(draft.Activity, draft.ActivityAsNumber)
	if !s.boxes[draft.GoalWeight].Visible() || !s.boxes[draft.PAL].Visible() || !s.goalHint.Visible() {
		t.Error("fields of use are hidden")
	}
}

func TestUnknownAllergensCanBeLeftOut(t *testing.T) {
	s, session, _ := opened(t, draft.Form{draft.Avoid: "peanut, moonbeams"})
	chips := s.controls[draft.Avoid].(*chips)
	if !chips.mend.Visible() || chips.problem.Text() == "" {
		t.Fatal("not told")
	}
	widgets.Named()["intake.avoid.mend"].(*widgets.Button).OnTapped()
	if session.Get(draft.Avoid) != "peanut" || chips.mend.Visible() {
		t.Errorf("the form has %q", session.Get(draft.Avoid))
	}
}

func TestUnitsOfThePracticeChangeTheHints(t *testing.T) {
	s, session, _ := opened(t, draft.Form{draft.Weight: "160"})
	if got := s.field(draft.Weight).Understood(); got != "= 160 kg" {
		t.Errorf("metric: %q", got)
	}
	session.SetStyle(unit.Style{System: unit.USCustomary})
	if got := s.field(draft.Weight).Understood(); got != "= 160 lb" {
		t.Errorf("US: %q", got)
	}
}

// BenchmarkShow makes the section of a filled form and lays it out for the
// first time; BenchmarkKeystroke is one letter in one field.
func BenchmarkShow(b *testing.B) {
	test.NewTempApp(b).Settings().SetTheme(theme.New(theme.Light, 1))
	for b.Loop() {
		s := New(draft.NewSession(filled(), unit.Style{}))
		w := test.NewWindow(s.Object())
		w.Resize(fyne.NewSize(958, 700))
		w.Canvas().Capture()
		w.Close()
	}
}

func BenchmarkKeystroke(b *testing.B) {
	test.NewTempApp(b).Settings().SetTheme(theme.New(theme.Light, 1))
	session := draft.NewSession(filled(), unit.Style{})
	w := test.NewTempWindow(b, New(session).Object())
	w.Resize(fyne.NewSize(958, 700))
	for i := 0; b.Loop(); i++ {
		session.Set(draft.Weight, []string{"72 kg", "73 kg"}[i%2])
	}
}

func BenchmarkSessionAlone(b *testing.B) {
	session := draft.NewSession(filled(), unit.Style{})
	for i := 0; b.Loop(); i++ {
		session.Set(draft.Weight, []string{"72 kg", "73 kg"}[i%2])
	}
}

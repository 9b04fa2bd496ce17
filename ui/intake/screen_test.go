package intake

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
	"handbreadth/ui/widgets/widgettest"
)

// opened shows the section of a form in a window.
func opened(t *testing.T, form draft.Form) (*Screen, *draft.Session, fyne.Canvas) {
	t.Helper()
	widgettest.Program(t, theme.Light)
	session := draft.NewSession(form, unit.Style{})
	s := New(session)
	window := widgettest.Window(t, s.Object(), widgettest.LaptopWidth, 700)
	return s, session, window.Canvas()
}

func (s *Screen) field(name draft.Field) *typed { return s.controls[name].(*typed) }

// fold returns a fold by its key.
func (s *Screen) fold(t *testing.T, key string) *widgets.Fold {
	t.Helper()
	at := slices.IndexFunc(parts, func(p part) bool { return p.Key == key })
	if at < 0 {
		t.Fatalf("no fold %q", key)
	}
	return s.folds[at]
}

func TestTabGoesThroughTheConversation(t *testing.T) {
	_, _, c := opened(t, filled())
	want := []string{
		"intake.fold_all", "intake.fold.who", "intake.client.name", "intake.client.born", "intake.client.equation_sex", "intake.date",
		"intake.fold.why", "intake.why", "intake.goals_beyond_weight", "intake.importance", "intake.confidence",
		"intake.fold.goal", "intake.goal.kind", "intake.goal.way", "intake.goal.weight", "intake.goal.by",
		"intake.fold.measurements", "intake.height", "intake.weight", "intake.fold.body",
		"intake.fold.activity", "intake.activity.way", "intake.activity",
		"intake.fold.training", "intake.fold.eaten", "intake.fold.food", "intake.fold.meals", "intake.fold.context",
		"intake.fold.health", "intake.fold.consent", "intake.fold.notes", "intake.notes",
	}
	if got := widgettest.Walk(c); !slices.Equal(got, want) {
		t.Errorf("Tab goes through\n%v, want\n%v", got, want)
	}
}

// Everything that is of use is reached by Tab once all folds are open.
func TestTabReachesEveryField(t *testing.T) {
	s, session, c := opened(t, told())
	widgettest.Press(t, "intake.fold_all")
	widgettest.Press(t, "intake.fold_all")
	reached := map[string]bool{}
	for _, name := range widgettest.Walk(c) {
		reached[name] = true
	}
	for _, p := range parts {
		for _, field := range p.Fields {
			if isShown(field, session.Form(), s.picked) && field != draft.Day && !reached["intake."+string(field)] {
				t.Errorf("Tab does not reach %s", field)
			}
		}
	}
	for _, pursuit := range energy.Pursuits() {
		if !reached["intake."+string(draft.DayHours(pursuit.Code))] {
			t.Errorf("Tab does not reach the hours of %s", pursuit.Name)
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

// A form of before may have a date and an energy: both are shown, and the one
// that cannot stand is told.
func TestAProblemOfAnotherFieldIsTold(t *testing.T) {
	s, session, _ := opened(t, with(filled(), "goal.kcal_per_day", "1700"))
	if p := s.field(draft.GoalBy).Problem(); p == "" || !s.boxes[draft.GoalEnergy].Visible() {
		t.Error("a date beside an energy is not told")
	}
	session.Set(draft.GoalEnergy, "")
	if p := s.field(draft.GoalBy).Problem(); p != "" {
		t.Errorf("after it was cleared: %q", p)
	}
}

func TestAWishThatNoEnergyBringsIsToldWhenItsFieldIsLeft(t *testing.T) {
	s, _, c := opened(t, with(filled(), "goal.kind", goalGain, "goal.weight", "200 kg", "goal.by", ""))
	s.choose(goalWay, 0)
	s.Focus(draft.GoalBy)
	test.Type(c.Focused(), "1 April 2026")
	if p := s.field(draft.GoalBy).Problem(); p != "" {
		t.Errorf("told while typing: %q", p)
	}
	if c.FocusNext(); s.field(draft.GoalBy).Problem() == "" {
		t.Error("not told after leaving")
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
	if entry.CursorTextOffset() != before || before == 0 || widgettest.Focused(c) != "intake.client.name" {
		t.Errorf("the cursor moved from %d to %d", before, entry.CursorTextOffset())
	}
}

func TestFocusOpensTheFold(t *testing.T) {
	s, _, c := opened(t, filled())
	food := s.fold(t, "food")
	if got := food.Mark(); food.Open() || got != "Vegetarian, without peanuts and tree nuts" {
		t.Errorf("open %v, the folded head says %q", food.Open(), got)
	}
	s.Focus(draft.Avoid)
	if !food.Open() || widgettest.Focused(c) != "intake.avoid" {
		t.Errorf("open %v, focus at %q", food.Open(), widgettest.Focused(c))
	}
	scroll := s.page.Scroll()
	top := fyne.CurrentApp().Driver().AbsolutePositionForObject(s.controls[draft.Avoid].Target()).Y
	if top < 0 || top > scroll.Size().Height {
		t.Errorf("the chips are at %v of a view of %v", top, scroll.Size().Height)
	}
	s.Focus("no.such.field")
}

func TestFoldsAreBuiltWhenTheyOpenAndSayWhatIsInThem(t *testing.T) {
	s, session, c := opened(t, told())
	if s.controls[draft.Sleep] != nil {
		t.Error("a closed fold has its fields")
	}
	fold := s.fold(t, "context")
	if fold.Mark() != "Told: sleep, cooking and money" {
		t.Errorf("closed it says %q", fold.Mark())
	}
	c.Focus(fold.FocusTarget())
	widgettest.Key(c, fyne.KeyReturn)
	if !fold.Open() || fold.Mark() != "" || s.field(draft.Sleep).Text() != "Six hours, broken" {
		t.Errorf("open %v, mark %q", fold.Open(), fold.Mark())
	}
	session.Set(draft.Sleep, "Eight hours")
	if s.field(draft.Sleep).Text() != "Eight hours" {
		t.Error("a field of an opened fold does not follow")
	}
	if got := s.fold(t, "consent").Mark(); got != "Given, 2 March 2026, rather without numbers" {
		t.Errorf("consent: %q", got)
	}
}

func TestAllFoldAtOnce(t *testing.T) {
	s, _, _ := opened(t, filled())
	widgettest.Press(t, "intake.fold_all")
	if s.anyOpen() || s.foldAll.Text() != "Open all" || s.fold(t, "measurements").Mark() != "167.6 cm, 72.6 kg, BMI 25.8" {
		t.Errorf("open %v, button %q", s.anyOpen(), s.foldAll.Text())
	}
	widgettest.Press(t, "intake.fold_all")
	for i, f := range s.folds {
		if !f.Open() {
			t.Errorf("%s is closed", parts[i].Key)
		}
	}
}

func TestWhatIsOfUseAppears(t *testing.T) {
	s, session, _ := opened(t, draft.Form{})
	if s.boxes[draft.GoalWeight].Visible() || s.boxes[draft.PAL].Visible() || s.goalHint.Visible() || s.goalNumbers.Visible() {
		t.Error("fields of no use are shown")
	}
	session.Set(draft.GoalKind, goalLose)
	session.Set(draft.Activity, draft.ActivityAsNumber)
	if !s.boxes[draft.GoalWeight].Visible() || !s.boxes[draft.PAL].Visible() || !s.goalHint.Visible() || s.boxes[draft.Activity].Visible() {
		t.Error("fields of use are hidden")
	}
}

func TestWhatNoPlanReadsIsToldAndStopsNothing(t *testing.T) {
	s, session, c := opened(t, filled())
	s.Focus(draft.Importance)
	test.Type(c.Focused(), "11")
	c.FocusNext()
	if s.field(draft.Importance).Problem() == "" || s.fold(t, "why").Mark() != "1 to mend" {
		t.Errorf("problem %q, mark %q", s.field(draft.Importance).Problem(), s.fold(t, "why").Mark())
	}
	if _, planned := session.Plan(); !planned {
		t.Error("a rating stops the plan")
	}
}

func TestEveryChoiceGoesIntoTheForm(t *testing.T) {
	s, session, _ := opened(t, draft.Form{draft.GoalKind: goalLose})
	widgettest.Press(t, "intake.fold_all")
	widgettest.Press(t, "intake.fold_all")
	for field, c := range s.controls {
		chosen, is := c.(*chosen)
		if !is || !isShown(field, session.Form(), s.picked) {
			continue
		}
		for i, value := range chosen.values {
			s.choose(field, i)
			if got := session.Get(field); got != value || chosen.Selected() != i {
				t.Errorf("%s: option %d gives %q, want %q", field, i, got, value)
			}
		}
	}
	s.choose(draft.Avoid, 0)
	if got := session.Get(draft.Avoid); got != "gluten" {
		t.Errorf("allergens: %q", got)
	}
}

func TestEveryTypedFieldGoesIntoTheForm(t *testing.T) {
	s, session, c := opened(t, draft.Form{draft.GoalKind: goalLose, draft.Activity: draft.ActivityAsDay})
	widgettest.Press(t, "intake.fold_all")
	widgettest.Press(t, "intake.fold_all")
	for field, control := range s.controls {
		typed, is := control.(*typed)
		if !is || !isShown(field, session.Form(), s.picked) {
			continue
		}
		c.Focus(typed.FocusTarget())
		test.Type(c.Focused(), "7")
		if got := session.Get(field); got != "7" {
			t.Errorf("%s: the form has %q", field, got)
		}
	}
}

func TestUnknownAllergensCanBeLeftOut(t *testing.T) {
	s, session, _ := opened(t, draft.Form{draft.Avoid: "peanut, moonbeams"})
	s.Focus(draft.Avoid)
	chips := s.controls[draft.Avoid].(*chips)
	if !chips.mend.Visible() || chips.problem.Text() == "" {
		t.Fatal("not told")
	}
	widgettest.Press(t, "intake.avoid.mend")
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

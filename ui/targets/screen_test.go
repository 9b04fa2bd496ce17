package targets

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

func shown(t *testing.T, form draft.Form) (*draft.Session, *Screen, fyne.Window) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(theme.New(theme.Light, 1))
	s := opened(form)
	screen := New(s)
	return s, screen, inWindow(t, theme.Light, screen.Object(), fyne.NewSize(958, 700))
}

func key(w interface{ TypedKey(*fyne.KeyEvent) }, name fyne.KeyName) {
	w.TypedKey(&fyne.KeyEvent{Name: name})
}

func TestSliderMovesEverythingAtOnce(t *testing.T) {
	s, screen, _ := shown(t, answers())
	slider := screen.macros.slider
	fat, row := screen.macros.bar.Value(1), screen.macros.fatRow.Value()
	key(slider, fyne.KeyLeft)
	if s.Get(draft.Balance) != "54%" {
		t.Errorf("the form has %q", s.Get(draft.Balance))
	}
	key(slider, fyne.KeyPageDown)
	if screen.macros.bar.Value(1) == fat || screen.macros.fatRow.Value() == row {
		t.Errorf("fat stays at %s, %s", screen.macros.bar.Value(1), screen.macros.fatRow.Value())
	}
	plan, _ := s.Plan()
	if got := plan.Intake.CarbFatBalance; got != 49 || slider.Value() != 49 {
		t.Errorf("balance %v, slider %v", got, slider.Value())
	}
}

func TestWallHoldsTheSlider(t *testing.T) {
	s, screen, _ := shown(t, answers())
	key(screen.macros.slider, fyne.KeyEnd)
	plan, _ := s.Plan()
	if !screen.macros.slider.AtWall() || plan.Targets.Shares.Fat < plan.Targets.FatFloor-1e-9 {
		t.Errorf("at wall %v, fat %v of energy", screen.macros.slider.AtWall(), plan.Targets.Shares.Fat)
	}
	if caption := screen.macros.slider.Caption(); !strings.Contains(caption, "stops here") || !strings.Contains(caption, "floor of 20%") {
		t.Errorf("%q", caption)
	}
	wall := screen.macros.slider.Value()
	s.Set(draft.FatFloor, "30%")
	if screen.macros.slider.Value() >= wall || !screen.macros.slider.AtWall() {
		t.Errorf("a floor of 30%% leaves the wall at %v", screen.macros.slider.Value())
	}
}

func TestFieldsWriteTheForm(t *testing.T) {
	s, screen, w := shown(t, answers())
	for _, c := range []struct {
		field draft.Field
		text  string
	}{
		{draft.GoalWeight, "72 kg"}, {draft.GoalBy, "30 September 2026"}, {draft.FatFloor, "25%"}, {draft.Protein, "1.6"},
	} {
		screen.Focus(c.field)
		focused, ok := w.Canvas().Focused().(selectable)
		if !ok {
			t.Fatalf("%s takes no focus", c.field)
		}
		focused.TypedShortcut(&fyne.ShortcutSelectAll{})
		test.Type(focused, c.text)
		if got := s.Get(c.field); got != c.text {
			t.Errorf("%s has %q, typed %q", c.field, got, c.text)
		}
	}
	plan, planned := s.Plan()
	if !planned || plan.Intake.ProteinPerKg != 1.6 || plan.Targets.FatFloor != 25 || plan.Intake.Goal.Weight != 72 {
		t.Errorf("%v %+v", planned, plan.Intake)
	}
}

func TestFieldsFollowTheForm(t *testing.T) {
	s, screen, _ := shown(t, answers())
	s.Set(draft.GoalWeight, "71 kg")
	if got := screen.goal.weight.Text(); got != "71 kg" {
		t.Errorf("%q", got)
	}
	s.Undo()
	if got := screen.goal.weight.Text(); got != "70 kg" {
		t.Errorf("after undo %q", got)
	}
	s.Set(draft.GoalWeight, "90 kg")
	if got := screen.goal.weight.Problem(); !strings.Contains(got, "below the present one") {
		t.Errorf("a goal above the weight says %q", got)
	}
}

func TestHoldingTheWeightAsksForNoWeight(t *testing.T) {
	s, screen, _ := shown(t, answers())
	key(screen.goal.kind, fyne.KeyRight)
	if s.Get(draft.GoalKind) != "maintain" || !screen.goal.whereTo.Hidden || !screen.energy.promise.Hidden {
		t.Errorf("goal %q, fields hidden %v", s.Get(draft.GoalKind), screen.goal.whereTo.Hidden)
	}
}

func TestEarliestSafeDateIsTaken(t *testing.T) {
	s, screen, _ := shown(t, with("goal.by", "2026-04-20", "activity", "active"))
	if screen.goal.tooFast.Hidden {
		t.Fatal("8 kg in seven weeks is not called too fast")
	}
	test.Tap(screen.goal.take)
	plan, _ := s.Plan()
	if !screen.goal.tooFast.Hidden || plan.Goal == nil || plan.Goal.TooFast {
		t.Errorf("still too fast by %s", s.Get(draft.GoalBy))
	}
}

func TestReferralLeavesOnlyTheGoal(t *testing.T) {
	s, screen, _ := shown(t, answers())
	s.Set("screening.type_1_diabetes", draft.AnswerYes)
	if !screen.macros.object.Hidden || !screen.goal.outcome.Hidden || screen.energy.target.Value() != notYet || !screen.energy.promise.Hidden {
		t.Error("a target is still shown")
	}
	var section string
	screen.OnGo = func(to string, _ draft.Field) { section = to }
	test.Tap(screen.notice.button)
	if section != "screening" {
		t.Errorf("leads to %q", section)
	}
}

func TestDerivationsOpenInPlace(t *testing.T) {
	_, screen, _ := shown(t, answers())
	for _, o := range []*opening{
		screen.energy.resting, screen.energy.activity, screen.energy.maintenance, screen.energy.target, screen.energy.rate,
		screen.macros.proteinRow, screen.macros.fatRow, screen.macros.carbohydrateRow, screen.macros.fibreRow,
	} {
		closed := o.Size().Height
		test.Tap(o.FocusTarget().(fyne.Tappable))
		if !o.Open() || o.Size().Height < closed+40 {
			t.Errorf("%s: open %v, %v high", o.Label(), o.Open(), o.Size().Height)
		}
	}
}

func TestUnitsChangeWithThePractice(t *testing.T) {
	s, screen, _ := shown(t, answers())
	s.SetStyle(unit.Style{EnergyIn: unit.InKilojoules})
	if got := screen.energy.resting.Value(); got != "6251 kJ" {
		t.Errorf("%q", got)
	}
}

func TestNames(t *testing.T) {
	shown(t, answers())
	for _, field := range []draft.Field{draft.GoalKind, draft.GoalWeight, draft.GoalBy, draft.GoalEnergy, draft.Balance, draft.FatFloor, draft.Protein} {
		if widgets.Named()["targets."+string(field)] == nil {
			t.Errorf("nothing is named targets.%s", field)
		}
	}
}

func TestFitsANarrowWindow(t *testing.T) {
	for name, form := range galleryForms() {
		_, screen, _ := shown(t, form)
		if got := screen.Object().MinSize().Width; got > 700 {
			t.Errorf("%s needs a width of %v", name, got)
		}
	}
}

// selectable is a focused entry.
type selectable interface {
	fyne.Focusable
	fyne.Shortcutable
}

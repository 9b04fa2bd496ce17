package targets

import (
	"strings"
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

func shown(t *testing.T, form draft.Form) (*draft.Session, *Screen, fyne.Window) {
	t.Helper()
	widgettest.Program(t, theme.Light)
	s := opened(form)
	screen := New(s)
	return s, screen, widgettest.Window(t, screen.Object(), widgettest.LaptopWidth, 700)
}

func key(w interface{ TypedKey(*fyne.KeyEvent) }, name fyne.KeyName) {
	w.TypedKey(&fyne.KeyEvent{Name: name})
}

func TestSliderMovesEverythingAtOnce(t *testing.T) {
	s, screen, _ := shown(t, answers())
	slider := screen.macros.slider
	fat, row := screen.macros.bar.Value(1), screen.macros.rows[1].Value()
	key(slider, fyne.KeyLeft)
	if s.Get(draft.Balance) != "54%" {
		t.Errorf("the form has %q", s.Get(draft.Balance))
	}
	key(slider, fyne.KeyPageDown)
	if screen.macros.bar.Value(1) == fat || screen.macros.rows[1].Value() == row {
		t.Errorf("fat stays at %s, %s", screen.macros.bar.Value(1), screen.macros.rows[1].Value())
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
	s.Set(draft.FatFloorPerKg, "0.9")
	if screen.macros.slider.Value() >= wall || !screen.macros.slider.AtWall() {
		t.Errorf("a floor of 0.9 g/kg leaves the wall at %v", screen.macros.slider.Value())
	}
}

// Each field takes the focus where it is, whatever is folded, and writes the form.
func TestFieldsWriteTheForm(t *testing.T) {
	for _, c := range []struct {
		field draft.Field
		text  string
		form  draft.Form
	}{
		{draft.GoalWeight, "72 kg", answers()},
		{draft.GoalBy, "30 September 2026", answers()},
		{draft.GoalPerWeek, "0.4 kg", with("goal.by", "")},
		{draft.GoalEnergy, "2000 kcal", with("goal.by", "")},
		{draft.FatFloor, "25%", answers()},
		{draft.FatFloorPerKg, "0.8", answers()},
		{draft.Protein, "1.6", answers()},
		{draft.UsualFibre, "15", answers()},
		{draft.MeasuredResting, "1420 kcal", answers()},
	} {
		s, screen, w := shown(t, c.form)
		screen.Focus(c.field)
		focused, ok := w.Canvas().Focused().(selectable)
		if !ok {
			t.Errorf("%s takes no focus", c.field)
			continue
		}
		focused.TypedShortcut(&fyne.ShortcutSelectAll{})
		test.Type(focused, c.text)
		if got := s.Get(c.field); got != c.text {
			t.Errorf("%s has %q, typed %q", c.field, got, c.text)
		}
		if plan, planned := s.Plan(); !planned || plan.Targets == nil {
			t.Errorf("%s = %s gives no plan: %v", c.field, c.text, s.Reading().Problems)
		}
	}
}

func TestChoicesWriteTheForm(t *testing.T) {
	for _, c := range []struct {
		field draft.Field
		index int
		want  string
	}{
		{draft.Training, 2, "strength"}, {draft.Training, 0, "none"}, {draft.ProteinBasis, 3, "lean"}, {draft.Counting, 1, "available"},
	} {
		s, screen, _ := shown(t, answers())
		choice, is := screen.place(c.field).(*widgets.Choice)
		if !is {
			t.Fatalf("no choice for %s", c.field)
		}
		widgettest.Settle(test.NewTempWindow(t, screen.Object()))
		test.TapAt(choice, choice.Spot(c.index))
		if got := s.Get(c.field); got != c.want || choice.Selected() != c.index {
			t.Errorf("%s: %q, chosen %d", c.field, got, choice.Selected())
		}
		if _, planned := s.Plan(); !planned {
			t.Errorf("%s: %v", c.field, s.Reading().Problems)
		}
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

// Looking at a way whose field is empty is no change of the goal.
func TestReferralLeavesOnlyTheGoal(t *testing.T) {
	s, screen, w := shown(t, answers())
	test.Tap(screen.compare.keep)
	s.Set("screening.type_1_diabetes", draft.AnswerYes)
	if !screen.macros.object.Hidden || !screen.course.object.Hidden || !screen.compare.object.Hidden || !screen.goal.outcome.Hidden {
		t.Error("a target is still shown")
	}
	widgettest.Settle(w)
	for _, words := range []string{"1896", "8 in 10", "Target energy", "static rule"} {
		if seen := visibleTexts(screen.Object()); strings.Contains(seen, words) {
			t.Errorf("%q is seen in %s", words, seen)
		}
	}
	var section string
	screen.OnGo = func(to string, _ draft.Field) { section = to }
	widgettest.Press(t, "targets.way")
	if section != "screening" {
		t.Errorf("leads to %q", section)
	}
}

// visibleTexts joins the texts that can be seen below an object.
func visibleTexts(o fyne.CanvasObject) string {
	if !o.Visible() {
		return ""
	}
	switch v := o.(type) {
	case *widgets.Text:
		return v.Text() + "\n"
	case *fyne.Container:
		all := ""
		for _, child := range v.Objects {
			all += visibleTexts(child)
		}
		return all
	case fyne.Widget:
		all := ""
		for _, child := range test.WidgetRenderer(v).Objects() {
			all += visibleTexts(child)
		}
		return all
	}
	return ""
}

func TestEquationIsChosenByClickAndKey(t *testing.T) {
	s, screen, _ := shown(t, answers())
	strip := screen.energy.strip
	key(strip, fyne.KeyDown)
	plan, _ := s.Plan()
	if s.Get(draft.RestingEquation) != string(energy.HenryWeightHeight) || plan.Intake.RestingEquation != energy.HenryWeightHeight || strip.Chosen() != 1 {
		t.Errorf("the form has %q", s.Get(draft.RestingEquation))
	}
	if got, want := screen.energy.resting.Value(), strip.Values()[1].Text; got != want {
		t.Errorf("resting energy is %s, the equation says %s", got, want)
	}
	test.TapAt(strip, strip.Spot(0))
	if s.Get(draft.RestingEquation) != string(energy.MifflinStJeor) {
		t.Errorf("a click gives %q", s.Get(draft.RestingEquation))
	}
	s.Set(draft.MeasuredResting, "1420 kcal")
	test.TapAt(strip, strip.Spot(3))
	if strip.Chosen() != 0 || s.Get(draft.RestingEquation) != string(energy.MifflinStJeor) {
		t.Error("an equation is chosen beside a measured value")
	}
}

func TestActivityLeadsToTheIntake(t *testing.T) {
	_, screen, _ := shown(t, answers())
	var section string
	var field draft.Field
	screen.OnGo = func(to string, f draft.Field) { section, field = to, f }
	widgettest.Press(t, "targets.to_activity")
	if section != "intake" || field != draft.Activity {
		t.Errorf("%s %s", section, field)
	}
}

func TestChartFollowsThePlan(t *testing.T) {
	s, screen, _ := shown(t, answers())
	before := screen.course.panel.Said()
	s.Set(draft.GoalBy, "2026-11-30")
	after := screen.course.panel.Said()
	if before.Date != "31 August 2026" || after.Date != "30 November 2026" {
		t.Errorf("read %q, then %q", before.Date, after.Date)
	}
	widgettest.Press(t, "targets.table")
	if !screen.course.panel.TableShown() {
		t.Error("the table does not open")
	}
}

func TestDerivationsOpenInPlace(t *testing.T) {
	_, screen, w := shown(t, answers())
	for _, o := range screen.openings() {
		if o.Hidden || o == screen.goal.safe {
			continue
		}
		closed := o.Size().Height
		test.Tap(o.FocusTarget().(fyne.Tappable))
		widgettest.Settle(w)
		if !o.Open() || o.Size().Height < closed+40 {
			t.Errorf("%s: open %v, %v high, was %v", o.Label(), o.Open(), o.Size().Height, closed)
		}
	}
}

// While it is hidden the section costs nothing; shown again it has caught up.
func TestHiddenSectionCatchesUp(t *testing.T) {
	s, screen, _ := shown(t, answers())
	before := screen.course.target.Value()
	screen.Object().Hide()
	s.Set(draft.Weight, "95 kg")
	if screen.course.target.Value() != before {
		t.Error("it follows while it is hidden")
	}
	screen.Object().Show()
	plan, _ := s.Plan()
	if got, want := screen.course.target.Value(), s.Style().Energy(plan.Targets.Energy.Value); got != want {
		t.Errorf("shown again it says %s, want %s", got, want)
	}
	screen.Object().Hide()
	s.SetStyle(unit.Style{EnergyIn: unit.InKilojoules})
	screen.Object().Show()
	if got := screen.course.target.Value(); !strings.HasSuffix(got, "kJ") {
		t.Errorf("after a change of units it says %s", got)
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
	for _, name := range []string{
		"goal.kind", "goal.weight", "goal.by", "goal.per_week", "goal.kcal_per_day", "wish", "chart", "table", "resting_equation",
		"measured_resting_kcal_per_day", "carb_fat_balance_percent", "fat_floor_percent", "fat_floor_g_per_kg", "protein_g_per_kg",
		"protein_basis", "training", "carbohydrate_counted", "usual_fibre_g_per_day", "keep", "take", "take_other", "safe",
	} {
		if widgets.Named()["targets."+name] == nil {
			t.Errorf("nothing is named targets.%s", name)
		}
	}
}

// Tab reaches the chart, the ways, the strip and the slider, and all that opens.
func TestTabReachesTheSection(t *testing.T) {
	_, _, w := shown(t, answers())
	walked := widgettest.Walk(w.Canvas())
	for _, name := range []string{
		"chart", "table", "energy", "reached", "rate", "half", "holding", "static", "goal.kind", "goal.weight", "wish", "goal.by",
		"carb_fat_balance_percent", "protein_set", "floor_set", "counting_set", "usual_set", "protein_row", "fibre_row",
		"resting_equation", "resting", "measuring", "activity", "to_activity", "maintenance", "check", "check_other", "keep",
	} {
		found := false
		for _, at := range walked {
			found = found || at == "targets."+name
		}
		if !found {
			t.Errorf("Tab does not reach targets.%s", name)
		}
	}
}

func TestFitsANarrowWindow(t *testing.T) {
	for name, form := range galleryForms() {
		_, screen, _ := shown(t, form)
		if got := screen.Object().MinSize().Width; got > widgettest.NarrowWidth {
			t.Errorf("%s needs a width of %v", name, got)
		}
	}
}

// selectable is a focused entry.
type selectable interface {
	fyne.Focusable
	fyne.Shortcutable
}

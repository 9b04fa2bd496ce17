package intake

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/ui/draft"
	"handbreadth/ui/widgets/widgettest"
)

// choose takes an option of a choice as a click would.
func (s *Screen) choose(field draft.Field, index int) {
	type tapped interface {
		Tapped(*fyne.PointEvent)
		Spot(int) fyne.Position
	}
	target := s.controls[field].Target().(tapped)
	target.Tapped(&fyne.PointEvent{Position: target.Spot(index)})
}

func TestThePaceOfTheGoalIsOneChoice(t *testing.T) {
	s, session, c := opened(t, filled())
	s.choose(goalWay, 1)
	if session.Get(draft.GoalBy) != "" || s.boxes[draft.GoalBy].Visible() || !s.boxes[draft.GoalPerWeek].Visible() {
		t.Fatalf("the form has %q", session.Get(draft.GoalBy))
	}
	s.Focus(draft.GoalPerWeek)
	test.Type(c.Focused(), "0.5")
	if got := s.field(draft.GoalPerWeek).Understood(); got != "= 0.5 kg a week" || session.Reading().Intake.Goal.PerWeek != 0.5 {
		t.Errorf("understood as %q", got)
	}
	s.choose(goalWay, 0)
	if session.Get(draft.GoalBy) != "2026-08-31" || session.Get(draft.GoalPerWeek) != "" {
		t.Error("what was told before does not come back")
	}
	s.choose(goalWay, 3)
	if session.Get(draft.GoalBy)+session.Get(draft.GoalPerWeek) != "" || s.boxes[draft.GoalBy].Visible() {
		t.Error("not agreed yet, and something is told")
	}
	session.Undo()
	if session.Get(draft.GoalBy) != "2026-08-31" || !s.boxes[draft.GoalBy].Visible() || s.controls[goalWay].(*ways).Selected() != 0 {
		t.Error("undo does not bring the date back")
	}
}

// Clearing a date to type another one must not take the field away.
func TestAClearedPaceStaysToBeTypedAnew(t *testing.T) {
	s, session, c := opened(t, filled())
	s.Focus(draft.GoalBy)
	for range len("2026-08-31") {
		widgettest.Key(c, fyne.KeyEnd, fyne.KeyBackspace)
	}
	if session.Get(draft.GoalBy) != "" || !s.boxes[draft.GoalBy].Visible() || widgettest.Focused(c) != "intake.goal.by" {
		t.Fatalf("the form has %q, shown %v, focus at %q", session.Get(draft.GoalBy), s.boxes[draft.GoalBy].Visible(), widgettest.Focused(c))
	}
	test.Type(c.Focused(), "2026-09-30")
	if session.Get(draft.GoalBy) != "2026-09-30" {
		t.Error("not typed anew")
	}
}

func TestTheWayOfTheActivityKeepsTheClass(t *testing.T) {
	s, session, _ := opened(t, filled())
	for i, want := range []string{"low_active", draft.ActivityAsDay, draft.ActivityAsNumber, draft.ActivityAsCustomary} {
		s.choose(activityWay, i)
		if got := session.Get(draft.Activity); got != want {
			t.Errorf("%s holds %q", activityWays[i].Label, got)
		}
	}
	s.choose(draft.Customary, 2)
	if p, ok := session.Plan(); !ok || p.Activity.Value != 1.55 {
		t.Error("the customary factor is not taken")
	}
	s.choose(activityWay, 0)
	if session.Get(draft.Activity) != "low_active" {
		t.Errorf("the class is %q", session.Get(draft.Activity))
	}
}

func TestTheDayTellsWhatItAddsUpTo(t *testing.T) {
	s, session, c := opened(t, filled())
	s.choose(activityWay, 1)
	day := s.controls[draft.Day].(*dayBox)
	if got := s.fold(t, "activity").Mark(); got != "Still needed: the hours of the day" {
		t.Errorf("the head says %q", got)
	}
	s.Focus(draft.Day)
	if widgettest.Focused(c) != "intake.activity.day.07030" {
		t.Fatalf("the focus is at %q", widgettest.Focused(c))
	}
	test.Type(c.Focused(), "8")
	s.Focus(draft.DayHours("11580"))
	test.Type(c.Focused(), "8")
	// By hand, as in the test of the form: (8 x 0.95 + 8 x 1.5 + 8 x 1.3) / 24 / 0.9.
	if day.sum.Text() != "16 h told of 24 h; the other 8 h count as sitting quietly." || day.level.Text() != "PAL 1.39, within 1.25 and 1.53" {
		t.Errorf("%q, %q", day.sum.Text(), day.level.Text())
	}
	test.Type(c.Focused(), "8")
	if p := s.field(draft.DayHours("11580")).Problem(); p != "" {
		t.Errorf("told while typing: %q", p)
	}
	session.Set(draft.DayHours("11580"), "17")
	if day.level.Visible() || !day.problem.Visible() || day.meter.Share() <= 1 {
		t.Errorf("25 hours: %q, %q", day.sum.Text(), day.problem.Text())
	}
}

func TestFocusGoesToTheChoiceThatAFieldHangsOn(t *testing.T) {
	s, _, c := opened(t, with(filled(), "goal.kind", ""))
	for field, want := range map[draft.Field]string{
		draft.PAL: "intake.activity.way", draft.DayHours("07030"): "intake.activity.way", draft.GoalPerWeek: "intake.goal.kind",
	} {
		if s.Focus(field); widgettest.Focused(c) != want {
			t.Errorf("%s: the focus is at %q, want %q", field, widgettest.Focused(c), want)
		}
	}
	s.choose(draft.GoalKind, 0)
	if s.Focus(draft.GoalEnergy); widgettest.Focused(c) != "intake.goal.way" {
		t.Errorf("the focus is at %q", widgettest.Focused(c))
	}
}

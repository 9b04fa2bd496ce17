package sheet

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

func shown(t *testing.T, form draft.Form) (*draft.Session, *Screen) {
	t.Helper()
	test.NewTempApp(t)
	s := opened(form)
	screen := New(s)
	inWindow(t, theme.Light, screen.Object(), fyne.NewSize(Width, 700))
	return s, screen
}

func TestSheetFollowsEveryChangeWithTheSameWidgets(t *testing.T) {
	s, screen := shown(t, answers())
	before := *screen.body
	target, palms := screen.body.target.Value(), screen.body.day.figures[hand.Palm].Count()
	s.Set(draft.Weight, "95 kg")
	if screen.body.target.Value() == target || screen.body.day.figures[hand.Palm].Count() == palms {
		t.Errorf("still %s and %v palms", screen.body.target.Value(), palms)
	}
	after := *screen.body
	if before.target != after.target || before.bar != after.bar || before.day != after.day || before.findings != after.findings {
		t.Error("widgets were built again")
	}
}

func TestOpenDerivationFollows(t *testing.T) {
	s, screen := shown(t, answers())
	test.Tap(screen.body.resting.FocusTarget().(fyne.Tappable))
	if !screen.body.resting.Open() {
		t.Fatal("not open")
	}
	low := screen.body.maintenance.Position().Y
	if high := screen.body.resting.Size().Height; high < 100 {
		t.Errorf("the derivation has no room: %v", high)
	}
	s.Set(draft.Weight, "80 kg")
	if !screen.body.resting.Open() || screen.body.maintenance.Position().Y != low {
		t.Error("a change closed or moved it")
	}
}

func TestSparkFollowsTheCourse(t *testing.T) {
	s, screen := shown(t, answers())
	before := len(screen.body.spark.Course().Bands)
	s.Set(draft.GoalBy, "2026-12-31")
	if after := len(screen.body.spark.Course().Bands); after <= before || screen.body.course.Hidden {
		t.Errorf("a later date leaves %d days, was %d", after, before)
	}
	s.Set("screening.type_1_diabetes", draft.AnswerYes)
	if !screen.body.course.Hidden {
		t.Error("a referred plan shows a course")
	}
}

func TestOtherEquationsStandBelowTheDerivation(t *testing.T) {
	_, screen := shown(t, answers())
	test.Tap(screen.body.resting.FocusTarget().(fyne.Tappable))
	if more := screen.body.resting.more; more.Text() == "" || more.Size().Height < 30 {
		t.Errorf("%q is %v", more.Text(), more.Size())
	}
}

func TestReferralTakesTheTargetAway(t *testing.T) {
	s, screen := shown(t, answers())
	s.Set("screening.type_1_diabetes", draft.AnswerYes)
	if !screen.body.energy.Hidden || !screen.body.macros.Hidden || !screen.body.day.object.Hidden {
		t.Error("figures are still shown")
	}
	var section string
	screen.OnGo = func(to string, _ draft.Field) { section = to }
	test.Tap(screen.body.start)
	if section != sectionHandout {
		t.Errorf("leads to %q", section)
	}
	s.Set("screening.type_1_diabetes", draft.AnswerNo)
	if screen.body.energy.Hidden || screen.body.macros.Hidden {
		t.Error("figures do not come back")
	}
}

func TestHoldLeadsToItsReason(t *testing.T) {
	s, screen := shown(t, answers())
	if !screen.body.heldBy.Hidden {
		t.Error("held without a hold")
	}
	s.Set("screening.lithium", draft.AnswerYes)
	if screen.body.heldBy.Hidden {
		t.Fatal("not held")
	}
	var field draft.Field
	screen.OnGo = func(_ string, to draft.Field) { field = to }
	test.Tap(screen.body.reason)
	if field != draft.Reason("lithium", draft.ReasonText) {
		t.Errorf("leads to %q", field)
	}
	s.Set(draft.Reason("lithium", draft.ReasonText), "Agreed with the prescriber")
	if !screen.body.heldBy.Hidden {
		t.Error("still held with a reason")
	}
}

func TestWantsAreButtons(t *testing.T) {
	s, screen := shown(t, with("height", "", "weight", ""))
	var section string
	var field draft.Field
	screen.OnGo = func(to string, f draft.Field) { section, field = to, f }
	button, ok := widgets.Named()["sheet.want.height"].(*widgets.Button)
	if !ok {
		t.Fatal("no button for the height")
	}
	test.Tap(button)
	if section != "intake" || field != draft.Height {
		t.Errorf("%s %s", section, field)
	}
	s.Set(draft.Height, "168 cm")
	if _, still := widgets.Named()["sheet.want.height"]; still {
		t.Error("the height is still asked for")
	}
	s.Set(draft.Weight, "78 kg")
	if !screen.body.wants.object.Hidden {
		t.Error("something is still asked for")
	}
}

func TestNotesUnfold(t *testing.T) {
	_, screen := shown(t, answers())
	notes := screen.body.findings.parts[0]
	if !notes.notes || !notes.cards.Hidden {
		t.Fatal("the notes are not folded")
	}
	test.Tap(notes.fold)
	if notes.cards.Hidden || notes.cards.Size().Height < 100 {
		t.Error("the notes do not unfold")
	}
}

func TestUnitsChangeWithThePractice(t *testing.T) {
	s, screen := shown(t, answers())
	s.SetStyle(unit.Style{EnergyIn: unit.InKilojoules})
	if got := screen.body.resting.Value(); got != "6251 kJ" {
		t.Errorf("%q", got)
	}
}

func TestNothingIsWiderThanTheSheet(t *testing.T) {
	for name, form := range galleryForms() {
		_, screen := shown(t, form)
		if got := screen.Object().MinSize().Width; got > Width {
			t.Errorf("%s needs %v, the sheet has %v", name, got, Width)
		}
	}
}

package measures

import (
	"strings"
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
	test.NewTempApp(t).Settings().SetTheme(theme.New(theme.Light, 1))
	s := opened(form)
	screen := New(s)
	inWindow(t, theme.Light, screen.Object(), fyne.NewSize(958, 700))
	return s, screen
}

func TestMealsChoiceChangesTheForm(t *testing.T) {
	s, screen := shown(t, answers())
	if screen.meals.choice.Selected() != 2 {
		t.Fatalf("three meals show as choice %d", screen.meals.choice.Selected())
	}
	screen.meals.choice.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	if s.Get(draft.Meals) != "6" {
		t.Fatalf("the form has %q meals", s.Get(draft.Meals))
	}
	for i, line := range screen.meals.meals {
		if line.row.Hidden {
			t.Errorf("meal %d is not shown", i+1)
		}
	}
	s.Undo()
	if screen.meals.choice.Selected() != 2 || !screen.meals.meals[3].row.Hidden {
		t.Error("undo does not show three meals again")
	}
}

func TestRowsDrawTheMealsOfThePlan(t *testing.T) {
	s, screen := shown(t, answers())
	for range 2 {
		plan, _ := s.Plan()
		for _, k := range hand.Kinds() {
			if got := screen.meals.day.row.Figure(k).Count(); got != plan.Targets.Allotment.Day.Of(k) {
				t.Errorf("the day draws %v %s, the plan has %v", got, k.Plural(), plan.Targets.Allotment.Day.Of(k))
			}
			for i, m := range plan.Targets.Allotment.Meals {
				if got := screen.meals.meals[i].row.Figure(k).Count(); got != m.Measures.Of(k) {
					t.Errorf("%s draws %v %s, the plan has %v", m.Name, got, k.Plural(), m.Measures.Of(k))
				}
			}
		}
		s.Set(draft.Weight, "95 kg")
	}
}

func TestNumbersOpenInPlace(t *testing.T) {
	s, screen := shown(t, answers())
	brings := screen.contents.brings[hand.Palm]
	closed := brings.Size().Height
	test.Tap(brings.FocusTarget().(fyne.Tappable))
	if !brings.Open() || brings.Size().Height < closed+200 {
		t.Errorf("open %v, %v high", brings.Open(), brings.Size().Height)
	}
	before := brings.Size().Height
	s.Set(draft.Pattern, "vegan")
	if !brings.Open() || brings.Size().Height < before/2 {
		t.Error("a change closed it")
	}
}

func TestDistancesAreInTheTable(t *testing.T) {
	s, screen := shown(t, answers())
	plan, _ := s.Plan()
	line := screen.near.table.lines[0]
	if got := line[1].Text(); got != s.Style().Energy(plan.Targets.Energy.Value) {
		t.Errorf("target %q", got)
	}
	if got := screen.near.words.Text(); got != plan.Targets.Allotment.Distance.Words {
		t.Errorf("%q", got)
	}
}

func TestReferralTakesTheMeasuresAway(t *testing.T) {
	s, screen := shown(t, answers())
	s.Set("screening.type_1_diabetes", draft.AnswerYes)
	if !screen.contents.object.Hidden || !screen.meals.object.Hidden || !screen.near.object.Hidden || screen.notice.object.Hidden {
		t.Error("measures are still shown")
	}
	s.Set("screening.type_1_diabetes", draft.AnswerNo)
	if screen.meals.object.Hidden || !screen.notice.object.Hidden {
		t.Error("the measures do not come back")
	}
}

func TestNoticeLeadsOn(t *testing.T) {
	_, screen := shown(t, with("screening.lithium", "yes"))
	var section string
	var field draft.Field
	screen.OnGo = func(to string, f draft.Field) { section, field = to, f }
	test.Tap(screen.notice.button)
	if section != "screening" || field != draft.Reason("lithium", draft.ReasonText) {
		t.Errorf("%s %s", section, field)
	}
}

func TestUnitsChangeWithThePractice(t *testing.T) {
	s, screen := shown(t, answers())
	s.SetStyle(unit.Style{System: unit.USCustomary})
	if got := screen.contents.measures[hand.Fist].amount.Text(); !strings.HasPrefix(got, "1 cup") {
		t.Errorf("%q", got)
	}
}

func TestFocusAndNames(t *testing.T) {
	_, screen := shown(t, answers())
	screen.Focus(draft.Meals)
	if !screen.meals.choice.Focused() {
		t.Error("the choice of meals has no focus")
	}
	for _, name := range []string{"measures.meals_per_day", "measures.palm", "measures.cupped_hand", "measures.near", "measures.day", "measures.meal6"} {
		if widgets.Named()[name] == nil {
			t.Errorf("nothing is named %s", name)
		}
	}
}

func TestFitsANarrowWindow(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(theme.New(theme.Light, 1))
	for _, name := range []string{"held", "vegan6"} {
		if got := New(opened(galleryForms()[name])).Object().MinSize().Width; got > 700 {
			t.Errorf("%s needs a width of %v", name, got)
		}
	}
}

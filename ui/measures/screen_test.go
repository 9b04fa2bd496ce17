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
	"handbreadth/ui/widgets/widgettest"
)

func shown(t *testing.T, form draft.Form) (*draft.Session, *Screen, fyne.Window) {
	t.Helper()
	widgettest.Program(t, theme.Light)
	s := opened(form)
	screen := New(s)
	return s, screen, widgettest.Window(t, screen.Object(), widgettest.LaptopWidth, 700)
}

// press clicks what opens a fold, a setting or a number.
func press(f widgets.Focuser) { test.Tap(f.FocusTarget().(fyne.Tappable)) }

func allotment(t *testing.T, s *draft.Session) hand.Allotment {
	t.Helper()
	plan, planned := s.Plan()
	if !planned {
		t.Fatalf("no plan: %v %v", s.Reading().Problems, s.Reading().Missing)
	}
	return plan.Targets.Allotment
}

func TestMealsChoiceChangesTheForm(t *testing.T) {
	s, screen, _ := shown(t, answers())
	if screen.grid.count.Selected() != 2 {
		t.Fatalf("three meals show as choice %d", screen.grid.count.Selected())
	}
	screen.grid.count.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	if s.Get(draft.Meals) != "6" {
		t.Fatalf("the form has %q meals", s.Get(draft.Meals))
	}
	for i, line := range screen.grid.rows {
		if line.object.Hidden {
			t.Errorf("meal %d is not shown", i+1)
		}
	}
	s.Undo()
	if screen.grid.count.Selected() != 2 || !screen.grid.rows[3].object.Hidden {
		t.Error("undo does not show three meals again")
	}
}

func TestCellsShowTheMealsOfThePlan(t *testing.T) {
	s, screen, _ := shown(t, answers())
	for range 2 {
		a := allotment(t, s)
		for _, k := range hand.Kinds() {
			if got := screen.grid.day.cells[k].Count(); got != a.Day.Of(k) {
				t.Errorf("the day shows %v %s, the plan has %v", got, k.Plural(), a.Day.Of(k))
			}
			for i, m := range a.Meals {
				if got := screen.grid.rows[i].cells[k].Count(); got != m.Measures.Of(k) {
					t.Errorf("%s shows %v %s, the plan has %v", m.Name, got, k.Plural(), m.Measures.Of(k))
				}
			}
		}
		s.Set(draft.Weight, "95 kg")
	}
}

func TestHandIsMeasuredAndWeighed(t *testing.T) {
	s, screen, window := shown(t, answers())
	press(screen.hand.fold)
	before := screen.hand.factors[hand.Palm].Value()
	window.Canvas().Focus(screen.hand.lengths[0].FocusTarget())
	test.Type(screen.hand.lengths[0].FocusTarget(), "7.4")
	test.Type(screen.hand.lengths[1].FocusTarget(), "10.3")
	if s.Get(draft.PalmBreadth) != "7.4" || screen.hand.factors[hand.Palm].Value() == before {
		t.Errorf("%q, %q", s.Get(draft.PalmBreadth), screen.hand.factors[hand.Palm].Value())
	}
	w := screen.hand.weighed[hand.Palm]
	press(w.object)
	search := widgets.Named()["measures.weighed.palm.search"].(*widgets.SearchField)
	test.Type(search.FocusTarget(), "chicken br")
	search.FocusTarget().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	test.Type(w.grams.FocusTarget(), "74 g")
	if s.Get(draft.WeighedFood(hand.Palm)) != "chicken_breast" || screen.hand.factors[hand.Palm].Value() != "0.87 of the reference palm" {
		t.Errorf("%q: %q", s.Get(draft.WeighedFood(hand.Palm)), screen.hand.factors[hand.Palm].Value())
	}
	if got := w.object.Value(); got != "74 g of chicken breast" {
		t.Errorf("%q", got)
	}
	plan, _ := s.Plan()
	if got := float64(plan.Targets.Calibration.Factors[hand.Palm].Value); got < 0.87 || got > 0.871 {
		t.Errorf("the plan reckons with %v", got)
	}
	widgettest.Press(t, "measures.weighed.palm.back")
	if s.Get(draft.WeighedGrams(hand.Palm)) != "" || w.object.Value() != "not weighed" {
		t.Error("the weighing is still there")
	}
	window.Canvas().Focus(screen.hand.lengths[2].FocusTarget())
	test.Type(screen.hand.lengths[2].FocusTarget(), "99")
	window.Canvas().Unfocus()
	if _, planned := s.Plan(); planned || screen.hand.lengths[2].Problem() == "" {
		t.Error("a hand of 99 cm is taken")
	}
}

func TestBasketIsEdited(t *testing.T) {
	s, screen, window := shown(t, answers())
	press(screen.contents.fold)
	press(screen.contents.baskets[hand.Thumb].object)
	before := allotment(t, s)
	for _, code := range []string{"butter", "avocado", "almonds", "walnuts", "peanut_butter", "tahini", "sunflower_seeds", "pumpkin_seeds"} {
		widgettest.Press(t, "measures.thumb."+code+".remove")
	}
	plan, _ := s.Plan()
	if f := plan.Targets.Fillings[hand.Thumb]; !f.Chosen || len(f.Foods) != 2 {
		t.Fatalf("%+v", namesOf(f))
	}
	if allotment(t, s).Day == before.Day && allotment(t, s).Brings == before.Brings {
		t.Error("the day takes no notice")
	}
	more := widgets.Named()["measures.thumb.rapeseed_oil.more"].(*widgets.Button)
	test.Tap(more)
	if window.Canvas().Focused() != fyne.Focusable(more) {
		t.Error("an edit loses the focus")
	}
	search := widgets.Named()["measures.thumb.search"].(*widgets.SearchField)
	test.Type(search.FocusTarget(), "sesame oil")
	widgettest.Press(t, "measures.thumb.search.sesame_oil")
	if got := s.Get(draft.Basket); got != "olive_oil 3, rapeseed_oil 1.5, sesame_oil" {
		t.Errorf("%q", got)
	}
	s.Undo()
	if got := s.Get(draft.Basket); got != "olive_oil 3, rapeseed_oil 1.5" {
		t.Errorf("undone to %q", got)
	}
	widgettest.Press(t, "measures.thumb.usual")
	if s.Get(draft.Basket) != "" || allotment(t, s).Day != before.Day {
		t.Errorf("%q", s.Get(draft.Basket))
	}
}

func TestFoodsFollowTheClient(t *testing.T) {
	s, screen, _ := shown(t, answers())
	press(screen.foods.fold)
	title := screen.foods.lists[hand.Palm].title
	before := title.Text()
	s.Set(draft.Dislikes, "fish")
	if title.Text() == before {
		t.Errorf("%q before and after", before)
	}
	s.Set(draft.Pattern, "vegan")
	test.Type(screen.foods.search.FocusTarget(), "whole milk")
	if got := screen.foods.found.Text(); !strings.Contains(got, "Not for this client") {
		t.Errorf("%q", got)
	}
}

func TestNumbersOpenInPlace(t *testing.T) {
	s, screen, _ := shown(t, answers())
	press(screen.contents.fold)
	box := screen.contents.baskets[hand.Palm]
	press(box.object)
	closed := box.object.Size().Height
	press(box.brings)
	if !box.brings.Open() || box.object.Size().Height < closed+200 {
		t.Errorf("open %v, %v high", box.brings.Open(), box.object.Size().Height)
	}
	s.Set(draft.Pattern, "vegan")
	if !box.brings.Open() || !box.object.Open() {
		t.Error("a change closed it")
	}
}

func TestDistancesAreInTheTable(t *testing.T) {
	s, screen, _ := shown(t, answers())
	plan, _ := s.Plan()
	line := screen.near.table.lines[0]
	if got := line[1].Text(); got != s.Style().Energy(plan.Targets.Energy.Value) {
		t.Errorf("target %q", got)
	}
	if got := screen.grid.near.Text(); got != plan.Targets.Allotment.Distance.Words {
		t.Errorf("%q", got)
	}
}

func TestReferralTakesTheMeasuresAway(t *testing.T) {
	s, screen, _ := shown(t, answers())
	s.Set("screening.type_1_diabetes", draft.AnswerYes)
	for name, object := range map[string]fyne.CanvasObject{
		"grid": screen.grid.object, "other days": screen.near.object, "hand": screen.hand.fold, "contents": screen.contents.fold, "foods": screen.foods.fold,
	} {
		if object.Visible() {
			t.Errorf("the %s are still shown", name)
		}
	}
	if screen.notice.object.Hidden {
		t.Error("nothing says why")
	}
	s.Set("screening.type_1_diabetes", draft.AnswerNo)
	if screen.grid.object.Hidden || screen.hand.fold.Hidden || !screen.notice.object.Hidden {
		t.Error("the measures do not come back")
	}
}

func TestNoticeLeadsOn(t *testing.T) {
	_, screen, _ := shown(t, with("screening.lithium", "yes"))
	var section string
	var field draft.Field
	screen.OnGo = func(to string, f draft.Field) { section, field = to, f }
	test.Tap(screen.notice.button)
	if section != "screening" || field != draft.Reason("lithium", draft.ReasonText) {
		t.Errorf("%s %s", section, field)
	}
}

func TestUnitsChangeWithThePractice(t *testing.T) {
	s, screen, _ := shown(t, answers())
	s.SetStyle(unit.Style{System: unit.USCustomary})
	if got := screen.grid.rows[0].cells[hand.Fist].Note(); !strings.Contains(got, " cup") {
		t.Errorf("%q", got)
	}
}

func TestFocusAndNames(t *testing.T) {
	_, screen, window := shown(t, answers())
	for field, want := range map[draft.Field]string{
		draft.Meals: "measures.meals_per_day", draft.Ranges: "measures.hand.ranges", draft.MealWishes: "measures.meal1.palm", draft.MealSizes: "measures.meal1.size",
		draft.PalmLength: "measures.hand.palm_length", draft.WeighedGrams(hand.Fist): "measures.hand.weighed.fist.grams",
		draft.WeighedFood(hand.Thumb): "measures.weighed.thumb.search", draft.Basket: "measures.palm",
	} {
		screen.Focus(field)
		if got := widgettest.Focused(window.Canvas()); got != want {
			t.Errorf("%s leads to %s, want %s", field, got, want)
		}
	}
	for _, name := range []string{"measures.near", "measures.day", "measures.meal6"} {
		if widgets.Named()[name] == nil {
			t.Errorf("nothing is named %s", name)
		}
	}
}

// Everything that can be used has a name and is reached by Tab.
func TestEveryControlIsReachedByTab(t *testing.T) {
	_, screen, window := shown(t, wished())
	for _, fold := range []*widgets.Fold{screen.hand.fold, screen.contents.fold, screen.foods.fold} {
		press(fold)
	}
	seen := map[string]bool{}
	for _, name := range widgettest.Walk(window.Canvas()) {
		if name == "" {
			t.Error("a stop of Tab has no name")
		}
		seen[name] = true
	}
	for _, name := range []string{"measures.free", "measures.meal1.palm", "measures.meal3.size", "measures.day.thumb", "measures.take1", "measures.hand.palm_breadth", "measures.foods.search"} {
		if !seen[name] {
			t.Errorf("Tab does not reach %s", name)
		}
	}
}

func TestFitsANarrowWindow(t *testing.T) {
	for name, form := range map[string]draft.Form{"held": galleryForms()["held"], "vegan6": galleryForms()["vegan6"], "wished": wished()} {
		widgettest.Program(t, theme.Light)
		s := New(opened(form))
		for _, fold := range []*widgets.Fold{s.hand.fold, s.contents.fold, s.foods.fold} {
			fold.SetOpen(true)
		}
		s.onFold()
		if got := s.Object().MinSize().Width; got > widgettest.NarrowWidth {
			t.Errorf("%s needs a width of %v", name, got)
		}
	}
}

// The section in words and places, as a laptop shows it first and with locks.
func TestOutlines(t *testing.T) {
	for name, form := range map[string]draft.Form{"first": answers(), "wished": wished(), "conflict": galleryForms()["conflict"]} {
		t.Run(name, func(t *testing.T) {
			widgettest.Program(t, theme.Light)
			screen := New(opened(form))
			widgettest.AssertOutline(t, widgettest.Window(t, screen.Object(), widgettest.LaptopWidth, 640), name)
		})
	}
	t.Run("open", func(t *testing.T) {
		widgettest.Program(t, theme.Light)
		screen := New(opened(chosen()))
		window := widgettest.Window(t, screen.Object(), widgettest.LaptopWidth, 640)
		press(screen.hand.fold)
		press(screen.contents.fold)
		press(screen.contents.baskets[hand.Palm].object)
		widgettest.AssertOutline(t, window, "open")
	})
}

package measures

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"handbreadth/domain/hand"
	"handbreadth/ui/draft"
	"handbreadth/ui/widgets/widgettest"
)

func TestUpLocksAndTheRestFollows(t *testing.T) {
	s, screen, window := shown(t, answers())
	cell := screen.grid.rows[0].cells[hand.CuppedHand]
	before, day := cell.Count(), screen.grid.day.cells[hand.CuppedHand].Count()
	window.Canvas().Focus(cell)
	widgettest.Key(window.Canvas(), fyne.KeyUp)
	if cell.Count() != before+0.5 || !cell.Locked() || s.Get(draft.MealWishes) != "meal 1: cupped hand "+(before+0.5).String() {
		t.Fatalf("%v, locked %v, form %q", cell.Count(), cell.Locked(), s.Get(draft.MealWishes))
	}
	if got := screen.grid.day.cells[hand.CuppedHand].Count(); got != day {
		t.Errorf("the day went from %v to %v: the rest did not follow", day, got)
	}
	if window.Canvas().Focused() != fyne.Focusable(cell) {
		t.Error("the cell lost the focus")
	}
	widgettest.Key(window.Canvas(), fyne.KeyDown, fyne.KeyDown)
	if cell.Count() != before-0.5 {
		t.Errorf("two down: %v", cell.Count())
	}
	s.Undo()
	if cell.Count() != before {
		t.Errorf("undo goes to %v", cell.Count())
	}
	s.Undo()
	s.Undo()
	if cell.Count() != before || cell.Locked() || s.Get(draft.MealWishes) != "" {
		t.Errorf("undone to %v, locked %v", cell.Count(), cell.Locked())
	}
}

func TestKeysOfACell(t *testing.T) {
	s, screen, window := shown(t, answers())
	cell := screen.grid.rows[2].cells[hand.CuppedHand]
	window.Canvas().Focus(cell)
	cell.TypedRune('0')
	if s.Get(draft.MealWishes) != "meal 3: cupped hand 0" || cell.Count() != 0 || !cell.Locked() {
		t.Errorf("0 leaves it at %v", cell.Count())
	}
	widgettest.Key(window.Canvas(), fyne.KeyDelete)
	if s.Get(draft.MealWishes) != "" || cell.Locked() {
		t.Error("Delete does not free it")
	}
	free := cell.Count()
	cell.TypedRune('l')
	if !cell.Locked() || cell.Count() != free {
		t.Error("L does not lock it as it is")
	}
	cell.TypedRune('L')
	if cell.Locked() {
		t.Error("L does not free it")
	}
	cell.TypedRune('2')
	if cell.Count() != 2 || !cell.Locked() {
		t.Errorf("2 gives %v", cell.Count())
	}
}

func TestArrowsGoToTheCellsBeside(t *testing.T) {
	_, screen, window := shown(t, answers())
	window.Canvas().Focus(screen.grid.rows[0].cells[hand.Palm])
	for _, c := range []struct {
		key  fyne.KeyName
		want string
	}{
		{fyne.KeyRight, "measures.meal1.fist"},
		{fyne.KeyPageDown, "measures.meal2.fist"},
		{fyne.KeyLeft, "measures.meal2.palm"},
		{fyne.KeyLeft, "measures.meal2.palm"},
		{fyne.KeyPageDown, "measures.meal3.palm"},
		{fyne.KeyPageDown, "measures.day.palm"},
		{fyne.KeyPageDown, "measures.day.palm"},
		{fyne.KeyPageUp, "measures.meal3.palm"},
	} {
		widgettest.Key(window.Canvas(), c.key)
		if got := widgettest.Focused(window.Canvas()); got != c.want {
			t.Errorf("%s leads to %s, want %s", c.key, got, c.want)
		}
	}
}

func TestMouseChangesAndLocks(t *testing.T) {
	s, screen, window := shown(t, answers())
	cell := screen.grid.rows[1].cells[hand.Thumb]
	before := cell.Count()
	tap := func(part string) { cell.Tapped(&fyne.PointEvent{Position: cell.Spot(part)}) }
	tap("more")
	if cell.Count() != before+0.5 || !cell.Locked() {
		t.Errorf("more: %v", cell.Count())
	}
	tap("less")
	tap("less")
	if cell.Count() != before-0.5 || window.Canvas().Focused() != fyne.Focusable(cell) {
		t.Errorf("less: %v", cell.Count())
	}
	tap("count")
	if cell.Locked() || s.Get(draft.MealWishes) != "" {
		t.Error("a click on the count does not free it")
	}
	cell.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(0, -45)})
	cell.DragEnd()
	if cell.Count() != before+1 {
		t.Errorf("a drag of two steps: %v, before %v", cell.Count(), before)
	}
	day := screen.grid.day.cells[hand.Palm]
	day.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	if got := allotment(t, s).Day.Palm; got != day.Count() || !day.Locked() {
		t.Errorf("the day's palms are %v, shown %v", got, day.Count())
	}
}

func TestSizesAndRanges(t *testing.T) {
	s, screen, _ := shown(t, answers())
	before := allotment(t, s).Meals[0].Brings.Energy
	size := screen.grid.rows[0].size
	size.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft})
	if s.Get(draft.MealSizes) != "light" || allotment(t, s).Meals[0].Brings.Energy >= before {
		t.Errorf("%q", s.Get(draft.MealSizes))
	}
	size.Tapped(&fyne.PointEvent{Position: size.Spot(2)})
	if s.Get(draft.MealSizes) != "large" || allotment(t, s).Meals[0].Brings.Energy <= before {
		t.Errorf("%q", s.Get(draft.MealSizes))
	}
	screen.grid.ranges.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	if s.Get(draft.Ranges) != draft.AnswerYes || !strings.Contains(screen.grid.rows[1].cells[hand.Palm].Note(), " to ") {
		t.Errorf("%q", screen.grid.rows[1].cells[hand.Palm].Note())
	}
}

func TestConflictCanBeTakenBack(t *testing.T) {
	s, screen, _ := shown(t, with("meal_wishes", "day: palm 3; meal 1: palm 2"))
	if !screen.conflict.object.Hidden {
		t.Fatal("a conflict is told where there is none")
	}
	screen.grid.rows[1].cells[hand.Palm].TypedRune('2')
	if screen.conflict.object.Hidden || screen.grid.grid.Hidden {
		t.Fatal("the conflict is not told, or the grid is gone")
	}
	widgettest.Press(t, "measures.back1")
	if !screen.conflict.object.Hidden || s.Get(draft.MealWishes) != "meal 1: palm 2; meal 2: palm 2" {
		t.Errorf("%q", s.Get(draft.MealWishes))
	}
	if allotment(t, s).Meals[1].Measures.Palm != 2 {
		t.Error("what was asked for is not there")
	}
}

func TestAnotherDayCanBeTaken(t *testing.T) {
	s, screen, _ := shown(t, with("meal_wishes", "meal 3: cupped hand 0"))
	want := allotment(t, s).Alternatives[1].Day
	widgettest.Press(t, "measures.take2")
	if got := allotment(t, s).Day; got != want {
		t.Errorf("the day is %+v, taken was %+v", got, want)
	}
	if screen.near.fixed.Hidden || !screen.grid.rows[2].cells[hand.CuppedHand].Locked() {
		t.Error("the day is not told as fixed, or another wish went")
	}
	widgettest.Press(t, "measures.free_day")
	if s.Get(draft.MealWishes) != "meal 3: cupped hand 0" || !screen.near.fixed.Hidden {
		t.Errorf("%q", s.Get(draft.MealWishes))
	}
	widgettest.Press(t, "measures.free")
	if s.Get(draft.MealWishes) != "" || !screen.grid.free.Hidden {
		t.Errorf("%q", s.Get(draft.MealWishes))
	}
	s.Undo()
	if s.Get(draft.MealWishes) == "" {
		t.Error("undo does not bring the wishes back")
	}
}

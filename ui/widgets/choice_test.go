package widgets

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain/screen"
	"handbreadth/ui/theme"
)

var threeOptions = []Option{{Label: "Lose"}, {Label: "Keep"}, {Label: "Gain"}}

func TestChoiceByKeyboard(t *testing.T) {
	for _, c := range []struct {
		start int
		keys  []fyne.KeyName
		want  []int
	}{
		{-1, []fyne.KeyName{fyne.KeyRight}, []int{0}},
		{-1, []fyne.KeyName{fyne.KeySpace}, []int{0}},
		{-1, []fyne.KeyName{fyne.KeyRight, fyne.KeyRight, fyne.KeyDown, fyne.KeyDown}, []int{0, 1, 2}},
		{2, []fyne.KeyName{fyne.KeyLeft, fyne.KeyUp, fyne.KeyUp}, []int{1, 0}},
		{0, []fyne.KeyName{fyne.KeyEnd, fyne.KeyHome, fyne.KeyHome}, []int{2, 0}},
	} {
		program(t, theme.Light)
		var told []int
		choice := NewChoice("Goal", threeOptions, func(i int) { told = append(told, i) })
		open(t, choice, 500, 100)
		choice.SetSelected(c.start)
		press(choice, c.keys...)
		if !slices.Equal(told, c.want) || choice.Selected() != c.want[len(c.want)-1] {
			t.Errorf("from %d with %v: told %v, want %v", c.start, c.keys, told, c.want)
		}
	}
}

func TestChoiceByPointer(t *testing.T) {
	program(t, theme.Light)
	var told []int
	choice := NewChoice("Goal", threeOptions, func(i int) { told = append(told, i) })
	c := open(t, choice, 500, 100).Canvas()
	test.TapAt(choice, choice.Spot(1))
	test.TapAt(choice, choice.Spot(1))
	test.TapAt(choice, fyne.NewPos(1, 1)) // the label
	if !slices.Equal(told, []int{1}) || c.Focused() != fyne.Focusable(choice) {
		t.Errorf("told %v, focus on %v", told, c.Focused())
	}
}

func TestChoiceDisabled(t *testing.T) {
	program(t, theme.Light)
	choice := NewChoice("Goal", threeOptions, func(int) { t.Error("called back though switched off") })
	open(t, choice, 500, 100)
	choice.Disable()
	test.TapAt(choice, choice.Spot(1))
	press(choice, fyne.KeyRight, fyne.KeySpace)
	if choice.Selected() != -1 {
		t.Errorf("chose %d", choice.Selected())
	}
}

func TestChoiceStacksDescriptions(t *testing.T) {
	program(t, theme.Light)
	choice := NewChoice("Activity", []Option{{"Sitting", "Desk and sofa."}, {"Walking", "An hour on foot."}}, nil)
	open(t, choice, 500, 300)
	if a, b := choice.Spot(0), choice.Spot(1); a.X != b.X || b.Y <= a.Y {
		t.Errorf("options at %v and %v, want one below the other", a, b)
	}
	if side := NewChoice("", threeOptions, nil); side.HeightFor(1000) >= side.HeightFor(100) {
		t.Error("options side by side do not wrap in a narrow place")
	}
}

func TestChoiceHover(t *testing.T) {
	program(t, theme.Light)
	choice := NewChoice("", threeOptions, nil)
	open(t, choice, 500, 100)
	choice.MouseIn(&desktop.MouseEvent{})
	choice.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: choice.Spot(2)}})
	if choice.boxes[2].box.FillColor != theme.Colour(theme.Hover) || choice.boxes[1].box.FillColor != theme.Colour(theme.Card) {
		t.Error("the option under the pointer is not shown")
	}
	choice.MouseOut()
	if choice.boxes[2].box.FillColor != theme.Colour(theme.Card) {
		t.Error("the option stays lit after the pointer has left")
	}
}

func TestMultiChoice(t *testing.T) {
	program(t, theme.Light)
	var told [][]int
	chips := NewMultiChoice("Avoid", threeOptions, func(s []int) { told = append(told, s) })
	open(t, chips, 500, 100)
	chips.SetSelected([]int{2})
	press(chips, fyne.KeySpace, fyne.KeyRight, fyne.KeyRight, fyne.KeySpace)
	test.TapAt(chips, chips.Spot(1))
	want := [][]int{{0, 2}, {0}, {0, 1}}
	if !slices.EqualFunc(told, want, slices.Equal[[]int]) {
		t.Errorf("told %v, want %v", told, want)
	}
	chips.Disable()
	press(chips, fyne.KeySpace)
	if !slices.Equal(chips.Selected(), []int{0, 1}) {
		t.Errorf("changed though switched off: %v", chips.Selected())
	}
}

func TestYesNoByKeyboard(t *testing.T) {
	program(t, theme.Light)
	var told []screen.Answer
	row := NewYesNo("Kidney disease?", func(a screen.Answer) { told = append(told, a) })
	open(t, row, 700, 100)
	if row.Answer() != screen.NotAsked {
		t.Fatal("a question starts as not asked")
	}
	row.TypedRune('y')
	row.TypedRune('y')
	row.TypedRune('N')
	row.TypedRune('x')
	press(row, fyne.KeyDelete, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight, fyne.KeyBackspace, fyne.KeySpace)
	want := []screen.Answer{screen.Yes, screen.No, screen.NotAsked, screen.No, screen.Yes, screen.NotAsked, screen.No}
	if !slices.Equal(told, want) {
		t.Errorf("told %v, want %v", told, want)
	}
}

func TestYesNoByPointerAndCode(t *testing.T) {
	program(t, theme.Light)
	var told []screen.Answer
	row := NewYesNo("Pregnant?", func(a screen.Answer) { told = append(told, a) })
	open(t, row, 700, 100)
	row.SetAnswer(screen.No)
	test.TapAt(row, row.Spot(2))
	if !slices.Equal(told, []screen.Answer{screen.Yes}) || row.Question() != "Pregnant?" {
		t.Errorf("told %v", told)
	}
	row.Disable()
	row.TypedRune('n')
	test.TapAt(row, row.Spot(0))
	if row.Answer() != screen.Yes {
		t.Error("answered though switched off")
	}
}

func TestYesNoArrowsGoToTheQuestionsBeside(t *testing.T) {
	program(t, theme.Light)
	first, second := NewYesNo("a?", nil), NewYesNo("b?", nil)
	c := open(t, Column(first, second), 700, 200).Canvas()
	c.Focus(first)
	press(first, fyne.KeyDown)
	if c.Focused() != fyne.Focusable(second) {
		t.Fatal("down did not go to the next question")
	}
	press(second, fyne.KeyUp)
	if c.Focused() != fyne.Focusable(first) {
		t.Error("up did not go back")
	}
	press(first, fyne.KeyReturn)
	if c.Focused() != fyne.Focusable(second) {
		t.Error("Enter did not go on")
	}
}

func TestYesNoGoesBelowInANarrowPlace(t *testing.T) {
	program(t, theme.Light)
	row := NewYesNo("Short?", nil)
	if row.HeightFor(besideFrom-1) <= row.HeightFor(besideFrom) {
		t.Error("the answers do not go below the question")
	}
	before := row.HeightFor(400)
	row.SetNote("Because it matters.")
	if row.HeightFor(400) <= before {
		t.Error("the note has no place")
	}
}

package widgets

import (
	"testing"

	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
)

func TestFoldMakesItsContentOnceAndWhenItOpens(t *testing.T) {
	program(t, theme.Light)
	made := 0
	f := NewFold("Sleep", func() fyne.CanvasObject {
		made++
		return NewField("Hours", "")
	})
	window := open(t, f, 600, 400)
	closed := f.HeightFor(600)
	if made != 0 || f.Open() {
		t.Fatal("a closed fold has made its content")
	}
	f.SetOpen(true)
	f.SetOpen(false)
	f.SetOpen(true)
	settle(window.Content())
	if made != 1 || f.HeightFor(600) <= closed {
		t.Errorf("made %d times, height %v of %v", made, f.HeightFor(600), closed)
	}
}

func TestFoldOpensByKeyAndMouseAndTells(t *testing.T) {
	program(t, theme.Light)
	f := NewFold("Sleep", func() fyne.CanvasObject { return NewField("Hours", "") })
	var told []bool
	f.OnToggled = func(open bool) { told = append(told, open) }
	window := open(t, f, 600, 400)
	window.Canvas().Focus(f.FocusTarget())
	for _, step := range []struct {
		key  fyne.KeyName
		open bool
	}{
		{fyne.KeySpace, true}, {fyne.KeyReturn, false}, {fyne.KeyLeft, false}, {fyne.KeyRight, true}, {fyne.KeyRight, true}, {fyne.KeyLeft, false},
	} {
		if press(f.FocusTarget(), step.key); f.Open() != step.open {
			t.Errorf("after %s open is %v", step.key, f.Open())
		}
	}
	f.head.Tapped(&fyne.PointEvent{})
	if !f.Open() || len(told) != 5 {
		t.Errorf("after a click open is %v, told %v", f.Open(), told)
	}
	f.SetOpen(false)
	if len(told) != 5 {
		t.Error("a setter calls back")
	}
}

func TestFoldHeadPassesKeysOn(t *testing.T) {
	program(t, theme.Light)
	first := NewFold("One", func() fyne.CanvasObject { return NewText("a", Body) })
	second := NewFold("Two", func() fyne.CanvasObject { return NewText("b", Body) })
	window := open(t, Column(first, second), 600, 400)
	window.Canvas().Focus(first.FocusTarget())
	if press(first.FocusTarget(), fyne.KeyDown); window.Canvas().Focused() != second.FocusTarget() {
		t.Error("down does not lead to the next head")
	}
	if press(second.FocusTarget(), fyne.KeyUp); window.Canvas().Focused() != first.FocusTarget() {
		t.Error("up does not lead back")
	}
	escaped := false
	HandleEscape(func() { escaped = true })
	t.Cleanup(func() { HandleEscape(nil) })
	if press(first.FocusTarget(), fyne.KeyEscape); !escaped {
		t.Error("Escape does not go back")
	}
}

func TestFoldMarks(t *testing.T) {
	program(t, theme.Light)
	f := NewFold("Sleep", func() fyne.CanvasObject { return NewText("a", Body) })
	for _, c := range []struct {
		mark         FoldMark
		closed, open string
	}{
		{FoldMark{"7 hours", MarkSummary}, "7 hours", ""},
		{FoldMark{"Still needed: hours", MarkWanting}, "Still needed: hours", "Still needed: hours"},
		{FoldMark{"1 to mend", MarkWrong}, "1 to mend", "1 to mend"},
	} {
		f.SetMark(c.mark)
		f.SetOpen(false)
		closed := f.Mark()
		f.SetOpen(true)
		if closed != c.closed || f.Mark() != c.open {
			t.Errorf("%v: closed %q, open %q", c.mark, closed, f.Mark())
		}
	}
}

func TestLineFieldIsAFieldOnOneLine(t *testing.T) {
	program(t, theme.Light)
	f := NewLineField("Sleeping", "0.95")
	f.Check = checkWeight
	open(t, f, 360, 200)
	plain := f.HeightFor(360)
	if plain > theme.Four+theme.Two {
		t.Errorf("it is %v high", plain)
	}
	f.SetText("about average")
	if f.Problem() == "" || f.HeightFor(360) <= plain {
		t.Errorf("problem %q, height %v", f.Problem(), f.HeightFor(360))
	}
	f.SetText("72 kg")
	if f.Understood() != "= 72 kg" || f.Label() != "Sleeping" {
		t.Errorf("%s understood as %q", f.Label(), f.Understood())
	}
}

func TestMeterFills(t *testing.T) {
	program(t, theme.Light)
	m := NewMeter()
	open(t, m, 200, 20)
	for _, c := range []struct {
		share float64
		width float32
	}{{0.25, 50}, {0, 0}, {1, 200}, {1.5, 200}} {
		if m.SetShare(c.share); m.part.Size().Width != c.width || m.part.Hidden != (c.share == 0) {
			t.Errorf("%v: %v wide, hidden %v", c.share, m.part.Size().Width, m.part.Hidden)
		}
	}
	if m.part.FillColor != theme.Colour(theme.Brick) {
		t.Error("too much looks like enough")
	}
}

func TestPageSettlesAtOnce(t *testing.T) {
	program(t, theme.Light)
	f := NewFold("Sleep", func() fyne.CanvasObject { return NewArea("Hours", "", 20) })
	below := NewField("Below", "")
	p := NewPage(Column(f, below))
	open(t, p, 400, 200)
	before := below.Position().Y
	f.SetOpen(true)
	p.Settle()
	if below.Position().Y <= before || p.Scroll().Content.Size().Height <= 200 {
		t.Errorf("what lies below is at %v, was at %v", below.Position().Y, before)
	}
}

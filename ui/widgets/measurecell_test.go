package widgets

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"

	draw "handbreadth/assets/hand"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

// asked is what a cell asked its owner for.
type asked struct {
	counts []unit.Measure
	locks  []bool
	moves  [][2]int
}

func newAsking(kind hand.Kind) (*MeasureCell, *asked) {
	a := &asked{}
	c := NewMeasureCell(kind)
	c.OnSet = func(n unit.Measure) { a.counts = append(a.counts, n) }
	c.OnLock = func(locked bool) { a.locks = append(a.locks, locked) }
	c.OnGo = func(across, down int) { a.moves = append(a.moves, [2]int{across, down}) }
	return c, a
}

func TestMeasureCellKeys(t *testing.T) {
	program(t, theme.Light)
	c, a := newAsking(hand.Palm)
	open(t, c, 180, 100)
	c.Set(1.5, false, "140 g")
	for _, key := range []fyne.KeyName{fyne.KeyUp, fyne.KeyDown, fyne.KeyDelete, fyne.KeyLeft, fyne.KeyRight, fyne.KeyPageUp, fyne.KeyPageDown} {
		c.TypedKey(&fyne.KeyEvent{Name: key})
	}
	for _, r := range "0l+-x7" {
		c.TypedRune(r)
	}
	if want := []unit.Measure{2, 1, 0, 2, 1, 7}; !slices.Equal(a.counts, want) {
		t.Errorf("asked for %v, want %v", a.counts, want)
	}
	if !slices.Equal(a.locks, []bool{true}) {
		t.Errorf("Delete on a free cell, then L: %v", a.locks)
	}
	if want := [][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 1}}; !slices.Equal(a.moves, want) {
		t.Errorf("moves %v", a.moves)
	}
	c.Set(0, true, "")
	before := len(a.counts)
	c.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	c.TypedKey(&fyne.KeyEvent{Name: fyne.KeyBackspace})
	if len(a.counts) != before || a.locks[len(a.locks)-1] {
		t.Errorf("below nought, or not freed: %v %v", a.counts, a.locks)
	}
	if c.Count() != 0 || !c.Locked() {
		t.Error("the cell changed itself: only its owner does")
	}
}

func TestMeasureCellMouse(t *testing.T) {
	program(t, theme.Light)
	c, a := newAsking(hand.Thumb)
	open(t, c, 180, 100)
	c.Set(2, false, "27 ml")
	for _, part := range []string{"less", "more", "count"} {
		c.Tapped(&fyne.PointEvent{Position: c.Spot(part)})
	}
	c.MouseIn(&desktop.MouseEvent{})
	settle(c)
	if shown := textsIn(c); !strings.Contains(shown, "lock") || !strings.Contains(shown, "none") {
		t.Errorf("under the pointer:\n%s", shown)
	}
	c.Tapped(&fyne.PointEvent{Position: c.leave.Position().AddXY(2, 2)})
	c.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(3, -dragStep-2)})
	c.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(0, 1)})
	c.DragEnd()
	if want := []unit.Measure{1.5, 2.5, 0, 2.5}; !slices.Equal(a.counts, want) || !slices.Equal(a.locks, []bool{true}) {
		t.Errorf("asked for %v, locks %v", a.counts, a.locks)
	}
	c.Disable()
	c.Tapped(&fyne.PointEvent{Position: c.Spot("more")})
	c.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(0, -100)})
	c.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	if len(a.counts) != 4 {
		t.Error("a cell that is switched off asks for a count")
	}
}

// As many drawings as there are measures where they fit, else one and the number.
func TestMeasureCellDrawsWhatFits(t *testing.T) {
	program(t, theme.Light)
	for _, c := range []struct {
		count  unit.Measure
		width  float32
		images int
		times  string
	}{
		{0, 180, 0, ""}, {0.5, 180, 1, ""}, {2.5, 180, 3, ""}, {4, 180, 4, ""}, {5, 180, 1, "5 ×"}, {5.5, 180, 2, "5 ×"}, {3, 110, 1, "3 ×"}, {1.5, 110, 2, ""},
	} {
		cell := NewMeasureCell(hand.Fist)
		cell.Set(c.count, false, "")
		open(t, cell, c.width, 100)
		images := 0
		for _, d := range cell.drawn {
			if _, is := d.object.(*canvas.Image); is {
				images++
			}
		}
		if images != c.images || strings.Contains(textsIn(cell), "×") != (c.times != "") || !strings.Contains(textsIn(cell), c.times) {
			t.Errorf("%v in %v: %d drawings, %q", c.count, c.width, images, textsIn(cell))
		}
	}
}

func TestMeasureCellShowsItsLock(t *testing.T) {
	program(t, theme.Light)
	c := NewMeasureCell(hand.CuppedHand)
	open(t, c, 180, 120)
	if c.lock.image.Visible() {
		t.Error("a free cell shows a lock")
	}
	c.Set(1, true, "120 ml, 85 g\nat most 2")
	settle(c)
	if !c.lock.image.Visible() {
		t.Error("a locked cell shows none")
	}
	if c.Note() != "120 ml, 85 g\nat most 2" || !c.Locked() {
		t.Errorf("%q", c.Note())
	}
}

func TestSegments(t *testing.T) {
	program(t, theme.Light)
	var got []int
	s := NewSegments("Size", []string{"light", "usual", "large"}, func(i int) { got = append(got, i) })
	open(t, s, 300, 40)
	s.SetSelected(1)
	for _, key := range []fyne.KeyName{fyne.KeyRight, fyne.KeyRight, fyne.KeyHome, fyne.KeyLeft, fyne.KeyEnd, fyne.KeySpace} {
		s.TypedKey(&fyne.KeyEvent{Name: key})
	}
	s.Tapped(&fyne.PointEvent{Position: s.Spot(1)})
	s.Tapped(&fyne.PointEvent{Position: fyne.NewPos(1, 1)})
	if want := []int{2, 0, 2, 0, 1}; !slices.Equal(got, want) || s.Selected() != 1 {
		t.Errorf("chosen %v, want %v", got, want)
	}
	s.Disable()
	s.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	if s.Selected() != 1 {
		t.Error("a choice that is switched off chooses")
	}
}

// The lines lie where the drawing has the lengths: the breadth across, both
// others upright, that of the hand the longest and outside.
func TestHandTapeMarksTheLengths(t *testing.T) {
	program(t, theme.Light)
	tape := NewHandTape(240)
	open(t, tape, 200, 240)
	line := func(i int) *canvas.Line { return tape.lines[linesOfLength*i] }
	breadth, palm, whole := line(0), line(1), line(2)
	if breadth.Position1.Y != breadth.Position2.Y || palm.Position1.X != palm.Position2.X || whole.Position1.X <= tape.image.Size().Width {
		t.Errorf("%v %v %v", breadth, palm, whole)
	}
	long := func(l *canvas.Line) float32 {
		return abs(l.Position1.Y-l.Position2.Y) + abs(l.Position1.X-l.Position2.X)
	}
	d := draw.Reference()
	for i, c := range []struct{ got, want float32 }{
		{long(breadth) / long(whole), float32(d.PalmBreadth / d.HandLength)}, {long(palm) / long(whole), float32(d.PalmLength / d.HandLength)},
	} {
		if abs(c.got/c.want-1) > 0.01 {
			t.Errorf("length %d is %v of the hand's, in the hand it is %v", i+1, c.got, c.want)
		}
	}
	before := long(breadth)
	d.PalmBreadth *= 1.2
	tape.SetHand(d)
	settle(tape)
	if long(breadth) <= before {
		t.Error("a broader hand is drawn no broader")
	}
}

func TestHeadedRowsLineUp(t *testing.T) {
	program(t, theme.Light)
	row := func(texts ...string) *fyne.Container {
		var objects []fyne.CanvasObject
		for _, text := range texts {
			objects = append(objects, NewText(text, Body))
		}
		return HeadedRow(100, objects...)
	}
	a, b := row("Meal", "1", "2"), row("A much longer name that wraps", "a longer text that wraps as well", "2")
	open(t, Column(a, b), 320, 200)
	for i := range a.Objects {
		if a.Objects[i].Position().X != b.Objects[i].Position().X {
			t.Errorf("column %d begins at %v and %v", i, a.Objects[i].Position().X, b.Objects[i].Position().X)
		}
	}
	if b.Size().Height <= a.Size().Height || b.Objects[2].Size().Height != b.Size().Height {
		t.Error("a row is not as high as its highest cell")
	}
}

package widgets

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"

	"handbreadth/ui/theme"
)

// plainDrawing is a drawing of one box that counts how often it is placed.
type plainDrawing struct {
	box      *canvas.Rectangle
	arranged int
}

func (d *plainDrawing) Parts() []fyne.CanvasObject     { return []fyne.CanvasObject{d.box} }
func (d *plainDrawing) Recolour()                      { d.box.FillColor = theme.Colour(theme.Tint) }
func (d *plainDrawing) HeightFor(wide float32) float32 { return wide / 2 }
func (d *plainDrawing) LeastWidth() float32            { return 100 }

func (d *plainDrawing) Arrange(size fyne.Size) {
	d.arranged++
	d.box.Resize(size)
}

func TestSurfaceTellsItsOwnerAndDrawsNothingAnew(t *testing.T) {
	program(t, theme.Light)
	d := &plainDrawing{box: newBox()}
	s := NewSurface(d)
	var keys []fyne.KeyName
	var points []fyne.Position
	focus, outs := 0, 0
	s.OnKey = func(key fyne.KeyName) bool { keys = append(keys, key); return key == fyne.KeyLeft }
	s.OnPoint = func(at fyne.Position) { points = append(points, at) }
	s.OnOut = func() { outs++ }
	s.OnTap = func(at fyne.Position) { points = append(points, at) }
	s.OnFocus = func(focused bool) { focus++ }
	button := NewQuietButton("Next", nil)
	w := open(t, Column(s, button), 300, 400)
	if got := s.Size(); got != fyne.NewSize(300, 150) {
		t.Errorf("%v", got)
	}
	before := d.arranged
	at := fyne.NewPos(30, 40)
	s.MouseIn(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}})
	s.MouseOut()
	w.Canvas().Focus(s)
	press(s, fyne.KeyLeft)
	if !s.ring.Visible() || !s.Focused() {
		t.Error("the focus is not shown")
	}
	press(s, fyne.KeyReturn)
	if w.Canvas().Focused() != button {
		t.Error("Enter does not go on")
	}
	if s.ring.Visible() {
		t.Error("the ring stays")
	}
	if d.arranged != before {
		t.Errorf("placed anew %d times", d.arranged-before)
	}
	s.Tapped(&fyne.PointEvent{Position: at})
	if len(keys) != 2 || len(points) != 2 || points[1] != at || outs != 1 || focus != 3 || !s.Focused() {
		t.Errorf("keys %v, points %v, outs %d, focus %d", keys, points, outs, focus)
	}
}

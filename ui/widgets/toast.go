package widgets

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/ui/task"
	"handbreadth/ui/theme"
)

// How long a toast stays. Source: WCAG 2.2, success criterion 2.2.1, asks for
// enough time; 20 seconds is its own figure for reacting to a warning. What can
// be undone stays longer, and a problem stays until it is closed.
const (
	sayFor   = 8 * time.Second
	offerFor = 30 * time.Second
)

// Toast tells what was done, with a button to undo it. [Over] lays it over a
// window's content.
type Toast struct {
	composite
	box          *canvas.Rectangle
	text         *Text
	button, shut *Button
	clock        task.Clock
	stop         func()
	act          func()
	over         *fyne.Container // where it lies; nil until [Over]
}

// NewToast returns a toast that is not shown; a nil clock is the system's.
func NewToast(clock task.Clock) *Toast {
	t := &Toast{box: newBox(), text: NewText("", Body), clock: clock}
	t.button = NewQuietButton("Undo", func() { t.Act() })
	t.shut = NewTextButton("Close", t.Close)
	t.recolor = func() {
		t.box.FillColor, t.box.StrokeColor = theme.Colour(theme.Card), theme.Colour(theme.Ink)
		t.box.StrokeWidth, t.box.CornerRadius = 1, theme.Radius
	}
	line := Ends(t.text, Row(t.button, t.shut))
	body := InsetSides(theme.Two, theme.Unit, theme.Two, theme.Unit, line)
	t.init(t, &fyne.Container{Layout: backLayout{}, Objects: []fyne.CanvasObject{t.box, body}})
	t.Hidden = true
	return t
}

// Text returns what the toast says.
func (t *Toast) Text() string { return t.text.Text() }

// Say tells something that passes by itself.
func (t *Toast) Say(text string) { t.show(text, "", nil, sayFor) }

// Offer tells what was done and offers to undo it, or another act by its label.
func (t *Toast) Offer(text, label string, act func()) { t.show(text, label, act, offerFor) }

// Warn tells a problem; it stays until it is closed.
func (t *Toast) Warn(text string) { t.show(text, "", nil, 0) }

// Act does what is offered and closes; it reports whether something was
// offered. Ctrl+Z of the window may call it.
func (t *Toast) Act() bool {
	act := t.act
	if act == nil {
		return false
	}
	t.Close()
	act()
	return true
}

// Close hides the toast.
func (t *Toast) Close() {
	t.cancel()
	t.act = nil
	t.Hide()
}

func (t *Toast) show(text, label string, act func(), stay time.Duration) {
	t.cancel()
	t.act = act
	t.text.SetText(text)
	t.button.SetText(label)
	t.button.Hidden = act == nil
	if stay > 0 {
		t.stop = task.After(t.clock, stay, t.Close)
	}
	t.Show()
	t.Refresh()
	if t.over != nil {
		relayout(t.over, t.over.Size())
	}
}

func (t *Toast) cancel() {
	if t.stop != nil {
		t.stop()
		t.stop = nil
	}
}

// Over lays a toast over content, low in the middle.
func Over(content fyne.CanvasObject, t *Toast) *fyne.Container {
	box := &fyne.Container{Layout: overLayout{}, Objects: []fyne.CanvasObject{content, t}}
	t.over = box
	return box
}

// overLayout gives the first object the whole place and the second a place at
// the foot.
type overLayout struct{}

func (overLayout) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[0].MinSize() }

func (overLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	place(objects[0], 0, 0, size.Width, size.Height)
	const most = 640
	width := min(most, size.Width-theme.Four)
	height := heightOf(objects[1], width)
	place(objects[1], (size.Width-width)/2, size.Height-height-theme.Three, width, height)
}

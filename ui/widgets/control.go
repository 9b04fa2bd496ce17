package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/theme"
)

// Focuser is a widget that can take the focus, itself or through a part.
type Focuser interface{ FocusTarget() fyne.Focusable }

// FocusOn gives the focus to a widget of this package or to any focusable
// object in a window. It reports whether there was something to focus.
func FocusOn(object fyne.CanvasObject) bool {
	target, ok := object.(fyne.Focusable)
	if f, is := object.(Focuser); is {
		target, ok = f.FocusTarget(), true
	}
	if !ok {
		return false
	}
	return focus(target)
}

func focus(target fyne.Focusable) bool {
	object := target.(fyne.CanvasObject)
	c := canvasOf(object)
	if laidOut := object.Size().Width > 0; c == nil && laidOut {
		c = onlyCanvas()
	}
	if c == nil {
		return false
	}
	c.Focus(target)
	return c.Focused() == target
}

// onlyCanvas returns the canvas of the program's one window. An object that was
// hidden until now belongs to no canvas before it was painted, and can take the
// focus all the same.
func onlyCanvas() fyne.Canvas {
	windows := fyne.CurrentApp().Driver().AllWindows()
	if len(windows) != 1 {
		return nil
	}
	return windows[0].Canvas()
}

// canvasOf returns the window's canvas that an object is on, nil while it is on
// none.
func canvasOf(object fyne.CanvasObject) fyne.Canvas {
	driver := fyne.CurrentApp().Driver()
	if len(driver.AllWindows()) == 0 {
		return nil
	}
	return driver.CanvasForObject(object)
}

// goOn moves the focus to the next widget, goBack to the one before.
func goOn(object fyne.CanvasObject) {
	if c := canvasOf(object); c != nil {
		c.FocusNext()
	}
}

func goBack(object fyne.CanvasObject) {
	if c := canvasOf(object); c != nil {
		c.FocusPrevious()
	}
}

// escape is what Escape does; set by [HandleEscape].
var escape func()

// HandleEscape sets what Escape does while a widget of this package has the
// focus; Fyne gives keys to the focused widget only. Nil does nothing.
func HandleEscape(f func()) { escape = f }

// anywhere is what keys without a modifier do in the whole window; set by
// [HandleKeys].
var anywhere func(key fyne.KeyName) bool

// HandleKeys sets what takes the keys without a modifier that mean something in
// the whole window, such as F1, while a widget of this package has the focus. It
// reports whether it took the key. Nil takes none.
func HandleKeys(f func(key fyne.KeyName) bool) { anywhere = f }

// commonKey handles the keys that mean the same everywhere and reports whether
// it did: those of [HandleKeys], Escape goes back, Enter goes on.
func commonKey(object fyne.CanvasObject, key fyne.KeyName) bool {
	if anywhere != nil && anywhere(key) {
		return true
	}
	switch key {
	case fyne.KeyEscape:
		if escape != nil {
			escape()
		}
	case fyne.KeyReturn, fyne.KeyEnter:
		goOn(object)
	default:
		return false
	}
	return true
}

// control is what every widget that can be used has in common: it takes the
// focus, knows whether the pointer is over it, and can be switched off.
type control struct {
	widget.DisableableWidget
	self    fyne.Widget
	focused bool
	hovered bool
	ring    *canvas.Rectangle
}

// init makes self the widget that the control belongs to.
func (c *control) init(self fyne.Widget) {
	c.self = self
	c.ring = newRing()
	c.ExtendBaseWidget(self)
}

// FocusTarget returns the widget itself.
func (c *control) FocusTarget() fyne.Focusable { return c.self.(fyne.Focusable) }

// Focused reports whether the widget has the focus.
func (c *control) Focused() bool { return c.focused }

// FocusGained shows the focus and brings the widget into view.
func (c *control) FocusGained() {
	c.focused = true
	c.Refresh()
	reveal(c.self)
}

// FocusLost hides the focus.
func (c *control) FocusLost() {
	c.focused = false
	c.Refresh()
}

// TypedRune takes typed characters; most widgets have no use for them.
func (c *control) TypedRune(rune) {}

// MouseIn notes that the pointer is over the widget.
func (c *control) MouseIn(*desktop.MouseEvent) {
	c.hovered = true
	c.Refresh()
}

// MouseMoved follows the pointer.
func (c *control) MouseMoved(*desktop.MouseEvent) {}

// MouseOut notes that the pointer has left.
func (c *control) MouseOut() {
	c.hovered = false
	c.Refresh()
}

// Cursor shows a hand over what can be clicked.
func (c *control) Cursor() desktop.Cursor {
	if c.Disabled() {
		return desktop.DefaultCursor
	}
	return desktop.PointerCursor
}

// takeFocus gives the focus to the widget after a click.
func (c *control) takeFocus() {
	if !c.focused {
		focus(c.FocusTarget())
	}
}

// newRing makes the ring that shows the focus.
func newRing() *canvas.Rectangle {
	ring := newBox()
	ring.StrokeWidth = theme.FocusWidth
	ring.CornerRadius = theme.Radius + ringGap
	ring.Hide()
	return ring
}

// ringGap is how far outside of a widget its ring lies.
const ringGap = theme.FocusWidth + 1

// setRing lays a ring round a box, and shows it or not.
func setRing(ring *canvas.Rectangle, shown bool, x, y, width, height float32) {
	ring.FillColor = nothing
	ring.StrokeColor = theme.Colour(theme.Rust)
	place(ring, x-ringGap, y-ringGap, width+2*ringGap, height+2*ringGap)
	if shown {
		ring.Show()
	} else {
		ring.Hide()
	}
}

// inkOf is the colour of a text that may be switched off.
func inkOf(disabled bool, otherwise fyne.ThemeColorName) fyne.ThemeColorName {
	if disabled {
		return theme.Faint
	}
	return otherwise
}

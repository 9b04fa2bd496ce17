package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"handbreadth/ui/theme"
)

// options is what choices have in common: a label, the boxes, one tab stop and
// a cursor that the ring shows.
type options struct {
	control
	label  *Text
	boxes  []*optionBox
	stack  bool // one below the other, full width
	cursor int
	over   int
	chosen func(index int) bool
	act    func(index int)
}

func (o *options) setUp(self fyne.Widget, label string, list []Option, square bool) {
	o.label = NewText(label, Strong)
	o.over = -1
	for _, option := range list {
		o.stack = o.stack || option.Description != ""
		o.boxes = append(o.boxes, newOptionBox(option, square))
	}
	o.init(self)
}

// Spot returns the middle of an option, from the widget's top left corner.
func (o *options) Spot(index int) fyne.Position {
	b := o.boxes[index]
	return b.at.AddXY(b.size.Width/2, b.size.Height/2)
}

// Tapped acts on the option under the pointer.
func (o *options) Tapped(ev *fyne.PointEvent) {
	if i := o.find(ev.Position); i >= 0 && !o.Disabled() {
		o.takeFocus()
		o.cursor = i
		o.act(i)
		o.Refresh()
	}
}

// MouseMoved follows the pointer over the options.
func (o *options) MouseMoved(ev *desktop.MouseEvent) {
	if i := o.find(ev.Position); i != o.over {
		o.over = i
		o.Refresh()
	}
}

// MouseOut notes that the pointer has left.
func (o *options) MouseOut() {
	o.over = -1
	o.control.MouseOut()
}

// step returns where a key moves the cursor, and false for other keys.
func (o *options) step(key fyne.KeyName) (index int, moved bool) {
	last := len(o.boxes) - 1
	switch key {
	case fyne.KeyLeft, fyne.KeyUp:
		return max(0, o.cursor-1), true
	case fyne.KeyRight, fyne.KeyDown:
		return min(last, o.cursor+1), true
	case fyne.KeyHome:
		return 0, true
	case fyne.KeyEnd:
		return last, true
	}
	return 0, false
}

func (o *options) find(at fyne.Position) int {
	for i, b := range o.boxes {
		if inside(at, b.at, b.size) {
			return i
		}
	}
	return -1
}

// HeightFor returns the height that the widget needs at a width.
func (o *options) HeightFor(width float32) float32 {
	return o.flow(width, false)
}

// CreateRenderer implements fyne.Widget.
func (o *options) CreateRenderer() fyne.WidgetRenderer {
	o.recolor()
	parts := []fyne.CanvasObject{o.label}
	for _, b := range o.boxes {
		parts = append(parts, b.parts()...)
	}
	layout := func(size fyne.Size) { o.layout(size) }
	return &renderer{of: o.self, parts: append(parts, o.ring), min: o.leastSize, layout: layout, recolor: o.recolor}
}

func (o *options) leastSize() fyne.Size {
	const least = 160
	width := min(o.widest(), least)
	wide := o.Size().Width
	if wide == 0 {
		wide = 10000
	}
	return fyne.NewSize(max(width, o.label.MinSize().Width), o.HeightFor(max(width, wide)))
}

func (o *options) widest() float32 {
	width := float32(0)
	for _, b := range o.boxes {
		width = max(width, b.naturalWidth())
	}
	return width
}

func (o *options) layout(size fyne.Size) {
	place(o.label, 0, 0, size.Width, o.label.HeightFor(size.Width))
	o.label.Hidden = o.label.Text() == ""
	o.flow(size.Width, true)
	if len(o.boxes) > 0 {
		b := o.boxes[o.cursor]
		setRing(o.ring, o.focused, b.at.X, b.at.Y, b.size.Width, b.size.Height)
	}
}

// optionGap lies between options, wide enough for the ring.
const optionGap = 6

// flow returns the height of the widget at a width and, where set is true,
// gives each option its place: stacked, or side by side in as many lines as it
// takes.
func (o *options) flow(width float32, set bool) float32 {
	top := float32(0)
	if o.label.Text() != "" {
		top = o.label.HeightFor(width) + theme.Half
	}
	x, y, lineHeight := float32(0), top, float32(0)
	for _, b := range o.boxes {
		w := min(b.naturalWidth(), width)
		if o.stack {
			w = width
		}
		if x > 0 && x+w > width+0.5 {
			x, y, lineHeight = 0, y+lineHeight+optionGap, 0
		}
		h := b.heightFor(w)
		if set {
			b.set(fyne.NewPos(x, y), fyne.NewSize(w, h))
		}
		x += w + optionGap
		lineHeight = max(lineHeight, h)
	}
	return y + lineHeight
}

func (o *options) recolor() {
	o.label.SetColour(inkOf(o.Disabled(), theme.Ink))
	for i, b := range o.boxes {
		b.paint(o.chosen(i), o.hovered && i == o.over, o.Disabled())
	}
}

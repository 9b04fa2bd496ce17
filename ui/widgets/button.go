package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/ui/theme"
)

// buttonKind is how loud a button is.
type buttonKind int

const (
	primaryButton buttonKind = iota
	quietButton
	textButton
)

// Button does something when it is clicked, or on Enter or Space. Its label
// stays on one line.
type Button struct {
	control
	OnTapped func()

	kind  buttonKind
	label *Text
	icon  *icon
	box   *canvas.Rectangle
}

// NewPrimaryButton returns the one button that goes on. The callback may be nil.
func NewPrimaryButton(label string, tapped func()) *Button {
	return newButton(primaryButton, label, tapped)
}

// NewQuietButton returns a button with an outline.
func NewQuietButton(label string, tapped func()) *Button {
	return newButton(quietButton, label, tapped)
}

// NewTextButton returns a button without an outline, for use inside text.
func NewTextButton(label string, tapped func()) *Button {
	return newButton(textButton, label, tapped)
}

func newButton(kind buttonKind, label string, tapped func()) *Button {
	b := &Button{kind: kind, OnTapped: tapped, label: NewLine(label, Strong), box: newBox()}
	b.init(b)
	return b
}

// Text returns the label.
func (b *Button) Text() string { return b.label.Text() }

// SetText changes the label.
func (b *Button) SetText(label string) {
	b.label.SetText(label)
	b.Refresh()
}

// SetIcon sets an icon before the label; "" removes it.
func (b *Button) SetIcon(name IconName) {
	b.icon = nil
	if name != "" {
		b.icon = newIcon(name, theme.Ink, smallIcon())
	}
	b.Refresh()
}

// Tapped is a click.
func (b *Button) Tapped(*fyne.PointEvent) {
	if b.Disabled() {
		return
	}
	b.takeFocus()
	b.act()
}

// TypedKey acts on Enter and Space.
func (b *Button) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		b.act()
	default:
		commonKey(b, key.Name)
	}
}

func (b *Button) act() {
	if !b.Disabled() && b.OnTapped != nil {
		b.OnTapped()
	}
}

// CreateRenderer implements fyne.Widget.
func (b *Button) CreateRenderer() fyne.WidgetRenderer {
	r := &renderer{of: b, min: b.leastSize, layout: b.layout}
	r.recolor = func() {
		b.recolor()
		r.parts = []fyne.CanvasObject{b.box, b.label, b.ring}
		if b.icon != nil {
			r.parts = append(r.parts, b.icon.image)
		}
	}
	r.recolor()
	return r
}

func (b *Button) pad() float32 {
	if b.kind == textButton {
		return theme.Half
	}
	return theme.Two
}

func (b *Button) leastSize() fyne.Size {
	size := b.label.MinSize()
	width := size.Width + 2*b.pad()
	if b.icon != nil {
		width += smallIcon() + theme.Unit
	}
	height := size.Height + 2*theme.Unit
	if b.kind == textButton {
		height = size.Height + theme.Half
	}
	return fyne.NewSize(max(width, theme.Target), max(height, theme.Target))
}

func (b *Button) layout(size fyne.Size) {
	place(b.box, 0, 0, size.Width, size.Height)
	text := b.label.MinSize()
	content := text.Width
	if b.icon != nil {
		content += smallIcon() + theme.Unit
	}
	x := (size.Width - content) / 2
	if b.icon != nil {
		place(b.icon.image, x, (size.Height-smallIcon())/2, smallIcon(), smallIcon())
		x += smallIcon() + theme.Unit
	}
	place(b.label, x, (size.Height-text.Height)/2, text.Width, text.Height)
	setRing(b.ring, b.focused, 0, 0, size.Width, size.Height)
}

func (b *Button) recolor() {
	ink := inkOf(b.Disabled(), theme.Spruce)
	b.box.CornerRadius = theme.Radius
	b.box.FillColor, b.box.StrokeColor, b.box.StrokeWidth = nothing, nothing, 0
	switch {
	case b.kind == primaryButton && !b.Disabled():
		ink = theme.OnSpruce
		b.box.FillColor = theme.Colour(theme.Spruce)
		if b.hovered {
			b.box.FillColor = mix(theme.Colour(theme.Spruce), theme.Colour(theme.Ink), 0.2)
		}
	case b.kind == primaryButton, b.kind == quietButton:
		b.box.FillColor = theme.Colour(theme.Card)
		b.box.StrokeColor, b.box.StrokeWidth = theme.Colour(theme.Edge), 1
		if b.Disabled() {
			b.box.StrokeColor = theme.Colour(theme.Rule)
		}
	}
	if b.hovered && !b.Disabled() && b.kind != primaryButton {
		b.box.FillColor = theme.Colour(theme.Hover)
	}
	b.label.SetColour(ink)
	if b.icon != nil {
		b.icon.setColour(ink)
	}
}

package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/ui/theme"
)

// railWidth is the least width of the rail.
const railWidth float32 = 88

// RailButton is one place of the rail: an icon over its label. The chosen one
// has a tint, a bar at its left and a heavier label.
type RailButton struct {
	control
	OnTapped func()

	icon     *icon
	label    *Text
	box, bar *canvas.Rectangle
	selected bool
}

// NewRailButton returns a rail button. The callback may be nil.
func NewRailButton(label string, name IconName, tapped func()) *RailButton {
	b := &RailButton{
		OnTapped: tapped,
		icon:     newIcon(name, theme.Muted, largeIcon()),
		label:    NewText(label, Small),
		box:      newBox(),
		bar:      newBox(),
	}
	b.label.SetAlign(fyne.TextAlignCenter)
	b.init(b)
	return b
}

// Text returns the label.
func (b *RailButton) Text() string { return b.label.Text() }

// Selected reports whether this is the chosen place.
func (b *RailButton) Selected() bool { return b.selected }

// SetSelected marks the place as chosen or not.
func (b *RailButton) SetSelected(selected bool) {
	if selected != b.selected {
		b.selected = selected
		b.Refresh()
	}
}

// Tapped is a click.
func (b *RailButton) Tapped(*fyne.PointEvent) {
	if !b.Disabled() {
		b.takeFocus()
		b.act()
	}
}

// TypedKey acts on Enter and Space; the arrows go to the places beside.
func (b *RailButton) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		b.act()
	case fyne.KeyDown:
		goOn(b)
	case fyne.KeyUp:
		goBack(b)
	default:
		commonKey(b, key.Name)
	}
}

func (b *RailButton) act() {
	if !b.Disabled() && b.OnTapped != nil {
		b.OnTapped()
	}
}

// HeightFor returns the height that the button needs at a width.
func (b *RailButton) HeightFor(width float32) float32 {
	return theme.Unit + largeIcon() + theme.Half + b.label.HeightFor(width-theme.Unit) + theme.Unit
}

// CreateRenderer implements fyne.Widget.
func (b *RailButton) CreateRenderer() fyne.WidgetRenderer {
	b.recolor()
	return &renderer{
		of: b, parts: []fyne.CanvasObject{b.box, b.bar, b.icon.image, b.label, b.ring},
		min: func() fyne.Size {
			width := max(railWidth-theme.Unit, b.label.MinSize().Width+theme.Unit)
			return fyne.NewSize(width, b.HeightFor(max(width, b.Size().Width)))
		},
		layout: b.layout, recolor: b.recolor,
	}
}

func (b *RailButton) layout(size fyne.Size) {
	place(b.box, 0, 0, size.Width, size.Height)
	place(b.bar, 0, theme.Unit, 3, size.Height-theme.Two)
	place(b.icon.image, (size.Width-largeIcon())/2, theme.Unit, largeIcon(), largeIcon())
	y := theme.Unit + largeIcon() + theme.Half
	place(b.label, theme.Half, y, size.Width-theme.Unit, size.Height-y-theme.Unit)
	setRing(b.ring, b.focused, ringGap, ringGap, size.Width-2*ringGap, size.Height-2*ringGap)
}

func (b *RailButton) recolor() {
	b.box.CornerRadius, b.bar.CornerRadius = theme.Radius, 1.5
	b.box.FillColor, b.bar.FillColor = nothing, nothing
	ink := theme.Muted
	if b.hovered && !b.Disabled() {
		b.box.FillColor = theme.Colour(theme.Hover)
	}
	if b.selected {
		b.box.FillColor = theme.Colour(theme.Tint)
		b.bar.FillColor = theme.Colour(theme.Spruce)
		ink = theme.Ink
	}
	ink = inkOf(b.Disabled(), ink)
	b.icon.setColour(ink)
	b.label.SetColour(ink)
}

// RailItem is one place of a rail.
type RailItem struct {
	Label string
	Icon  IconName
	Name  string // for [Name]; "" registers nothing
}

// Rail is the narrow strip of places at the left of the window.
type Rail struct {
	composite
	OnSelected func(index int)

	buttons  []*RailButton
	selected int
}

// NewRail returns a rail with nothing chosen. The callback may be nil.
func NewRail(items []RailItem, onSelected func(index int)) *Rail {
	r := &Rail{OnSelected: onSelected, selected: -1}
	column := ColumnGap(theme.Half)
	for i, item := range items {
		b := NewRailButton(item.Label, item.Icon, func() { r.choose(i) })
		if item.Name != "" {
			Name(b, item.Name)
		}
		r.buttons = append(r.buttons, b)
		column.Add(b)
	}
	r.init(r, Inset(theme.Half, column))
	return r
}

// Button returns one of the buttons.
func (r *Rail) Button(index int) *RailButton { return r.buttons[index] }

// Selected returns the index of the chosen place, -1 for none.
func (r *Rail) Selected() int { return r.selected }

// Select chooses a place without calling back; -1 chooses none.
func (r *Rail) Select(index int) {
	r.selected = index
	for i, b := range r.buttons {
		b.SetSelected(i == index)
	}
}

func (r *Rail) choose(index int) {
	r.Select(index)
	if r.OnSelected != nil {
		r.OnSelected(index)
	}
}

package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

// Disclosure is a number that opens its derivation in place: a line with the
// label, the value and its range, and below it the steps.
type Disclosure struct {
	composite
	OnToggled func(open bool)

	header *disclosureHeader
	steps  *Derivation
	side   *canvas.Rectangle
	more   *fyne.Container
	inner  *fyne.Container
}

// NewDisclosure returns a closed number without a value.
func NewDisclosure(label string, style unit.Style) *Disclosure {
	d := &Disclosure{steps: NewDerivation(style), side: newBox(), more: Column()}
	d.header = newDisclosureHeader(label, d.toggle)
	d.more.Hidden = true
	d.inner = &fyne.Container{Layout: sideLayout{}, Objects: []fyne.CanvasObject{d.side, Column(d.steps, d.more)}}
	d.inner.Hidden = true
	d.recolor = func() { d.side.FillColor = theme.Colour(theme.Rule) }
	d.init(d, ColumnGap(theme.Unit, d.header, d.inner))
	return d
}

// FocusTarget returns the line, which takes the focus.
func (d *Disclosure) FocusTarget() fyne.Focusable { return d.header }

// Label returns the label.
func (d *Disclosure) Label() string { return d.header.label.Text() }

// Value returns the value as shown.
func (d *Disclosure) Value() string { return d.header.value.Text() }

// SetLabel changes the label.
func (d *Disclosure) SetLabel(label string) {
	d.header.label.SetText(label)
	d.Refresh()
}

// SetValue shows a value and the range below it; the range may be empty.
func (d *Disclosure) SetValue(value, span string) {
	d.header.value.SetText(value)
	d.header.span.SetText(span)
	d.header.Refresh()
	d.Refresh()
}

// SetSteps sets the derivation.
func (d *Disclosure) SetSteps(steps []derive.Step) {
	d.steps.SetSteps(steps)
	d.Refresh()
}

// SetMore sets something below the derivation, such as what the other equations
// say; nil removes it.
func (d *Disclosure) SetMore(object fyne.CanvasObject) {
	d.more.Objects = nil
	if object != nil {
		d.more.Objects = []fyne.CanvasObject{object}
	}
	d.more.Hidden = object == nil
	d.Refresh()
}

// SetProminent shows the value large, for the one number that matters most.
func (d *Disclosure) SetProminent(prominent bool) {
	style := Strong
	if prominent {
		style = Display
	}
	d.header.value.SetStyle(style)
	d.Refresh()
}

// Open reports whether the derivation is shown.
func (d *Disclosure) Open() bool { return !d.inner.Hidden }

// SetOpen shows or hides the derivation, without calling back.
func (d *Disclosure) SetOpen(open bool) {
	d.inner.Hidden = !open
	d.header.open = open
	d.header.Refresh()
	d.Refresh()
}

func (d *Disclosure) toggle() {
	d.SetOpen(!d.Open())
	if d.OnToggled != nil {
		d.OnToggled(d.Open())
	}
}

// sideLayout draws a line at the left of an object that is set in from it.
type sideLayout struct{}

const sideInset = theme.Two + theme.Half

func (sideLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[1].MinSize().AddWidthHeight(sideInset, theme.Unit)
}

func (sideLayout) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	return heightOf(objects[1], width-sideInset) + theme.Unit
}

func (sideLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	place(objects[0], 7, 0, 2, size.Height-theme.Unit)
	place(objects[1], sideInset, 0, size.Width-sideInset, size.Height-theme.Unit)
}

// disclosureHeader is the line that opens and closes.
type disclosureHeader struct {
	control
	label, value, span *Text
	chevron            *icon
	box                *canvas.Rectangle
	open               bool
	toggle             func()
}

func newDisclosureHeader(label string, toggle func()) *disclosureHeader {
	h := &disclosureHeader{
		label: NewText(label, Body), value: NewLine("", Strong), span: NewText("", Small),
		chevron: newIcon(IconOpen, theme.Muted, smallIcon()), box: newBox(), toggle: toggle,
	}
	h.span.SetAlign(fyne.TextAlignTrailing)
	h.init(h)
	return h
}

// Tapped opens or closes.
func (h *disclosureHeader) Tapped(*fyne.PointEvent) {
	h.takeFocus()
	h.toggle()
}

// TypedKey opens and closes with Enter and Space; right opens, left closes.
func (h *disclosureHeader) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		h.toggle()
	case fyne.KeyRight:
		if !h.open {
			h.toggle()
		}
	case fyne.KeyLeft:
		if h.open {
			h.toggle()
		}
	case fyne.KeyDown:
		goOn(h)
	case fyne.KeyUp:
		goBack(h)
	default:
		commonKey(h, key.Name)
	}
}

// HeightFor returns the height that the line needs at a width.
func (h *disclosureHeader) HeightFor(width float32) float32 { return h.arrange(width, 0) }

// CreateRenderer implements fyne.Widget.
func (h *disclosureHeader) CreateRenderer() fyne.WidgetRenderer {
	h.recolor()
	return &renderer{
		of: h, parts: []fyne.CanvasObject{h.box, h.chevron.image, h.label, h.value, h.span, h.ring},
		min: func() fyne.Size {
			width := smallIcon() + theme.Unit + h.label.MinSize().Width + theme.Unit + h.value.MinSize().Width
			width = max(width, smallIcon()+theme.Unit+h.span.MinSize().Width)
			return fyne.NewSize(width, h.HeightFor(max(width, h.Size().Width)))
		},
		layout:  func(size fyne.Size) { h.arrange(size.Width, size.Height) },
		recolor: h.recolor,
	}
}

// arrange returns the height of the line and, where a height is given, places
// its parts.
func (h *disclosureHeader) arrange(width, height float32) float32 {
	left := smallIcon() + theme.Unit
	value := h.value.MinSize()
	labelWidth := width - left - theme.Unit - value.Width
	labelHeight := h.label.HeightFor(labelWidth)
	first := max(labelHeight, value.Height)
	spanHeight := float32(0)
	if h.span.Text() != "" {
		spanHeight = h.span.HeightFor(width - left)
	}
	const above = theme.Half
	if height > 0 {
		place(h.box, -theme.Half, 0, width+theme.Unit, height)
		base := above + first
		place(h.label, left, base-labelHeight-baselineGap(h.value.style), labelWidth, labelHeight)
		if labelHeight >= first {
			place(h.label, left, above, labelWidth, labelHeight)
		}
		place(h.chevron.image, 0, h.label.Position().Y+(h.label.lineHeight()-smallIcon())/2, smallIcon(), smallIcon())
		place(h.value, width-value.Width, base-value.Height, value.Width, value.Height)
		place(h.span, left, base, width-left, spanHeight)
		setRing(h.ring, h.focused, 1-theme.Half, 0, width+2*(theme.Half-1), height)
	}
	return max(above+first+spanHeight+above, theme.Target)
}

// baselineGap is how much lower the foot of a large text lies than that of the
// label beside it, so that both stand on one line.
func baselineGap(value TextStyle) float32 {
	if value == Display {
		return (Display.measure("Hg").Height - Body.measure("Hg").Height) * 0.22
	}
	return 0
}

func (h *disclosureHeader) recolor() {
	h.box.CornerRadius = theme.Radius
	h.box.FillColor = nothing
	if h.hovered {
		h.box.FillColor = theme.Colour(theme.Hover)
	}
	name := IconOpen
	if h.open {
		name = IconOpened
	}
	h.chevron.set(name, theme.Muted)
}

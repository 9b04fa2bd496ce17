package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/theme"
)

// Inset sets an object in from all sides.
func Inset(pad float32, object fyne.CanvasObject) *fyne.Container {
	return InsetSides(pad, pad, pad, pad, object)
}

// InsetSides sets an object in from each side by its own distance.
func InsetSides(left, top, right, bottom float32, object fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: insetLayout{left, top, right, bottom}, Objects: []fyne.CanvasObject{object}}
}

type insetLayout struct{ left, top, right, bottom float32 }

func (l insetLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().AddWidthHeight(l.left+l.right, l.top+l.bottom)
}

func (l insetLayout) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	return heightOf(objects[0], width-l.left-l.right) + l.top + l.bottom
}

func (l insetLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	place(objects[0], l.left, l.top, size.Width-l.left-l.right, size.Height-l.top-l.bottom)
}

// Narrow keeps an object no wider than a width, at the left, so that lines of
// text stay readable in a wide window.
func Narrow(most float32, object fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: narrowLayout(most), Objects: []fyne.CanvasObject{object}}
}

type narrowLayout float32

func (l narrowLayout) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[0].MinSize() }

func (l narrowLayout) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	return heightOf(objects[0], min(width, float32(l)))
}

func (l narrowLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	place(objects[0], 0, 0, min(size.Width, float32(l)), size.Height)
}

// Ends sets one object at the left and one at the right of a line; the left one
// takes what the right one leaves.
func Ends(left, right fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: endsLayout{}, Objects: []fyne.CanvasObject{left, right}}
}

type endsLayout struct{}

func (endsLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	left, right := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(left.Width+theme.Unit+right.Width, max(left.Height, right.Height))
}

// widths shares a width: the right object has what it needs on one line, unless
// the left one would then have less than its least.
func (endsLayout) widths(objects []fyne.CanvasObject, width float32) (left, right float32) {
	least := objects[1].MinSize().Width
	right = max(least, min(wideWidth(objects[1]), width-theme.Unit-objects[0].MinSize().Width))
	return width - theme.Unit - right, right
}

func (l endsLayout) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	left, right := l.widths(objects, width)
	return max(heightOf(objects[0], left), heightOf(objects[1], right))
}

func (l endsLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	left, right := l.widths(objects, size.Width)
	leftHeight, rightHeight := heightOf(objects[0], left), heightOf(objects[1], right)
	place(objects[0], 0, max(0, (size.Height-leftHeight)/2), left, leftHeight)
	place(objects[1], size.Width-right, max(0, (size.Height-rightHeight)/2), right, rightHeight)
}

// Hairline is a thin line between parts.
type Hairline struct {
	widget.BaseWidget
	line *canvas.Rectangle
}

// NewHairline returns a line across the full width.
func NewHairline() *Hairline {
	h := &Hairline{line: newBox()}
	h.ExtendBaseWidget(h)
	return h
}

// CreateRenderer implements fyne.Widget.
func (h *Hairline) CreateRenderer() fyne.WidgetRenderer {
	recolor := func() { h.line.FillColor = theme.Colour(theme.Rule) }
	recolor()
	return &renderer{
		of: h, parts: []fyne.CanvasObject{h.line},
		min:     func() fyne.Size { return fyne.NewSize(1, 1) },
		layout:  func(size fyne.Size) { place(h.line, 0, (size.Height-1)/2, size.Width, 1) },
		recolor: recolor,
	}
}

package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// renderer draws a widget from functions. Refresh recolours, lays out anew and
// repaints, so that a change of text or of theme needs nothing more.
type renderer struct {
	of      fyne.Widget
	parts   []fyne.CanvasObject
	min     func() fyne.Size
	layout  func(fyne.Size)
	recolor func() // may be nil
	gone    func() // may be nil; called when the widget leaves the window
}

var _ fyne.WidgetRenderer = (*renderer)(nil)

func (r *renderer) Objects() []fyne.CanvasObject { return r.parts }
func (r *renderer) MinSize() fyne.Size           { return r.min() }
func (r *renderer) Layout(size fyne.Size)        { r.layout(size) }

func (r *renderer) Refresh() {
	if r.recolor != nil {
		r.recolor()
	}
	r.layout(r.of.Size())
	canvas.Refresh(r.of)
}

func (r *renderer) Destroy() {
	if r.gone != nil {
		r.gone()
	}
}

// tall is an object whose height depends on its width.
type tall interface{ HeightFor(width float32) float32 }

// heightOf returns the height that an object needs at a width.
func heightOf(object fyne.CanvasObject, width float32) float32 {
	switch o := object.(type) {
	case tall:
		return o.HeightFor(width)
	case *fyne.Container:
		if l, ok := o.Layout.(tallLayout); ok {
			return l.heightFor(o.Objects, width)
		}
	}
	return object.MinSize().Height
}

// tallLayout is a layout whose height depends on its width.
type tallLayout interface {
	heightFor(objects []fyne.CanvasObject, width float32) float32
}

// place moves and resizes an object.
func place(object fyne.CanvasObject, x, y, width, height float32) {
	object.Move(fyne.NewPos(x, y))
	object.Resize(fyne.NewSize(width, height))
}

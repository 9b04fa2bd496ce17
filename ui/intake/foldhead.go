package intake

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// foldHeadRenderer draws the head of a fold.
type foldHeadRenderer struct{ head *foldHead }

func (r *foldHeadRenderer) Objects() []fyne.CanvasObject {
	h := r.head
	return []fyne.CanvasObject{h.back, h.chevron, h.title, h.mark, h.ring}
}

func (r *foldHeadRenderer) MinSize() fyne.Size {
	h := r.head
	width := foldInset + h.title.MinSize().Width + theme.Two + theme.Four
	return fyne.NewSize(width, h.HeightFor(max(width, h.Size().Width)))
}

func (r *foldHeadRenderer) Layout(size fyne.Size) {
	h := r.head
	put(h.back, -theme.Half, theme.Half, size.Width+theme.Unit, size.Height-theme.Unit)
	put(h.ring, -theme.Half, theme.Half, size.Width+theme.Unit, size.Height-theme.Unit)
	title := h.title.MinSize()
	y := (size.Height - title.Height) / 2
	put(h.chevron, 0, (size.Height-chevron)/2, chevron, chevron)
	put(h.title, foldInset, y, title.Width, title.Height)
	width := h.markWidth(size.Width)
	height := h.mark.HeightFor(width)
	put(h.mark, size.Width-width, (size.Height-height)/2, width, height)
}

func (r *foldHeadRenderer) Refresh() {
	r.paint()
	r.Layout(r.head.Size())
	canvas.Refresh(r.head)
}

func (r *foldHeadRenderer) Destroy() {}

func (r *foldHeadRenderer) paint() {
	h := r.head
	h.back.CornerRadius, h.back.FillColor = theme.Radius, color.Transparent
	if h.hovered {
		h.back.FillColor = theme.Colour(theme.Hover)
	}
	h.ring.FillColor, h.ring.StrokeColor = color.Transparent, theme.Colour(theme.Rust)
	h.ring.StrokeWidth, h.ring.CornerRadius = theme.FocusWidth, theme.Radius
	h.ring.Hidden = !h.focused
	name := widgets.IconOpen
	if h.open {
		name = widgets.IconOpened
	}
	if icon := widgets.Icon(name, theme.Muted); icon != h.chevron.Resource {
		h.chevron.Resource = icon
		h.chevron.Refresh()
	}
}

func put(object fyne.CanvasObject, x, y, width, height float32) {
	object.Move(fyne.NewPos(x, y))
	object.Resize(fyne.NewSize(width, height))
}

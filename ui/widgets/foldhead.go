package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/ui/theme"
)

// foldHead is the line that opens and closes a fold.
type foldHead struct {
	control
	title, mark *Text
	chevron     *icon
	back        *canvas.Rectangle
	open        bool
	toggle      func()
}

func newFoldHead(title string, toggle func()) *foldHead {
	h := &foldHead{
		title: NewLine(title, Title), mark: NewText("", Small),
		chevron: newIcon(IconOpen, theme.Muted, smallIcon()), back: newBox(), toggle: toggle,
	}
	h.mark.SetAlign(fyne.TextAlignTrailing)
	h.init(h)
	return h
}

// foldInset is where the title begins, and the content below it.
func foldInset() float32 { return smallIcon() + theme.Unit }

// Tapped opens or closes.
func (h *foldHead) Tapped(*fyne.PointEvent) {
	h.takeFocus()
	h.toggle()
}

// TypedKey opens and closes with Enter and Space; right opens, left closes, up
// and down go to what lies beside.
func (h *foldHead) TypedKey(key *fyne.KeyEvent) {
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

// HeightFor returns the height that the head needs at a width.
func (h *foldHead) HeightFor(width float32) float32 {
	return max(h.title.MinSize().Height, h.mark.HeightFor(h.markWidth(width))) + 2*theme.Unit
}

// markWidth is what the title leaves.
func (h *foldHead) markWidth(width float32) float32 {
	return max(theme.Four, width-foldInset()-h.title.MinSize().Width-theme.Two)
}

// CreateRenderer implements fyne.Widget.
func (h *foldHead) CreateRenderer() fyne.WidgetRenderer {
	h.recolor()
	return &renderer{
		of: h, parts: []fyne.CanvasObject{h.back, h.chevron.image, h.title, h.mark, h.ring},
		min: func() fyne.Size {
			width := foldInset() + h.title.MinSize().Width + theme.Two + theme.Four
			return fyne.NewSize(width, h.HeightFor(max(width, h.Size().Width)))
		},
		layout: h.layout, recolor: h.recolor,
	}
}

func (h *foldHead) layout(size fyne.Size) {
	title := h.title.MinSize()
	place(h.back, -theme.Half, theme.Half, size.Width+theme.Unit, size.Height-theme.Unit)
	place(h.chevron.image, 0, (size.Height-smallIcon())/2, smallIcon(), smallIcon())
	place(h.title, foldInset(), (size.Height-title.Height)/2, title.Width, title.Height)
	width := h.markWidth(size.Width)
	height := h.mark.HeightFor(width)
	place(h.mark, size.Width-width, (size.Height-height)/2, width, height)
	setRing(h.ring, h.focused, 0, theme.Half+1, size.Width, size.Height-theme.Unit-2)
}

func (h *foldHead) recolor() {
	h.back.CornerRadius, h.back.FillColor = theme.Radius, nothing
	if h.hovered {
		h.back.FillColor = theme.Colour(theme.Hover)
	}
	name := IconOpen
	if h.open {
		name = IconOpened
	}
	h.chevron.set(name, theme.Muted)
}

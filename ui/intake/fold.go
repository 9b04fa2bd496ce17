package intake

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// fold is a part of the form under a head that opens and closes it.
type fold struct {
	head    *foldHead
	content *fyne.Container
	object  *fyne.Container
	mark    mark
	settle  func() // lays out anew after the height changed
}

func newFold(title string, content fyne.CanvasObject, settle func(), reveal func(fyne.CanvasObject)) *fold {
	f := &fold{settle: settle}
	f.head = newFoldHead(title, f.toggle, reveal)
	f.content = widgets.InsetSides(foldInset, theme.Half, 0, theme.Two, content)
	f.object = widgets.ColumnGap(0, widgets.NewHairline(), f.head, f.content)
	return f
}

func (f *fold) isOpen() bool { return f.head.open }

func (f *fold) setOpen(open bool) {
	f.head.open = open
	f.content.Hidden = !open
	f.showMark()
	f.settle()
}

func (f *fold) toggle() { f.setOpen(!f.head.open) }

// setMark says what is missing, wrong or filled in.
func (f *fold) setMark(m mark) {
	f.mark = m
	f.showMark()
}

// showMark shows the mark; what was filled in stands below while it is open.
func (f *fold) showMark() {
	text := f.mark.Text
	if f.head.open && f.mark.Kind == summary {
		text = ""
	}
	colour := theme.Muted
	if f.mark.Kind == wrong {
		colour = theme.Brick
	}
	f.head.mark.SetColour(colour)
	f.head.mark.SetText(text)
	f.head.Refresh()
}

const (
	chevron   float32 = 16
	foldInset         = chevron + theme.Unit
)

// foldHead is the line that opens and closes a fold.
type foldHead struct {
	widget.BaseWidget
	title, mark *widgets.Text
	chevron     *canvas.Image
	back, ring  *canvas.Rectangle
	open        bool
	hovered     bool
	focused     bool
	toggle      func()
	reveal      func(fyne.CanvasObject)
}

func newFoldHead(title string, toggle func(), reveal func(fyne.CanvasObject)) *foldHead {
	h := &foldHead{
		title: widgets.NewLine(title, widgets.Title), mark: widgets.NewText("", widgets.Small),
		chevron: canvas.NewImageFromResource(nil), back: canvas.NewRectangle(color.Transparent), ring: canvas.NewRectangle(color.Transparent),
		open: true, toggle: toggle, reveal: reveal,
	}
	h.mark.SetAlign(fyne.TextAlignTrailing)
	h.chevron.FillMode = canvas.ImageFillContain
	h.ExtendBaseWidget(h)
	return h
}

// Tapped opens or closes.
func (h *foldHead) Tapped(*fyne.PointEvent) {
	if c := canvasOf(h); c != nil {
		c.Focus(h)
	}
	h.toggle()
}

// FocusGained shows the focus and brings the head into view.
func (h *foldHead) FocusGained() {
	h.focused = true
	h.Refresh()
	h.reveal(h)
}

// FocusLost hides the focus.
func (h *foldHead) FocusLost() {
	h.focused = false
	h.Refresh()
}

// TypedRune takes no characters.
func (h *foldHead) TypedRune(rune) {}

// TypedKey opens and closes with Enter and Space; right opens, left closes, up
// and down go to the fields beside. Other keys are the window's.
func (h *foldHead) TypedKey(key *fyne.KeyEvent) {
	c := canvasOf(h)
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
		c.FocusNext()
	case fyne.KeyUp:
		c.FocusPrevious()
	default:
		if window := c.OnTypedKey(); window != nil {
			window(key)
		}
	}
}

// MouseIn notes that the pointer is over the head.
func (h *foldHead) MouseIn(*desktop.MouseEvent) {
	h.hovered = true
	h.Refresh()
}

// MouseMoved follows the pointer.
func (h *foldHead) MouseMoved(*desktop.MouseEvent) {}

// MouseOut notes that the pointer has left.
func (h *foldHead) MouseOut() {
	h.hovered = false
	h.Refresh()
}

// Cursor shows a hand.
func (h *foldHead) Cursor() desktop.Cursor { return desktop.PointerCursor }

// HeightFor returns the height that the head needs at a width.
func (h *foldHead) HeightFor(width float32) float32 {
	title := h.title.MinSize()
	return max(title.Height, h.mark.HeightFor(h.markWidth(width))) + 2*theme.Unit
}

func (h *foldHead) markWidth(width float32) float32 {
	return max(theme.Four, width-foldInset-h.title.MinSize().Width-theme.Two)
}

// CreateRenderer implements fyne.Widget.
func (h *foldHead) CreateRenderer() fyne.WidgetRenderer {
	r := &foldHeadRenderer{head: h}
	r.paint()
	return r
}

func canvasOf(object fyne.CanvasObject) fyne.Canvas {
	return fyne.CurrentApp().Driver().CanvasForObject(object)
}

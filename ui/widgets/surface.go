package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"

	"handbreadth/ui/theme"
)

// Drawn is what a [Surface] shows. Its parts are made once; after that they are
// coloured and placed.
type Drawn interface {
	Parts() []fyne.CanvasObject
	// Recolour gives the parts the colours of the look in force.
	Recolour()
	// Arrange gives each part its place.
	Arrange(size fyne.Size)
	// HeightFor returns the height that the drawing needs at a width.
	HeightFor(width float32) float32
	LeastWidth() float32
}

// Surface is a drawing that can be used: it takes the focus and shows it, and
// tells its owner of keys and of the pointer. Neither makes it draw anew; the
// owner moves what moves.
type Surface struct {
	control
	// OnKey takes a key and reports whether it did.
	OnKey func(key fyne.KeyName) bool
	// OnPoint is told where the pointer is over the drawing, and OnOut that it
	// has left.
	OnPoint func(at fyne.Position)
	OnOut   func()
	// OnTap is told of a click, after the focus was taken.
	OnTap func(at fyne.Position)
	// OnFocus is told when the focus comes and goes.
	OnFocus func(focused bool)

	drawn Drawn
}

// NewSurface returns a surface that shows a drawing.
func NewSurface(drawn Drawn) *Surface {
	s := &Surface{drawn: drawn}
	s.init(s)
	return s
}

// Tapped takes the focus and tells of the click.
func (s *Surface) Tapped(ev *fyne.PointEvent) {
	s.takeFocus()
	if s.OnTap != nil {
		s.OnTap(ev.Position)
	}
}

// TypedKey asks the owner first.
func (s *Surface) TypedKey(key *fyne.KeyEvent) {
	if s.OnKey == nil || !s.OnKey(key.Name) {
		commonKey(s, key.Name)
	}
}

// FocusGained shows the ring and brings the drawing into view.
func (s *Surface) FocusGained() {
	s.focused = true
	s.showFocus()
	reveal(s)
}

// FocusLost hides the ring.
func (s *Surface) FocusLost() {
	s.focused = false
	s.showFocus()
}

func (s *Surface) showFocus() {
	s.setRing(s.Size())
	canvas.Refresh(s.ring)
	if s.OnFocus != nil {
		s.OnFocus(s.focused)
	}
}

// MouseIn follows the pointer.
func (s *Surface) MouseIn(ev *desktop.MouseEvent) { s.MouseMoved(ev) }

// MouseMoved follows the pointer.
func (s *Surface) MouseMoved(ev *desktop.MouseEvent) {
	if s.OnPoint != nil {
		s.OnPoint(ev.Position)
	}
}

// MouseOut notes that the pointer has left.
func (s *Surface) MouseOut() {
	if s.OnOut != nil {
		s.OnOut()
	}
}

// Cursor shows a cross, as for reading off a place.
func (s *Surface) Cursor() desktop.Cursor { return desktop.CrosshairCursor }

// HeightFor returns the height that the drawing needs at a width.
func (s *Surface) HeightFor(width float32) float32 { return s.drawn.HeightFor(width) }

// CreateRenderer implements fyne.Widget.
func (s *Surface) CreateRenderer() fyne.WidgetRenderer {
	s.drawn.Recolour()
	return &renderer{
		of: s, parts: append(s.drawn.Parts(), s.ring),
		min: func() fyne.Size {
			width := s.drawn.LeastWidth()
			return fyne.NewSize(width, s.HeightFor(max(width, s.Size().Width)))
		},
		layout: func(size fyne.Size) {
			s.drawn.Arrange(size)
			s.setRing(size)
		},
		recolor: s.drawn.Recolour,
	}
}

func (s *Surface) setRing(size fyne.Size) {
	setRing(s.ring, s.focused, 0, 0, size.Width, size.Height)
	s.ring.CornerRadius = theme.Radius + ringGap
}

package handout

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// The choices keep their width; the pages take the rest, where that is enough
// to see something, else they stand below.
const (
	choiceWidth  float32 = 330
	leastPreview float32 = 400
)

// sides sets the card of choices beside the pages.
type sides struct {
	widget.BaseWidget
	left, right *widgets.Card
}

func newSides(left, right *widgets.Card) *sides {
	s := &sides{left: left, right: right}
	s.ExtendBaseWidget(s)
	return s
}

// HeightFor returns the height that both need at a width.
func (s *sides) HeightFor(width float32) float32 { return s.arrange(width, false) }

// Parts returns what the widget is made of.
func (s *sides) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{s.left, s.right} }

// arrange returns the height and, where set is true, gives each its place.
func (s *sides) arrange(width float32, set bool) float32 {
	leftWidth, rightWidth, x, y := width, width, float32(0), float32(0)
	beside := s.right.Visible() && width >= choiceWidth+theme.Two+leastPreview
	if beside {
		leftWidth, x = choiceWidth, choiceWidth+theme.Two
		rightWidth = width - x
	}
	leftHeight := s.left.HeightFor(leftWidth)
	if !beside {
		y = leftHeight + theme.Two
	}
	rightHeight := s.right.HeightFor(rightWidth)
	if set {
		s.left.Resize(fyne.NewSize(leftWidth, leftHeight))
		s.right.Move(fyne.NewPos(x, y))
		s.right.Resize(fyne.NewSize(rightWidth, rightHeight))
	}
	if !s.right.Visible() {
		return leftHeight
	}
	return max(leftHeight, y+rightHeight)
}

// CreateRenderer implements fyne.Widget.
func (s *sides) CreateRenderer() fyne.WidgetRenderer { return &sidesRenderer{s} }

type sidesRenderer struct{ s *sides }

func (r *sidesRenderer) Destroy()                     {}
func (r *sidesRenderer) Objects() []fyne.CanvasObject { return r.s.Parts() }
func (r *sidesRenderer) Layout(size fyne.Size)        { r.s.arrange(size.Width, true) }

func (r *sidesRenderer) MinSize() fyne.Size {
	width := max(r.s.left.MinSize().Width, r.s.right.MinSize().Width)
	return fyne.NewSize(width, r.s.HeightFor(max(width, r.s.Size().Width)))
}

func (r *sidesRenderer) Refresh() {
	r.Layout(r.s.Size())
	canvas.Refresh(r.s)
}

package widgets

import (
	"math"

	"fyne.io/fyne/v2"

	"handbreadth/domain/unit"
)

// BalanceSlider sets the carbohydrate-fat balance: how much of the energy left
// after protein goes to carbohydrate. The fat floor stands in it as a wall at
// which the thumb stops. Left and right move by 1, Page keys by 5, Home and End
// go to the ends.
type BalanceSlider struct {
	control
	OnChanged func(balance unit.Percent)

	wish  unit.Percent // where it was put; kept while a wall is in the way
	wall  unit.Percent
	why   string
	style unit.Style
	draw  *balanceDrawing
}

// The range of the slider and its steps.
const (
	balanceMost unit.Percent = 100
	smallStep   unit.Percent = 1
	largeStep   unit.Percent = 5
)

// NewBalanceSlider returns a slider in the middle without a wall. The callback
// may be nil.
func NewBalanceSlider(onChanged func(balance unit.Percent)) *BalanceSlider {
	s := &BalanceSlider{OnChanged: onChanged, wish: balanceMost / 2, wall: balanceMost}
	s.draw = newBalanceDrawing()
	s.init(s)
	return s
}

// Value returns the balance: what was wished, or the wall where it is lower.
func (s *BalanceSlider) Value() unit.Percent { return min(s.wish, s.wall) }

// AtWall reports whether the wall holds the thumb.
func (s *BalanceSlider) AtWall() bool { return s.wall < balanceMost && s.wish >= s.wall }

// SetValue sets the balance without calling back.
func (s *BalanceSlider) SetValue(balance unit.Percent) {
	s.wish = min(max(balance, 0), balanceMost)
	s.Refresh()
}

// SetWall sets where the wall stands and the words that say why. A wall at 100
// is none. What was wished is kept: when the wall moves away, the thumb goes
// there again. It does not call back.
func (s *BalanceSlider) SetWall(wall unit.Percent, why string) {
	s.wall, s.why = min(max(wall, 0), balanceMost), why
	s.Refresh()
}

// SetStyle changes how numbers are written.
func (s *BalanceSlider) SetStyle(style unit.Style) {
	s.style = style
	s.Refresh()
}

// Caption returns the line below the slider: why the thumb stops, and where.
func (s *BalanceSlider) Caption() string {
	switch {
	case s.wall >= balanceMost:
		return ""
	case s.AtWall():
		return "The fat floor stops here: " + s.why
	}
	return "Fat floor at the wall: " + s.why
}

// Tapped moves the thumb to the pointer.
func (s *BalanceSlider) Tapped(ev *fyne.PointEvent) {
	if !s.Disabled() {
		s.takeFocus()
		s.move(s.draw.balanceAt(ev.Position.X, s.Size().Width))
	}
}

// Dragged moves the thumb with the pointer.
func (s *BalanceSlider) Dragged(ev *fyne.DragEvent) {
	if !s.Disabled() {
		s.takeFocus()
		s.move(s.draw.balanceAt(ev.Position.X, s.Size().Width))
	}
}

// DragEnd ends a drag; the slider is where it was moved to.
func (s *BalanceSlider) DragEnd() {}

// TypedKey moves the thumb.
func (s *BalanceSlider) TypedKey(key *fyne.KeyEvent) {
	at := s.Value()
	switch key.Name {
	case fyne.KeyLeft, fyne.KeyDown:
		s.move(at - smallStep)
	case fyne.KeyRight, fyne.KeyUp:
		s.move(at + smallStep)
	case fyne.KeyPageDown:
		s.move(at - largeStep)
	case fyne.KeyPageUp:
		s.move(at + largeStep)
	case fyne.KeyHome:
		s.move(0)
	case fyne.KeyEnd:
		s.move(balanceMost)
	case fyne.KeySpace:
		return
	default:
		commonKey(s, key.Name)
	}
}

// move sets the thumb to whole percents, at the wall at most, and tells it when
// it has moved.
func (s *BalanceSlider) move(to unit.Percent) {
	if s.Disabled() {
		return
	}
	before := s.Value()
	to = unit.Percent(math.Round(float64(min(max(to, 0), balanceMost))))
	s.wish = min(to, s.wall)
	s.Refresh()
	if s.Value() != before && s.OnChanged != nil {
		s.OnChanged(s.Value())
	}
}

// HeightFor returns the height that the slider needs at a width.
func (s *BalanceSlider) HeightFor(width float32) float32 { return s.draw.arrange(s, width, false) }

// CreateRenderer implements fyne.Widget.
func (s *BalanceSlider) CreateRenderer() fyne.WidgetRenderer {
	s.draw.paint(s)
	return &renderer{
		of: s, parts: append(s.draw.parts(), s.ring),
		min: func() fyne.Size {
			const least = 220
			return fyne.NewSize(least, s.HeightFor(max(least, s.Size().Width)))
		},
		layout:  func(size fyne.Size) { s.draw.arrange(s, size.Width, true) },
		recolor: func() { s.draw.paint(s) },
	}
}

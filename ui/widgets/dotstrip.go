package widgets

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// StripValue is one value in a strip.
type StripValue struct {
	Label string
	Value float64 // where it lies
	Text  string  // the value as people read it
	// Hollow shows it as not meant for this case; Why says why not.
	Hollow bool
	Why    string
	// Closed keeps it from being chosen.
	Closed bool
}

// DotStrip shows several values for one thing one below the other on a common
// scale, each with its name, and the band round the one that is in use. It is
// one tab stop; the arrows, Home and End choose, and so does a click.
type DotStrip struct {
	control
	OnChosen func(index int)

	values    []StripValue
	chosen    int
	low, high float64
	over      int
	draw      *stripDrawing
}

// NewDotStrip returns an empty strip. The callback may be nil.
func NewDotStrip(label string, onChosen func(index int)) *DotStrip {
	s := &DotStrip{OnChosen: onChosen, chosen: -1, over: -1, draw: newStripDrawing(label)}
	s.init(s)
	return s
}

// Set shows values, one of them in use, -1 for none, and the band round it. It
// does not call back.
func (s *DotStrip) Set(values []StripValue, chosen int, low, high float64) {
	if slices.Equal(values, s.values) && chosen == s.chosen && low == s.low && high == s.high {
		return
	}
	s.values, s.chosen, s.low, s.high = values, max(-1, min(chosen, len(values)-1)), low, high
	s.draw.make(len(values))
	s.Refresh()
}

// SetCaption says below what the band is.
func (s *DotStrip) SetCaption(text string) {
	if text != s.draw.caption.Text() {
		s.draw.caption.SetText(text)
		s.Refresh()
	}
}

// Chosen returns the index of the value in use, -1 for none.
func (s *DotStrip) Chosen() int { return s.chosen }

// Values returns what is shown.
func (s *DotStrip) Values() []StripValue { return s.values }

// Spot returns the middle of a value's line, from the widget's top left corner.
func (s *DotStrip) Spot(index int) fyne.Position {
	r := s.draw.rows[index]
	return r.at.AddXY(r.size.Width/2, r.size.Height/2)
}

// Tapped chooses the value under the pointer.
func (s *DotStrip) Tapped(ev *fyne.PointEvent) {
	s.takeFocus()
	if i := s.find(ev.Position); i >= 0 {
		s.choose(i)
	}
}

// TypedKey chooses.
func (s *DotStrip) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyUp, fyne.KeyLeft:
		s.step(s.chosen-1, -1)
	case fyne.KeyDown, fyne.KeyRight:
		s.step(s.chosen+1, 1)
	case fyne.KeyHome:
		s.step(0, 1)
	case fyne.KeyEnd:
		s.step(len(s.values)-1, -1)
	case fyne.KeySpace:
	default:
		commonKey(s, key.Name)
	}
}

// step chooses the first value from one on that can be chosen.
func (s *DotStrip) step(from, by int) {
	for i := from; i >= 0 && i < len(s.values); i += by {
		if !s.values[i].Closed {
			s.choose(i)
			return
		}
	}
}

func (s *DotStrip) choose(index int) {
	if s.Disabled() || index == s.chosen || s.values[index].Closed {
		return
	}
	s.chosen = index
	s.Refresh()
	if s.OnChosen != nil {
		s.OnChosen(index)
	}
}

// MouseMoved follows the pointer over the values.
func (s *DotStrip) MouseMoved(ev *desktop.MouseEvent) {
	if i := s.find(ev.Position); i != s.over {
		s.over = i
		s.Refresh()
	}
}

// MouseOut notes that the pointer has left.
func (s *DotStrip) MouseOut() {
	s.over = -1
	s.control.MouseOut()
}

func (s *DotStrip) find(at fyne.Position) int {
	for i := range s.values {
		if r := s.draw.rows[i]; inside(at, r.at, r.size) {
			return i
		}
	}
	return -1
}

// HeightFor returns the height that the strip needs at a width.
func (s *DotStrip) HeightFor(width float32) float32 { return s.draw.arrange(s, width, false) }

// CreateRenderer implements fyne.Widget.
func (s *DotStrip) CreateRenderer() fyne.WidgetRenderer {
	r := &renderer{of: s, layout: func(size fyne.Size) { s.draw.arrange(s, size.Width, true) }}
	r.min = func() fyne.Size {
		const least = 300
		return fyne.NewSize(least, s.HeightFor(max(least, s.Size().Width)))
	}
	r.recolor = func() {
		s.draw.paint(s)
		r.parts = append(s.draw.parts(), s.ring)
	}
	r.recolor()
	return r
}

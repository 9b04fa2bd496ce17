package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"

	"handbreadth/ui/theme"
)

// Segments is a choice of one among a few short words on one line, for places
// where a [Choice] would be too large. It is one tab stop; the arrows choose.
type Segments struct {
	control
	OnChanged func(index int)

	label    *Text
	words    []*Text
	boxes    []*canvas.Rectangle
	selected int
	over     int
}

// NewSegments returns a choice with the first word chosen. The label stands
// before the words and may be empty; the callback may be nil.
func NewSegments(label string, words []string, onChanged func(index int)) *Segments {
	s := &Segments{OnChanged: onChanged, label: NewLine(label, Small), over: -1}
	for _, word := range words {
		s.words = append(s.words, NewLine(word, Small))
		s.boxes = append(s.boxes, newBox())
	}
	s.init(s)
	return s
}

// Selected returns the index of the chosen word.
func (s *Segments) Selected() int { return s.selected }

// SetSelected chooses a word without calling back.
func (s *Segments) SetSelected(index int) {
	index = max(0, min(index, len(s.words)-1))
	if index != s.selected {
		s.selected = index
		s.Refresh()
	}
}

// Spot returns the middle of a word, from the widget's top left corner.
func (s *Segments) Spot(index int) fyne.Position {
	return s.boxes[index].Position().AddXY(s.boxes[index].Size().Width/2, s.boxes[index].Size().Height/2)
}

// Tapped chooses the word under the pointer.
func (s *Segments) Tapped(ev *fyne.PointEvent) {
	if i := s.find(ev.Position); i >= 0 && !s.Disabled() {
		s.takeFocus()
		s.choose(i)
	}
}

// TypedKey chooses with the arrows, Home and End.
func (s *Segments) TypedKey(key *fyne.KeyEvent) {
	last := len(s.words) - 1
	switch key.Name {
	case fyne.KeyLeft, fyne.KeyUp:
		s.choose(max(0, s.selected-1))
	case fyne.KeyRight, fyne.KeyDown:
		s.choose(min(last, s.selected+1))
	case fyne.KeyHome:
		s.choose(0)
	case fyne.KeyEnd:
		s.choose(last)
	case fyne.KeySpace:
		s.choose((s.selected + 1) % (last + 1))
	default:
		commonKey(s, key.Name)
	}
}

// MouseMoved follows the pointer over the words.
func (s *Segments) MouseMoved(ev *desktop.MouseEvent) {
	if i := s.find(ev.Position); i != s.over {
		s.over = i
		s.Refresh()
	}
}

// MouseOut notes that the pointer has left.
func (s *Segments) MouseOut() {
	s.over = -1
	s.control.MouseOut()
}

func (s *Segments) choose(index int) {
	if s.Disabled() || index == s.selected {
		return
	}
	s.SetSelected(index)
	if s.OnChanged != nil {
		s.OnChanged(index)
	}
}

func (s *Segments) find(at fyne.Position) int {
	for i, box := range s.boxes {
		if inside(at, box.Position(), box.Size()) {
			return i
		}
	}
	return -1
}

// CreateRenderer implements fyne.Widget.
func (s *Segments) CreateRenderer() fyne.WidgetRenderer {
	s.recolor()
	parts := []fyne.CanvasObject{s.label}
	for i := range s.words {
		parts = append(parts, s.boxes[i], s.words[i])
	}
	return &renderer{of: s, parts: append(parts, s.ring), min: s.leastSize, layout: s.layout, recolor: s.recolor}
}

// segmentPad is the room beside a word.
const segmentPad = 6

func (s *Segments) leastSize() fyne.Size {
	width := s.labelWidth()
	for _, word := range s.words {
		width += word.MinSize().Width + 2*segmentPad
	}
	return fyne.NewSize(width, max(theme.Target, Small.measure("Hg").Height+theme.Half))
}

func (s *Segments) labelWidth() float32 {
	if s.label.Text() == "" {
		return 0
	}
	return s.label.MinSize().Width + theme.Unit
}

func (s *Segments) layout(size fyne.Size) {
	line := Small.measure("Hg").Height
	place(s.label, 0, (size.Height-line)/2, s.labelWidth(), line)
	x := s.labelWidth()
	for i, word := range s.words {
		width := word.MinSize().Width
		place(s.boxes[i], x, 0, width+2*segmentPad, size.Height)
		place(word, x+segmentPad, (size.Height-line)/2, width, line)
		x += width + 2*segmentPad
	}
	box := s.boxes[s.selected]
	setRing(s.ring, s.focused, box.Position().X, 0, box.Size().Width, size.Height)
}

func (s *Segments) recolor() {
	for i, box := range s.boxes {
		box.CornerRadius, box.StrokeWidth = theme.Radius, 0
		box.FillColor, box.StrokeColor = nothing, nothing
		colour := inkOf(s.Disabled(), theme.Muted)
		switch {
		case i == s.selected:
			box.FillColor, box.StrokeColor, box.StrokeWidth = theme.Colour(theme.Tint), theme.Colour(theme.Edge), 1
			colour = inkOf(s.Disabled(), theme.Ink)
		case i == s.over && s.hovered:
			box.FillColor = theme.Colour(theme.Hover)
		}
		s.words[i].SetColour(colour)
	}
}

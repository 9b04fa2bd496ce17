package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"

	"handbreadth/ui/theme"
)

// SectionStrip is the row of sections of a client file: one tab stop, the
// arrows choose. A section may carry a mark, such as the number of findings.
type SectionStrip struct {
	control
	OnSelected func(index int)

	tabs     []*sectionTab
	line     *canvas.Rectangle
	selected int
	over     int
}

// sectionTab is the drawing of one section.
type sectionTab struct {
	label, mark *Text
	box, under  *canvas.Rectangle
	at          fyne.Position
	size        fyne.Size
}

// NewSectionStrip returns a strip with the first section chosen. The callback
// may be nil.
func NewSectionStrip(labels []string, onSelected func(index int)) *SectionStrip {
	s := &SectionStrip{OnSelected: onSelected, line: newBox(), over: -1}
	for _, label := range labels {
		s.tabs = append(s.tabs, &sectionTab{
			label: NewLine(label, Body), mark: NewLine("", Small),
			box: newBox(), under: newBox(),
		})
	}
	s.init(s)
	return s
}

// Selected returns the index of the chosen section.
func (s *SectionStrip) Selected() int { return s.selected }

// Select chooses a section without calling back.
func (s *SectionStrip) Select(index int) {
	s.selected = max(0, min(index, len(s.tabs)-1))
	s.Refresh()
}

// SetMark sets a short mark after a section's label; "" removes it.
func (s *SectionStrip) SetMark(index int, mark string) {
	s.tabs[index].mark.SetText(mark)
	s.Refresh()
}

// Spot returns the middle of a section, from the strip's top left corner.
func (s *SectionStrip) Spot(index int) fyne.Position {
	t := s.tabs[index]
	return t.at.AddXY(t.size.Width/2, t.size.Height/2)
}

// Tapped chooses the section under the pointer.
func (s *SectionStrip) Tapped(ev *fyne.PointEvent) {
	if i := s.find(ev.Position); i >= 0 && !s.Disabled() {
		s.takeFocus()
		s.choose(i)
	}
}

// TypedKey moves between the sections.
func (s *SectionStrip) TypedKey(key *fyne.KeyEvent) {
	last := len(s.tabs) - 1
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
		goOn(s)
	default:
		commonKey(s, key.Name)
	}
}

// MouseMoved follows the pointer over the sections.
func (s *SectionStrip) MouseMoved(ev *desktop.MouseEvent) {
	if i := s.find(ev.Position); i != s.over {
		s.over = i
		s.Refresh()
	}
}

// MouseOut notes that the pointer has left.
func (s *SectionStrip) MouseOut() {
	s.over = -1
	s.control.MouseOut()
}

func (s *SectionStrip) choose(index int) {
	if s.Disabled() || index == s.selected {
		return
	}
	s.Select(index)
	if s.OnSelected != nil {
		s.OnSelected(index)
	}
}

func (s *SectionStrip) find(at fyne.Position) int {
	for i, t := range s.tabs {
		if inside(at, t.at, t.size) {
			return i
		}
	}
	return -1
}

// HeightFor returns the height that the strip needs at a width.
func (s *SectionStrip) HeightFor(width float32) float32 { return s.flow(width) + 1 }

// CreateRenderer implements fyne.Widget.
func (s *SectionStrip) CreateRenderer() fyne.WidgetRenderer {
	s.recolor()
	parts := []fyne.CanvasObject{s.line}
	for _, t := range s.tabs {
		parts = append(parts, t.box, t.under, t.label, t.mark)
	}
	return &renderer{of: s, parts: append(parts, s.ring), min: s.leastSize, layout: s.layout, recolor: s.recolor}
}

func (s *SectionStrip) leastSize() fyne.Size {
	width := float32(0)
	for _, t := range s.tabs {
		width = max(width, t.width())
	}
	wide := s.Size().Width
	if wide == 0 {
		wide = 10000
	}
	return fyne.NewSize(width, s.HeightFor(max(width, wide)))
}

// width is that of the heavier label, so that choosing does not move the rest.
func (t *sectionTab) width() float32 {
	w := Strong.measure(t.label.Text()).Width + 2*theme.Two
	if mark := t.mark.Text(); mark != "" {
		w += theme.Half + Small.measure(mark).Width
	}
	return w
}

// flow gives each section its place and returns the height of all lines.
func (s *SectionStrip) flow(width float32) float32 {
	height := Body.measure("Hg").Height + 2*theme.Unit + 3
	x, y := float32(0), float32(0)
	for _, t := range s.tabs {
		w := t.width()
		if x > 0 && x+w > width+0.5 {
			x, y = 0, y+height
		}
		t.at, t.size = fyne.NewPos(x, y), fyne.NewSize(w, height)
		x += w
	}
	return y + height
}

func (s *SectionStrip) layout(size fyne.Size) {
	height := s.flow(size.Width)
	place(s.line, 0, height, size.Width, 1)
	for _, t := range s.tabs {
		place(t.box, t.at.X, t.at.Y, t.size.Width, t.size.Height)
		place(t.under, t.at.X+theme.Unit, t.at.Y+t.size.Height-3, t.size.Width-theme.Two, 3)
		label := t.label.MinSize()
		place(t.label, t.at.X+theme.Two, t.at.Y+theme.Unit, label.Width, label.Height)
		mark := t.mark.MinSize()
		place(t.mark, t.at.X+t.size.Width-theme.Two-mark.Width, t.at.Y+theme.Unit+(label.Height-mark.Height)/2, mark.Width, mark.Height)
	}
	if len(s.tabs) > 0 {
		t := s.tabs[s.selected]
		setRing(s.ring, s.focused, t.at.X+ringGap, t.at.Y+ringGap, t.size.Width-2*ringGap, t.size.Height-2*ringGap)
	}
}

func (s *SectionStrip) recolor() {
	s.line.FillColor = theme.Colour(theme.Rule)
	for i, t := range s.tabs {
		chosen := i == s.selected
		t.box.FillColor, t.under.FillColor = nothing, nothing
		t.box.CornerRadius, t.under.CornerRadius = theme.Radius, 1.5
		t.label.SetStyle(Body)
		t.label.SetColour(inkOf(s.Disabled(), theme.Muted))
		if i == s.over && s.hovered && !s.Disabled() {
			t.box.FillColor = theme.Colour(theme.Hover)
		}
		if chosen {
			t.under.FillColor = theme.Colour(theme.Spruce)
			t.label.SetStyle(Strong)
			t.label.SetColour(inkOf(s.Disabled(), theme.Ink))
		}
	}
}

// inside reports whether a point lies in a box.
func inside(at, corner fyne.Position, size fyne.Size) bool {
	return at.X >= corner.X && at.Y >= corner.Y && at.X < corner.X+size.Width && at.Y < corner.Y+size.Height
}

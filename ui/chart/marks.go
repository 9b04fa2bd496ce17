package chart

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/ui/theme"
)

// noColour paints nothing; Fyne's software painter does not take a colour that is
// not set.
var noColour = color.Transparent

// marks show which day is read: a line, a dot on the expected weight and a bar
// at each end of the range.
type marks struct {
	line, top, bottom *canvas.Rectangle
	dot               *canvas.Circle
}

func newMarks() marks {
	m := pool(3)
	return marks{m[0], m[1], m[2], canvas.NewCircle(noColour)}
}

func (m marks) parts() []fyne.CanvasObject {
	return []fyne.CanvasObject{m.line, m.top, m.bottom, m.dot}
}

func (m marks) recolour() {
	rust := theme.Colour(theme.Rust)
	m.line.FillColor, m.top.FillColor, m.bottom.FillColor = rust, rust, rust
	m.dot.FillColor, m.dot.StrokeColor, m.dot.StrokeWidth = rust, theme.Colour(theme.Card), 2
}

const (
	dotSize  float32 = 11
	capWidth float32 = 11
)

// mark moves the marks to the day that is read, or hides them.
func (d *drawing) mark() {
	m, p, c := d.marks, d.plot, d.chart
	shown := c.marked() && p.area.W > 0
	m.line.Hidden, m.top.Hidden, m.bottom.Hidden, m.dot.Hidden = !shown, !shown, !shown, !shown
	if shown {
		day := min(c.Day(), c.course.last())
		band := c.course.Bands[day]
		at, high, low := p.on(day, band.Weight), p.on(day, band.High), p.on(day, band.Low)
		setLine(m.line, segment{point{at.X, p.area.Y}, point{at.X, p.area.bottom()}}, markStroke)
		setLine(m.top, segment{point{at.X - capWidth/2, high.Y}, point{at.X + capWidth/2, high.Y}}, markStroke)
		setLine(m.bottom, segment{point{at.X - capWidth/2, low.Y}, point{at.X + capWidth/2, low.Y}}, markStroke)
		put(m.dot, box{at.X - dotSize/2, at.Y - dotSize/2, dotSize, dotSize})
	}
	for _, part := range m.parts() {
		canvas.Refresh(part)
	}
}

// setLines gives lines their places and hides those that are not needed.
func setLines(lines []*canvas.Rectangle, to []segment, width float32) {
	for i, line := range lines {
		line.Hidden = i >= len(to)
		if !line.Hidden {
			setLine(line, to[i], width)
		}
	}
}

// setLine lays a line along or across, its middle where the segment is. Lines are
// rectangles, which the toolkit keeps on whole pixels.
func setLine(line *canvas.Rectangle, to segment, width float32) {
	if to.a.Y == to.b.Y {
		put(line, box{to.a.X, to.a.Y - width/2, to.b.X - to.a.X, width})
		return
	}
	put(line, box{to.a.X - width/2, to.a.Y, width, to.b.Y - to.a.Y})
}

// put moves and resizes an object.
func put(object fyne.CanvasObject, b box) {
	object.Move(fyne.NewPos(b.X, b.Y))
	object.Resize(fyne.NewSize(b.W, b.H))
}

// measure returns the extent of a small text.
func measure(text string) extent {
	s := fyne.MeasureText(text, theme.Small(), fyne.TextStyle{})
	return extent{s.Width, s.Height}
}

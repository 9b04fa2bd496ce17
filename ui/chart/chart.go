package chart

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/unit"
	"handbreadth/ui/widgets"
)

// week is how far a key moves.
const (
	week  = 7
	month = 4 * week
)

// Chart is the drawing of a course that can be read day by day: by the pointer,
// or by keyboard a week at a time.
type Chart struct {
	*widgets.Surface
	// OnDay is told of the day that is read now.
	OnDay func(day int)

	course Course
	style  unit.Style
	drawn  *drawing
	chosen int // the day that keys and clicks have chosen; -1: the one that matters most
	hover  int // the day under the pointer; -1: none
}

// New returns a chart without a course.
func New(style unit.Style) *Chart {
	c := &Chart{style: style, chosen: -1, hover: -1}
	c.drawn = newDrawing(c)
	c.Surface = widgets.NewSurface(c.drawn)
	c.OnKey, c.OnPoint, c.OnOut, c.OnTap = c.key, c.point, c.out, c.tap
	c.OnFocus = func(bool) { c.mark() }
	return c
}

// SetCourse shows a course. The day that is read stays while there is one.
func (c *Chart) SetCourse(course Course) {
	c.course = course
	if c.chosen > course.last() {
		c.chosen = -1
	}
	c.hover = -1
	c.Refresh()
	c.tell()
}

// Course returns the course that is shown.
func (c *Chart) Course() Course { return c.course }

// Day returns the day that is read now.
func (c *Chart) Day() int {
	switch {
	case c.hover >= 0:
		return c.hover
	case c.chosen >= 0:
		return c.chosen
	}
	return c.course.end()
}

// key moves the day: Left and Right by a week, the Page keys by four, Home and
// End to the ends.
func (c *Chart) key(name fyne.KeyName) bool {
	day := c.Day()
	switch name {
	case fyne.KeyLeft:
		day -= week
	case fyne.KeyRight:
		day += week
	case fyne.KeyPageUp:
		day -= month
	case fyne.KeyPageDown:
		day += month
	case fyne.KeyHome:
		day = 0
	case fyne.KeyEnd:
		day = c.course.last()
	default:
		return false
	}
	c.hover = -1
	c.choose(day)
	return true
}

func (c *Chart) choose(day int) {
	if len(c.course.Bands) == 0 {
		return
	}
	c.chosen = min(max(day, 0), c.course.last())
	c.mark()
	c.tell()
}

func (c *Chart) point(at fyne.Position) {
	if day := c.drawn.dayAt(at.X); day != c.hover {
		c.hover = day
		c.mark()
		c.tell()
	}
}

func (c *Chart) out() {
	c.hover = -1
	c.mark()
	c.tell()
}

func (c *Chart) tap(at fyne.Position) { c.choose(c.drawn.dayAt(at.X)) }

// marked reports whether the day that is read is shown in the drawing.
func (c *Chart) marked() bool { return c.hover >= 0 || c.Focused() }

// mark moves the marks to the day that is read; nothing else is drawn anew.
func (c *Chart) mark() { c.drawn.mark() }

func (c *Chart) tell() {
	if c.OnDay != nil && len(c.course.Bands) > 0 {
		c.OnDay(c.Day())
	}
}

package chart

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/theme"
)

// Spark is a course in one line's height: the expected weight, its range and the
// goal, without axes. What it says must stand beside it in words.
type Spark struct {
	widget.BaseWidget
	course    Course
	curves    *canvas.Raster
	goal      *canvas.Rectangle
	painted   *image.NRGBA
	low, high float64
}

// sparkHeight is how high a spark is, before the text is scaled.
const sparkHeight float32 = 44

// NewSpark returns a spark without a course.
func NewSpark() *Spark {
	s := &Spark{goal: canvas.NewRectangle(noColour)}
	s.curves = canvas.NewRaster(s.paint)
	s.ExtendBaseWidget(s)
	return s
}

// SetCourse shows a course.
func (s *Spark) SetCourse(c Course) {
	c.Static = nil
	s.course = c
	low, high := padded(c.span())
	s.low, s.high = float64(low), float64(high)
	s.Refresh()
}

// Course returns the course that is shown.
func (s *Spark) Course() Course { return s.course }

func (s *Spark) paint(w, h int) image.Image {
	if size := image.Rect(0, 0, w, h); s.painted == nil || s.painted.Rect != size {
		s.painted = image.NewNRGBA(size)
	}
	if len(s.course.Bands) == 0 {
		clear(s.painted.Pix)
		return s.painted
	}
	paintCurves(s.painted, s.course, s.high, s.low, float64(w)/float64(max(1, s.Size().Width)), colours())
	return s.painted
}

// CreateRenderer implements fyne.Widget.
func (s *Spark) CreateRenderer() fyne.WidgetRenderer { return sparkRenderer{s} }

type sparkRenderer struct{ of *Spark }

func (r sparkRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.of.curves, r.of.goal}
}

func (r sparkRenderer) MinSize() fyne.Size {
	return fyne.NewSize(leastWidthOf/2, sparkHeight*theme.TextScale())
}

func (r sparkRenderer) Layout(size fyne.Size) {
	s := r.of
	put(s.curves, box{0, 0, size.Width, size.Height})
	s.goal.Hidden = s.course.Goal == 0
	y := axis{low: s.low, high: s.high, from: size.Height, to: 0}.at(float64(s.course.Goal))
	setLine(s.goal, segment{point{0, y}, point{size.Width, y}}, hairStroke)
}

func (r sparkRenderer) Refresh() {
	r.of.goal.FillColor = theme.Colour(theme.Spruce)
	r.Layout(r.of.Size())
	r.of.curves.Refresh()
	canvas.Refresh(r.of)
}

func (r sparkRenderer) Destroy() {}

package chart

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// The pools of a drawing: as many lines and words as a chart can need. They are
// made once, so that a change of the course only moves them.
const (
	mostGrid   = 12
	mostMonths = 30
	mostLabels = 64
	mostNames  = 3
)

// drawing is what a chart looks like.
type drawing struct {
	chart *Chart
	plot  plot

	curves  *canvas.Raster
	painted *image.NRGBA // what the curves were painted into last
	grid    []*canvas.Rectangle
	months  []*canvas.Rectangle
	goal    []*canvas.Rectangle
	phase   []*canvas.Rectangle
	foot    *canvas.Rectangle
	labels  []*widgets.Text
	names   []*name
	marks   marks
}

// name is a text on a ground of its own.
type name struct {
	ground *canvas.Rectangle
	text   *widgets.Text
}

func newDrawing(c *Chart) *drawing {
	d := &drawing{
		chart: c, foot: canvas.NewRectangle(noColour), grid: pool(mostGrid), months: pool(mostMonths),
		goal: pool(1), phase: pool(1), marks: newMarks(),
	}
	d.curves = canvas.NewRaster(d.paint)
	for range mostLabels {
		d.labels = append(d.labels, widgets.NewLine("", widgets.Small))
	}
	for range mostNames {
		d.names = append(d.names, &name{canvas.NewRectangle(noColour), widgets.NewLine("", widgets.Small)})
	}
	return d
}

func pool(n int) []*canvas.Rectangle {
	lines := make([]*canvas.Rectangle, n)
	for i := range lines {
		lines[i] = canvas.NewRectangle(noColour)
		lines[i].Hidden = true
	}
	return lines
}

// Parts lists everything, what lies below first.
func (d *drawing) Parts() []fyne.CanvasObject {
	var parts []fyne.CanvasObject
	add := func(pool []*canvas.Rectangle) {
		for _, line := range pool {
			parts = append(parts, line)
		}
	}
	add(d.grid)
	parts = append(parts, d.foot)
	add(d.months)
	parts = append(parts, d.curves)
	add(d.goal)
	add(d.phase)
	for _, n := range d.names {
		parts = append(parts, n.ground, n.text)
	}
	for _, text := range d.labels {
		parts = append(parts, text)
	}
	return append(parts, d.marks.parts()...)
}

// The strokes of the lines.
const (
	goalStroke float32 = 2
	markStroke float32 = 2
	hairStroke float32 = 1
)

// Recolour gives the parts the colours of the look in force.
func (d *drawing) Recolour() {
	colour := func(pool []*canvas.Rectangle, name fyne.ThemeColorName) {
		for _, line := range pool {
			line.FillColor = theme.Colour(name)
		}
	}
	colour(d.grid, theme.Rule)
	colour(d.months, theme.Edge)
	colour([]*canvas.Rectangle{d.foot}, theme.Edge)
	colour(d.goal, theme.Spruce)
	colour(d.phase, theme.Edge)
	d.marks.recolour()
}

// The height of a chart beside its width, and its bounds.
const (
	heightShare          = 0.5
	leastHeight  float32 = 230
	mostHeight   float32 = 340
	leastWidthOf float32 = 280
)

// HeightFor returns the height of the chart at a width.
func (d *drawing) HeightFor(width float32) float32 {
	grown := theme.TextScale()
	return min(max(width*heightShare, leastHeight*grown), mostHeight*grown)
}

// LeastWidth is the width under which a chart says nothing.
func (d *drawing) LeastWidth() float32 { return leastWidthOf }

// Arrange gives each part its place.
func (d *drawing) Arrange(size fyne.Size) {
	if len(d.chart.course.Bands) == 0 || size.Width <= 0 {
		d.plot = plot{}
	} else {
		d.plot = layOut(d.chart.course, d.chart.style, extent{size.Width, size.Height}, measure)
	}
	p := d.plot
	put(d.curves, p.area)
	d.curves.Refresh()
	setLines(d.grid, p.grid, hairStroke)
	setLines(d.months, p.months, hairStroke)
	setLines(d.goal, p.goal, goalStroke)
	setLines(d.phase, p.phase, hairStroke)
	setLine(d.foot, segment{point{p.area.X, p.area.bottom()}, point{p.area.right(), p.area.bottom()}}, hairStroke)
	d.setLabels(p.labels)
	d.setNames(p.names)
	d.mark()
}

func (d *drawing) setLabels(labels []label) {
	for i, text := range d.labels {
		text.Hidden = i >= len(labels)
		if text.Hidden {
			continue
		}
		l := labels[i]
		text.SetColour(theme.Muted)
		if l.rank == strong {
			text.SetColour(theme.Ink)
		}
		text.SetText(l.text)
		put(text, l.box)
	}
}

func (d *drawing) setNames(names []label) {
	for i, n := range d.names {
		n.text.Hidden, n.ground.Hidden = i >= len(names), i >= len(names)
		if n.text.Hidden {
			continue
		}
		l := names[i]
		n.ground.FillColor = theme.Colour(theme.Card)
		if l.ground == onBand {
			n.ground.FillColor = theme.Colour(theme.Tint)
		}
		n.text.SetColour(theme.Ink)
		n.text.SetText(l.text)
		put(n.ground, l.box)
		put(n.text, box{l.X + namePad, l.Y, l.W, l.H})
	}
}

// paint paints the curves in device pixels. The picture is kept and painted
// anew, since one of a large screen takes longer to make than to paint.
func (d *drawing) paint(w, h int) image.Image {
	if size := image.Rect(0, 0, w, h); d.painted == nil || d.painted.Rect != size {
		d.painted = image.NewNRGBA(size)
	}
	p := d.plot
	if p.area.W <= 0 {
		clear(d.painted.Pix)
		return d.painted
	}
	paintCurves(d.painted, d.chart.course, p.kilos.high, p.kilos.low, float64(w)/float64(p.area.W), colours())
	return d.painted
}

// colours are the colours of the curves in the look in force.
func colours() curveColours {
	tint, edge := theme.Colour(theme.Tint), theme.Colour(theme.Edge)
	const hatchShare = 0.4
	return curveColours{
		fill: tint, hatch: mix(tint, edge, hatchShare), edge: edge,
		static: theme.Colour(theme.Muted), expected: theme.Colour(theme.Ink),
	}
}

// dayAt returns the day at a place across the chart, within the course.
func (d *drawing) dayAt(x float32) int {
	if d.plot.area.W <= 0 {
		return -1
	}
	day := int(math.Round(d.plot.days.value(x)))
	return min(max(day, 0), d.chart.course.last())
}

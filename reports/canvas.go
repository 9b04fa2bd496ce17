package reports

import (
	"bytes"
	"math"
	"strconv"
	"strings"

	"github.com/johnfercher/maroto/v2/pkg/consts/align"
	"github.com/johnfercher/maroto/v2/pkg/core"
	"github.com/johnfercher/maroto/v2/pkg/core/entity"
	"github.com/johnfercher/maroto/v2/pkg/props"
)

// canvas is what a block draws on. Lengths are millimetres from the top left
// corner of the page. Texts go to maroto, vectors to the layer beneath them.
type canvas struct {
	provider core.Provider
	sheet    *sheet
	x, y, w  float64 // where the block lies: its left, top and width
}

// text writes one line with its baseline at y.
func (c canvas) text(f face, size float64, ink colour, x, baseline float64, line string) {
	line = strings.ReplaceAll(line, string(noBreakSpace), " ")
	const beyond = 2000 // wider than any line, so that maroto never breaks it
	cell := &entity.Cell{
		X: x - c.sheet.left, Y: baseline - size/pointsPerMM - c.sheet.top,
		Width: beyond, Height: beyond,
	}
	c.provider.AddText(line, cell, &props.Text{
		Family: family, Style: f.style(), Size: size, Align: align.Left,
		Color: &props.Color{Red: int(ink.R), Green: int(ink.G), Blue: int(ink.B)},
	})
}

// textRight writes one line that ends at x.
func (c canvas) textRight(f face, size float64, ink colour, x, baseline float64, line string) {
	c.text(f, size, ink, x-width(f, size, line), baseline, line)
}

// paragraph writes lines from the top y down and returns where they end.
func (c canvas) paragraph(f face, size float64, ink colour, x, y float64, lines []string) float64 {
	for _, line := range lines {
		c.text(f, size, ink, x, y+ascent(size), line)
		y += lineHeight(size)
	}
	return y
}

// ops are the PDF operators of a page's vectors (ISO 32000-1, 8.5).
type ops struct{ bytes.Buffer }

// num writes a number with two decimals at most: a hundredth of a point.
func (o *ops) num(values ...float64) *ops {
	for _, v := range values {
		o.WriteString(strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64))
		o.WriteByte(' ')
	}
	return o
}

func (o *ops) op(name string) *ops {
	o.WriteString(name)
	o.WriteByte('\n')
	return o
}

func (o *ops) fillColour(c colour) { o.rgb(c).op("rg") }
func (o *ops) lineColour(c colour) { o.rgb(c).op("RG") }

func (o *ops) rgb(c colour) *ops {
	for _, v := range []uint8{c.R, c.G, c.B} {
		o.WriteString(strconv.FormatFloat(float64(v)/255, 'f', 3, 64))
		o.WriteByte(' ')
	}
	return o
}

// at turns millimetres from the top left into points from the bottom left.
func (c canvas) at(x, y float64) (float64, float64) {
	return x * pointsPerMM, (c.sheet.high - y) * pointsPerMM
}

func (c canvas) vectors() *ops { return c.sheet.vectors() }

func (c canvas) box(o *ops, x, y, w, h float64) {
	px, py := c.at(x, y+h)
	o.num(px, py, w*pointsPerMM, h*pointsPerMM).op("re")
}

// frame draws a box's outline.
func (c canvas) frame(x, y, w, h, weight float64, hue colour) {
	o := c.vectors()
	o.op("q").lineColour(hue)
	o.num(weight * pointsPerMM).op("w")
	c.box(o, x, y, w, h)
	o.op("S").op("Q")
}

// line draws a straight line with round ends.
func (c canvas) line(x1, y1, x2, y2, weight float64, hue colour, dash ...float64) {
	o := c.vectors()
	o.op("q").lineColour(hue)
	o.num(weight * pointsPerMM).op("w 1 J")
	o.dash(dash)
	px, py := c.at(x1, y1)
	qx, qy := c.at(x2, y2)
	o.num(px, py).op("m").num(qx, qy).op("l S").op("Q")
}

// point is a place on the page in millimetres from its top left.
type point struct{ x, y float64 }

// trace goes along points without drawing.
func (c canvas) trace(o *ops, points []point) {
	name := "m"
	for _, p := range points {
		px, py := c.at(p.x, p.y)
		o.num(px, py).op(name)
		name = "l"
	}
}

// polyline draws a line through points with round ends and corners.
func (c canvas) polyline(points []point, weight float64, hue colour, dash ...float64) {
	o := c.vectors()
	o.op("q").lineColour(hue)
	o.num(weight * pointsPerMM).op("w 1 J 1 j")
	o.dash(dash)
	c.trace(o, points)
	o.op("S").op("Q")
}

// shaded fills an area with a light colour and a hatch, which is there in black
// and white too.
func (c canvas) shaded(outline []point, fill, hue colour) {
	left, top, right, foot := bounds(outline)
	o := c.vectors()
	o.op("q")
	c.trace(o, outline)
	o.op("h W n").fillColour(fill)
	c.box(o, left, top, right-left, foot-top)
	o.op("f")
	c.hatched(o, left, top, right-left, foot-top, hue)
	o.op("Q")
}

func bounds(points []point) (left, top, right, foot float64) {
	left, top, right, foot = points[0].x, points[0].y, points[0].x, points[0].y
	for _, p := range points {
		left, right = min(left, p.x), max(right, p.x)
		top, foot = min(top, p.y), max(foot, p.y)
	}
	return left, top, right, foot
}

func (o *ops) dash(lengths []float64) {
	if len(lengths) == 0 {
		return
	}
	o.WriteString("[ ")
	for _, v := range lengths {
		o.num(v * pointsPerMM)
	}
	o.op("] 0 d")
}

// pattern is what fills a share of the bar of macros.
type pattern int

// The patterns: told apart without colour.
const (
	solid pattern = iota
	hatch
	dots
)

// patterned fills a box with a pattern and draws its outline.
func (c canvas) patterned(x, y, w, h float64, p pattern, hue colour) {
	if w <= 0 {
		return
	}
	o := c.vectors()
	o.op("q")
	c.box(o, x, y, w, h)
	o.op("W n")
	switch p {
	case solid:
		o.fillColour(hue)
		c.box(o, x, y, w, h)
		o.op("f")
	case hatch:
		c.hatched(o, x, y, w, h, hue)
	case dots:
		c.dotted(o, x, y, w, h, hue)
	}
	o.op("Q")
	c.frame(x, y, w, h, 0.3, hue)
}

func (c canvas) hatched(o *ops, x, y, w, h float64, hue colour) {
	const apart, weight = 1.7, 0.35
	o.lineColour(hue)
	o.num(weight * pointsPerMM).op("w")
	for start := x - h; start < x+w; start += apart {
		px, py := c.at(start, y+h)
		qx, qy := c.at(start+h, y)
		o.num(px, py).op("m").num(qx, qy).op("l")
	}
	o.op("S")
}

func (c canvas) dotted(o *ops, x, y, w, h float64, hue colour) {
	const apart, radius = 1.5, 0.32
	o.lineColour(hue)
	o.num(2 * radius * pointsPerMM).op("w 1 J")
	for row, dy := 0, apart/2; dy < h; row, dy = row+1, dy+apart*0.87 {
		for dx := apart / 2 * float64(1+row%2); dx < w; dx += apart {
			px, py := c.at(x+dx, y+dy)
			o.num(px, py).op("m").num(px, py).op("l")
		}
	}
	o.op("S")
}

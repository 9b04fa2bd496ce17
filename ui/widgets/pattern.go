package widgets

import (
	"image"
	"image/color"
	"math"

	"handbreadth/ui/theme"
)

// pattern is how one macro is filled.
type pattern int

const (
	solid pattern = iota
	hatch
	dots
)

// The patterns in units of the screen.
const (
	hatchPeriod = 6.0 // across the lines
	hatchWidth  = 1.6
	dotPeriod   = 6.0
	dotRadius   = 1.5
	frameWidth  = 1.0
)

// patternPainter paints patterns into a picture of device pixels. Edges are
// softened by the share of the pixel that is covered.
type patternPainter struct {
	img         *image.NRGBA
	scale       float64 // device pixels in a unit
	ink, ground color.NRGBA
}

func newPatternPainter(w, h int, scale float64) *patternPainter {
	return &patternPainter{
		img: image.NewNRGBA(image.Rect(0, 0, w, h)), scale: scale,
		ink: theme.Colour(theme.Ink), ground: theme.Colour(theme.Tint),
	}
}

// fill paints the columns from left to right, without right, with a pattern in a
// frame of ink.
func (p *patternPainter) fill(kind pattern, left, right int) {
	h := p.img.Bounds().Dy()
	for y := range h {
		for x := left; x < right; x++ {
			cover := p.cover(kind, (float64(x-left)+0.5)/p.scale, (float64(y)+0.5)/p.scale)
			p.img.SetNRGBA(x, y, mix(p.ground, p.ink, cover))
		}
	}
	p.frame(left, right)
}

// frame paints the outline of a part.
func (p *patternPainter) frame(left, right int) {
	h := p.img.Bounds().Dy()
	width := max(1, int(frameWidth*p.scale+0.5))
	for y := range h {
		for x := left; x < right; x++ {
			if x < left+width || x >= right-width || y < width || y >= h-width {
				p.img.SetNRGBA(x, y, p.ink)
			}
		}
	}
}

// cover is the share of ink at a point, in units.
func (p *patternPainter) cover(kind pattern, x, y float64) float64 {
	switch kind {
	case solid:
		return 1
	case hatch:
		across := math.Mod(x+y, hatchPeriod*math.Sqrt2) / math.Sqrt2
		return p.soft(hatchWidth/2 - math.Abs(across-hatchPeriod/2))
	}
	row := math.Floor(y / dotPeriod * 2)
	dx := math.Mod(x+math.Mod(row, 2)*dotPeriod/2, dotPeriod) - dotPeriod/2
	dy := math.Mod(y, dotPeriod/2) - dotPeriod/4
	return p.soft(dotRadius - math.Hypot(dx, dy))
}

// soft turns a distance inside of an edge, in units, into a cover.
func (p *patternPainter) soft(inside float64) float64 {
	return math.Max(0, math.Min(1, inside*p.scale+0.5))
}

package chart

import (
	"image"
	"image/color"
	"math"
)

// curveColours are the colours of the curves.
type curveColours struct{ fill, hatch, edge, static, expected color.NRGBA }

// The curves in units of the screen: the range is filled with fine slanted lines
// in a thin outline, the static rule is dashed, the expected weight is the one
// strong line. So they are told apart without their colours.
const (
	hatchPeriod    = 7.0
	hatchWidth     = 1.0
	edgeWidth      = 1.2
	staticWidth    = 1.6
	expectedWidth  = 2.6
	dashLength     = 7.0
	dashSpace      = 5.0
	mostSteepness  = 12.0 // beyond it a line grows no thicker across
	halfPixel      = 0.5
	opaque         = 255
	bytesInAPixel  = 4
	leastHatchStep = 3
)

// curves paints the curves of a course into a picture of device pixels that is
// as wide as the days and as high as the weights of the axes. Lines are painted
// column by column, their edges softened by the part of a pixel that is covered.
type curves struct {
	img     *image.NRGBA
	course  Course
	high    float64 // the weight at the top
	perKilo float64 // pixels
	perDay  float64 // pixels
	scale   float64 // pixels in a unit
	colours curveColours
}

// curve is how far from the top a line lies in each column of pixels.
type curve []float64

// paintCurves paints into a picture that may have been painted before, and is of
// this size.
func paintCurves(img *image.NRGBA, c Course, high, low, scale float64, colours curveColours) {
	w, h := img.Rect.Dx(), img.Rect.Dy()
	clear(img.Pix)
	p := curves{
		img: img, course: c, high: high, perKilo: float64(h) / (high - low),
		perDay: float64(w) / float64(max(1, c.last())), scale: scale, colours: colours,
	}
	if w == 0 || h == 0 || len(c.Bands) == 0 {
		return
	}
	top, expected, bottom := p.threeCurves()
	p.fan(top, bottom)
	p.line(top, edgeWidth, colours.edge, 0, w)
	p.line(bottom, edgeWidth, colours.edge, 0, w)
	if c.Static != nil {
		p.static()
	}
	p.line(expected, expectedWidth, colours.expected, 0, w)
}

func (p *curves) y(weight float64) float64 { return (p.high - weight) * p.perKilo }

// dayOf is the moment that a column of pixels shows.
func (p *curves) dayOf(x int) float64 { return (float64(x) + halfPixel) / p.perDay }

// threeCurves are the upper edge of the range, the expected weight and the lower
// edge.
func (p *curves) threeCurves() (top, expected, bottom curve) {
	w := p.img.Rect.Dx()
	top, expected, bottom = make(curve, w), make(curve, w), make(curve, w)
	for x := range w {
		band := p.course.at(p.dayOf(x))
		top[x], expected[x], bottom[x] = p.y(float64(band.High)), p.y(float64(band.Weight)), p.y(float64(band.Low))
	}
	return top, expected, bottom
}

// fan fills the range, row by row. The pixels at its edges are left to the
// outline.
func (p *curves) fan(top, bottom curve) {
	w, h := p.img.Rect.Dx(), p.img.Rect.Dy()
	from, to := make([]int, w), make([]int, w)
	first, last := h, 0
	for x := range w {
		from[x], to[x] = whole(top[x], h), whole(bottom[x], h)
		first, last = min(first, from[x]), max(last, to[x])
	}
	period, row := p.hatching(w)
	for y := first; y < last; y++ {
		for x := 0; x < w; {
			if y < from[x] || y >= to[x] {
				x++
				continue
			}
			start := x
			for x < w && y >= from[x] && y < to[x] {
				x++
			}
			shift := y % period
			copy(p.img.Pix[y*p.img.Stride+start*bytesInAPixel:y*p.img.Stride+x*bytesInAPixel], row[(start+shift)*bytesInAPixel:])
		}
	}
}

// whole is the nearest row of a height, in the picture.
func whole(y float64, h int) int { return int(math.Round(math.Max(0, math.Min(y, float64(h))))) }

// hatching is a row of pixels with the slanted lines, a period longer than the
// picture is wide: each row of the range is the one above it moved by a pixel.
func (p *curves) hatching(w int) (period int, row []byte) {
	period = max(leastHatchStep, int(math.Round(hatchPeriod*p.scale*math.Sqrt2)))
	row = make([]byte, 0, (w+period)*bytesInAPixel)
	for x := range w + period {
		across := math.Abs(float64(x%period)+halfPixel-float64(period)/2) / math.Sqrt2
		c := mix(p.colours.fill, p.colours.hatch, covered(hatchWidth*p.scale/2-across))
		row = append(row, c.R, c.G, c.B, opaque)
	}
	return period, row
}

// static paints the promise of the static rule, a straight line, in dashes.
func (p *curves) static() {
	end, _ := p.course.staticEnd()
	from, to := float64(p.course.Static(0)), float64(p.course.Static(end))
	last := min(p.perDay*float64(end), float64(p.img.Rect.Dx()))
	promise := make(curve, int(last))
	for x := range promise {
		promise[x] = p.y(from + (to-from)*p.dayOf(x)/float64(max(1, end)))
	}
	along := math.Hypot(last, (to-from)*p.perKilo) / math.Max(1, last)
	dash, step := dashLength*p.scale/along, (dashLength+dashSpace)*p.scale/along
	for at := 0.0; at < last; at += step {
		p.line(promise, staticWidth, p.colours.static, int(math.Round(at)), int(math.Round(at+dash)))
	}
}

// line paints a curve over what is there, from one column to before another, as
// thick along the column as it must be for its slope.
func (p *curves) line(y curve, width float64, c color.NRGBA, from, to int) {
	for x := from; x < min(to, len(y)); x++ {
		slope := (y[min(x+1, len(y)-1)] - y[max(x-1, 0)]) / 2
		slope = math.Min(math.Abs(slope), mostSteepness)
		p.dot(x, y[x], width*p.scale*math.Sqrt(1+slope*slope)/2, c)
	}
}

// dot paints a part of a column over what is there.
func (p *curves) dot(x int, middle, reach float64, c color.NRGBA) {
	h := float64(p.img.Rect.Dy())
	from, to := math.Floor(math.Max(0, middle-reach)), math.Ceil(math.Min(h, middle+reach))
	for y := from; y < to; y++ {
		cover := math.Min(y+1, middle+reach) - math.Max(y, middle-reach)
		if cover > 0 {
			p.over(x, int(y), c, math.Min(cover, 1))
		}
	}
}

// covered turns a distance inside of an edge, in pixels, into the share of the
// pixel that is covered.
func covered(inside float64) float64 { return math.Max(0, math.Min(1, inside+halfPixel)) }

func (p *curves) set(x, y int, c color.NRGBA) {
	i := y*p.img.Stride + x*bytesInAPixel
	p.img.Pix[i], p.img.Pix[i+1], p.img.Pix[i+2], p.img.Pix[i+3] = c.R, c.G, c.B, c.A
}

// over lays a colour over a pixel by its share.
func (p *curves) over(x, y int, c color.NRGBA, share float64) {
	i := y*p.img.Stride + x*bytesInAPixel
	pix := p.img.Pix[i : i+bytesInAPixel]
	below := float64(pix[3]) / opaque * (1 - share)
	alpha := share + below
	between := func(own, under uint8) uint8 {
		return uint8((float64(own)*share+float64(under)*below)/alpha + halfPixel)
	}
	p.set(x, y, color.NRGBA{
		R: between(c.R, pix[0]), G: between(c.G, pix[1]), B: between(c.B, pix[2]), A: uint8(alpha*opaque + halfPixel),
	})
}

// mix returns a colour between two: share 0 is a, share 1 is b.
func mix(a, b color.NRGBA, share float64) color.NRGBA {
	between := func(p, q uint8) uint8 { return uint8(float64(p)*(1-share) + float64(q)*share + halfPixel) }
	return color.NRGBA{R: between(a.R, b.R), G: between(a.G, b.G), B: between(a.B, b.B), A: opaque}
}

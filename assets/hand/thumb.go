package hand

import "handbreadth/assets/internal/curve"

// thumbFinger is one folded finger of the reference fist, clockwise from its
// upper left, over the knuckle at the right and back to the tucked tip.
var thumbFingers = [4][]float64{
	{38, 57, 52, 56, 64, 57, 71, 61, 73, 67, 70, 73, 62, 76, 50, 76, 40, 74.5, 35, 69, 35, 62},           // little
	{34, 38, 52, 37, 70, 38, 79, 42.5, 81, 49, 78, 55, 69, 58, 52, 58, 37, 57, 31, 51, 30.5, 43},         // ring
	{32, 18.5, 52, 17.5, 72, 18, 81.5, 22.5, 84, 29.5, 81, 36, 71, 39, 52, 39, 35, 38, 28.5, 32, 28, 24}, // middle
	{33, 0, 50, -2, 67, -1, 77, 3.5, 80, 10, 77, 16.5, 68, 19.5, 50, 19.5, 36, 19, 30, 14, 29.5, 5.5},    // index
}

func drawThumb(p *pen, d Dimensions, opt Options) {
	r := ratiosOf(d)
	at := place(func(x, y float64) Point { return pt(x*r.palm, y*r.breadth) })
	thumb := at.stretched(14, 0, r.thumbBreadth, r.thumb)
	p.scale(0.75*d.PalmLength + d.ThumbLength)
	outer := curve.Join(at.line(-38, 17, -24, 14, -12, 8, -3, -1), thumb.line(1.5, -10, 3.2, -22, 2.4, -36, 2, -48, 4.5, -58, 10.5, -63.4, 17, -61.5))
	inner := curve.Join(thumb.line(17, -61.5, 22.4, -55, 23.6, -46, 23.4, -36, 24.5, -25, 25, -14), at.line(28, -5, 36, -1.6))
	heel := at.line(42, 76.5, 26, 79.5, 8, 78, -8, 71, -22, 68, -38, 69)
	p.fill(Paper, outer, inner, at.line(36, -1.6, 76, 3, 83, 29, 73, 66, 60, 77, 42, 76.5), heel)
	p.halvable(curve.Join(thumb.line(4, -4, 1.5, -10, 3.2, -22, 2.4, -36, 2, -48, 4.5, -58, 10.5, -63.4, 17, -61.5, 22.4, -55, 23.6, -46, 23.4, -36, 24.5, -25, 25, -14, 27, -5), thumb.line(27, -5, 16, 1, 4, -4)),
		thumb(13, -31), pt(0, 1), thumb.line(-2, -30, 13, -31.5, 28, -30))
	for _, f := range thumbFingers {
		c := at.loop(f...)
		p.ink(0.95, c.Part(0, 0.86))
	}
	p.ink(1.1, outer)
	p.inkFrom(1.05, inner)
	p.ink(1.2, heel)
	if p.atLeastMedium() {
		p.ink(0.6, at.line(30, 40, 18, 38, 10, 28, 10, 14))
	}
}

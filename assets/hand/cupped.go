package hand

import "handbreadth/assets/internal/curve"

// cupFinger is a far finger of the cupped hand: the visible edge, clockwise
// over its tip.
var cupFingers = [3][]float64{
	{40, 18, 39.6, 4, 41.5, -4, 46, -8.6, 51.5, -7.4, 55.5, 0, 59, 9, 67, 19, 80, 29},       // little
	{28, 14, 27.6, -2, 30, -9.5, 35, -13.6, 40.8, -12, 44.6, -4.5, 47.5, 6, 55, 19, 68, 32}, // ring
	{18.5, 20, 17.4, 4, 19.6, -5, 24.6, -9.6, 30.6, -8.4, 35, 0, 38.2, 12, 46, 26, 60, 40},  // middle
}

func drawCupped(p *pen, d Dimensions, opt Options) {
	r := ratiosOf(d)
	at := place(func(x, y float64) Point { return pt(x*r.hand, y*r.breadth) })
	thumb := at.stretched(126, 58, r.thumb, r.thumbBreadth)
	p.scale(0.92 * d.HandLength)
	far := at.line(112, 22, 126, 32, 142, 42, 158, 48, 178, 51)
	under := at.line(178, 86, 152, 83, 134, 85, 112, 86, 88, 82, 66, 74, 44, 61, 29, 44, 20, 26, 15, 12, 15.5, 4, 20, 0, 26, 3.4)
	inner := at.line(26, 3.4, 30.5, 15, 37, 29, 48, 41, 60, 49.5, 74, 56)
	p.fill(Paper, far, at.line(178, 51, 178, 86), under, inner, at.line(74, 56, 112, 22))
	for _, f := range cupFingers {
		c := at.line(f...)
		p.fill(Paper, c)
		p.ink(0.9, c)
	}
	p.ink(1, far)
	p.heap(at, opt)
	p.fill(Paper, under, inner, at.line(74, 56, 100, 60, 140, 56, 178, 60), at.line(178, 60, 178, 86))
	p.ink(1.15, under)
	p.inkFrom(0.95, inner)
	p.cupThumb(at, thumb)
}

// heap is the measured volume, held between fingers and thumb.
func (p *pen) heap(at place, opt Options) {
	dome := at.line(40, 34, 48, 17, 62, 4, 80, -2, 98, 0, 114, 10, 126, 24, 136, 42)
	base := at.line(136, 42, 120, 62, 84, 66, 54, 52, 40, 34)
	area := curve.Join(dome, base)
	p.halvable(area, at(0, 26), pt(0, 1), dome)
	p.ink(0.8, dome)
}

// cupThumb is the near rim: the thumb along the palm's edge.
func (p *pen) cupThumb(at, thumb place) {
	upper := curve.Join(at.line(172, 61, 158, 57, 144, 54), thumb.line(132, 49, 116, 40, 100, 32.5, 84, 26, 72, 23, 64, 24.5, 60.6, 29.5))
	lower := thumb.line(60.6, 29.5, 62.5, 35.5, 72, 40, 86, 45.5, 98, 53, 103, 62)
	p.fill(Paper, upper, lower, at.line(103, 62, 130, 66, 172, 61))
	p.ink(1.05, upper)
	p.inkFrom(1.1, lower)
}

package hand

import "handbreadth/assets/internal/curve"

// cupFingers are the far fingers of the cupped hand: the visible edge,
// clockwise over the tip; the nearest of them last.
var cupFingers = [3][]float64{
	{42, 20, 40.6, 5, 42, -3.4, 46.6, -8, 52, -6.6, 55.6, 0.4, 59, 9, 67, 19, 80, 29},
	{28, 14, 27.6, -2, 30, -9.5, 35, -13.6, 40.8, -12, 44.6, -4.5, 47.5, 6, 55, 19, 68, 32},
	{18.5, 20, 17.2, 4, 19.4, -5, 24.6, -9.8, 30.8, -8.4, 35, 0, 38.2, 12, 46, 26, 60, 40},
}

func drawCupped(p *pen, d Dimensions) {
	r := ratiosOf(d)
	at := place(func(x, y float64) Point { return pt(x*r.hand, y*r.breadth) })
	thumb := at.stretched(126, 58, r.thumb, r.thumbBreadth)
	p.scale(0.92 * d.HandLength)
	far := at.line(112, 22, 126, 31, 142, 40, 158, 46, 178, 49)
	near := at.line(178, 86, 154, 82.6, 136, 85, 114, 87, 90, 83.5, 67, 75.5, 45, 62.5, 28.6, 46, 18.6, 27, 14, 12, 14.2, 4.4, 18.6, 0, 24, 1.6,
		28.4, 8, 32, 18, 38, 29.5, 48, 40.6, 61, 49, 77, 55)
	p.fill(Paper, far, near)
	for _, f := range cupFingers {
		c := at.line(f...)
		p.fill(Paper, c)
		p.ink(0.9, c)
	}
	p.ink(1, far)
	p.heap(at)
	p.fill(Paper, near, at.line(77, 55, 104, 60, 140, 58, 178, 60))
	p.ink(1.12, near)
	p.cupThumb(at, thumb)
	if p.full() {
		p.cupFolds(at)
	}
}

// heap is the measured volume, held between fingers and thumb.
func (p *pen) heap(at place) {
	dome := at.line(36, 27, 41, 20, 50, 12, 62, 2.6, 78, -3.4, 96, -2, 112, 7, 125, 21, 135, 40)
	base := at.line(135, 40, 120, 62, 84, 66, 54, 52, 36, 27)
	p.fill(Paper, dome, base)
	p.halvable(curve.Join(dome, base), at(0, 22), pt(0, 1), dome)
	if !p.opt.Half {
		p.ink(0.8, dome)
		return
	}
	p.ink(0.8, at.line(40, 23, 56, 20.6, 84, 19, 110, 20.4, 126, 24))
}

// cupThumb is the near rim: the thumb along the palm's edge.
func (p *pen) cupThumb(at, thumb place) {
	line := curve.Join(at.line(172, 60, 158, 56.4, 146, 53.4), thumb.line(134, 48, 118, 39, 102, 32, 86, 26, 74, 22, 65.4, 21.8,
		60, 26, 60.4, 32.4, 67, 37.4, 79, 42, 92, 47, 100, 53, 103.6, 62))
	p.fill(Paper, line, at.line(103.6, 62, 130, 70, 172, 60))
	p.ink(1.08, line)
	if !p.full() {
		return
	}
	p.ink(0.5, thumb.line(61, 25.4, 66, 28.4, 72, 29.6, 76.6, 27.6, 77, 23.4)) // nail
	p.ink(0.42, curve.Bow(thumb(95, 31.6), thumb(91.6, 39), 1.2))
	p.ink(0.34, curve.Bow(thumb(98.6, 34), thumb(96, 39.4), 0.8))
}

// cupFolds draws the creases of the near finger and the shade under the hand.
func (p *pen) cupFolds(at place) {
	p.ink(0.42, curve.Bow(at(35.6, 28), at(29, 33), 1.2))
	p.ink(0.42, curve.Bow(at(59, 50), at(53, 57), 1.4))
	p.ink(0.4, at.line(77, 55, 86, 58, 94, 63, 97, 69))
	p.hatch(at(74, 75.6), at(122, 84.4), pt(3.4, -7.4), 9)
}

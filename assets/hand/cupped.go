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
	if !p.atLeastMedium() {
		p.scale(0.78 * d.HandLength)
		p.smallCup(at, thumb)
		return
	}
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
		p.shade(near, 0.17, 0.36, 9, 12)
		p.cupFolds(at)
	}
}

// heap is the measured volume, held between fingers and thumb.
func (p *pen) heap(at place) {
	dome := at.line(35, 25, 41, 16, 50, 6, 62, -3, 78, -8.6, 95, -7, 111, 3, 125, 19, 135, 40)
	base := at.line(135, 40, 120, 62, 84, 66, 54, 52, 35, 25)
	p.fill(Paper, dome, base)
	if p.opt.Half {
		level := at.line(38, 22, 56, 18.6, 84, 17, 108, 18.4, 125, 22)
		p.area(Wash, curve.Clipped(curve.Join(dome, base).Flat(1), at(0, 19.5), pt(0, 1)))
		p.dashed(dome)
		p.grains(at, 21)
		p.ink(0.8, level)
		return
	}
	p.fill(Wash, curve.Join(dome, base))
	p.grains(at, -12)
	p.ink(0.8, dome)
}

// cupGrains are the places and turns (degrees) of the grains in the heap.
var cupGrains = [][3]float64{
	{60, 3, 20}, {72, -2, 70}, {84, -3.4, -15}, {97, 0, 40}, {108, 7, 80}, {53, 13, 60}, {66, 9, -30}, {78, 6, 25},
	{90, 7, 75}, {102, 13, -20}, {116, 17, 30}, {47, 24, 10}, {59, 20.4, 80}, {71, 15, 35}, {84, 16, -40}, {95, 22, 15},
	{111, 26, 65}, {122, 29, -10}, {55, 31, -35}, {121, 36.4, 40}, {106, 25, -30}, {52, 40, 55},
}

// grains draws the grains that lie below a level.
func (p *pen) grains(at place, level float64) {
	long, wide := 3.4, 1.7
	if !p.full() {
		long, wide = 4.6, 2.6
	}
	for i, g := range cupGrains {
		if g[1]-wide < level || (!p.full() && i%2 == 1) {
			continue
		}
		c := at(g[0], g[1])
		ring := []Point{}
		for _, q := range [][2]float64{{-1, 0}, {-0.55, -0.85}, {0.35, -0.95}, {1, 0}, {0.5, 0.9}, {-0.45, 0.9}} {
			ring = append(ring, c.Add(pt(q[0]*long, q[1]*wide).Turned(g[2])))
		}
		p.fill(Paper, curve.Loop(ring...))
		p.ink(0.5, curve.Loop(ring...))
	}
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

// cupFolds draws the creases of the near finger.
func (p *pen) cupFolds(at place) {
	p.ink(0.42, curve.Bow(at(35.6, 28), at(29, 33), 1.2))
	p.ink(0.42, curve.Bow(at(59, 50), at(53, 57), 1.4))
	p.ink(0.4, at.line(77, 55, 86, 58, 94, 63, 97, 69))
}

// smallCup is the cupped hand for icons: the bowl of the hand, two fingers, the
// thumb's edge, and the heap.
func (p *pen) smallCup(at, thumb place) {
	near := at.line(152, 86, 136, 86, 114, 88, 90, 84, 67, 76, 45, 63, 28, 46, 18, 27, 13, 12, 13.4, 3, 19, -2, 26, 0,
		31, 8, 36, 20, 46, 35, 60, 46)
	far := at.line(19, -2, 24, -10, 32, -11, 38, -4, 42, 8, 52, 22)
	dome := at.line(40, 17, 50, 2, 64, -10, 82, -14, 100, -10, 116, 2, 128, 19, 138, 42)
	base := at.line(138, 42, 120, 62, 84, 66, 54, 52, 40, 17)
	edge := curve.Join(at.line(154, 54), thumb.line(134, 46, 116, 36, 98, 29, 82, 25, 70, 27, 67, 33, 73, 38, 88, 43))
	p.fill(Paper, near, far)
	p.ink(1, far)
	if p.opt.Half {
		p.area(Wash, curve.Clipped(curve.Join(dome, base).Flat(1), at(0, 14), pt(0, 1)))
		p.dashed(dome)
		p.ink(0.9, at.line(46, 14, 84, 11, 124, 14))
	} else {
		p.fill(Wash, dome, base)
		p.ink(0.95, dome)
		for _, g := range [][2]float64{{70, 6}, {92, 2}, {108, 15}} {
			c := at(g[0], g[1])
			p.ink(1, curve.Straight(c, c.Add(pt(2.4, 0.8))))
		}
	}
	p.fill(Paper, near, at.line(60, 46, 88, 52, 152, 60))
	p.ink(1, near)
	p.fill(Paper, edge, at.line(100, 56, 154, 66))
	p.ink(1, edge)
}

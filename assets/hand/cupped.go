package hand

import (
	"math"

	"handbreadth/assets/internal/curve"
)

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
		28.4, 8, 32, 18, 38, 29.5, 48, 40.6, 61, 49, 77, 55, 92, 59, 101.6, 61)
	p.fill(Paper, far, near)
	for _, f := range cupFingers {
		c := at.line(f...)
		p.fill(Paper, c)
		p.ink(0.9, c)
	}
	p.ink(1, far)
	p.heap(at)
	p.fill(Paper, near, at.line(101.6, 61, 140, 58, 178, 60))
	p.ink(1.12, near)
	p.cupThumb(at, thumb)
	if p.full() {
		p.shade(near, 0.17, 0.36, 9, 12)
		p.cupFolds(at)
	}
}

// heap is the measured volume, held between fingers and thumb: a pile of
// grains.
func (p *pen) heap(at place) {
	dome := at.line(35, 25, 41, 17, 50, 7, 61, -3, 74, -9.6, 84, -10.6, 95, -7.4, 110, 2.6, 123, 17, 133, 34, 140, 49)
	area := curve.Join(dome, at.line(140, 49, 128, 62, 84, 66, 54, 52, 35, 25))
	top := dome
	if p.opt.Half {
		const level = 20.5
		p.area(Wash, curve.Clipped(area.Flat(1), at(0, level), pt(0, 1)))
		top = at.line(40, 21.4, 52, 19.6, 68, 20.6, 84, 19, 104, 20.4, 126.6, 20.6)
		area = curve.Straight(curve.Clipped(area.Flat(1), at(0, level+2.6), pt(0, 1))...)
		p.dashed(dome)
	} else {
		p.fill(Wash, area)
	}
	p.grains(top, area.Flat(1))
	if !p.full() {
		p.ink(0.8, top)
	}
}

// grains strews grains along the edge of the pile and over its face.
func (p *pen) grains(edge curve.Curve, face []Point) {
	size, apart := 1.0, 7.6
	if !p.full() {
		size, apart = 1.5, 17
	}
	var all []curve.Curve
	if p.full() {
		all = edgeGrains(edge)
	}
	low, high := box(face)
	for row := 0; low.Y+2+float64(row)*0.75*apart < high.Y; row++ {
		for col := 0; low.X+float64(col)*apart < high.X; col++ {
			sway := math.Sin(float64(row*17+col*29) * 1.7)
			q := low.Add(pt((float64(col)+0.5*float64(row%2)+0.16*sway)*apart, 2+(0.75*float64(row)+0.14*math.Cos(sway*9))*apart))
			if clearOf(face, q, 4.4*size) && apartFrom(all, q, 6.1*size) {
				all = append(all, grain(q, size, 180*math.Sin(float64(row*7+col*11))))
			}
		}
	}
	if len(all) == 0 {
		return // the heap of a very small hand holds no grain that would show
	}
	p.fill(Paper, all[0])
	for _, g := range all[1:] {
		p.append(g)
	}
	for _, g := range all {
		p.ink(0.5, g)
	}
}

// edgeGrains lie along an edge, each a little askew.
func edgeGrains(edge curve.Curve) []curve.Curve {
	s := curve.Sample(edge, 0.5)
	var all []curve.Curve
	for run := 3.0; run < s.Total()-2; run += 7.4 {
		i := s.Nearest(run)
		along := math.Atan2(s.Normal[i].X, -s.Normal[i].Y) * 180 / math.Pi
		all = append(all, grain(s.At[i], 1, along+34*math.Sin(run*1.9)))
	}
	return all
}

// grain is one grain, 6.6 mm long.
func grain(at Point, size, turn float64) curve.Curve {
	var ring []Point
	for _, q := range [][2]float64{{-3.3, 0}, {-1.8, -1.4}, {1.1, -1.6}, {3.3, 0}, {1.6, 1.5}, {-1.5, 1.5}} {
		ring = append(ring, at.Add(pt(q[0]*size, q[1]*size).Turned(turn)))
	}
	return curve.Loop(ring...)
}

// apartFrom says whether q keeps its distance from the middles of the grains.
func apartFrom(grains []curve.Curve, q Point, gap float64) bool {
	for _, g := range grains {
		low, high := box(g)
		if curve.Lerp(low, high, 0.5).To(q) < gap {
			return false
		}
	}
	return true
}

// box is the smallest upright box around points.
func box(pts []Point) (low, high Point) {
	low, high = pts[0], pts[0]
	for _, q := range pts {
		low, high = pt(min(low.X, q.X), min(low.Y, q.Y)), pt(max(high.X, q.X), max(high.Y, q.Y))
	}
	return low, high
}

// clearOf says whether q lies inside a clockwise polygon and at least gap from
// its corners, which stand close together.
func clearOf(poly []Point, q Point, gap float64) bool {
	inside := false
	for i, b := range poly {
		a := poly[(i+len(poly)-1)%len(poly)]
		if q.To(b) < gap {
			return false
		}
		if (a.Y > q.Y) != (b.Y > q.Y) && q.X < a.X+(b.X-a.X)*(q.Y-a.Y)/(b.Y-a.Y) {
			inside = !inside
		}
	}
	return inside
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
	p.ink(0.4, at.line(83, 57, 90, 60.4, 95, 65, 97.4, 71))
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

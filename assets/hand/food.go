package hand

import "handbreadth/assets/internal/curve"

// filletTop and filletFoot are the edge of a side of fish above the cut of a
// half and below it, from the left; the tail is a piece of its own.
var (
	filletTop  = []float64{-27.4, -54, -32, -66, -32.4, -78, -29, -90, -20, -99, -6, -103, 10, -102, 24, -96, 33, -84, 35, -71, 33, -60, 30.6, -54}
	filletFoot = []float64{30.6, -54, 25, -44, 17, -32, 10, -23}
	filletLeft = []float64{-9, -23, -14.6, -32, -22, -44, -27.4, -54}
	filletSide = []float64{35.2, -72, 38.4, -64, 36, -54, 29.4, -42, 21, -30, 12.6, -20.6}
)

// fillet lies on the palm: a side of fish of the palm's size, its tail towards
// the wrist.
func (p *pen) fillet(f palmFrame) {
	tail := curve.Join(f.at.line(10, -23, 12.4, -14, 19, -4), f.at.line(19, -4, 9.6, -6.4, 1, -10.4),
		f.at.line(1, -10.4, -8, -5.8, -17, -3), f.at.line(-17, -3, -11.4, -13.6, -9, -23))
	top, foot, left := f.at.line(filletTop...), curve.Join(f.at.line(filletFoot...), tail), f.at.line(filletLeft...)
	side := filletSide
	if p.opt.Half {
		p.cut = nil // the food's own cut says it
		p.dashed(top)
		side = append([]float64{37, -56}, side[6:]...)
		cut := curve.Straight(f.at(-27.4, -54), f.at(30.6, -54))
		p.fill(Paper, f.at.line(side...), curve.Straight(f.at(12.6, -20.6), f.at(0, -54), f.at(30.6, -54), f.at(37, -56)))
		p.ink(1.05, f.at.line(side...))
		p.fill(Paper, cut, foot, left)
		p.ink(1.05, foot)
		p.ink(1, left)
		p.ink(0.95, curve.Straight(f.at(-27.4, -54), f.at(36.6, -54.6)))
	} else {
		p.fill(Paper, f.at.line(side...), curve.Straight(f.at(12.6, -20.6), f.at(0, -54)))
		p.ink(1.05, f.at.line(side...))
		p.fill(Paper, top, foot, left)
		p.ink(1.05, curve.Join(left, top, f.at.line(filletFoot...)))
		p.ink(1.05, tail)
	}
	p.filletGrain(f)
}

// filletGrain draws the flakes of the fish: nested angles along a middle line,
// and the rays of its tail.
func (p *pen) filletGrain(f palmFrame) {
	if !p.atLeastMedium() {
		return
	}
	ys := []float64{-90, -77, -64, -50, -37}
	for i, y := range ys {
		if p.opt.Half && y < -46 {
			continue
		}
		reach := []float64{17, 23, 23, 17, 10}[i]
		x := 1 - 0.02*(y+60)
		p.ink(0.55, f.at.line(x-reach, y-6, x-reach*0.45, y, x, y+6, x+reach*0.45, y, x+reach, y-6))
	}
	if p.full() {
		p.ink(0.4, f.at.line(-4.6, -19, -7.6, -13, -11, -8))
		p.ink(0.4, f.at.line(5.6, -19, 8.6, -13.6, 12.6, -9))
	}
}

// floret stands beside the fist: a piece of vegetable of the fist's size.
func (p *pen) floret(at place) {
	crown := at.line(64, -44, 56.5, -51, 57, -62, 65, -67, 65, -78, 74, -85, 84, -82.5, 91, -92, 104, -92.5, 111, -84,
		121, -84, 127.5, -75, 124.5, -65.5, 131.5, -58, 128, -47.6, 118, -44.6)
	under := at.line(118, -44.6, 109.6, -38, 101, -42.4, 92.6, -37.4, 84, -42.4, 74, -38, 64, -44)
	stem := at.line(107.6, -40, 104.4, -29, 104, -16, 106.6, -3, 97, 1.4, 83, 0.4, 85.6, -14, 84.4, -27, 77.6, -40)
	if p.opt.Half {
		p.halfFloret(at, curve.Join(crown, under), stem)
		return
	}
	p.fill(Paper, stem)
	p.ink(1.1, stem)
	p.fill(Paper, crown, under)
	p.ink(1.1, crown)
	p.inkFrom(0.95, under)
	p.floretBuds(at, 200)
}

// halfFloret is cut down the middle; the missing half is dashed.
func (p *pen) halfFloret(at place, crown, stem curve.Curve) {
	middle := at(94.6, 0)
	left := func(c curve.Curve) []Point { return curve.Clipped(c.Flat(0.8), middle, pt(-1, 0)) }
	right := func(c curve.Curve) []Point { return curve.Clipped(c.Flat(0.8), middle, pt(1, 0)) }
	p.dashedOpen(right(crown), middle.X)
	p.dashedOpen(right(stem), middle.X)
	p.area(Paper, left(stem))
	p.inkOpen(left(stem), middle.X)
	p.area(Paper, left(crown))
	p.inkOpen(left(crown), middle.X)
	p.ink(0.95, curve.Straight(at(94.6, -92), at(94.6, 1)))
	p.floretBuds(at, 88)
}

// floretBuds draws the small arcs in the crown left of a reference x.
func (p *pen) floretBuds(at place, until float64) {
	if !p.full() {
		return
	}
	for _, b := range [][4]float64{
		{67, -55, 75, -54}, {76, -70, 84, -71}, {92, -80, 101, -79}, {108, -70, 116, -68}, {86, -57, 95, -57}, {106, -53, 114, -54}, {97, -67, 103, -66},
	} {
		if b[2] < until {
			p.ink(0.5, curve.Bow(at(b[0], b[1]), at(b[2], b[3]), 2.4))
		}
	}
	if until > 100 {
		p.ink(0.5, at.line(94, -36, 94.8, -28, 94.2, -20))
	}
}

// oilAndNuts stand beside the thumb: a drop of oil and almonds, to show the
// kind of food, not its amount.
func (p *pen) oilAndNuts(at place) {
	drop := at.line(52, -64, 45.4, -54, 41.6, -45.6, 43.6, -37.6, 51, -34, 58.6, -37, 61, -45, 57.6, -54, 52, -64)
	p.ink(1, drop)
	p.almond(at, 72, -24, 30)
	if p.opt.Half {
		return
	}
	p.almond(at, 86, -44, -20)
	if p.full() {
		p.ink(0.5, at.line(46, -44, 47, -40, 50.6, -37.8))
	}
}

func (p *pen) almond(at place, x, y, turn float64) {
	c := at(x, y)
	turned := func(xy ...float64) []Point {
		var pts []Point
		for i := 0; i+1 < len(xy); i += 2 {
			pts = append(pts, c.Add(pt(xy[i], xy[i+1]).Turned(turn)))
		}
		return pts
	}
	p.ink(1, curve.Spline(turned(-12.5, 0, -8, -5.6, 0, -7.4, 7, -5.8, 12.5, 0.4, 6, 6.2, -1, 7.2, -8, 5.4, -12.5, 0)...))
	if p.full() {
		p.ink(0.5, curve.Spline(turned(-8, -0.6, -1, -2.2, 6, -0.6)...))
		p.ink(0.45, curve.Spline(turned(-6, 2.8, 0, 2, 5, 2.8)...))
	}
}

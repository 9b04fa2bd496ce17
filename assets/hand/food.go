package hand

import "handbreadth/assets/internal/curve"

// fillet lies on the palm: a piece of fish of the palm's size.
func (p *pen) fillet(f palmFrame) {
	top := f.at.line(-33, -54, -36, -68, -33, -84, -24, -97, -8, -103, 12, -101, 28, -94, 37, -80, 37, -64, 33.6, -54, 26, -38, 16, -24, 4, -16,
		-9, -16, -20, -23, -28, -37, -33, -54)
	side := f.at.line(36.8, -70, 38, -62, 35, -47, 28, -30, 17.5, -15.6, 5, -7.6, -10, -7.4, -22, -14.6, -30, -28, -33, -44, -33.6, -54)
	if !p.opt.Half {
		p.fill(Paper, side, curve.Straight(f.at(-33, -54), f.at(36.8, -70)))
		p.ink(1.05, side)
		p.fill(Paper, top)
		p.ink(1, top)
		p.filletGrain(f)
		return
	}
	p.cut = nil // the food's own cut says it
	p.dashed(f.at.line(-33, -54, -36, -68, -33, -84, -24, -97, -8, -103, 12, -101, 28, -94, 37, -80, 37, -64, 33.6, -54))
	rest := f.at.line(37.6, -54, 35, -47, 28, -30, 17.5, -15.6, 5, -7.6, -10, -7.4, -22, -14.6, -30, -28, -33, -44, -33.6, -54)
	face := curve.Join(f.at.line(33.6, -54, 26, -38, 16, -24, 4, -16, -9, -16, -20, -23, -28, -37, -33, -54), f.at.line(-33, -54, 0, -55.5, 33.6, -54))
	p.fill(Paper, rest, curve.Straight(f.at(-33, -54), f.at(37.6, -54)))
	p.ink(1.05, rest)
	p.fill(Paper, face)
	p.ink(1, face)
	p.ink(0.9, curve.Straight(f.at(33.6, -54), f.at(37.6, -54)))
	p.filletGrain(f)
}

// filletGrain draws the flakes of the fish: nested angles along a middle line.
func (p *pen) filletGrain(f palmFrame) {
	if !p.atLeastMedium() {
		return
	}
	ys := []float64{-88, -74, -60, -46, -32}
	for i, y := range ys {
		if p.opt.Half && y < -50 {
			continue
		}
		reach := []float64{20, 24, 24, 21, 14}[i]
		x := 1 - 0.12*(y+60)
		p.ink(0.55, f.at.line(x-reach, y-5, x-reach*0.45, y+1, x, y+7, x+reach*0.45, y+1, x+reach, y-5))
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

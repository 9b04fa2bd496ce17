package hand

import "handbreadth/assets/internal/curve"

// The palm is drawn on a reference hand (see Reference) with the wrist crease
// at y = 0, the middle of the palm at x = 0 and the fingers upwards; palmFrame
// stretches it to the dimensions.
type palmFrame struct {
	at                place
	base, along, over Point // thumb: its base, direction and crossways
}

func newPalmFrame(d Dimensions) palmFrame {
	r := ratiosOf(d)
	crease := -Reference().PalmLength
	at := func(x, y float64) Point {
		if y >= crease {
			return pt(x*r.breadth, y*r.palm)
		}
		return pt(x*r.breadth, crease*r.palm+(y-crease)*r.finger)
	}
	dir := pt(-0.60, -0.80)
	return palmFrame{
		at:    at,
		base:  at(-46, -54),
		along: dir.Mul(r.thumb),
		over:  pt(-dir.Y, dir.X).Mul(r.thumbBreadth),
	}
}

// thumb places a point by millimetres along the reference thumb and across it
// (positive towards the fingers).
func (f palmFrame) thumb(along, over float64) Point {
	return f.base.Add(f.along.Mul(along)).Add(f.over.Mul(over))
}

// digit describes one finger of the reference hand, seen from the front.
type digit struct {
	base          Point   // middle of its crease
	lean          float64 // degrees from upright, clockwise
	length, width float64
}

var palmDigits = [4]digit{
	{pt(-29.8, -107), -7.5, 67.5, 20.8},
	{pt(-8.8, -112), -1.5, 75.3, 21.2},
	{pt(12.4, -109.5), 5, 69.5, 20.2},
	{pt(32.0, -99), 14, 55.5, 17.8},
}

// fingerShape is the half width of a finger (share of its width) at shares of
// its length: fullest at the joints, narrower between.
var fingerShape = [][2]float64{
	{0.10, 0.478}, {0.22, 0.455}, {0.37, 0.486}, {0.53, 0.44}, {0.69, 0.446}, {0.83, 0.42}, {0.925, 0.325}, {0.98, 0.17},
}

// side returns the outline of a finger from its base to its tip on one side
// (-1 left, 1 right), tip included.
func (f palmFrame) side(g digit, sign float64) []Point {
	var pts []Point
	for _, s := range fingerShape {
		pts = append(pts, f.onDigit(g, s[0], sign*s[1]))
	}
	return append(pts, f.onDigit(g, 1, 0))
}

// onDigit places a point at a share of a finger's length and width.
func (f palmFrame) onDigit(g digit, along, over float64) Point {
	q := pt(over*g.width, -along*g.length).Turned(g.lean).Add(g.base)
	return f.at(q.X, q.Y)
}

// palmShape holds the parts of the open hand's outline, clockwise.
type palmShape struct {
	thumb   curve.Curve // wrist, thumb, web, to the base of the index finger
	fingers [4]curve.Curve
	ulnar   curve.Curve // little finger's base to the wrist
}

func newPalmShape(f palmFrame) palmShape {
	var s palmShape
	s.thumb = curve.Spline(f.at(-30.5, 15), f.at(-30.4, 3), f.at(-35.5, -12), f.at(-46, -29),
		f.thumb(-7, -14.2), f.thumb(5, -14.1), f.thumb(18, -11), f.thumb(31, -11.4),
		f.thumb(43, -12.4), f.thumb(53.5, -11), f.thumb(60.2, -6.6), f.thumb(63.2, 0.2),
		f.thumb(60.8, 6.8), f.thumb(52, 10.6), f.thumb(41, 11), f.thumb(31, 10.4), f.thumb(22, 10.8),
		f.at(-42.6, -75.2), f.at(-40.2, -81), f.at(-41.2, -88), f.at(-41.6, -94), f.at(-40.8, -104))
	valleys := [5]Point{f.at(-40.8, -104), f.at(-19.2, -113.6), f.at(2.0, -114.6), f.at(22.9, -106.6), f.at(41.1, -95)}
	for i, g := range palmDigits {
		pts := append([]Point{valleys[i]}, f.side(g, -1)...)
		right := f.side(g, 1)
		for j := len(right) - 2; j >= 0; j-- {
			pts = append(pts, right[j])
		}
		s.fingers[i] = curve.Spline(append(pts, valleys[i+1])...)
	}
	s.ulnar = curve.Spline(valleys[4], f.at(41.6, -86), f.at(42.2, -66), f.at(40.8, -44), f.at(36.8, -22),
		f.at(31.4, -5), f.at(29.6, 4), f.at(29.8, 15))
	return s
}

func (s palmShape) outline() curve.Curve {
	return curve.Join(s.thumb, s.fingers[0], s.fingers[1], s.fingers[2], s.fingers[3], s.ulnar)
}

// palmArea is the measured area: the palm without fingers and thumb.
func palmArea(f palmFrame) curve.Curve {
	return f.at.loop(-29, -1, -34, -13, -42, -27, -48.5, -41, -50.5, -51, -47, -60, -42, -72,
		-40, -82, -41, -94, -38, -105.5, -29.8, -108, -20, -111, -9, -113, 2, -112,
		12.5, -110.8, 22, -105.5, 31.5, -101.2, 39.8, -93, 41.8, -66, 40.2, -44,
		36, -22, 30, -3, 14, 2.5, -8, 3)
}

func drawPalm(p *pen, d Dimensions) {
	f := newPalmFrame(d)
	s := newPalmShape(f)
	p.scale(1.08 * d.HandLength)
	p.fill(Paper, s.outline())
	p.halvable(palmArea(f), f.at(0, -54), pt(0, 1), f.at.line(-48, -53, 0, -54.5, 41, -53.5))
	p.palmCreases(f)
	for _, c := range s.fingers {
		p.ink(0.84, c)
	}
	p.ink(1.1, s.thumb)
	p.ink(1.2, s.ulnar)
	if p.full() && !p.food() {
		p.shade(s.ulnar, 0.26, 0.66, 9, 9)
	}
	if p.food() {
		p.fillet(f)
	}
	p.span("palm breadth", f.at(-41.5, -90), f.at(41.5, -90))
	p.span("palm length", f.at(0, 0), f.at(0, -Reference().PalmLength))
	p.span("hand length", f.at(0, 0), f.at(0, -Reference().HandLength))
}

// palmCreases draws the lines of the palm and, lightly, the folds of the
// fingers.
func (p *pen) palmCreases(f palmFrame) {
	if p.atLeastMedium() && !p.food() {
		p.ink(0.62, f.at.line(-40, -79, -28, -75, -14.5, -61, -8.5, -42, -10.5, -22, -16, -7)) // around the thumb
	}
	if !p.full() {
		return
	}
	if !p.food() {
		p.ink(0.52, f.at.line(-39.5, -82, -22, -79, 2, -68, 22, -53, 30, -43)) // across the middle
		p.ink(0.56, f.at.line(39.5, -76, 24, -84, 6, -86, -8, -92, -16, -102)) // under the fingers
	}
	p.ink(0.45, curve.Bow(f.at(-25, -3.2), f.at(25, -3.6), -3.4)) // wrist, its middle where palm and hand begin
	p.ink(0.36, curve.Bow(f.at(-19, 2.4), f.at(18, 2), -2.2))
	for i, g := range palmDigits {
		last := 0.70
		if i == 3 {
			last = 0.67
		}
		p.ink(0.42, curve.Bow(f.onDigit(g, 0.05, -0.38), f.onDigit(g, 0.045, 0.38), -1.6))
		p.ink(0.42, curve.Bow(f.onDigit(g, 0.395, -0.34), f.onDigit(g, 0.395, 0.32), -1))
		p.ink(0.34, curve.Bow(f.onDigit(g, 0.43, -0.24), f.onDigit(g, 0.425, 0.2), -0.8))
		p.ink(0.36, curve.Bow(f.onDigit(g, last, -0.3), f.onDigit(g, last, 0.28), -0.9))
	}
	p.ink(0.42, curve.Bow(f.thumb(31, -8), f.thumb(31, 7), 1.1))
	p.ink(0.42, curve.Bow(f.thumb(5, -8), f.thumb(5, 9), -2.2))
}

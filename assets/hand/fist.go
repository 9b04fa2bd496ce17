package hand

import "handbreadth/assets/internal/curve"

// fistFinger is one folded finger of the reference hand, clockwise from its
// lower left: up over the knuckle and down to the tucked tip.
type fistFinger struct {
	shape []float64
	fold  []float64 // the crease where the finger turns down
}

// From the little finger (farthest) to the index finger (nearest).
var fistFingers = [4]fistFinger{
	{
		[]float64{21, -54, 22, -66, 22.4, -80, 25.5, -90, 31.5, -93.5, 37.5, -90.5, 41, -82, 41.2, -70, 38.4, -58, 33, -51, 26, -50},
		[]float64{26.5, -79, 32, -81.5, 37.5, -78.5},
	},
	{
		[]float64{1.5, -50, 1.6, -64, 1.4, -84, 4.4, -97, 11.6, -102.5, 18.8, -99, 22.6, -88, 22.8, -70, 21, -55, 15, -47.5, 7, -46.5},
		[]float64{5.5, -84.5, 11.8, -88, 18.4, -85},
	},
	{
		[]float64{-18.6, -50, -19.4, -64, -20, -86, -16.8, -100, -9.2, -106, -1.2, -102.4, 2.4, -90, 2.4, -70, 1.4, -54, -4, -46, -12, -45},
		[]float64{-15.5, -86.5, -8.8, -90.4, -1.8, -87.4},
	},
	{
		[]float64{-36, -50, -39.6, -63, -41.6, -79, -40, -91, -35.6, -99, -29.4, -101.6, -22.8, -97.5, -19.4, -87, -18.6, -70, -18.4, -54, -23, -46, -30, -45.4},
		[]float64{-36, -82, -29.8, -85.6, -23.4, -82.6},
	},
}

func drawFist(p *pen, d Dimensions, opt Options) {
	r := ratiosOf(d)
	at := place(func(x, y float64) Point { return pt(x*r.breadth, y*r.palm) })
	thumb := at.stretched(-40, -40, r.thumb, r.thumbBreadth)
	p.scale(1.15 * d.PalmLength)
	left := curve.Join(at.line(-30, 16, -29.6, 6, -33, -6, -40, -18, -45.5, -31), thumb.line(-47.6, -42, -45, -54, -36.5, -64))
	right := at.line(39.6, -60, 42.4, -48, 42.4, -34, 38.6, -18, 32, -4, 30, 5, 30.4, 16)
	back := at.line(-36.5, -64, -41.8, -80, -38, -96, -29, -101, -9, -105.5, 11, -102, 31, -93, 41, -82, 39.6, -60)
	p.fill(Paper, left, back, right)
	body := fistArea(at, thumb)
	p.halvable(body, at(0, -49), pt(0, 1), at.line(-49, -48, 0, -49.5, 44, -48))
	for i, f := range fistFingers {
		w := 0.95
		if i == 0 {
			w = 1.1
		}
		c := at.loop(f.shape...)
		p.ink(w, c.Part(0, 0.78))
		if p.full() {
			p.ink(0.5, at.line(f.fold...))
		}
	}
	p.ink(1.15, right)
	p.fistThumb(at, thumb, opt)
	p.ink(1.1, left)
	p.span("palm breadth", at(-41.6, -79), at(41.6, -79))
}

// fistArea is the measured body: the fist without the wrist.
func fistArea(at, thumb place) curve.Curve {
	lower := at.line(40.2, -62, 42.6, -48, 42.4, -34, 38.6, -18, 31.5, -3, 16, 2.5, -6, 3, -29, -1, -34, -8, -40, -18, -45.5, -31)
	side := thumb.line(-47.6, -42, -45, -54, -38, -63)
	upper := at.line(-39.8, -66, -41.6, -79, -40, -91, -35.6, -99, -29.4, -101.6, -19.8, -100, -9.2, -106, 2, -101,
		11.6, -102.5, 22, -95, 31.5, -93.5, 37.5, -90.5, 41, -82, 40.2, -62)
	return curve.Join(lower, side, upper)
}

// fistThumb lays the thumb across the fingers.
func (p *pen) fistThumb(at, thumb place, opt Options) {
	upper := thumb.line(-44, -55, -36, -65.5, -25, -72, -12, -73.5, 0, -71.8, 8, -67, 10, -61.5)
	lower := thumb.line(10, -61.5, 7, -55.6, -3, -53, -14, -52, -23, -47.5, -27.5, -38)
	role := Wash
	p.fill(role, upper, lower, thumb.line(-27.5, -38, -38, -40, -44, -55))
	p.ink(1.05, upper)
	p.inkFrom(1.1, lower)
	if p.full() {
		p.ink(0.5, thumb.line(-3, -70.5, -5.5, -66.5, -2, -62.4, 8.5, -61))
		p.ink(0.45, thumb.line(-21, -70, -18.5, -65.5, -19.5, -61))
	}
	if p.atLeastMedium() {
		p.ink(0.6, at.line(-22, -45, -8, -38, 2, -26, 1, -12, -4, -4))
	}
}

package hand

import "handbreadth/assets/internal/curve"

// knuckle is the visible outline of one folded finger of the reference hand,
// clockwise: up, over the knuckle, and down. Where the neighbour hides it, it
// starts at the notch between them.
type knuckle struct {
	outline []float64
	fold    [4]float64 // ends of the crease where the finger turns down
}

// From the index finger (nearest) to the little finger.
var fistKnuckles = [4]knuckle{
	{
		[]float64{-38.6, -62, -41.2, -72, -41.8, -82, -40, -92, -35.4, -99, -28.8, -101, -22.6, -97.6, -19.6, -89, -19, -78, -18.6, -70},
		[4]float64{-36, -82.5, -23.6, -83},
	},
	{
		[]float64{-19.8, -91, -18, -99, -14.4, -104, -8, -105.6, -1.6, -102.8, 1.6, -94, 2.2, -82, 2.2, -66},
		[4]float64{-15.2, -87, -2.4, -87.2},
	},
	{
		[]float64{1.8, -93, 4.6, -99.6, 11, -102.4, 17.8, -99.4, 21.8, -90, 22.8, -78, 22.6, -64, 20.6, -54.5, 15.5, -49, 9.4, -48.6},
		[4]float64{5.4, -84.4, 17.8, -84.6},
	},
	{
		[]float64{22.2, -86, 26, -91.4, 32, -93, 37.6, -89.6, 41, -81.6, 41.6, -71, 39.4, -60.5, 35, -54, 29, -52, 23.6, -53.4},
		[4]float64{26, -78.4, 37, -78},
	},
}

// fistHeight shortens the reference palm: a fist's knuckles stand a little
// lower than the open palm is long.
const fistHeight = 0.93

func drawFist(p *pen, d Dimensions) {
	r := ratiosOf(d)
	at := place(func(x, y float64) Point { return pt(x*r.breadth, y*r.palm*fistHeight) })
	thumb := at.stretched(-40, -40, r.thumb, r.thumbBreadth)
	p.scale(1.12 * d.PalmLength)
	if p.food() {
		p.scale(2.15 * d.PalmBreadth)
	}
	left := curve.Join(at.line(-30, 18, -29.8, 7, -32.6, -5, -39, -17, -45, -30), thumb.line(-47.8, -42, -46, -53, -38.5, -63))
	right := at.line(40, -60, 42.6, -50, 42.8, -36, 39, -19, 32.6, -4, 30.4, 6, 30.8, 18)
	top := fistTop(at)
	p.fill(Paper, left, top, right)
	p.halvable(fistArea(at, thumb, top), at(0, -50), pt(0, 1), at.line(-48, -49, 0, -50.5, 44, -49))
	p.fistFingers(at)
	p.ink(1.2, right)
	p.fistThumb(at, thumb)
	if p.full() {
		p.shade(right, 0.16, 0.6, 11, 11)
	}
	if p.food() {
		p.floret(at)
	}
	p.span("palm breadth", at(-41.6, -79), at(41.6, -79))
}

// fistTop is the outline over the four knuckles, left to right.
func fistTop(at place) curve.Curve {
	k := fistKnuckles
	return curve.Join(at.line(k[0].outline[:16]...), at.line(k[1].outline[:12]...),
		at.line(k[2].outline[:10]...), at.line(k[3].outline[:14]...))
}

// fistArea is the measured body: the fist without the wrist.
func fistArea(at, thumb place, top curve.Curve) curve.Curve {
	return curve.Join(top,
		at.line(40, -60, 42.6, -50, 42.8, -36, 39, -19, 31.5, -4, 27, 0, 12, 3, -8, 3.2, -29.6, -0.5, -32.6, -5, -39, -17, -45, -30),
		thumb.line(-47.6, -41, -46.6, -50, -42.4, -58.6, -38.5, -63))
}

func (p *pen) fistFingers(at place) {
	for i, k := range fistKnuckles {
		weight := 0.95
		if i == 3 {
			weight = 1.1
		}
		p.ink(weight, at.line(k.outline...))
		if !p.full() {
			continue
		}
		a, b := at(k.fold[0], k.fold[1]), at(k.fold[2], k.fold[3])
		p.ink(0.5, curve.Bow(a, b, 1.7))
		p.ink(0.36, curve.Bow(curve.Lerp(a, b, 0.2).Add(pt(0, 3)), curve.Lerp(a, b, 0.75).Add(pt(0, 3)), 1))
	}
}

// fistThumb lays the thumb across the fingers: one line from the wrist round
// the ball of the thumb, over its tip and back under it.
func (p *pen) fistThumb(at, thumb place) {
	ball := append(at.points([]float64{-30, 18, -29.8, 7, -32.6, -5, -39, -17, -45, -30}),
		thumb.points([]float64{
			-47.6, -41, -46.6, -50, -42.4, -58.6, -34.6, -66, -24.5, -71.4, -12, -73.2, 0, -72.6, 9, -69, 13, -62.6, 10.6, -56,
			2, -52.6, -9, -52, -18, -49.6, -24, -44.6, -27, -36,
		})...)
	cover := curve.Join(curve.Spline(ball[6:]...), curve.Straight(ball[len(ball)-1], thumb(-38, -38)))
	if p.opt.Half {
		p.area(Paper, curve.Clipped(cover.Flat(1), at(0, -50), pt(0, -1)))
	} else {
		p.fill(Wash, cover.Moved(p.slip()))
	}
	if p.atLeastMedium() {
		p.ink(0.62, at.line(-21.5, -44, -8, -38.5, 2.5, -27, 2, -13, -4, -4))
	}
	p.ink(1.08, curve.Spline(ball...))
	if !p.full() {
		return
	}
	p.ink(0.5, thumb.line(-2.4, -70.4, -5.4, -67, -5.2, -62.6, -0.8, -60, 6, -59.4, 11.4, -60.6)) // nail
	p.ink(0.42, curve.Bow(thumb(-20, -70), thumb(-18, -62), -1.2))
	p.ink(0.34, curve.Bow(thumb(-23.4, -68.4), thumb(-22.2, -62.6), -0.9))
	under := thumb.line(12.4, -58.4, 10.6, -56, 2, -52.6, -9, -52, -18, -49.6)
	p.shade(under.Reversed(), 0.2, 0.8, 5.5, 6)
}

package hand

import "handbreadth/assets/internal/curve"

// thumbFingers are the visible outlines of the folded fingers of the reference
// fist, clockwise: along the top to the knuckle at the right and back to the
// tucked tip; from the index finger (nearest) down.
var thumbFingers = [4][]float64{
	{32.4, -2.4, 38, -2.4, 50, -2.8, 66, -1.8, 76, 2.4, 79.6, 9, 77, 15.6, 69, 18.8, 52, 19.6, 40, 19, 32.5, 16, 29.4, 10.4, 30.4, 4.6},
	{70, 18.6, 79.4, 21.6, 83.4, 28.6, 81, 35.4, 72, 38.8, 52, 39.4, 38, 38.6, 30.6, 35, 27.6, 29, 28.6, 22.6, 33, 18},
	{72, 38.8, 79, 42.2, 81.6, 48.6, 78.6, 54.6, 70, 57.6, 52, 58, 40, 57.4, 33, 54, 30, 48.4, 31, 42, 34.6, 38},
	{69, 57.8, 73.6, 61, 75, 66.4, 71.6, 72.4, 63, 75.6, 52, 76.2, 42.6, 75, 36.4, 70.6, 34.4, 65.4, 35.4, 60.6, 38.4, 57},
}

// thumbDrawn is how long the thumb is in these points, from the middle of its base
// to its tip.
const thumbDrawn = 63.2

// thumbLean turns the whole hand, degrees clockwise.
const thumbLean = -14

func drawThumb(p *pen, d Dimensions) {
	r := ratiosOf(d)
	flat := place(func(x, y float64) Point { return pt(x*r.palm, y*r.breadth) })
	upright := flat.stretched(14, 0, r.thumbBreadth, r.thumb*Reference().ThumbLength/thumbDrawn)
	at := place(func(x, y float64) Point { return flat(x, y).Turned(thumbLean) })
	thumb := place(func(x, y float64) Point { return upright(x, y).Turned(thumbLean) })
	if p.opt.Alone {
		p.thumbAlone(at, thumb)
		return
	}
	p.scale(0.75*d.PalmLength + d.ThumbLength)
	rise := curve.Join(at.line(-36, 20, -24, 15.4, -13, 9), thumb.line(-4.4, 0, 0.6, -11, 2.6, -22, 1.6, -33, -0.4, -44, 0.6, -54, 5.4, -61,
		12.6, -63.2, 19.4, -59.6, 23.4, -52, 24.2, -43, 24, -33, 25.2, -22, 26.4, -12), at.line(28.4, -5.4, 32.4, -2.8))
	heel := at.line(44, 76, 27, 80, 9, 79, -8, 73, -22, 70.6, -36, 72)
	p.fill(Paper, rise, at.line(32.4, -2.8, 66, -1.8, 80, 9, 83, 29, 75, 66, 62, 76, 44, 76), heel)
	p.thumbWash(thumb)
	for i, f := range thumbFingers {
		p.ink([]float64{0.95, 0.95, 0.95, 1.1}[i], at.line(f...))
	}
	if p.atLeastMedium() {
		p.ink(1.08, rise)
		p.ink(1.2, heel)
	} else { // a shorter arm leaves room for the hand
		p.ink(1, rise.Part(0.06, 1))
		p.ink(1, heel.Part(0, 0.8))
	}
	p.thumbFolds(thumb)
	p.fistFolds(at)
	if p.full() {
		p.shade(heel, 0.08, 0.6, 10, 10)
	}
	if p.food() {
		p.oilAndNuts(thumb)
	}
	p.span("thumb length", thumb(13, 0), thumb(13, -thumbDrawn))
}

// thumbArea is the measured thumb, from its base crease to the tip.
func thumbArea(thumb place) curve.Curve {
	return curve.Join(thumb.line(-4.4, 0, 0.6, -11, 2.6, -22, 1.6, -33, -0.4, -44, 0.6, -54, 5.4, -61,
		12.6, -63.2, 19.4, -59.6, 23.4, -52, 24.2, -43, 24, -33, 25.2, -22, 26.4, -12, 29, -5),
		thumb.line(29, -5, 22, 1, 12, 4, 3, 3.6, -4.4, 0))
}

// thumbWash is the measure itself.
func (p *pen) thumbWash(thumb place) {
	p.halvable(thumbArea(thumb), thumb(12, -30), thumb(12, -29).Sub(thumb(12, -30)), thumb.line(-1, -30, 12, -31, 27.4, -30))
}

// thumbAlone draws the thumb with the edges of the hand that run out from it.
func (p *pen) thumbAlone(at, thumb place) {
	low, high := box([]Point{thumb(0, 0), thumb(0, -thumbDrawn)})
	p.scale(2 * low.To(high))
	edge := curve.Join(at.line(-19, 14, -13, 9), thumb.line(-4.4, 0, 0.6, -11, 2.6, -22, 1.6, -33, -0.4, -44, 0.6, -54, 5.4, -61,
		12.6, -63.2, 19.4, -59.6, 23.4, -52, 24.2, -43, 24, -33, 25.2, -22, 26.4, -12), at.line(28.4, -5.4, 33, -3.2, 40, -2.6))
	p.fill(Paper, edge)
	p.thumbWash(thumb)
	p.ink(1.05, edge)
	p.thumbFolds(thumb)
	p.span("thumb length", thumb(13, 0), thumb(13, -thumbDrawn))
}

func (p *pen) thumbFolds(thumb place) {
	if !p.full() {
		return
	}
	p.ink(0.5, thumb.line(0.4, -46, 4.4, -45.6, 7, -49, 8, -55, 7.4, -60.8)) // nail, seen from the side
	p.ink(0.42, curve.Bow(thumb(4, -31.6), thumb(11, -31), -0.9))
	p.ink(0.34, curve.Bow(thumb(4, -28), thumb(9, -27.6), -0.7))
	p.ink(0.42, curve.Bow(thumb(17, -32), thumb(23, -33), -0.9))
}

// fistFolds draws the ball of the thumb and the folds of the fingers under it.
func (p *pen) fistFolds(at place) {
	if p.atLeastMedium() {
		p.ink(0.6, at.line(29, 38, 19, 36.6, 10.6, 28, 9, 16))
	}
	if !p.full() {
		return
	}
	for _, f := range [][4]float64{{67, 1.6, 66.4, 14.6}, {70.4, 22, 70, 35}, {68.8, 42, 68, 54}, {63.4, 61, 62.6, 72}} {
		p.ink(0.42, curve.Bow(at(f[0], f[1]), at(f[2], f[3]), 1.4))
	}
}

package hand

import "handbreadth/assets/internal/curve"

// fillet lies on the palm: a piece of fish of the palm's size.
func (p *pen) fillet(f palmFrame) {
	top := f.at.loop(-27, -66, -25, -84, -15, -98, 2, -104, 19, -100, 31, -88, 34, -72, 31, -54, 23, -37, 10, -22, -4, -15, -15, -20, -18, -32, -22, -48)
	side := f.at.line(34, -72, 34.4, -64, 31.5, -48, 23, -30, 10, -15, -4, -8.5, -15, -14, -18.6, -26, -18, -32)
	cut := f.at(0, -57)
	if p.opt.Half {
		p.dashed(top.Part(0, 1))
		p.area(Paper, curve.Clipped(curve.Join(top).Flat(1), cut, pt(0, 1)))
		return
	}
	p.fill(Paper, side, f.at.line(-18, -32, 34, -72))
	p.ink(1.05, side)
	p.fill(Paper, top)
	p.ink(1, top)
	if !p.atLeastMedium() {
		return
	}
	for _, y := range []float64{-88, -75, -62, -49, -36} {
		p.ink(0.5, curve.Bow(f.at(-16+(y+88)*0.12, y+4), f.at(24-(y+88)*0.18, y+4), 4))
	}
}

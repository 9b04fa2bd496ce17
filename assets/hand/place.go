package hand

import "handbreadth/assets/internal/curve"

// place puts a point of the reference hand (millimetres) where the given hand
// has it.
type place func(x, y float64) Point

// line is a smooth line through reference points given as x, y pairs.
func (at place) line(xy ...float64) curve.Curve { return curve.Spline(at.points(xy)...) }

// loop is a smooth closed line through reference points given as x, y pairs.
func (at place) loop(xy ...float64) curve.Curve { return curve.Loop(at.points(xy)...) }

func (at place) points(xy []float64) []Point {
	pts := make([]Point, len(xy)/2)
	for i := range pts {
		pts[i] = at(xy[2*i], xy[2*i+1])
	}
	return pts
}

// stretched scales about the reference point (x0, y0), which itself is placed
// by at.
func (at place) stretched(x0, y0, kx, ky float64) place {
	anchor := at(x0, y0)
	return func(x, y float64) Point { return anchor.Add(pt((x-x0)*kx, (y-y0)*ky)) }
}

// ratios are a hand's dimensions relative to the reference hand.
type ratios struct{ breadth, palm, hand, finger, thumb, thumbBreadth float64 }

func ratiosOf(d Dimensions) ratios {
	ref := Reference()
	return ratios{
		breadth:      d.PalmBreadth / ref.PalmBreadth,
		palm:         d.PalmLength / ref.PalmLength,
		hand:         d.HandLength / ref.HandLength,
		finger:       (d.HandLength - d.PalmLength) / (ref.HandLength - ref.PalmLength),
		thumb:        d.ThumbLength / ref.ThumbLength,
		thumbBreadth: d.ThumbBreadth / ref.ThumbBreadth,
	}
}

package icons

import (
	"image"
	"image/color"
	"image/draw"

	"golang.org/x/image/vector"

	"handbreadth/assets/hand"
	"handbreadth/assets/internal/curve"
)

// Colours of the program's icon.
var (
	ground = color.NRGBA{0x1E, 0x5B, 0x4F, 0xFF} // spruce
	marks  = color.NRGBA{0xF7, 0xF4, 0xEE, 0xFF} // paper
	inks   = map[hand.Role]color.NRGBA{
		hand.Ink:   {0x10, 0x33, 0x2C, 0xFF},
		hand.Wash:  {0x9F, 0xC7, 0xBB, 0xFF},
		hand.Paper: {0xF7, 0xF4, 0xEE, 0xFF},
	}
)

// App paints the program's icon, px pixels square: an open palm over a row of
// measuring ticks on spruce.
func App(px int) *image.NRGBA {
	img := image.NewNRGBA(image.Rect(0, 0, px, px))
	k := float64(px) / 100 // the icon is laid out on 100 units
	paint(img, ground, roundedSquare(k))
	d := hand.Draw(hand.Palm, hand.Reference(), hand.Options{Detail: hand.Medium})
	scale := 75 * k / d.Height
	shift := curve.Pt(50*k-d.Width*scale/2, 6.5*k)
	for _, path := range d.Paths {
		paint(img, inks[path.Fill], placed(path.Segments, scale, shift))
	}
	paint(img, ground, box(k, 20, 80, 70, 3.5))
	for i := range 15 {
		x, tall := 16.4+4.8*float64(i), 5.0
		if i%7 == 0 {
			tall = 10
		}
		paint(img, marks, box(k, x-0.8, 83.5, 1.6, tall))
	}
	return img
}

// paint fills a shape; it runs on the nonzero rule like every drawing.
func paint(img *image.NRGBA, c color.NRGBA, segs []hand.Segment) {
	r := vector.NewRasterizer(img.Rect.Dx(), img.Rect.Dy())
	r.DrawOp = draw.Over
	at := func(p curve.Point) (x, y float32) { return float32(p.X), float32(p.Y) }
	for _, s := range segs {
		x, y := at(s.P[0])
		switch s.Op {
		case hand.MoveTo:
			r.MoveTo(x, y)
		case hand.LineTo:
			r.LineTo(x, y)
		case hand.CubicTo:
			x1, y1 := at(s.P[1])
			x2, y2 := at(s.P[2])
			r.CubeTo(x, y, x1, y1, x2, y2)
		case hand.Close:
			r.ClosePath()
		}
	}
	r.Draw(img, img.Rect, image.NewUniform(c), image.Point{})
}

func placed(segs []hand.Segment, scale float64, shift curve.Point) []hand.Segment {
	out := make([]hand.Segment, len(segs))
	for i, s := range segs {
		for j := range s.P {
			s.P[j] = s.P[j].Mul(scale).Add(shift)
		}
		out[i] = s
	}
	return out
}

// box is an upright rectangle in icon units.
func box(k, x, y, w, h float64) []hand.Segment {
	return shape(k, curve.Straight(curve.Pt(x, y), curve.Pt(x+w, y), curve.Pt(x+w, y+h), curve.Pt(x, y+h)))
}

// roundedSquare is the ground.
func roundedSquare(k float64) []hand.Segment {
	const r, c = 20, 20 * 0.4477153 // corner radius; distance of its control points
	return shape(k, curve.Join(
		curve.Curve{curve.Pt(0, r), curve.Pt(0, c), curve.Pt(c, 0), curve.Pt(r, 0)},
		curve.Curve{curve.Pt(100-r, 0), curve.Pt(100-c, 0), curve.Pt(100, c), curve.Pt(100, r)},
		curve.Curve{curve.Pt(100, 100-r), curve.Pt(100, 100-c), curve.Pt(100-c, 100), curve.Pt(100-r, 100)},
		curve.Curve{curve.Pt(r, 100), curve.Pt(c, 100), curve.Pt(0, 100-c), curve.Pt(0, 100-r)},
	))
}

// shape turns a closed curve in icon units into segments in pixels.
func shape(k float64, c curve.Curve) []hand.Segment {
	segs := []hand.Segment{{Op: hand.MoveTo, P: [3]curve.Point{c[0]}}}
	for i := 1; i+2 < len(c); i += 3 {
		segs = append(segs, hand.Segment{Op: hand.CubicTo, P: [3]curve.Point{c[i], c[i+1], c[i+2]}})
	}
	return placed(append(segs, hand.Segment{Op: hand.Close}), k, curve.Point{})
}

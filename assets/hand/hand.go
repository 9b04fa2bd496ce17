// Package hand draws the four hand measures (palm, fist, cupped hand, thumb)
// from plain dimensions in millimetres.
//
// One drawing serves the icon, the screen picture and the life-size print:
// Draw returns a display list that knows nothing of the device, SVG turns it
// into a picture for the screen, and the paper side walks Drawing.Paths.
package hand

import (
	"fmt"
	"math"
)

// Dimensions are the plain sizes of one hand, in millimetres.
type Dimensions struct {
	PalmBreadth  float64 // across the knuckles of the four fingers, without the thumb
	PalmLength   float64 // from the wrist crease to the base of the middle finger
	HandLength   float64 // from the wrist crease to the tip of the middle finger
	ThumbLength  float64 // from the crease at the thumb's base to its tip
	ThumbBreadth float64 // across the thumb's middle joint
}

// Mean hand sizes of the ANSUR II survey (US Army, 2012, open data: 4082 men,
// 1986 women), millimetres.
const (
	ansurBreadthMen      = 88.26
	ansurBreadthWomen    = 78.15
	ansurPalmMen         = 116.46
	ansurPalmWomen       = 108.70
	ansurHandLengthMen   = 193.28
	ansurHandLengthWomen = 181.08
)

// ANSUR II did not measure the thumb. These shares are drawing conventions, no
// source: the thumb is about a third of the hand's length and a quarter of the
// palm's breadth.
const (
	thumbLengthShare  = 0.34
	thumbBreadthShare = 0.26
)

// Reference is the hand that the drawings were made for: the mean of the
// ANSUR II male and female means, with the thumb by convention.
func Reference() Dimensions {
	return WithThumb(Dimensions{
		PalmBreadth: (ansurBreadthMen + ansurBreadthWomen) / 2,
		PalmLength:  (ansurPalmMen + ansurPalmWomen) / 2,
		HandLength:  (ansurHandLengthMen + ansurHandLengthWomen) / 2,
	})
}

// WithThumb fills in a thumb that was not measured, by the drawing convention
// (0.34 of the hand's length, 0.26 of the palm's breadth). Measured values stay.
func WithThumb(d Dimensions) Dimensions {
	if d.ThumbLength == 0 {
		d.ThumbLength = thumbLengthShare * d.HandLength
	}
	if d.ThumbBreadth == 0 {
		d.ThumbBreadth = thumbBreadthShare * d.PalmBreadth
	}
	return d
}

// Measure is one of the four hand measures.
type Measure int

// The four hand measures.
const (
	Palm Measure = iota
	Fist
	CuppedHand
	Thumb
)

// Measures lists the four in the order in which they are shown.
func Measures() []Measure { return []Measure{Palm, Fist, CuppedHand, Thumb} }

// String names the measure in plain English.
func (m Measure) String() string {
	switch m {
	case Palm:
		return "palm"
	case Fist:
		return "fist"
	case CuppedHand:
		return "cupped hand"
	case Thumb:
		return "thumb"
	}
	return fmt.Sprintf("measure %d", int(m))
}

// Detail says how much is drawn. Fewer, heavier lines read better when small.
type Detail int

// The levels of detail.
const (
	Full   Detail = iota // larger than about 110 pixels or 25 mm: all lines
	Medium               // about 45 to 110 pixels: main lines
	Small                // under about 45 pixels: the shape
)

// DetailFor chooses the detail for a picture whose longer side is px device
// pixels.
func DetailFor(px float64) Detail {
	switch {
	case px < 45:
		return Small
	case px < 110:
		return Medium
	}
	return Full
}

// Options choose what is drawn. The zero value is the whole measure, without
// food, with all lines.
type Options struct {
	Half bool // half a measure: the wash covers half, a dashed line marks the cut
	// WithFood shows food in or beside the hand: a piece of fish on the palm, a
	// floret by the fist, oil and nuts by the thumb; halved with the measure. The
	// cupped hand always holds its grains. Small pictures have no room for food.
	WithFood bool
	// Alone draws the thumb without the fist under it, for a sheet that has no room
	// for it at life size. The other measures do not heed it.
	Alone  bool
	Detail Detail
}

// Draw draws one measure of a hand with the given dimensions at 1:1, in
// millimetres. Every part lies inside the drawing's box. A size that cannot be
// (not positive, not finite) takes its reference value, or the share of the
// other sizes that the reference hand has; a hand is drawn at least a fifth
// longer than its palm, and no size is under half or over twice the reference.
func Draw(m Measure, d Dimensions, opt Options) Drawing {
	d = sane(d)
	p := newPen(opt)
	switch m {
	case Fist:
		drawFist(p, d)
	case CuppedHand:
		drawCupped(p, d)
	case Thumb:
		drawThumb(p, d)
	default:
		drawPalm(p, d)
	}
	return p.finish()
}

// sane replaces sizes that cannot be drawn.
func sane(d Dimensions) Dimensions {
	ref := Reference()
	d.PalmBreadth = sizeOr(d.PalmBreadth, ref.PalmBreadth)
	d.PalmLength = sizeOr(d.PalmLength, ref.PalmLength)
	d.HandLength = sizeOr(d.HandLength, d.PalmLength*ref.HandLength/ref.PalmLength)
	d.HandLength = max(d.HandLength, 1.2*d.PalmLength)
	d.ThumbLength = sizeOr(d.ThumbLength, 0)
	d.ThumbBreadth = sizeOr(d.ThumbBreadth, 0)
	d = WithThumb(d)
	d.PalmBreadth = within(d.PalmBreadth, ref.PalmBreadth)
	d.PalmLength = within(d.PalmLength, ref.PalmLength)
	d.HandLength = max(within(d.HandLength, ref.HandLength), 1.2*d.PalmLength)
	thumb := WithThumb(ref)
	d.ThumbLength = within(d.ThumbLength, thumb.ThumbLength)
	d.ThumbBreadth = within(d.ThumbBreadth, thumb.ThumbBreadth)
	return d
}

// within keeps a size between half and twice that of the reference hand: every
// adult hand lies well inside, and lines cannot be drawn around what does not.
func within(mm, reference float64) float64 { return min(max(mm, reference/2), 2*reference) }

// sizeOr returns mm if it is a size, else the fallback.
func sizeOr(mm, fallback float64) float64 {
	if mm > 0 && !math.IsInf(mm, 1) {
		return mm
	}
	return fallback
}

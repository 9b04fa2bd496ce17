package hand

import "handbreadth/assets/internal/curve"

// Role says what a fill or a line is made of; the device chooses the colour.
type Role int

// The roles.
const (
	Paper Role = iota // the ground: hides what lies behind
	Wash              // the one tint
	Ink               // the line
)

// Op is what a segment does.
type Op int

// The segment kinds.
const (
	MoveTo  Op = iota // one point: P[0]
	LineTo            // one point: P[0]
	CubicTo           // two control points and the end: P[0], P[1], P[2]
	Close             // no point: back to the last MoveTo
)

// Point is a place in the drawing, in millimetres from its top left corner,
// y downwards.
type Point = curve.Point

func pt(x, y float64) Point { return curve.Pt(x, y) }

// Segment is one step of a path.
type Segment struct {
	Op Op
	P  [3]Point
}

// Path is one filled shape (nonzero winding). Lines are shapes too: each is the
// outline of a pen stroke of varying weight, so a device only ever fills.
type Path struct {
	Segments []Segment
	Fill     Role
}

// Span is a distance in the drawing that equals one of the dimensions, so that
// a life-size sheet can mark it and a test can measure it.
type Span struct {
	Name     string // "palm breadth", "palm length", "hand length", "thumb length"
	From, To Point
}

// Drawing is a display list in millimetres. Paths are painted in order.
type Drawing struct {
	Width, Height float64
	Paths         []Path
	Spans         []Span
}

// Bounds returns the smallest box that holds every point of the drawing,
// control points included.
func (d Drawing) Bounds() (low, high Point) {
	first := true
	for _, path := range d.Paths {
		for _, seg := range path.Segments {
			for _, q := range seg.points() {
				if first {
					low, high, first = q, q, false
				}
				low = pt(min(low.X, q.X), min(low.Y, q.Y))
				high = pt(max(high.X, q.X), max(high.Y, q.Y))
			}
		}
	}
	return low, high
}

// points returns the points that a segment uses.
func (s Segment) points() []Point {
	switch s.Op {
	case Close:
		return nil
	case CubicTo:
		return s.P[:]
	}
	return s.P[:1]
}

// moved returns the segment shifted by v.
func (s Segment) moved(v Point) Segment {
	for i := range s.P {
		s.P[i] = s.P[i].Add(v)
	}
	return s
}

package hand

// Role says what a fill or a line is made of; the device chooses the colour.
type Role int

// The roles. None paints nothing.
const (
	None  Role = iota
	Paper      // the ground: hides what lies behind
	Wash       // the one tint
	Ink        // the line
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
type Point struct{ X, Y float64 }

// Segment is one step of a path.
type Segment struct {
	Op Op
	P  [3]Point
}

// Path is one shape. It is filled first (nonzero winding), then stroked with
// round caps and joins.
type Path struct {
	Segments []Segment
	Fill     Role
	Stroke   Role
	Width    float64   // line width in millimetres, when Stroke is not None
	Dash     []float64 // dash and gap lengths in millimetres; empty is solid
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

// Bounds returns the smallest box that holds every point of the drawing with
// its line width, control points included.
func (d Drawing) Bounds() (low, high Point) {
	first := true
	for _, path := range d.Paths {
		r := 0.0
		if path.Stroke != None {
			r = path.Width / 2
		}
		for _, seg := range path.Segments {
			for _, q := range seg.points() {
				if first {
					low, high, first = q, q, false
				}
				low = Point{min(low.X, q.X-r), min(low.Y, q.Y-r)}
				high = Point{max(high.X, q.X+r), max(high.Y, q.Y+r)}
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
		s.P[i] = s.P[i].add(v)
	}
	return s
}

// Package curve is the small geometry behind the drawings and the icons:
// points, smooth lines, and lines turned into filled outlines (the screen's
// picture reader does not scale line widths, so nothing is drawn with them).
package curve

import "math"

// Point is a place in a drawing, y downwards.
type Point struct{ X, Y float64 }

// Pt is a short way to write a point.
func Pt(x, y float64) Point { return Point{x, y} }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns p - q.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Mul returns p scaled by k.
func (p Point) Mul(k float64) Point { return Point{p.X * k, p.Y * k} }

// Dot returns the scalar product.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y }

// Length returns the distance from the origin.
func (p Point) Length() float64 { return math.Hypot(p.X, p.Y) }

// To returns the distance to q.
func (p Point) To(q Point) float64 { return q.Sub(p).Length() }

// Turned returns p turned about the origin, clockwise on screen.
func (p Point) Turned(deg float64) Point {
	s, c := math.Sincos(deg * math.Pi / 180)
	return Point{p.X*c - p.Y*s, p.X*s + p.Y*c}
}

// Unit returns the direction of p, or zero.
func (p Point) Unit() Point {
	if n := p.Length(); n > 0 {
		return p.Mul(1 / n)
	}
	return Point{}
}

// Lerp returns the point at share t of the way from p to q.
func Lerp(p, q Point, t float64) Point { return p.Add(q.Sub(p).Mul(t)) }

// Curve is a chain of cubic Bezier pieces: 3n+1 points.
type Curve []Point

// Spline passes a smooth curve through the points (Catmull-Rom with
// centripetal parameters, which neither loops nor overshoots).
func Spline(pts ...Point) Curve {
	n := len(pts)
	if n < 2 {
		return Curve(pts)
	}
	out := Curve{pts[0]}
	for i := 0; i+1 < n; i++ {
		third := knot(pts[i], pts[i+1]) / 3
		out = append(out, pts[i].Add(tangent(pts, i).Mul(third)),
			pts[i+1].Sub(tangent(pts, i+1).Mul(third)), pts[i+1])
	}
	return out
}

// Loop passes a smooth closed curve through three points or more.
func Loop(pts ...Point) Curve {
	n := len(pts)
	ring := append(append(append([]Point{}, pts[n-2:]...), pts...), pts[:3]...)
	return Spline(ring...)[6 : 3*(n+2)+1]
}

// Bow is a shallow arc from a to b that rises sag to the left of the way (on
// screen: to the outer side of a clockwise turn).
func Bow(a, b Point, sag float64) Curve {
	d := b.Sub(a)
	rise := Pt(d.Y, -d.X).Unit().Mul(sag * 4 / 3)
	return Curve{a, Lerp(a, b, 0.3).Add(rise), Lerp(a, b, 0.7).Add(rise), b}
}

// knot is the centripetal parameter step between two points.
func knot(a, b Point) float64 { return math.Sqrt(a.To(b)) }

// tangent is the derivative of the spline at point i.
func tangent(pts []Point, i int) Point {
	last := len(pts) - 1
	if i == 0 {
		return slope(pts[0], pts[1])
	}
	if i == last {
		return slope(pts[last-1], pts[last])
	}
	in, out := slope(pts[i-1], pts[i]), slope(pts[i], pts[i+1])
	ti, to := knot(pts[i-1], pts[i]), knot(pts[i], pts[i+1])
	if ti+to == 0 {
		return Point{}
	}
	return in.Mul(to / (ti + to)).Add(out.Mul(ti / (ti + to)))
}

func slope(a, b Point) Point {
	if k := knot(a, b); k > 0 {
		return b.Sub(a).Mul(1 / k)
	}
	return Point{}
}

// Join chains curves; where one does not start at the end of the other, a
// straight piece closes the gap.
func Join(cs ...Curve) Curve {
	var out Curve
	for _, c := range cs {
		if len(c) == 0 {
			continue
		}
		if len(out) == 0 {
			out = append(out, c...)
			continue
		}
		if a, b := out[len(out)-1], c[0]; a.To(b) > 1e-9 {
			out = append(out, Lerp(a, b, 1.0/3), Lerp(a, b, 2.0/3), b)
		}
		out = append(out, c[1:]...)
	}
	return out
}

// Straight joins points by straight pieces.
func Straight(pts ...Point) Curve {
	out := Curve{pts[0]}
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		out = append(out, Lerp(a, b, 1.0/3), Lerp(a, b, 2.0/3), b)
	}
	return out
}

// Reversed returns the curve run backwards.
func (c Curve) Reversed() Curve {
	out := make(Curve, len(c))
	for i, p := range c {
		out[len(c)-1-i] = p
	}
	return out
}

// Moved returns the curve shifted by v.
func (c Curve) Moved(v Point) Curve {
	out := make(Curve, len(c))
	for i, p := range c {
		out[i] = p.Add(v)
	}
	return out
}

// Flat returns points along the curve, at most about step apart.
func (c Curve) Flat(step float64) []Point {
	if len(c) == 0 {
		return nil
	}
	out := []Point{c[0]}
	for i := 0; i+3 < len(c); i += 3 {
		rough := c[i].To(c[i+1]) + c[i+1].To(c[i+2]) + c[i+2].To(c[i+3])
		n := max(1, int(math.Ceil(rough/step)))
		for j := 1; j <= n; j++ {
			out = append(out, bezier(c[i:i+4], float64(j)/float64(n)))
		}
	}
	return out
}

func bezier(c []Point, t float64) Point {
	u := 1 - t
	return c[0].Mul(u * u * u).Add(c[1].Mul(3 * u * u * t)).Add(c[2].Mul(3 * u * t * t)).Add(c[3].Mul(t * t * t))
}

// Part returns the stretch of the curve between two shares (0 to 1) of its
// length.
func (c Curve) Part(from, to float64) Curve {
	s := Sample(c, 0.5)
	total := s.Total()
	step := math.Max(1.5, total*(to-from)/60)
	var out []Point
	next := from * total
	for i, q := range s.At {
		if s.Run[i] >= next && s.Run[i] <= to*total+1e-9 {
			out = append(out, q)
			next = s.Run[i] + step
		}
	}
	return Spline(out...)
}

// Clipped returns the part of a closed polygon on the side of the line through
// on to which normal points (Sutherland and Hodgman's method).
func Clipped(poly []Point, on, normal Point) []Point {
	var out []Point
	for i, cur := range poly {
		prev := poly[(i+len(poly)-1)%len(poly)]
		dc, dp := cur.Sub(on).Dot(normal), prev.Sub(on).Dot(normal)
		if (dc >= 0) != (dp >= 0) {
			out = append(out, Lerp(prev, cur, dp/(dp-dc)))
		}
		if dc >= 0 {
			out = append(out, cur)
		}
	}
	return out
}

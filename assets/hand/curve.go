package hand

import "math"

func pt(x, y float64) Point { return Point{x, y} }

func (p Point) add(q Point) Point      { return Point{p.X + q.X, p.Y + q.Y} }
func (p Point) sub(q Point) Point      { return Point{p.X - q.X, p.Y - q.Y} }
func (p Point) mul(k float64) Point    { return Point{p.X * k, p.Y * k} }
func (p Point) dot(q Point) float64    { return p.X*q.X + p.Y*q.Y }
func (p Point) length() float64        { return math.Hypot(p.X, p.Y) }
func (p Point) to(q Point) float64     { return q.sub(p).length() }
func lerp(p, q Point, t float64) Point { return p.add(q.sub(p).mul(t)) }
func (p Point) turned(deg float64) Point { // clockwise on screen
	s, c := math.Sincos(deg * math.Pi / 180)
	return Point{p.X*c - p.Y*s, p.X*s + p.Y*c}
}

// unit returns the direction of p, or zero.
func (p Point) unit() Point {
	if n := p.length(); n > 0 {
		return p.mul(1 / n)
	}
	return Point{}
}

// curve is a chain of cubic Bezier pieces: 3n+1 points.
type curve []Point

// spline passes a smooth curve through the points (Catmull-Rom with
// centripetal parameters, which neither loops nor overshoots).
func spline(pts ...Point) curve {
	n := len(pts)
	if n < 2 {
		return curve(pts)
	}
	out := curve{pts[0]}
	for i := 0; i+1 < n; i++ {
		out = append(out, pts[i].add(tangent(pts, i).mul(knot(pts[i], pts[i+1])/3)),
			pts[i+1].sub(tangent(pts, i+1).mul(knot(pts[i], pts[i+1])/3)), pts[i+1])
	}
	return out
}

// loop passes a smooth closed curve through the points.
func loop(pts ...Point) curve {
	n := len(pts)
	ring := append(append(append([]Point{}, pts[n-2:]...), pts...), pts[:3]...)
	full := spline(ring...)
	return full[3*2 : 3*(n+2)+1]
}

// knot is the centripetal parameter step between two points.
func knot(a, b Point) float64 { return math.Sqrt(a.to(b)) }

// tangent is the derivative of the spline at point i.
func tangent(pts []Point, i int) Point {
	last := len(pts) - 1
	if last == 0 {
		return Point{}
	}
	if i == 0 || i == last {
		a, b := 0, 1
		if i == last {
			a, b = last-1, last
		}
		return slope(pts[a], pts[b])
	}
	in, out := slope(pts[i-1], pts[i]), slope(pts[i], pts[i+1])
	ti, to := knot(pts[i-1], pts[i]), knot(pts[i], pts[i+1])
	if ti+to == 0 {
		return Point{}
	}
	return in.mul(to / (ti + to)).add(out.mul(ti / (ti + to)))
}

func slope(a, b Point) Point {
	if k := knot(a, b); k > 0 {
		return b.sub(a).mul(1 / k)
	}
	return Point{}
}

// join chains curves; where one does not start at the end of the other, a
// straight piece closes the gap.
func join(cs ...curve) curve {
	var out curve
	for _, c := range cs {
		if len(c) == 0 {
			continue
		}
		if len(out) == 0 {
			out = append(out, c...)
			continue
		}
		if a, b := out[len(out)-1], c[0]; a.to(b) > 1e-9 {
			out = append(out, lerp(a, b, 1.0/3), lerp(a, b, 2.0/3), b)
		}
		out = append(out, c[1:]...)
	}
	return out
}

// reversed returns the curve run backwards.
func (c curve) reversed() curve {
	out := make(curve, len(c))
	for i, p := range c {
		out[len(c)-1-i] = p
	}
	return out
}

// moved returns the curve shifted by v.
func (c curve) moved(v Point) curve {
	out := make(curve, len(c))
	for i, p := range c {
		out[i] = p.add(v)
	}
	return out
}

// flat returns points along the curve, about step millimetres apart.
func (c curve) flat(step float64) []Point {
	if len(c) == 0 {
		return nil
	}
	out := []Point{c[0]}
	for i := 0; i+3 < len(c); i += 3 {
		a, b, d, e := c[i], c[i+1], c[i+2], c[i+3]
		rough := a.to(b) + b.to(d) + d.to(e)
		n := max(1, int(math.Ceil(rough/step)))
		for j := 1; j <= n; j++ {
			out = append(out, bezier(a, b, d, e, float64(j)/float64(n)))
		}
	}
	return out
}

func bezier(a, b, c, d Point, t float64) Point {
	u := 1 - t
	return a.mul(u * u * u).add(b.mul(3 * u * u * t)).add(c.mul(3 * u * t * t)).add(d.mul(t * t * t))
}

// part returns the stretch of the curve between two shares (0 to 1) of its
// length, as a curve.
func (c curve) part(from, to float64) curve {
	pts := c.flat(0.5)
	var total float64
	for i := 1; i < len(pts); i++ {
		total += pts[i-1].to(pts[i])
	}
	var out []Point
	run, next := 0.0, from*total
	step := math.Max(2, total*(to-from)/40)
	for i := 1; i < len(pts); i++ {
		run += pts[i-1].to(pts[i])
		if run >= next && run <= to*total+1e-9 {
			out = append(out, pts[i])
			next = run + step
		}
	}
	return spline(out...)
}

// clipped returns the part of a closed polygon on the side of the line through
// on to which normal points (Sutherland and Hodgman's method).
func clipped(poly []Point, on, normal Point) []Point {
	var out []Point
	for i, cur := range poly {
		prev := poly[(i+len(poly)-1)%len(poly)]
		dc, dp := cur.sub(on).dot(normal), prev.sub(on).dot(normal)
		if (dc >= 0) != (dp >= 0) {
			out = append(out, lerp(prev, cur, dp/(dp-dc)))
		}
		if dc >= 0 {
			out = append(out, cur)
		}
	}
	return out
}

// crossings returns where the closed polygon meets the line through on along
// dir, as distances from on, unsorted.
func crossings(poly []Point, on, dir Point) []float64 {
	normal := pt(-dir.Y, dir.X)
	var out []float64
	for i, cur := range poly {
		prev := poly[(i+len(poly)-1)%len(poly)]
		dc, dp := cur.sub(on).dot(normal), prev.sub(on).dot(normal)
		if (dc >= 0) != (dp >= 0) {
			out = append(out, lerp(prev, cur, dp/(dp-dc)).sub(on).dot(dir))
		}
	}
	return out
}

package hand

import (
	"math"

	"handbreadth/assets/internal/curve"
)

// Line weights are shares of the drawing's longer side, so that pictures of the
// same size have the same line: about 1.5 pixels in an icon, about 1 mm at life
// size.
var weightShare = [...]float64{Full: 0.0074, Medium: 0.021, Small: 0.045}

// lightFrom points away from the light (upper left): lines whose outer side
// faces this way come out heavier.
var lightFrom = pt(0.55, 0.83)

// pen collects the paths of one drawing.
type pen struct {
	out    Drawing
	opt    Options
	weight float64     // the normal line, mm
	cut    curve.Curve // the cut of a half measure, if any
	lines  int         // counts lines, so that each wavers in its own way
}

func newPen(opt Options) *pen {
	opt.Detail = min(max(opt.Detail, Full), Small)
	return &pen{opt: opt, weight: 1}
}

// scale tells the pen the longer side of the drawing to come, in millimetres.
func (p *pen) scale(side float64) { p.weight = weightShare[p.opt.Detail] * side }

// full and atLeastMedium say which lines are wanted; food says whether to draw
// food, for which icons have no room.
func (p *pen) full() bool          { return p.opt.Detail == Full }
func (p *pen) atLeastMedium() bool { return p.opt.Detail != Small }
func (p *pen) food() bool          { return p.opt.WithFood && p.atLeastMedium() }

// slip is how far the wash misses the line, as a brush does: a sliver of paper
// stays on the side of the light.
func (p *pen) slip() Point {
	if p.atLeastMedium() {
		return pt(1.1, 0.9)
	}
	return Point{}
}

// fill paints the area that the curves enclose.
func (p *pen) fill(role Role, cs ...curve.Curve) {
	if c := curve.Join(cs...); len(c) >= 4 {
		p.out.Paths = append(p.out.Paths, Path{Segments: closed(c), Fill: role})
	}
}

// append adds another area to the path that was painted last.
func (p *pen) append(c curve.Curve) {
	last := &p.out.Paths[len(p.out.Paths)-1]
	last.Segments = append(last.Segments, closed(c)...)
}

// closed turns a curve into the segments of a closed shape.
func closed(c curve.Curve) []Segment {
	segs := []Segment{{Op: MoveTo, P: [3]Point{c[0]}}}
	for i := 1; i+2 < len(c); i += 3 {
		segs = append(segs, Segment{Op: CubicTo, P: [3]Point{c[i], c[i+1], c[i+2]}})
	}
	return append(segs, Segment{Op: Close})
}

// area paints a polygon.
func (p *pen) area(role Role, poly []Point) {
	if len(poly) < 3 {
		return
	}
	segs := []Segment{{Op: MoveTo, P: [3]Point{poly[0]}}}
	for _, q := range poly[1:] {
		segs = append(segs, Segment{Op: LineTo, P: [3]Point{q}})
	}
	p.out.Paths = append(p.out.Paths, Path{Segments: append(segs, Segment{Op: Close}), Fill: role})
}

// halvable washes an area, or for a half measure the part of it on the side of
// the cut to which keep points; the cut itself is drawn last, over all lines.
func (p *pen) halvable(area curve.Curve, on, keep Point, cut curve.Curve) {
	area = area.Moved(p.slip())
	if !p.opt.Half {
		p.fill(Wash, area)
		return
	}
	p.area(Wash, curve.Clipped(area.Flat(1.2), on, keep))
	p.cut = cut
}

// dashed draws an even broken line: the cut of a half measure.
func (p *pen) dashed(c curve.Curve) {
	if len(c) < 4 {
		return
	}
	w := 0.85 * p.weight
	total := curve.Sample(c, 0.5).Total()
	n := max(2, math.Round((total+2.2*w)/(5.4*w)))
	dash := 0.58 * total / (n - 0.42)
	for k := range int(n) {
		from := float64(k) * (total - dash) / (n - 1)
		p.stroke(c.Part(from/total, (from+dash)/total), w/2)
	}
}

// stroke draws a line of even weight.
func (p *pen) stroke(c curve.Curve, half float64) {
	if len(c) < 4 {
		return
	}
	p.fill(Ink, curve.Ribbon(curve.Sample(c, 0.8), func(int) (float64, float64) { return half, half }))
}

// ink draws one line with the pen: weight is relative to the normal line. The
// outline of a shape runs clockwise on screen, so that its outer side is to
// the left and the side away from the light comes out heavier.
func (p *pen) ink(weight float64, cs ...curve.Curve) { p.line(weight, true, cs...) }

// inkFrom draws a line that starts at full weight, to continue another line.
func (p *pen) inkFrom(weight float64, cs ...curve.Curve) { p.line(weight, false, cs...) }

func (p *pen) line(weight float64, taperStart bool, cs ...curve.Curve) {
	c := curve.Join(cs...)
	if len(c) < 4 {
		return
	}
	p.lines++
	w := weight * p.weight
	if p.opt.Detail == Small {
		p.stroke(c, w/2)
		return
	}
	s := curve.Sample(c, 0.8)
	sway := 0.1 * math.Min(w, 2)
	p.fill(Ink, curve.Ribbon(s, func(i int) (float64, float64) {
		half := w / 2 * p.pressure(s, i, taperStart)
		off := sway * p.waver(s.Run[i])
		return half + off, half - off
	}))
}

// pressure is the line's relative weight at a sample: lighter on the side of
// the light, tapered at the ends, slightly uneven.
func (p *pen) pressure(s curve.Samples, i int, taperStart bool) float64 {
	k := 1 + 0.34*s.Normal[i].Dot(lightFrom) + 0.13*p.waver(s.Run[i]*0.7+31)
	reach := math.Min(0.28*s.Total(), 11*math.Max(p.weight, 0.6))
	if taperStart {
		k *= taper(s.Run[i] / reach)
	}
	return k * taper((s.Total()-s.Run[i])/reach)
}

// taper rises from a fine point to full weight.
func taper(x float64) float64 {
	if x >= 1 {
		return 1
	}
	return 0.22 + 0.78*math.Sin(x*math.Pi/2)
}

// waver is a smooth, repeatable unevenness between -1 and 1 along a line.
func (p *pen) waver(run float64) float64 {
	phase := float64(p.lines) * 2.399963 // the golden angle spreads the phases
	return 0.6*math.Sin(run/9.7+phase) + 0.4*math.Sin(run/4.3+2.1*phase)
}

// openAt cuts a closed polygon open where it runs along the upright line x, and
// returns the rest as lines.
func openAt(poly []Point, x float64) []curve.Curve {
	on := func(q Point) bool { return math.Abs(q.X-x) < 1e-6 }
	start := 0
	for i, q := range poly {
		if on(q) {
			start = i
		}
	}
	var out []curve.Curve
	var run []Point
	for k := range len(poly) + 1 {
		q := poly[(start+k)%len(poly)]
		run = append(run, q)
		if !on(q) {
			continue
		}
		if len(run) > 2 {
			out = append(out, curve.Straight(run...))
		}
		run = []Point{q}
	}
	return out
}

// dashedOpen and inkOpen draw what openAt leaves.
func (p *pen) dashedOpen(poly []Point, x float64) {
	for _, c := range openAt(poly, x) {
		p.dashed(c)
	}
}

func (p *pen) inkOpen(poly []Point, x float64) {
	for _, c := range openAt(poly, x) {
		p.ink(1.05, c)
	}
}

// shade hatches the inner side of an outline between two shares of its length:
// n short strokes that leave the line and run out, longest in the middle.
func (p *pen) shade(c curve.Curve, from, to, length float64, n int) {
	s := curve.Sample(c, 0.5)
	for i := range n {
		t := (float64(i) + 0.5) / float64(n)
		k := s.Nearest(s.Total() * (from + (to-from)*t))
		reach := length * (0.5 + 0.5*math.Sin(math.Pi*t) + 0.14*math.Sin(float64(i)*2.3))
		dir := s.Normal[k].Mul(-1).Turned(24)
		p.inkFrom(0.44, curve.Bow(s.At[k], s.At[k].Add(dir.Mul(reach)), 0.05*reach))
	}
}

// span records a distance that equals a dimension.
func (p *pen) span(name string, from, to Point) {
	p.out.Spans = append(p.out.Spans, Span{name, from, to})
}

// finish moves the drawing into its box with a small margin.
func (p *pen) finish() Drawing {
	p.dashed(p.cut)
	low, high := p.out.Bounds()
	margin := 0.6 * p.weight
	shift := pt(margin, margin).Sub(low)
	for i := range p.out.Paths {
		for j := range p.out.Paths[i].Segments {
			p.out.Paths[i].Segments[j] = p.out.Paths[i].Segments[j].moved(shift)
		}
	}
	for i, s := range p.out.Spans {
		p.out.Spans[i].From, p.out.Spans[i].To = s.From.Add(shift), s.To.Add(shift)
	}
	p.out.Width, p.out.Height = high.X-low.X+2*margin, high.Y-low.Y+2*margin
	return p.out
}

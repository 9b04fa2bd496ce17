package hand

import "math"

// Line weights. Full is a length on paper; the smaller levels are shares of
// the drawing's longer side, so that a line is about 1.5 pixels in an icon.
const (
	fullWeight  = 1.15 // mm
	mediumShare = 0.021
	smallShare  = 0.047
)

// pen collects the paths of one drawing.
type pen struct {
	out    Drawing
	opt    Options
	weight float64 // the normal line, mm
	lines  int     // counts lines, so that each wavers in its own way
}

func newPen(opt Options) *pen { return &pen{opt: opt, weight: fullWeight} }

// scale tells the pen the longer side of the drawing to come, in millimetres.
func (p *pen) scale(side float64) {
	switch p.opt.Detail {
	case Medium:
		p.weight = mediumShare * side
	case Small:
		p.weight = smallShare * side
	}
}

// full and atLeastMedium say which lines are wanted.
func (p *pen) full() bool          { return p.opt.Detail == Full }
func (p *pen) atLeastMedium() bool { return p.opt.Detail != Small }

// fill paints the area that the curves enclose.
func (p *pen) fill(role Role, cs ...curve) {
	c := join(cs...)
	if len(c) < 4 {
		return
	}
	p.out.Paths = append(p.out.Paths, Path{Segments: closed(c), Fill: role})
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

func closed(c curve) []Segment { return append(open(c), Segment{Op: Close}) }

func open(c curve) []Segment {
	segs := []Segment{{Op: MoveTo, P: [3]Point{c[0]}}}
	for i := 1; i+2 < len(c); i += 3 {
		segs = append(segs, Segment{Op: CubicTo, P: [3]Point{c[i], c[i+1], c[i+2]}})
	}
	return segs
}

// dashed draws an even broken line: the cut of a half measure.
func (p *pen) dashed(cs ...curve) {
	w := 0.8 * p.weight
	p.out.Paths = append(p.out.Paths, Path{
		Segments: open(join(cs...)), Stroke: Ink, Width: w, Dash: []float64{2.6 * w, 2.6 * w},
	})
}

// ink draws one line with the pen: weight is relative to the normal line. The
// outline of a shape runs clockwise on screen, so that its outer side is to
// the left and the side away from the light comes out heavier.
func (p *pen) ink(weight float64, cs ...curve) { p.line(weight, true, true, cs...) }

// inkFrom draws a line that starts at full weight, to continue another line.
func (p *pen) inkFrom(weight float64, cs ...curve) { p.line(weight, false, true, cs...) }

func (p *pen) line(weight float64, taperStart, taperEnd bool, cs ...curve) {
	c := join(cs...)
	if len(c) < 4 {
		return
	}
	p.lines++
	w := weight * p.weight
	if p.opt.Detail == Small {
		p.out.Paths = append(p.out.Paths, Path{Segments: open(c), Stroke: Ink, Width: w})
		return
	}
	s := sampled(c, 0.8)
	left := make([]Point, len(s.at))
	right := make([]Point, len(s.at))
	for i, q := range s.at {
		n := s.normal[i]
		half := w / 2 * p.pressure(s, i, n, taperStart, taperEnd)
		q = q.add(n.mul(p.waver(s.run[i]) * 0.16 * math.Min(w, 2)))
		left[i], right[i] = q.add(n.mul(half)), q.sub(n.mul(half))
	}
	p.out.Paths = append(p.out.Paths, Path{Segments: ribbon(s, left, right), Fill: Ink})
}

// pressure is the line's relative weight at a sample: lighter on the side of
// the light, tapered at the ends, slightly uneven.
func (p *pen) pressure(s samples, i int, n Point, taperStart, taperEnd bool) float64 {
	light := n.dot(pt(0.55, 0.83)) // outer normal against the shadow side
	k := 1 + 0.34*light + 0.13*p.waver(s.run[i]*0.7+31)
	total := s.run[len(s.run)-1]
	reach := math.Min(0.28*total, 11*math.Max(p.weight, 0.6))
	if taperStart {
		k *= taper(s.run[i] / reach)
	}
	if taperEnd {
		k *= taper((total - s.run[i]) / reach)
	}
	return k
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

// samples are points along a curve with their left normals (outer side of a
// clockwise outline) and the distance run.
type samples struct {
	at, normal []Point
	run        []float64
}

func sampled(c curve, step float64) samples {
	var s samples
	run := 0.0
	for _, q := range c.flat(step) {
		if n := len(s.at); n > 0 {
			d := s.at[n-1].to(q)
			if d < 0.2*step {
				continue
			}
			run += d
		}
		s.at, s.run = append(s.at, q), append(s.run, run)
	}
	s.normal = make([]Point, len(s.at))
	for i := range s.at {
		a, b := s.at[max(0, i-1)], s.at[min(len(s.at)-1, i+1)]
		d := b.sub(a).unit()
		s.normal[i] = pt(d.Y, -d.X)
	}
	return s
}

// ribbon closes the two sides of a line into one outline, keeping only the
// samples that its curvature needs.
func ribbon(s samples, left, right []Point) []Segment {
	keep := needed(s)
	a := make([]Point, 0, len(keep))
	b := make([]Point, 0, len(keep))
	for _, i := range keep {
		a = append(a, left[i])
		b = append(b, right[i])
	}
	for i, j := 0, len(b)-1; i < j; i, j = i+1, j-1 {
		b[i], b[j] = b[j], b[i]
	}
	return closed(join(spline(a...), rounded(a[len(a)-1], b[0]), spline(b...), rounded(b[len(b)-1], a[0])))
}

// rounded is a half circle from a to b, turning clockwise.
func rounded(a, b Point) curve {
	d := b.sub(a)
	n := pt(d.Y, -d.X).mul(0.66)
	return curve{a, a.add(n), b.add(n), b}
}

// needed picks samples: close together in bends, up to 9 mm apart on straights.
func needed(s samples) []int {
	keep := []int{0}
	bend, last := 0.0, 0
	for i := 1; i < len(s.at)-1; i++ {
		bend += math.Acos(math.Max(-1, math.Min(1, s.normal[i].dot(s.normal[i-1]))))
		if bend > 0.16 || s.run[i]-s.run[last] > 9 {
			keep, bend, last = append(keep, i), 0, i
		}
	}
	return append(keep, len(s.at)-1)
}

// span records a distance that equals a dimension.
func (p *pen) span(name string, from, to Point) {
	p.out.Spans = append(p.out.Spans, Span{name, from, to})
}

// finish moves the drawing into its box with a small margin and drops nothing.
func (p *pen) finish() Drawing {
	low, high := p.out.Bounds()
	margin := p.weight
	shift := pt(margin, margin).sub(low)
	for i := range p.out.Paths {
		for j := range p.out.Paths[i].Segments {
			p.out.Paths[i].Segments[j] = p.out.Paths[i].Segments[j].moved(shift)
		}
	}
	for i, s := range p.out.Spans {
		p.out.Spans[i].From, p.out.Spans[i].To = s.From.add(shift), s.To.add(shift)
	}
	p.out.Width, p.out.Height = high.X-low.X+2*margin, high.Y-low.Y+2*margin
	return p.out
}

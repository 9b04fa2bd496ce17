package hand

// The palm is drawn on a reference hand (see Reference) with the wrist crease
// at y = 0, the middle of the palm at x = 0 and the fingers upwards; palmFrame
// stretches it to the dimensions.
type palmFrame struct {
	across, palm, finger float64 // stretch of breadth, palm length, finger length
	base, along, over    Point   // thumb: its base, direction and crossways
}

func newPalmFrame(d Dimensions) palmFrame {
	ref := Reference()
	f := palmFrame{
		across: d.PalmBreadth / ref.PalmBreadth,
		palm:   d.PalmLength / ref.PalmLength,
		finger: (d.HandLength - d.PalmLength) / (ref.HandLength - ref.PalmLength),
	}
	f.base = f.at(-45, -54)
	dir := pt(-0.60, -0.80)
	f.along = dir.mul(d.ThumbLength / ref.ThumbLength)
	f.over = pt(-dir.Y, dir.X).mul(d.ThumbBreadth / ref.ThumbBreadth)
	return f
}

// at places a point of the reference hand.
func (f palmFrame) at(x, y float64) Point {
	crease := -Reference().PalmLength
	if y >= crease {
		return pt(x*f.across, y*f.palm)
	}
	return pt(x*f.across, crease*f.palm+(y-crease)*f.finger)
}

// thumb places a point by millimetres along the reference thumb and across it
// (positive towards the fingers).
func (f palmFrame) thumb(along, over float64) Point {
	return f.base.add(f.along.mul(along)).add(f.over.mul(over))
}

// line is a spline through reference points given as x, y pairs.
func (f palmFrame) line(xy ...float64) curve {
	pts := make([]Point, len(xy)/2)
	for i := range pts {
		pts[i] = f.at(xy[2*i], xy[2*i+1])
	}
	return spline(pts...)
}

// digit describes one finger of the reference hand, seen from the front.
type digit struct {
	base          Point   // middle of its crease
	lean          float64 // degrees from upright, clockwise
	length, width float64
}

var palmDigits = [4]digit{
	{pt(-29.6, -107), -7.5, 67.5, 20.4},
	{pt(-8.6, -112), -1.5, 75.3, 20.8},
	{pt(12.6, -109.5), 5, 69.5, 19.8},
	{pt(32.0, -99), 14, 55.5, 17.4},
}

// fingerShape is the half width of a finger (share of its width) at shares of
// its length: fullest at the joints, narrower between.
var fingerShape = [][2]float64{
	{0.10, 0.478}, {0.22, 0.452}, {0.36, 0.482}, {0.52, 0.432}, {0.68, 0.438}, {0.83, 0.405}, {0.94, 0.27}, {0.985, 0.12},
}

// side returns the outline of a finger from its base to its tip on one side
// (-1 left, 1 right), tip included.
func (f palmFrame) side(g digit, sign float64) []Point {
	up := pt(0, -1).turned(g.lean)
	over := pt(1, 0).turned(g.lean)
	var pts []Point
	for _, s := range fingerShape {
		q := g.base.add(up.mul(s[0] * g.length)).add(over.mul(sign * s[1] * g.width))
		pts = append(pts, f.at(q.X, q.Y))
	}
	tip := g.base.add(up.mul(g.length))
	return append(pts, f.at(tip.X, tip.Y))
}

// palmShape holds the parts of the open hand's outline, clockwise.
type palmShape struct {
	thumbOuter, thumbInner curve // wrist to thumb tip, thumb tip to the web
	web                    curve // web to the base of the index finger
	fingers                [4]curve
	ulnar                  curve // little finger's base to the wrist
	wrist                  [2]Point
}

func newPalmShape(f palmFrame) palmShape {
	var s palmShape
	s.wrist = [2]Point{f.at(-29.5, 13), f.at(29, 13)}
	s.thumbOuter = spline(s.wrist[0], f.at(-30.5, 2), f.at(-36.5, -13), f.at(-46.5, -31),
		f.thumb(-6, -14.2), f.thumb(6, -13.6), f.thumb(19, -10.6), f.thumb(31, -11.1),
		f.thumb(43, -11.6), f.thumb(53, -10.0), f.thumb(60, -5.6), f.thumb(63.2, 0.4))
	s.thumbInner = spline(f.thumb(63.2, 0.4), f.thumb(60, 6.3), f.thumb(51, 9.9), f.thumb(40, 10.4),
		f.thumb(30, 9.9), f.thumb(19, 10.6), f.thumb(10, 14.2), f.thumb(7.4, 18.6))
	last := s.thumbInner[len(s.thumbInner)-1]
	s.web = spline(last, f.at(-39.9, -78), f.at(-41.2, -86), f.at(-41.6, -92.3), f.at(-40.6, -102))
	valleys := [5]Point{s.web[len(s.web)-1], f.at(-19.4, -113.2), f.at(2.0, -114.4), f.at(22.6, -107.5), f.at(40.6, -93)}
	for i, g := range palmDigits {
		pts := append([]Point{valleys[i]}, f.side(g, -1)...)
		right := f.side(g, 1)
		for j := len(right) - 2; j >= 0; j-- {
			pts = append(pts, right[j])
		}
		s.fingers[i] = spline(append(pts, valleys[i+1])...)
	}
	s.ulnar = spline(valleys[4], f.at(41.6, -86), f.at(42.0, -66), f.at(40.6, -44), f.at(36.8, -22),
		f.at(31, -5), f.at(29.2, 4), s.wrist[1])
	return s
}

func (s palmShape) outline() curve {
	return join(s.thumbOuter, s.thumbInner, s.web, s.fingers[0], s.fingers[1], s.fingers[2], s.fingers[3], s.ulnar)
}

// palmArea is the measured area: the palm without fingers and thumb.
func palmArea(f palmFrame) curve {
	return loop(f.at(-28, 1), f.at(-34, -14), f.at(-41, -30), f.at(-44, -46), f.at(-42, -62), f.at(-39.5, -76),
		f.at(-40.6, -92), f.at(-37, -105), f.at(-29.5, -108.6), f.at(-20, -110), f.at(-9, -112.6), f.at(2, -111),
		f.at(12.5, -110.4), f.at(22, -105), f.at(31.5, -100.4), f.at(39, -91), f.at(41, -66), f.at(39.4, -44),
		f.at(35.6, -22), f.at(29, -3), f.at(14, 2.5), f.at(-8, 3))
}

func drawPalm(p *pen, d Dimensions, opt Options) {
	f := newPalmFrame(d)
	s := newPalmShape(f)
	p.scale(d.HandLength)
	p.fill(Paper, s.outline())
	p.washPalm(f, opt)
	p.palmCreases(f)
	for _, c := range s.fingers {
		p.ink(0.86, c)
	}
	p.ink(1.12, s.thumbOuter)
	p.ink(1.0, s.thumbInner, s.web)
	p.ink(1.2, s.ulnar)
	p.span("palm breadth", f.at(-41.6, -89), f.at(41.6, -89))
	p.span("palm length", f.at(0, 0), f.at(0, -Reference().PalmLength))
	p.span("hand length", f.at(0, 0), f.at(0, -Reference().HandLength))
}

func (p *pen) washPalm(f palmFrame, opt Options) {
	area := palmArea(f)
	if !opt.Half {
		p.fill(Wash, area)
		return
	}
	cut := f.at(0, -54)
	p.area(Wash, clipped(area.flat(1.2), cut, pt(0, 1)))
	p.dashed(spline(f.at(-46, -54), f.at(0, -54), f.at(41, -54)))
}

func (p *pen) palmCreases(f palmFrame) {
	if !p.atLeastMedium() {
		return
	}
	p.ink(0.62, f.line(-39.5, -79, -27, -76, -13, -62, -7, -42, -9, -22, -14, -9)) // around the thumb
	if !p.full() {
		return
	}
	p.ink(0.55, f.line(-38.5, -82, -22, -79, 2, -68, 22, -52, 31, -41)) // head line
	p.ink(0.58, f.line(39, -75, 24, -83, 6, -85, -8, -92, -17, -103))   // heart line
}

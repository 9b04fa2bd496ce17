package icons

import (
	"math"

	"handbreadth/assets/internal/curve"
)

// shapes are the strokes of each icon.
var shapes = map[Name][]curve.Curve{
	Clients: lines(circle(9, 8, 3.4), bend(2.8, 19.6, 3.5, 16.6, 5.8, 14.6, 9, 14, 12.2, 14.6, 14.5, 16.6, 15.2, 19.6),
		bend(15.4, 4.8, 17.6, 5.6, 18.5, 8, 17.6, 10.4, 15.4, 11.2), bend(17.6, 14.4, 19.6, 15.6, 20.8, 17.4, 21.2, 19.6)),
	Practice: lines(straight(3.4, 11.2, 12, 4, 20.6, 11.2), straight(5.6, 9.6, 5.6, 20, 18.4, 20, 18.4, 9.6),
		straight(9.8, 20, 9.8, 14.2, 14.2, 14.2, 14.2, 20)),
	Kitchen: lines(straight(3, 10.5, 21, 10.5), bend(5, 10.5, 5, 15, 5.6, 18, 8, 19.6, 12, 20, 16, 19.6, 18.4, 18, 19, 15, 19, 10.5),
		bend(9.4, 7.4, 8.8, 6.2, 9.8, 5, 9.3, 3.6), bend(14.2, 7.4, 13.6, 6.2, 14.6, 5, 14.1, 3.6)),
	Help: lines(circle(12, 12, 9), bend(9.2, 9.6, 9.8, 7.9, 12, 7, 14.2, 7.9, 14.6, 9.8, 13.4, 11.5, 12.1, 12.6, 12, 14), dot(12, 17.1)),
	Intake: lines(straight(8.6, 4.6, 5, 4.6, 5, 21, 19, 21, 19, 4.6, 15.4, 4.6), straight(8.8, 3, 15.2, 3, 15.2, 6.4, 8.8, 6.4, 8.8, 3),
		straight(8.8, 11.4, 15.2, 11.4), straight(8.8, 15.8, 13, 15.8)),
	Screening: lines(bend(12, 3, 9, 4.8, 4.8, 5.6), bend(12, 3, 15, 4.8, 19.2, 5.6), bend(4.8, 5.6, 4.8, 11, 5.8, 15.4, 8.4, 18.8, 12, 21),
		bend(19.2, 5.6, 19.2, 11, 18.2, 15.4, 15.6, 18.8, 12, 21), straight(8.6, 11.8, 11.2, 14.4, 15.6, 9.2)),
	Targets: lines(circle(12, 12, 9), circle(12, 12, 4.9), dot(12, 12)),
	Measures: lines(bend(7.6, 13.6, 7.6, 10, 7.6, 6.6, 8.05, 5.3, 9.1, 4.9, 10.15, 5.3, 10.6, 6.6, 10.6, 11.4),
		bend(10.6, 10.6, 10.6, 5, 11.05, 3.5, 12.1, 3, 13.15, 3.5, 13.6, 5, 13.6, 11.2),
		bend(13.6, 6, 14.05, 4.7, 15.1, 4.3, 16.15, 4.7, 16.6, 6, 16.6, 11.8),
		bend(16.6, 8.8, 17, 7.6, 18, 7.2, 19, 7.6, 19.4, 8.8, 19.4, 14, 18.6, 17.8, 16.4, 20.4, 13.4, 21.2, 10.4, 20.4, 8.2, 18, 5.8, 14.6, 4.2, 12.2, 4.2, 10.8, 5.6, 10.6, 7.6, 13.2)),
	Meals: lines(bend(3.2, 12, 4, 16, 7, 19, 12, 20, 17, 19, 20, 16, 20.8, 12), straight(3.2, 12, 20.8, 12),
		bend(6.4, 12, 7.4, 9, 10, 8, 12.4, 9.4, 13, 12), bend(11.6, 8.8, 13, 6, 16, 6, 17.8, 8.6, 17.6, 12)),
	Handout: lines(straight(13.6, 3, 5.6, 3, 5.6, 21, 18.4, 21, 18.4, 7.8, 13.6, 3), straight(13.6, 3, 13.6, 7.8, 18.4, 7.8),
		straight(9, 12.4, 15, 12.4), straight(9, 16.4, 15, 16.4)),
	Visits: lines(straight(4, 5.4, 20, 5.4, 20, 20.6, 4, 20.6, 4, 5.4), straight(4, 10, 20, 10), straight(8.4, 3, 8.4, 7), straight(15.6, 3, 15.6, 7),
		straight(9, 15.2, 11.4, 17.4, 15.4, 13.2)),
	Search:       lines(circle(10.4, 10.4, 6.6), straight(15.4, 15.4, 21, 21)),
	Add:          lines(straight(12, 4.6, 12, 19.4), straight(4.6, 12, 19.4, 12)),
	Check:        lines(straight(4.4, 12.8, 9.6, 18, 19.8, 6.8)),
	Edit:         lines(straight(4, 20, 5, 15.4, 16.2, 4.2, 19.8, 7.8, 8.6, 19, 4, 20), straight(13.6, 6.8, 17.2, 10.4)),
	Lock:         lines(straight(5, 11, 19, 11, 19, 20.6, 5, 20.6, 5, 11), bend(8, 11, 8, 7.4, 9.2, 4.6, 12, 3.4, 14.8, 4.6, 16, 7.4, 16, 11), straight(12, 14.8, 12, 16.8)),
	ChevronRight: lines(straight(9, 5, 16, 12, 9, 19)),
	ChevronDown:  lines(straight(5, 9, 12, 16, 19, 9)),
	Print: lines(straight(7, 9, 7, 3.4, 17, 3.4, 17, 9), straight(7, 17, 3.6, 17, 3.6, 9, 20.4, 9, 20.4, 17, 17, 17),
		straight(7, 14, 17, 14, 17, 20.6, 7, 20.6, 7, 14)),
	Save:    lines(straight(12, 3.4, 12, 14.6), straight(7.4, 10.2, 12, 14.8, 16.6, 10.2), straight(4, 15.4, 4, 20.4, 20, 20.4, 20, 15.4)),
	Moon:    lines(bend(10, 3.6, 8.6, 7.6, 9.6, 11.6, 12.6, 14.4, 16.6, 15.4, 20.4, 14), bend(20.4, 14, 18.4, 18.4, 14.6, 20.8, 10, 20.4, 5.8, 17.6, 3.8, 13, 4.4, 8.4, 7, 5, 10, 3.6)),
	Sun:     append(lines(circle(12, 12, 4.2)), rays(12, 12, 7.2, 9.4, 8)...),
	Note:    lines(circle(12, 12, 9), straight(12, 11.2, 12, 16.6), dot(12, 7.6)),
	Caution: lines(straight(12, 3.6, 21.4, 20, 2.6, 20, 12, 3.6), straight(12, 9.8, 12, 14), dot(12, 17)),
	Hold: lines(straight(2.8, 7, 21.2, 7, 21.2, 12.4, 2.8, 12.4, 2.8, 7), straight(6.4, 12.4, 9.6, 7), straight(12, 12.4, 15.2, 7), straight(17.4, 12.4, 20.4, 7.4),
		straight(6.4, 12.4, 6.4, 20.4), straight(17.6, 12.4, 17.6, 20.4)),
	Refer:  lines(straight(12.4, 4, 4, 4, 4, 20, 12.4, 20), straight(9.4, 12, 21, 12), straight(16.6, 7.6, 21, 12, 16.6, 16.4)),
	Undo:   lines(straight(8.4, 4.6, 4, 9, 8.4, 13.4), bend(4, 9, 14, 9, 17.4, 10, 19.6, 12.4, 19.6, 15.6, 17.4, 18.2, 14, 19.2, 9.6, 19.2)),
	Folder: lines(straight(3, 5, 9.4, 5, 11.6, 7.6, 21, 7.6, 21, 19.4, 3, 19.4, 3, 5)),
	Close:  lines(straight(5.6, 5.6, 18.4, 18.4), straight(18.4, 5.6, 5.6, 18.4)),
}

// lines collects strokes.
func lines(parts ...[]curve.Curve) []curve.Curve {
	var all []curve.Curve
	for _, p := range parts {
		all = append(all, p...)
	}
	return all
}

// points reads x, y pairs.
func points(xy []float64) []curve.Point {
	pts := make([]curve.Point, len(xy)/2)
	for i := range pts {
		pts[i] = curve.Pt(xy[2*i], xy[2*i+1])
	}
	return pts
}

// straight joins points by straight strokes; their round ends make the corners.
func straight(xy ...float64) []curve.Curve {
	pts := points(xy)
	var all []curve.Curve
	for i := 1; i < len(pts); i++ {
		all = append(all, curve.Straight(pts[i-1], pts[i]))
	}
	return all
}

// bend is one smooth stroke through points.
func bend(xy ...float64) []curve.Curve { return []curve.Curve{curve.Spline(points(xy)...)} }

// circle is a ring.
func circle(x, y, r float64) []curve.Curve {
	k := r * 0.5522847 // the usual cubic approximation of a quarter circle
	return []curve.Curve{{
		curve.Pt(x+r, y), curve.Pt(x+r, y+k), curve.Pt(x+k, y+r), curve.Pt(x, y+r),
		curve.Pt(x-k, y+r), curve.Pt(x-r, y+k), curve.Pt(x-r, y),
		curve.Pt(x-r, y-k), curve.Pt(x-k, y-r), curve.Pt(x, y-r),
		curve.Pt(x+k, y-r), curve.Pt(x+r, y-k), curve.Pt(x+r, y),
	}}
}

// dot is a point slightly larger than the stroke.
func dot(x, y float64) []curve.Curve { return circle(x, y, 0.3) }

// rays are n short strokes around a centre.
func rays(x, y, from, to float64, n int) []curve.Curve {
	var all []curve.Curve
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		all = append(all, curve.Straight(curve.Pt(x+from*c, y+from*s), curve.Pt(x+to*c, y+to*s)))
	}
	return all
}

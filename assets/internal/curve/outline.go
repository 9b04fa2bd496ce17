package curve

import (
	"math"
	"sort"
)

// Samples are points along a curve with the distance run and the left normal
// (the outer side of an outline that runs clockwise on screen).
type Samples struct {
	At, Normal []Point
	Run        []float64
}

// Total is the length of the curve.
func (s Samples) Total() float64 { return s.Run[len(s.Run)-1] }

// Nearest is the first sample at or after a distance run.
func (s Samples) Nearest(run float64) int {
	return min(sort.SearchFloat64s(s.Run, run), len(s.Run)-1)
}

// Sample walks a curve in steps of at most about step.
func Sample(c Curve, step float64) Samples {
	var s Samples
	run := 0.0
	for _, q := range c.Flat(step) {
		if n := len(s.At); n > 0 {
			d := s.At[n-1].To(q)
			if d < 0.2*step {
				continue
			}
			run += d
		}
		s.At, s.Run = append(s.At, q), append(s.Run, run)
	}
	s.Normal = make([]Point, len(s.At))
	for i := range s.At {
		a, b := s.At[max(0, i-1)], s.At[min(len(s.At)-1, i+1)]
		d := b.Sub(a).Unit()
		s.Normal[i] = Pt(d.Y, -d.X)
	}
	return s
}

// Ribbon turns a sampled line into the closed outline of a pen stroke with
// round ends. side gives, for a sample, how far the outline lies to the left
// and to the right of it.
func Ribbon(s Samples, side func(i int) (left, right float64)) Curve {
	keep := needed(s)
	n := len(keep)
	a, b := make([]Point, n), make([]Point, n)
	for k, i := range keep {
		l, r := side(i)
		a[k] = s.At[i].Add(s.Normal[i].Mul(l))
		b[n-1-k] = s.At[i].Sub(s.Normal[i].Mul(r))
	}
	return Join(Spline(a...), halfCircle(a[n-1], b[0]), Spline(b...), halfCircle(b[n-1], a[0]))
}

// halfCircle runs from a to b, bulging forward of a stroke whose left side
// ends at a.
func halfCircle(a, b Point) Curve {
	d := b.Sub(a)
	ahead := Pt(d.Y, -d.X).Mul(2.0 / 3)
	return Curve{a, a.Add(ahead), b.Add(ahead), b}
}

// needed picks the samples that the shape of the line needs: close together in
// bends, at most 9 apart on straights.
func needed(s Samples) []int {
	keep := []int{0}
	bend, last := 0.0, 0
	for i := 1; i < len(s.At)-1; i++ {
		bend += math.Acos(max(-1, min(1, s.Normal[i].Dot(s.Normal[i-1]))))
		if bend > 0.16 || s.Run[i]-s.Run[last] > 9 {
			keep, bend, last = append(keep, i), 0, i
		}
	}
	return append(keep, len(s.At)-1)
}

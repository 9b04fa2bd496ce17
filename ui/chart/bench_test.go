package chart

import (
	"image"
	"testing"

	"fyne.io/fyne/v2/container"

	"handbreadth/domain/unit"
)

// BenchmarkSetCourse is what a change of the plan costs the chart: all places
// worked out, all words set.
func BenchmarkSetCourse(b *testing.B) {
	program(b)
	p := NewPanel(unit.Style{}, func() {})
	_, one := planned(b, goals()["lose"], unit.Style{})
	_, other := planned(b, goals()["slow"], unit.Style{})
	p.SetCourse(one)
	shown(b, container.NewVBox(p.Object), 560, 420)
	for i := 0; b.Loop(); i++ {
		p.SetCourse([]Course{one, other}[i%2])
	}
}

// BenchmarkPaint is what the curves cost, in a chart of 1000 by 300 units on a
// screen of one and of two pixels a unit.
func BenchmarkPaint(b *testing.B) {
	_, c := planned(b, goals()["slow"], unit.Style{})
	for name, scale := range map[string]int{"1x": 1, "2x": 2} {
		b.Run(name, func(b *testing.B) {
			img := image.NewNRGBA(image.Rect(0, 0, 1000*scale, 300*scale))
			for b.Loop() {
				paintCurves(img, c, 82, 58, float64(scale), paints)
			}
		})
	}
}

// BenchmarkSpark is a change of the plan in the running sheet.
func BenchmarkSpark(b *testing.B) {
	program(b)
	s := NewSpark()
	_, one := planned(b, goals()["lose"], unit.Style{})
	_, other := planned(b, goals()["slow"], unit.Style{})
	shown(b, container.NewVBox(s), 288, 60)
	for i := 0; b.Loop(); i++ {
		s.SetCourse([]Course{one, other}[i%2])
		s.paint(576, 88)
	}
}

// BenchmarkReadADay is what a movement of the pointer costs.
func BenchmarkReadADay(b *testing.B) {
	program(b)
	p := NewPanel(unit.Style{}, func() {})
	_, c := planned(b, goals()["lose"], unit.Style{})
	p.SetCourse(c)
	shown(b, container.NewVBox(p.Object), 560, 420)
	for i := 0; b.Loop(); i++ {
		p.Chart.choose(i % 180)
	}
}

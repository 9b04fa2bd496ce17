package body

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/unit"
)

// full is the model as it is published: five equations, lean tissue stepped on
// its own, nothing solved beforehand. It is what Course is measured against.
type full struct{ fat, lean, glycogen, fluid, adaptive float64 }

func (f full) weight(m *model) float64 {
	return m.weight0 + f.fat - m.fat0 + f.lean - m.lean0 + f.fluid + 3.7*(f.glycogen-0.5)
}

func (f full) slope(m *model, intake float64) full {
	carb, change := 0.5*intake, intake-m.intake0
	var d full
	d.glycogen = (carb - m.carb0/0.25*f.glycogen*f.glycogen) / 17600
	d.fluid = (-3000*f.fluid - 4000*(1-carb/m.carb0)) / 3220
	d.adaptive = (0.14*change - f.adaptive) / 14
	c := 10.4 * 7600 / 39500.0
	p := c / (c + f.fat)
	q := (1-p)*750/39500 + p*960/7600
	left := intake - 17600*d.glycogen
	spent := (m.constant + 13*f.fat + 92*f.lean + m.activity*f.weight(m) + 0.1*change + f.adaptive + left*q) / (1 + q)
	d.fat, d.lean = (1-p)*(left-spent)/39500, p*(left-spent)/7600
	return d
}

func (f full) plus(d full, h float64) full {
	return full{f.fat + h*d.fat, f.lean + h*d.lean, f.glycogen + h*d.glycogen, f.fluid + h*d.fluid, f.adaptive + h*d.adaptive}
}

func (f full) step(m *model, intake, h float64) full {
	a := f.slope(m, intake)
	b := f.plus(a, h/2).slope(m, intake)
	c := f.plus(b, h/2).slope(m, intake)
	d := f.plus(c, h).slope(m, intake)
	return f.plus(a, h/6).plus(b, h/3).plus(c, h/3).plus(d, h/6)
}

// leftModel is so little fat that no adult lives with it: the course has left
// what the model describes, and stops at [leastTissue] where the equations go on.
const leftModel = 1 // kg

func TestCourseStaysWithinAGram(t *testing.T) {
	worst := 0.0
	rapid.Check(t, func(t *rapid.T) {
		s := anyStart(t)
		baseline := s.Resting * unit.Kilocalorie(s.PAL)
		var phases []Phase
		for range rapid.IntRange(1, 3).Draw(t, "phases") {
			phases = append(phases, Phase{rapid.IntRange(1, 150).Draw(t, "days"), baseline * unit.Kilocalorie(rapid.Float64Range(0.5, 1.4).Draw(t, "share"))})
		}
		m := newModel(s)
		fine := full{m.fat0, m.lean0, 0.5, 0, 0}
		course, day := Course(s, phases...), 0
		for _, p := range phases {
			for range p.Days {
				for range 100 {
					fine = fine.step(&m, kilojoules(p.Energy), 0.01)
				}
				if fine.fat < leftModel {
					return
				}
				day++
				off := math.Max(math.Abs(float64(course[day].Weight)-fine.weight(&m)), math.Abs(float64(course[day].LeanMass)-fine.lean))
				worst = math.Max(worst, off)
				if off > 0.001 {
					t.Fatalf("day %d: off by %.3g kg", day, off)
				}
			}
		}
	})
	t.Logf("at most %.2g g from steps of a hundredth of a day", 1000*worst)
}

// Ten years of long steps against steps of a hundredth of a day.
func TestLongCourseStaysWithinAGram(t *testing.T) {
	worst := 0.0
	for _, share := range []unit.Kilocalorie{0.6, 0.85, 1.3} {
		s := Start{Weight: 100, FatMass: 32, Resting: 1900, PAL: 1.6}
		energy := s.Resting * unit.Kilocalorie(s.PAL) * share
		m, course := newModel(s), Course(s, Phase{LongestCourse, energy})
		fine := full{m.fat0, m.lean0, 0.5, 0, 0}
		for day := 1; day <= LongestCourse; day++ {
			for range 100 {
				fine = fine.step(&m, kilojoules(energy), 0.01)
			}
			worst = math.Max(worst, math.Abs(float64(course[day].Weight)-fine.weight(&m)))
		}
		if settled := SettledWeight(s, energy); math.Abs(float64(settled-course[LongestCourse].Weight)) > 0.5 {
			t.Errorf("settles at %v, after ten years %v", settled, course[LongestCourse].Weight)
		}
	}
	if t.Logf("at most %.2g g", 1000*worst); worst > 0.001 {
		t.Errorf("off by %.3g kg", worst)
	}
}

package hand

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/food"
	"handbreadth/domain/unit"
)

// Looks at every day of up to 20 palms, 50 cupped hands and 40 thumbs with
// arithmetic of its own.
func anyDay(c Contents, a Aim, fists unit.Measure, holds func(Nutrients) bool) bool {
	for p := 0.0; p <= 20; p += 0.5 {
		for h := 0.0; h <= 50; h += 0.5 {
			for th := 0.0; th <= 40; th += 0.5 {
				n := c.Bring(Measures{unit.Measure(p), fists, unit.Measure(h), unit.Measure(th)})
				if 9*float64(n.Fat) >= float64(a.FatFloor)/100*float64(n.Energy)-1e-9 && holds(n) {
					return true
				}
			}
		}
	}
	return false
}

// A day that holds the leasts comes before one that is nearer to its targets.
func TestDaysHoldTheLeasts(t *testing.T) {
	moved := 0
	rapid.Check(t, func(t *rapid.T) {
		a := anyAim(t)
		c := Fill(rapid.SampledFrom(food.Patterns()).Draw(t, "pattern"), nil)
		without := Allot(a, c)
		a.LeastEnergy = a.Energy * unit.Kilocalorie(rapid.Float64Range(0.9, 1.05).Draw(t, "least energy"))
		a.LeastAvailable = a.Carbohydrate * unit.Gram(rapid.Float64Range(0.5, 1.1).Draw(t, "least available"))
		out := Allot(a, c)
		for _, day := range append([]Allotment{out}, out.Alternatives[:1]...) {
			n := day.Brings
			if n.Energy < a.LeastEnergy-1e-6 || n.Carbohydrate-n.Fibre < a.LeastAvailable-1e-6 {
				t.Fatalf("least %v and %v, brought %+v", a.LeastEnergy, a.LeastAvailable, n)
			}
		}
		if without.Day != out.Day {
			moved++
		}
	})
	if moved == 0 {
		t.Error("the leasts never moved a day")
	}
}

// A small target of protein is missed by its own measure: 0.8 g/kg of 61.6 kg
// beside 2967 kcal, where a fifth of a tenth of the energy is 15 g.
func TestProteinByItself(t *testing.T) {
	a := Aim{Meals: 3, Energy: 2967, Protein: 49.3, Fat: 138.5, Carbohydrate: 380.9, FatFloor: 15}
	c := Fill(food.Vegan, nil)
	loose := Allot(a, c)
	a.ProteinByItself = true
	out := Allot(a, c)
	within := func(n Nutrients) bool {
		near := func(got, want float64) bool { return math.Abs(got-want) <= 0.2*want }
		return near(float64(n.Energy), 2967) && near(float64(n.Protein), 49.3) && near(float64(n.Fat), 138.5) && near(float64(n.Carbohydrate), 380.9)
	}
	if loose.Distance.Far || within(loose.Brings) {
		t.Errorf("measured by a tenth of the energy: %+v, far %v", loose.Brings, loose.Distance.Far)
	}
	if got := !out.Distance.Far; got != within(out.Brings) || got != anyDay(c, a, out.Day.Fist, within) {
		t.Errorf("within a fifth: %v, brought %+v", got, out.Brings)
	}
}

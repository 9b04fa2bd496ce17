package macro

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/unit"
)

// Grams for each kilogram: convention, 0.5 to 1.0 g/kg is in use (from memory).
func TestTheHigherFloorCounts(t *testing.T) {
	lean, heavy := weights(70, 175, 68, 52), weights(120, 175, 80, 70)
	cases := []struct {
		name   string
		in     FloorInput
		grams  float64
		weight bool
	}{
		{"20 % of 1800 kcal", FloorInput{Weights: lean, Energy: 1800, Share: 20}, 40, false},
		{"0.5 g/kg is less", FloorInput{Weights: lean, Energy: 1800, Share: 20, PerKg: 0.5}, 40, false},
		{"0.8 g/kg is more", FloorInput{Weights: lean, Energy: 1800, Share: 20, PerKg: 0.8}, 56, true},
		{"adjusted weight from a BMI of 30", FloorInput{Weights: heavy, Energy: 1800, Share: 20, PerKg: 0.8}, 64, true},
		// 800 kcal less 4 x 0.8 x 70 for protein leave 576 kcal, 64 g.
		{"gives way to 0.8 g/kg of protein", FloorInput{Weights: lean, Energy: 800, Share: 20, PerKg: 1}, 64, true},
		{"but not under the floor by energy", FloorInput{Weights: lean, Energy: 250, Share: 20, PerKg: 1}, 250.0 / 45, false},
	}
	for _, c := range cases {
		f := FatFloor(c.in)
		near(t, c.name, float64(f.Grams.Value), c.grams, 1e-9)
		near(t, c.name+", as a share", float64(f.Share), 100*9*c.grams/float64(c.in.Energy), 1e-9)
		if f.ByWeight != c.weight {
			t.Errorf("%s: by weight %v", c.name, f.ByWeight)
		}
		if last, _ := f.Grams.Last(); last.Result != float64(f.Grams.Value) {
			t.Errorf("%s: derived %v", c.name, last.Result)
		}
	}
}

// Floor, protein and balance together: the fat of a day holds both floors, and
// the energy is shared out to the end.
func TestFloorHoldsThroughTheDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := anyProtein(t)
		in.Energy = unit.Kilocalorie(rapid.Float64Range(400, 6000).Draw(t, "kcal"))
		floor := FatFloor(FloorInput{
			Weights: in.Weights, Energy: in.Energy,
			Share: unit.Percent(rapid.Float64Range(15, 40).Draw(t, "share")),
			PerKg: unit.GramPerKilogram(rapid.SampledFrom([]float64{0, 0.3, 0.8, 1.5}).Draw(t, "per kg")),
		})
		in.FatFloor = floor.Share
		protein := Protein(in).Grams.Value
		s := Divide(SplitInput{
			Energy: in.Energy, Protein: protein, FatFloor: floor.Share,
			CarbFatBalance: unit.Percent(rapid.Float64Range(0, 100).Draw(t, "balance")),
			Fibre:          Fibre(in.Energy), Counting: rapid.SampledFrom(Countings()).Draw(t, "counting"),
		})
		if s.Fat.Value < floor.Grams.Value-1e-9 {
			t.Fatalf("fat %v, floor %v", s.Fat.Value, floor.Grams.Value)
		}
		sum := 4*float64(protein) + 9*float64(s.Fat.Value) + float64(s.CarbohydrateEnergy)
		if math.Abs(sum-float64(in.Energy)) > 1e-6 {
			t.Fatalf("%v of %v kcal are shared out", sum, in.Energy)
		}
	})
}

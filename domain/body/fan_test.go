package body

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/unit"
)

// The fan takes weights by a shorter way than Course; they are the same to half
// a gram.
func TestFanFollowsTheCourse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyStart(t)
		baseline := s.Resting * unit.Kilocalorie(s.PAL)
		phases := []Phase{
			{rapid.IntRange(1, 1500).Draw(t, "first"), baseline * unit.Kilocalorie(rapid.Float64Range(0.5, 1.4).Draw(t, "share"))},
			{rapid.IntRange(1, 700).Draw(t, "second"), baseline},
		}
		fan := Fan(s, Spread{0.08, 0.03, 0.05}, phases...)
		for i, d := range Course(s, phases...) {
			if d.FatMass < leftModel {
				return
			}
			if off := math.Abs(float64(fan[i].Weight - d.Weight)); off > 5e-4 || fan[i].Day != d.Day {
				t.Fatalf("day %d: off by %v kg", d.Day, off)
			}
			if fan[i].Low > fan[i].Weight || fan[i].High < fan[i].Weight {
				t.Fatalf("day %d: %+v", d.Day, fan[i])
			}
		}
	})
}

// randomly returns one person of the spread, and what they eat.
func randomly(random *rand.Rand, start Start, spread Spread, phases []Phase) (Start, []Phase) {
	start.Resting *= unit.Kilocalorie(1 + spread.Resting*random.NormFloat64())
	start.PAL *= unit.PAL(1 + spread.Activity*random.NormFloat64())
	return start, apart(phases, spread.Adherence*random.NormFloat64())
}

// The seven courses of the fan against a seeded simulation of four thousand, in
// one phase and in two.
func TestFanAgainstSimulation(t *testing.T) {
	start := Start{Weight: 85, FatMass: 32, Resting: 1550, PAL: 1.6}
	usual := Spread{RestingSpread(1550, 1395, 1705), ActivitySpread(1.6, 1.53, 1.68), AdherenceSpread}
	heavy := Start{Weight: 120, FatMass: 48, Resting: 2100, PAL: 2.0}
	wide := Spread{RestingSpread(2100, 1890, 2310), ActivitySpread(2.0, 1.85, 2.5), AdherenceSpread}
	cases := []struct {
		name   string
		start  Start
		spread Spread
		phases []Phase
		days   []int
	}{
		{"loses", start, usual, []Phase{{180, 1950}}, []int{30, 90, 180}},
		{"loses, then holds", start, usual, []Phase{{180, 1950}, {180, HoldingEnergy(start, After(start, Phase{180, 1950}).Weight)}}, []int{180, 270, 360}},
		{"gains", start, usual, []Phase{{90, 2900}, {90, 2500}}, []int{90, 180}},
		{"wide class, two years", heavy, wide, []Phase{{500, 3000}, {230, 3400}}, []int{250, 500, 730}},
	}
	for _, c := range cases {
		fan := Fan(c.start, c.spread, c.phases...)
		const people = 4000
		weights := make([][]float64, len(c.days))
		random := rand.New(rand.NewPCG(20260302, 7))
		all := make([]float64, len(fan))
		for range people {
			person, eaten := randomly(random, c.start, c.spread, c.phases)
			m := newModel(person)
			m.weights(all, eaten)
			for i, day := range c.days {
				weights[i] = append(weights[i], all[day])
			}
		}
		for i, day := range c.days {
			slices.Sort(weights[i])
			low, high := weights[i][people/10], weights[i][people*9/10]
			// A tenth of the width: sampling error of a tail of 400 is about 4 % of it.
			off := 0.1 * (high - low)
			if math.Abs(float64(fan[day].Low)-low) > off || math.Abs(float64(fan[day].High)-high) > off {
				t.Errorf("%s, day %d: fan %.2f to %.2f, simulation %.2f to %.2f", c.name, day, fan[day].Low, fan[day].High, low, high)
			}
		}
	}
}

func BenchmarkProjectionTwoYears(b *testing.B) {
	start := Start{Weight: 85, FatMass: 32, Resting: 1550, PAL: 1.6}
	spread := Spread{0.078, 0.03, AdherenceSpread}
	for b.Loop() {
		Fan(start, spread, Phase{365, 1950}, Phase{365, 2300})
	}
}

func BenchmarkProjectionTenYears(b *testing.B) {
	start := Start{Weight: 85, FatMass: 32, Resting: 1550, PAL: 1.6}
	spread := Spread{0.078, 0.03, AdherenceSpread}
	for b.Loop() {
		Fan(start, spread, Phase{LongestCourse, 2200})
	}
}

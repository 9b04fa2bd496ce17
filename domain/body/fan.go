package body

import (
	"math"

	"handbreadth/domain/unit"
)

// Spread is how uncertain a course is, as standard deviations relative to the
// value itself.
type Spread struct {
	Resting   float64 // of resting energy
	Activity  float64 // of the activity level
	Adherence float64 // of the energy eaten beside the energy agreed
	// Skew is how far the mean of the activity level lies above the level that is
	// reckoned with, relative to it: nought where the level is in the middle.
	Skew float64
}

// eightInTen is the number of standard deviations either side that hold 80 % of
// a normal distribution.
const eightInTen = 1.2816

// AdherenceSpread: common practice, no source. With the errors of resting energy
// and of an activity class it gives about 220 kcal a day, the spread that
// Sanghvi 2015 (Am J Clin Nutr 102:353, from memory) found for single people.
const AdherenceSpread = 0.05

// RestingSpread returns the spread of a resting energy whose band holds eight
// in ten people. Bands do: within 10 % of the estimate lie 82 % of adults
// without obesity (Frankenfield 2005, from memory) and 78 % overall (St Jeor
// 2004, seen).
func RestingSpread(value, low, high unit.Kilocalorie) float64 {
	return float64(high-low) / 2 / float64(value) / eightInTen
}

// ActivitySpread returns the spread of a level within its class and the skew of
// the class around it, every level of the class being equally likely.
func ActivitySpread(level, low, high unit.PAL) (spread, skew float64) {
	return float64(high-low) / math.Sqrt(12) / float64(level), float64(low+high)/2/float64(level) - 1
}

// Band is the expected weight of a day and the range that eight in ten courses
// keep to.
type Band struct {
	Day               int
	Weight, Low, High unit.Kilogram
}

// Fan returns the course through the phases with its range, day 0 first. It
// steps seven courses: that of the values as they are, which is the line, and for
// each of three uncertain things two at the distance that keeps mean and variance
// (unscented transform, Julier and Uhlmann 1997, Proc SPIE 3068:182, with no
// weight on the middle). Those six lie around the mean of the activity level; in
// a class that is skewed around its level the line is not the middle of the range.
func Fan(start Start, spread Spread, phases ...Phase) []Band {
	single := [...]Spread{{Resting: spread.Resting}, {Activity: spread.Activity}, {Adherence: spread.Adherence}}
	days := length(phases) + 1
	middle := make([]float64, 4*days)
	course, sums, squares := middle[days:2*days], middle[2*days:3*days], middle[3*days:]
	m := newModel(start)
	m.weights(middle[:days], phases)
	distance := math.Sqrt(float64(len(single)))
	for _, sign := range [...]float64{-distance, distance} {
		for _, s := range single {
			s.Skew = spread.Skew
			other := newModel(start.apart(s, sign))
			other.weights(course, apart(phases, s.Adherence*sign))
			for i, weight := range course {
				sums[i] += weight
				squares[i] += (weight - middle[i]) * (weight - middle[i])
			}
		}
	}
	bands := make([]Band, days)
	courses := float64(2 * len(single))
	for i := range bands {
		mean := sums[i] / courses
		shift := mean - middle[i]
		deviation := math.Sqrt(math.Max(0, squares[i]/courses-shift*shift))
		low, high := mean-eightInTen*deviation, mean+eightInTen*deviation
		bands[i] = Band{
			Day: i, Weight: unit.Kilogram(middle[i]),
			Low: unit.Kilogram(min(low, middle[i])), High: unit.Kilogram(max(high, middle[i])),
		}
	}
	return bands
}

func (s Start) apart(by Spread, sign float64) Start {
	s.Resting *= unit.Kilocalorie(1 + sign*by.Resting)
	s.PAL *= unit.PAL(1 + by.Skew + sign*by.Activity)
	return s
}

func apart(phases []Phase, by float64) []Phase {
	moved := make([]Phase, len(phases))
	for i, p := range phases {
		moved[i] = Phase{Days: p.Days, Energy: p.Energy * unit.Kilocalorie(1+by)}
	}
	return moved
}

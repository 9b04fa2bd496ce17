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
}

// The spreads that a fan is drawn with.
const (
	// RestingSpread: eight in ten adults measure within 10 % of the estimate
	// (82 % of people without obesity, Frankenfield 2005, from memory; 78 % St
	// Jeor 2004, seen), so 10 % is about 1.28 standard deviations.
	RestingSpread = 0.10 / 1.2816
	// AdherenceSpread: common practice, no source. With the other two it gives
	// about 220 kcal a day, the spread that Sanghvi 2015 (Am J Clin Nutr
	// 102:353, from memory) found for single people.
	AdherenceSpread = 0.05
)

// ActivitySpread returns the spread of a level within its class, every level of
// the class being equally likely.
func ActivitySpread(level, low, high unit.PAL) float64 {
	return float64(high-low) / math.Sqrt(12) / float64(level)
}

// Band is the expected weight of a day and the range that eight in ten courses
// keep to.
type Band struct {
	Day               int
	Weight, Low, High unit.Kilogram
}

// eightInTen is the number of standard deviations either side that hold 80 % of
// a normal distribution.
const eightInTen = 1.2816

// spreads is the number of uncertain things; each gives two courses beside the
// middle one, at the distance that keeps mean and variance (unscented transform,
// Julier and Uhlmann 1997, Proc SPIE 3068:182, with no weight on the middle).
const spreads = 3

// Fan returns the course through the phases with its range, day 0 first. It
// steps seven courses.
func Fan(start Start, spread Spread, phases ...Phase) []Band {
	middle := Course(start, phases...)
	bands := make([]Band, len(middle))
	sums, squares := make([]float64, len(middle)), make([]float64, len(middle))
	distance := math.Sqrt(spreads)
	for _, sign := range [...]float64{-distance, distance} {
		for _, s := range [spreads]Spread{{Resting: spread.Resting}, {Activity: spread.Activity}, {Adherence: spread.Adherence}} {
			for i, d := range Course(start.apart(s, sign), apart(phases, s.Adherence*sign)...) {
				sums[i] += float64(d.Weight)
				squares[i] += float64(d.Weight) * float64(d.Weight)
			}
		}
	}
	const courses = 2 * spreads
	for i, d := range middle {
		mean := sums[i] / courses
		deviation := math.Sqrt(math.Max(0, squares[i]/courses-mean*mean))
		low, high := unit.Kilogram(mean-eightInTen*deviation), unit.Kilogram(mean+eightInTen*deviation)
		bands[i] = Band{Day: d.Day, Weight: d.Weight, Low: min(low, d.Weight), High: max(high, d.Weight)}
	}
	return bands
}

func (s Start) apart(by Spread, sign float64) Start {
	s.Resting *= unit.Kilocalorie(1 + sign*by.Resting)
	s.PAL *= unit.PAL(1 + sign*by.Activity)
	return s
}

func apart(phases []Phase, by float64) []Phase {
	moved := make([]Phase, len(phases))
	for i, p := range phases {
		moved[i] = Phase{Days: p.Days, Energy: p.Energy * unit.Kilocalorie(1+by)}
	}
	return moved
}

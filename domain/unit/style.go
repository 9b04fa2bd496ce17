package unit

import (
	"math"
	"strconv"
	"strings"
)

// System is the set of units that a practice speaks in.
type System int

// The systems of units.
const (
	Metric      System = iota // kg, cm, ml
	USCustomary               // lb, feet and inches, cups and tablespoons
	UKCustomary               // stones and pounds, feet and inches, ml
)

// bareUnits returns the unit that a number without one is read in; none in a
// system where people use several.
func (s System) bareUnits(metric, us string) []string {
	switch s {
	case Metric:
		return []string{metric}
	case USCustomary:
		return []string{us}
	}
	return nil
}

// EnergyUnit is the unit that a practice tells energy in.
type EnergyUnit int

// The units of energy.
const (
	InKilocalories EnergyUnit = iota
	InKilojoules
)

// Style is how a practice writes quantities. The zero Style is metric, in
// kilocalories, with a decimal point.
//
// What it prints can be typed back: ParseWeight, ParseHeight, ParseLength,
// ParseEnergy and ParsePercent read it as the same value within the rounding
// that each method states.
type Style struct {
	System       System
	EnergyIn     EnergyUnit
	DecimalComma bool
}

// groupMark sets thousands apart, from 10,000 on. It is a no-break space: a
// comma or point could be taken for the decimal mark.
const groupMark = "\u00a0"

// notKnown stands for a value that is no number.
const notKnown = "–"

// Number writes a value rounded half away from zero to so many decimals (0 to
// 6): "72.6", "72,6", "12 345". It never writes "-0"; what is not a finite
// number is a dash.
func (s Style) Number(value float64, decimals int) string {
	if math.IsNaN(value) || math.IsInf(value, 0) {
		return notKnown
	}
	const most = 6
	decimals = min(max(decimals, 0), most)
	written := strconv.FormatFloat(math.Abs(roundTo(value, decimals)), 'f', decimals, 64)
	whole, fraction, hasFraction := strings.Cut(written, ".")
	sign := ""
	if value < 0 && strings.Trim(written, "0.") != "" {
		sign = "-"
	}
	number := sign + grouped(whole)
	if !hasFraction {
		return number
	}
	if s.DecimalComma {
		return number + "," + fraction
	}
	return number + "." + fraction
}

// upTo is Number without zeros at the end of the decimals.
func (s Style) upTo(value float64, decimals int) string {
	for decimals > 0 && roundTo(value, decimals) == roundTo(value, decimals-1) {
		decimals--
	}
	return s.Number(value, decimals)
}

// roundTo rounds half away from zero, taking what is a half but for the noise
// of binary fractions as one. A value too large to have decimals stays.
func roundTo(value float64, decimals int) float64 {
	scale := math.Pow10(decimals)
	scaled := math.Round(tidy(value * scale))
	if math.IsInf(scaled, 0) {
		return value
	}
	return scaled / scale
}

// grouped sets five digits or more in groups of three.
func grouped(digits string) string {
	const ungrouped, group = 4, 3
	if len(digits) <= ungrouped {
		return digits
	}
	lead := len(digits) % group
	parts := []string{}
	if lead > 0 {
		parts = append(parts, digits[:lead])
	}
	for ; lead < len(digits); lead += group {
		parts = append(parts, digits[lead:lead+group])
	}
	return strings.Join(parts, groupMark)
}

// String writes a count of hand measures to the nearest half: "2", "1½", "½",
// "0".
func (m Measure) String() string {
	halves := roundTo(float64(m)*2, 0)
	if math.IsNaN(halves) || math.IsInf(halves, 0) {
		return notKnown
	}
	return withHalf(halves)
}

// withHalf writes a count of halves.
func withHalf(halves float64) string {
	whole := math.Trunc(math.Abs(halves) / 2)
	sign := ""
	if halves < 0 {
		sign = "-"
	}
	if math.Mod(halves, 2) == 0 {
		return sign + strconv.FormatFloat(whole, 'f', 0, 64)
	}
	if whole == 0 {
		return sign + "½"
	}
	return sign + strconv.FormatFloat(whole, 'f', 0, 64) + "½"
}

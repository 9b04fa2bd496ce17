package body

import "handbreadth/domain/unit"

// LongestCourse is how far a course is followed to see whether it arrives.
const LongestCourse = 3650 // days

// WeightsOn returns the weights on two days of a course at one energy; the first
// is not after the last, and day 0 is the start.
func WeightsOn(start Start, energy unit.Kilocalorie, first, last int) (from, to unit.Kilogram) {
	m := newModel(start)
	p := m.span(m.begin(), kilojoules(energy))
	k := p.until(p.first(), first)
	from = unit.Kilogram(m.weight(k.state))
	return from, unit.Kilogram(m.weight(p.until(k, last).state))
}

// DaysTo returns the first day on which an energy has brought a person to a
// weight, and false where it does not within [LongestCourse]: the weight then
// settles before, at [SettledWeight]. At the weight already, it is day 0.
func DaysTo(start Start, goal unit.Kilogram, energy unit.Kilocalorie) (int, bool) {
	m := newModel(start)
	falling := goal < start.Weight
	there := func(weight float64) bool {
		if falling {
			return weight <= float64(goal)
		}
		return weight >= float64(goal)
	}
	if there(m.weight0) {
		return 0, true
	}
	intake := kilojoules(energy)
	// A weight moves one way only while the energy stays the same.
	if !there(m.weight(m.settled(intake))) {
		return 0, false
	}
	arrived := 0
	p := m.span(m.begin(), intake)
	p.daily(LongestCourse, func(day int, s state) bool {
		if there(m.weight(s)) {
			arrived = day
		}
		return arrived == 0
	})
	return arrived, arrived > 0
}

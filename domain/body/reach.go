package body

import "handbreadth/domain/unit"

// LongestCourse is how far a course is followed to see whether it arrives.
const LongestCourse = 3650 // days

// DaysTo returns the first day on which an energy has brought a person to a
// weight, and false where it does not within [LongestCourse]: the weight then
// settles before. At the weight already, it is day 0.
func DaysTo(start Start, goal unit.Kilogram, energy unit.Kilocalorie) (int, bool) {
	m := newModel(start)
	s, intake := m.begin(), kilojoules(energy)
	falling := goal < start.Weight
	there := func() bool {
		if falling {
			return m.weight(s) <= float64(goal)
		}
		return m.weight(s) >= float64(goal)
	}
	for day := range LongestCourse {
		if there() {
			return day, true
		}
		before := m.weight(s)
		s = m.oneDay(s, intake, day)
		if day > judgedFrom && moved(before, m.weight(s)) < settledMove {
			return 0, false
		}
	}
	return LongestCourse, there()
}

const (
	// judgedFrom lets fluid and adaptation settle before a course is judged
	// to have stopped.
	judgedFrom = 120 // days
	// settledMove is a change of weight in a day that no longer counts: with a
	// time constant of some 500 days, about 10 g are still to come.
	settledMove = 2e-5 // kg
)

func moved(a, b float64) float64 {
	if a > b {
		return a - b
	}
	return b - a
}

package body

import (
	"errors"
	"math"

	"handbreadth/domain/unit"
)

// ErrOutOfReach reports that no energy in the searched span brings the weight
// by the date.
var ErrOutOfReach = errors.New("no energy reaches this weight by this date")

// The span of energy that is searched, a day. It is wider than what may ever be
// advised, so that the screening, not the solver, says no.
const (
	leastSearched unit.Kilocalorie = 0
	mostSearched  unit.Kilocalorie = 12000
)

// solved is how near the weight must come: a milligram, so that a wish of a few
// days, too, is known to a hundredth of a kilocalorie.
const solved = 1e-6 // kg

// mostSteps bounds the search; halving alone would need 40 steps to narrow the
// span to less than a millionth of a kilojoule.
const mostSteps = 60

// EnergyFor returns the energy a day that brings a person to a weight in so many
// days, and the steps that the search took. Days is at least 1.
//
// The weight at the end rises with intake, so the root is bracketed and the
// search always ends; it starts from the linear form, which is usually within
// a few steps. It fails with [ErrOutOfReach].
func EnergyFor(start Start, goal unit.Kilogram, days int) (energy unit.Kilocalorie, steps int, err error) {
	m := newModel(start)
	r := m.guess(float64(goal), days)
	for steps = 1; steps <= mostSteps; steps++ {
		p := m.span(m.begin(), r.at)
		off := m.weight(p.after(days)) - float64(goal)
		if math.Abs(off) < solved {
			return kilocalories(r.at), steps, nil
		}
		if !r.narrow(off) {
			return 0, steps, ErrOutOfReach
		}
	}
	return 0, steps, ErrOutOfReach
}

// guess begins the search with the linear form.
func (m *model) guess(goal float64, days int) root {
	l := m.linear()
	slope := (1 - math.Exp(-float64(days)*math.Ln2/l.HalfTime)) / l.Slope // kg a kJ
	r := root{low: kilojoules(leastSearched), high: kilojoules(mostSearched), slope: slope}
	r.at = math.Min(math.Max(m.intake0+(goal-m.weight0)/slope, r.low), r.high)
	return r
}

// root is a bracketed search for the intake at which a rising miss is nought.
type root struct {
	low, high      float64 // the root lies between, or at an end not yet looked at
	at             float64 // where to look next
	slope          float64 // of the miss, as far as it is known
	before, offset float64 // where was looked last, and its miss
	looked         bool
}

// narrow takes the miss at r.at and moves r.at to where to look next: by the
// secant through the last two looks where that falls inside the bracket, else
// by halving. It reports false where an end of the span proves that there is no
// root.
func (r *root) narrow(off float64) bool {
	if off > 0 {
		if r.at <= r.low {
			return false
		}
		r.high = r.at
	} else {
		if r.at >= r.high {
			return false
		}
		r.low = r.at
	}
	if r.looked && off != r.offset && r.at != r.before {
		r.slope = (off - r.offset) / (r.at - r.before)
	}
	guess := r.at - off/r.slope
	r.before, r.offset, r.looked = r.at, off, true
	switch {
	case guess > r.low && guess < r.high:
		r.at = guess
	case guess <= r.low && r.low == kilojoules(leastSearched):
		r.at = r.low
	case guess >= r.high && r.high == kilojoules(mostSearched):
		r.at = r.high
	default:
		r.at = (r.low + r.high) / 2
	}
	return true
}

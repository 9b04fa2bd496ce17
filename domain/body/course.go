package body

import "handbreadth/domain/unit"

// Day is a person at the end of a day of a course; day 0 is the start.
type Day struct {
	Day      int
	Weight   unit.Kilogram
	FatMass  unit.Kilogram
	LeanMass unit.Kilogram
	Spent    unit.Kilocalorie // energy spent a day
}

// Phase is a span of a course with one energy.
type Phase struct {
	Days   int
	Energy unit.Kilocalorie // a day
}

func length(phases []Phase) int {
	total := 0
	for _, p := range phases {
		total += p.Days
	}
	return total
}

// Course returns a person day by day through the phases, day 0 first, by the
// adult model of Hall et al. 2011. The weight stays within a gram of the full
// equations stepped a hundred times a day (the tests show it).
func Course(start Start, phases ...Phase) []Day {
	m := newModel(start)
	s := m.begin()
	days := make([]Day, 0, length(phases)+1)
	add := func(p *span, s state) { days = append(days, p.day(len(days), s)) }
	if len(phases) == 0 {
		phases = []Phase{{Energy: kilocalories(m.intake0)}}
	}
	for i, phase := range phases {
		p := m.span(s, kilojoules(phase.Energy))
		if i == 0 {
			add(&p, s)
		}
		s = p.daily(phase.Days, func(_ int, s state) bool { add(&p, s); return true })
	}
	return days
}

// After returns a person at the end of the phases.
func After(start Start, phases ...Phase) Day {
	m := newModel(start)
	s, energy := m.begin(), kilocalories(m.intake0)
	for _, phase := range phases {
		energy = phase.Energy
		p := m.span(s, kilojoules(energy))
		s = p.after(phase.Days)
	}
	p := m.span(s, kilojoules(energy))
	return p.day(length(phases), s)
}

func (p *span) day(n int, s state) Day {
	_, spent := p.fatSlope(s)
	return Day{
		Day: n, Weight: unit.Kilogram(p.weight(s)), FatMass: unit.Kilogram(s.fat),
		LeanMass: unit.Kilogram(p.leanAt(s.fat)), Spent: kilocalories(spent),
	}
}

// weights fills in the weight of each day through the phases, day 0 first.
func (m *model) weights(into []float64, phases []Phase) {
	s := m.begin()
	into[0] = m.weight(s)
	for _, phase := range phases {
		p := m.span(s, kilojoules(phase.Energy))
		s = p.weights(into[:phase.Days+1])
		into = into[phase.Days:]
	}
}

// weights fills in the weight of each day of the phase but the first, which has
// that of the phase before, and returns the last state.
func (p *span) weights(into []float64) state {
	k, days := p.first(), len(into)-1
	for int(k.day) < days {
		next := p.advance(k, days)
		into[int(next.day)] = p.weight(next.state)
		if k.day >= swiftOver && min(k.state.fat, next.state.fat) > curved {
			p.smooth(into, k, next)
		} else {
			for day := int(k.day) + 1; day < int(next.day); day++ {
				into[day] = p.weight(p.between(k, next, float64(day)))
			}
		}
		k = next
	}
	return k.state
}

// curved is the fat below which the Forbes curve bends too much for smooth.
const curved = 5 // kg

// smooth fills in the days between two knots where only tissue still moves: by
// the cubic that has the weights and slopes of both.
func (p *span) smooth(into []float64, a, b knot) {
	// Lean tissue follows fat with the slope of the Forbes curve.
	slope := func(k knot) float64 { return k.slope * (1 + forbes/k.state.fat) }
	h, from, to := b.day-a.day, into[int(a.day)], into[int(b.day)]
	first, last := slope(a), slope(b)
	for day := int(a.day) + 1; day < int(b.day); day++ {
		into[day] = cubic((float64(day)-a.day)/h, h, from, to, first, last)
	}
}

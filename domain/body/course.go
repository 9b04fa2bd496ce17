package body

import (
	"math"

	"handbreadth/domain/unit"
)

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

// Course returns a person day by day through the phases, day 0 first, by the
// adult model of Hall et al. 2011, stepped daily (four times a day in the first
// week of a phase). The weight stays within a gram of steps of a hundredth of a
// day (the tests show it).
func Course(start Start, phases ...Phase) []Day {
	m := newModel(start)
	s := m.begin()
	total := 0
	for _, p := range phases {
		total += p.Days
	}
	days := make([]Day, 1, total+1)
	days[0] = m.day(0, s, m.intake0)
	if len(phases) > 0 {
		days[0] = m.day(0, s, kilojoules(phases[0].Energy))
	}
	for _, p := range phases {
		intake := kilojoules(p.Energy)
		for n := range p.Days {
			s = m.oneDay(s, intake, n)
			days = append(days, m.day(len(days), s, intake))
		}
	}
	return days
}

func (m *model) day(n int, s state, intake float64) Day {
	_, spent := m.slope(s, intake)
	return Day{
		Day: n, Weight: unit.Kilogram(m.weight(s)), FatMass: unit.Kilogram(s.fat), LeanMass: unit.Kilogram(s.lean),
		Spent: unit.Kilojoule(spent).Kilocalories(),
	}
}

// after returns the state after so many days at an intake in kilojoules.
func (m *model) after(s state, intake float64, days int) state {
	for n := range days {
		s = m.oneDay(s, intake, n)
	}
	return s
}

// Glycogen and fluid settle within days of a change of intake, and need shorter
// steps until then. Later a day is one step, unless glycogen turns over so fast
// (in very large intakes) that a step would overshoot.
const (
	settlingDays  = 7
	settlingSteps = 4
	mostTurnover  = 1.3 // of glycogen in one step
)

// oneDay moves a state on by the nth day, from 0, of a phase.
func (m *model) oneDay(s state, intake float64, n int) state {
	steps := m.stepsADay(intake)
	if n < settlingDays {
		steps *= settlingSteps
	}
	for range steps {
		s = m.step(s, intake, 1/float64(steps))
	}
	return s
}

func (m *model) stepsADay(intake float64) int {
	turnover := 2 * math.Sqrt(m.carb0*carbohydrateShare*math.Max(intake, 0)) / (glycogenStart * glycogenEnergy)
	return max(1, int(math.Ceil(turnover/mostTurnover)))
}

// holding returns the intake that holds the weight of a state once glycogen,
// fluid and adaptation have settled on it.
func (m *model) holding(s state, weight float64) float64 {
	const share = thermicShare + adaptiveShare
	spent := m.constant + fatUpkeep*s.fat + leanUpkeep*s.lean + m.activity*weight
	return (spent - share*m.intake0) / (1 - share)
}

// HoldingEnergy returns the energy that holds a weight after it was reached by
// so many days at an energy.
func HoldingEnergy(start Start, energy unit.Kilocalorie, days int) unit.Kilocalorie {
	m := newModel(start)
	s := m.after(m.begin(), kilojoules(energy), days)
	return unit.Kilojoule(m.holding(s, m.weight(s))).Kilocalories()
}

// Linear is the linear form of the model: the change of weight follows a change
// of intake like a lag of first order.
//
// Source: Hall et al. 2011 (from memory): rho dW/dt = change of intake - eps (W - W0).
type Linear struct {
	Density  float64 // kJ a kilogram of weight
	Slope    float64 // kJ a day for each kilogram of weight
	HalfTime float64 // days until half of the change
}

// LinearOf returns the linear form for a person.
func LinearOf(start Start) Linear {
	m := newModel(start)
	a := 10.4 / m.fat0
	const share = thermicShare + adaptiveShare
	l := Linear{
		Density: (fatLaying + fatEnergy + a*(leanLaying+leanEnergy)) / ((1 - share) * (1 + a)),
		Slope:   ((fatUpkeep+a*leanUpkeep)/(1+a) + m.activity) / (1 - share),
	}
	l.HalfTime = math.Ln2 * l.Density / l.Slope
	return l
}

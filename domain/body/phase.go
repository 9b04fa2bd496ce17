package body

import "math"

// span is a phase of one intake. Glycogen, fluid and adaptation answer to the
// intake alone, so their courses are known exactly; only fat has to be stepped.
type span struct {
	*model
	from           state
	intake, change float64 // kJ a day; the change is from the baseline intake
	carb           float64 // kJ a day
	turnover       float64 // of glycogen, a day
	end            swift   // what the swift parts settle at
}

func (m *model) span(from state, intake float64) span {
	p := span{model: m, from: from, intake: intake, change: intake - m.intake0, carb: carbohydrateShare * max(intake, 0)}
	p.turnover = math.Sqrt(p.carb*m.glycogenRate) / glycogenEnergy
	p.end = m.settledSwift(intake)
	return p
}

// settledSwift returns what glycogen, fluid and adaptation settle at.
func (m *model) settledSwift(intake float64) swift {
	carb := carbohydrateShare * max(intake, 0)
	return swift{
		glycogen: math.Sqrt(carb / m.glycogenRate),
		fluid:    -sodiumCarb * (1 - carb/m.carb0) / sodiumReturn,
		adaptive: adaptiveShare * (intake - m.intake0),
	}
}

// swiftOver is when the swift parts count as settled: adaptation, the slowest,
// has then less than a millionth of its change before it.
const swiftOver = 14 * adaptiveDays // days

// swiftAt solves the three swift equations for a day t of the phase:
//
//	17.6 MJ/kg × dG/dt = carbohydrate − k × G²
//	3220 mg/l × dF/dt  = −3000 × F − 4000 × (1 − carbohydrate / baseline)
//	14 days × dA/dt    = 0.14 × change of intake − A
func (p *span) swiftAt(t float64) swift {
	if t >= swiftOver {
		return p.end
	}
	// The glycogen equation is a Riccati equation with constant terms.
	x := p.turnover * t
	grown, ratio := math.Tanh(x), 1.0
	if x > 1e-6 {
		ratio = grown / x
	}
	start := p.from.glycogen
	return swift{
		glycogen: (start + p.end.glycogen*grown) / (1 + start*p.glycogenRate*t/glycogenEnergy*ratio),
		fluid:    p.end.fluid + (p.from.fluid-p.end.fluid)*math.Exp(-t*sodiumReturn/sodiumPerLitre),
		adaptive: p.end.adaptive + (p.from.adaptive-p.end.adaptive)*math.Exp(-t/adaptiveDays),
	}
}

// fatSlope returns how fat changes in a day, and the energy spent:
//
//	39.5 MJ/kg × dF/dt = (1 − p) × (intake − spent − energy into glycogen)
func (p *span) fatSlope(s state) (slope, spent float64) {
	intoGlycogen := p.carb - p.glycogenRate*s.glycogen*s.glycogen
	lean := leanPart(s.fat)
	laying := (1-lean)*fatLaying/fatEnergy + lean*leanLaying/leanEnergy
	left := p.intake - intoGlycogen
	spent = (p.upkeep(s, p.change) + left*laying) / (1 + laying)
	slope = (1 - lean) * (left - spent) / fatEnergy
	if s.fat <= leastTissue && slope < 0 {
		slope = 0
	}
	return slope, spent
}

// knot is a point of a phase that was stepped to.
type knot struct {
	day   float64
	state state
	slope float64 // of fat, kg a day
}

func (p *span) first() knot {
	slope, _ := p.fatSlope(p.from)
	return knot{0, p.from, slope}
}

// step moves on by h days (classical Runge-Kutta of fourth order for fat; the
// swift parts are exact).
func (p *span) step(k knot, h float64) knot {
	at := func(fat float64, s swift) float64 {
		slope, _ := p.fatSlope(state{max(fat, leastTissue), s})
		return slope
	}
	middle, end := p.swiftAt(k.day+h/2), p.swiftAt(k.day+h)
	b := at(k.state.fat+h/2*k.slope, middle)
	c := at(k.state.fat+h/2*b, middle)
	d := at(k.state.fat+h*c, end)
	fat := max(leastTissue, k.state.fat+h/6*(k.slope+2*b+2*c+d))
	next := knot{day: k.day + h, state: state{fat, end}}
	next.slope, _ = p.fatSlope(next.state)
	return next
}

// The steps of a phase: a quarter of a day while glycogen turns over, a day
// while fluid settles, a week while adaptation does, then four weeks.
// TestCourseStaysWithinAGram and TestLongCourseStaysWithinAGram show the error.
const (
	quartersUntil = 3  // days
	dailyUntil    = 14 // days
	weeklyUntil   = swiftOver
	week          = 7 // days
)

// advance moves on by the next step, which never passes the day last.
func (p *span) advance(k knot, last int) knot {
	switch day := int(k.day); {
	case day < quartersUntil:
		const quarter = 0.25
		for range 4 {
			k = p.step(k, quarter)
		}
		return k
	case day < dailyUntil:
		return p.step(k, 1)
	case day < weeklyUntil:
		return p.step(k, float64(min(week, last-day)))
	default:
		return p.step(k, float64(min(4*week, last-day)))
	}
}

// cubic returns the value at a part u of a step h, from 0 to 1, of the cubic that
// has the values and slopes of both ends.
func cubic(u, h, from, to, first, last float64) float64 {
	v := 1 - u
	return v*v*((1+2*u)*from+u*h*first) + u*u*((1+2*v)*to-v*h*last)
}

// between returns the state on a day between two knots.
func (p *span) between(a, b knot, day float64) state {
	h := b.day - a.day
	fat := cubic((day-a.day)/h, h, a.state.fat, b.state.fat, a.slope, b.slope)
	return state{max(fat, leastTissue), p.swiftAt(day)}
}

// daily calls visit with the state of each day of the phase from 1 to days, for
// as long as visit returns true, and returns the last state.
func (p *span) daily(days int, visit func(day int, s state) bool) state {
	k := p.first()
	for int(k.day) < days {
		next := p.advance(k, days)
		for day := int(k.day) + 1; day < int(next.day); day++ {
			if s := p.between(k, next, float64(day)); !visit(day, s) {
				return s
			}
		}
		k = next
		if !visit(int(k.day), k.state) {
			break
		}
	}
	return k.state
}

// after returns the state after so many days, by the steps of daily.
func (p *span) after(days int) state {
	return p.until(p.first(), days).state
}

// until moves on to a day that is not before the knot.
func (p *span) until(k knot, day int) knot {
	for int(k.day) < day {
		k = p.advance(k, day)
	}
	return k
}

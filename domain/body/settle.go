package body

import (
	"math"

	"handbreadth/domain/unit"
)

// halvings narrows any bracket of tissue to far less than a gram.
const halvings = 60

// mostTissue is more fat than any energy that is searched leads to.
const mostTissue = 5000 // kg

// fatWhere returns the fat at which a rising function is nought.
func fatWhere(miss func(fat float64) float64) float64 {
	low, high := float64(leastTissue), float64(mostTissue)
	for range halvings {
		middle := (low + high) / 2
		if miss(middle) > 0 {
			high = middle
		} else {
			low = middle
		}
	}
	return (low + high) / 2
}

// SettledWeight returns the weight at which an energy settles in the end, where
// what is spent equals what is eaten. Half of the way there takes about a year
// ([LinearOf]).
func SettledWeight(start Start, energy unit.Kilocalorie) unit.Kilogram {
	m := newModel(start)
	return unit.Kilogram(m.weight(m.settled(kilojoules(energy))))
}

func (m *model) settled(intake float64) state {
	swift := m.settledSwift(intake)
	return state{fatWhere(func(fat float64) float64 {
		return m.upkeep(state{fat, swift}, intake-m.intake0) - intake
	}), swift}
}

// HoldingEnergy returns the energy a day that a weight settles at: what holds it
// for good once it is reached. Over the first weeks after a loss a little water
// comes back.
func HoldingEnergy(start Start, weight unit.Kilogram) unit.Kilocalorie {
	m := newModel(start)
	at := func(fat float64) float64 { return m.holding(fat, float64(weight)) }
	fat := fatWhere(func(fat float64) float64 {
		return m.weight(state{fat, m.settledSwift(at(fat))}) - float64(weight)
	})
	return kilocalories(math.Max(0, at(fat)))
}

// holding returns the intake that equals what is spent at a fat mass and a
// weight, once adaptation has settled on it.
func (m *model) holding(fat, weight float64) float64 {
	spent := m.constant + fatUpkeep*fat + leanUpkeep*m.leanAt(fat) + m.activity*weight
	return (spent - answerShare*m.intake0) / (1 - answerShare)
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
	return m.linear()
}

func (m *model) linear() Linear {
	a := forbes / m.fat0
	l := Linear{
		Density: (fatLaying + fatEnergy + a*(leanLaying+leanEnergy)) / ((1 - answerShare) * (1 + a)),
		Slope:   ((fatUpkeep+a*leanUpkeep)/(1+a) + m.activity) / (1 - answerShare),
	}
	l.HalfTime = math.Ln2 * l.Density / l.Slope
	return l
}

package body

import (
	"math"

	"handbreadth/domain/unit"
)

// Parameters of the adult model of Hall et al. 2011 (Lancet 378:826-837, web
// appendix), in the kilojoule set. The glycogen equation was seen in a copy of
// the appendix; the others are from memory, and the trajectories in the tests
// come from an independent program with the same parameters.
const (
	fatEnergy      = 39500.0 // kJ a kilogram of body fat
	leanEnergy     = 7600.0  // kJ a kilogram of lean tissue
	glycogenEnergy = 17600.0 // kJ a kilogram of glycogen

	fatUpkeep  = 13.0 // kJ a kilogram a day
	leanUpkeep = 92.0 // kJ a kilogram a day

	fatLaying  = 750.0 // kJ to lay down a kilogram of fat
	leanLaying = 960.0 // kJ to lay down a kilogram of lean tissue

	thermicShare  = 0.10 // of a change in intake, thermic effect of food
	adaptiveShare = 0.14 // of a change in intake, adaptive thermogenesis
	adaptiveDays  = 14.0 // time constant of adaptive thermogenesis

	glycogenStart = 0.5 // kg
	waterPerGram  = 2.7 // g of water held by a gram of glycogen

	sodiumPerLitre = 3220.0 // mg in a litre of extracellular fluid
	sodiumReturn   = 3000.0 // mg a litre a day
	sodiumCarb     = 4000.0 // mg a day, pull of carbohydrate on sodium

	// forbesLength is the constant of the Forbes curve in kilograms of fat:
	// 10.4 times the ratio of the energy of lean tissue and fat.
	forbesLength = 10.4 * leanEnergy / fatEnergy

	// carbohydrateShare of energy is assumed before and during a course.
	carbohydrateShare = 0.5
)

// Start is a person at the beginning of a course.
type Start struct {
	Weight  unit.Kilogram
	FatMass unit.Kilogram
	Resting unit.Kilocalorie // a day
	PAL     unit.PAL
}

// state is what the model carries from day to day.
type state struct {
	fat, lean float64 // kg
	glycogen  float64 // kg
	fluid     float64 // kg of extracellular fluid beside the start
	adaptive  float64 // kJ a day
}

// model is a person's constants: what stays through a course. Energies are in
// kilojoules a day.
type model struct {
	weight0, fat0, lean0 float64
	intake0              float64 // baseline intake, equal to expenditure
	carb0                float64
	glycogenRate         float64
	activity             float64 // kJ a kilogram a day
	constant             float64
}

// Kilojoules of a day.
func kilojoules(e unit.Kilocalorie) float64 { return float64(e.Kilojoules()) }

func newModel(s Start) model {
	m := model{weight0: float64(s.Weight), fat0: float64(s.FatMass)}
	m.lean0 = m.weight0 - m.fat0
	resting := kilojoules(s.Resting)
	m.intake0 = float64(s.PAL) * resting
	m.carb0 = carbohydrateShare * m.intake0
	m.glycogenRate = m.carb0 / (glycogenStart * glycogenStart)
	m.activity = ((1-thermicShare)*float64(s.PAL) - 1) * resting / m.weight0
	m.constant = m.intake0 - fatUpkeep*m.fat0 - leanUpkeep*m.lean0 - m.activity*m.weight0
	return m
}

func (m *model) begin() state {
	return state{fat: m.fat0, lean: m.lean0, glycogen: glycogenStart}
}

// weight returns body weight in a state: fat, lean tissue, glycogen with its
// water, and extracellular fluid.
func (m *model) weight(s state) float64 {
	return m.weight0 + (s.fat - m.fat0) + (s.lean - m.lean0) + s.fluid + (1+waterPerGram)*(s.glycogen-glycogenStart)
}

// leanPart returns the share of an energy imbalance that lean tissue takes.
// Source: Forbes curve as used by Hall 2007, Br J Nutr 97:1059.
func leanPart(fat float64) float64 { return forbesLength / (forbesLength + fat) }

// slope returns how a state changes in a day at an intake, and the energy spent.
func (m *model) slope(s state, intake float64) (d state, spent float64) {
	carb := carbohydrateShare * intake
	change := intake - m.intake0
	d.glycogen = (carb - m.glycogenRate*s.glycogen*s.glycogen) / glycogenEnergy
	d.fluid = (-sodiumReturn*s.fluid - sodiumCarb*(1-carb/m.carb0)) / sodiumPerLitre
	d.adaptive = (adaptiveShare*change - s.adaptive) / adaptiveDays
	p := leanPart(s.fat)
	laying := (1-p)*fatLaying/fatEnergy + p*leanLaying/leanEnergy
	left := intake - glycogenEnergy*d.glycogen
	upkeep := m.constant + fatUpkeep*s.fat + leanUpkeep*s.lean + m.activity*m.weight(s) + thermicShare*change + s.adaptive
	spent = (upkeep + left*laying) / (1 + laying)
	d.fat = (1 - p) * (left - spent) / fatEnergy
	d.lean = p * (left - spent) / leanEnergy
	return d, spent
}

func (s state) plus(d state, h float64) state {
	return state{
		fat: s.fat + h*d.fat, lean: s.lean + h*d.lean, glycogen: s.glycogen + h*d.glycogen,
		fluid: s.fluid + h*d.fluid, adaptive: s.adaptive + h*d.adaptive,
	}
}

// step moves a state on by h days (classical Runge-Kutta of fourth order).
func (m *model) step(s state, intake, h float64) state {
	a, _ := m.slope(s, intake)
	b, _ := m.slope(s.plus(a, h/2), intake)
	c, _ := m.slope(s.plus(b, h/2), intake)
	d, _ := m.slope(s.plus(c, h), intake)
	next := s
	next.fat += h / 6 * (a.fat + 2*b.fat + 2*c.fat + d.fat)
	next.lean += h / 6 * (a.lean + 2*b.lean + 2*c.lean + d.lean)
	next.glycogen += h / 6 * (a.glycogen + 2*b.glycogen + 2*c.glycogen + d.glycogen)
	next.fluid += h / 6 * (a.fluid + 2*b.fluid + 2*c.fluid + d.fluid)
	next.adaptive += h / 6 * (a.adaptive + 2*b.adaptive + 2*c.adaptive + d.adaptive)
	return m.bounded(next)
}

// least is the tissue below which the model does not go: it describes living
// adults, and a course that comes here has left its range.
const least = 0.5 // kg

func (m *model) bounded(s state) state {
	s.fat, s.lean, s.glycogen = math.Max(s.fat, least), math.Max(s.lean, least), math.Max(s.glycogen, 0)
	return s
}

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
	answerShare   = thermicShare + adaptiveShare

	glycogenStart    = 0.5 // kg
	waterPerGlycogen = 2.7 // kg of water held by a kilogram

	sodiumPerLitre = 3220.0 // mg in a litre of extracellular fluid
	sodiumReturn   = 3000.0 // mg a litre a day
	sodiumCarb     = 4000.0 // mg a day, pull of carbohydrate on sodium

	// forbes is the constant of the Forbes curve: lean tissue follows the
	// logarithm of fat, at 10.4 kg for each unit.
	// Source: Forbes 1987 as used by Hall 2007, Br J Nutr 97:1059 (formula from
	// memory; its energy density for much fat, near the static rule, was seen).
	forbes = 10.4 // kg

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

// state is what the model carries from one phase to the next. Lean tissue is
// not in it: by the Forbes curve it follows from fat.
type state struct {
	fat float64 // kg
	swift
}

// swift is the part of a state that settles within days or weeks.
type swift struct {
	glycogen float64 // kg
	fluid    float64 // kg of extracellular fluid beside the start
	adaptive float64 // kJ a day
}

// model is a person's constants: what stays through a course. Energies are in
// kilojoules a day.
type model struct {
	weight0, fat0, lean0 float64
	logFat0              float64
	intake0              float64 // baseline intake, equal to expenditure
	carb0                float64
	glycogenRate         float64
	activity             float64 // kJ a kilogram a day
	constant             float64
}

func kilojoules(e unit.Kilocalorie) float64 { return float64(e.Kilojoules()) }

func kilocalories(kj float64) unit.Kilocalorie { return unit.Kilojoule(kj).Kilocalories() }

func newModel(s Start) model {
	m := model{weight0: float64(s.Weight), fat0: float64(s.FatMass)}
	m.lean0, m.logFat0 = m.weight0-m.fat0, math.Log(m.fat0)
	resting := kilojoules(s.Resting)
	m.intake0 = float64(s.PAL) * resting
	m.carb0 = carbohydrateShare * m.intake0
	m.glycogenRate = m.carb0 / (glycogenStart * glycogenStart)
	// A level near 1 leaves less than nothing for activity; moving a body never
	// gives energy back.
	m.activity = math.Max(0, ((1-thermicShare)*float64(s.PAL)-1)*resting/m.weight0)
	m.constant = m.intake0 - fatUpkeep*m.fat0 - leanUpkeep*m.lean0 - m.activity*m.weight0
	return m
}

func (m *model) begin() state {
	return state{fat: m.fat0, swift: swift{glycogen: glycogenStart}}
}

// leastTissue is the fat, and the lean tissue, below which the model does not
// go: it describes living adults, and a course that comes here left its range.
const leastTissue = 0.5 // kg

// LeastFat is where a course stops that would leave a body without fat.
const LeastFat unit.Kilogram = leastTissue

// leanAt returns lean tissue, without glycogen and fluid, by the Forbes curve.
func (m *model) leanAt(fat float64) float64 {
	return max(leastTissue, m.lean0+forbes*(math.Log(fat)-m.logFat0))
}

// weight returns body weight: fat, lean tissue, glycogen with its water, and
// extracellular fluid.
func (m *model) weight(s state) float64 { return m.together(s, m.leanAt(s.fat)) }

func (m *model) together(s state, lean float64) float64 {
	return m.weight0 + (s.fat - m.fat0) + (lean - m.lean0) + s.fluid + (1+waterPerGlycogen)*(s.glycogen-glycogenStart)
}

// leanPart returns the share of an energy imbalance that lean tissue takes: the
// slope of the Forbes curve, told in energy.
func leanPart(fat float64) float64 {
	const length = forbes * leanEnergy / fatEnergy
	return length / (length + fat)
}

// upkeep returns what a state spends beside the laying down of tissue.
func (m *model) upkeep(s state, change float64) float64 {
	lean := m.leanAt(s.fat)
	return m.constant + fatUpkeep*s.fat + leanUpkeep*lean + m.activity*m.together(s, lean) + thermicShare*change + s.adaptive
}

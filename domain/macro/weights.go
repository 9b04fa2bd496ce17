package macro

import (
	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Weights are the weights of a client that amounts for each kilogram can be
// reckoned on. Adjusted and Lean come from package body with their steps; where
// one is nought, the weight stands in for it.
type Weights struct {
	Current  unit.Kilogram
	Height   unit.Centimetre
	Adjusted derive.Derived[unit.Kilogram]
	Lean     derive.Derived[unit.Kilogram]
}

// LeanShare is the part of weight that is lean in a body with middling fat: it
// carries an amount for each kilogram of weight over to lean weight.
// Source: convention; the healthy ranges of Gallagher 2000 (women 21-33 %, men
// 8-20 % fat at 20-39 years, seen) have their middle near 20 % fat.
const LeanShare = 0.8

// reckoned is the weight that an amount for each kilogram is multiplied by.
type reckoned struct {
	weight unit.Kilogram
	name   string // "weight", "adjusted weight", "lean weight"
	steps  []derive.Step
}

const adjustedName = "adjusted weight"

// on returns the weight of a basis.
func (w Weights) on(b Basis) reckoned {
	switch {
	case b == BasisLean && w.Lean.Value > 0:
		return reckoned{w.Lean.Value, "lean weight", w.Lean.Steps}
	case b == BasisAdjusted || (b != BasisCurrent && unit.BMI(w.Current, w.Height) >= AdjustFromBMI):
		return w.adjusted()
	}
	return reckoned{weight: w.Current, name: "weight"}
}

// adjusted returns the adjusted weight, which is never above the weight.
func (w Weights) adjusted() reckoned {
	if w.Adjusted.Value <= 0 || w.Adjusted.Value >= w.Current {
		return reckoned{weight: w.Current, name: "weight"}
	}
	return reckoned{w.Adjusted.Value, adjustedName, w.Adjusted.Steps}
}

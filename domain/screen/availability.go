package screen

import (
	"fmt"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// EnergyAvailable is a number of kilocalories for each kilogram of fat-free mass.
type EnergyAvailable float64

// The thresholds of energy availability.
//
// Source: Burke 2018; IOC 2023 consensus (30 and 45 seen); 30 is debated and not
// established in men.
const (
	LowAvailability     EnergyAvailable = 30
	HealthyAvailability EnergyAvailable = 45
)

const availabilityLow = "energy_availability_low"

// AvailabilityInput is what energy availability is reckoned from.
type AvailabilityInput struct {
	Target   unit.Kilocalorie // a day
	Exercise unit.Kilocalorie // of training on an average day; 0: not told
	Trains   bool             // endurance or strength, whether its energy was told or not
	Lean     unit.Kilogram
	BMI      unit.KilogramPerSquareMetre
}

// Availability returns the energy availability of a target, with no steps where
// it is not assessed.
//
// It is assessed where training was told, by its energy or by its kind, and under
// a BMI of 25; the energy of training counts as far as it was told, so that what
// is assessed is the most that is left. With overweight and no training told it is not:
// the threshold was found in lean people who train, and with overweight the body
// has fat to draw on, so that many a customary deficit would fall under it.
func Availability(in AvailabilityInput) derive.Derived[EnergyAvailable] {
	if in.Lean <= 0 || (in.Exercise == 0 && !in.Trains && in.BMI >= OverweightBMI) {
		return derive.Derived[EnergyAvailable]{}
	}
	return EnergyAvailability(in.Target, in.Exercise, in.Lean)
}

// EnergyAvailability returns what is left of the intake for the body after
// exercise, for each kilogram of fat-free mass.
func EnergyAvailability(intake, exercise unit.Kilocalorie, lean unit.Kilogram) derive.Derived[EnergyAvailable] {
	value := EnergyAvailable(float64(intake-exercise) / float64(lean))
	note := "Under 30 is low; the line is debated and not established in men."
	if exercise == 0 {
		note = "The energy of training was not told and counts as none. " + note
	}
	return derive.Exact(value, derive.Step{
		Key: "energy_availability", Label: "Energy availability", Formula: "(intake − exercise) / fat-free mass",
		Inputs: []derive.Input{
			{Name: "intake", Value: float64(intake), Unit: "kcal/day"},
			{Name: "exercise", Value: float64(exercise), Unit: "kcal/day"},
			{Name: "fat-free mass", Value: float64(lean), Unit: "kg"},
		},
		Result: float64(value), Unit: "kcal/kg", Source: iocAvailability, Note: note,
	})
}

func fromAvailability(f Facts) []derive.Finding {
	if len(f.Availability.Steps) == 0 || f.Availability.Value >= LowAvailability {
		return nil
	}
	text := fmt.Sprintf("Energy availability of %.1f kcal for each kilogram of fat-free mass is under 30: periods, bone and recovery can suffer. More energy, or less training, comes first.", float64(f.Availability.Value))
	if f.Exercise == 0 {
		text += " The energy of training was not told: with it, this is lower still."
	}
	return []derive.Finding{{
		Code: availabilityLow, Level: derive.Hold, Scope: deficit | anyComparison, Text: text, Source: iocAvailability,
	}}
}

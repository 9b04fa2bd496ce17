package domain

import (
	"handbreadth/domain/body"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// Client is the person that a plan is for.
type Client struct {
	Name        string
	Born        unit.Date
	EquationSex energy.Sex
}

// Intake is what was asked and measured at one visit.
type Intake struct {
	Date     unit.Date
	Client   Client
	Height   unit.Centimetre
	Weight   unit.Kilogram
	Body     BodyMeasures
	Activity energy.Activity
	// Exercise is the energy of training on an average day, above rest; 0: not told.
	Exercise    unit.Kilocalorie
	Goal        energy.Goal
	MealsPerDay int
	Hand        HandIntake
	Pattern     food.Pattern
	Avoid       []food.Allergen
	Screening   screen.Answers
	Reasons     screen.Reasons
	Scored      screen.Scored
	// Reproduction is what is known of a pregnancy or of breastfeeding.
	Reproduction energy.Reproduction
	// CarbFatBalance is the share of the energy left after protein that goes to
	// carbohydrate, 0 to 100.
	CarbFatBalance unit.Percent
	FatFloor       unit.Percent
	// FatFloorPerKg is a fat floor by weight, beside the one by energy; 0: none.
	FatFloorPerKg unit.GramPerKilogram
	// ProteinPerKg is 0 where the situation decides.
	ProteinPerKg unit.GramPerKilogram
	ProteinBasis macro.Basis
	Training     macro.Training
	// UsualFibre is the fibre eaten a day now; 0: not told.
	UsualFibre      unit.Gram
	Counting        macro.Counting
	RestingEquation energy.RestingEquation
	// MeasuredResting is resting energy a day by indirect calorimetry; 0: not
	// measured. It wins over any equation.
	MeasuredResting unit.Kilocalorie
}

// BodyMeasures is what was measured beside height and weight; 0: not measured.
type BodyMeasures struct {
	Neck, Waist, Hip unit.Centimetre
	Fat              unit.Percent    // of weight, by a method named by the practitioner
	Points           body.Population // at which BMI speaks; empty: WHO, all populations
}

// NewIntake returns an intake with the stated defaults and nothing else.
func NewIntake() Intake {
	return Intake{
		MealsPerDay:     DefaultMeals,
		Pattern:         food.Omnivore,
		CarbFatBalance:  macro.DefaultBalance,
		FatFloor:        macro.DefaultFatFloor,
		RestingEquation: energy.MifflinStJeor,
	}
}

// Age returns the client's age at the visit.
func (in Intake) Age() unit.Year { return in.Client.Born.AgeOn(in.Date) }

package domain

import (
	"handbreadth/domain/body"
	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Composition is what is known of the client's body.
type Composition struct {
	// Fat is body fat by the method that is trusted most for what is known, and
	// Estimates by every method that can be used, that one first.
	Fat       body.FatEstimate
	Estimates []body.FatEstimate
	Lean      derive.Derived[unit.Kilogram]
	// Healthy is the healthy weight range; its value is the middle.
	Healthy    derive.Derived[unit.Kilogram]
	References []body.ReferenceWeight
	Adjusted   derive.Derived[unit.Kilogram]
	BMIClass   body.Limit
	// WaistToHeight has no steps where the waist was not measured.
	WaistToHeight      derive.Derived[unit.Ratio]
	WaistClass         body.Limit // zero where the waist was not measured
	WaistToHeightClass body.Limit // zero as well from a BMI of 35, where it does not speak
}

func composition(in Intake) Composition {
	f := in.figure()
	points := in.Body.Points
	if points == "" {
		points = body.WorldPoints
	}
	sex := in.Client.EquationSex
	c := Composition{
		Fat: body.Fat(f), Estimates: body.FatEstimates(f), Lean: body.LeanMass(f),
		Healthy: body.HealthyWeight(in.Height, points), References: body.ReferenceWeights(sex, in.Height),
		BMIClass: body.ClassOf(float64(unit.BMI(in.Weight, in.Height)), body.BMILimits(points)),
	}
	// The first reference is the one that the program reckons with.
	c.Adjusted = body.AdjustedWeight(in.Weight, c.References[0].Weight.Value)
	if in.Body.Waist > 0 {
		c.WaistToHeight = body.WaistToHeight(f)
		c.WaistClass = body.ClassOf(float64(in.Body.Waist), body.WaistLimits(sex))
		if unit.BMI(in.Weight, in.Height) < body.WaistSpeaksBelow {
			c.WaistToHeightClass = body.ClassOf(float64(c.WaistToHeight.Value), body.WaistToHeightLimits())
		}
	}
	return c
}

func (in Intake) figure() body.Figure {
	return body.Figure{
		Sex: in.Client.EquationSex, Age: in.Age(), Weight: in.Weight, Height: in.Height,
		Neck: in.Body.Neck, Waist: in.Body.Waist, Hip: in.Body.Hip, MeasuredFat: in.Body.Fat,
	}
}

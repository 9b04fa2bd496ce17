package domain

import (
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// Targets is the day's energy split into macros and hand measures.
type Targets struct {
	Energy  derive.Derived[unit.Kilocalorie]
	Protein derive.Derived[unit.Gram]
	// ProteinPerKg is for each kilogram of ProteinOn: "weight", "adjusted weight"
	// or "lean weight".
	ProteinPerKg unit.GramPerKilogram
	ProteinOn    string
	// ProteinLimited reports that protein was set lower than asked, to fit.
	ProteinLimited bool
	Fat            derive.Derived[unit.Gram]
	// Carbohydrate is in the counting of the intake; Split has it in both.
	Carbohydrate derive.Derived[unit.Gram]
	Fibre        derive.Derived[unit.Gram]
	// Shares are of energy, fibre's inside carbohydrate's, whatever the counting.
	Shares macro.Shares
	// Bands are the acceptable ranges of the shares; Ceilings is what a day should
	// not go over.
	Bands    []macro.Band
	Ceilings []macro.Ceiling
	// FatFloor is the floor in force as a part of energy, grams a kilogram
	// included; Floor has it in grams.
	FatFloor unit.Percent
	Floor    macro.Floor
	// CarbFatBalance is the balance that came out, after floor and least
	// carbohydrate; the intake has what was asked for.
	CarbFatBalance unit.Percent
	Split          macro.Split
	// Label is the energy of the grams as a label in the European Union counts it.
	Label macro.LabelEnergy
	// Thermic is the energy that digesting takes; nothing is reckoned with it.
	Thermic derive.Derived[unit.Kilocalorie]
	// Availability is the energy left for the body after training. It has no steps
	// where it was not assessed: see [screen.Availability].
	Availability derive.Derived[screen.EnergyAvailable]
	// Calibration is the size of the client's hand; it is in Contents. Fillings
	// say which foods fill each measure.
	Calibration hand.Calibration
	Fillings    [4]food.Filling
	Contents    hand.Contents
	Allotment   hand.Allotment
}

func newTargets(p Plan, outcome energy.Outcome) *Targets {
	in := p.Intake
	// A wish for an impossible date asks for less than nothing; it is referred
	// below 800 kcal, and split as nought until then.
	energyToSplit := max(outcome.Target.Value, 0)
	t := &Targets{Energy: outcome.Target}
	weights := weightsOf(p)
	t.Floor = macro.FatFloor(macro.FloorInput{
		Weights: weights, Energy: energyToSplit, Share: fatFloor(p), PerKg: in.FatFloorPerKg,
	})
	t.FatFloor = t.Floor.Share
	protein := macro.Protein(macro.ProteinInput{
		Weights: weights, Age: p.Age, Direction: direction(outcome), Training: in.Training, Stage: stage(in),
		Kidney: in.Screening.Yes(screen.Kidney), AfterBariatric: in.Screening.Yes(screen.BariatricPast),
		Asked: in.ProteinPerKg, Basis: in.ProteinBasis,
		Energy: energyToSplit, FatFloor: t.FatFloor,
	})
	t.Protein, t.ProteinPerKg, t.ProteinOn, t.ProteinLimited = protein.Grams, protein.PerKg, protein.On, protein.Capped
	t.Split = macro.Divide(macro.SplitInput{
		Energy: energyToSplit, Protein: t.Protein.Value,
		CarbFatBalance: in.CarbFatBalance, FatFloor: t.FatFloor,
		LeastCarbohydrate: leastCarbohydrate(in),
		Fibre:             macro.Fibre(energyToSplit), Counting: in.Counting,
	})
	t.Fat, t.Carbohydrate, t.Fibre = t.Split.Fat, t.Split.Carbohydrate, t.Split.Fibre
	t.Fat.Steps = append(append([]derive.Step{}, t.Floor.Grams.Steps...), t.Fat.Steps...)
	t.CarbFatBalance = balanceOf(t.Split)
	t.look()
	t.Availability = p.availability(t.Energy.Value)
	var contents hand.Contents
	contents, t.Fillings = hand.FillChosen(in.Hand.Basket, in.Pattern, in.Avoid)
	t.Calibration = in.calibration()
	t.Contents = contents.Scaled(t.Calibration)
	t.Allotment = hand.Allot(hand.Aim{
		Meals: in.MealsPerDay, Energy: t.Energy.Value, Protein: t.Protein.Value,
		Fat: t.Fat.Value, Carbohydrate: t.Split.Total.Value, FatFloor: t.FatFloor,
		FewVegetables: in.Screening.Yes(screen.GutNarrowing), ProteinByItself: in.Screening.Yes(screen.Kidney),
		LeastEnergy: leastBrought(in, t.Energy.Value), LeastAvailable: leastCarbohydrate(in) * (1 - screen.FloorRounding),
		Wishes: in.Hand.Wishes, Sizes: in.Hand.Sizes,
	}, t.Contents)
	return t
}

// leastBrought returns the energy that a day of measures should not be under: a
// little below the highest least energy that the target keeps to; 0: it keeps to
// none.
func leastBrought(in Intake, target unit.Kilocalorie) unit.Kilocalorie {
	for _, least := range []unit.Kilocalorie{energy.LeastEnergy(in.Client.EquationSex), energy.VeryLowEnergy} {
		if target >= least {
			return least * (1 - screen.FloorRounding)
		}
	}
	return 0
}

// availability returns what an energy leaves for the body after training.
func (p Plan) availability(of unit.Kilocalorie) derive.Derived[screen.EnergyAvailable] {
	return screen.Availability(screen.AvailabilityInput{
		Target: of, Exercise: p.Intake.Exercise, Trains: p.Intake.Training != macro.TrainingNone,
		Lean: p.Body.Lean.Value, BMI: p.BMI.Value,
	})
}

// look fills in what is shown beside the targets.
func (t *Targets) look() {
	t.Shares = t.Split.Shares(t.Protein.Value)
	t.Bands = macro.Bands(t.Shares)
	t.Ceilings = macro.Ceilings(max(t.Energy.Value, 0))
	day := macro.Amounts{
		Protein: t.Protein.Value, Fat: t.Fat.Value,
		Carbohydrate: t.Split.Available.Value, Fibre: t.Fibre.Value,
	}
	t.Label = day.Label()
	day.Carbohydrate, day.Fibre = t.Split.Total.Value, 0
	t.Thermic = macro.ThermicEffect(day)
}

// macroSteps returns the derivation of the macros in the order of the work.
func (t *Targets) macroSteps() []derive.Step {
	var steps []derive.Step
	steps = append(steps, t.Protein.Steps...)
	steps = append(steps, t.Fat.Steps...)
	steps = append(steps, t.Carbohydrate.Steps...)
	steps = append(steps, t.Split.Beside.Steps...)
	steps = append(steps, t.Fibre.Steps...)
	for _, b := range t.Bands {
		steps = append(steps, b.Share.Steps...)
	}
	for _, c := range t.Ceilings {
		steps = append(steps, c.Grams.Steps...)
	}
	steps = append(steps, t.Label.Kilocalories.Steps...)
	steps = append(steps, t.Label.Kilojoules.Steps...)
	steps = append(steps, t.Thermic.Steps...)
	return append(steps, t.Availability.Steps...)
}

// weightsOf hands the body's weights to the macros. The adjusted weight brings
// the steps of the reference weight that it starts from.
func weightsOf(p Plan) macro.Weights {
	adjusted := p.Body.Adjusted
	adjusted.Steps = append(append([]derive.Step{}, p.Body.References[0].Weight.Steps...), adjusted.Steps...)
	return macro.Weights{Current: p.Intake.Weight, Height: p.Intake.Height, Adjusted: adjusted, Lean: p.Body.Lean}
}

func fatFloor(p Plan) unit.Percent {
	in := p.Intake
	if screen.RaisesFloor(in.Client.EquationSex, p.Age, p.BMI.Value) || screen.Expects(in.Screening, in.Reproduction) {
		return max(in.FatFloor, macro.RaisedFatFloor)
	}
	return in.FatFloor
}

func direction(o energy.Outcome) macro.Direction {
	switch {
	case o.Lowers():
		return macro.Lowering
	case o.Raises():
		return macro.Raising
	}
	return macro.Level
}

// The weeks in which the second and the third trimester begin.
const (
	secondTrimesterFrom = 14
	thirdTrimesterFrom  = 28
)

// stage returns the stage of pregnancy or breastfeeding that decides protein.
func stage(in Intake) macro.Stage {
	switch r := in.Reproduction; {
	case r.Weeks >= thirdTrimesterFrom:
		return macro.ThirdTrimester
	case r.Breastfeeding == energy.FirstHalfYear:
		return macro.BreastfeedingFirstHalf
	case r.Breastfeeding == energy.SecondHalfYear:
		return macro.BreastfeedingSecondHalf
	case r.Weeks >= secondTrimesterFrom:
		return macro.SecondTrimester
	case r.Weeks > 0:
		return macro.FirstTrimester
	case in.Screening.Yes(screen.Pregnant):
		return macro.StageNotTold
	}
	return macro.StageNone
}

// leastCarbohydrate returns the allowance in pregnancy and while breastfeeding,
// the higher one where only the one question for both was answered; 0: none.
func leastCarbohydrate(in Intake) unit.Gram {
	switch r := in.Reproduction; {
	case r.Breastfeeding != energy.NotBreastfeeding:
		return macro.CarbohydrateBreastfeeding
	case r.Weeks > 0:
		return macro.CarbohydratePregnant
	case in.Screening.Yes(screen.Pregnant):
		return macro.CarbohydrateBreastfeeding
	}
	return 0
}

// balanceOf returns the balance that came out.
func balanceOf(s macro.Split) unit.Percent {
	fat := float64(s.Fat.Value) * macro.EnergyPerGramFat
	carbohydrate := float64(s.CarbohydrateEnergy)
	if fat+carbohydrate <= 0 {
		return 0
	}
	return unit.Percent(100 * carbohydrate / (fat + carbohydrate))
}

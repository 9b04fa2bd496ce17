// Package domain composes the whole computation: from an intake to a plan in
// which every number carries its derivation. It knows no screen, no store, no
// paper and no clock.
package domain

import (
	"strconv"
	"strings"

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

// The accepted spans of an intake.
const (
	LeastMeals                        = 1
	MostMeals                         = 6
	DefaultMeals                      = 3
	LeastHeight      unit.Centimetre  = 100
	MostHeight       unit.Centimetre  = 250
	LeastWeight      unit.Kilogram    = 20
	MostWeight       unit.Kilogram    = 400
	LeastEnergyAsked unit.Kilocalorie = 400
	MostEnergyAsked  unit.Kilocalorie = 10000
	OldestAge        unit.Year        = 120
	longestGoalDays                   = 365 * 10
)

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

// The names of the fields in problems: those of the consult file.
const (
	FieldDate      = "date"
	FieldBorn      = "client.born"
	FieldSex       = "client.equation_sex"
	FieldHeight    = "height"
	FieldWeight    = "weight"
	FieldActivity  = "activity"
	FieldGoalKind  = "goal.kind"
	FieldGoal      = "goal.weight"
	FieldGoalBy    = "goal.by"
	FieldGoalKcal  = "goal.kcal_per_day"
	FieldMeals     = "meals_per_day"
	FieldPattern   = "eating_pattern"
	FieldBalance   = "carb_fat_balance_percent"
	FieldFloor     = "fat_floor_percent"
	FieldProtein   = "protein_g_per_kg"
	FieldEquation  = "resting_equation"
	acceptedDate   = "a date, such as 2026-03-02"
	acceptedHeight = "a height of 100 to 250 cm, such as 168 cm or 5 ft 6 in"
	acceptedWeight = "a weight of 20 to 400 kg, such as 72.5 kg, 160 lb or 11 st 6 lb"
)

// Validate lists everything that keeps a plan from being computed. It returns
// [unit.Problems], or nil.
func (in Intake) Validate() error {
	var ps unit.Problems
	in.checkPerson(&ps)
	in.checkGoal(&ps)
	in.checkSettings(&ps)
	return ps.Err()
}

func (in Intake) checkPerson(ps *unit.Problems) {
	if in.Date.IsZero() {
		ps.Add(FieldDate, "", acceptedDate)
	}
	switch {
	case in.Client.Born.IsZero():
		ps.Add(FieldBorn, "", acceptedDate)
	case !in.Date.IsZero() && (!in.Client.Born.Before(in.Date) || in.Age() > OldestAge):
		ps.Add(FieldBorn, in.Client.Born.String(), "a birth date before the visit, at most 120 years back")
	}
	if !in.Client.EquationSex.Valid() {
		ps.Add(FieldSex, string(in.Client.EquationSex), "female or male: the sex whose equation is used")
	}
	if !(in.Height >= LeastHeight && in.Height <= MostHeight) {
		ps.Add(FieldHeight, given(float64(in.Height), "cm"), acceptedHeight)
	}
	if !(in.Weight >= LeastWeight && in.Weight <= MostWeight) {
		ps.Add(FieldWeight, given(float64(in.Weight), "kg"), acceptedWeight)
	}
	if !in.Activity.Valid() {
		text := string(in.Activity.Category)
		if in.Activity.PAL != 0 {
			text = given(float64(in.Activity.PAL), "")
		}
		ps.Add(FieldActivity, text, "inactive, low_active, active or very_active, or a PAL of 1.0 to 2.5")
	}
}

func (in Intake) checkGoal(ps *unit.Problems) {
	g := in.Goal
	if !g.Kind.Valid() {
		ps.Add(FieldGoalKind, string(g.Kind), "lose, maintain or gain")
		return
	}
	if g.Weight != 0 {
		in.checkGoalWeight(ps)
	}
	if !g.By.IsZero() {
		in.checkGoalDate(ps)
	}
	if g.Energy != 0 && !(g.Energy >= LeastEnergyAsked && g.Energy <= MostEnergyAsked) {
		ps.Add(FieldGoalKcal, given(float64(g.Energy), "kcal"), "an energy of 400 to 10000 kcal a day")
	}
}

func (in Intake) checkGoalWeight(ps *unit.Problems) {
	g, text := in.Goal, given(float64(in.Goal.Weight), "kg")
	switch {
	case !(g.Weight >= LeastWeight && g.Weight <= MostWeight):
		ps.Add(FieldGoal, text, acceptedWeight)
	case g.Kind == energy.Lose && g.Weight >= in.Weight && in.Weight > 0:
		ps.Add(FieldGoal, text, "a weight below the present one, as the goal is to lose")
	case g.Kind == energy.Gain && g.Weight <= in.Weight:
		ps.Add(FieldGoal, text, "a weight above the present one, as the goal is to gain")
	}
}

func (in Intake) checkGoalDate(ps *unit.Problems) {
	g, text := in.Goal, in.Goal.By.String()
	switch {
	case g.Energy != 0:
		ps.Add(FieldGoalBy, text, "a date or an energy, not both")
	case g.Kind != energy.Maintain && g.Weight == 0:
		ps.Add(FieldGoal, "", "the weight to be reached by "+text)
	case !in.Date.IsZero() && !g.By.After(in.Date):
		ps.Add(FieldGoalBy, text, "a date after the visit")
	case !in.Date.IsZero() && in.Date.DaysUntil(g.By) > longestGoalDays:
		ps.Add(FieldGoalBy, text, "a date within ten years of the visit")
	}
}

func (in Intake) checkSettings(ps *unit.Problems) {
	if in.MealsPerDay < LeastMeals || in.MealsPerDay > MostMeals {
		ps.Add(FieldMeals, strconv.Itoa(in.MealsPerDay), "1 to 6 meals a day")
	}
	if !in.Pattern.Valid() {
		ps.Add(FieldPattern, string(in.Pattern), "omnivore, pescatarian, vegetarian or vegan")
	}
	if !(in.CarbFatBalance >= 0 && in.CarbFatBalance <= 100) {
		ps.Add(FieldBalance, given(float64(in.CarbFatBalance), "%"), "0 to 100 %")
	}
	if !(in.FatFloor >= macro.LeastFatFloor && in.FatFloor <= macro.MostFatFloor) {
		ps.Add(FieldFloor, given(float64(in.FatFloor), "%"), "15 to 40 %")
	}
	if in.ProteinPerKg != 0 && !(in.ProteinPerKg >= macro.LeastProteinPerKg && in.ProteinPerKg <= macro.MostProteinPerKg) {
		ps.Add(FieldProtein, given(float64(in.ProteinPerKg), "g/kg"), "0.8 to 2.5 g/kg, or nothing")
	}
	if !in.RestingEquation.Valid() {
		ps.Add(FieldEquation, string(in.RestingEquation), acceptedEquations())
	}
}

func acceptedEquations() string {
	codes := energy.RestingEquations()
	words := make([]string, len(codes))
	for i, c := range codes {
		words[i] = string(c)
	}
	return "one of " + strings.Join(words, ", ")
}

func given(value float64, unitName string) string {
	if value == 0 {
		return ""
	}
	return strings.TrimSpace(strconv.FormatFloat(value, 'g', 6, 64) + " " + unitName)
}

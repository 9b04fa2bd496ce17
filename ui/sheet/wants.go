package sheet

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"handbreadth/domain/screen"
	"handbreadth/ui/draft"
	"handbreadth/ui/widgets"
)

// The sections that the sheet leads to.
const (
	sectionIntake    = "intake"
	sectionScreening = "screening"
	sectionTargets   = "targets"
	sectionMeasures  = "measures"
	sectionHandout   = "handout"
)

// want is one thing that a plan still needs.
type want struct {
	Label   string // "Height"
	Problem string // what was given and what is accepted; "" where nothing was given
	Section string
	Field   draft.Field
}

var labels = map[draft.Field]string{
	draft.Date: "Date of the visit", draft.Name: "Name", draft.Born: "Date of birth",
	draft.Sex: "Sex for the equation", draft.Height: "Height", draft.Weight: "Weight",
	draft.Neck: "Neck", draft.Waist: "Waist", draft.Hip: "Hip", draft.FatPercent: "Body fat", draft.Points: "Points for body mass index",
	draft.MeasuredResting: "Measured resting energy", draft.RestingEquation: "Resting equation",
	draft.Activity: "Activity", draft.PAL: "Activity as a number", draft.Customary: "Customary factor", draft.Day: "Hours of the day",
	draft.Exercise: "Energy of training", draft.Training: "Training",
	draft.GoalKind: "Goal", draft.GoalWeight: "Goal weight", draft.GoalBy: "Goal date", draft.GoalPerWeek: "Weekly rate", draft.GoalEnergy: "Agreed energy",
	draft.Meals: "Meals a day", draft.Pattern: "Eating pattern", draft.Avoid: "Foods to avoid", draft.UsualFibre: "Fibre of a usual day",
	draft.Balance: "Carbohydrate-fat balance", draft.FatFloor: "Fat floor", draft.FatFloorPerKg: "Fat floor for each kg",
	draft.Protein: "Protein", draft.ProteinBasis: "Weight that protein is reckoned on", draft.Counting: "Carbohydrate counted",
	draft.PregnantWeeks: "Weeks of pregnancy", draft.WeightBefore: "Weight before pregnancy", draft.Breastfeeding: "Breastfeeding",
	draft.RecentLoss: "Recent loss of weight", draft.DaysOfLittle: "Days of little food",
	draft.LowElectrolytes: "Blood tests", draft.AlcoholOrDrugs: "Alcohol or listed medicine",
	draft.PalmBreadth: "Palm breadth", draft.PalmLength: "Palm length", draft.HandLength: "Hand length", draft.Basket: "Foods in the measures",
	draft.MealWishes: "Wishes for meals", draft.MealSizes: "Sizes of meals", draft.Ranges: "Counts or ranges",
	draft.NextVisit: "Next visit",
}

// labelOf names a field as the sheet says it.
func labelOf(field draft.Field) string {
	if label, ok := labels[field]; ok {
		return label
	}
	switch {
	case isReason(field):
		return "Reason for a hold"
	case isHours(field):
		return "Hours of the day"
	case isScored(field):
		return "A screening form"
	case isHand(field):
		return "A measure as weighed"
	}
	return string(field)
}

// sectionOf returns the section in which a field is filled in.
func sectionOf(field draft.Field) string {
	switch field {
	case draft.Balance, draft.FatFloor, draft.FatFloorPerKg, draft.Protein, draft.ProteinBasis, draft.Counting, draft.RestingEquation:
		return sectionTargets
	case draft.PregnantWeeks, draft.WeightBefore, draft.Breastfeeding:
		return sectionScreening
	case draft.NextStep, draft.NextVisit:
		return sectionHandout
	case draft.MealWishes, draft.MealSizes:
		return sectionMeasures
	}
	if isHand(field) {
		return sectionMeasures
	}
	if isReason(field) || isScreening(field) || isScored(field) {
		return sectionScreening
	}
	return sectionIntake
}

var (
	hoursPrefix     = string(draft.DayHours(""))
	scoredPrefix    = strings.TrimSuffix(string(draft.RecentLoss), "recent_loss_percent")
	reasonPrefix    = strings.TrimSuffix(string(draft.Reason("", "")), ".")
	handPrefix      = strings.TrimSuffix(string(draft.Basket), "basket")
	screeningPrefix = string(draft.Screening(""))
)

func isReason(field draft.Field) bool    { return strings.HasPrefix(string(field), reasonPrefix) }
func isHand(field draft.Field) bool      { return strings.HasPrefix(string(field), handPrefix) }
func isHours(field draft.Field) bool     { return strings.HasPrefix(string(field), hoursPrefix) }
func isScored(field draft.Field) bool    { return strings.HasPrefix(string(field), scoredPrefix) }
func isScreening(field draft.Field) bool { return strings.HasPrefix(string(field), screeningPrefix) }

// order is the order in which what is wrong is told: that of the form.
var order = []draft.Field{
	draft.Date, draft.Born, draft.Sex, draft.Height, draft.Weight, draft.Neck, draft.Waist, draft.Hip, draft.FatPercent, draft.Points,
	draft.MeasuredResting, draft.RestingEquation, draft.Activity, draft.PAL, draft.Customary, draft.Day, draft.Exercise, draft.Training,
	draft.GoalKind, draft.GoalWeight, draft.GoalBy, draft.GoalPerWeek, draft.GoalEnergy, draft.Meals, draft.Pattern, draft.Avoid,
	draft.UsualFibre, draft.Balance, draft.FatFloor, draft.FatFloorPerKg, draft.Protein, draft.ProteinBasis, draft.Counting,
	draft.PregnantWeeks, draft.WeightBefore, draft.Breastfeeding, draft.RecentLoss, draft.DaysOfLittle, draft.LowElectrolytes,
	draft.AlcoholOrDrugs, draft.PalmBreadth, draft.PalmLength, draft.HandLength, draft.Basket, draft.MealWishes, draft.MealSizes, draft.NextVisit,
}

// wantsOf lists what could not be read, then what is missing, then the
// screening, which a plan needs before it leaves the desk.
func wantsOf(r draft.Reading) []want {
	list := problemsOf(r)
	for _, field := range r.Missing {
		list = append(list, want{Label: labelOf(field), Section: sectionOf(field), Field: field})
	}
	if missing := screen.Unasked(r.Intake.Screening); len(missing) > 0 {
		list = append(list, want{Label: questions(len(missing)), Section: sectionScreening, Field: draft.Screening(missing[0])})
	}
	return list
}

func questions(n int) string {
	if n == 1 {
		return "1 screening question"
	}
	return fmt.Sprintf("%d screening questions", n)
}

// problemsOf lists what is wrong in the order of the form; what the form does
// not order comes last.
func problemsOf(r draft.Reading) []want {
	fields := slices.SortedFunc(maps.Keys(r.Problems), func(a, b draft.Field) int {
		if by := rank(a) - rank(b); by != 0 {
			return by
		}
		return strings.Compare(string(a), string(b))
	})
	list := make([]want, len(fields))
	for i, field := range fields {
		list[i] = want{
			Label: labelOf(field), Problem: widgets.ProblemWords(r.Problems[field]),
			Section: sectionOf(field), Field: field,
		}
	}
	return list
}

func rank(field draft.Field) int {
	if i := slices.Index(order, field); i >= 0 {
		return i
	}
	return len(order)
}

package energy

import (
	"fmt"
	"math"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// MET is the energy of an activity over that of quiet rest.
type MET float64

// Hour is a length of time in hours.
type Hour float64

// Pursuit is one activity with its energy in metabolic equivalents.
type Pursuit struct {
	Code   string // of the Compendium of Physical Activities
	Name   string // in our own words
	MET    MET
	Source derive.Source
}

func compendium(confidence derive.Confidence) derive.Source {
	return derive.Source{Text: "Compendium of Physical Activities 2011, Ainsworth et al., Med Sci Sports Exerc 43:1575-1581", Confidence: confidence}
}

// pursuits: figures of the 2011 edition; sleeping and sitting were seen, the
// others are from memory.
var pursuits = []Pursuit{
	{"07030", "Sleeping", 0.95, compendium(derive.Seen)},
	{"07021", "Sitting quietly", 1.3, compendium(derive.Seen)},
	{"07040", "Standing quietly", 1.3, compendium(derive.Seen)},
	{"11580", "Desk work", 1.5, compendium(derive.Memory)},
	{"11600", "Work on the feet, light", 3.0, compendium(derive.Memory)},
	{"11630", "Work on the feet, with lifting", 4.5, compendium(derive.Memory)},
	{"16010", "Driving", 2.5, compendium(derive.Memory)},
	{"05010", "Housework, light to moderate", 3.3, compendium(derive.Memory)},
	{"08245", "Gardening", 3.8, compendium(derive.Memory)},
	{"17152", "Walking slowly, 2 mph", 2.8, compendium(derive.Memory)},
	{"17190", "Walking, 3 mph", 3.5, compendium(derive.Memory)},
	{"17200", "Walking briskly, 3.5 mph", 4.3, compendium(derive.Memory)},
	{"12030", "Running, 5 mph", 8.3, compendium(derive.Memory)},
	{"12050", "Running, 6 mph", 9.8, compendium(derive.Memory)},
	{"01010", "Cycling for leisure, under 10 mph", 4.0, compendium(derive.Memory)},
	{"01020", "Cycling, 10 to 12 mph", 6.8, compendium(derive.Memory)},
	{"02054", "Strength training, several exercises", 3.5, compendium(derive.Memory)},
	{"02050", "Strength training, hard", 6.0, compendium(derive.Memory)},
	{"18310", "Swimming, leisurely", 6.0, compendium(derive.Memory)},
	{"02150", "Yoga", 2.5, compendium(derive.Memory)},
}

// Pursuits lists the activities of a day that can be chosen.
func Pursuits() []Pursuit { return append([]Pursuit(nil), pursuits...) }

// PursuitByCode returns the activity with a code, and false where none has it.
func PursuitByCode(code string) (Pursuit, bool) {
	for _, p := range pursuits {
		if p.Code == code {
			return p, true
		}
	}
	return Pursuit{}, false
}

// Span is hours of a day spent on one activity.
type Span struct {
	Pursuit Pursuit
	Hours   Hour // an average day's; a weekly sport is divided by seven
}

// HoursInDay is what a told day may add up to.
const HoursInDay Hour = 24

const (
	// quietMET fills what was not told: sitting quietly.
	quietMET MET = 1.3
	// thermicEffect turns activity cost into total energy: food adds about a
	// tenth. Source: Westerterp 2004, Nutr Metab 1:5 (seen: 5-15 %).
	thermicEffect = 0.1
	// metSpread is the error of a level built from a told day, about 10 %.
	metSpread = 0.10
)

// ErrTooLong reports a day of more than 24 hours; the text names the sum.
type ErrTooLong struct{ Sum Hour }

// Error tells the sum.
func (e ErrTooLong) Error() string {
	return fmt.Sprintf("the hours add up to %.1f; a day has 24", float64(e.Sum))
}

// LevelOfDay builds an activity level from a client's average day. Hours that
// were not told are filled with sitting quietly and named in the derivation.
// The MET of rest is taken as resting energy, which compendium METs only
// approach: hence the range. It fails with [ErrTooLong].
//
// Source: method of FAO/WHO/UNU 2004, chapter 5 (factorial estimate of PAL);
// METs: Compendium of Physical Activities 2011.
func LevelOfDay(spans []Span) (derive.Derived[unit.PAL], error) {
	var told, sum float64
	inputs := make([]derive.Input, 0, len(spans)+1)
	for _, s := range spans {
		told += float64(s.Hours)
		sum += float64(s.Hours) * float64(s.Pursuit.MET)
		inputs = append(inputs, derive.Input{Name: s.Pursuit.Name, Text: fmt.Sprintf("%.2g h × %.3g MET", float64(s.Hours), float64(s.Pursuit.MET))})
	}
	if told > float64(HoursInDay)+1e-9 {
		return derive.Derived[unit.PAL]{}, ErrTooLong{Hour(told)}
	}
	if rest := float64(HoursInDay) - told; rest > 1e-9 {
		sum += rest * float64(quietMET)
		inputs = append(inputs, derive.Input{Name: "not told, taken as sitting quietly", Text: fmt.Sprintf("%.2g h × 1.3 MET", rest)})
	}
	value := math.Max(float64(LeastPAL), sum/float64(HoursInDay)/(1-thermicEffect))
	level := min(MostPAL, unit.PAL(value))
	low, high := max(LeastPAL, level*(1-metSpread)), min(MostPAL, level*(1+metSpread))
	return derive.Within(level, low, high, derive.Step{
		Key: "pal", Label: "Physical activity level (PAL)", Formula: "sum of hours × MET / 24 / 0.9", Inputs: inputs,
		Result: float64(level), Range: &derive.Range{Low: float64(low), High: float64(high)},
		Source: derive.Source{Text: "factorial method, FAO/WHO/UNU 2004, chapter 5; Compendium of Physical Activities 2011; food adds about a tenth (Westerterp 2004, Nutr Metab 1:5)", Confidence: derive.Memory},
		Note:   "Built from the client's day. A tenth either side for the error of told time.",
	}), nil
}

// Multiplier is a customary activity factor.
type Multiplier struct {
	Code   string
	Name   string
	Factor unit.PAL
}

// Multipliers lists the customary factors: a convention of the trade without a
// primary source. The described classes are to be preferred.
func Multipliers() []Multiplier {
	return []Multiplier{
		{"little", "Little or no exercise", 1.2},
		{"light", "Light exercise 1-3 days a week", 1.375},
		{"moderate", "Moderate exercise 3-5 days a week", 1.55},
		{"hard", "Hard exercise 6-7 days a week", 1.725},
		{"very_hard", "Very hard exercise or heavy work", 1.9},
	}
}

// MultiplierByCode returns the customary factor with a code, and false where none
// has it.
func MultiplierByCode(code string) (Multiplier, bool) {
	for _, m := range Multipliers() {
		if m.Code == code {
			return m, true
		}
	}
	return Multiplier{}, false
}

// Exercise returns the net energy of an activity above rest.
//
// Source: Compendium convention, net kcal = (MET - 1) x kg x hours.
func Exercise(p Pursuit, weight unit.Kilogram, hours Hour) unit.Kilocalorie {
	return unit.Kilocalorie((float64(p.MET) - 1) * float64(weight) * float64(hours))
}

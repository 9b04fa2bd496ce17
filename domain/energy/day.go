package energy

import (
	"fmt"

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

// pursuits: figures of the 2011 edition; sleeping, sitting and standing were
// seen, brisk walking in a secondary copy (pmj.bmj.com), the others are from memory.
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
	{"17200", "Walking briskly, 3.5 mph", 4.3, compendium(derive.SeenSecond)},
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
	// metSpread is the error of a level built from a told day. Source: common
	// practice, no source; told hours and METs of single people both vary by more
	// than the 8 % that FAO/WHO/UNU 2004 carry with a mid-point.
	metSpread = 0.10
	// hourRounding keeps hours that add up to 24 but for rounding from being more.
	hourRounding Hour = 1e-9
)

// DayPart is what a fault of a told day is about.
type DayPart string

// The parts of an activity of a told day, and the day as a whole.
const (
	DayPursuit DayPart = "what"
	DayHours   DayPart = "hours"
	WholeDay   DayPart = ""
)

// DayFault is one thing that keeps a told day from being reckoned with.
type DayFault struct {
	Index    int // of the activity, from 0; nought for the whole day
	Part     DayPart
	Given    string
	Accepted string
}

// Error tells the fault in one line.
func (f DayFault) Error() string {
	if f.Part == WholeDay {
		return fmt.Sprintf("the day: given %s; accepted: %s", f.Given, f.Accepted)
	}
	return fmt.Sprintf("activity %d, %s: given %s; accepted: %s", f.Index+1, f.Part, f.Given, f.Accepted)
}

// DayFaults lists everything that keeps a told day from being reckoned with.
func DayFaults(spans []Span) []DayFault {
	var faults []DayFault
	sum := Hour(0)
	for i, s := range spans {
		if known, ok := PursuitByCode(s.Pursuit.Code); !ok || known != s.Pursuit {
			faults = append(faults, DayFault{i, DayPursuit, s.Pursuit.Code, "an activity of the list, by its Compendium code"})
		}
		if !(s.Hours > 0 && s.Hours <= HoursInDay) {
			faults = append(faults, DayFault{i, DayHours, plain(float64(s.Hours)) + " h", "the hours of an average day, more than 0 and at most 24"})
		}
		sum += s.Hours
	}
	switch {
	case len(faults) > 0:
	case sum > HoursInDay+hourRounding:
		faults = append(faults, DayFault{0, WholeDay, fmt.Sprintf("%.3g h", float64(sum)), "hours that add up to 24 or less; what is left out counts as sitting quietly"})
	case levelOf(spans) > MostPAL:
		faults = append(faults, DayFault{0, WholeDay, fmt.Sprintf("a level of %.2f", float64(levelOf(spans))), "a day that comes to a level of 2.5 or less; more is not sustained"})
	}
	return faults
}

// QuietHours returns the hours of a day that were not told and count as sitting
// quietly.
func QuietHours(spans []Span) Hour {
	left := HoursInDay
	for _, s := range spans {
		left -= s.Hours
	}
	if left < hourRounding {
		return 0
	}
	return left
}

func levelOf(spans []Span) unit.PAL {
	sum := float64(QuietHours(spans)) * float64(quietMET)
	for _, s := range spans {
		sum += float64(s.Hours) * float64(s.Pursuit.MET)
	}
	return unit.PAL(sum / float64(HoursInDay) / (1 - thermicEffect))
}

// LevelOfDay builds an activity level from a client's average day. Hours that
// were not told are filled with sitting quietly and named in the derivation.
// The MET of rest is taken as resting energy, which compendium METs only
// approach: hence the range. It fails with a [DayFault], the first of
// [DayFaults].
//
// Source: method of FAO/WHO/UNU 2004, chapter 5 (factorial estimate of PAL; from
// memory); food as a tenth of the day as IOM 2005 has it (from memory); METs:
// Compendium of Physical Activities 2011.
func LevelOfDay(spans []Span) (derive.Derived[unit.PAL], error) {
	if faults := DayFaults(spans); len(faults) > 0 {
		return derive.Derived[unit.PAL]{}, faults[0]
	}
	inputs := make([]derive.Input, 0, len(spans)+1)
	for _, s := range spans {
		inputs = append(inputs, hoursInput(s.Pursuit.Name, s.Hours, s.Pursuit.MET))
	}
	if quiet := QuietHours(spans); quiet > 0 {
		inputs = append(inputs, hoursInput("not told, taken as sitting quietly", quiet, quietMET))
	}
	level := levelOf(spans)
	low, high := max(LeastPAL, level*(1-metSpread)), min(MostPAL, level*(1+metSpread))
	return derive.Within(level, low, high, derive.Step{
		Key: "pal", Label: "Physical activity level (PAL)", Formula: "sum of hours × MET / 24 / 0.9", Inputs: inputs,
		Result: float64(level), Range: &derive.Range{Low: float64(low), High: float64(high)},
		Source: derive.Source{Text: "factorial method, FAO/WHO/UNU 2004, chapter 5; Compendium of Physical Activities 2011; food adds about a tenth (Westerterp 2004, Nutr Metab 1:5)", Confidence: derive.Memory},
		Note:   "Built from the client's day. A tenth either side is common practice, no source.",
	}), nil
}

func hoursInput(name string, hours Hour, met MET) derive.Input {
	return derive.Input{Name: name, Text: fmt.Sprintf("%.3g h × %s MET", float64(hours), plain(float64(met)))}
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

// Exercise returns the energy of an activity above rest.
//
// Source: Compendium convention, net kcal = (MET - 1) x kg x hours.
func Exercise(p Pursuit, weight unit.Kilogram, hours Hour) derive.Derived[unit.Kilocalorie] {
	value := (float64(p.MET) - 1) * float64(weight) * float64(hours)
	return derive.Exact(unit.Kilocalorie(value), derive.Step{
		Key: "exercise", Label: "Exercise above rest", Formula: "(MET − 1) × weight × hours",
		Inputs: []derive.Input{
			{Name: p.Name, Value: float64(p.MET), Unit: "MET"},
			{Name: "weight", Value: float64(weight), Unit: "kg"},
			{Name: "hours", Value: float64(hours), Unit: "h"},
		},
		Result: value, Unit: "kcal", Source: p.Source,
	})
}

package energy

import (
	"math"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Category is an activity class as NASEM 2023 names it.
type Category string

// The four classes of NASEM 2023.
const (
	Inactive   Category = "inactive"
	LowActive  Category = "low_active"
	Active     Category = "active"
	VeryActive Category = "very_active"
)

// Class is one activity class: its words, its level and its width.
type Class struct {
	Category  Category
	Name      string
	Describes string
	Level     unit.PAL // the level that is reckoned with
	Low, High unit.PAL // the width of the class
}

// classes: the levels are those of EFSA 2013 (1.4, 1.6, 1.8, 2.0: low, moderate,
// high and very high activity); each lies inside the class of NASEM 2023 that
// carries it (under 1.53, 1.53-1.68, 1.68-1.85, 1.85-2.50). NASEM prints 1.00
// as the lower edge of the first class; 1.20 is used here, as less than that is
// bed rest (FAO/WHO/UNU 2004, from memory).
var classes = []Class{
	{Inactive, "Inactive", "Sits for most of the day: desk work, driving, little walking", 1.4, 1.20, 1.53},
	{LowActive, "Low active", "Desk work plus daily walking, or light work on the feet", 1.6, 1.53, 1.68},
	{Active, "Active", "On the feet most of the day, or an hour of brisk exercise daily", 1.8, 1.68, 1.85},
	{VeryActive, "Very active", "Heavy work, or long hard training on most days", 2.0, 1.85, 2.50},
}

// Classes lists the activity classes, least active first.
func Classes() []Class { return append([]Class(nil), classes...) }

// The activity levels that are accepted.
const (
	LeastPAL unit.PAL = 1.0
	MostPAL  unit.PAL = 2.5
)

// palWidth is the spread given to a level that was told as a number: FAO/WHO/UNU
// 2004 carries a mid-point of 1.85 with 8 % either side.
const palWidth = 0.08

// Activity is how active a client is, told in one of four ways: a class, a
// level as a number, a customary factor, or the hours of a day. Of several the
// last named here wins.
type Activity struct {
	Category  Category
	PAL       unit.PAL // 0: not told as a number
	Customary string   // the code of a [Multiplier]; empty: none
	Day       []Span   // an average day; empty: not told
}

// Told reports whether anything was told in any of the four ways.
func (a Activity) Told() bool {
	return len(a.Day) > 0 || a.Customary != "" || a.PAL != 0 || a.Category != ""
}

// Valid reports whether the code is a known class.
func (c Category) Valid() bool {
	_, known := Activity{Category: c}.class()
	return known
}

// Valid reports whether the activity names a known class, an accepted level, a
// known factor, or a day that can be reckoned with.
func (a Activity) Valid() bool {
	switch {
	case len(a.Day) > 0:
		return len(DayFaults(a.Day)) == 0
	case a.Customary != "":
		_, known := MultiplierByCode(a.Customary)
		return known
	case a.PAL != 0:
		return a.PAL >= LeastPAL && a.PAL <= MostPAL
	}
	_, known := a.class()
	return known
}

func (a Activity) class() (Class, bool) {
	for _, c := range classes {
		if c.Category == a.Category {
			return c, true
		}
	}
	return Class{}, false
}

// Level returns the physical activity level with the width of its class.
//
// Source: EFSA 2013, EFSA Journal 11(1):3005 (levels); NASEM 2023, Dietary
// Reference Intakes for Energy (classes).
func (a Activity) Level() derive.Derived[unit.PAL] {
	switch {
	case len(a.Day) > 0:
		if level, err := LevelOfDay(a.Day); err == nil {
			return level
		}
	case a.Customary != "":
		if m, known := MultiplierByCode(a.Customary); known {
			return numbered(m.Factor, derive.Input{Name: "customary factor", Text: m.Name}, "customary factor",
				derive.Source{Text: "a convention of the trade without a primary source; 8 % either side after FAO/WHO/UNU 2004", Confidence: derive.Custom})
		}
	case a.PAL != 0:
		return numbered(a.PAL, derive.Input{Name: "level", Text: "as given"}, "as given",
			derive.Source{Text: "given by the practitioner; 8 % either side after FAO/WHO/UNU 2004, section 5.4", Confidence: derive.Seen})
	}
	c, _ := a.class()
	return derive.Within(c.Level, c.Low, c.High, palStep(derive.Input{Name: "class", Text: c.Name},
		c.Level, c.Low, c.High, "level of the class",
		derive.Source{Text: "EFSA 2013, EFSA Journal 11(1):3005 (level); NASEM 2023 (class limits)", Confidence: derive.Seen}))
}

// numbered returns a level that was told as a number, with its usual spread.
func numbered(level unit.PAL, in derive.Input, formula string, source derive.Source) derive.Derived[unit.PAL] {
	low, high := max(LeastPAL, level*(1-palWidth)), level*(1+palWidth)
	return derive.Within(level, low, high, palStep(in, level, low, high, formula, source))
}

func palStep(in derive.Input, value, low, high unit.PAL, formula string, source derive.Source) derive.Step {
	return derive.Step{
		Key: "pal", Label: "Physical activity level (PAL)", Formula: formula,
		Inputs: []derive.Input{in}, Result: float64(value),
		Range:  &derive.Range{Low: float64(low), High: float64(high)},
		Source: source,
		Note:   "How many times resting energy the whole day takes.",
	}
}

// Maintenance returns the energy that holds the weight: resting energy times
// the activity level. The range joins the band of resting energy and the width
// of the activity level as independent errors (root of the sum of squares).
//
// Source: FAO/WHO/UNU 2004, Human energy requirements, chapter 5.
func Maintenance(resting derive.Derived[unit.Kilocalorie], level derive.Derived[unit.PAL]) derive.Derived[unit.Kilocalorie] {
	value := float64(resting.Value) * float64(level.Value)
	low := value * (1 - joined(below(resting), below(level)))
	high := value * (1 + joined(above(resting), above(level)))
	step := derive.Step{
		Key: "maintenance", Label: "Maintenance energy", Formula: "resting energy × PAL",
		Inputs: []derive.Input{
			{Name: "resting energy", Value: float64(resting.Value), Unit: "kcal/day"},
			{Name: "PAL", Value: float64(level.Value)},
		},
		Result: value, Unit: "kcal/day",
		Range:  &derive.Range{Low: low, High: high},
		Source: derive.Source{Text: "FAO/WHO/UNU 2004, Human energy requirements, chapter 5", Confidence: derive.Seen},
		Note:   "What holds the weight where it is.",
	}
	return derive.Within(unit.Kilocalorie(value), unit.Kilocalorie(low), unit.Kilocalorie(high), step)
}

func below[T ~float64](d derive.Derived[T]) float64 { return 1 - float64(d.Low)/float64(d.Value) }
func above[T ~float64](d derive.Derived[T]) float64 { return float64(d.High)/float64(d.Value) - 1 }
func joined(a, b float64) float64                   { return math.Sqrt(a*a + b*b) }

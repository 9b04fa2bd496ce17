package energy

import (
	"fmt"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// RestingEquation names a way to know resting energy.
type RestingEquation string

// The published equations, and a measured value.
const (
	MifflinStJeor      RestingEquation = "mifflin_st_jeor"
	HenryWeightHeight  RestingEquation = "henry_2005_weight_height"
	HenryWeight        RestingEquation = "henry_2005_weight"
	Schofield          RestingEquation = "schofield"
	HarrisBenedict1984 RestingEquation = "harris_benedict_1984"
	Owen               RestingEquation = "owen"
	Mueller2004        RestingEquation = "mueller_2004"
	Cunningham1980     RestingEquation = "cunningham_1980"
	KatchMcArdle       RestingEquation = "katch_mcardle"
	Measured           RestingEquation = "measured"
)

// RestingInput is what the equations for resting energy need.
type RestingInput struct {
	Sex      Sex
	Age      unit.Year
	Weight   unit.Kilogram
	Height   unit.Centimetre
	LeanMass unit.Kilogram // 0: nothing is known
	// LeanError is one standard error of lean mass either side.
	LeanError unit.Kilogram
	// LeanMeasured reports that lean mass comes from a measurement of body fat or
	// from a tape. Else it is estimated from body mass index, age and sex.
	LeanMeasured bool
	Measured     unit.Kilocalorie // a day, by indirect calorimetry; 0: not measured
}

// Equation is one published equation: what it was made from, how near it came
// in validation, and its arithmetic.
type Equation struct {
	Code       RestingEquation
	Name       string // as the trade writes it
	Population string // the people whom it was made from
	Accuracy   string // what validation found
	Source     derive.Source
	made       made
	formula    func(RestingInput) worked
}

// worked is the arithmetic of an equation with a client's values.
type worked struct {
	kcal    float64
	stray   float64 // one standard error that comes of what was put in; 0: none
	formula string
	inputs  []derive.Input
}

// limits say whom an equation was made from.
type limits struct {
	leastAge, mostAge       unit.Year     // 0: no limit
	leastWeight, mostWeight unit.Kilogram // 0: no limit
}

// made says whom an equation was made from, where that was published.
type made struct {
	female, male limits
	needsLean    bool
}

// either is for equations that were made from the same span of both sexes.
func either(l limits) made { return made{female: l, male: l} }

// adults is for equations whose publication this program knows no limits of.
var adults = limits{leastAge: 18}

func (m made) of(s Sex) limits {
	if s == Male {
		return m.male
	}
	return m.female
}

// Suits reports whether an equation is meant for this client, and else why not.
func (e Equation) Suits(in RestingInput) (bool, string) {
	l := e.made.of(in.Sex)
	switch {
	case e.made.needsLean && in.LeanMass <= 0:
		return false, "needs lean mass, which is not known"
	case l.leastAge != 0 && in.Age < l.leastAge:
		return false, fmt.Sprintf("made from people of %d and over", l.leastAge)
	case l.mostAge != 0 && in.Age > l.mostAge:
		return false, fmt.Sprintf("made from people up to %d years", l.mostAge)
	case l.leastWeight != 0 && in.Weight < l.leastWeight:
		return false, fmt.Sprintf("made from people of %.0f kg and over", float64(l.leastWeight))
	case l.mostWeight != 0 && in.Weight > l.mostWeight:
		return false, fmt.Sprintf("made from people up to %.0f kg", float64(l.mostWeight))
	case e.made.needsLean && !in.LeanMeasured:
		return false, "lean mass is only estimated here, from body mass index, age and sex, so it adds nothing and its error widens the range"
	}
	return true, ""
}

// Equations lists the published equations, the default first.
func Equations() []Equation { return append([]Equation(nil), equations...) }

// RestingEquations lists the codes that can be chosen, the default first.
func RestingEquations() []RestingEquation {
	codes := make([]RestingEquation, len(equations))
	for i, e := range equations {
		codes[i] = e.Code
	}
	return codes
}

// Valid reports whether the code is a published equation.
func (c RestingEquation) Valid() bool {
	_, known := find(c)
	return known
}

// Name is the equation's name as the trade writes it.
func (c RestingEquation) Name() string {
	if c == Measured {
		return "Measured (indirect calorimetry)"
	}
	if e, known := find(c); known {
		return e.Name
	}
	return string(c)
}

func find(c RestingEquation) (Equation, bool) {
	for _, e := range equations {
		if e.Code == c {
			return e, true
		}
	}
	return Equation{}, false
}

var equations = []Equation{
	{
		MifflinStJeor, "Mifflin-St Jeor", "498 adults of 19 to 78 years, half of them with obesity",
		"within 10 % of measured in 82 % of adults without obesity (from memory) and 70 % with obesity (seen); the reason why it is the default",
		derive.Source{Text: "Mifflin et al. 1990, Am J Clin Nutr 51:241-247; accuracy: Frankenfield 2005, J Am Diet Assoc 105:775-789", Confidence: derive.Seen},
		either(limits{leastAge: 19, mostAge: 78}),
		mifflin,
	},
	{
		HenryWeightHeight, "Henry 2005, weight and height", "10 552 values from all climates, by age band",
		"the basis of the European reference values (EFSA 2013)",
		derive.Source{Text: "Henry 2005, Public Health Nutr 8(7A):1133-1152", Confidence: derive.Memory},
		either(adults),
		henryWeightHeight,
	},
	{
		HenryWeight, "Henry 2005, weight", "10 552 values from all climates, by age band",
		"close to the form with height in most adults",
		derive.Source{Text: "Henry 2005, Public Health Nutr 8(7A):1133-1152", Confidence: derive.Memory},
		either(adults),
		henryWeight,
	},
	{
		Schofield, "Schofield (FAO/WHO/UNU)", "7173 people, 3388 of them Italian, by age band",
		"standard errors of 108 to 167 kcal a day; tends to run high in warm climates and with obesity",
		derive.Source{Text: "Schofield 1985, Hum Nutr Clin Nutr 39C suppl 1:5-41; FAO/WHO/UNU 2004, table 5.2", Confidence: derive.SeenSecond},
		either(adults),
		schofield,
	},
	{
		HarrisBenedict1984, "Harris-Benedict, revised 1984", "337 adults, those of 1919 among them",
		"95 % of people within about 200 kcal a day; runs about 5 % high (Mifflin 1990)",
		derive.Source{Text: "Roza and Shizgal 1984, Am J Clin Nutr 40:168-182", Confidence: derive.SeenSecond},
		either(adults),
		harrisBenedict,
	},
	{
		Owen, "Owen", "44 women of 18 to 65 years and 43 to 143 kg (this line is that of the 36 who were not athletes), and 60 men of 18 to 82 years up to 171 kg",
		"within 10 % in 73 % without and 51 % with obesity (from memory); runs low in heavy people",
		derive.Source{Text: "Owen 1986, Am J Clin Nutr 44:1-19 (women); 1987, 46:875-885 (men, from memory)", Confidence: derive.Seen},
		made{female: limits{leastAge: 18, mostAge: 65, leastWeight: 43, mostWeight: 143}, male: limits{leastAge: 18, mostAge: 82, mostWeight: 171}},
		owen,
	},
	{
		Mueller2004, "Müller 2004", "about 2500 Germans of 5 to 91 years",
		"made from a present-day European population",
		derive.Source{Text: "Müller 2004, Am J Clin Nutr 80:1379-1390", Confidence: derive.Memory},
		either(limits{leastAge: 18, mostAge: 91}),
		mueller,
	},
	{
		Cunningham1980, "Cunningham 1980", "the people of Harris and Benedict, with estimated lean mass",
		"used for athletes; runs high where lean mass is estimated",
		derive.Source{Text: "Cunningham 1980, Am J Clin Nutr 33:2372-2374", Confidence: derive.Memory},
		made{female: adults, male: adults, needsLean: true},
		cunningham,
	},
	{
		KatchMcArdle, "Katch-McArdle", "textbook form of Cunningham 1991",
		"as good as the lean mass that is put in",
		derive.Source{Text: "Cunningham 1991, Am J Clin Nutr 54:963-969; McArdle, Katch and Katch, Exercise Physiology", Confidence: derive.Memory},
		made{female: adults, male: adults, needsLean: true},
		katchMcArdle,
	},
}

package screen

import (
	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// A published questionnaire is scored exactly as published. The screen asks in
// our own words and says so; where the practitioner used the published form,
// its score is taken as it is.

// Item is one line of a questionnaire in our own words.
type Item struct {
	Key string
	Ask string
}

// Questionnaire is a published questionnaire: what it is, how it counts and
// where it was published.
type Questionnaire struct {
	Code   string
	Name   string
	About  string // what it looks for
	Source derive.Source
	Items  []Item
	// Positive is the score from which it counts as positive.
	Positive int
	// Most is the highest score.
	Most int
}

// The questionnaires.
const (
	SCOFF = "scoff"
	MUST  = "must"
	MST   = "mst"
)

// Questionnaires lists the questionnaires.
func Questionnaires() []Questionnaire {
	return []Questionnaire{
		{
			Code: SCOFF, Name: "SCOFF", About: "signs of an eating disorder", Positive: 2, Most: 5,
			Source: seen("Morgan, Reid and Lacey 1999, BMJ 319:1467: 2 or more of 5"),
			Items: []Item{
				{"sick", "Ever makes themselves sick because of feeling too full?"},
				{"control", "Worries that eating has got out of hand?"},
				{"stone", "Lost more than about a stone (6.35 kg) within three months?"},
				{"fat", "Sees themselves as fat while others say they are thin?"},
				{"food", "Thinks about food so much that it rules their life?"},
			},
		},
		{
			Code: MUST, Name: "MUST", About: "risk of malnutrition", Positive: 2, Most: 6,
			Source: seen("BAPEN 2003, Malnutrition Universal Screening Tool: 2 or more is high risk"),
		},
		{
			Code: MST, Name: "MST", About: "risk of malnutrition", Positive: 2, Most: 5,
			Source: memory("Ferguson 1999, Nutrition 15:458-464: 2 or more is at risk"),
		},
	}
}

// Score is the outcome of a questionnaire, and false where it was not asked.
type Score struct {
	Points int
	Asked  bool
}

// Positive reports whether a score that was asked for reaches a threshold.
func (s Score) Positive(threshold int) bool { return s.Asked && s.Points >= threshold }

// Scores holds the outcome of each questionnaire by its code; a missing one was
// not asked.
type Scores map[string]Score

// ScoreSCOFF counts the yeses.
//
// Source: Morgan 1999, BMJ 319:1467 (seen): one point a yes, 2 or more.
func ScoreSCOFF(yes ...bool) int {
	points := 0
	for _, y := range yes {
		if y {
			points++
		}
	}
	return points
}

// MUSTInput is what MUST asks.
type MUSTInput struct {
	BMI unit.KilogramPerSquareMetre
	// Loss is the unplanned loss of weight in the last 3 to 6 months.
	Loss unit.Percent
	// AcutelyIll reports an acute illness with no intake for over 5 days.
	AcutelyIll bool
}

// ScoreMUST adds the three steps.
//
// Source: BAPEN 2003 (seen): BMI over 20 gives 0, 18.5 to 20 gives 1, under 18.5
// gives 2; loss under 5 % gives 0, 5 to 10 % gives 1, over 10 % gives 2; acute
// illness gives 2.
func ScoreMUST(in MUSTInput) int {
	points := 0
	switch {
	case in.BMI < 18.5:
		points += 2
	case in.BMI <= 20:
		points++
	}
	switch {
	case in.Loss > 10:
		points += 2
	case in.Loss >= 5:
		points++
	}
	if in.AcutelyIll {
		points += 2
	}
	return points
}

// MSTInput is what MST asks.
type MSTInput struct {
	Unsure       bool          // whether weight was lost is not known
	Loss         unit.Kilogram // without trying
	PoorAppetite bool
}

// ScoreMST adds weight loss and appetite.
//
// Source: Ferguson 1999 (from memory): unsure 2; 1-5 kg 1, 6-10 kg 2, 11-15 kg
// 3, more 4; poor appetite 1.
func ScoreMST(in MSTInput) int {
	points := 0
	switch {
	case in.Unsure:
		points = 2
	case in.Loss > 15:
		points = 4
	case in.Loss > 10:
		points = 3
	case in.Loss > 5:
		points = 2
	case in.Loss >= 1:
		points = 1
	}
	if in.PoorAppetite {
		points++
	}
	return points
}

// Refeeding is what the criteria for refeeding problems ask.
type Refeeding struct {
	BMI             unit.KilogramPerSquareMetre
	Loss            unit.Percent // unplanned, in the last 3 to 6 months
	DaysOfLittle    int          // days of little or no food
	LowElectrolytes bool         // low potassium, phosphate or magnesium before feeding
	AlcoholOrDrugs  bool         // alcohol misuse, insulin, chemotherapy, antacids or diuretics
}

// HighRisk reports a high risk: one of the first criteria or two of the second.
//
// Source: NICE CG32 (seen, quoted in PMC8672300): one of BMI under 16, loss over
// 15 %, little intake for more than 10 days, low electrolytes; or two of BMI
// under 18.5, loss over 10 %, more than 5 days, alcohol or the listed drugs.
func (r Refeeding) HighRisk() bool {
	if r.BMI < 16 || r.Loss > 15 || r.DaysOfLittle > 10 || r.LowElectrolytes {
		return true
	}
	return ScoreSCOFF(r.BMI < 18.5, r.Loss > 10, r.DaysOfLittle > 5, r.AlcoholOrDrugs) >= 2
}

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

// EnergyAvailability returns what is left of the intake for the body after
// exercise, for each kilogram of fat-free mass.
func EnergyAvailability(intake, exercise unit.Kilocalorie, lean unit.Kilogram) derive.Derived[EnergyAvailable] {
	value := EnergyAvailable(float64(intake-exercise) / float64(lean))
	return derive.Exact(value, derive.Step{
		Key: "energy_availability", Label: "Energy availability", Formula: "(intake − exercise) / fat-free mass",
		Inputs: []derive.Input{
			{Name: "intake", Value: float64(intake), Unit: "kcal/day"},
			{Name: "exercise", Value: float64(exercise), Unit: "kcal/day"},
			{Name: "fat-free mass", Value: float64(lean), Unit: "kg"},
		},
		Result: float64(value), Unit: "kcal/kg",
		Source: derive.Source{Text: "Burke 2018, Int J Sport Nutr Exerc Metab 28:350; IOC 2023 consensus: low under 30, healthy about 45", Confidence: derive.Seen},
		Note:   "Under 30 is low; the line is debated and not established in men.",
	})
}

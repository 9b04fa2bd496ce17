package consult

import (
	"math"

	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/hand"
	"handbreadth/domain/screen"
)

// Status says what a plan file holds.
type Status string

// The statuses.
const (
	Issued   Status = "issued"   // targets and measures
	Referred Status = "referred" // a referral takes their place
)

// File is the plan file. It carries no name and no birth date. Energies are in
// kilocalories to one decimal, masses in grams to two, projected weights to 10 g,
// measures in halves.
type File struct {
	Status      Status  `json:"status"`
	Date        string  `json:"date"`
	Resting     float64 `json:"resting_kcal_per_day"`
	Maintenance float64 `json:"maintenance_kcal_per_day"`
	// Targets is nil, and its keys are left out, where the plan is referred.
	*Targets
	Findings    []Finding         `json:"findings"`
	HoldReasons map[string]string `json:"hold_reasons,omitempty"`
	Derivation  []Step            `json:"derivation"`
}

// Targets is what an issued plan sets, where it leads, and what other published
// ways say beside it.
type Targets struct {
	Energy float64 `json:"target_kcal_per_day"`
	// StaticTarget is what the static rule asks for the same wish; nil where the
	// goal names no date and no rate.
	StaticTarget *float64 `json:"static_target_kcal_per_day,omitempty"`
	Protein      float64  `json:"protein_g_per_day"`
	Fat          float64  `json:"fat_g_per_day"`
	// Carbohydrate is total, with fibre inside it, however the plan counts;
	// Available is what is digested of it.
	Carbohydrate   float64           `json:"carbohydrate_g_per_day"`
	Available      float64           `json:"available_carbohydrate_g_per_day"`
	Fibre          float64           `json:"fibre_g_per_day"`
	MeasuresPerDay Measures          `json:"measures_per_day"`
	Meals          []Measures        `json:"meals"`
	Alternatives   []Measures        `json:"alternatives"` // to the day's measures, next nearest first
	HandFactors    Measures          `json:"hand_factors"` // of the client's measures beside the reference hand's
	Projection     []ProjectedWeight `json:"projection"`
	// ReachedOn is the day of the goal weight; empty where none is reached.
	ReachedOn string `json:"reached_on,omitempty"`
	// Holding is the energy that holds the weight reached; nil where there is no
	// projection.
	Holding          *float64     `json:"holding_kcal_per_day,omitempty"`
	CrossChecks      []CrossCheck `json:"cross_checks"`
	RestingEquations []Equation   `json:"resting_equations"`
}

// CrossCheck is another published way to maintenance energy.
type CrossCheck struct {
	Name   string  `json:"name"`
	Energy float64 `json:"kcal_per_day"`
}

// Equation is one published equation for resting energy, and whether it is meant
// for this client.
type Equation struct {
	Code   string   `json:"code"`
	Name   string   `json:"name"`
	Energy *float64 `json:"kcal_per_day,omitempty"` // nil: a value is missing
	Suits  bool     `json:"suits"`
	Why    string   `json:"why,omitempty"` // not; empty where it is
}

// Measures is a count of each hand measure, in wholes and halves.
type Measures struct {
	Palm       float64 `json:"palm"`
	Fist       float64 `json:"fist"`
	CuppedHand float64 `json:"cupped_hand"`
	Thumb      float64 `json:"thumb"`
}

// ProjectedWeight is the expected weight so many days after the visit.
type ProjectedWeight struct {
	Day    int     `json:"day"`
	Weight float64 `json:"weight_kg"`
	Low    float64 `json:"low_kg"`
	High   float64 `json:"high_kg"`
}

// Finding is one thing that screening or the computation has to say.
type Finding struct {
	Level  string `json:"level"`
	Code   string `json:"code"`
	Text   string `json:"text"`
	Scope  string `json:"scope,omitempty"` // what it stops: "deficit, comparison"
	Source string `json:"source"`
}

// Step is one line of the derivation.
type Step struct {
	Key        string   `json:"key"`
	Label      string   `json:"label"`
	Formula    string   `json:"formula"`
	Inputs     []Input  `json:"inputs"`
	Result     float64  `json:"result"`
	Unit       string   `json:"unit"`
	Low        *float64 `json:"low,omitempty"`
	High       *float64 `json:"high,omitempty"`
	Source     string   `json:"source"`
	Confidence string   `json:"confidence"`
	Note       string   `json:"note,omitempty"`
}

// Input is one value put into a formula: a number, or a text where it is none.
type Input struct {
	Name  string   `json:"name"`
	Value *float64 `json:"value,omitempty"`
	Text  string   `json:"text,omitempty"`
	Unit  string   `json:"unit,omitempty"`
}

// fileOf returns the plan file of a plan that may be issued or is referred.
func fileOf(p domain.Plan) File {
	f := File{
		Status: Referred, Date: p.Intake.Date.String(),
		Resting:     rounded(float64(p.Resting.Value), perDay),
		Maintenance: rounded(float64(p.Maintenance.Value), perDay),
		Findings:    findingsOf(p.Findings),
		HoldReasons: reasonsOf(p.Intake.Reasons),
		Derivation:  stepsOf(p.Derivation()),
	}
	if p.Issuable() {
		f.Status, f.Targets = Issued, targetsOf(p)
		f.Derivation = append(f.Derivation, stepsOf(besideSteps(p))...)
	}
	return f
}

func targetsOf(p domain.Plan) *Targets {
	t := p.Targets
	meals := make([]Measures, len(t.Allotment.Meals))
	for i, m := range t.Allotment.Meals {
		meals[i] = measuresOf(m.Measures)
	}
	out := &Targets{
		Energy:           rounded(float64(t.Energy.Value), perDay),
		Protein:          rounded(float64(t.Protein.Value), gramsPerDay),
		Fat:              rounded(float64(t.Fat.Value), gramsPerDay),
		Carbohydrate:     rounded(float64(t.Split.Total.Value), gramsPerDay),
		Available:        rounded(float64(t.Split.Available.Value), gramsPerDay),
		Fibre:            rounded(float64(t.Fibre.Value), gramsPerDay),
		MeasuresPerDay:   measuresOf(t.Allotment.Day),
		Meals:            meals,
		Alternatives:     alternativesOf(t.Allotment),
		HandFactors:      handFactorsOf(t.Calibration),
		StaticTarget:     toldOf(p.Goal.StaticTarget),
		Projection:       projectionOf(p.Projection),
		CrossChecks:      checksOf(p.CrossChecks),
		RestingEquations: equationsOf(p.Equations),
	}
	if p.Projection != nil {
		out.Holding = toldOf(p.Projection.Holding)
	}
	if !p.Goal.ReachedOn.IsZero() {
		out.ReachedOn = p.Goal.ReachedOn.String()
	}
	return out
}

func measuresOf(m hand.Measures) Measures {
	half := func(k hand.Kind) float64 { return math.Round(2*float64(m.Of(k))) / 2 }
	return Measures{half(hand.Palm), half(hand.Fist), half(hand.CuppedHand), half(hand.Thumb)}
}

func findingsOf(found []derive.Finding) []Finding {
	list := make([]Finding, len(found))
	for i, f := range found {
		list[i] = Finding{
			Level: f.Level.String(), Code: f.Code, Text: f.Text,
			Scope: f.Scope.String(), Source: f.Source.Text,
		}
	}
	return list
}

// reasonsOf returns every reason that was given, needed or not.
func reasonsOf(reasons screen.Reasons) map[string]string {
	var texts map[string]string
	for code, reason := range reasons {
		if !reason.Given() {
			continue
		}
		if texts == nil {
			texts = map[string]string{}
		}
		texts[code] = reason.Text
	}
	return texts
}

func stepsOf(steps []derive.Step) []Step {
	list := make([]Step, len(steps))
	for i, s := range steps {
		list[i] = Step{
			Key: s.Key, Label: s.Label, Formula: s.Formula, Inputs: inputsOf(s.Inputs),
			Result: rounded(s.Result, s.Unit), Unit: s.Unit,
			Source: s.Source.Text, Confidence: string(s.Source.Confidence), Note: s.Note,
		}
		if s.Range != nil {
			low, high := rounded(s.Range.Low, s.Unit), rounded(s.Range.High, s.Unit)
			list[i].Low, list[i].High = &low, &high
		}
	}
	return list
}

func inputsOf(inputs []derive.Input) []Input {
	list := make([]Input, len(inputs))
	for i, in := range inputs {
		list[i] = Input{Name: in.Name, Text: in.Text, Unit: in.Unit}
		if in.Text == "" {
			value := rounded(in.Value, in.Unit)
			list[i].Value = &value
		}
	}
	return list
}

// The units that results are told in, as the steps name them.
const (
	perDay      = "kcal/day"
	gramsPerDay = "g/day"
	// projected is for weights to come, which no decimals of a gram suit.
	projected = "kg projected"
)

// decimals says how finely a unit is told. The same number then reads alike
// wherever it stands in the file.
var decimals = map[string]int{perDay: 1, "kcal": 1, gramsPerDay: 2, "g": 2, projected: 2}

// otherDecimals is for every other unit: weights, rates, indices, levels.
const otherDecimals = 4

func rounded(value float64, unitName string) float64 {
	n, known := decimals[unitName]
	if !known {
		n = otherDecimals
	}
	scale := math.Pow10(n)
	return math.Round(value*scale) / scale
}

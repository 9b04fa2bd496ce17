package domain

import (
	"math"
	"testing"
	"time"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/hand"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// exampleIntake is an invented adult without anything that stops a plan.
func exampleIntake() Intake {
	in := NewIntake()
	in.Date = unit.Date{Year: 2026, Month: time.March, Day: 2}
	in.Client = Client{Name: "Example", Born: unit.Date{Year: 1990, Month: time.May, Day: 17}, EquationSex: energy.Female}
	in.Height, in.Weight = 168, 72.6
	in.Activity = energy.Activity{Category: energy.LowActive}
	in.Goal = energy.Goal{Kind: energy.Lose, Weight: 66, By: unit.Date{Year: 2026, Month: time.August, Day: 31}}
	in.Screening = screen.Answers{}.AllNo()
	return in
}

func TestEveryNumberHasADerivationWithASource(t *testing.T) {
	p, err := NewPlan(exampleIntake())
	if err != nil {
		t.Fatal(err)
	}
	steps := map[string]derive.Step{}
	for _, s := range p.Derivation() {
		if s.Label == "" || s.Formula == "" || s.Source.Text == "" || s.Source.Confidence == "" {
			t.Errorf("step %q lacks label, formula or source: %+v", s.Key, s)
		}
		if s.Range != nil && s.Range.Low > s.Range.High {
			t.Errorf("step %q has a range that runs backwards: %+v", s.Key, s.Range)
		}
		steps[s.Key] = s
	}
	b := p.Targets.Allotment.Brings
	shown := map[string]float64{
		"bmi": float64(p.BMI.Value), "resting": float64(p.Resting.Value), "pal": float64(p.Activity.Value),
		"maintenance": float64(p.Maintenance.Value), "target": float64(p.Targets.Energy.Value), "rate": float64(p.Goal.Rate.Value),
		"protein": float64(p.Targets.Protein.Value), "fat": float64(p.Targets.Fat.Value),
		"carbohydrate": float64(p.Targets.Carbohydrate.Value), "fibre": float64(p.Targets.Fibre.Value),
		"allotted_energy": float64(b.Energy), "allotted_protein": float64(b.Protein), "allotted_fat": float64(b.Fat),
		"allotted_carbohydrate": float64(b.Carbohydrate), "allotted_fibre": float64(b.Fibre),
		"day_palm": float64(p.Targets.Allotment.Day.Palm), "day_thumb": float64(p.Targets.Allotment.Day.Thumb),
		"grams_palm": float64(p.Targets.Contents[hand.Palm].Grams.Value), "protein_palm": float64(p.Targets.Contents[hand.Palm].Nutrients.Protein),
	}
	for key, value := range shown {
		if s, ok := steps[key]; !ok || math.Abs(s.Result-value) > 1e-9 {
			t.Errorf("%s: shown %v, derived %+v", key, value, s)
		}
	}
}

func TestNewPlanIsPure(t *testing.T) {
	a, _ := NewPlan(exampleIntake())
	b, _ := NewPlan(exampleIntake())
	if a.Targets.Allotment.Day != b.Targets.Allotment.Day || a.Targets.Energy.Value != b.Targets.Energy.Value {
		t.Error("the same intake gave two plans")
	}
}

// Pregnancy keeps carbohydrate at 210 g or more, as one question asks for
// pregnancy and breastfeeding. Source: IOM 2005 (from memory).
func TestPregnancyKeepsCarbohydrate(t *testing.T) {
	in := exampleIntake()
	in.Goal = energy.Goal{Kind: energy.Maintain}
	in.CarbFatBalance = 30
	in.Screening = in.Screening.With(screen.Pregnant, screen.Yes)
	p, err := NewPlan(in)
	if err != nil {
		t.Fatal(err)
	}
	if !p.Gate.Held() || p.Targets.Carbohydrate.Value < 210-1e-9 {
		t.Errorf("held %v, carbohydrate %v", p.Gate.Held(), p.Targets.Carbohydrate.Value)
	}
}

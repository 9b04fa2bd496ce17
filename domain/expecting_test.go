package domain

import (
	"strings"
	"testing"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// EFSA 2013, EFSA Journal 11(1):3005 (seen): 500 kcal is the highest addition, in
// the third trimester and in the first half-year of breastfeeding. Where no stage
// was told it counts, and both derivation and finding say so.
func TestStageNotToldCountsTheHighestAddition(t *testing.T) {
	in := exampleIntake()
	in.Goal = energy.Goal{Kind: energy.Maintain}
	plain, err := NewPlan(in)
	if err != nil {
		t.Fatal(err)
	}
	in.Screening = in.Screening.With(screen.Pregnant, screen.Yes)
	in.Reasons = screen.Reasons{string(screen.Pregnant): {Text: "agreed with the midwife"}}
	p, err := NewPlan(in)
	if err != nil || !p.Issuable() {
		t.Fatalf("%v, %+v", err, p.Gate)
	}
	if more := p.Maintenance.Value - plain.Maintenance.Value; more != 500 || p.Targets.Energy.Value != p.Maintenance.Value {
		t.Errorf("%v kcal more, target %v", more, p.Targets.Energy.Value)
	}
	if step, _ := p.Maintenance.Last(); !strings.Contains(step.Note, "No week and no age of the child") {
		t.Errorf("note %q", step.Note)
	}
	if !strings.Contains(p.Gate.Lifted[0].Text, "the highest addition") || len(p.CrossChecks) != 0 {
		t.Errorf("%q, cross-checks %v", p.Gate.Lifted[0].Text, p.CrossChecks)
	}
	in.Goal.Energy = p.Maintenance.Value - 200
	if p, err = NewPlan(in); err != nil || !p.Gate.Referred() {
		t.Errorf("less than the highest need: %v, %+v", err, p.Gate)
	}
	in.Goal.Energy, in.Reproduction.Weeks = 0, 8
	if p, err = NewPlan(in); err != nil || p.Maintenance.Value-plain.Maintenance.Value != 70 {
		t.Errorf("week 8 adds %v (%v)", p.Maintenance.Value-plain.Maintenance.Value, err)
	}
}

// The fat floor of pregnancy holds whatever sex the equations have.
func TestPregnancyKeepsTheFatFloor(t *testing.T) {
	in := exampleIntake()
	in.Goal, in.Client.EquationSex = energy.Goal{Kind: energy.Maintain}, energy.Male
	in.FatFloor, in.Reproduction.Weeks = 15, 20
	in.Reasons = screen.Reasons{string(screen.Pregnant): {Text: "x"}}
	p, err := NewPlan(in)
	if err != nil || p.Targets == nil || p.Targets.FatFloor != 20 {
		t.Errorf("%v, %+v", err, p.Gate)
	}
}

// Under 18 the figures of adults are marked as not valid.
func TestFiguresOfAdultsAreMarkedUnder18(t *testing.T) {
	for days, marked := range map[int]bool{17 * 365: true, 40 * 365: false} {
		in := exampleIntake()
		in.Client.Born = in.Date.AddDays(-days)
		in.Goal = energy.Goal{Kind: energy.Maintain}
		p, err := NewPlan(in)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range []derive.Derived[unit.Kilocalorie]{p.Resting, p.Maintenance} {
			step, _ := e.Last()
			if strings.Contains(step.Note, "not valid under 18") != marked {
				t.Errorf("%d days: %q", days, step.Note)
			}
		}
	}
}

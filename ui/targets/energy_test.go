package targets

import (
	"strings"
	"testing"

	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// Mifflin-St Jeor by hand: 10 x 78 + 6.25 x 168 - 5 x 35 - 161 = 1494; the band is
// 10 % either side.
func TestStripSetsTheEquationsSideBySide(t *testing.T) {
	e := look(opened(answers())).Energy
	if len(e.Strip) != len(energy.RestingEquations()) || len(e.Equations) != len(e.Strip) {
		t.Fatalf("%d values, %d equations", len(e.Strip), len(e.Equations))
	}
	used := e.Strip[e.Chosen]
	if used.Label != "Mifflin-St Jeor" || used.Value != 1494 || used.Text != "1494 kcal" || e.Low != 1494*0.9 || e.High != 1494*1.1 {
		t.Errorf("%+v between %v and %v", used, e.Low, e.High)
	}
	if !strings.HasPrefix(e.Caption, "The band is 10% either side of the one in use; ") {
		t.Errorf("%q", e.Caption)
	}
}

// Owen's equations for men were made from men up to 171 kg (Owen 1987).
func TestWhatIsNotMeantForTheClientIsHollowWithItsReason(t *testing.T) {
	e := look(opened(with("client.equation_sex", "male", "weight", "190 kg", "height", "190 cm", "goal.weight", "150 kg", "goal.by", ""))).Energy
	hollow := 0
	for i, v := range e.Strip {
		if v.Hollow {
			hollow++
			if !strings.HasPrefix(v.Why, "not meant for this client: ") {
				t.Errorf("%s: %q", v.Label, v.Why)
			}
		}
		if e.Equations[i] == energy.Owen && !v.Hollow {
			t.Error("Owen is meant for 190 kg")
		}
	}
	if hollow == 0 || hollow == len(e.Strip) {
		t.Errorf("%d of %d are hollow", hollow, len(e.Strip))
	}
}

func TestMeasuredValueWins(t *testing.T) {
	e := look(opened(with("measured_resting_kcal_per_day", "1420", "resting_equation", "owen"))).Energy
	if e.Chosen != 0 || e.Strip[0].Label != "Measured" || e.Resting.Value != "1420 kcal" || e.Measured != "1420 kcal" {
		t.Errorf("%+v", e)
	}
	for _, v := range e.Strip[1:] {
		if !v.Closed {
			t.Errorf("%s can be chosen beside a measured value", v.Label)
		}
	}
}

func TestCrossChecksStandBesideMaintenance(t *testing.T) {
	s := opened(answers())
	p, _ := s.Plan()
	e := look(s).Energy
	if len(e.Checks) != len(p.CrossChecks) || len(e.Checks) != 2 {
		t.Fatalf("%+v", e.Checks)
	}
	for i, name := range []string{"DRI 2005", "DRI 2023"} {
		if c := e.Checks[i]; c.Label != name || c.Value != (unit.Style{}).Energy(p.CrossChecks[i].Energy.Value) || !strings.Contains(c.Note, "inside the likely range") {
			t.Errorf("%+v", c)
		}
	}
}

func TestActivityTellsItsWay(t *testing.T) {
	for _, c := range []struct {
		form draft.Form
		want string
	}{
		{answers(), "low active, 1.53 to 1.68"},
		{with("activity", "pal", "activity.pal", "1.7"), "given as a number, likely 1.56 to 1.84"},
		{with("activity", "customary", "activity.customary", energy.Multipliers()[1].Code), "a customary factor, by convention; likely "},
		{with("activity", "day", "activity.day."+energy.Pursuits()[0].Code, "8"), "from the hours of the day, likely "},
	} {
		v := look(opened(c.form))
		if !v.HasMaintenance || !strings.HasPrefix(v.Energy.Activity.Note, c.want) {
			t.Errorf("%q, want %q", v.Energy.Activity.Note, c.want)
		}
	}
}

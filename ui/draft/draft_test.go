package draft

import (
	"maps"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// filled is an invented adult without anything that stops a plan.
func filled() Form {
	f := Form{
		Date: "2 March 2026", Born: "17.5.1990", Sex: "female", Height: "168", Weight: "72,6",
		Activity: "low_active", GoalKind: "lose", GoalWeight: "66 kg", GoalBy: "2026-08-31",
	}
	for _, q := range screen.Questions() {
		f[Screening(q.Code)] = AnswerNo
	}
	return f
}

func TestPlanFollowsTheForm(t *testing.T) {
	s := NewSession(filled(), unit.Style{})
	p, ok := s.Plan()
	if !ok || !p.Issuable() {
		t.Fatalf("no plan: %+v", s.Reading().Problems)
	}
	before := p.Targets.Energy.Value
	s.Set(GoalBy, "2026-12-31")
	if p, _ = s.Plan(); p.Targets.Energy.Value <= before {
		t.Errorf("a later date left %v kcal at %v", before, p.Targets.Energy.Value)
	}
	s.Set(Weight, "")
	if _, ok = s.Plan(); ok || s.Reading().Missing[0] != Weight {
		t.Errorf("without weight: plan %v, missing %v", ok, s.Reading().Missing)
	}
}

func TestProblemsNameTheField(t *testing.T) {
	for field, text := range map[Field]string{
		Date: "soon", Born: "31.2.1990", Height: "9 ft", Weight: "heavy", GoalWeight: "80 kg", GoalBy: "2026-01-01",
		GoalEnergy: "12", Meals: "2.5", Balance: "101", FatFloor: "14", Protein: "9", Avoid: "gold",
	} {
		form := filled()
		form[field] = text
		if p, wrong := Read(form, unit.Style{}).Problems[field]; !wrong || p.Accepted == "" {
			t.Errorf("%s = %q: %+v", field, text, p)
		}
	}
}

func TestUnderstoodInThePracticesUnits(t *testing.T) {
	form := filled()
	form[Weight] = "11 st 6 lb"
	if got := Read(form, unit.Style{}).Understood[Weight]; got != "72.6 kg" {
		t.Errorf("got %q", got)
	}
	form[Weight] = "160"
	if got := Read(form, unit.Style{System: unit.USCustomary}).Understood[Weight]; got != "160 lb" {
		t.Errorf("got %q", got)
	}
}

func TestReasonsAndAnswersAreRead(t *testing.T) {
	form := filled()
	form[Screening(screen.Lithium)] = AnswerYes
	form[Reason("lithium", ReasonText)] = "agreed with the prescriber"
	form[Reason("lithium", ReasonDate)] = "1 March 2026"
	r := Read(form, unit.Style{})
	if !r.Intake.Screening.Yes(screen.Lithium) || !r.Intake.Reasons["lithium"].Given() || r.Intake.Reasons["lithium"].Date.IsZero() {
		t.Errorf("read %+v", r.Intake.Reasons)
	}
	delete(form, Screening(screen.Warfarin))
	if got := Read(form, unit.Style{}).Intake.Screening.Of(screen.Warfarin); got != screen.NotAsked {
		t.Errorf("an empty answer reads as %v", got)
	}
}

func TestSetAllUndoesInOneStep(t *testing.T) {
	s := NewSession(Form{Name: "A"}, unit.Style{})
	heard := 0
	s.Hear(func(Field) { heard++ })
	s.SetAll(map[Field]string{Name: "B", Notes: "c"})
	if heard != 1 {
		t.Errorf("heard %d times", heard)
	}
	if _, ok := s.Undo(); !ok || s.Get(Name) != "A" || s.Get(Notes) != "" {
		t.Errorf("after undo: %v", s.Form())
	}
	if _, ok := s.Redo(); !ok || s.Get(Name) != "B" || s.Get(Notes) != "c" {
		t.Errorf("after redo: %v", s.Form())
	}
}

func TestUndoGoesBackAndRedoForth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := NewSession(Form{}, unit.Style{})
		states := []Form{s.Form()}
		last := Field("")
		for range rapid.IntRange(0, 12).Draw(t, "changes") {
			field := rapid.SampledFrom([]Field{Name, Notes, Weight}).Draw(t, "field")
			text := rapid.StringMatching(`[a-z0-9]{0,3}`).Draw(t, "text")
			if s.Get(field) == text {
				continue
			}
			s.Set(field, text)
			if field == last {
				states = states[:len(states)-1] // edits to one field in a row are one step
			}
			last, states = field, append(states, s.Form())
		}
		for i := len(states) - 2; i >= 0; i-- {
			if s.Undo(); !maps.Equal(s.Form(), states[i]) {
				t.Fatalf("undo to %v, want %v", s.Form(), states[i])
			}
		}
		if _, ok := s.Undo(); ok {
			t.Fatal("undo past the beginning")
		}
		for i := 1; i < len(states); i++ {
			if s.Redo(); !maps.Equal(s.Form(), states[i]) {
				t.Fatalf("redo to %v, want %v", s.Form(), states[i])
			}
		}
	})
}

func TestFormSurvivesKeeping(t *testing.T) {
	data, err := filled().JSON()
	if err != nil {
		t.Fatal(err)
	}
	again, err := FromJSON(data)
	if err != nil || !maps.Equal(again, filled()) {
		t.Errorf("%v, %v", again, err)
	}
	if _, err := FromJSON([]byte("{")); err == nil {
		t.Error("a torn form is taken")
	}
}

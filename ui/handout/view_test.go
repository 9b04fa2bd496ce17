package handout

import (
	"strings"
	"testing"

	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

func lookAt(form draft.Form) view {
	s := opened(form)
	plan, planned := s.Plan()
	return look(plan, planned, s.Reading())
}

func TestStatesSayWhereToGo(t *testing.T) {
	for _, c := range []struct {
		name   string
		form   draft.Form
		state  state
		wanted string
		way    way
	}{
		{"everything", answers(), open, "", way{}},
		{"no weight", with("weight", "", "goal.kind", ""), waiting, "Weight, goal.", way{"Go to the weight", "intake", draft.Weight}},
		{"no goal", with("goal.kind", ""), waiting, "Goal.", way{"Go to the goal", "targets", draft.GoalKind}},
		{"not understood", with("weight", "heavy", "height", ""), waiting, "Weight.", way{"Go to the weight", "intake", draft.Weight}},
		{"held", with("screening.lithium", "yes"), held, "", way{}},
		{"referred", with("screening.type_1_diabetes", "yes"), referred, "", way{}},
	} {
		v := lookAt(c.form)
		if v.State != c.state || v.Way != c.way || v.Wanted != c.wanted {
			t.Errorf("%s: %+v", c.name, v)
		}
		if (v.Lead == "") != (c.state == open) || v.ready() != (c.state == open || c.state == referred) {
			t.Errorf("%s: %+v", c.name, v)
		}
	}
}

func TestEachHoldHasItsWay(t *testing.T) {
	v := lookAt(with("screening.lithium", "yes", "screening.warfarin", ""))
	if len(v.Holds) != 2 || !strings.HasPrefix(v.Lead, "2 findings") {
		t.Fatalf("%+v", v)
	}
	for _, h := range v.Holds {
		want := draft.Reason(h.Finding.Code, draft.ReasonText)
		if h.Finding.Code == screen.NotAskedCode {
			want = draft.Screening("warfarin")
		}
		if h.Way.Section != "screening" || h.Way.Field != want {
			t.Errorf("%s leads to %+v", h.Finding.Code, h.Way)
		}
	}
}

// A field that is needed or can be wrong has a name in words.
func TestEveryFieldIsNamed(t *testing.T) {
	for _, field := range draft.Read(draft.Form{}, unit.Style{}).Missing {
		if labels[field] == "" {
			t.Errorf("%s has no name", field)
		}
	}
	for _, field := range order {
		if labels[field] == "" {
			t.Errorf("%s has no name", field)
		}
	}
}

func TestNextVisitInWords(t *testing.T) {
	visit := unit.Date{Year: 2026, Month: 3, Day: 2}
	for _, c := range []struct {
		text, want string
		ok         bool
	}{
		{"", "", true},
		{"2026-03-30", "30 March 2026", true},
		{"3 March 2026", "3 March 2026", true},
		{"2026-03-02", "", false},
		{"soon", "", false},
	} {
		if got, ok := visitWords(c.text, visit); got != c.want || ok != c.ok {
			t.Errorf("%q: %q, %v", c.text, got, ok)
		}
	}
}

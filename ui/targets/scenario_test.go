package targets

import (
	"maps"
	"strings"
	"testing"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

func TestTwoGoalsAreKeptAndNoMore(t *testing.T) {
	var kept scenarios
	a := snapshot(opened(answers()).Get)
	b := snapshot(opened(with("goal.by", "", "goal.per_week", "0.5 kg")).Get)
	if !kept.keep(a) || kept.keep(a) || !kept.keep(b) || kept.keep(snapshot(opened(with("goal.kind", "gain")).Get)) {
		t.Fatalf("%+v", kept)
	}
	if kept[0].Name != "A" || kept[1].Name != "B" {
		t.Errorf("%+v", kept)
	}
	kept.remove(0)
	if !kept.keep(a) || kept[1].Name != "A" {
		t.Errorf("a freed name is not used again: %+v", kept)
	}
}

// Taking a goal and taking the other one back loses nothing.
func TestTakingAGoalKeepsTheOne(t *testing.T) {
	s := opened(answers())
	kept := scenarios{{"A", snapshot(opened(with("goal.by", "", "goal.kcal_per_day", "2000 kcal")).Get)}}
	before := snapshot(s.Get)
	s.SetAll(kept.take(0, snapshot(s.Get)))
	if s.Get(draft.GoalEnergy) != "2000 kcal" || s.Get(draft.GoalBy) != "" {
		t.Fatalf("%v", s.Form())
	}
	if !maps.Equal(kept[0].Fields, before) {
		t.Errorf("kept %v, want %v", kept[0].Fields, before)
	}
	s.SetAll(kept.take(0, snapshot(s.Get)))
	if !maps.Equal(snapshot(s.Get), before) {
		t.Errorf("%v", snapshot(s.Get))
	}
}

// A column says what the plan would say with this goal.
func TestColumnIsThePlanOfItsGoal(t *testing.T) {
	other := with("goal.by", "", "goal.per_week", "0.4 kg")
	col := columnOf(answers(), scenario{"A", snapshot(opened(other).Get)}, unit.Style{})
	p, _ := opened(other).Plan()
	style := unit.Style{}
	want := []string{
		style.Energy(p.Targets.Energy.Value), "-0.4 kg a week", p.Goal.ReachedOn.Long(), style.Energy(p.Projection.Holding.Value),
		style.Grams(p.Targets.Protein.Value), style.Grams(p.Targets.Fat.Value), style.Grams(p.Targets.Carbohydrate.Value),
	}
	for i, text := range want {
		if col.Rows[i] != text {
			t.Errorf("%s: %q, want %q", compared[i], col.Rows[i], text)
		}
	}
	if !strings.Contains(col.Rows[7], "palm") || !strings.Contains(col.Rows[7], "thumb") || col.Remark != "" || col.Title != "Goal A" {
		t.Errorf("%+v", col)
	}
}

func TestColumnWithoutFigures(t *testing.T) {
	slow := snapshot(opened(answers()).Get)
	fast := snapshot(opened(with("goal.by", "2026-03-20")).Get)
	impossible := snapshot(opened(with("goal.kind", "gain", "goal.weight", "120 kg", "goal.by", "2026-04-01")).Get)
	for _, c := range []struct {
		name string
		form draft.Form
		goal map[draft.Field]string
		want string
		bare bool
	}{
		{"referred for the goal", answers(), fast, "A referral comes first", true},
		{"referred for a diagnosis", with("screening.type_1_diabetes", "yes"), slow, "A referral comes first", true},
		{"no weight any more", with("weight", ""), slow, "Something is missing", true},
		{"impossible", answers(), impossible, "No energy brings this goal", true},
		{"held", with("screening.lithium", "yes"), slow, "Held until a reason is recorded", false},
		{"outside of the guards", answers(), snapshot(opened(with("goal.by", "2026-05-10")).Get), "Outside of the guards", false},
	} {
		col := columnOf(c.form, scenario{"B", c.goal}, unit.Style{})
		if !strings.Contains(col.Remark, c.want) {
			t.Errorf("%s: %q", c.name, col.Remark)
		}
		if bare := strings.Join(col.Rows[:], "") == ""; bare != c.bare {
			t.Errorf("%s: figures %v", c.name, col.Rows)
		}
	}
}

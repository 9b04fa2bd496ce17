package targets

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/ui/draft"
	"handbreadth/ui/widgets/widgettest"
)

func TestHoldingTheWeightAsksForNoWeight(t *testing.T) {
	s, screen, _ := shown(t, answers())
	key(screen.goal.kind, fyne.KeyRight)
	if s.Get(draft.GoalKind) != "maintain" || screen.goal.weight.Visible() || !screen.goal.pace.Hidden || !screen.goal.fields[byEnergy].Visible() {
		t.Errorf("goal %q, weight shown %v", s.Get(draft.GoalKind), screen.goal.weight.Visible())
	}
	if !screen.course.comparison.Hidden || screen.course.object.Hidden {
		t.Error("a held weight is compared with the static rule, or has no course")
	}
}

func TestTheWayOfTheGoalIsChosen(t *testing.T) {
	s, screen, _ := shown(t, answers())
	before := screen.course.target.Value()
	test.TapAt(screen.goal.ways, screen.goal.ways.Spot(1))
	if s.Get(draft.GoalBy) != "" || s.Get(draft.GoalPerWeek) != "0.3 kg" || !screen.goal.fields[byRate].Visible() || screen.goal.fields[byDate].Visible() {
		t.Errorf("date %q, rate %q", s.Get(draft.GoalBy), s.Get(draft.GoalPerWeek))
	}
	test.TapAt(screen.goal.ways, screen.goal.ways.Spot(0))
	if s.Get(draft.GoalBy) != "2026-08-31" || screen.course.target.Value() != before {
		t.Errorf("back: date %q, target %s, was %s", s.Get(draft.GoalBy), screen.course.target.Value(), before)
	}
}

func TestAnEmptyWayStaysChosen(t *testing.T) {
	s, screen, _ := shown(t, with("goal.by", "", "goal.kind", ""))
	test.TapAt(screen.goal.ways, screen.goal.ways.Spot(1))
	if !screen.goal.fields[byRate].Visible() || screen.goal.ways.Selected() != int(byRate) {
		t.Error("the way turns back by itself")
	}
	s.Set(draft.Name, "Robin Other")
	if !screen.goal.fields[byRate].Visible() {
		t.Error("another change turns it back")
	}
}

func TestSafeDateAndSafeEnergyAreOffered(t *testing.T) {
	for i := range 2 {
		s, screen, _ := shown(t, with("goal.by", "2026-05-04", "activity", "active"))
		if screen.goal.guard.Hidden || screen.goal.takes[i].Hidden {
			t.Fatal("8 kg in nine weeks is not called unsafe")
		}
		form := s.Form()
		test.Tap(screen.goal.takes[i])
		plan, _ := s.Plan()
		if !screen.goal.guard.Hidden || plan.Goal == nil || unsafe(*plan.Goal) {
			t.Errorf("button %d: still unsafe", i)
		}
		s.Undo()
		if !sameGoal(s, form) {
			t.Errorf("button %d is not undone in one step", i)
		}
	}
}

func TestEarliestSafeDateLeadsOutOfAReferral(t *testing.T) {
	s, screen, _ := shown(t, with("goal.by", "2026-03-20"))
	if screen.notice.rescue.Hidden {
		t.Fatal("no way out is offered")
	}
	widgettest.Press(t, "targets.rescue")
	if plan, _ := s.Plan(); plan.Targets == nil || screen.course.object.Hidden || !screen.notice.object.Hidden {
		t.Errorf("after it: by %s, %v", s.Get(draft.GoalBy), plan.Gate.Refers)
	}
}

func TestGoalsAreComparedAndTaken(t *testing.T) {
	s, screen, w := shown(t, answers())
	if !screen.compare.table.Hidden {
		t.Fatal("a comparison with nothing kept")
	}
	test.Tap(screen.compare.keep)
	s.SetAll(byEnergy.only("2000 kcal"))
	widgettest.Settle(w)
	cells := screen.compare.cells
	if cells[0].values[0].Text() != "2000 kcal" || cells[1].values[0].Text() != "1896 kcal" || cells[1].title.Text() != "Goal A" {
		t.Errorf("the plan says %s, the kept goal %s", cells[0].values[0].Text(), cells[1].values[0].Text())
	}
	if cells[2].take.Visible() && cells[2].buttons.Visible() {
		t.Error("a column of nothing is shown")
	}
	widgettest.Press(t, "targets.goal_a.take")
	if s.Get(draft.GoalBy) != "2026-08-31" || s.Get(draft.GoalEnergy) != "" {
		t.Errorf("the goal is %v", snapshot(s.Get))
	}
	if cells[0].values[0].Text() != "1896 kcal" || cells[1].values[0].Text() != "2000 kcal" {
		t.Error("what the plan had is lost")
	}
	widgettest.Press(t, "targets.goal_a.remove")
	if !screen.compare.table.Hidden {
		t.Error("the removed goal is still compared")
	}
}

func TestKeptGoalsFollowTheClient(t *testing.T) {
	s, screen, _ := shown(t, answers())
	test.Tap(screen.compare.keep)
	before := screen.compare.cells[1].values[0].Text()
	s.Set(draft.Weight, "85 kg")
	if after := screen.compare.cells[1].values[0].Text(); after == before {
		t.Errorf("still %s for another weight", after)
	}
	test.Tap(screen.compare.keep)
	s.Set(draft.GoalBy, "2026-12-31")
	test.Tap(screen.compare.keep)
	if len(screen.compare.kept) != mostScenarios || !screen.compare.keep.Hidden {
		t.Errorf("%d goals are kept", len(screen.compare.kept))
	}
}

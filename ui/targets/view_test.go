package targets

import (
	"strings"
	"testing"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

func TestStatesSayWhereToGo(t *testing.T) {
	for _, c := range []struct {
		name  string
		form  draft.Form
		state state
		way   way
	}{
		{"everything", answers(), open, way{}},
		{"no weight", with("weight", ""), waiting, way{"Go on with the intake", "intake", draft.Weight}},
		{"no goal: it is set here", with("goal.kind", ""), waiting, way{}},
		{"not understood", with("weight", "heavy"), waiting, way{}},
		{"held", with("screening.lithium", "yes"), held, way{"Record a reason", "screening", "hold_reasons.lithium.text"}},
		{"not asked", with("screening.lithium", ""), held, way{"Ask the screening questions", "screening", "screening.lithium"}},
		{"referred", with("screening.type_1_diabetes", "yes"), referred, way{"See the answer in screening", "screening", "screening.type_1_diabetes"}},
		{"under 18", with("client.born", "2010-05-17"), referred, way{"See the birth date", "intake", draft.Born}},
		{"a goal that is set here", with("goal.weight", "50 kg"), referred, way{}},
	} {
		v := look(opened(c.form))
		if v.State != c.state || v.Way != c.way {
			t.Errorf("%s: state %v, way %+v", c.name, v.State, v.Way)
		}
		if (v.Lead == "") != (c.state == open) {
			t.Errorf("%s: lead %q", c.name, v.Lead)
		}
	}
}

func TestReferralTellsNoTarget(t *testing.T) {
	for name, form := range map[string]draft.Form{
		"a diagnosis":       with("screening.type_1_diabetes", "yes"),
		"a wish too fast":   with("goal.by", "2026-03-20"),
		"too low an energy": with("goal.by", "", "goal.kcal_per_day", "600 kcal"),
	} {
		v := look(opened(form))
		if v.State != referred || v.HasTargets || v.HasCourse || v.Outcome.Target.shown() || v.Goal.Unsafe != "" || v.Goal.Asked != "" ||
			v.Goal.Safe.shown() || len(v.Goal.Offers) > 0 || v.Macros.Balance.Why != "" {
			t.Errorf("%s: %+v", name, v)
		}
		if strings.ContainsAny(v.Rescue.Label+v.Lead, "0123456789") {
			t.Errorf("%s: a figure in %q or %q", name, v.Rescue.Label, v.Lead)
		}
	}
}

func TestGoalInWords(t *testing.T) {
	for _, c := range []struct {
		form draft.Form
		want string
	}{
		{answers(), "To lose weight, to 70 kg by 31 August 2026."},
		{with("goal.weight", "", "goal.by", "", "goal.kind", "maintain"), "To hold the weight."},
		{with("goal.weight", "84 kg", "goal.by", "", "goal.kind", "gain"), "To gain weight, to 84 kg."},
		{with("goal.by", "", "goal.per_week", "0.3 kg"), "To lose weight, to 70 kg by 0.3 kg a week."},
		{with("goal.by", "", "goal.kcal_per_day", "1900 kcal"), "To lose weight, to 70 kg eating 1900 kcal a day, as agreed."},
	} {
		if got := look(opened(c.form)).Goal.Asked; got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// The customary deficit of AHA/ACC/TOS 2013, 500 kcal, is never taken unseen.
func TestACustomaryDeficitIsSaid(t *testing.T) {
	if got := look(opened(with("goal.by", ""))).Goal.Customary; got != "No pace is agreed yet, so a customary 500 kcal a day under maintenance is taken." {
		t.Errorf("%q", got)
	}
	for _, form := range []draft.Form{answers(), with("goal.kind", "maintain"), with("goal.by", "", "goal.per_week", "0.4 kg")} {
		if got := look(opened(form)).Goal.Customary; got != "" {
			t.Errorf("%q", got)
		}
	}
}

// By hand: 8 kg in 26 weeks are 0.3 kg a week; by the static rule, 8 x 7716.17 /
// 182 = 339 kcal under 2390 give 2051.
func TestOutcomeOfAWishByDate(t *testing.T) {
	o := look(opened(answers())).Outcome
	if o.Reached.Label != "70 kg is reached" || o.Reached.Value != "31 August 2026" || o.Reached.Note != "in 26 weeks, -0.3 kg a week on average" {
		t.Errorf("%+v", o.Reached)
	}
	if o.Static.Value != "2051 kcal" || !strings.HasPrefix(o.Static.Note, "promises 70 kg on 31 August 2026; the model expects 7") {
		t.Errorf("%+v", o.Static)
	}
	if !strings.Contains(o.Why, "7716 kcal for every kilogram") || !strings.Contains(o.Why, "lighter") {
		t.Errorf("%q", o.Why)
	}
	us := look(draft.NewSession(answers(), unit.Style{System: unit.USCustomary})).Outcome
	if !strings.Contains(us.Why, "3500 kcal for every pound") {
		t.Errorf("%q", us.Why)
	}
}

// The figures on the screen are the plan's.
func TestOutcomeIsThePlans(t *testing.T) {
	s := opened(answers())
	p, _ := s.Plan()
	o := look(s).Outcome
	style := unit.Style{}
	for _, c := range []struct{ what, got, want string }{
		{"target", o.Target.Value, style.Energy(p.Targets.Energy.Value)},
		{"step", o.Target.Label, "− " + style.Energy(-p.Goal.Change) + " = target energy"},
		{"first weeks", o.First.Value, style.Rate(p.Goal.Rate.Value)},
		{"holding", o.Holding.Value, style.Energy(p.Projection.Holding.Value)},
		{"half", o.Half.Value, span(p.Projection.HalfTime.Value)},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.what, c.got, c.want)
		}
	}
}

func TestGainIsToldAsOne(t *testing.T) {
	o := look(opened(with("goal.kind", "gain", "goal.weight", "84 kg"))).Outcome
	if !strings.HasPrefix(o.First.Value, "+") || !strings.HasPrefix(o.Target.Label, "+ ") || !strings.Contains(o.Why, "heavier") {
		t.Errorf("%+v", o)
	}
}

func TestHoldingPromisesNothing(t *testing.T) {
	v := look(opened(with("goal.kind", "maintain")))
	if o := v.Outcome; o.First.shown() || o.Static.shown() || o.Why != "" || o.Half.shown() || !strings.HasPrefix(o.Reached.Label, "Expected on ") {
		t.Errorf("%+v", o)
	}
	if !v.HasCourse || v.Course.Static != nil {
		t.Error("a held weight has a static rule beside it")
	}
}

// 2250 kcal hold far more than 70 kg in a body of 140 kg: it is said so.
func TestAGoalThatIsNeverReachedIsSaid(t *testing.T) {
	o := look(opened(with("goal.by", "", "goal.kcal_per_day", "2250", "weight", "140 kg"))).Outcome
	if !strings.HasPrefix(o.Never, "This energy does not reach 70 kg within ten years.") || !strings.Contains(o.Never, "settles at about") {
		t.Errorf("%q", o.Never)
	}
}

func TestPregnancyHasNoCourse(t *testing.T) {
	v := look(opened(with("screening.pregnant_or_breastfeeding", "yes", "goal.kind", "maintain",
		"hold_reasons.pregnant_or_breastfeeding.text", "Agreed with the midwife")))
	if v.HasCourse || !v.HasTargets || v.Outcome.Unmodelled == "" || !v.Outcome.Target.shown() {
		t.Errorf("%+v", v.Outcome)
	}
}

func TestSpansAsPeopleSayThem(t *testing.T) {
	for d, want := range map[unit.Day]string{0: "0 days", 1: "1 day", 13: "13 days", 14: "2 weeks", 182: "26 weeks", 365: "52 weeks", 366: "12 months", 731: "24 months"} {
		if got := span(d); got != want {
			t.Errorf("%v days: %q, want %q", d, got, want)
		}
	}
}

func TestHeldNumbersSaySo(t *testing.T) {
	v := look(opened(with("screening.lithium", "yes")))
	if !strings.Contains(v.Outcome.Target.Note, "held until a reason is recorded") {
		t.Errorf("%q", v.Outcome.Target.Note)
	}
}

// Every number that the section shows says where it comes from.
func TestEveryNumberHasItsDerivation(t *testing.T) {
	for name, form := range galleryForms() {
		v := look(opened(form))
		if !v.HasTargets {
			continue
		}
		rows := []row{
			v.Outcome.Target, v.Outcome.Reached, v.Outcome.First, v.Outcome.Holding, v.Outcome.Half, v.Outcome.Static, v.Goal.Safe,
			v.Energy.Resting, v.Energy.Activity, v.Energy.Maintenance, v.Macros.Beside, v.Macros.Fibre,
		}
		for _, r := range append(append(rows, v.Energy.Checks...), v.Macros.Rows[:]...) {
			if !r.shown() {
				continue
			}
			if len(r.Steps) == 0 {
				t.Errorf("%s: %s %s has no derivation", name, r.Label, r.Value)
			}
			for _, step := range r.Steps {
				if step.Source.Text == "" {
					t.Errorf("%s: %s has no source", name, step.Label)
				}
			}
		}
	}
}

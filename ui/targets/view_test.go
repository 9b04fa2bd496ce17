package targets

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

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
	v := look(opened(with("screening.type_1_diabetes", "yes")))
	if v.HasTargets || v.Target.Value != "" || v.Goal.ComesTo != "" || v.Goal.Rate.Value != "" || v.Balance.Why != "" {
		t.Errorf("%+v", v)
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
		{with("goal.by", "", "goal.kcal_per_day", "1900 kcal"), "To lose weight, to 70 kg eating 1900 kcal a day, as agreed."},
	} {
		if got := look(opened(c.form)).Goal.Asked; got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// By hand: 8 kg in 26 weeks are 0.3 kg a week; 8 x 7716.17 / 182 = 339 kcal.
func TestStaticRuleIsCalledWhatItIs(t *testing.T) {
	g := look(opened(answers())).Goal
	if g.ComesTo != "That is 339 kcal a day under maintenance." {
		t.Errorf("%q", g.ComesTo)
	}
	if g.Rate.Value != "-0.3 kg a week" || g.Rate.Note != "70 kg on 31 August 2026, says the rule" || len(g.Rate.Steps) == 0 {
		t.Errorf("%+v", g.Rate)
	}
	if !strings.Contains(g.Why, "disappoints") || !strings.Contains(g.Why, "7716 kcal for every kilogram") || !strings.Contains(g.Why, "lighter") {
		t.Errorf("%q", g.Why)
	}
	if g = look(opened(with("goal.kind", "gain", "goal.weight", "84 kg"))).Goal; !strings.Contains(g.Why, "heavier") {
		t.Errorf("%q", g.Why)
	}
	if g = look(opened(with("goal.kind", "maintain"))).Goal; g.Rate.Value != "" || g.Why != "" {
		t.Errorf("holding the weight promises %q", g.Rate.Value)
	}
	us := look(draft.NewSession(answers(), unit.Style{System: unit.USCustomary})).Goal
	if !strings.Contains(us.Why, "3500 kcal for every pound") {
		t.Errorf("%q", us.Why)
	}
}

// What the button writes must lie inside the guards, whatever was asked for.
func TestSafeChoiceIsSafe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		style := unit.Style{EnergyIn: rapid.SampledFrom([]unit.EnergyUnit{unit.InKilocalories, unit.InKilojoules}).Draw(t, "energy unit")}
		form := with("weight", unit.Style{}.Weight(unit.Kilogram(rapid.Float64Range(80, 140).Draw(t, "weight"))), "activity", "active")
		switch rapid.IntRange(0, 2).Draw(t, "goal") {
		case 0:
			form[draft.GoalBy] = unit.Date{Year: 2026, Month: 3, Day: 2}.AddDays(rapid.IntRange(30, 90).Draw(t, "days")).String()
		case 1:
			delete(form, draft.GoalBy)
			form[draft.GoalEnergy] = "1300 kcal"
		case 2:
			delete(form, draft.GoalBy)
			delete(form, draft.GoalWeight)
			form[draft.GoalEnergy] = "1300 kcal"
		}
		s := draft.NewSession(form, style)
		v := look(s)
		if v.Goal.Fast == "" {
			return
		}
		for _, c := range v.Goal.Safe.Changes {
			s.Set(c.Field, c.Text)
		}
		p, planned := s.Plan()
		if !planned || p.Goal == nil || p.Goal.TooFast {
			t.Fatalf("%q gives %+v (%v)", v.Goal.Safe.Label, p.Goal, s.Reading().Problems)
		}
	})
}

func TestEarliestSafeDateIsOffered(t *testing.T) {
	v := look(opened(with("goal.by", "2026-04-20", "weight", "78 kg", "activity", "very_active")))
	if !strings.Contains(v.Goal.Fast, "earliest date inside the guards") || !strings.HasPrefix(v.Goal.Safe.Label, "Take ") {
		t.Errorf("%q %+v", v.Goal.Fast, v.Goal.Safe)
	}
	if look(opened(answers())).Goal.Fast != "" {
		t.Error("0.3 kg a week is called too fast")
	}
}

// 4/9/4 kcal a gram and the bands of IOM 2002/2005: 94 g of 2051 kcal are 18 %.
func TestMacrosBesideTheirBands(t *testing.T) {
	v := look(opened(answers()))
	if v.Protein.Value != "18% of energy" || v.Protein.Note != "in the usual range of 10 to 35%" ||
		v.ProteinWhy != "Protein: 1.2 g/kg (losing weight) on the weight of 78 kg." {
		t.Errorf("%+v", v.Protein)
	}
	v = look(opened(with("carb_fat_balance_percent", "20")))
	if !strings.HasPrefix(v.Fat.Note, "over") || !strings.HasPrefix(v.Carbohydrate.Note, "under") {
		t.Errorf("fat %q, carbohydrate %q", v.Fat.Note, v.Carbohydrate.Note)
	}
}

func TestProteinLimitIsTold(t *testing.T) {
	v := look(opened(with("protein_g_per_kg", "2.5", "goal.kind", "maintain", "goal.by", "", "goal.weight", "", "activity", "inactive", "height", "150 cm", "client.born", "1960-01-01")))
	if !strings.Contains(v.ProteinWhy, "as set by the practitioner") || !strings.Contains(v.ProteinWhy, "held within 35 % of energy") {
		t.Errorf("%q", v.ProteinWhy)
	}
}

func TestBalanceSaysWhatItDoesAndWhyItStops(t *testing.T) {
	v := look(opened(answers()))
	if v.Balance.Kept != "" {
		t.Errorf("%q", v.Balance.Kept)
	}
	if v.Balance.Why != "at 76% fat meets its floor of 20% of energy and goes no lower." {
		t.Errorf("%q", v.Balance.Why)
	}
	v = look(opened(with("carb_fat_balance_percent", "5", "screening.pregnant_or_breastfeeding", "yes", "goal.kind", "maintain",
		"hold_reasons.pregnant_or_breastfeeding.text", "Agreed with the midwife")))
	if !strings.HasPrefix(v.Balance.Kept, "Carbohydrate is kept at 210 g or more in pregnancy") {
		t.Errorf("%q", v.Balance.Kept)
	}
}

func TestBalanceIsWrittenWhole(t *testing.T) {
	for _, c := range []struct {
		at   unit.Percent
		wall bool
		want string
	}{{55, false, "55%"}, {75.2, true, "76%"}, {76, true, "76%"}} {
		if got := balanceText(c.at, c.wall); got != c.want {
			t.Errorf("%v: %q, want %q", c.at, got, c.want)
		}
	}
}

func TestFloorSaysWhyItStandsThere(t *testing.T) {
	for _, c := range []struct {
		form draft.Form
		want string
	}{
		{with("fat_floor_percent", "15"), "The floor is kept at 20%"},
		{answers(), "A floor of 20% is the lower edge"},
		{with("fat_floor_percent", "30"), "The floor is as set here"},
		{with("fat_floor_percent", "15", "client.equation_sex", "male"), "The floor is as set here"},
	} {
		if got := look(opened(c.form)).Balance.Floor; !strings.HasPrefix(got, c.want) {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestHeldNumbersSaySo(t *testing.T) {
	v := look(opened(with("screening.lithium", "yes")))
	if !strings.Contains(v.Target.Note, "held until a reason is recorded") {
		t.Errorf("%q", v.Target.Note)
	}
}

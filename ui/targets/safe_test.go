package targets

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// anyForm is an invented client with a goal of any kind.
func anyForm(t *rapid.T) draft.Form {
	form := with("weight", unit.Style{}.Weight(unit.Kilogram(rapid.Float64Range(75, 140).Draw(t, "weight"))),
		"activity", rapid.SampledFrom([]string{"inactive", "low_active", "active", "very_active"}).Draw(t, "activity"),
		"client.equation_sex", rapid.SampledFrom([]string{"female", "male"}).Draw(t, "sex"), "goal.by", "")
	form[draft.GoalKind] = "lose"
	if rapid.Bool().Draw(t, "names no weight") {
		delete(form, draft.GoalWeight)
	}
	switch rapid.SampledFrom(wishes).Draw(t, "wish") {
	case byDate:
		if form[draft.GoalWeight] != "" {
			form[draft.GoalBy] = unit.Date{Year: 2026, Month: 3, Day: 2}.AddDays(rapid.IntRange(20, 700).Draw(t, "days")).String()
		}
	case byRate:
		form[draft.GoalPerWeek] = unit.Style{}.Number(rapid.Float64Range(0.1, 1.9).Draw(t, "rate"), 2) + " kg"
	case byEnergy:
		form[draft.GoalEnergy] = unit.Style{}.Number(float64(rapid.IntRange(850, 3000).Draw(t, "kcal")), 0) + " kcal"
	}
	return form
}

// Whatever was asked for: what a button writes lies inside the guards.
func TestWhatIsOfferedIsSafe(t *testing.T) {
	offered := 0
	rapid.Check(t, func(t *rapid.T) {
		style := unit.Style{
			EnergyIn: rapid.SampledFrom([]unit.EnergyUnit{unit.InKilocalories, unit.InKilojoules}).Draw(t, "energy unit"),
			System:   rapid.SampledFrom([]unit.System{unit.Metric, unit.USCustomary, unit.UKCustomary}).Draw(t, "system"),
		}
		form := anyForm(t)
		v := look(draft.NewSession(form, style))
		for _, offer := range append(append([]fix(nil), v.Goal.Offers...), v.Rescue) {
			if offer.Label == "" {
				continue
			}
			offered++
			s := draft.NewSession(form, style)
			s.SetAll(offer.Changes)
			p, planned := s.Plan()
			if !planned || p.Goal == nil {
				t.Fatalf("%q gives no plan: %v %v", offer.Label, s.Reading().Problems, p.Gate.Refers)
			}
			if unsafe(*p.Goal) {
				t.Fatalf("%q gives %v kcal at %v kg a week; safe is %v", offer.Label, p.Goal.Target.Value, p.Goal.MeanRate.Value, p.Goal.SafeEnergy)
			}
			if _, undone := s.Undo(); !undone || !sameGoal(s, form) {
				t.Fatalf("%q is not taken back in one step", offer.Label)
			}
		}
	})
	if offered == 0 {
		t.Error("nothing was ever offered")
	}
}

func sameGoal(s *draft.Session, form draft.Form) bool {
	for _, field := range goalFields {
		if s.Get(field) != form[field] {
			return false
		}
	}
	return true
}

func TestUnsafeSaysWhichGuardIsPassed(t *testing.T) {
	for _, c := range []struct {
		name string
		form draft.Form
		want string
	}{
		{"fast", with("goal.by", "2026-05-04", "activity", "active"), "1% of weight or 1 kg a week. The earliest date inside the guards is"},
		{"little", with("goal.by", "", "goal.kcal_per_day", "1190 kcal", "activity", "inactive", "height", "150 cm", "weight", "72 kg", "goal.weight", "65 kg"), "the least of 1200 kcal a day"},
		{"much", with("goal.by", "", "goal.kcal_per_day", "3030 kcal", "weight", "139 kg", "activity", "active", "client.equation_sex", "male"), "the customary deficit of 1000 kcal a day"},
	} {
		v := look(opened(c.form))
		if !strings.Contains(v.Goal.Unsafe, c.want) || len(v.Goal.Offers) == 0 || !v.Goal.Safe.shown() {
			t.Errorf("%s: %q, %d offers", c.name, v.Goal.Unsafe, len(v.Goal.Offers))
		}
	}
	if g := look(opened(answers())).Goal; g.Unsafe != "" || len(g.Offers) > 0 {
		t.Errorf("0.3 kg a week: %q", g.Unsafe)
	}
}

// The first button keeps to the way in which the goal was said.
func TestOffersKeepTheWay(t *testing.T) {
	for _, c := range []struct {
		form draft.Form
		want draft.Field
	}{
		{with("goal.by", "2026-05-04", "activity", "active"), draft.GoalBy},
		{with("goal.by", "", "goal.per_week", "1.1 kg", "activity", "very_active"), draft.GoalPerWeek},
		{with("goal.by", "", "goal.kcal_per_day", "1150 kcal"), draft.GoalEnergy},
	} {
		offers := look(opened(c.form)).Goal.Offers
		if len(offers) != 2 || offers[0].Changes[c.want] == "" {
			t.Errorf("%s: %+v", c.want, offers)
		}
	}
}

func TestWishTooFastIsRescuedWithoutAFigure(t *testing.T) {
	s := opened(with("goal.by", "2026-03-20"))
	v := look(s)
	if v.State != referred || v.Rescue.Label == "" {
		t.Fatalf("state %v, rescue %+v", v.State, v.Rescue)
	}
	s.SetAll(v.Rescue.Changes)
	if after := look(s); after.State != open || after.Goal.Unsafe != "" {
		t.Errorf("after it: %v, %q", after.State, after.Goal.Unsafe)
	}
	if v = look(opened(with("screening.type_1_diabetes", "yes", "goal.by", "2026-03-20"))); v.Rescue.Label != "" {
		t.Error("a referral for a diagnosis is rescued")
	}
}

// A loss that no energy brings is referred, a gain is no plan; both say so in
// plain words.
func TestImpossibleWishIsSaidInPlainWords(t *testing.T) {
	if lead := look(opened(with("goal.by", "2026-03-05"))).Lead; !strings.Contains(lead, "No energy brings this weight by then") {
		t.Errorf("8 kg in three days: %q", lead)
	}
	s := opened(with("goal.kind", "gain", "goal.weight", "120 kg", "goal.by", "2026-04-01"))
	v := look(s)
	if v.State != waiting || !strings.Contains(v.Lead, "goal") {
		t.Errorf("%v %q", v.State, v.Lead)
	}
	if _, wrong := s.Reading().Problems[draft.GoalBy]; !wrong {
		t.Errorf("the field says nothing: %v", s.Reading().Problems)
	}
}

func TestTwoWaysAtOnceAreTold(t *testing.T) {
	v := look(opened(with("goal.kcal_per_day", "1900 kcal")))
	if v.Goal.Trouble != "The goal names a date and an energy. Choose the one that decides; the others follow from it." {
		t.Errorf("%q", v.Goal.Trouble)
	}
}

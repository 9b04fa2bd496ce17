package sheet

import (
	"fmt"
	"strings"
	"testing"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

func TestStates(t *testing.T) {
	for _, c := range []struct {
		name string
		form draft.Form
		want state
	}{
		{"nothing", draft.Form{}, empty},
		{"only the date of the visit", draft.Form{draft.Date: "2026-03-02"}, empty},
		{"no weight", with("weight", ""), waiting},
		{"a weight that cannot be read", with("weight", "heavy"), waiting},
		{"an answer that holds", with("screening.lithium", "yes"), held},
		{"a question not asked", with("screening.lithium", ""), held},
		{"a reason recorded", with("screening.lithium", "yes", "hold_reasons.lithium.text", "Agreed with the prescriber"), open},
		{"an answer that refers", with("screening.type_1_diabetes", "yes"), referred},
		{"an answer that refers, before the weight", with("weight", "", "screening.type_1_diabetes", "yes"), referred},
		{"everything", answers(), open},
	} {
		if got := look(opened(c.form)).State; got != c.want {
			t.Errorf("%s: state %v, want %v", c.name, got, c.want)
		}
	}
}

// Mifflin-St Jeor by hand: 10 x 78 + 6.25 x 168 - 5 x 35 - 161 = 1494. Times
// 1.6 = 2390.4. The target is the model's.
func TestEnergyIsToldWithItsRange(t *testing.T) {
	v := look(opened(answers()))
	p, _ := opened(answers()).Plan()
	style := unit.Style{}
	for _, c := range []struct{ what, got, want string }{
		{"resting", v.Resting.Value, "1494 kcal"},
		{"resting range", v.Resting.Note, "likely 1340 to 1640"},
		{"maintenance", v.Maintenance.Value, "2390 kcal"},
		{"target", v.Target.Value, style.Energy(p.Targets.Energy.Value)},
		{"aside", v.Aside, style.Energy(p.Maintenance.Value-p.Targets.Energy.Value) + " under maintenance"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.what, c.got, c.want)
		}
	}
	low, high := p.Maintenance.Low+p.Goal.Change, p.Maintenance.High+p.Goal.Change
	if want := fmt.Sprintf("likely %.0f to %.0f", round10(low), round10(high)); v.Target.Note != want {
		t.Errorf("target range %q, want %q", v.Target.Note, want)
	}
}

func TestExpectedWeightIsToldWithItsRange(t *testing.T) {
	v := look(opened(answers()))
	p, _ := opened(answers()).Plan()
	band := p.Projection.Bands[p.Projection.Reached]
	style := unit.Style{}
	want := "31 August 2026; 8 in 10: " + style.Number(float64(band.Low), 1) + " to " + style.Weight(band.High)
	if v.Expected.Value != "70 kg" || v.Expected.Note != want || len(v.Expected.Steps) == 0 {
		t.Errorf("%q %q, want %q", v.Expected.Value, v.Expected.Note, want)
	}
	if len(v.Course.Bands) != len(p.Projection.Bands) {
		t.Errorf("the line has %d days, the course %d", len(v.Course.Bands), len(p.Projection.Bands))
	}
	if v = look(opened(with("screening.type_1_diabetes", "yes"))); v.Expected.Value != "" || len(v.Course.Bands) > 0 {
		t.Errorf("a referred plan expects %q", v.Expected.Value)
	}
}

// The other equations that suit, and the other ways to total energy, stand below
// the derivations.
func TestOtherWaysAreTold(t *testing.T) {
	v := look(opened(answers()))
	for _, name := range []string{"Henry 2005, weight ", "Schofield (FAO/WHO/UNU) ", "Owen "} {
		if !strings.Contains(v.Resting.More, name) {
			t.Errorf("%q is not in %q", name, v.Resting.More)
		}
	}
	if strings.Contains(v.Resting.More, "Mifflin") || strings.Contains(v.Resting.More, "Katch") {
		t.Errorf("the one in use, or one that is not meant for the client, is in %q", v.Resting.More)
	}
	if !strings.Contains(v.Maintenance.More, "DRI 2005") || !strings.Contains(v.Maintenance.More, "DRI 2023") {
		t.Errorf("%q", v.Maintenance.More)
	}
}

func round10(e unit.Kilocalorie) float64 { return float64(int(e/10+0.5)) * 10 }

func TestAgreedEnergyClaimsNoRange(t *testing.T) {
	v := look(opened(with("goal.by", "", "goal.kcal_per_day", "1900 kcal")))
	if v.Target.Value != "1900 kcal" || v.Target.Note != "as agreed" {
		t.Errorf("%+v", v.Target)
	}
}

func TestFirstFiguresBeforeThePlan(t *testing.T) {
	v := look(opened(with("goal.kind", "", "activity", "")))
	if v.Resting.Value != "1494 kcal" || v.Maintenance.Value != "" || v.Target.Value != "" {
		t.Errorf("without activity: %q %q %q", v.Resting.Value, v.Maintenance.Value, v.Target.Value)
	}
	v = look(opened(with("goal.kind", "")))
	if v.Maintenance.Value != "2390 kcal" || v.Target.Value != "" || v.Targets != nil {
		t.Errorf("without goal: %q %q", v.Maintenance.Value, v.Target.Value)
	}
	v = look(opened(with("activity", "pal", "activity.pal", "9")))
	if v.Maintenance.Value != "" {
		t.Errorf("a PAL of 9 gave %q", v.Maintenance.Value)
	}
	v = look(opened(with("weight", "", "goal.kind", "")))
	if v.Resting.Value != "" {
		t.Errorf("without weight: %q", v.Resting.Value)
	}
}

// What is told before the plan is what the plan will tell.
func TestFirstFiguresAreThePlans(t *testing.T) {
	for _, form := range []draft.Form{
		answers(), with("measured_resting_kcal_per_day", "1420"), with("resting_equation", "katch_mcardle"),
		with("resting_equation", "cunningham_1980", "body.fat_percent", "31"), with("activity", "pal", "activity.pal", "1.7"),
		with("goal.kind", "maintain", "reproduction.weeks", "20", "screening.pregnant_or_breastfeeding", "yes"),
	} {
		p, planned := opened(form).Plan()
		if !planned {
			t.Fatalf("no plan: %v", opened(form).Reading().Problems)
		}
		early := form.Clone()
		delete(early, draft.GoalKind)
		v := look(opened(early))
		style := unit.Style{}
		if v.Resting.Value != style.Energy(p.Resting.Value) || v.Maintenance.Value != style.Energy(p.Maintenance.Value) ||
			v.Resting.Note != likely(p.Resting.Low, p.Resting.High, style) {
			t.Errorf("%q %q %q, the plan says %v and %v", v.Resting.Value, v.Resting.Note, v.Maintenance.Value, p.Resting.Value, p.Maintenance.Value)
		}
	}
}

func TestReferralTellsNoFigure(t *testing.T) {
	for _, form := range []draft.Form{
		with("screening.type_1_diabetes", "yes"),
		with("screening.type_1_diabetes", "yes", "goal.kind", ""),
		with("goal.by", "2026-03-20"), // asks for under 800 kcal
	} {
		v := look(opened(form))
		if v.State != referred || v.Lead == "" || v.Targets != nil {
			t.Errorf("state %v, lead %q", v.State, v.Lead)
		}
		for _, f := range []figure{v.Target, v.Resting, v.Maintenance, v.Protein, v.Fat, v.Carbohydrate, v.Fibre} {
			if f.Value != "" || f.Note != "" || len(f.Steps) > 0 {
				t.Errorf("tells %+v", f)
			}
		}
		if v.Groups[0].Title != titleRefers && v.Groups[0].Title != titleAnswers {
			t.Errorf("first group %q", v.Groups[0].Title)
		}
	}
}

func TestFindingsGravestFirstWithTheirWay(t *testing.T) {
	v := look(opened(with("screening.lithium", "yes", "screening.warfarin", "yes", "screening.gallstones", "")))
	var titles []string
	for _, g := range v.Groups {
		titles = append(titles, g.Title)
	}
	if got := strings.Join(titles, ", "); got != "On hold, Take care, Notes" {
		t.Errorf("groups %s", got)
	}
	ways := map[string]action{}
	for _, i := range v.Groups[0].Items {
		ways[i.Finding.Code] = i.Action
	}
	if w := ways["lithium"]; w != (action{"Record a reason", "screening", draft.Reason("lithium", draft.ReasonText)}) {
		t.Errorf("lithium leads to %+v", w)
	}
	if w := ways["not_asked"]; w != (action{"Ask the questions", "screening", "screening.gallstones"}) {
		t.Errorf("not asked leads to %+v", w)
	}
	for _, i := range v.Groups[0].Items {
		if strings.Contains(i.Finding.Text, "gallstones,") || strings.Contains(i.Finding.Text, "_") {
			t.Errorf("a code in the text: %q", i.Finding.Text)
		}
	}
}

func TestEveryFindingIsToldOnce(t *testing.T) {
	s := opened(with("screening.lithium", "yes", "screening.cancer_treatment", "yes", "goal.kind", "maintain", "screening.warfarin", "yes",
		"hold_reasons.cancer_treatment.text", "Agreed with the team"))
	p, _ := s.Plan()
	told := 0
	for _, g := range look(s).Groups {
		told += len(g.Items)
	}
	if told != len(p.Findings) {
		t.Errorf("%d findings told, the plan has %d", told, len(p.Findings))
	}
}

func TestAnswersGiveNoComputedFinding(t *testing.T) {
	if found := fromAnswers(opened(answers()).Reading().Intake.Screening); len(found.items) != 0 {
		t.Errorf("no answer is yes, yet %v", found.items)
	}
	for _, i := range fromAnswers(opened(draft.Form{"screening.warfarin": "yes"}).Reading().Intake.Screening).items {
		if i.Finding.Code != "warfarin" || i.Finding.Level != derive.Caution {
			t.Errorf("%+v", i.Finding)
		}
	}
}

func TestWantsLeadToTheirField(t *testing.T) {
	v := look(opened(with("height", "", "weight", "heavy", "goal.weight", "", "fat_floor_percent", "90", "screening.lithium", "")))
	want := []struct {
		label, section string
		field          draft.Field
		problem        bool
	}{
		{"Weight", "intake", draft.Weight, true},
		{"Fat floor", "targets", draft.FatFloor, true},
		{"Height", "intake", draft.Height, false},
		{"Goal weight", "intake", draft.GoalWeight, false},
		{"1 screening question", "screening", "screening.lithium", false},
	}
	if len(v.Wants) != len(want) {
		t.Fatalf("%+v", v.Wants)
	}
	for i, w := range want {
		got := v.Wants[i]
		if got.Label != w.label || got.Section != w.section || got.Field != w.field || (got.Problem != "") != w.problem {
			t.Errorf("%d: %+v, want %+v", i, got, w)
		}
	}
}

func TestUnitsOfThePractice(t *testing.T) {
	v := look(draft.NewSession(answers(), unit.Style{EnergyIn: unit.InKilojoules}))
	if v.Resting.Value != "6251 kJ" || v.Resting.Note != "likely 5650 to 6900" {
		t.Errorf("%q %q", v.Resting.Value, v.Resting.Note)
	}
}

func TestEveryFieldOfThePlanHasAName(t *testing.T) {
	for _, field := range order {
		if label := labelOf(field); label == string(field) {
			t.Errorf("%s has no name", field)
		}
	}
	if labelOf(draft.DayHours("desk")) != "Hours of the day" || labelOf("scored.must") != "A screening form" {
		t.Error("hours or a score have no name")
	}
	for field, section := range map[draft.Field]string{
		draft.FatFloorPerKg: "targets", draft.Counting: "targets", draft.RestingEquation: "targets", draft.GoalPerWeek: "intake",
		draft.PregnantWeeks: "screening", draft.RecentLoss: "screening", "scored.scoff": "screening", draft.Waist: "intake",
		draft.PalmBreadth: "measures", draft.MealWishes: "measures", draft.WeighedGrams(0): "measures",
	} {
		if got := sectionOf(field); got != section {
			t.Errorf("%s is filled in under %q, want %q", field, got, section)
		}
	}
	if labelOf(draft.Reason("lithium", draft.ReasonDate)) != "Reason for a hold" {
		t.Error("a reason has no name")
	}
	if sectionOf(draft.Reason("lithium", draft.ReasonDate)) != "screening" || sectionOf(draft.NextVisit) != "handout" {
		t.Error("wrong section")
	}
}

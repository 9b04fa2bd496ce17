package targets

import (
	"strings"
	"testing"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// 4/9/4 kcal a gram and the bands of IOM 2002/2005: 93.6 g at 4 kcal are 374 kcal
// of the target.
func TestMacrosBesideTheirBands(t *testing.T) {
	s := opened(answers())
	p, _ := s.Plan()
	m := look(s).Macros
	share := unit.Percent(100 * 4 * 93.6 / float64(p.Targets.Energy.Value))
	if m.Rows[0].Value != wholePercent(share, unit.Style{})+" of energy" || m.Rows[0].Note != "in the acceptable range of 10 to 35%" {
		t.Errorf("%+v", m.Rows[0])
	}
	if m.Protein != (setting{"1.2 g/kg", "losing weight, on the weight of 78 kg"}) {
		t.Errorf("%+v", m.Protein)
	}
	m = look(opened(with("carb_fat_balance_percent", "20"))).Macros
	if !strings.HasPrefix(m.Rows[1].Note, "over") || !strings.HasPrefix(m.Rows[2].Note, "under") {
		t.Errorf("fat %q, carbohydrate %q", m.Rows[1].Note, m.Rows[2].Note)
	}
	for i, b := range m.Bands {
		if b.Key != macroOrder[i] || b.Low >= b.High {
			t.Errorf("band %d: %+v", i, b)
		}
	}
}

func TestProteinSaysItsSituationAndWeight(t *testing.T) {
	for _, c := range []struct {
		form draft.Form
		want string
	}{
		{with("protein_g_per_kg", "1.6"), "as set by the practitioner, on the weight of 78 kg"},
		{with("training", "strength", "goal.kind", "maintain"), "strength training, on the weight of 78 kg"},
		{with("protein_basis", "lean"), "on the lean weight of "},
		{with("weight", "120 kg", "goal.by", ""), "on the adjusted weight of "},
		{with("protein_g_per_kg", "2.5", "goal.kind", "maintain", "activity", "inactive", "height", "150 cm", "weight", "65 kg", "client.born", "1960-01-01"), "; protein, held within 35 % of energy"},
	} {
		if got := look(opened(c.form)).Macros.Protein.Note; !strings.Contains(got, c.want) {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestFloorSaysWhyItStandsThere(t *testing.T) {
	for _, c := range []struct {
		form draft.Form
		want string
	}{
		{with("fat_floor_percent", "15"), "kept at 20% for women of childbearing age"},
		{answers(), "the lower edge of the range for adults"},
		{with("fat_floor_percent", "30"), "as set here"},
		{with("fat_floor_percent", "15", "client.equation_sex", "male"), "as set here"},
		{with("fat_floor_g_per_kg", "0.9"), "0.9 g for each kilogram decide"},
		{with("fat_floor_g_per_kg", "0.3"), "the lower edge of the range for adults"},
	} {
		if got := look(opened(c.form)).Macros.Floor.Note; !strings.HasPrefix(got, c.want) {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// Available carbohydrate is total less fibre (Regulation (EU) 1169/2011).
func TestCarbohydrateIsCountedAsChosen(t *testing.T) {
	s := opened(answers())
	p, _ := s.Plan()
	m := look(s).Macros
	if m.Rows[2].Label != "Carbohydrate, total" || m.Beside.Label != "Available, without fibre" ||
		m.Beside.Value != (unit.Style{}).Grams(p.Targets.Carbohydrate.Value-p.Targets.Fibre.Value) {
		t.Errorf("%+v %+v", m.Rows[2], m.Beside)
	}
	m = look(opened(with("carbohydrate_counted", "available"))).Macros
	if m.Rows[2].Label != "Carbohydrate, available" || m.Beside.Label != "Total, with fibre" || m.Counting.Value != "available" {
		t.Errorf("%+v %+v", m.Rows[2], m.Beside)
	}
}

func TestFibreTellsItsRise(t *testing.T) {
	p, _ := opened(answers()).Plan()
	style := unit.Style{}
	if got := look(opened(answers())).Macros.Fibre.Note; got != "14 g for each 1000 kcal" {
		t.Errorf("%q", got)
	}
	if got, want := look(opened(with("usual_fibre_g_per_day", "14"))).Macros.Fibre.Note, style.Grams(p.Targets.Fibre.Value-14)+" more than now, raised step by step"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := look(opened(with("usual_fibre_g_per_day", "60"))).Macros.Fibre.Note; !strings.HasSuffix(got, "less than now") {
		t.Errorf("%q", got)
	}
}

func TestEnergyIsInThePracticesUnit(t *testing.T) {
	v := look(draft.NewSession(with("usual_fibre_g_per_day", ""), unit.Style{EnergyIn: unit.InKilojoules}))
	for _, text := range []string{v.Outcome.Target.Value, v.Outcome.Holding.Value, v.Outcome.Static.Value, v.Energy.Resting.Value, v.Energy.Strip[0].Text, v.Macros.Fibre.Note} {
		if !strings.Contains(text, "kJ") || strings.Contains(text, "kcal") {
			t.Errorf("%q is not in kilojoules", text)
		}
	}
}

func TestBalanceSaysWhatItDoesAndWhyItStops(t *testing.T) {
	s := opened(answers())
	p, _ := s.Plan()
	b := look(s).Macros.Balance
	if b.Kept != "" || b.Why != "at "+wholePercent(p.Targets.Split.WallBalance, unit.Style{})+" fat meets its floor of 20% of energy and goes no lower." {
		t.Errorf("%+v", b)
	}
	b = look(opened(with("carb_fat_balance_percent", "5", "screening.pregnant_or_breastfeeding", "yes", "goal.kind", "maintain",
		"hold_reasons.pregnant_or_breastfeeding.text", "Agreed with the midwife"))).Macros.Balance
	if !strings.HasPrefix(b.Kept, "Carbohydrate is kept higher than the balance asks, for pregnancy or breastfeeding") {
		t.Errorf("%q", b.Kept)
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

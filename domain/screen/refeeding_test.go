package screen

import (
	"strings"
	"testing"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Source: NICE CG32 (seen).
func TestRefeedingAgainstPublishedRows(t *testing.T) {
	for _, row := range scoreRows(t, "refeeding_nice_cg32") {
		got := Refeeding{
			BMI: unit.KilogramPerSquareMetre(row.in["bmi"]), Loss: unit.Percent(row.in["loss_pct_3_6mo"]),
			DaysOfLittle:    unit.Day(row.in["days_little_intake"]),
			LowElectrolytes: row.in["low_electrolytes"] == 1, AlcoholOrDrugs: row.in["alcohol_or_listed_drugs"] == 1,
		}.HighRisk()
		if got != (row.kind == "high") {
			t.Errorf("%v: high %v, want %s", row.in, got, row.kind)
		}
	}
}

// scored returns answers to the refeeding criteria: all asked and none met, but
// for what is changed.
func scored(change func(*Scored)) Scored {
	s := Scored{
		RecentLoss: Told[unit.Percent]{Asked: true}, DaysOfLittle: Told[unit.Day]{Asked: true},
		LowElectrolytes: No, AlcoholOrDrugs: No,
	}
	change(&s)
	return s
}

func loss(value unit.Percent) Told[unit.Percent] { return Told[unit.Percent]{value, true} }
func days(value unit.Day) Told[unit.Day]         { return Told[unit.Day]{value, true} }

// Source: NICE CG32 (seen): one of BMI < 16, loss > 15 %, > 10 days, low
// electrolytes; two of BMI < 18.5, loss > 10 %, > 5 days, alcohol or drugs. What
// was not asked is told, and is never taken as not met.
func TestRefeedingFindings(t *testing.T) {
	cases := []struct {
		name string
		bmi  unit.KilogramPerSquareMetre
		in   Scored
		risk derive.Level
		ask  derive.Level
	}{
		{"nothing told, BMI 27", 27, Scored{}, 0, 0},
		{"all asked, none met", 18, scored(func(*Scored) {}), 0, 0},
		{"nothing told, BMI 18", 18, Scored{}, 0, derive.Caution},
		{"loss over 15 %", 27, Scored{RecentLoss: loss(15.1)}, derive.Refer, 0},
		{"loss of 15 %, rest unasked", 27, Scored{RecentLoss: loss(15)}, 0, derive.Hold},
		{"loss of 15 %, rest asked", 27, scored(func(s *Scored) { s.RecentLoss = loss(15) }), 0, 0},
		{"loss of 10 %, rest unasked", 27, Scored{RecentLoss: loss(10)}, 0, derive.Caution},
		{"loss of 4 %, rest unasked", 27, Scored{RecentLoss: loss(4)}, 0, 0},
		{"over 10 days", 27, Scored{DaysOfLittle: days(10.5)}, derive.Refer, 0},
		{"10 days, rest unasked", 27, Scored{DaysOfLittle: days(10)}, 0, derive.Hold},
		{"5 days", 27, Scored{DaysOfLittle: days(5)}, 0, 0},
		{"low electrolytes", 30, Scored{LowElectrolytes: Yes}, derive.Refer, 0},
		{"alcohol or drugs, rest unasked", 27, Scored{AlcoholOrDrugs: Yes}, 0, derive.Hold},
		{"alcohol or drugs, only blood unasked", 27, scored(func(s *Scored) { s.AlcoholOrDrugs = Yes; s.LowElectrolytes = NotAsked }), 0, derive.Caution},
		{"BMI 18 and alcohol or drugs", 18, Scored{AlcoholOrDrugs: Yes}, derive.Refer, 0},
		{"BMI 18 and over 5 days", 18, Scored{DaysOfLittle: days(5.5)}, derive.Refer, 0},
		{"loss over 10 % and over 5 days", 27, Scored{RecentLoss: loss(10.1), DaysOfLittle: days(6)}, derive.Refer, 0},
		{"BMI 18, reassuring answers do not escalate", 18, Scored{DaysOfLittle: days(0)}, 0, derive.Caution},
	}
	for _, c := range cases {
		f := adult()
		f.BMI, f.Scored = c.bmi, c.in
		found := Findings(Answers{}.AllNo(), f)
		if got := level(found, refeedingRisk); got != c.risk {
			t.Errorf("%s: risk is %v, want %v", c.name, got, c.risk)
		}
		if got := level(found, refeedingUnsure); got != c.ask {
			t.Errorf("%s: what to ask is %v, want %v", c.name, got, c.ask)
		}
	}
}

func TestRefeedingSaysWhatToAsk(t *testing.T) {
	f := adult()
	f.Scored = Scored{RecentLoss: loss(12), LowElectrolytes: No}
	for _, found := range Findings(Answers{}.AllNo(), f) {
		if found.Code != refeedingUnsure {
			continue
		}
		if !strings.Contains(found.Text, "days of little") || !strings.Contains(found.Text, "alcohol") ||
			strings.Contains(found.Text, "lost without") || strings.Contains(found.Text, "potassium") {
			t.Errorf("asks for %q", found.Text)
		}
		return
	}
	t.Error("nothing is asked for")
}

// A yes to the question on unexplained loss is a loss that was told.
func TestUnexplainedLossAsksForTheRest(t *testing.T) {
	found := Findings(Answers{}.AllNo().With(UnexplainedLoss, Yes), adult())
	if level(found, refeedingUnsure) != derive.Caution {
		t.Error("nothing is asked for")
	}
}

// NICE CG32 (seen): insulin, chemotherapy and diuretics are among the listed
// medicines, so that a yes to the question that has them counts while nobody
// asked about them; and what was not asked holds a plan that raises energy.
func TestRefeedingBeforeEnergyIsRaised(t *testing.T) {
	none := Answers{}.AllNo()
	cases := []struct {
		name    string
		bmi     unit.KilogramPerSquareMetre
		answers Answers
		in      Scored
		change  unit.Kilocalorie
		want    string
	}{
		{"BMI 16.5, nothing asked, gaining", 16.5, none, Scored{}, 350, "hold surplus"},
		{"BMI 16.5, nothing asked, holding", 16.5, none, Scored{}, 0, "caution "},
		{"BMI 16.5, only blood unasked, gaining", 16.5, none, scored(func(s *Scored) { s.LowElectrolytes = NotAsked }), 350, "hold surplus"},
		{"BMI 16.5, all asked, gaining", 16.5, none, scored(func(*Scored) {}), 350, ""},
		{"BMI 22, nothing asked, gaining", 22, none, Scored{}, 350, ""},
		{"BMI 22, a loss of unknown size, gaining", 22, none.With(UnexplainedLoss, Yes), Scored{}, 350, "hold surplus"},
		{"BMI 22, insulin, gaining", 22, none.With(GlucoseLowering, Yes), Scored{}, 350, "hold surplus"},
		{"BMI 22, insulin, losing", 22, none.With(GlucoseLowering, Yes), Scored{}, -350, ""},
		{"BMI 22, a water tablet, the listed medicines ruled out, gaining", 22, none.With(BloodPressure, Yes), scored(func(*Scored) {}), 350, ""},
		{"BMI 18, insulin", 18, none.With(GlucoseLowering, Yes), Scored{}, 0, "refer plan"},
		{"BMI 18, cancer treatment", 18, none.With(CancerTreatment, Yes), Scored{}, 0, "refer plan"},
		{"BMI 18, a water tablet", 18, none.With(BloodPressure, Yes), Scored{}, 0, "refer plan"},
		{"BMI 18, a water tablet, the listed medicines ruled out", 18, none.With(BloodPressure, Yes), scored(func(*Scored) {}), 350, ""},
	}
	for _, c := range cases {
		f := adult()
		f.BMI, f.Scored, f.Outcome.Change = c.bmi, c.in, c.change
		var got []string
		for _, found := range Findings(c.answers, f) {
			if strings.HasPrefix(found.Code, "refeeding") {
				got = append(got, stops(t, found))
			}
		}
		if strings.Join(got, "; ") != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

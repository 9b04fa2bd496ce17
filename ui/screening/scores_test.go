package screening

import (
	"strings"
	"testing"

	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

func questionnaire(t *testing.T, code string) screen.Questionnaire {
	t.Helper()
	q, known := screen.QuestionnaireByCode(code)
	if !known {
		t.Fatalf("no questionnaire %q", code)
	}
	return q
}

// Points and thresholds of the published forms: Morgan 1999, BMJ 319:1467; BAPEN
// 2003; Ferguson 1999, Nutrition 15:458.
func TestScoresAreTold(t *testing.T) {
	thin := with(invented(), "client.born", "1990-05-17", "weight", "50 kg") // BMI 17.7
	for _, c := range []struct {
		name, code   string
		form         draft.Form
		mark, result string
		meaning      string // a part of it
	}{
		{"nothing", screen.SCOFF, invented(), "Not asked", "Not asked yet", ""},
		{"begun", screen.SCOFF, with(invented(), "scored.scoff.sick", "yes"), "Begun, 4 answers missing", "1 point so far", "not taken as no"},
		{"one missing", screen.MST, with(invented(), "scored.mst.loss", "1_to_5"), "Begun, 1 answer missing", "1 point so far", "1 question has no answer yet."},
		{"positive early", screen.SCOFF, with(invented(), "scored.scoff.sick", "yes", "scored.scoff.fat", "yes"), "At least 2 of 5: positive", "At least 2 of 5: positive", "no diagnosis"},
		{"all no", screen.SCOFF, with(invented(), "scored.scoff.sick", "no", "scored.scoff.control", "no", "scored.scoff.stone", "no", "scored.scoff.fat", "no", "scored.scoff.food", "no"), "0 of 5: negative", "0 of 5: negative", "rules nothing out"},
		{"published", screen.MST, with(invented(), "scored.mst", "4"), "4 of 5: at risk", "4 of 5: at risk", "looks for the cause"},
		{"both", screen.SCOFF, with(invented(), "scored.scoff", "1", "scored.scoff.sick", "yes", "scored.scoff.food", "yes"), "1 of 5: negative", "1 of 5: negative", "The answers here come to 2; the published form counts."},
		{"medium", screen.MUST, with(invented(), "scored.must", "1"), "1 of 6: medium", "1 of 6: medium", "weigh again"},
		{"from BMI", screen.MUST, with(thin.Clone(), "scored.must.ill", "no", "scored.must.loss", "under_5"), "2 of 6: high", "2 of 6: high", "no diagnosis"},
		{"BMI says more than the form", screen.MUST, with(thin.Clone(), "scored.must", "0"), "0 of 6: low", "0 of 6: low", "give 2 by themselves"},
	} {
		got := scoreOf(questionnaire(t, c.code), c.form, draft.Read(c.form, unit.Style{}))
		if got.Mark != c.mark || got.Result != c.result || !strings.Contains(got.Meaning, c.meaning) {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}

// A score that is positive stops what its question stops; a low one stops
// nothing.
func TestScoresReferAndHold(t *testing.T) {
	for _, c := range []struct {
		name string
		form draft.Form
		code string // of the finding; "" for none
	}{
		{"SCOFF 2", with(askedOf(), "scored.scoff", "2"), "eating_disorder_current"},
		{"SCOFF 1", with(askedOf(), "scored.scoff", "1"), ""},
		{"MST 2", with(askedOf(), "scored.mst.loss", "unsure", "scored.mst.appetite", "no"), "unexplained_loss"},
		{"loss over 15 %", with(askedOf(), "scored.recent_loss_percent", "16"), "refeeding_risk"},
		{"before the plan", draft.Form{"scored.scoff": "3"}, "eating_disorder_current"},
		{"details before the plan", draft.Form{"scored.days_of_little_food": "11"}, "refeeding_risk"},
	} {
		o, found := outcomeOfForm(c.form), ""
		for _, it := range o.Groups[refers] {
			if c.code == "" || it.Finding.Code == c.code {
				found = it.Finding.Code
			}
		}
		if found != c.code {
			t.Errorf("%s: %q refers, want %q", c.name, found, c.code)
		}
	}
}

func TestDetailsAreAskedWhereTheyMatter(t *testing.T) {
	for _, c := range []struct {
		name                 string
		form                 draft.Form
		pregnancy, refeeding bool
	}{
		{"nothing", draft.Form{}, false, false},
		{"all no", askedOf(), false, false},
		{"pregnant", askedOf(screen.Pregnant), true, false},
		{"weeks of before, not asked now", with(invented(), "reproduction.weeks", "24"), true, false},
		{"weeks of before, now no", with(askedOf(), "reproduction.weeks", "24"), false, false},
		{"a loss", askedOf(screen.UnexplainedLoss), false, true},
		{"BMI 18.4", with(askedOf(), "weight", "52 kg"), false, true},
		{"BMI 18.5", with(askedOf(), "weight", "52.3 kg"), false, false},
		{"MUST 2", with(askedOf(), "scored.must", "2"), false, true},
		{"a detail told before", with(askedOf(), "scored.low_electrolytes", "no"), false, true},
	} {
		r := draft.Read(c.form, unit.Style{})
		if p, f := pregnancyAsked(r, c.form), refeedingAsked(r, c.form); p != c.pregnancy || f != c.refeeding {
			t.Errorf("%s: pregnancy %v, refeeding %v", c.name, p, f)
		}
	}
}

func TestWhatTheIntakeTellsIsNotAskedAgain(t *testing.T) {
	q := questionnaire(t, screen.MUST)
	r := draft.Read(with(invented(), "scored.recent_loss_percent", "6"), unit.Style{})
	for item, want := range map[int]string{
		0: "Body mass index: over 20, from height and weight.",
		1: "Weight lost without trying in the last three to six months: 5 to 10 %, from the loss that was told.",
		2: "",
	} {
		if got, known := knownWords(q, q.Items[item], r); got != want || known != (want != "") {
			t.Errorf("%s: %q, %v", q.Items[item].Key, got, known)
		}
	}
	if _, known := knownWords(q, q.Items[0], draft.Read(draft.Form{}, unit.Style{})); known {
		t.Error("BMI is known without a height")
	}
}

func TestEveryDetailHasItsWords(t *testing.T) {
	for _, field := range append(append([]draft.Field(nil), pregnancyFields...), refeedingFields...) {
		if detailLabels[field] == "" {
			t.Errorf("%s has no label", field)
		}
	}
	for _, system := range []unit.System{unit.Metric, unit.USCustomary, unit.UKCustomary} {
		if hint := detailHint(draft.WeightBefore, unit.Style{System: system}); !strings.Contains(hint, "bare number is") && !strings.Contains(hint, "unit is needed") {
			t.Errorf("system %d: %q", system, hint)
		}
	}
	for _, q := range screen.Questionnaires() {
		if !strings.Contains(q.Wording, "own words") {
			t.Errorf("%s does not say whose words they are", q.Code)
		}
	}
}

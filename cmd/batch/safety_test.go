package main

import (
	"fmt"
	"strings"
	"testing"

	"handbreadth/domain/screen"
)

// The safety table, written out apart from the code: for a yes to each question
// its level and scope, and the exit status of a plan that lowers weight and of
// one that holds it. Sources are those that the safety table names, from memory.
// A plan always sets fibre, so that a hold on fibre covers it; advice on fluid
// is left out where it is stopped, so that nothing asks for it. Carbohydrate is
// over 45 % of energy in both plans.
var questions = []struct {
	code           string
	effect         string
	lose, maintain int
}{
	{"pregnant_or_breastfeeding", "refer: deficit; hold: plan", 3, 4},
	{"eating_disorder_current", "refer: plan", 3, 3},
	{"eating_disorder_history", "hold: deficit", 4, 0},
	{"suicidal_thoughts", "refer: plan", 3, 3},
	{"unexplained_loss", "refer: deficit; hold: plan", 3, 4},
	{"type_1_diabetes", "refer: plan", 3, 3},
	{"glucose_lowering_medicine", "hold: deficit, carbohydrate", 4, 0},
	{"sglt2_inhibitor", "hold: carbohydrate", 0, 0},
	{"glp1_medicine", "caution", 0, 0},
	{"kidney_disease", "hold: deficit, protein", 4, 0},
	{"kidney_disease_severe", "refer: plan", 3, 3},
	{"bariatric_recent", "refer: plan", 3, 3},
	{"bariatric_past", "hold: deficit, fibre", 4, 4},
	{"cancer_treatment", "refer: deficit; hold: plan", 3, 4},
	{"heart_failure_or_cirrhosis", "refer: deficit, fluid", 3, 0},
	{"lithium", "hold: deficit, fluid", 4, 0},
	{"warfarin", "caution", 0, 0},
	{"blood_pressure_medicine", "caution", 0, 0},
	{"thyroid_untreated", "refer: deficit", 3, 0},
	{"thyroid_treated", "caution", 0, 0},
	{"missed_periods_or_stress_fracture", "refer: deficit", 3, 0},
	{"gallstones", "caution", 0, 0},
	{"gut_narrowing", "hold: fibre", 4, 4},
	{"swallowing_or_metabolic", "refer: plan", 3, 3},
}

var (
	lose     = changes{"goal": `{"kind":"lose","weight":"66 kg","by":"2026-08-31"}`, "carb_fat_balance_percent": "65"}
	maintain = changes{"goal": `{"kind":"maintain"}`, "carb_fat_balance_percent": "65"}
)

func TestStatusOfEveryQuestion(t *testing.T) {
	if len(questions) != len(screen.Questions()) {
		t.Errorf("%d rows for %d questions", len(questions), len(screen.Questions()))
	}
	for _, q := range questions {
		yes := changes{"screening." + q.code: "true"}
		for name, goal := range map[string]changes{"lose": lose, "maintain": maintain} {
			want := q.maintain
			if name == "lose" {
				want = q.lose
			}
			tb := newTable(t, changed(t, sample(t, "example.json"), goal, yes))
			if got := tb.both(); got != want {
				t.Errorf("%s (%s), %s: status %d, want %d\n%s", q.code, q.effect, name, got, want, tb.stderr.String())
			}
			checkOutputs(t, tb, q.code, want)
			if want == statusHeld {
				checkLifted(t, tb, q.code, changed(t, sample(t, "example.json"), goal, yes))
			}
		}
	}
}

// checkOutputs checks what the status promises of the files and the messages.
func checkOutputs(t *testing.T, tb *table, code string, status int) {
	t.Helper()
	const allFiles, onlyInput = "consult.json paper.pdf plan.json", "consult.json"
	said := tb.stderr.String()
	switch status {
	case statusIssued:
		if tb.names() != allFiles || tb.read("paper.pdf") != "the handout" || said != "" || !strings.Contains(tb.read("plan.json"), "target_kcal") {
			t.Errorf("%s issued: %s; said %q", code, tb.names(), said)
		}
	case statusReferred:
		if tb.names() != allFiles || tb.read("paper.pdf") != "the referral note" || !strings.Contains(said, code+": referred: ") {
			t.Errorf("%s referred: %s; said %q", code, tb.names(), said)
		}
		if plan := tb.read("plan.json"); strings.Contains(plan, "target_kcal") || !strings.Contains(plan, code) {
			t.Errorf("%s referred, the plan file is\n%s", code, plan)
		}
	case statusHeld:
		if tb.names() != onlyInput || !strings.Contains(said, "hold_reasons."+code) || strings.Count(said, "\n") != 1 {
			t.Errorf("%s held: %s; said %q", code, tb.names(), said)
		}
	}
}

// checkLifted checks that the same plan is issued once its reason is given, and
// that an empty reason is none.
func checkLifted(t *testing.T, tb *table, code string, file []byte) {
	t.Helper()
	for reason, want := range map[string]int{"": statusHeld, " ": statusHeld, "Agreed with the clinician": statusIssued} {
		tb.put("consult.json", string(changed(t, file, changes{"hold_reasons": fmt.Sprintf(`{%q:%q}`, code, reason)})))
		if got := tb.both(); got != want {
			t.Errorf("%s with the reason %q: status %d, want %d\n%s", code, reason, got, want, tb.stderr.String())
		}
	}
	if !strings.Contains(tb.read("plan.json"), "Agreed with the clinician") {
		t.Errorf("%s: the reason is not kept with the plan", code)
	}
}

// The rows that are computed, and what scopes do in combination.
func TestStatusOfComputedFindings(t *testing.T) {
	energy := func(kind, kcal string) changes {
		return changes{"goal": `{"kind":"` + kind + `","kcal_per_day":` + kcal + `}`}
	}
	yes := func(codes ...string) changes {
		c := changes{}
		for _, code := range codes {
			c["screening."+code] = "true"
		}
		return c
	}
	reason := func(text string) changes { return changes{"hold_reasons": text} }
	obese := changes{"weight": `"95 kg"`, "client.born": `"1957-01-01"`, "goal": `{"kind":"lose"}`}
	cases := []struct {
		name string
		want int
		all  []changes
	}{
		{"nothing at all", 0, nil},
		{"under 18", 3, []changes{maintain, {"client.born": `"2008-03-03"`}}},
		{"18 today", 0, []changes{maintain, {"client.born": `"2008-03-02"`}}},
		{"a goal that is underweight", 3, []changes{{"goal": `{"kind":"lose","weight":"52 kg"}`}}},
		{"a goal just above underweight", 0, []changes{{"goal": `{"kind":"lose","weight":"52.3 kg"}`}}},
		{"underweight, losing", 3, []changes{lose, {"weight": `"52 kg"`, "goal": `{"kind":"lose"}`}}},
		{"underweight, holding", 0, []changes{maintain, {"weight": `"52 kg"`}}},
		{"underweight, gaining, refeeding not asked about", 4, []changes{{"weight": `"52 kg"`, "goal": `{"kind":"gain"}`}}},
		{"underweight, gaining, all asked", 0, []changes{{"weight": `"52 kg"`, "goal": `{"kind":"gain"}`, "scored": `{"days_of_little_food":0,"recent_loss_percent":0,"low_electrolytes":false,"alcohol_or_listed_medicine":false}`}}},
		{"underweight, gaining, with its reason", 0, []changes{{"weight": `"52 kg"`, "goal": `{"kind":"gain"}`}, reason(`{"refeeding_not_asked":"x"}`)}},
		{"underweight, a water tablet", 3, []changes{maintain, {"weight": `"52 kg"`}, yes("blood_pressure_medicine")}},
		{"overweight, trains, little energy", 4, []changes{{"weight": `"74 kg"`, "activity": `{"level":"inactive"}`, "training": `"endurance"`}, energy("lose", "1425")}},
		{"BMI under 16, gaining", 3, []changes{{"weight": `"45 kg"`, "goal": `{"kind":"gain"}`}}},
		{"a woman under 1200 kcal", 4, []changes{energy("lose", "1199"), reason(`{"rate_fast":"x"}`)}},
		{"a woman under 1200 kcal, with reasons", 0, []changes{energy("lose", "1199"), reason(`{"energy_low":"x","rate_fast":"x"}`)}},
		{"a man under 1500 kcal", 4, []changes{energy("lose", "1499"), {"client.equation_sex": `"male"`}, reason(`{"rate_fast":"x"}`)}},
		{"under 800 kcal, whatever the reasons", 3, []changes{energy("lose", "799"), reason(`{"energy_low":"x","rate_fast":"x"}`)}},
		{"over 1 % a week", 4, []changes{{"goal": `{"kind":"lose","weight":"66 kg","by":"2026-04-20"}`}}},
		{"over 1 % a week, with its reason", 0, []changes{{"goal": `{"kind":"lose","weight":"66 kg","by":"2026-04-20"}`}, reason(`{"rate_fast":"x"}`)}},
		{"a date tomorrow", 3, []changes{{"goal": `{"kind":"lose","weight":"66 kg","by":"2026-03-03"}`}}},
		{"65, BMI under 30, losing", 4, []changes{lose, {"client.born": `"1961-03-02"`}}},
		{"64, BMI under 30, losing", 0, []changes{lose, {"client.born": `"1961-03-03"`}}},
		{"65, BMI under 30, holding", 0, []changes{maintain, {"client.born": `"1961-03-02"`}}},
		{"65, BMI over 30, losing", 0, []changes{obese}},
		{"65, BMI over 30, frail, losing", 4, []changes{obese, yes("frail")}},
		{"nothing asked, holding", 4, []changes{maintain, {"screening": ""}}},
		{"nothing asked, with its reason", 0, []changes{maintain, {"screening": ""}, reason(`{"not_asked":"Asked by the doctor last week"}`)}},
		{"one not asked", 4, []changes{maintain, {"screening": `{"lithium":false}`}}},
		{"not all asked, said so", 4, []changes{maintain, {"screening.all_asked": "false"}}},

		{"a deficit called maintain", 3, []changes{energy("maintain", "2000"), yes("thyroid_untreated")}},
		{"a deficit called gain", 4, []changes{energy("gain", "2000"), yes("lithium")}},
		{"a surplus called lose", 0, []changes{energy("lose", "2600"), yes("thyroid_untreated")}},
		{"little carbohydrate beside an SGLT2 inhibitor", 4, []changes{maintain, yes("sglt2_inhibitor"), {"carb_fat_balance_percent": "40"}}},
		{"little carbohydrate beside insulin", 4, []changes{maintain, yes("glucose_lowering_medicine"), {"carb_fat_balance_percent": "40"}}},
		{"little carbohydrate alone", 0, []changes{maintain, {"carb_fat_balance_percent": "40"}}},
		{"more protein beside kidney disease", 4, []changes{maintain, yes("kidney_disease"), {"protein_g_per_kg": "1.2"}}},
		{"0.8 g/kg beside kidney disease", 0, []changes{maintain, yes("kidney_disease"), {"protein_g_per_kg": "0.8"}}},
		{"refer beats hold", 3, []changes{lose, yes("type_1_diabetes", "lithium")}},
		{"refer beats hold with its reason", 3, []changes{lose, yes("type_1_diabetes", "lithium"), reason(`{"lithium":"x"}`)}},
		{"no reason lifts a referral", 3, []changes{lose, yes("cancer_treatment"), reason(`{"cancer_treatment":"x"}`)}},
		{"one reason of two", 4, []changes{lose, yes("lithium", "eating_disorder_history"), reason(`{"lithium":"x"}`)}},
		{"both reasons of two", 0, []changes{lose, yes("lithium", "eating_disorder_history"), reason(`{"lithium":"x","eating_disorder_history":"y"}`)}},
	}
	for _, c := range cases {
		tb := newTable(t, changed(t, sample(t, "example.json"), c.all...))
		if got := tb.both(); got != c.want {
			t.Errorf("%s: status %d, want %d\n%s", c.name, got, c.want, tb.stderr.String())
		}
	}
}

// The computed findings that stop something, one case each, with the level that
// it stops at; a question's own yes is in the table above.
var computed = []struct {
	code, level string // "held" or "referred"
	all         []changes
}{
	{"under_18", "referred", []changes{{"client.born": `"2008-03-03"`}}},
	{"target_underweight", "referred", []changes{{"goal": `{"kind":"lose","weight":"52 kg"}`}}},
	{"underweight_now", "referred", []changes{{"weight": `"52 kg"`, "goal": `{"kind":"lose"}`}}},
	{"refeeding_risk", "referred", []changes{{"weight": `"45 kg"`, "goal": `{"kind":"gain"}`}}},
	{"energy_very_low", "referred", []changes{{"goal": `{"kind":"lose","kcal_per_day":799}`}}},
	{"eating_disorder_current", "referred", []changes{maintain, {"scored": `{"scoff":2}`}}},
	{"unexplained_loss", "referred", []changes{lose, {"scored": `{"must":2}`}}},
	{"pregnant_or_breastfeeding", "referred", []changes{lose, {"reproduction": `{"weeks":12}`}}},
	{"not_asked", "held", []changes{{"screening": ""}}},
	{"energy_low", "held", []changes{{"goal": `{"kind":"lose","kcal_per_day":1199}`}}},
	{"rate_fast", "held", []changes{{"goal": `{"kind":"lose","weight":"66 kg","per_week":"0.8 kg"}`}}},
	{"older_adult", "held", []changes{lose, {"client.born": `"1961-03-02"`}}},
	{"energy_availability_low", "held", []changes{lose, {"exercise_kcal_per_day": "700"}}},
	{"refeeding_not_asked", "held", []changes{maintain, {"scored": `{"days_of_little_food":6}`}}},
	{"course_underweight", "held", []changes{{"weight": `"56 kg"`, "goal": `{"kind":"lose"}`}}},
	{"course_underweight", "referred", []changes{{"weight": `"52.5 kg"`, "goal": `{"kind":"lose"}`}}},
	{"pregnant_or_breastfeeding", "referred", []changes{maintain, {"reproduction": `{"weeks":30}`, "meal_wishes": `["day: cupped hand at most 1"]`}, everyReason()}},
	{"energy_very_low", "referred", []changes{maintain, {"meal_wishes": `["day: palm at most 1","day: cupped hand at most 1","day: thumb at most 1"]`}}},
	{"kidney_disease", "held", []changes{maintain, {"screening.kidney_disease": "true", "meal_wishes": `["day: palm at least 8"]`}}},
	{"sglt2_inhibitor", "held", []changes{maintain, {"screening.sglt2_inhibitor": "true", "meal_wishes": `["day: cupped hand 0"]`}}},
	{"unexplained_loss", "held", []changes{maintain, {"scored": `{"mst":2}`}}},
	{"pregnant_or_breastfeeding", "held", []changes{maintain, {"reproduction": `{"breastfeeding":"second_half_year"}`}}},
}

func TestComputedFindingsStop(t *testing.T) {
	status := map[string]int{"held": statusHeld, "referred": statusReferred}
	for _, c := range computed {
		tb := newTable(t, changed(t, sample(t, "example.json"), c.all...))
		if got := tb.both(); got != status[c.level] || !strings.Contains("\n"+tb.stderr.String(), "\n"+c.code+": "+c.level+": ") {
			t.Errorf("%s, %s: status %d\n%s", c.code, c.level, got, tb.stderr.String())
		}
	}
}

// Whatever can hold or refer stands in one of the tables.
func TestEveryStopIsInTheTables(t *testing.T) {
	listed := map[string]bool{}
	for _, q := range questions {
		listed[q.code] = true
	}
	for _, c := range computed {
		listed[c.code] = true
	}
	for _, code := range screen.HoldCodes() {
		if !listed[code] {
			t.Errorf("%s can hold and stands in no table", code)
		}
	}
}

// The edges of what is scored, as published: SCOFF 2 or more of 5 (Morgan 1999),
// MUST and MST 2 or more (BAPEN 2003; Ferguson 1999, from memory), a loss over
// 5 % (GLIM 2019), and the criteria for refeeding of NICE CG32.
func TestStatusOfScores(t *testing.T) {
	scored := func(text string) changes { return changes{"scored": text} }
	const asked = `,"recent_loss_percent":0,"low_electrolytes":false,"alcohol_or_listed_medicine":false}`
	cases := []struct {
		name string
		want int
		all  []changes
	}{
		{"SCOFF 1", 0, []changes{maintain, scored(`{"scoff":1}`)}},
		{"SCOFF 2 with every reason", 3, []changes{maintain, scored(`{"scoff":2}`), everyReason()}},
		{"MUST 1", 0, []changes{lose, scored(`{"must":1}`)}},
		{"MUST 2, holding, with its reason", 0, []changes{maintain, scored(`{"must":2}`), everyReason()}},
		{"MUST 2, losing, with its reason", 3, []changes{lose, scored(`{"must":2}`), everyReason()}},
		{"MST 1", 0, []changes{lose, scored(`{"mst":1}`)}},
		{"MST 2, losing", 3, []changes{lose, scored(`{"mst":2}`)}},
		{"a loss of 5 %", 0, []changes{lose, scored(`{"recent_loss_percent":5}`)}},
		{"a loss of 5.1 %, losing", 3, []changes{lose, scored(`{"recent_loss_percent":5.1}`)}},
		{"a loss of 15.1 %", 3, []changes{maintain, scored(`{"recent_loss_percent":15.1}`), everyReason()}},
		{"10 days of little food, all asked", 0, []changes{maintain, scored(`{"days_of_little_food":10` + asked)}},
		{"10 days of little food, no more asked", 4, []changes{maintain, scored(`{"days_of_little_food":10}`)}},
		{"11 days of little food", 3, []changes{maintain, scored(`{"days_of_little_food":11` + asked), everyReason()}},
		{"5 days of little food, no more asked", 0, []changes{maintain, scored(`{"days_of_little_food":5}`)}},
		{"low electrolytes", 3, []changes{maintain, scored(`{"low_electrolytes":true}`), everyReason()}},
		{"two lesser criteria", 3, []changes{maintain, scored(`{"days_of_little_food":6,"alcohol_or_listed_medicine":true}`), everyReason()}},
		{"one lesser criterion with its reason", 0, []changes{maintain, scored(`{"alcohol_or_listed_medicine":true}`), everyReason()}},
		{"pregnancy told, losing, with every reason", 3, []changes{lose, {"reproduction": `{"weeks":20}`}, everyReason()}},
		{"pregnancy told, holding, with its reason", 0, []changes{maintain, {"reproduction": `{"weeks":20}`}, everyReason()}},
		{"little energy beside much training, with its reason", 0, []changes{lose, {"exercise_kcal_per_day": "700"}, everyReason()}},
		{"a rate inside the guards", 0, []changes{{"goal": `{"kind":"lose","weight":"66 kg","per_week":"0.25 kg"}`}}},
		{"a rate that no energy brings", 3, []changes{{"goal": `{"kind":"lose","weight":"40 kg","per_week":"2 kg"}`}}},
	}
	for _, c := range cases {
		tb := newTable(t, changed(t, sample(t, "example.json"), c.all...))
		if got := tb.both(); got != c.want {
			t.Errorf("%s: status %d, want %d\n%s", c.name, got, c.want, tb.stderr.String())
		}
	}
	gain := newTable(t, changed(t, sample(t, "example.json"), changes{"goal": `{"kind":"gain","weight":"140 kg","by":"2026-04-20"}`}))
	if got := gain.both(); got != statusBadInput || !strings.HasPrefix(gain.stderr.String(), "goal.by: ") {
		t.Errorf("a gain that no energy brings: status %d\n%s", got, gain.stderr.String())
	}
}

func everyReason() changes {
	reasons := make([]string, 0, len(screen.HoldCodes()))
	for _, code := range screen.HoldCodes() {
		reasons = append(reasons, fmt.Sprintf("%q:%q", code, "Agreed with the clinician"))
	}
	return changes{"hold_reasons": "{" + strings.Join(reasons, ",") + "}"}
}

// Every hold is named with the key to fill, one line each.
func TestEveryHoldIsNamed(t *testing.T) {
	tb := newTable(t, changed(t, sample(t, "example.json"), lose, changes{
		"screening.lithium": "true", "screening.eating_disorder_history": "true", "screening.gut_narrowing": "true",
	}))
	if got := tb.both(); got != statusHeld {
		t.Fatalf("status %d", got)
	}
	lines := strings.Split(strings.TrimSpace(tb.stderr.String()), "\n")
	for i, code := range []string{"eating_disorder_history", "gut_narrowing", "lithium"} {
		if len(lines) != 3 || !strings.HasPrefix(lines[i], code+": held: ") || !strings.HasSuffix(lines[i], "hold_reasons."+code) {
			t.Errorf("line %d of %d is not about %s:\n%s", i+1, len(lines), code, tb.stderr.String())
		}
	}
}

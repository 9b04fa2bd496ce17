package consult

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/screen"
)

// A plan is never held by what the file has no key for, and once every hold has
// its reason nothing holds it any more.
func TestEveryHoldHasAKey(t *testing.T) {
	codes := screen.HoldCodes()
	rapid.Check(t, func(rt *rapid.T) {
		c := changes{
			"client.born":              quote(rt, "born", "1935-01-01", "1950-01-01", "1990-05-17", "2005-12-31"),
			"client.equation_sex":      quote(rt, "sex", "female", "male"),
			"weight":                   quote(rt, "weight", "48 kg", "62 kg", "95,5 kg", "251 lb"),
			"goal":                     rapid.SampledFrom([]string{`{"kind":"maintain"}`, `{"kind":"gain"}`, `{"kind":"lose","kcal_per_day":1100}`, `{"kind":"lose","kcal_per_day":1700}`}).Draw(rt, "goal"),
			"carb_fat_balance_percent": rapid.SampledFrom([]string{"20", "65"}).Draw(rt, "balance"),
			"screening.all_asked":      rapid.SampledFrom([]string{"true", "false"}).Draw(rt, "all asked"),
		}
		for _, code := range rapid.SliceOfN(rapid.SampledFrom(questionCodes()), 0, 3).Draw(rt, "yes") {
			c["screening."+string(code)] = "true"
		}
		in := parsed(t, changed(t, sample(t, "example.json"), c))
		plan, err := domain.NewPlan(in)
		if err != nil {
			rt.Fatal(err)
		}
		in.Reasons = screen.Reasons{}
		for _, f := range plan.Findings {
			if f.Level != derive.Hold {
				continue
			}
			if !slices.Contains(codes, f.Code) {
				rt.Fatalf("%s holds and hold_reasons has no key for it", f.Code)
			}
			in.Reasons[f.Code] = screen.Reason{Text: "x"}
		}
		if plan, err = domain.NewPlan(in); err != nil || plan.Gate.Held() {
			rt.Fatalf("still held by %v (%v)", plan.Gate.Holds, err)
		}
	})
}

// Every code that can be given a reason is the code of some hold: those that no
// question gives come up in these plans.
func TestEveryHoldCodeCanHold(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range []changes{
		{"screening": ""},
		{"goal": `{"kind":"lose","kcal_per_day":1100}`},
		{"client.born": `"1950-01-01"`},
		{"exercise_kcal_per_day": `900`},
		{"weight": `"56 kg"`, "goal": `{"kind":"lose"}`},
		{"scored": `{"days_of_little_food":7}`},
	} {
		for _, f := range planned(t, changed(t, sample(t, "example.json"), c)).Findings {
			seen[f.Code] = seen[f.Code] || f.Level == derive.Hold
		}
	}
	for _, q := range screen.Questions() {
		plan := planned(t, changed(t, sample(t, "example.json"), changes{"screening." + string(q.Code): "true"}))
		for _, f := range plan.Findings {
			seen[f.Code] = seen[f.Code] || f.Level == derive.Hold
		}
	}
	for _, code := range screen.HoldCodes() {
		if !seen[code] {
			t.Errorf("%s did not hold", code)
		}
	}
}

package consult

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/energy"
	"handbreadth/domain/macro"
)

func keys(t *testing.T, data []byte) []string {
	t.Helper()
	var root map[string]json.RawMessage
	if err := json.Unmarshal(data, &root); err != nil {
		t.Fatal(err)
	}
	var names []string
	for k := range root {
		names = append(names, k)
	}
	slices.Sort(names)
	return names
}

func encoded(t testing.TB, file []byte) []byte {
	t.Helper()
	data, err := Encode(planned(t, file))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func TestPlanFileHasItsKeys(t *testing.T) {
	want := []string{
		"alternatives", "available_carbohydrate_g_per_day", "carbohydrate_g_per_day", "cross_checks", "date", "derivation", "fat_g_per_day", "fibre_g_per_day", "findings",
		"hand_factors", "holding_kcal_per_day", "maintenance_kcal_per_day", "meals", "measures_per_day", "projection", "protein_g_per_day",
		"reached_on", "resting_equations", "resting_kcal_per_day", "static_target_kcal_per_day", "status", "target_kcal_per_day",
	}
	data := encoded(t, sample(t, "example.json"))
	if got := keys(t, data); !reflect.DeepEqual(got, want) {
		t.Errorf("got  %v\nwant %v", got, want)
	}
	var shape struct {
		Measures   map[string]float64   `json:"measures_per_day"`
		Meals      []map[string]float64 `json:"meals"`
		Findings   []map[string]string  `json:"findings"`
		Projection []map[string]float64 `json:"projection"`
		Checks     []map[string]any     `json:"cross_checks"`
		Equations  []map[string]any     `json:"resting_equations"`
		Derivation []map[string]any     `json:"derivation"`
	}
	if err := json.Unmarshal(data, &shape); err != nil {
		t.Fatal(err)
	}
	if len(shape.Meals) != 3 || len(shape.Checks) == 0 || len(shape.Equations) != len(energy.RestingEquations()) {
		t.Errorf("%d meals, cross-checks %v, equations %v", len(shape.Meals), shape.Checks, shape.Equations)
	}
	for _, list := range [][]map[string]any{shape.Checks, shape.Equations} {
		for _, item := range list {
			if item["name"] == "" || item["kcal_per_day"] == nil {
				t.Errorf("beside the plan stands %v", item)
			}
		}
	}
	for _, e := range shape.Equations {
		if suits, _ := e["suits"].(bool); suits == (e["why"] != nil) {
			t.Errorf("equation %v", e)
		}
	}
	for _, m := range append(shape.Meals, shape.Measures) {
		for _, name := range []string{"palm", "fist", "cupped_hand", "thumb"} {
			if n, given := m[name]; !given || n*2 != math.Trunc(n*2) || n < 0 {
				t.Errorf("%s in %v", name, m)
			}
		}
	}
	for _, f := range shape.Findings {
		if f["level"] == "" || f["code"] == "" || f["text"] == "" || f["source"] == "" {
			t.Errorf("finding %v", f)
		}
	}
	for _, s := range shape.Derivation {
		for _, name := range []string{"key", "label", "formula", "inputs", "result", "unit", "source"} {
			if s[name] == nil || s[name] == "" && name != "unit" {
				t.Errorf("step %v lacks %s", s["key"], name)
			}
		}
	}
}

// derivedBy names the step of the derivation behind each number of the file.
var derivedBy = map[string]string{
	"resting_kcal_per_day": "resting", "maintenance_kcal_per_day": "maintenance", "target_kcal_per_day": "target",
	"protein_g_per_day": "protein", "fat_g_per_day": "fat", "carbohydrate_g_per_day": "carbohydrate",
	"fibre_g_per_day": "fibre", "measures_per_day.palm": "day_palm", "measures_per_day.fist": "day_fist",
	"measures_per_day.cupped_hand": "day_cupped_hand", "measures_per_day.thumb": "day_thumb",
	"static_target_kcal_per_day": "static_target", "holding_kcal_per_day": "holding",
	"available_carbohydrate_g_per_day": "carbohydrate_available",
}

// derivedOtherwise is derivedBy where carbohydrate is counted as available.
var derivedOtherwise = map[string]string{
	"carbohydrate_g_per_day": "carbohydrate_total", "available_carbohydrate_g_per_day": "carbohydrate",
}

// samples are the consult files that come to a plan.
var samples = []string{
	"example.json", "us.json", "every-key.json", "goal-by-rate.json", "day-of-activity.json", "measured.json", "scored.json", "breastfeeding.json",
	"hand.json",
}

func TestEveryNumberIsDerivedFromASource(t *testing.T) {
	for _, name := range samples {
		data := encoded(t, sample(t, name))
		counting := parsed(t, sample(t, name)).Counting
		f, err := Decode(data)
		if err != nil {
			t.Fatal(err)
		}
		last := map[string]Step{}
		for _, s := range f.Derivation {
			last[s.Key] = s
		}
		for path, value := range numbersOf(t, data) {
			key := derivedBy[path]
			if other, differs := derivedOtherwise[path]; differs && counting == macro.CountAvailable {
				key = other
			}
			step, found := last[key]
			if !found || step.Source == "" || step.Confidence == "" || step.Result != value {
				t.Errorf("%s: %s is %v, derived by %+v", name, path, value, step)
			}
		}
		for i, c := range f.CrossChecks {
			if step := last[fmt.Sprintf("%s_%d", keyCrossCheck, i+1)]; step.Result != c.Energy || step.Source == "" {
				t.Errorf("%s: %+v is derived by %+v", name, c, step)
			}
		}
		for _, e := range f.RestingEquations {
			if step := last[keyEquation+"_"+e.Code]; e.Energy == nil || step.Result != *e.Energy || step.Source == "" {
				t.Errorf("%s: %+v is derived by %+v", name, e, step)
			}
		}
		for _, in := range last {
			for _, i := range in.Inputs {
				if i.Name == "" || (i.Value == nil) == (i.Text == "") {
					t.Errorf("%s: input %+v of %s", name, i, in.Key)
				}
			}
		}
	}
}

// numbersOf returns the numbers at the top of a file and of its day's measures.
func numbersOf(t *testing.T, data []byte) map[string]float64 {
	t.Helper()
	var root map[string]any
	if err := json.Unmarshal(data, &root); err != nil {
		t.Fatal(err)
	}
	numbers := map[string]float64{}
	for key, v := range root {
		if n, isNumber := v.(float64); isNumber {
			numbers[key] = n
		}
	}
	measures, _ := root["measures_per_day"].(map[string]any)
	for key, v := range measures {
		numbers["measures_per_day."+key] = v.(float64)
	}
	return numbers
}

// Grams as they are printed, times 4, 9 and 4 kcal (Regulation (EU) 1169/2011,
// annex XIV), give the printed target; where available carbohydrate is counted,
// fibre brings 2 kcal beside it. Grams are rounded to 0.01 and energy to 0.1,
// which is at most 19 x 0.005 + 0.05 = 0.145 kcal.
func TestGramsGiveTheTarget(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		f, counting := anyIssued(t, rt)
		sum := 4*f.Protein + 9*f.Fat + 4*f.Carbohydrate
		if counting == macro.CountAvailable {
			sum = 4*f.Protein + 9*f.Fat + 4*f.Available + 2*f.Fibre
		}
		if math.Abs(sum-f.Energy) > 0.145+1e-9 {
			rt.Fatalf("grams give %v, the target is %v", sum, f.Energy)
		}
		if math.Abs(f.Available+f.Fibre-f.Carbohydrate) > 0.015+1e-9 {
			rt.Fatalf("available %v and fibre %v, total %v", f.Available, f.Fibre, f.Carbohydrate)
		}
		var day Measures
		for _, m := range f.Meals {
			day.Palm, day.Fist = day.Palm+m.Palm, day.Fist+m.Fist
			day.CuppedHand, day.Thumb = day.CuppedHand+m.CuppedHand, day.Thumb+m.Thumb
		}
		if day != f.MeasuresPerDay {
			rt.Fatalf("meals add to %+v, the day is %+v", day, f.MeasuresPerDay)
		}
	})
}

func anyIssued(t testing.TB, rt *rapid.T) (File, macro.Counting) {
	c := changes{
		"weight":                   quote(rt, "weight", "62 kg", "72.6 kg", "11 st 6 lb", "95,5 kg", "251 lb"),
		"height":                   quote(rt, "height", "155 cm", "168 cm", "1.78 m"),
		"client.equation_sex":      quote(rt, "sex", "female", "male"),
		"client.born":              quote(rt, "born", "1963-01-01", "1990-05-17", "2005-12-31"),
		"activity":                 rapid.SampledFrom([]string{`{"level":"inactive"}`, `{"level":"very_active"}`, `{"pal":1.62}`}).Draw(rt, "activity"),
		"goal":                     rapid.SampledFrom([]string{`{"kind":"maintain"}`, `{"kind":"gain"}`, `{"kind":"lose"}`}).Draw(rt, "goal"),
		"meals_per_day":            rapid.SampledFrom([]string{"1", "3", "6"}).Draw(rt, "meals"),
		"carb_fat_balance_percent": rapid.SampledFrom([]string{"0", "37.5", "100"}).Draw(rt, "balance"),
		"carbohydrate_counted":     quote(rt, "counting", "total", "available"),
		"training":                 quote(rt, "training", "none", "endurance", "strength"),
		"protein_basis":            quote(rt, "basis", "by_bmi", "current", "adjusted", "lean"),
		"fat_floor_g_per_kg":       rapid.SampledFrom([]string{"0.3", "0.8", "1.5"}).Draw(rt, "floor"),
		"body":                     rapid.SampledFrom([]string{`{}`, `{"fat_percent":35}`}).Draw(rt, "body"),
		"hold_reasons":             allReasons(),
	}
	file := changed(t, sample(t, "example.json"), c)
	return written(t, file), parsed(t, file).Counting
}

func quote(rt *rapid.T, label string, words ...string) string {
	return `"` + rapid.SampledFrom(words).Draw(rt, label) + `"`
}

func TestPlanFileRoundTrip(t *testing.T) {
	files := [][]byte{
		changed(t, sample(t, "example.json"), changes{"screening.type_1_diabetes": "true"}),
		changed(t, sample(t, "example.json"), changes{"hold_reasons": `{"lithium":"not needed <&>"}`}),
	}
	for _, name := range samples {
		files = append(files, sample(t, name))
	}
	for _, file := range files {
		plan := planned(t, file)
		data, err := Encode(plan)
		if err != nil {
			t.Fatal(err)
		}
		again, err := Encode(plan)
		if err != nil || !bytes.Equal(data, again) {
			t.Errorf("the same plan gave another file (%v)", err)
		}
		f, err := Decode(data)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := write(f); err != nil || !bytes.Equal(back, data) {
			t.Errorf("%s\nread and written again, the file differs (%v)", file, err)
		}
	}
}

// Reasons are kept with the plan, needed or not; an empty one is none.
func TestReasonsAreKept(t *testing.T) {
	f := written(t, sample(t, "every-key.json"))
	want := map[string]string{"lithium": "Agreed with the prescriber on 27 February", "older_adult": "Agreed with the doctor"}
	if !reflect.DeepEqual(f.HoldReasons, want) {
		t.Errorf("got %v", f.HoldReasons)
	}
}

// The course stands there by the week and with its last day, each weight within
// its range; it starts at today's weight.
func TestProjection(t *testing.T) {
	for _, name := range samples {
		file := sample(t, name)
		f, plan := written(t, file), planned(t, file)
		if plan.Projection == nil {
			if len(f.Projection) != 0 || f.Holding != nil {
				t.Errorf("%s: %v held by %v, and nothing was projected", name, f.Projection, f.Holding)
			}
			continue
		}
		last := len(f.Projection) - 1
		for i, w := range f.Projection {
			if want := min(7*i, len(plan.Projection.Bands)-1); w.Day != want {
				t.Errorf("%s: entry %d is day %d, want %d", name, i, w.Day, want)
			}
			if w.Low > w.Weight || w.High < w.Weight {
				t.Errorf("%s: day %d: %+v", name, w.Day, w)
			}
		}
		if first := f.Projection[0].Weight; math.Abs(first-float64(plan.Intake.Weight)) > 0.005 {
			t.Errorf("%s: it starts at %v", name, first)
		}
		if final := rounded(float64(plan.Projection.Final.Value), projected); f.Projection[last].Weight != final {
			t.Errorf("%s: it ends at %v, want %v", name, f.Projection[last].Weight, final)
		}
		if f.Holding == nil {
			t.Errorf("%s: nothing holds the weight", name)
		}
	}
	if breastfeeding := planned(t, sample(t, "breastfeeding.json")); breastfeeding.Projection != nil {
		t.Error("a course for a body that the model does not know")
	}
}

// A wish by date or rate has the static rule beside it, and the day it is reached
// on; an agreed energy has neither.
func TestGoalOfThePlanFile(t *testing.T) {
	if f := written(t, sample(t, "example.json")); f.ReachedOn != "2026-08-31" || f.StaticTarget == nil || *f.StaticTarget <= f.Energy {
		t.Errorf("by date: reached on %s, static %v, target %v", f.ReachedOn, f.StaticTarget, f.Energy)
	}
	// 19 lb at 1 lb a week take 133 days.
	if f := written(t, sample(t, "goal-by-rate.json")); f.ReachedOn != "2026-07-13" || f.StaticTarget == nil {
		t.Errorf("by rate: reached on %s, static %v", f.ReachedOn, f.StaticTarget)
	}
	if f := written(t, changed(t, sample(t, "example.json"), changes{"goal": `{"kind":"lose","kcal_per_day":1800}`})); f.ReachedOn != "" || f.StaticTarget != nil {
		t.Errorf("by energy: reached on %s, static %v", f.ReachedOn, f.StaticTarget)
	}
}

func TestPlanFileNamesNobody(t *testing.T) {
	data := encoded(t, sample(t, "us.json"))
	for _, word := range []string{"Wren", "Hollowbrook", "1996"} {
		if bytes.Contains(data, []byte(word)) {
			t.Errorf("the plan file has %q", word)
		}
	}
}

// A referred plan has findings, resting and maintenance energy, and nothing
// from which a target could be read.
func TestReferredPlanHasNoTarget(t *testing.T) {
	const fast = `{"kind":"lose","weight":"60 kg","by":"2026-05-30"}`
	for name, c := range map[string]changes{
		"a plan that nothing may be issued of": {"goal": fast, "screening.suicidal_thoughts": "true"},
		"a body that was measured": {
			"goal": fast, "screening.thyroid_untreated": "true", "body": `{"waist":"88 cm","fat_percent":34}`, "measured_resting_kcal_per_day": "1400",
		},
		"a deficit that is referred":    {"goal": fast, "screening.thyroid_untreated": "true"},
		"an energy that is far too low": {"goal": `{"kind":"lose","kcal_per_day":700}`},
		"a date that cannot be":         {"goal": `{"kind":"lose","weight":"50 kg","by":"2026-03-20"}`},
	} {
		data := encoded(t, changed(t, sample(t, "example.json"), c))
		want := []string{"date", "derivation", "findings", "maintenance_kcal_per_day", "resting_kcal_per_day", "status"}
		if got := keys(t, data); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: keys %v", name, got)
		}
		f, err := Decode(data)
		if err != nil {
			t.Fatal(err)
		}
		if f.Status != Referred || f.Findings[0].Level != "refer" {
			t.Errorf("%s: status %s, first finding %+v", name, f.Status, f.Findings[0])
		}
		for _, s := range f.Derivation {
			if !slices.Contains(ofThePerson, s.Key) {
				t.Errorf("%s: derivation of %s", name, s.Key)
			}
		}
		for _, finding := range f.Findings {
			for _, figure := range figures.FindAllStringSubmatch(finding.Text, -1) {
				if !slices.Contains(limits, figure[0]) {
					t.Errorf("%s: %s in %q", name, figure[0], finding.Text)
				}
			}
		}
	}
}

// ofThePerson are the steps of a referred plan: what the client is and spends.
// Body fat, lean mass and waist to height are measurements or estimates of the
// body as it is, like BMI; no target is reckoned back from them.
var ofThePerson = []string{"bmi", "body_fat", "lean_mass", "waist_to_height", "resting", "pal", "maintenance"}

// The figures that a referral's findings may tell: published limits, which are
// no one's target.
var (
	figures = regexp.MustCompile(`[0-9.]+ (kcal|kg a week|g a day)`)
	limits  = []string{"800 kcal", "1000 kcal", "1 kg a week", "130 g a day"}
)

func TestHeldPlanIsNotWritten(t *testing.T) {
	data, err := Encode(planned(t, changed(t, sample(t, "example.json"), changes{"screening": ""})))
	if !errors.Is(err, ErrHeld) || data != nil {
		t.Errorf("got %d bytes, %v", len(data), err)
	}
}

func TestDecodeRefuses(t *testing.T) {
	good := string(encoded(t, sample(t, "example.json")))
	for name, text := range map[string]string{
		"empty":           "",
		"a consult file":  string(sample(t, "example.json")),
		"cut short":       good[:len(good)/2],
		"more after it":   good + "{}",
		"another status":  strings.Replace(good, `"issued"`, `"draft"`, 1),
		"referred":        strings.Replace(good, `"issued"`, `"referred"`, 1),
		"without targets": `{"status":"issued","date":"2026-03-02","findings":[],"derivation":[]}`,
	} {
		if _, err := Decode([]byte(text)); !errors.Is(err, ErrPlanFile) {
			t.Errorf("%s: got %v", name, err)
		}
	}
}

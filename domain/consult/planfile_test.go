package consult

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
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
		"carbohydrate_g_per_day", "date", "derivation", "fat_g_per_day", "fibre_g_per_day", "findings",
		"maintenance_kcal_per_day", "meals", "measures_per_day", "projection", "protein_g_per_day",
		"resting_kcal_per_day", "status", "target_kcal_per_day",
	}
	data := encoded(t, sample(t, "example.json"))
	if got := keys(t, data); !reflect.DeepEqual(got, want) {
		t.Errorf("got  %v\nwant %v", got, want)
	}
	var shape struct {
		Measures   map[string]float64   `json:"measures_per_day"`
		Meals      []map[string]float64 `json:"meals"`
		Findings   []map[string]string  `json:"findings"`
		Projection []any                `json:"projection"`
		Derivation []map[string]any     `json:"derivation"`
	}
	if err := json.Unmarshal(data, &shape); err != nil {
		t.Fatal(err)
	}
	if shape.Projection == nil || len(shape.Meals) != 3 {
		t.Errorf("projection %v, %d meals", shape.Projection, len(shape.Meals))
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
}

func TestEveryNumberIsDerivedFromASource(t *testing.T) {
	for _, name := range []string{"example.json", "us.json", "every-key.json"} {
		data := encoded(t, sample(t, name))
		f, err := Decode(data)
		if err != nil {
			t.Fatal(err)
		}
		last := map[string]Step{}
		for _, s := range f.Derivation {
			last[s.Key] = s
		}
		numbers := numbersOf(t, data)
		if len(numbers) != len(derivedBy) {
			t.Errorf("%s: %d numbers, %d have a step: %v", name, len(numbers), len(derivedBy), numbers)
		}
		for path, value := range numbers {
			step, found := last[derivedBy[path]]
			if !found || step.Source == "" || step.Confidence == "" || step.Result != value {
				t.Errorf("%s: %s is %v, derived by %+v", name, path, value, step)
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
// annex XIV), give the printed target: grams are rounded to 0.01 and energy to
// 0.1, which is at most 17 x 0.005 + 0.05 = 0.135 kcal.
func TestGramsGiveTheTarget(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		f := anyIssued(t, rt)
		sum := 4*f.Protein + 9*f.Fat + 4*f.Carbohydrate
		if math.Abs(sum-f.Energy) > 0.135+1e-9 {
			rt.Fatalf("grams give %v, the target is %v", sum, f.Energy)
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

func anyIssued(t testing.TB, rt *rapid.T) File {
	c := changes{
		"weight":                   quote(rt, "weight", "62 kg", "72.6 kg", "11 st 6 lb", "95,5 kg", "251 lb"),
		"height":                   quote(rt, "height", "155 cm", "168 cm", "1.78 m"),
		"client.equation_sex":      quote(rt, "sex", "female", "male"),
		"client.born":              quote(rt, "born", "1963-01-01", "1990-05-17", "2005-12-31"),
		"activity":                 rapid.SampledFrom([]string{`{"level":"inactive"}`, `{"level":"very_active"}`, `{"pal":1.62}`}).Draw(rt, "activity"),
		"goal":                     rapid.SampledFrom([]string{`{"kind":"maintain"}`, `{"kind":"gain"}`, `{"kind":"lose"}`}).Draw(rt, "goal"),
		"meals_per_day":            rapid.SampledFrom([]string{"1", "3", "6"}).Draw(rt, "meals"),
		"carb_fat_balance_percent": rapid.SampledFrom([]string{"0", "37.5", "100"}).Draw(rt, "balance"),
		"hold_reasons":             `{"energy_low":"known to the doctor"}`,
	}
	return written(t, changed(t, sample(t, "example.json"), c))
}

func quote(rt *rapid.T, label string, words ...string) string {
	return `"` + rapid.SampledFrom(words).Draw(rt, label) + `"`
}

func TestPlanFileRoundTrip(t *testing.T) {
	for _, c := range []changes{nil, {"screening.type_1_diabetes": "true"}, {"hold_reasons": `{"lithium":"not needed <&>"}`}} {
		plan := planned(t, changed(t, sample(t, "example.json"), c))
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
			t.Errorf("%v: read and written again, the file differs (%v)", c, err)
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
		"a deficit that is referred":           {"goal": fast, "screening.thyroid_untreated": "true"},
		"an energy that is far too low":        {"goal": `{"kind":"lose","kcal_per_day":700}`},
		"a date that cannot be":                {"goal": `{"kind":"lose","weight":"50 kg","by":"2026-03-20"}`},
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
			if !slices.Contains([]string{"bmi", "resting", "pal", "maintenance"}, s.Key) {
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

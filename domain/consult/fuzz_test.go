package consult

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"handbreadth/domain"
	"handbreadth/domain/unit"
)

// Whatever the bytes: either an intake that passes its own checks and whose
// plan can be written where it may leave the desk, or problems that each name
// a field and what is accepted, one line each.
func FuzzParse(f *testing.F) {
	for _, name := range append(slices.Clone(samples), "faults.json") {
		f.Add(sample(f, name))
	}
	for _, text := range []string{
		"", "null", "[]", "\xef\xbb\xbf{}", `{"date":1e999,"a\nb":[[[]]]}`, `{"weight":"72 kg","weight":"73 kg"}{}`,
		"{\"client\":{\"name\":\"\xff\\ud83d\"}}", `{"goal":{"kind":"lose","by":"2026-08-31","kcal_per_day":-0}}`,
		`{"activity":{"day":[{"what":"yoga","hours":1e-3},{"hours":25},7]},"body":{"waist":"30 cm","neck":"31 cm","fat_percent":-0}}`,
		`{"goal":{"kind":"gain","per_week":"1 lb a week","by":"2026-08-31"},"scored":{"scoff":2.0,"must":-1,"low_electrolytes":null}}`,
		`{"reproduction":{"weeks":1e1,"breastfeeding":"no"},"training":"","protein_basis":"by_bmi","carbohydrate_counted":"total"}`,
		`{"hand":{"palm_breadth":"8 cm","weighed":{"palm":{"food":"cod","grams":80},"fist":{}},"basket":[{"code":"cod","share":2},3],"ranges":1}}`,
		`{"meal_wishes":["meal 1: palm 2; day: palm 1","day: thumb at least ½",4],"meal_sizes":["light","huge"]}`,
		`{"avoid":["nuts","",3,null],"screening":{"all_asked":true},"hold_reasons":{"lithium":" "}}`,
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		in, err := Parse(data)
		if err != nil {
			checkProblems(t, err)
			return
		}
		plan, err := domain.NewPlan(in)
		if err != nil {
			checkProblems(t, err) // a wish that no energy brings
			return
		}
		written, err := Encode(plan)
		if plan.Gate.Held() != (err == ErrHeld) || (err != nil && err != ErrHeld) {
			t.Fatalf("held %v, %v", plan.Gate.Held(), err)
		}
		if err == nil {
			if _, err := Decode(written); err != nil {
				t.Fatal(err)
			}
		}
	})
}

func checkProblems(t *testing.T, err error) {
	t.Helper()
	ps, ok := err.(unit.Problems)
	if !ok || len(ps) == 0 {
		t.Fatalf("%T: %v", err, err)
	}
	for _, p := range ps {
		line := p.Error()
		if p.Field == "" || p.Accepted == "" || strings.ContainsAny(line, "\r\n") || !utf8.ValidString(line) {
			t.Fatalf("problem %q: %+v", line, p)
		}
	}
}

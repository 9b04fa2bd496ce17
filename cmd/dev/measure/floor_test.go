package measure

import (
	"encoding/json"
	"testing"
)

// BenchmarkDecodeConsult is the floor for computing a plan: what the standard
// library takes to decode a consult file of the usual size.
func BenchmarkDecodeConsult(b *testing.B) {
	file := []byte(`{"date":"2026-03-02",
	 "client":{"name":"Wilhelmina Testcase","born":"1990-05-17","equation_sex":"female"},
	 "height":"168 cm","weight":"11 st 6 lb",
	 "activity":{"level":"low_active"},
	 "goal":{"kind":"lose","weight":"66 kg","by":"2026-08-31"},
	 "meals_per_day":3,"eating_pattern":"omnivore","avoid":["peanut"],
	 "screening":{"all_asked":true,"kidney_disease":false},
	 "carb_fat_balance_percent":55,"fat_floor_percent":20,"resting_equation":"mifflin_st_jeor"}`)
	b.ReportAllocs()
	for b.Loop() {
		var consult map[string]any
		if err := json.Unmarshal(file, &consult); err != nil {
			b.Fatal(err)
		}
	}
}

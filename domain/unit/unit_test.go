package unit_test

import (
	"errors"
	"math"
	"testing"

	"handbreadth/domain/unit"
)

// 70 kg at 1.75 m is 22.86 kg/m² by WHO's definition, weight over the square of
// stature; the rest are the exact equivalences of 1959 and of the
// thermochemical calorie.
func TestConversions(t *testing.T) {
	cases := []struct {
		name      string
		got, want float64
	}{
		{"BMI", float64(unit.BMI(70, 175)), 70 / (1.75 * 1.75)},
		{"weight at BMI", float64(unit.WeightAtBMI(unit.BMI(70, 175), 175)), 70},
		{"pounds", unit.Kilogram(45.359237).Pounds(), 100},
		{"metres", unit.Centimetre(168).Metres(), 1.68},
		{"kilojoules", float64(unit.Kilocalorie(1000).Kilojoules()), 4184},
		{"kilocalories", float64(unit.Kilojoule(4184).Kilocalories()), 1000},
	}
	for _, c := range cases {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
}

func TestProblemsCollect(t *testing.T) {
	var ps unit.Problems
	if ps.Err() != nil {
		t.Error("no problem is an error")
	}
	_, bad := unit.ParseWeight("weight", "x")
	if !ps.Keep(nil) || ps.Keep(bad) || ps.Keep(unit.Problems{{Field: "height"}}) || ps.Keep(errors.New("disk")) {
		t.Error("Keep reports the wrong way")
	}
	ps.Add("meals", "9", "1 to 6")
	fields := ""
	for _, p := range ps {
		fields += p.Field + ";"
	}
	if fields != "weight;height;;meals;" || ps[2].Accepted != "disk" {
		t.Errorf("%q, %+v", fields, ps)
	}
	const last = "\nmeals: given \"9\"; accepted: 1 to 6"
	if told := ps.Err().Error(); told[len(told)-len(last):] != last {
		t.Errorf("%q", told)
	}
}

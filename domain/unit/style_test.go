package unit_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/unit"
)

var (
	metric = unit.Style{}
	comma  = unit.Style{EnergyIn: unit.InKilojoules, DecimalComma: true}
	us     = unit.Style{System: unit.USCustomary}
	uk     = unit.Style{System: unit.UKCustomary}
)

// The wanted texts follow by hand from 1 lb = 0.45359237 kg, 1 in = 2.54 cm
// (international yard and pound agreement, 1959), 1 kcal = 4.184 kJ, and the
// US cup of 236.5882365 ml with 16 tablespoons (NIST Handbook 44, appendix C).
func TestStylePrints(t *testing.T) {
	const lb, in = 0.45359237, 2.54
	cases := []struct{ got, want string }{
		{metric.Weight(160 * lb), "72.6 kg"},
		{metric.Weight(66), "66 kg"},
		{metric.Weight(65.96), "66 kg"},
		{comma.Weight(72.55), "72,6 kg"},
		{us.Weight(160 * lb), "160 lb"},
		{us.Weight(159.5 * lb), "160 lb"},
		{us.Weight(1.4 * lb), "1.4 lb"},
		{us.Weight(19.46 * lb), "19.5 lb"},
		{us.Weight(19.96 * lb), "20 lb"},
		{us.Weight(-1.44 * lb), "-1.4 lb"},
		{us.Weight(-0.04 * lb), "0 lb"},
		{uk.Weight(160 * lb), "11 st 6 lb"},
		{uk.Weight(167.6 * lb), "12 st"}, // not 11 st 14 lb
		{uk.Weight(167.4 * lb), "11 st 13 lb"},
		{uk.Weight(13.96 * lb), "1 st"},
		{uk.Weight(13.4 * lb), "13.4 lb"},
		{uk.Weight(-15 * lb), "-1 st 1 lb"},
		{uk.Weight(-0.04 * lb), "0 lb"},

		{metric.Height(168), "168 cm"},
		{metric.Height(168.54), "168.5 cm"},
		{comma.Height(168.5), "168,5 cm"},
		{us.Height(65 * in), "5 ft 5 in"},
		{us.Height(65.5 * in), "5 ft 5½ in"},
		{us.Height(60.5 * in), "5 ft ½ in"},
		{us.Height(71.8 * in), "6 ft"}, // not 5 ft 12 in
		{uk.Height(71.7 * in), "5 ft 11½ in"},
		{uk.Height(11.5 * in), "11½ in"},
		{uk.Height(-13 * in), "-1 ft 1 in"},

		{metric.Length(8.44), "8.4 cm"},
		{uk.Length(8.44), "8.4 cm"},
		{us.Length(3.25 * in), "3.3 in"},

		{metric.Energy(1880), "1880 kcal"},
		{metric.Energy(1879.5), "1880 kcal"},
		{metric.EnergyPerDay(1880.4), "1880 kcal a day"},
		{comma.Energy(1880), "7866 kJ"},
		{comma.Energy(2500), "10\u00a0460 kJ"},
		{comma.EnergyPerDay(-0.01), "0 kJ a day"},

		{metric.Grams(87.4), "87 g"},
		{us.Grams(4.46), "4.5 g"},
		{comma.Grams(4.46), "4,5 g"},
		{metric.Grams(9.96), "10 g"},
		{metric.Grams(10.4), "10 g"},

		{metric.Volume(240), "240 ml"},
		{uk.Volume(7.5), "7.5 ml"},
		{us.Volume(236.5882365), "1 cup"},
		{us.Volume(240), "1 cup"},
		{us.Volume(120), "½ cup"},
		{us.Volume(300), "1¼ cups"},
		{us.Volume(473.176473), "2 cups"},
		{us.Volume(14.78676478125), "1 tbsp"},
		{us.Volume(22), "1½ tbsp"},
		{us.Volume(57.5), "¼ cup"}, // 4 tbsp are ¼ cup
		{us.Volume(59.147059125), "¼ cup"},
		{us.Volume(3), "3 ml"},
		{us.Volume(-240), "-240 ml"},

		{metric.Percent(55), "55%"},
		{metric.Percent(55.46), "55.5%"},
		{comma.Percent(55.46), "55,5%"},
		{metric.Percent(-0.04), "0%"},

		{metric.Rate(0.4347), "0.4 kg a week"},
		{metric.Rate(-0.25), "-0.25 kg a week"},
		{comma.Rate(0.25), "0,25 kg a week"},
		{metric.Rate(-0.01), "0 kg a week"},
		{us.Rate(-lb), "-1 lb a week"},
		{uk.Rate(0.4347), "1 lb a week"},

		{metric.Number(2.345, 1), "2.3"},
		{metric.Number(2.5, 0), "3"},
		{metric.Number(-2.5, 0), "-3"},
		{metric.Number(-0.4, 0), "0"},
		{metric.Number(math.Copysign(0, -1), 1), "0.0"},
		{metric.Number(9999, 0), "9999"},
		{metric.Number(9999.96, 1), "10\u00a0000.0"},
		{comma.Number(-1234567.5, 1), "-1\u00a0234\u00a0567,5"},
		{metric.Number(1, -3), "1"},
		{metric.Number(math.NaN(), 1), "–"},
		{metric.Number(math.Inf(-1), 1), "–"},
		{us.Height(unit.Centimetre(math.Inf(1))), "–"},

		{unit.Measure(2).String(), "2"},
		{unit.Measure(1.5).String(), "1½"},
		{unit.Measure(0.5).String(), "½"},
		{unit.Measure(0).String(), "0"},
		{unit.Measure(-0.1).String(), "0"},
		{unit.Measure(-1.5).String(), "-1½"},
		{unit.Measure(-0.5).String(), "-½"},
		{unit.Measure(1.74).String(), "1½"},
		{unit.Measure(1.76).String(), "2"},
		{unit.Measure(math.NaN()).String(), "–"},
	}
	for i, c := range cases {
		if c.got != c.want {
			t.Errorf("case %d: %q, want %q", i, c.got, c.want)
		}
	}
}

func TestEnergyValue(t *testing.T) {
	if v, name := metric.EnergyValue(1880); v != 1880 || name != "kcal" {
		t.Errorf("%v %s", v, name)
	}
	if v, name := comma.EnergyValue(1880); math.Abs(v-7865.92) > 1e-9 || name != "kJ" {
		t.Errorf("%v %s", v, name)
	}
}

func drawStyle(t *rapid.T) unit.Style {
	return unit.Style{
		System:       rapid.SampledFrom([]unit.System{unit.Metric, unit.USCustomary, unit.UKCustomary}).Draw(t, "system"),
		EnergyIn:     rapid.SampledFrom([]unit.EnergyUnit{unit.InKilocalories, unit.InKilojoules}).Draw(t, "energy unit"),
		DecimalComma: rapid.Bool().Draw(t, "comma"),
	}
}

// within fails when the text is not read back, or further off than half of the
// last place that was printed.
func within[T ~float64](t *rapid.T, what, text string, want, got T, err error, half float64) {
	if err != nil || math.Abs(float64(got-want)) > half+noise {
		t.Fatalf("%s %v printed as %q, read as %v, %v", what, want, text, got, err)
	}
}

// The values keep one printed place away from the bounds, where rounding may
// lead out of them.
func TestPrintedIsReadBack(t *testing.T) {
	const lb, in = 0.45359237, 2.54
	rapid.Check(t, func(t *rapid.T) {
		s := drawStyle(t)
		weightStep, heightStep, lengthStep := 0.1, 0.1, 0.1
		if s.System != unit.Metric {
			weightStep, heightStep = lb, in/2
		}
		if s.System == unit.USCustomary {
			lengthStep = in / 10
		}
		w := unit.Kilogram(rapid.Float64Range(20.5, 399.5).Draw(t, "weight"))
		text := s.Weight(w)
		gotW, err := unit.ParseWeight("x", text)
		within(t, "weight", text, w, gotW, err, weightStep/2)

		h := unit.Centimetre(rapid.Float64Range(102, 248).Draw(t, "height"))
		text = s.Height(h)
		gotH, err := unit.ParseHeight("x", text)
		within(t, "height", text, h, gotH, err, heightStep/2)

		l := unit.Centimetre(rapid.Float64Range(1.3, 249).Draw(t, "length"))
		text = s.Length(l)
		gotL, err := unit.ParseLength("x", text)
		within(t, "length", text, l, gotL, err, lengthStep/2)

		energyStep := 1.0
		if s.EnergyIn == unit.InKilojoules {
			energyStep = 1 / 4.184
		}
		e := unit.Kilocalorie(rapid.Float64Range(201, 9999).Draw(t, "energy"))
		for _, text := range []string{s.Energy(e), s.EnergyPerDay(e)} {
			gotE, err := unit.ParseEnergy("x", text)
			within(t, "energy", text, e, gotE, err, energyStep/2)
		}

		rateStep := 0.1
		if s.System != unit.Metric {
			rateStep = 0.1 * lb
		}
		r := unit.KilogramPerWeek(rapid.Float64Range(0.1, 1.9).Draw(t, "rate"))
		text = s.Rate(r)
		gotR, err := unit.ParseRate("x", text)
		within(t, "rate", text, r, gotR, err, rateStep/2)

		p := unit.Percent(rapid.Float64Range(0, 100).Draw(t, "percent"))
		text = s.Percent(p)
		gotP, err := unit.ParsePercent("x", text, 0, 100)
		within(t, "percent", text, p, gotP, err, 0.05)
	})
}

func TestNeverMinusZeroNorUncarried(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawStyle(t)
		v := rapid.OneOf(rapid.Float64Range(-300, 300), rapid.Float64Range(-1, 1), rapid.Float64()).Draw(t, "value")
		for _, text := range []string{
			s.Weight(unit.Kilogram(v)), s.Height(unit.Centimetre(v)), s.Length(unit.Centimetre(v)),
			s.Energy(unit.Kilocalorie(v)), s.Grams(unit.Gram(v)), s.Volume(unit.Millilitre(v)),
			s.Percent(unit.Percent(v)), s.Rate(unit.KilogramPerWeek(v)), unit.Measure(v).String(),
			s.Number(v, rapid.IntRange(-1, 7).Draw(t, "decimals")),
		} {
			digits := strings.TrimRight(strings.TrimPrefix(text, "-"), "abcdefghijklmnopqrstuvwxyzJ% ")
			if strings.HasPrefix(text, "-") && !strings.ContainsAny(digits, "123456789½¼¾") {
				t.Fatalf("%v printed as %q", v, text)
			}
			if strings.Contains(text, " 14 lb") || strings.Contains(text, "ft 12 in") || strings.Contains(text, "e+") {
				t.Fatalf("%v printed as %q", v, text)
			}
		}
	})
}

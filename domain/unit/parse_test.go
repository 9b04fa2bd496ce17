package unit_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"handbreadth/domain/unit"
)

// noise is the tolerance for values converted by hand from the exact
// equivalences: parsing rounds to a billionth of the base unit.
const noise = 2e-9

// The pound and the inch: 1 lb = 0.45359237 kg, 1 in = 2.54 cm, exactly
// (international yard and pound agreement, 1959). 14 lb to the stone, 12 in to
// the foot (UK Weights and Measures Act 1985, schedule 1, from memory).
func TestParseWeightAccepts(t *testing.T) {
	cases := []struct {
		text string
		want float64
	}{
		{"72.5 kg", 72.5},
		{"72,5kg", 72.5},
		{"72,500 kg", 72.5}, // not 72 500: out of bounds
		{"72.500 kg", 72.5},
		{"72500 g", 72.5},
		{"72 500 g", 72.5},
		{"72,500 g", 72.5}, // not 72.5 g: out of bounds
		{"72.500,5 g", 72.5005},
		{"72 500,500 g", 72.5005}, // the space has shown the thousands
		{" 72\u00a0KG. ", 72},
		{"160 lb", 160 * 0.45359237},
		{"160lbs", 160 * 0.45359237},
		{"160.5 Pounds", 160.5 * 0.45359237},
		{"160½ lb", 160.5 * 0.45359237},
		{"11 st 6 lb", 160 * 0.45359237},
		{"11st6", 160 * 0.45359237},
		{"11 stone 6", 160 * 0.45359237},
		{"11 st 6.5 lb", 160.5 * 0.45359237},
		{"11 st 13,9 lb", 167.9 * 0.45359237},
		{"11 st", 154 * 0.45359237},
		{"11½ st", 161 * 0.45359237},
		{"20 kg", 20},
		{"400 kg", 400},
	}
	for _, c := range cases {
		got, err := unit.ParseWeight("weight", c.text)
		if err != nil || math.Abs(float64(got)-c.want) > noise {
			t.Errorf("ParseWeight(%q) = %v, %v; want %v", c.text, got, err, c.want)
		}
	}
}

func TestParseHeightAccepts(t *testing.T) {
	cases := []struct {
		text string
		want float64
	}{
		{"168 cm", 168},
		{"168,5cm", 168.5},
		{"1.68 m", 168},
		{"1,68m", 168},
		{"1.680 m", 168},
		{"1,680 mm", 168},
		{"1680 mm", 168},
		{"1m68", 168},
		{"1 m 68 cm", 168},
		{"1m05", 105},
		{"1m5cm", 105},
		{"2 m", 200},
		{"5 ft 5 in", 65 * 2.54},
		{`5'5"`, 65 * 2.54},
		{"5′5″", 65 * 2.54},
		{"5’5”", 65 * 2.54},
		{"5'5''", 65 * 2.54},
		{"5' 5", 65 * 2.54},
		{"5ft5", 65 * 2.54},
		{"5 feet 5 inches", 65 * 2.54},
		{"5 ft. 5 in.", 65 * 2.54},
		{"5 ft 5½ in", 65.5 * 2.54},
		{"5 ft 5 1/2 in", 65.5 * 2.54},
		{"5'5 3/4\"", 65.75 * 2.54},
		{"5 ft 5.25 in", 65.25 * 2.54},
		{"5 ft 11,5 in", 71.5 * 2.54},
		{"65 in", 65 * 2.54},
		{"5 ft", 60 * 2.54},
		{"5½ ft", 66 * 2.54},
		{"100 cm", 100},
		{"250 cm", 250},
	}
	for _, c := range cases {
		got, err := unit.ParseHeight("height", c.text)
		if err != nil || math.Abs(float64(got)-c.want) > noise {
			t.Errorf("ParseHeight(%q) = %v, %v; want %v", c.text, got, err, c.want)
		}
	}
}

// 1 kcal = 4.184 kJ exactly (thermochemical calorie; FAO Food and Nutrition
// Paper 77, 2003, section 3.6, from memory).
func TestParseEnergyAccepts(t *testing.T) {
	cases := []struct {
		text string
		want float64
	}{
		{"1800 kcal", 1800},
		{"1 800 kcal", 1800},
		{"1\u202f800 kcal", 1800},
		{"1,800 kcal", 1800},
		{"1.800 kcal", 1800}, // 1.8 kcal is out of bounds
		{"1,800.5 kcal", 1800.5},
		{"1.800,5 kcal", 1800.5},
		{"250.125 kcal", 250.125}, // 250125 is out of bounds
		{"1800 kcal/day", 1800},
		{"1800 kcal/d", 1800},
		{"1800 kcal / day", 1800},
		{"1800 kcal per day", 1800},
		{"1800kcal a day", 1800},
		{"1800 Calories", 1800},
		{"7531.2 kJ", 1800},
		{"7,531.2 KJ", 1800},
		{"41840 kJ", 10000},
		{"41 840 kJ", 10000},
		{"7.5312 MJ", 1800},
		{"7,531 MJ", 7531 / 4.184},
		{"200 kcal", 200},
		{"10000 kcal", 10000},
	}
	for _, c := range cases {
		got, err := unit.ParseEnergy("goal.kcal_per_day", c.text)
		if err != nil || math.Abs(float64(got)-c.want) > noise {
			t.Errorf("ParseEnergy(%q) = %v, %v; want %v", c.text, got, err, c.want)
		}
	}
}

func TestParseLengthAndPercentAccept(t *testing.T) {
	for text, want := range map[string]float64{
		"84 mm": 8.4, "8,4 cm": 8.4, "3.25 in": 3.25 * 2.54, `3¼"`: 3.25 * 2.54, "94 cm": 94,
		"½ in": 1.27, "1 cm": 1, "250 cm": 250,
	} {
		if got, err := unit.ParseLength("palm", text); err != nil || math.Abs(float64(got)-want) > noise {
			t.Errorf("ParseLength(%q) = %v, %v; want %v", text, got, err, want)
		}
	}
	for text, want := range map[string]float64{
		"55": 55, "55 %": 55, "55,5%": 55.5, "55.125": 55.125, "55 percent": 55, "55 per cent": 55,
		"0": 0, "0,125 %": 0.125, "100": 100,
	} {
		if got, err := unit.ParsePercent("balance", text, 0, 100); err != nil || float64(got) != want {
			t.Errorf("ParsePercent(%q) = %v, %v; want %v", text, got, err, want)
		}
	}
	if got, err := unit.ParsePercent("x", "1,500", 0, 2000); err == nil || !strings.Contains(err.Error(), "two ways") {
		t.Errorf("1.5 or 1500 was read as %v, %v", got, err)
	}
}

// A pound is exactly 0.45359237 kg (international yard and pound agreement, 1959).
func TestParseRateAccepts(t *testing.T) {
	for text, want := range map[string]float64{
		"0.5 kg": 0.5, "0,5kg a week": 0.5, "500 g": 0.5, "1 lb": 0.45359237, "½ lb/week": 0.226796185,
		"1½ lbs per week": 0.680388555, "0.25 kg / week": 0.25, "1,500 g": 1.5, "0.05 kg/w": 0.05, "2 kg": 2,
	} {
		if got, err := unit.ParseRate("goal.per_week", text); err != nil || math.Abs(float64(got)-want) > noise {
			t.Errorf("ParseRate(%q) = %v, %v; want %v", text, got, err, want)
		}
	}
}

func TestNumbersWithoutUnit(t *testing.T) {
	weight := func(text string, s unit.System) (float64, error) {
		v, err := unit.ParseWeightIn("x", text, s)
		return float64(v), err
	}
	height := func(text string, s unit.System) (float64, error) {
		v, err := unit.ParseHeightIn("x", text, s)
		return float64(v), err
	}
	length := func(text string, s unit.System) (float64, error) {
		v, err := unit.ParseLengthIn("x", text, s)
		return float64(v), err
	}
	rate := func(text string, s unit.System) (float64, error) {
		v, err := unit.ParseRateIn("x", text, s)
		return float64(v), err
	}
	cases := []struct {
		name   string
		read   func(string, unit.System) (float64, error)
		text   string
		system unit.System
		want   float64 // 0: refused
	}{
		{"weight", weight, "72,5", unit.Metric, 72.5},
		{"weight", weight, "160", unit.USCustomary, 160 * 0.45359237},
		{"weight", weight, "70", unit.UKCustomary, 0},
		{"weight", weight, "11st6", unit.UKCustomary, 160 * 0.45359237},
		{"weight", weight, "160 lb", unit.Metric, 160 * 0.45359237},
		{"weight", weight, "72500", unit.Metric, 0},
		{"height", height, "168", unit.Metric, 168},
		{"height", height, "1,68", unit.Metric, 168},
		{"height", height, "1.680", unit.Metric, 168},
		{"height", height, "1680", unit.Metric, 0},
		{"height", height, "65", unit.Metric, 0},
		{"height", height, "65", unit.USCustomary, 65 * 2.54},
		{"height", height, "168", unit.USCustomary, 0},
		{"height", height, "5 5", unit.USCustomary, 0},
		{"height", height, "168", unit.UKCustomary, 0},
		{"height", height, "5'5", unit.UKCustomary, 65 * 2.54},
		{"length", length, "8.4", unit.Metric, 8.4},
		{"length", length, "3.5", unit.USCustomary, 3.5 * 2.54},
		{"length", length, "3.5", unit.UKCustomary, 0},
		{"rate", rate, "0,5", unit.Metric, 0.5},
		{"rate", rate, "1", unit.USCustomary, 0.45359237},
		{"rate", rate, "1", unit.UKCustomary, 0},
		{"rate", rate, "500", unit.Metric, 0},
	}
	for _, c := range cases {
		got, err := c.read(c.text, c.system)
		if (err != nil) != (c.want == 0) || math.Abs(got-c.want) > noise {
			t.Errorf("%s %q in system %d: %v, %v; want %v", c.name, c.text, c.system, got, err, c.want)
		}
	}
	if got, err := unit.ParseEnergyIn("x", "7531.2", unit.InKilojoules); err != nil || math.Abs(float64(got)-1800) > noise {
		t.Errorf("bare kJ: %v, %v", got, err)
	}
	if got, err := unit.ParseEnergyIn("x", "1 800 a day", unit.InKilocalories); err != nil || got != 1800 {
		t.Errorf("bare kcal: %v, %v", got, err)
	}
}

// refuses checks that each text gives a Problem that names field and text, says
// the words and comes with no value.
func refuses[T ~float64](t *testing.T, parse func(field, text string) (T, error), texts map[string]string) {
	t.Helper()
	for text, says := range texts {
		got, err := parse("the.field", text)
		var problem unit.Problem
		if !errors.As(err, &problem) || got != 0 {
			t.Errorf("%q gave %v, %v; want a Problem and no value", text, got, err)
			continue
		}
		if problem.Field != "the.field" || problem.Given != text || !strings.Contains(problem.Accepted, says) {
			t.Errorf("%q: %+v; want it to say %q", text, problem, says)
		}
	}
}

// nonsense is refused for every quantity, whatever unit stands in for U.
func nonsense(unitName, says string) map[string]string {
	texts := map[string]string{}
	for _, text := range []string{
		"", " ", "U", "NaN U", "Inf U", "-70 U", "+70 U", "−70 U", "7e1 U", "70e0 U", "0x46 U", "70_0 U",
		"70 U U", "70 UU", "70 70 U", "70 U 70", "70 U x", "70 U;", "70. U", ".70 U", "70,,5 U", "70,5,5 U", "7,0.5 U",
		"70.5.5 U", "70 U 5 U", "seventy U", "70 furlongs", "70\n\x00U", "1,23,456 U", "0,700,000 U", "1234,567,8 U",
		"1'800 U", "70 U" + strings.Repeat(" ", 100), "99999999999999999999 U", "0 U",
	} {
		texts[strings.ReplaceAll(text, "U", unitName)] = says
	}
	for _, text := range []string{"７０ U", "٧٠ U", "7० U"} {
		texts[strings.ReplaceAll(text, "U", unitName)] = "digits 0 to 9"
	}
	return texts
}

func TestParseRefuses(t *testing.T) {
	refuses(t, unit.ParseWeight, nonsense("kg", "72.5 kg"))
	refuses(t, unit.ParseHeight, nonsense("cm", "168 cm"))
	refuses(t, unit.ParseEnergy, nonsense("kcal", "1800 kcal"))
	refuses(t, unit.ParseLength, nonsense("cm", "8.4 cm"))
	percent := nonsense("%", "1%")
	refuses(t, func(field, text string) (unit.Percent, error) { return unit.ParsePercent(field, text, 1, 99) }, percent)

	refuses(t, unit.ParseWeight, map[string]string{
		"70": "with its unit", "19.9 kg": "20 to 400", "400.1 kg": "20 to 400", "72500 kg": "20 to 400",
		"11 st 14 lb": "under 14", "11 st 15 lb": "under 14", "11.5 st": "under 14", "11,5 st 6 lb": "under 14",
		"0,072 kg": "20 to 400", "10,000,0 g": "20 to 400", "11½5 lb": "11 st 6 lb", "1/25 st": "20 to 400",
		"11 st 6 kg": "11 st 6 lb", "11 lb 6 st": "11 st 6 lb", "11 kg 6": "11 st 6 lb", "11 st 6 lb 2": "11 st 6 lb",
		"160 lb 160 lb": "160 lb", "168 cm": "a weight",
	})
	refuses(t, unit.ParseHeight, map[string]string{
		"168": "with its unit", "99.9 cm": "100 to 250", "250.1 cm": "100 to 250", "16.8 m": "100 to 250",
		"6 ft 12 in": "under 12", "6 ft 14 in": "under 12", "5.5 ft": "under 12", "5.11 ft": "under 12", "5,5 ft 2 in": "under 12",
		"1m6": "two digits", "1m680": "two digits", "1.5m20": "two digits", "1 m 100 cm": "two digits",
		"5 ft 5 cm": "5 ft 6 in", "5 5": "with its unit", "9 ft": "100 to 250", "70 kg": "a height",
	})
	refuses(t, unit.ParseEnergy, map[string]string{
		"1800": "with its unit", "199 kcal": "200 to 10000", "10001 kcal": "200 to 10000", "1800 MJ": "200 to 10000",
		"1800 kcal/week": "1800 kcal", "1800 kcal/": "1800 kcal", "1800 kcal a d": "1800 kcal", "1800 kcal day": "1800 kcal",
		"1800 kcal/day/day": "1800 kcal", "1800 a day": "with its unit",
	})
	refuses(t, unit.ParseRate, nonsense("kg", "0.5 kg"))
	refuses(t, unit.ParseRate, map[string]string{
		"0.5": "with its unit", "0.5 a week": "with its unit", "0.049 kg": "0.05 to 2", "2.01 kg": "0.05 to 2", "5 lb": "0.05 to 2",
		"-0.5 kg": "without a sign", "0.5 kg/day": "0.5 kg", "0.5 kg a month": "0.5 kg", "½ st": "0.5 kg", "0.5 kg/": "0.5 kg",
	})
	refuses(t, func(field, text string) (unit.Percent, error) { return unit.ParsePercent(field, text, 15, 40) }, map[string]string{
		"14.9": "15% to 40%", "40.1 %": "15% to 40%", "20 kg": "15% to 40%", "20 % %": "15% to 40%", "20 per": "15% to 40%",
	})
}

func TestProblemIsOneLine(t *testing.T) {
	_, err := unit.ParseWeight("weight", "7\n0 "+strings.Repeat("é", 200))
	told := err.Error()
	if strings.ContainsAny(told, "\n\r\x00") || len([]rune(told)) > 250 || !strings.HasPrefix(told, `weight: given "7 0 é`) {
		t.Errorf("%q", told)
	}
	_, err = unit.ParseWeight("weight", "")
	if !strings.HasPrefix(err.Error(), "weight: given nothing; accepted: a weight") {
		t.Errorf("%q", err)
	}
}

package unit_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"handbreadth/domain/unit"
)

// on is a date known to exist.
func on(t interface{ Fatal(...any) }, year int, month time.Month, day int) unit.Date {
	d, err := unit.NewDate(year, month, day)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestNewDateRefusesDaysThatDoNotExist(t *testing.T) {
	// Leap years: Gregorian rule, every fourth year but of the centuries only
	// those that 400 divides (bull Inter gravissimas, 1582).
	cases := []struct {
		year  int
		month time.Month
		day   int
		ok    bool
	}{
		{2026, time.March, 2, true},
		{2024, time.February, 29, true},
		{2000, time.February, 29, true},
		{1900, time.February, 29, false},
		{2026, time.February, 29, false},
		{2026, time.April, 31, false},
		{2026, 13, 1, false},
		{2026, 0, 1, false},
		{2026, time.March, 0, false},
		{0, time.March, 1, false},
		{10000, time.March, 1, false},
	}
	for _, c := range cases {
		d, err := unit.NewDate(c.year, c.month, c.day)
		if (err == nil) != c.ok {
			t.Errorf("NewDate(%d, %d, %d): %v, %v", c.year, c.month, c.day, d, err)
		}
		if err != nil && !d.IsZero() {
			t.Errorf("NewDate(%d, %d, %d) refused but returned %v", c.year, c.month, c.day, d)
		}
	}
}

func TestParseDateAccepts(t *testing.T) {
	march2 := on(t, 2026, time.March, 2)
	for _, text := range []string{
		"2026-03-02", "2026-3-2", "2026/03/02", "2/3/2026", "02/03/2026", "2.3.2026", "2-3-2026",
		"2 March 2026", "2 mar 2026", "2nd March 2026", "2-Mar-2026", "2 March, 2026",
		"March 2, 2026", "Mar 2 2026", "MARCH 2nd, 2026", "mar. 2, 2026", "  2 March\u00a02026 ",
	} {
		if d, err := unit.ParseDate("born", text); err != nil || d != march2 {
			t.Errorf("ParseDate(%q) = %v, %v", text, d, err)
		}
	}
	if d, err := unit.ParseDate("born", "9 Sept 1990"); err != nil || d != on(t, 1990, time.September, 9) {
		t.Errorf("short September: %v, %v", d, err)
	}
}

func TestParseDateRefuses(t *testing.T) {
	cases := []struct{ text, says string }{
		{"", "2026-03-02"},
		{"2 mar 26", "four digits"},
		{"2/3/26", "four digits"},
		{"3/13/2026", "day first"}, // month first is not turned round
		{"31/4/2026", "exists"},
		{"29 February 2026", "exists"},
		{"March 2026", "2 March 2026"},
		{"March 22026", "2 March 2026"},
		{"2/3-2026", "2026-03-02"},
		{"2/3", "2026-03-02"},
		{"2 Mars 2026", "2026-03-02"},
		{"2 Ma 2026", "2026-03-02"},
		{"2026-03-02T10:00", "2026-03-02"},
		{"2026-03-02 x", "2026-03-02"},
		{"-2026-03-02", "2026-03-02"},
		{"20266-03-02", "2026-03-02"},
		{"0026-03-02", "1900 to 2199"},
		{"002/3/2026", "2026-03-02"},
		{"2/003/2026", "2026-03-02"},
		{"２/３/２０２６", "digits 0 to 9"},
		{"yesterday", "2026-03-02"},
		{strings.Repeat("1", 200), "2026-03-02"},
	}
	for _, c := range cases {
		d, err := unit.ParseDate("goal.by", c.text)
		var problem unit.Problem
		if !errors.As(err, &problem) {
			t.Errorf("ParseDate(%q) = %v, %v; want a Problem", c.text, d, err)
			continue
		}
		if problem.Field != "goal.by" || problem.Given != c.text || !strings.Contains(problem.Accepted, c.says) {
			t.Errorf("ParseDate(%q): %+v, want it to say %q", c.text, problem, c.says)
		}
	}
}

func TestAgeOn(t *testing.T) {
	born, leap := on(t, 1990, time.May, 17), on(t, 2004, time.February, 29)
	cases := []struct {
		name    string
		born, d unit.Date
		want    unit.Year
	}{
		{"day before the birthday", born, on(t, 2026, time.May, 16), 35},
		{"birthday", born, on(t, 2026, time.May, 17), 36},
		{"earlier month, later day", born, on(t, 2026, time.March, 30), 35},
		{"day of birth", born, born, 0},
		{"before birth", born, on(t, 1990, time.May, 16), -1},
		{"29 February, common year, 28 February", leap, on(t, 2022, time.February, 28), 17},
		{"29 February, common year, 1 March", leap, on(t, 2022, time.March, 1), 18},
		{"29 February, leap year, 28 February", leap, on(t, 2024, time.February, 28), 19},
		{"29 February, leap year, 29 February", leap, on(t, 2024, time.February, 29), 20},
		{"not given", unit.Date{}, born, -1},
		{"other day not given", born, unit.Date{}, -1},
	}
	for _, c := range cases {
		if got := c.born.AgeOn(c.d); got != c.want {
			t.Errorf("%s: %d, want %d", c.name, got, c.want)
		}
	}
}

func TestDateWordsAndDays(t *testing.T) {
	d := on(t, 2026, time.March, 2)
	if d.String() != "2026-03-02" || d.Long() != "2 March 2026" || d.Weekday() != time.Monday {
		t.Errorf("%s, %s, %s", d, d.Long(), d.Weekday())
	}
	// ISO 8601 week calendar: 2026 has 365 days; 182 days are 26 weeks.
	if got := d.AddDays(182); got != on(t, 2026, time.August, 31) || d.DaysUntil(got) != 182 {
		t.Errorf("182 days on: %s", got)
	}
	var none unit.Date
	if none.String() != "" || none.Long() != "" || none.AddDays(3) != none || none.DaysUntil(d) != 0 ||
		none.Before(d) || none.After(d) || d.After(none) {
		t.Error("a date that was not given behaves like one")
	}
	zone := time.FixedZone("east", 14*60*60)
	if got := unit.FromTime(time.Date(2026, 3, 2, 0, 30, 0, 0, zone)); got != d {
		t.Errorf("FromTime keeps its own zone: %s", got)
	}
}

func TestDateAsJSON(t *testing.T) {
	type file struct{ Born, By unit.Date }
	in := file{Born: on(t, 1990, time.May, 17)}
	written, err := json.Marshal(in)
	if err != nil || string(written) != `{"Born":"1990-05-17","By":""}` {
		t.Fatalf("%s, %v", written, err)
	}
	var out file
	if err := json.Unmarshal(written, &out); err != nil || out != in {
		t.Errorf("%+v, %v", out, err)
	}
	if err := json.Unmarshal([]byte(`{"Born":"17 May 90"}`), &out); err == nil {
		t.Error("a two-digit year was read")
	}
}

func drawDate(t *rapid.T, label string) unit.Date {
	first := unit.Date{Year: 1900, Month: time.January, Day: 1}
	return first.AddDays(rapid.IntRange(0, 109571).Draw(t, label)) // to 2199-12-30
}

func TestDatesReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDate(t, "date")
		for _, text := range []string{d.String(), d.Long(), layout(d, "2/1/2006"), layout(d, "Jan 2, 2006")} {
			if got, err := unit.ParseDate("x", text); err != nil || got != d {
				t.Fatalf("%s from %q, %v", got, text, err)
			}
		}
	})
}

func TestDateOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawDate(t, "a"), drawDate(t, "b")
		days := a.DaysUntil(b)
		if a.AddDays(days) != b || b.DaysUntil(a) != -days {
			t.Fatalf("%s to %s: %d days", a, b, days)
		}
		if a.Before(b) != (a.String() < b.String()) || a.After(b) != (a.String() > b.String()) {
			t.Fatalf("order of %s and %s", a, b)
		}
		if !b.Before(a) && a.AgeOn(b) < 0 || b.Before(a) && a.AgeOn(b) >= 0 {
			t.Fatalf("born %s, on %s: %d", a, b, a.AgeOn(b))
		}
	})
}

func FuzzParseDate(f *testing.F) {
	for _, text := range []string{"2026-03-02", "2/3/2026", "2nd Mar 2026", "March 2, 2026", "2 mar 26", "२/3/2026", "1.", "Ma"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		d, err := unit.ParseDate("x", text)
		if err != nil {
			if !d.IsZero() {
				t.Fatalf("%q refused but gave %s", text, d)
			}
			return
		}
		if d.Year < 1900 || d.Year > 2199 {
			t.Fatalf("%q gave %s", text, d)
		}
		if again, err := unit.ParseDate("x", d.String()); err != nil || again != d {
			t.Fatalf("%q gave %s, then %s, %v", text, d, again, err)
		}
	})
}

// layout writes a date through the standard library, for comparison.
func layout(d unit.Date, as string) string {
	return time.Date(d.Year, d.Month, d.Day, 12, 0, 0, 0, time.UTC).Format(as)
}

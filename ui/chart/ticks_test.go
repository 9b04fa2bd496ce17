package chart

import (
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"handbreadth/domain/unit"
)

var systems = []unit.System{unit.Metric, unit.USCustomary, unit.UKCustomary}

func TestWeightTicksAreEvenWholeAndInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		style := unit.Style{System: rapid.SampledFrom(systems).Draw(t, "system")}
		low := unit.Kilogram(rapid.Float64Range(20, 390).Draw(t, "low"))
		high := low + unit.Kilogram(rapid.Float64Range(4, 380).Draw(t, "span"))
		most := rapid.IntRange(2, 10).Draw(t, "most")
		ticks := weightTicks(low, high, most, style)
		if len(ticks) > most {
			t.Fatalf("%d ticks, room for %d", len(ticks), most)
		}
		size := 1.0
		if style.System != unit.Metric {
			size = unit.KilogramPerPound
		}
		for i, tick := range ticks {
			if tick.at < float64(low)-1e-6 || tick.at > float64(high)+1e-6 {
				t.Fatalf("%v lies outside of %v to %v", tick.at, low, high)
			}
			if halves := 2 * tick.at / size; math.Abs(halves-math.Round(halves)) > 1e-6 {
				t.Fatalf("%v is no whole or half of the unit", tick.at)
			}
			if i > 1 && math.Abs((tick.at-ticks[i-1].at)-(ticks[1].at-ticks[0].at)) > 1e-6 {
				t.Fatal("not evenly spaced")
			}
		}
	})
}

// A span as wide as those of courses always has a tick to read it by.
func TestWeightAxisIsNeverBare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		style := unit.Style{System: rapid.SampledFrom(systems).Draw(t, "system")}
		low := unit.Kilogram(rapid.Float64Range(30, 200).Draw(t, "low"))
		span := unit.Kilogram(rapid.Float64Range(float64(leastSpan), 60).Draw(t, "span"))
		if ticks := weightTicks(low, low+span, 5, style); len(ticks) == 0 {
			t.Fatalf("no tick between %v and %v", low, low+span)
		}
	})
}

// Read off by hand: pounds and stones of the international pound of 1959.
func TestWeightTicksInThePracticesUnits(t *testing.T) {
	for _, c := range []struct {
		style unit.Style
		want  string
	}{
		{unit.Style{}, "65 70 75 kg"},
		{unit.Style{System: unit.USCustomary}, "140 150 160 170 lb"},
		{unit.Style{System: unit.UKCustomary}, "10 st 10 st 7 lb 11 st 11 st 7 lb 12 st"},
	} {
		var labels []string
		for _, tick := range weightTicks(63, 78, 6, c.style) {
			labels = append(labels, tick.label)
		}
		if got := strings.Join(labels, " "); got != c.want {
			t.Errorf("%v: %q, want %q", c.style.System, got, c.want)
		}
	}
}

// tenths gives every letter the same room.
func tenths(label string) float32 { return float32(7 * len(label)) }

func TestMonthsInWords(t *testing.T) {
	start := unit.Date{Year: 2026, Month: time.October, Day: 15}
	for _, c := range []struct {
		width float32
		days  int
		want  string
	}{
		{700, 182, "November/2026 December January/2027 February March April"},
		{300, 182, "Nov/2026 Dec Jan/2027 Feb Mar Apr"},
		{300, 365, "January/2027 April July October"},
		{150, 730, "Jan/2027 Jul Jan/2028 Jul"},
	} {
		var words []string
		for _, tick := range monthTicks(start, c.days, c.width, tenths) {
			words = append(words, strings.TrimSuffix(tick.label+"/"+tick.below, "/"))
		}
		if got := strings.Join(words, " "); got != c.want {
			t.Errorf("%v days on %v: %q, want %q", c.days, c.width, got, c.want)
		}
	}
}

func TestMonthTicksAreFirstsAndKeepApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		start := unit.Date{Year: 2026, Month: time.January, Day: 1}.AddDays(rapid.IntRange(0, 1500).Draw(t, "start"))
		days := rapid.IntRange(182, 821).Draw(t, "days")
		width := rapid.Float32Range(180, 1500).Draw(t, "width")
		ticks := monthTicks(start, days, width, tenths)
		if len(ticks) == 0 {
			t.Fatal("half a year without a month")
		}
		years := map[int]bool{}
		for i, tick := range ticks {
			date := start.AddDays(int(tick.at))
			if date.Day != 1 || tick.at < 0 || int(tick.at) > days {
				t.Fatalf("a tick on %v", date)
			}
			if !strings.HasPrefix(date.Month.String(), tick.label) {
				t.Fatalf("%v is called %q", date, tick.label)
			}
			if (tick.below != "") == years[date.Year] {
				t.Fatalf("%v: year %q", date, tick.below)
			}
			years[date.Year] = true
			if i == 0 {
				continue
			}
			before := ticks[i-1]
			apart := float32(tick.at-before.at) * width / float32(days)
			if apart < (tenths(tick.label)+tenths(before.label))/2 {
				t.Fatalf("%s and %s overlap", before.label, tick.label)
			}
		}
	})
}

package chart

import (
	"math"
	"strconv"
	"time"

	"handbreadth/domain/unit"
)

// tick is a mark on an axis.
type tick struct {
	at    float64 // kilograms, or days
	label string
	below string // a second line, such as the year; may be empty
}

// weightSteps are the distances between the ticks of a weight axis, in the
// practice's own unit: kilograms, pounds, or pounds that add up to stones.
var weightSteps = map[unit.System][]float64{
	unit.Metric:      {0.5, 1, 2, 5, 10, 20, 50, 100},
	unit.USCustomary: {1, 2, 5, 10, 20, 50, 100, 200},
	unit.UKCustomary: {1, 2, 7, 14, 28, 70, 140, 280},
}

// weightTicks returns at most so many ticks, at whole multiples of a step of the
// practice's unit. The highest one names the unit.
func weightTicks(low, high unit.Kilogram, most int, style unit.Style) []tick {
	size := unit.Kilogram(1)
	if style.System != unit.Metric {
		size = unit.KilogramPerPound
	}
	from, to := float64(low/size), float64(high/size)
	for _, step := range weightSteps[style.System] {
		first, last := math.Ceil(from/step-1e-9), math.Floor(to/step+1e-9)
		if int(last-first)+1 > most {
			continue
		}
		var ticks []tick
		for n := first; n <= last; n++ {
			ticks = append(ticks, tick{at: n * step * float64(size), label: weightLabel(n*step, n == last, style)})
		}
		return ticks
	}
	return nil
}

func weightLabel(value float64, top bool, style unit.Style) string {
	switch style.System {
	case unit.UKCustomary:
		return style.Weight(unit.Kilogram(value * unit.KilogramPerPound))
	case unit.USCustomary:
		return withUnit(style.Number(value, 0), "lb", top)
	}
	decimals := 0
	if value != math.Trunc(value) {
		decimals = 1
	}
	return withUnit(style.Number(value, decimals), "kg", top)
}

func withUnit(number, name string, shown bool) string {
	if shown {
		return number + " " + name
	}
	return number
}

// monthScale is how densely months are marked: every so many, by the whole name
// or its beginning.
type monthScale struct {
	step  int // months
	whole bool
}

// monthScales are tried in this order.
var monthScales = []monthScale{
	{1, true},
	{1, false},
	{2, true},
	{3, true},
	{3, false},
	{6, true},
	{6, false},
	{12, false},
}

// monthTicks returns a tick for the first of months, as many as the room
// carries. A month's year stands below the first tick and below the first of
// each year. Room returns the width that a label needs.
func monthTicks(start unit.Date, days int, width float32, room func(label string) float32) []tick {
	var ticks []tick
	for _, scale := range monthScales {
		ticks = scale.ticks(start, days)
		if fits(ticks, width/float32(max(1, days)), room) {
			return ticks
		}
	}
	return ticks
}

func (s monthScale) ticks(start unit.Date, days int) []tick {
	var ticks []tick
	year := 0
	for month := (unit.Date{Year: start.Year, Month: start.Month, Day: 1}); ; month = nextMonth(month) {
		day := start.DaysUntil(month)
		if day > days {
			return ticks
		}
		if day < 0 || (int(month.Month)-1)%s.step != 0 {
			continue
		}
		t := tick{at: float64(day), label: s.name(month.Month)}
		if month.Year != year {
			t.below, year = strconv.Itoa(month.Year), month.Year
		}
		ticks = append(ticks, t)
	}
}

func (s monthScale) name(m time.Month) string {
	const beginning = 3
	if name := m.String(); s.whole || len(name) <= beginning {
		return name
	}
	return m.String()[:beginning]
}

func nextMonth(d unit.Date) unit.Date {
	if d.Month == time.December {
		return unit.Date{Year: d.Year + 1, Month: time.January, Day: 1}
	}
	return unit.Date{Year: d.Year, Month: d.Month + 1, Day: 1}
}

// labelGap is the least distance between two labels on the axis.
const labelGap float32 = 10

func fits(ticks []tick, perDay float32, room func(string) float32) bool {
	for i := 1; i < len(ticks); i++ {
		apart := float32(ticks[i].at-ticks[i-1].at) * perDay
		if apart < (room(ticks[i-1].label)+room(ticks[i].label))/2+labelGap {
			return false
		}
	}
	return true
}

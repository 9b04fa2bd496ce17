package chart

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestAxisGoesThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := axis{
			low: rapid.Float64Range(20, 100).Draw(t, "low"), high: rapid.Float64Range(101, 400).Draw(t, "high"),
			from: float32(rapid.Float64Range(0, 100).Draw(t, "from")), to: float32(rapid.Float64Range(200, 1500).Draw(t, "to")),
		}
		if rapid.Bool().Draw(t, "downwards") {
			a.from, a.to = a.to, a.from
		}
		value := rapid.Float64Range(a.low, a.high).Draw(t, "value")
		if back := a.value(a.at(value)); math.Abs(back-value) > 1e-3*(a.high-a.low) {
			t.Errorf("%v comes back as %v", value, back)
		}
		if a.at(a.low) != a.from || math.Abs(float64(a.at(a.high)-a.to)) > 1e-3 {
			t.Errorf("the ends lie at %v and %v", a.at(a.low), a.at(a.high))
		}
	})
}

func TestAnAxisOfOneValueDividesByNothing(t *testing.T) {
	if a := (axis{low: 70, high: 70, from: 3, to: 9}); a.at(70) != 3 || (axis{low: 1, high: 2}).value(5) != 1 {
		t.Error("an axis without a span has no place")
	}
}

func TestSpreadLabelsNeverOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const height, top, bottom = 16, 0, 200
		middles := rapid.SliceOfN(rapid.Float32Range(-50, 250), 0, 6).Draw(t, "middles")
		slices.Sort(middles)
		placed := spread(middles, height, top, bottom)
		for i, y := range placed {
			if y < top+height/2-1e-3 || y > bottom-height/2+1e-3 {
				t.Fatalf("%v lies outside", y)
			}
			if i > 0 && y-placed[i-1] < height-1e-3 {
				t.Fatalf("%v overlap", placed)
			}
		}
	})
}

func TestSpreadLeavesWhatFitsAlone(t *testing.T) {
	given := []float32{20, 60, 120}
	if got := spread(given, 16, 0, 200); !slices.Equal(got, given) {
		t.Errorf("%v", got)
	}
}

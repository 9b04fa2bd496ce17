package reports

import (
	"math"

	"handbreadth/domain/unit"
)

// scale places values along one direction of a chart.
type scale struct {
	low, high float64 // of the values
	from, to  float64 // where these two lie on the page
}

func (s scale) at(v float64) float64 {
	if s.high <= s.low {
		return s.from
	}
	return s.from + (v-s.low)/(s.high-s.low)*(s.to-s.from)
}

// The steps between marks. Weights are told in kilograms, or in pounds, of which
// fourteen make a stone.
var (
	kilogramSteps = []float64{0.5, 1, 2, 5, 10, 20, 50}
	poundSteps    = []float64{1, 2, 5, 10, 20, 50, 100}
	stoneSteps    = []float64{1, 2, 7, 14, 28, 56, 112}
	weekSteps     = []float64{1, 2, 4, 8, 13, 26}
)

// The most spaces between the marks of an axis.
const (
	mostWeightSteps = 6
	mostWeekSteps   = 9
)

// stepOf returns the smallest step that cuts a span into so many or fewer.
func stepOf(steps []float64, span float64, most int) float64 {
	for _, s := range steps {
		if span/s <= float64(most) {
			return s
		}
	}
	last := steps[len(steps)-1]
	return last * math.Ceil(span/last/float64(most))
}

// weightMarks returns round weights, in the practice's unit, from the last at or
// under the lowest to the first at or over the highest.
func weightMarks(s unit.System, low, high unit.Kilogram) []unit.Kilogram {
	steps, one := kilogramSteps, 1.0
	switch s {
	case unit.USCustomary:
		steps, one = poundSteps, unit.KilogramPerPound
	case unit.UKCustomary:
		steps, one = stoneSteps, unit.KilogramPerPound
	}
	const edges = 2 // the marks beyond both ends may add one space each
	from, to := float64(low)/one, float64(high)/one
	step := stepOf(steps, to-from, mostWeightSteps-edges)
	var marks []unit.Kilogram
	for n := math.Floor(from/step + 1e-9); ; n++ {
		marks = append(marks, unit.Kilogram(n*step*one))
		if n*step >= to-1e-9 && len(marks) > 1 {
			return marks
		}
	}
}

// weekMarks returns whole weeks from 0 to the end of a course, evenly spaced.
func weekMarks(days int) []int {
	weeks := float64(days) / daysInWeek
	step := stepOf(weekSteps, weeks, mostWeekSteps)
	var marks []int
	for n := 0.0; n*step <= weeks+1e-9; n++ {
		marks = append(marks, int(n*step))
	}
	return marks
}

const daysInWeek = 7

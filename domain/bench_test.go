package domain

import (
	"sync"
	"sync/atomic"
	"testing"

	"handbreadth/domain/energy"
	"handbreadth/domain/food"
)

func benchmarkPlan(b *testing.B, in Intake) {
	b.Helper()
	for b.Loop() {
		if _, err := NewPlan(in); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkNewPlan(b *testing.B) { benchmarkPlan(b, exampleIntake()) }

// BenchmarkNewPlanWorst takes a goal ten years away, six meals of much energy and
// every estimate of the body.
func BenchmarkNewPlanWorst(b *testing.B) {
	in := exampleIntake()
	in.Client.EquationSex, in.Height, in.Weight = energy.Male, 200, 180
	in.Body = BodyMeasures{Neck: 46, Waist: 140, Hip: 140}
	in.Activity = energy.Activity{PAL: 2.2}
	in.Goal = energy.Goal{Kind: energy.Lose, Weight: 150, By: in.Date.AddDays(LongestGoal)}
	in.MealsPerDay, in.Pattern, in.CarbFatBalance = MostMeals, food.Vegan, 90
	benchmarkPlan(b, in)
}

// BenchmarkRandomPlans tells how many plans of random intakes are made in a
// second on every processor, as a run of a million does.
func BenchmarkRandomPlans(b *testing.B) {
	intakes := make([]Intake, 512)
	for i := range intakes {
		intakes[i] = intakeOf(i)
	}
	var next atomic.Int64
	var workers sync.WaitGroup
	b.ResetTimer()
	for range 2 {
		workers.Go(func() {
			for n := int(next.Add(1)); n <= b.N; n = int(next.Add(1)) {
				// An intake that is refused takes its time too.
				_, _ = NewPlan(intakes[n%len(intakes)])
			}
		})
	}
	workers.Wait()
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "plans/s")
}

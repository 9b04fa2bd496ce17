package energy

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

var today = unit.Date{Year: 2026, Month: time.March, Day: 2}

func at(maintenance unit.Kilocalorie, sex Sex, weight unit.Kilogram, g Goal) Outcome {
	return Work(GoalInput{Goal: g, Today: today, Sex: sex, Weight: weight, Maintenance: derive.Exact(maintenance)})
}

// The static rule by hand: 7 lb in 49 days is 3500 x 7 / 49 = 500 kcal a day
// (Wishnofsky 1958: 3500 kcal a pound).
func TestGoalByDateIsTheStaticRule(t *testing.T) {
	const pounds = 7 * unit.KilogramPerPound
	out := at(2200, Female, 80, Goal{Kind: Lose, Weight: 80 - pounds, By: today.AddDays(49)})
	if math.Abs(float64(out.Target.Value)-1700) > 1e-6 {
		t.Errorf("target %v, want 1700", out.Target.Value)
	}
	if want := -unit.KilogramPerPound; math.Abs(float64(out.Rate.Value)-want) > 1e-9 {
		t.Errorf("rate %v kg a week, want one pound down", out.Rate.Value)
	}
	if out.ReachedOn != today.AddDays(49) {
		t.Errorf("reached on %v, want %v", out.ReachedOn, today.AddDays(49))
	}
}

func TestGoalWithoutDate(t *testing.T) {
	cases := []struct {
		name        string
		maintenance unit.Kilocalorie
		sex         Sex
		goal        Goal
		want        unit.Kilocalorie
	}{
		{"customary deficit", 2200, Female, Goal{Kind: Lose}, 1700},
		{"stops at the least energy", 1500, Female, Goal{Kind: Lose}, 1200},
		{"men stop at 1500", 1800, Male, Goal{Kind: Lose, Weight: 70}, 1500},
		{"never above maintenance", 1100, Female, Goal{Kind: Lose}, 1100},
		{"maintain", 2000, Male, Goal{Kind: Maintain}, 2000},
		{"gain", 2000, Male, Goal{Kind: Gain}, 2360},
		{"energy wins", 2000, Male, Goal{Kind: Lose, Energy: 1650}, 1650},
	}
	for _, c := range cases {
		if got := at(c.maintenance, c.sex, 80, c.goal).Target.Value; got != c.want {
			t.Errorf("%s: target %v, want %v", c.name, got, c.want)
		}
	}
}

// Slater 2019, Front Nutr 6:131 (seen in a secondary copy): 1500-2000 kJ a day.
func TestDefaultSurplusIsInsideItsSource(t *testing.T) {
	if kj := DefaultSurplus.Kilojoules(); kj < 1500 || kj > 2000 {
		t.Errorf("%v kJ", kj)
	}
}

// The guards: 1 % of weight and 1 kg a week (NIH 1998, from memory).
func TestTooFastAtTheEdges(t *testing.T) {
	perDay := func(loss unit.Kilogram) unit.Kilocalorie {
		return unit.Kilocalorie(float64(loss) * StaticEnergyPerKilogram / 7)
	}
	cases := []struct {
		weight, loss unit.Kilogram
		want         bool
	}{{80, 0.8, false}, {80, 0.81, true}, {150, 1.0, false}, {150, 1.01, true}, {60, 0.59, false}}
	for _, c := range cases {
		out := at(3000, Male, c.weight, Goal{Kind: Lose, Energy: 3000 - perDay(c.loss)})
		if out.TooFast != c.want {
			t.Errorf("%v kg losing %v kg a week: too fast %v, want %v", c.weight, c.loss, out.TooFast, c.want)
		}
	}
}

func TestEarliestSafeDateIsSafe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		maintenance := unit.Kilocalorie(rapid.Float64Range(1000, 4000).Draw(t, "maintenance"))
		weight := unit.Kilogram(rapid.Float64Range(50, 200).Draw(t, "weight"))
		goal := weight * unit.Kilogram(rapid.Float64Range(0.7, 0.98).Draw(t, "share"))
		sex := rapid.SampledFrom([]Sex{Female, Male}).Draw(t, "sex")
		days := rapid.IntRange(1, 400).Draw(t, "days")
		out := at(maintenance, sex, weight, Goal{Kind: Lose, Weight: goal, By: today.AddDays(days)})
		if !out.Lowers() {
			t.Fatalf("losing raises: %+v", out)
		}
		if out.SafeDate.IsZero() {
			if maintenance > LeastEnergy(sex)+1 {
				t.Fatalf("no safe date although %v leaves room", maintenance)
			}
			return
		}
		again := at(maintenance, sex, weight, Goal{Kind: Lose, Weight: goal, By: out.SafeDate})
		if again.TooFast || again.Target.Value < LeastEnergy(sex)-1e-6 || -again.Change > MostDeficit+1e-6 {
			t.Fatalf("the safe date is not safe: %+v", again)
		}
	})
}

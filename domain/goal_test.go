package domain

import (
	"math"
	"math/rand/v2"
	"testing"

	"handbreadth/domain/body"
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// outcomeOf works a goal out by the model, whatever the screening says of it.
func outcomeOf(in Intake) (Plan, energy.Outcome) {
	p := Plan{Intake: in, Age: in.Age()}
	p.BMI = bodyMassIndex(in.Weight, in.Height)
	p.Body = composition(in)
	p.spend()
	return p, energy.Work(p.goalInput(courseOf(p)))
}

// guarded are the codes of the findings that the guards give.
var guarded = map[string]bool{
	"rate_fast": true, "energy_low": true, "energy_very_low": true, "deficit_large": true, "below_resting": true,
}

func guardOf(in Intake, o energy.Outcome, p Plan) string {
	for _, f := range screen.Findings(in.Screening, screen.Facts{
		Age: p.Age, Sex: in.Client.EquationSex, BMI: p.BMI.Value, Goal: in.Goal.Kind, Outcome: o, Resting: p.Resting.Value,
	}) {
		if guarded[f.Code] {
			return f.Code
		}
	}
	return ""
}

// losingIntake returns a random adult who wants to lose weight.
func losingIntake(number int) Intake {
	d := seeded{rand.New(rand.NewPCG(7, uint64(number)))}
	in := randomIntake(d)
	in.Client.Born = in.Date.AddDays(-d.whole(19*365, 90*365))
	in.Reproduction, in.Screening = energy.Reproduction{}, screen.Answers{}.AllNo()
	weight := max(LeastWeight, in.Weight*unit.Kilogram(d.number(0.6, 0.995)))
	in.Goal = energy.Goal{Kind: energy.Lose, Weight: weight, By: in.Date.AddDays(d.whole(1, 900))}
	return in
}

// A plan by the safe date, and one by the safe energy, is inside every guard;
// a day earlier is not. Where no date is safe, the safe energy settles before.
func TestSafeDateIsSafeAndTheEarliest(t *testing.T) {
	dated, undated := 0, 0
	for number := range 3000 {
		in := losingIntake(number)
		if in.Validate() != nil {
			continue
		}
		p, wished := outcomeOf(in)
		byEnergy := in
		byEnergy.Goal = energy.Goal{Kind: energy.Lose, Weight: in.Goal.Weight, Energy: wished.SafeEnergy}
		_, safe := outcomeOf(byEnergy)
		if code := guardOf(byEnergy, safe, p); code != "" && safe.Lowers() {
			t.Fatalf("losingIntake(%d): the safe energy of %v gives %s", number, wished.SafeEnergy, code)
		}
		if wished.SafeDate.IsZero() {
			undated++
			if !safe.ReachedOn.IsZero() && p.Maintenance.Value-wished.SafeEnergy > 1 {
				t.Fatalf("losingIntake(%d): no safe date, although %v reaches it on %v", number, wished.SafeEnergy, safe.ReachedOn)
			}
			continue
		}
		dated++
		by := func(date unit.Date) energy.Outcome {
			again := in
			again.Goal.By = date
			_, o := outcomeOf(again)
			if code := guardOf(again, o, p); date == wished.SafeDate && code != "" {
				t.Fatalf("losingIntake(%d): the safe date %v gives %s: %v kcal", number, date, code, o.Target.Value)
			}
			return o
		}
		by(wished.SafeDate)
		if wished.SafeDate == in.Date.AddDays(1) {
			continue
		}
		if earlier := by(wished.SafeDate.AddDays(-1)); !earlier.TooFast && earlier.Target.Value > wished.SafeEnergy+0.2 {
			t.Fatalf("losingIntake(%d): a day earlier is as safe: %v kcal, the safe energy is %v", number, earlier.Target.Value, wished.SafeEnergy)
		}
	}
	if dated < 1000 || undated < 100 {
		t.Errorf("%d with a safe date, %d without: too few to say anything", dated, undated)
	}
}

// The target by date leads the course to the wish on the day, by the model, and
// the static rule stands beside it with its own figure.
func TestGoalByDateIsReached(t *testing.T) {
	p := planOf(t, func(*Intake) {})
	in, days := p.Intake, p.Intake.Date.DaysUntil(p.Intake.Goal.By)
	if p.Projection.Reached != days || p.Goal.ReachedOn != in.Goal.By {
		t.Errorf("reached on day %d, wished for day %d", p.Projection.Reached, days)
	}
	if off := math.Abs(float64(p.Projection.Bands[days].Weight - in.Goal.Weight)); off > 0.001 {
		t.Errorf("%v kg on the day, wished %v", p.Projection.Bands[days].Weight, in.Goal.Weight)
	}
	// By hand: the rule asks for (72.6 - 66) x 3500 / 0.45359237 / 182 less a day.
	static := float64(p.Maintenance.Value) - 6.6*3500/unit.KilogramPerPound/182
	if math.Abs(float64(p.Goal.StaticTarget.Value)-static) > 1e-6 {
		t.Errorf("the rule asks for %v, want %v", p.Goal.StaticTarget.Value, static)
	}
	promise := p.Projection.Promise
	if promise.Day != days || promise.Promised != 66 || math.Abs(float64(promise.Energy)-static) > 1e-6 || len(promise.Expected.Steps) == 0 {
		t.Errorf("promise %+v", promise)
	}
	if promise.Expected.Value < 66.2 || promise.Expected.Value > 69 {
		t.Errorf("at the rule's energy the model expects %v", promise.Expected.Value)
	}
}

// A weekly rate asks for the same as the date that it comes to.
func TestGoalByRateIsAGoalByDate(t *testing.T) {
	byRate := planOf(t, func(in *Intake) {
		in.Goal = energy.Goal{Kind: energy.Lose, Weight: 68.6, PerWeek: 0.25} // 4 kg in 16 weeks
	})
	byDate := planOf(t, func(in *Intake) {
		in.Goal = energy.Goal{Kind: energy.Lose, Weight: 68.6, By: in.Date.AddDays(16 * 7)}
	})
	if byRate.Targets.Energy.Value != byDate.Targets.Energy.Value || byRate.Goal.ReachedOn != byDate.Goal.ReachedOn {
		t.Errorf("by rate %v on %v, by date %v on %v", byRate.Targets.Energy.Value, byRate.Goal.ReachedOn, byDate.Targets.Energy.Value, byDate.Goal.ReachedOn)
	}
	if math.Abs(float64(byRate.Goal.MeanRate.Value)+0.25) > 1e-9 {
		t.Errorf("mean rate %v", byRate.Goal.MeanRate.Value)
	}
	// Without a weight the rate is looked at over twelve weeks.
	open := planOf(t, func(in *Intake) { in.Goal = energy.Goal{Kind: energy.Lose, PerWeek: 0.25} })
	if off := float64(open.Projection.Bands[84].Weight) - (72.6 - 3); math.Abs(off) > 0.001 || open.Projection.Reached != 0 {
		t.Errorf("%v kg off after twelve weeks, reached on day %d", off, open.Projection.Reached)
	}
	gain := planOf(t, func(in *Intake) { in.Goal = energy.Goal{Kind: energy.Gain, PerWeek: 0.2, Weight: 75} })
	if !gain.Goal.Raises() || math.Abs(float64(gain.Goal.MeanRate.Value)-0.2) > 0.002 {
		t.Errorf("gain: change %v, mean rate %v", gain.Goal.Change, gain.Goal.MeanRate.Value)
	}
}

// What no energy brings is said, and nothing is changed silently.
func TestImpossibleWishesAreSaid(t *testing.T) {
	in := exampleIntake()
	in.Goal = energy.Goal{Kind: energy.Lose, Weight: 60, By: in.Date.AddDays(14)}
	if _, o := outcomeOf(in); !o.OutOfReach || o.Target.Value != 0 || !o.ReachedOn.IsZero() || o.SafeDate.IsZero() {
		t.Errorf("a loss: %+v", o)
	}
	if p, err := NewPlan(in); err != nil || !p.Gate.Referred() || !p.OutOfReach {
		t.Errorf("a loss that cannot be: %v, referred %v, out of reach %v", err, p.Gate.Referred(), p.OutOfReach)
	}
	for field, goal := range map[string]energy.Goal{
		FieldGoalBy:      {Kind: energy.Gain, Weight: 280, By: in.Date.AddDays(14)},
		FieldGoalPerWeek: {Kind: energy.Gain, Weight: 280, PerWeek: 2},
		FieldActivity:    {Kind: energy.Gain},
	} {
		in.Goal, in.Height, in.Weight, in.Activity = goal, 200, 230, energy.Activity{PAL: 2.3}
		if field == FieldActivity {
			in.Weight, in.Activity.PAL = 300, 2.5
		}
		_, err := NewPlan(in)
		problems, _ := err.(unit.Problems)
		if len(problems) != 1 || problems[0].Field != field {
			t.Errorf("a gain that cannot be: %v, want a problem with %s", err, field)
		}
	}
}

// A weight that an energy does not reach: the weight at which it settles is told.
func TestShortOfTheGoal(t *testing.T) {
	p := planOf(t, func(in *Intake) { in.Goal = energy.Goal{Kind: energy.Lose, Weight: 60, Energy: 2050} })
	pr := p.Projection
	if !pr.Short || pr.Reached != 0 || !p.Goal.ReachedOn.IsZero() || len(pr.Settles.Steps) == 0 {
		t.Fatalf("short %v, reached on day %d, settles at %v", pr.Short, pr.Reached, pr.Settles.Value)
	}
	if pr.Settles.Value <= 60 || pr.Settles.Value >= pr.Final.Value {
		t.Errorf("settles at %v, after %d days %v", pr.Settles.Value, len(pr.Bands)-1, pr.Final.Value)
	}
	c := courseOf(p)
	if off := body.After(c.start, body.Phase{Days: 20 * 365, Energy: 2050}).Weight - pr.Settles.Value; math.Abs(float64(off)) > 0.01 {
		t.Errorf("after twenty years %v beside where it settles", off)
	}
}

// With pregnancy the model does not speak: the static rule decides and no course
// is drawn. Maintenance has what the pregnancy takes.
func TestPregnancyIsNotFollowed(t *testing.T) {
	without := planOf(t, func(in *Intake) { in.Goal = energy.Goal{Kind: energy.Maintain} })
	for name, change := range map[string]func(*Intake){
		"told":     func(in *Intake) { in.Reproduction.Weeks = 30 },
		"answered": func(in *Intake) { in.Screening = in.Screening.With(screen.Pregnant, screen.Yes) },
	} {
		p := planOf(t, func(in *Intake) {
			in.Goal = energy.Goal{Kind: energy.Maintain}
			change(in)
		})
		if p.Projection != nil || p.Issuable() {
			t.Errorf("%s: projection %v, issuable %v", name, p.Projection, p.Issuable())
		}
		// EFSA 2013 (seen): 500 kcal in the third trimester and for the first
		// half-year of breastfeeding, the highest where no stage was told.
		want := without.Maintenance.Value + 500
		if p.Maintenance.Value != want || p.Targets.Energy.Value != want {
			t.Errorf("%s: maintenance %v, target %v, want %v", name, p.Maintenance.Value, p.Targets.Energy.Value, want)
		}
	}
}

// The default deficit stays above the least energy and resting energy, so that
// the program's own choice never raises a guard.
func TestDefaultDeficitRaisesNoGuard(t *testing.T) {
	for number := range 2000 {
		in := losingIntake(number)
		in.Goal = energy.Goal{Kind: energy.Lose}
		if in.Validate() != nil {
			continue
		}
		p, o := outcomeOf(in)
		if code := guardOf(in, o, p); code != "" && o.Lowers() {
			t.Fatalf("losingIntake(%d): %v kcal gives %s", number, o.Target.Value, code)
		}
		if o.Raises() {
			t.Fatalf("losingIntake(%d): losing raises energy by %v", number, o.Change)
		}
	}
}

func TestAnEstimateOfLeanMassIsSaid(t *testing.T) {
	note := func(change func(*Intake)) (energy.Comparison, derive.Derived[unit.Kilocalorie]) {
		p := planOf(t, change)
		for _, c := range p.Equations {
			if c.Equation.Code == energy.KatchMcArdle {
				return c, p.Resting
			}
		}
		t.Fatal("the equation is missing")
		return energy.Comparison{}, p.Resting
	}
	estimated, _ := note(func(*Intake) {})
	measured, _ := note(func(in *Intake) { in.Body.Fat = 32 })
	if estimated.Suits || estimated.Note == "" || !estimated.Worked {
		t.Errorf("estimated: %+v", estimated)
	}
	if !measured.Suits || measured.Note != "" {
		t.Errorf("measured: %+v", measured)
	}
	width := func(c energy.Comparison) float64 {
		return float64(c.Resting.High-c.Resting.Low) / float64(c.Resting.Value)
	}
	if width(estimated) <= width(measured) || width(measured) <= 2*energy.RestingBand {
		t.Errorf("widths: estimated %v, measured %v", width(estimated), width(measured))
	}
}

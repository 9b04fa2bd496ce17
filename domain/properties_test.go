package domain

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"reflect"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// usualPlans is how many random plans the properties are tried on; the
// environment variable HANDBREADTH_PLANS asks for another number.
const usualPlans = 20000

func plansToTry(t *testing.T) int {
	text := os.Getenv("HANDBREADTH_PLANS")
	if text == "" {
		if testing.Short() {
			return usualPlans / 10
		}
		return usualPlans
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 {
		t.Fatalf("HANDBREADTH_PLANS is %q; accepted: a number of plans", text)
	}
	return n
}

// intakeOf returns the random intake of a number: the same one each time.
func intakeOf(number int) Intake {
	return randomIntake(seeded{rand.New(rand.NewPCG(20260302, uint64(number)))})
}

// tally counts what the random plans were, so that none of the properties can
// hold for want of plans.
type tally struct{ refused, referred, held, issuable, lowering, wished, followed atomic.Int64 }

// Over random intakes: nothing inside the scope of a refer, or of a hold without
// its reason, may be issued, nor under the floors without its finding; what was
// not asked is never no; fat is never under its floor; grams times factors are
// the energy; every number has a derivation with a source.
func TestNothingUnsafeIsIssued(t *testing.T) {
	plans := plansToTry(t)
	if !holdsDerived(reflect.TypeFor[Plan]()) { // and remember it, before the workers ask
		t.Fatal("no number of a plan has a derivation")
	}
	var counts tally
	var next, failed atomic.Int64
	var workers sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		workers.Go(func() {
			for number := int(next.Add(1)); number <= plans && failed.Load() < 5; number = int(next.Add(1)) {
				if err := judgeRandom(intakeOf(number), &counts); err != nil {
					failed.Add(1)
					t.Errorf("intakeOf(%d): %v", number, err)
				}
			}
		})
	}
	workers.Wait()
	t.Logf("%d plans: %d refused, %d referred, %d held, %d may be issued, %d of these lower weight, %d have wishes; %d are followed",
		plans, counts.refused.Load(), counts.referred.Load(), counts.held.Load(), counts.issuable.Load(), counts.lowering.Load(), counts.wished.Load(), counts.followed.Load())
	for name, c := range map[string]*atomic.Int64{"referred": &counts.referred, "held": &counts.held, "issuable": &counts.issuable, "lowering": &counts.lowering, "wished": &counts.wished} {
		if share := float64(c.Load()) / float64(plans); share < 0.03 {
			t.Errorf("only %.1f %% of the plans are %s", 100*share, name)
		}
	}
	if share := float64(counts.refused.Load()) / float64(plans); share > 0.1 {
		t.Errorf("%.1f %% of the intakes were refused", 100*share)
	}
}

func judgeRandom(in Intake, counts *tally) error {
	p, err := NewPlan(in)
	if err != nil {
		counts.refused.Add(1)
		if problems, ok := err.(unit.Problems); !ok || len(problems) == 0 {
			return fmt.Errorf("refused without naming a field: %w", err)
		}
		return nil
	}
	switch {
	case p.Gate.Referred():
		counts.referred.Add(1)
	case p.Gate.Held():
		counts.held.Add(1)
	case p.Issuable():
		counts.issuable.Add(1)
		if p.Goal.Lowers() {
			counts.lowering.Add(1)
		}
		if len(p.Intake.Hand.Wishes) > 0 {
			counts.wished.Add(1)
		}
	}
	if p.Projection != nil {
		counts.followed.Add(1)
	}
	for _, check := range []func(Plan) error{stopped, unsafeStates, broughtStops, belowFloors, splits, sourced, projected} {
		if err := check(p); err != nil {
			return err
		}
	}
	return nil
}

// does says again, from the plan alone, what it would do.
func does(p Plan) derive.Scope {
	scope := derive.ScopePlan
	if p.Targets == nil {
		return scope
	}
	t := p.Targets
	switch change := t.Energy.Value - p.Maintenance.Value; {
	case change < -0.5:
		scope |= derive.ScopeDeficit
	case change > 0.5:
		scope |= derive.ScopeSurplus
	}
	if math.Abs(float64(t.Protein.Value)-0.8*float64(p.Intake.Weight)) > 1e-6 {
		scope |= derive.ScopeProtein
	}
	if 4*float64(t.Split.Total.Value) < 0.45*float64(t.Energy.Value)-1e-3 && p.Intake.Counting == macro.CountTotal {
		scope |= derive.ScopeCarbohydrate
	}
	if p.Intake.UsualFibre == 0 || t.Fibre.Value > p.Intake.UsualFibre {
		scope |= derive.ScopeFibre
	}
	return scope
}

// stopped: a refer, or a hold without its reason, that covers what the plan does
// keeps it from being issued; a referred plan has no target.
func stopped(p Plan) error {
	if p.Gate.Referred() != (p.Targets == nil) || p.Gate.Referred() && (p.Goal != nil || p.Projection != nil) {
		return fmt.Errorf("referred %v, but targets %v, goal %v, projection %v", p.Gate.Referred(), p.Targets != nil, p.Goal != nil, p.Projection != nil)
	}
	if !p.Issuable() {
		return nil
	}
	scope := does(p)
	for _, f := range p.Findings {
		if !f.Scope.Covers(scope) {
			continue
		}
		if f.Level == derive.Refer || f.Level == derive.Hold && strings.TrimSpace(p.Intake.Reasons[f.Code].Text) == "" {
			return fmt.Errorf("issued although %s says %s on %s: %s", f.Code, f.Level, f.Scope, f.Text)
		}
	}
	return nil
}

// unsafeStates names again what safety asks for, apart from the findings.
func unsafeStates(p Plan) error {
	if !p.Issuable() {
		return nil
	}
	in, lowers := p.Intake, p.Goal.Lowers()
	goal := unit.KilogramPerSquareMetre(math.Inf(1))
	if in.Goal.Weight != 0 {
		goal = unit.BMI(in.Goal.Weight, in.Height)
	}
	told := func(c screen.Code) bool { return in.Screening.Yes(c) }
	for name, unsafe := range map[string]bool{
		"under 18":                      p.Age < 18,
		"underweight, losing":           p.BMI.Value < 18.5 && lowers,
		"a BMI under 16":                p.BMI.Value < 16,
		"a goal that is underweight":    goal < 18.5,
		"pregnant, losing":              (told(screen.Pregnant) || in.Reproduction.Told()) && lowers,
		"pregnant, without a reason":    (told(screen.Pregnant) || in.Reproduction.Told()) && !in.Reasons[string(screen.Pregnant)].Given(),
		"an eating disorder":            told(screen.EatingDisorderNow),
		"a SCOFF of 2 or more":          in.Scored.Scores[screen.SCOFF].Asked && in.Scored.Scores[screen.SCOFF].Points >= 2,
		"suicidal thoughts":             told(screen.SuicidalThoughts),
		"type 1 diabetes":               told(screen.Type1Diabetes),
		"severe kidney disease":         told(screen.KidneySevere),
		"under 800 kcal":                lowers && p.Targets.Energy.Value < 800,
		"a question that was not asked": len(screen.Unasked(in.Screening)) > 0 && !in.Reasons[screen.NotAskedCode].Given(),
	} {
		if unsafe {
			return fmt.Errorf("issued: %s", name)
		}
	}
	return nil
}

// belowFloors: a target under a floor has its finding.
func belowFloors(p Plan) error {
	if p.Targets == nil {
		return nil
	}
	found := map[string]bool{}
	for _, f := range p.Findings {
		found[f.Code] = true
	}
	target := p.Targets.Energy.Value
	least := unit.Kilocalorie(1200)
	if p.Intake.Client.EquationSex == energy.Male {
		least = 1500
	}
	loss := -7 * float64(p.Goal.Change) * unit.KilogramPerPound / 3500
	for code, must := range map[string]bool{
		"energy_low":    target < least,
		"rate_fast":     loss > math.Min(1, 0.01*float64(p.Intake.Weight))+1e-6,
		"deficit_large": p.Goal.Change < -1000.001,
		"below_resting": p.Goal.Lowers() && target < p.Resting.Value-1e-6,
	} {
		if must && !found[code] {
			return fmt.Errorf("%v kcal, change %v: no %s", target, p.Goal.Change, code)
		}
	}
	return nil
}

// splits: fat holds its floors, and grams times factors are the energy.
func splits(p Plan) error {
	if p.Targets == nil {
		return nil
	}
	t, target := p.Targets, math.Max(0, float64(p.Targets.Energy.Value))
	fat, floor := 9*float64(t.Fat.Value), math.Max(0.15, float64(p.Intake.FatFloor)/100)
	if p.BMI.Value < 18.5 || p.Intake.Client.EquationSex == energy.Female && p.Age <= 49 {
		floor = math.Max(floor, 0.20)
	}
	if fat < floor*target-1e-6 {
		return fmt.Errorf("fat brings %v of %v kcal, the floor is %v", fat, target, floor)
	}
	sum := 4*float64(t.Protein.Value) + fat + 4*float64(t.Carbohydrate.Value)
	if p.Intake.Counting == macro.CountAvailable {
		sum += 2 * float64(t.Fibre.Value)
	}
	if math.Abs(sum-target) > 1e-6 {
		return fmt.Errorf("grams bring %v, the target is %v", sum, target)
	}
	return nil
}

// projected: the course goes where it is said to go.
func projected(p Plan) error {
	pr := p.Projection
	if pr == nil {
		return nil
	}
	days := 0
	for _, phase := range pr.Phases {
		days += phase.Days
	}
	if len(pr.Bands) != days+1 || days > LongestGoal+HeldFor {
		return fmt.Errorf("%d days in phases of %d", len(pr.Bands), days)
	}
	for i, b := range pr.Bands {
		if b.Day != i || !(b.Low <= b.Weight && b.Weight <= b.High) || math.IsInf(float64(b.High-b.Low), 0) {
			return fmt.Errorf("band %d: %+v", i, b)
		}
	}
	if pr.Reached > 0 {
		// A goal by energy is reached in the course of a day.
		if off := math.Abs(float64(pr.Bands[pr.Reached].Weight - pr.Goal)); off > 1 || p.Intake.Goal.Energy == 0 && !p.Intake.Goal.By.IsZero() && off > 0.001 {
			return fmt.Errorf("reached on day %d at %v, the goal is %v", pr.Reached, pr.Bands[pr.Reached].Weight, pr.Goal)
		}
	}
	if pr.Short != (pr.Goal != 0 && pr.Reached == 0) {
		return fmt.Errorf("short %v, goal %v, reached %d", pr.Short, pr.Goal, pr.Reached)
	}
	return nil
}

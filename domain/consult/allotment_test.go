package consult

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

// Common practice, no source: a woman of 30, 5 ft 5 in, 160 lb, lightly active,
// who wants to lose 15 lb in four months with three meals a day, lands at each
// meal around one to two of each measure; half to three is let pass. The fat
// floor lies between 15 and 20 % of energy.
func TestPlausibleMeals(t *testing.T) {
	file := sample(t, "us.json")
	plan := planned(t, file)
	if !plan.Issuable() || plan.Age != 30 {
		t.Fatalf("age %d, %+v", plan.Age, plan.Gate)
	}
	f := written(t, file)
	if len(f.Meals) != 3 {
		t.Fatalf("%d meals", len(f.Meals))
	}
	for i, m := range f.Meals {
		for name, n := range map[string]float64{"palm": m.Palm, "fist": m.Fist, "cupped hand": m.CuppedHand, "thumb": m.Thumb} {
			if n < 0.5 || n > 3 {
				t.Errorf("meal %d: %v of %s", i+1, n, name)
			}
		}
		if m.Fist < 1 || m.Fist > 2 {
			t.Errorf("meal %d: %v fists, the wish is 1 to 2", i+1, m.Fist)
		}
	}
	floor := float64(plan.Targets.FatFloor)
	if share := 100 * 9 * f.Fat / f.Energy; floor < 15 || floor > 20 || share < floor-0.01 {
		t.Errorf("fat brings %.2f %% of energy over a floor of %v %%", share, floor)
	}
}

// allergies are sets to avoid, from none to all.
var allergies = []string{
	``, `"peanut"`, `"milk"`, `"soybean"`, `"gluten"`, `"tree_nut","peanut"`,
	`"milk","egg","fish","soybean","nut","sesame"`, quoted(food.Allergens()),
}

func quoted(list []food.Allergen) string {
	words := make([]string, len(list))
	for i, a := range list {
		words[i] = fmt.Sprintf("%q", a)
	}
	return strings.Join(words, ",")
}

// The measures add up to food: what they bring lies within 20 % of the targets
// for energy, protein, fat and carbohydrate. From a balance of 45 on that holds
// for every eating pattern, allergy and number of meals. Below it, protein foods
// that bring carbohydrate themselves (pulses) can make it impossible; then the
// check is that no other day of half measures comes within 20 %.
func TestMeasuresAddUpToTheTargets(t *testing.T) {
	goals := []string{`{"kind":"lose"}`, `{"kind":"maintain"}`, `{"kind":"gain"}`}
	plans, impossible := 0, map[string]int{}
	for _, sex := range []string{`"female"`, `"male"`} {
		for _, goal := range goals {
			for _, pattern := range food.Patterns() {
				for _, avoid := range allergies {
					for meals := domain.LeastMeals; meals <= domain.MostMeals; meals++ {
						in := parsed(t, changed(t, sample(t, "example.json"), changes{
							"client.equation_sex": sex, "goal": goal, "eating_pattern": `"` + string(pattern) + `"`,
							"avoid": "[" + avoid + "]", "meals_per_day": fmt.Sprint(meals),
						}))
						for _, balance := range []unit.Percent{30, 40, 45, 55, 70} {
							in.CarbFatBalance = balance
							plans++
							why := checkAllotment(t, in)
							if why == "" {
								continue
							}
							if impossible[why]++; balance >= 45 {
								t.Errorf("%s, %d meals", why, meals)
							}
						}
					}
				}
			}
		}
	}
	t.Logf("%d plans; out of reach: %v", plans, impossible)
}

func TestAnyMeasuresAddUpToTheTargets(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		in := parsed(t, changed(t, sample(t, "example.json"), changes{
			"weight":              quote(rt, "weight", "62 kg", "11 st 6 lb", "95,5 kg", "251 lb"),
			"height":              quote(rt, "height", "155 cm", "168 cm", "1.78 m"),
			"client.equation_sex": quote(rt, "sex", "female", "male"),
			"client.born":         quote(rt, "born", "1963-01-01", "1990-05-17", "2005-12-31"),
			"activity":            rapid.SampledFrom([]string{`{"level":"inactive"}`, `{"level":"active"}`, `{"pal":2.2}`}).Draw(rt, "activity"),
			"goal":                rapid.SampledFrom([]string{`{"kind":"maintain"}`, `{"kind":"gain"}`, `{"kind":"lose"}`}).Draw(rt, "goal"),
			"meals_per_day":       fmt.Sprint(rapid.IntRange(1, 6).Draw(rt, "meals")),
			"eating_pattern":      `"` + string(rapid.SampledFrom(food.Patterns()).Draw(rt, "pattern")) + `"`,
			"avoid":               "[" + quoted(rapid.SliceOfN(rapid.SampledFrom(food.Allergens()), 0, 5).Draw(rt, "avoid")) + "]",
		}))
		in.CarbFatBalance = unit.Percent(rapid.IntRange(20, 80).Draw(rt, "balance"))
		in.FatFloor = unit.Percent(rapid.IntRange(15, 40).Draw(rt, "floor"))
		checkAllotment(rt, in) // which fails where a better day exists
	})
}

type fataler interface {
	Fatalf(format string, args ...any)
}

// checkAllotment checks one plan. It returns which plan cannot come within
// 20 %, where none can.
func checkAllotment(t fataler, in domain.Intake) (outOfReach string) {
	plan, err := domain.NewPlan(in)
	if err != nil || plan.Targets == nil {
		t.Fatalf("%+v: %v %+v", in, err, plan.Gate)
	}
	target := plan.Targets
	for _, c := range target.Contents {
		checkFoods(t, in, c)
	}
	if near(*target, target.Allotment.Brings) {
		return ""
	}
	if reachable(*target) {
		t.Fatalf("%s, avoiding %v, %d meals, balance %v: a day of %+v brings %+v for %v kcal, %v g protein, %v g fat, %v g carbohydrate",
			in.Pattern, in.Avoid, in.MealsPerDay, in.CarbFatBalance, target.Allotment.Day, target.Allotment.Brings,
			target.Energy.Value, target.Protein.Value, target.Fat.Value, target.Carbohydrate.Value)
	}
	return fmt.Sprintf("%s avoiding %d allergens at balance %v", in.Pattern, len(in.Avoid), in.CarbFatBalance)
}

func near(t domain.Targets, n hand.Nutrients) bool {
	within := func(got, want float64) bool { return math.Abs(got-want) <= 0.2*want+1e-6 }
	return within(float64(n.Energy), float64(t.Energy.Value)) && within(float64(n.Protein), float64(t.Protein.Value)) &&
		within(float64(n.Fat), float64(t.Fat.Value)) && within(float64(n.Carbohydrate), float64(t.Carbohydrate.Value))
}

// reachable reports whether any day of half measures, with the same vegetables
// and its fat over the floor, comes within 20 % of every target.
func reachable(t domain.Targets) bool {
	const palms, cups, thumbs = 20, 45, 30
	for p := 0.0; p <= palms; p += 0.5 {
		for h := 0.0; h <= cups; h += 0.5 {
			for th := 0.0; th <= thumbs; th += 0.5 {
				n := t.Contents.Bring(hand.Measures{
					Palm: unit.Measure(p), Fist: t.Allotment.Day.Fist, CuppedHand: unit.Measure(h), Thumb: unit.Measure(th),
				})
				if 9*float64(n.Fat) >= float64(t.FatFloor)/100*float64(n.Energy) && near(t, n) {
					return true
				}
			}
		}
	}
	return false
}

// checkFoods checks that what a measure holds is none of what is avoided and
// nothing that the eating pattern leaves out.
func checkFoods(t fataler, in domain.Intake, c hand.Content) {
	if len(c.Examples) == 0 || c.Nutrients.Energy <= 0 {
		t.Fatalf("%s: nothing in it for %s avoiding %v", c.Kind.Name(), in.Pattern, in.Avoid)
	}
	fits := food.Basket(hand.GroupOf(c.Kind), in.Pattern, nil)
	for _, f := range food.Table(hand.GroupOf(c.Kind)) {
		if !slices.Contains(c.Examples, f.Name) {
			continue
		}
		if !slices.ContainsFunc(fits, func(other food.Food) bool { return other.Name == f.Name }) {
			t.Fatalf("%s is no food for %s", f.Name, in.Pattern)
		}
		for _, a := range in.Avoid {
			if f.Contains(a) {
				t.Fatalf("%s contains %s, which is avoided", f.Name, a)
			}
		}
	}
}

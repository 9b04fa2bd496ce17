package measures

import (
	"slices"
	"strings"
	"testing"

	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

func TestStatesSayWhereToGo(t *testing.T) {
	for _, c := range []struct {
		name  string
		form  draft.Form
		state state
		way   way
	}{
		{"everything", answers(), open, way{}},
		{"no weight", with("weight", ""), waiting, way{"Go on with the intake", "intake", draft.Weight}},
		{"held", with("screening.lithium", "yes"), held, way{"Record a reason", "screening", "hold_reasons.lithium.text"}},
		{"not asked", with("screening.lithium", ""), held, way{"Ask the screening questions", "screening", "screening.lithium"}},
		{"referred", with("screening.type_1_diabetes", "yes"), referred, way{"See what asks for the referral", "screening", ""}},
	} {
		v := look(opened(c.form))
		if v.State != c.state || v.Way != c.way || (v.Lead == "") != (c.state == open) {
			t.Errorf("%s: state %v, way %+v, lead %q", c.name, v.State, v.Way, v.Lead)
		}
	}
}

func TestReferralGivesNoMeasures(t *testing.T) {
	v := look(opened(with("screening.type_1_diabetes", "yes")))
	if v.HasContents || v.HasMeals || len(v.Servings) > 0 || v.Near != "" {
		t.Errorf("%+v", v)
	}
}

func TestContentsFollowPatternAndAvoidance(t *testing.T) {
	v := look(opened(with("eating_pattern", "vegan", "avoid", "soya, nuts", "weight", "")))
	if v.HasMeals || !v.HasContents {
		t.Fatalf("%+v", v)
	}
	palm := v.Contents[hand.Palm]
	if palm.Filled != "lentils, chickpeas and black beans" {
		t.Errorf("a vegan's palm without soya: %q", palm.Filled)
	}
	for _, food := range []string{"almonds", "walnuts", "peanut"} {
		if strings.Contains(v.Contents[hand.Thumb].Filled, food) {
			t.Errorf("avoided %s in %q", food, v.Contents[hand.Thumb].Filled)
		}
	}
	if v.Basket != "Reckoned from foods of a vegan, without soybeans, tree nuts and peanuts." {
		t.Errorf("%q", v.Basket)
	}
}

func TestAWordNotUnderstoodShowsNoFoods(t *testing.T) {
	if v := look(opened(with("avoid", "peanut, qwerty"))); v.HasContents || v.HasMeals {
		t.Error("foods are shown though something avoided was not understood")
	}
}

// Sizes by the leaflets that domain/hand cites: 1 cup, half a cup, 1 tablespoon.
func TestContentsTellGramsVolumeAndSpread(t *testing.T) {
	v := look(opened(answers()))
	content := hand.Fill(food.Omnivore, nil)[hand.Fist].Nutrients
	palm, fist, thumb := v.Contents[hand.Palm], v.Contents[hand.Fist], v.Contents[hand.Thumb]
	if palm.Amount != "about 97 g" || palm.Spread != "78 to 170 g, by food" {
		t.Errorf("%q %q", palm.Amount, palm.Spread)
	}
	if !strings.HasPrefix(fist.Amount, "240 ml, about ") || !strings.HasSuffix(fist.Macros, " carbohydrate and "+unit.Style{}.Grams(content.Fibre)+" fibre") {
		t.Errorf("%q %q", fist.Amount, fist.Macros)
	}
	us := look(draft.NewSession(answers(), unit.Style{System: unit.USCustomary}))
	if !strings.HasPrefix(us.Contents[hand.Fist].Amount, "1 cup") || !strings.HasPrefix(us.Contents[hand.Thumb].Amount, "1 tbsp") {
		t.Errorf("%q %q", us.Contents[hand.Fist].Amount, thumb.Amount)
	}
	for _, c := range v.Contents {
		if len(c.Steps) == 0 {
			t.Errorf("%s has no derivation", c.Kind.Name())
		}
	}
}

func TestMealsAddUpToTheDay(t *testing.T) {
	for n := 1; n <= 6; n++ {
		v := look(opened(with("meals_per_day", string(rune('0'+n)))))
		if len(v.Servings) != n || v.Meals != n {
			t.Fatalf("%d meals: %d shown", n, len(v.Servings))
		}
		var sum hand.Measures
		for _, s := range v.Servings {
			sum = sum.Plus(s.Measures)
		}
		if sum != v.Day.Measures {
			t.Errorf("%d meals sum to %v, the day is %v", n, sum, v.Day.Measures)
		}
	}
}

// In kilocalories the words are those of the paper.
func TestNearnessInWords(t *testing.T) {
	s := opened(answers())
	p, _ := s.Plan()
	d := p.Targets.Allotment.Distance
	if got := look(s).Near; got != d.Words {
		t.Errorf("%q, the plan says %q", got, d.Words)
	}
	kj := nearWords(hand.Distance{Energy: 100, Protein: -3}, unit.Style{EnergyIn: unit.InKilojoules})
	if kj != "A day of these measures brings about 400 kJ more energy than the target and 3 g less protein than the target." {
		t.Errorf("%q", kj)
	}
}

func TestDistancesAddUp(t *testing.T) {
	s := opened(answers())
	p, _ := s.Plan()
	lines := look(s).Distances
	names := make([]string, len(lines))
	for i, l := range lines {
		names[i] = l.Name
	}
	if !slices.Equal(names, []string{"Energy", "Protein", "Fat", "Carbohydrate", "Fibre"}) {
		t.Fatalf("%v", names)
	}
	style := unit.Style{}
	if lines[0].Target != style.Energy(p.Targets.Energy.Value) || lines[0].Brings != style.Energy(p.Targets.Allotment.Brings.Energy) {
		t.Errorf("%+v", lines[0])
	}
	for _, c := range []struct {
		diff float64
		want string
	}{{0.4, "as aimed at"}, {12.2, "12 g more"}, {-3, "3 g less"}} {
		if got := difference(c.diff, "g", style); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

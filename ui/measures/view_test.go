package measures

import (
	"slices"
	"strconv"
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
	if v.HasContents || v.HasMeals || len(v.Servings) > 0 || v.Near != "" || len(v.Others) > 0 {
		t.Errorf("%+v", v)
	}
}

func namesOf(f food.Filling) []string {
	var names []string
	for _, one := range f.Foods {
		names = append(names, one.Name)
	}
	return names
}

func TestContentsFollowPatternAndAvoidance(t *testing.T) {
	v := look(opened(with("eating_pattern", "vegan", "avoid", "soya, nuts", "weight", "")))
	if v.HasMeals || !v.HasContents {
		t.Fatalf("%+v", v)
	}
	if got := namesOf(v.Contents[hand.Palm].Filling); !slices.Equal(got, []string{"lentils", "chickpeas", "black beans"}) {
		t.Errorf("a vegan's palm without soya: %v", got)
	}
	for _, name := range []string{"almonds", "walnuts", "peanut butter"} {
		if slices.Contains(namesOf(v.Contents[hand.Thumb].Filling), name) {
			t.Errorf("avoided %s", name)
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

// Sizes by the leaflets that domain/hand cites: 1 cup, half a cup, 1 tablespoon,
// of the reference hand, which is between the means of ANSUR II.
func TestContentsTellGramsVolumeAndSpread(t *testing.T) {
	size := hand.ReferenceSize()
	cm := func(l unit.Centimetre) string { return strconv.FormatFloat(float64(l), 'f', -1, 64) + " cm" }
	form := with("hand.palm_breadth", cm(size.PalmBreadth), "hand.palm_length", cm(size.PalmLength), "hand.hand_length", cm(size.HandLength))
	v := look(opened(form))
	palm, fist := v.Contents[hand.Palm], v.Contents[hand.Fist]
	if !strings.HasPrefix(palm.Amount, "about 97 g") || !strings.HasSuffix(palm.Spread, " g, by food and hand") {
		t.Errorf("%q %q", palm.Amount, palm.Spread)
	}
	content := hand.Fill(food.Omnivore, nil)[hand.Fist].Nutrients
	if !strings.HasPrefix(fist.Amount, "240 ml, about ") || !strings.HasSuffix(fist.Macros, " carbohydrate and "+unit.Style{}.Grams(content.Fibre)+" fibre") {
		t.Errorf("%q %q", fist.Amount, fist.Macros)
	}
	us := look(draft.NewSession(form, unit.Style{System: unit.USCustomary}))
	if !strings.HasPrefix(us.Contents[hand.Fist].Amount, "1 cup") || !strings.HasPrefix(us.Contents[hand.Thumb].Amount, "1 tbsp") {
		t.Errorf("%q %q", us.Contents[hand.Fist].Amount, us.Contents[hand.Thumb].Amount)
	}
	for _, c := range v.Contents {
		if len(c.Steps) == 0 {
			t.Errorf("%s has no derivation", c.Kind.Name())
		}
	}
}

func TestMealsAddUpToTheDay(t *testing.T) {
	for n := 1; n <= 6; n++ {
		v := look(opened(with("meals_per_day", strconv.Itoa(n))))
		if len(v.Servings) != n || v.Meals != n {
			t.Fatalf("%d meals: %d shown", n, len(v.Servings))
		}
		for _, k := range hand.Kinds() {
			sum := unit.Measure(0)
			for _, s := range v.Servings {
				sum += s.Cells[k].Count
			}
			if sum != v.Day.Cells[k].Count {
				t.Errorf("%d meals have %v %s, the day %v", n, sum, k.Plural(), v.Day.Cells[k].Count)
			}
		}
	}
}

func TestCellsTellLocksBoundsAndRanges(t *testing.T) {
	v := look(opened(wished()))
	if c := v.Servings[0].Cells[hand.Palm]; !c.Locked || c.Count != 1 {
		t.Errorf("%+v", c)
	}
	if c := v.Servings[2].Cells[hand.CuppedHand]; !c.Locked || c.Count != 0 || c.Note != "" {
		t.Errorf("%+v", c)
	}
	if c := v.Servings[1].Cells[hand.Thumb]; c.Locked || !strings.HasSuffix(c.Note, "\nat most 1½") {
		t.Errorf("%+v", c)
	}
	if c := v.Day.Cells[hand.Fist]; !c.Locked || c.Count != 6 || v.DayLocked {
		t.Errorf("%+v, the day fixed %v", c, v.DayLocked)
	}
	if v.Servings[0].Size != 0 || v.Servings[1].Size != 1 || v.Servings[2].Size != 2 || !v.Wished {
		t.Errorf("sizes %d %d %d", v.Servings[0].Size, v.Servings[1].Size, v.Servings[2].Size)
	}
	ranges := look(opened(with("hand.ranges", "yes")))
	if note := ranges.Servings[0].Cells[hand.Palm].Note; !strings.HasSuffix(note, " palms") || !strings.Contains(note, " to ") {
		t.Errorf("%q", note)
	}
	if note := ranges.Day.Cells[hand.Palm].Note; strings.Contains(note, " to ") {
		t.Errorf("the day is told as a range: %q", note)
	}
}

func TestAmountsAreRoundedForTheKitchen(t *testing.T) {
	for _, c := range []struct{ amount, want float64 }{{0.2, 1}, {13.6, 14}, {27.4, 27}, {44, 45}, {138, 140}, {327, 330}, {1088, 1090}} {
		if got := kitchen(c.amount); got != c.want {
			t.Errorf("%v: %v, want %v", c.amount, got, c.want)
		}
	}
}

// While wishes are in each other's way the day is shown without them, and each
// is told as what can be taken back.
func TestConflictIsToldAndTheDayStays(t *testing.T) {
	s := opened(with("meal_wishes", "day: palm 3; meal 1: palm 2; meal 2: palm 2; meal 3: thumb 1"))
	v := look(s)
	want := []hand.Wish{hand.Lock(0, hand.Palm, 3), hand.Lock(1, hand.Palm, 2), hand.Lock(2, hand.Palm, 2)}
	if !slices.Equal(v.Conflict.Wishes, want) || !strings.Contains(v.Conflict.Words, "3 palms a day, 2 palms at meal 1 and 2 palms at meal 2") {
		t.Errorf("%+v", v.Conflict)
	}
	if !v.HasMeals || v.Lead != "" || !v.Servings[2].Cells[hand.Thumb].Locked || v.Servings[0].Cells[hand.Palm].Locked {
		t.Errorf("meals %v, lead %q", v.HasMeals, v.Lead)
	}
	keepWishes(s, without(wishesOf(s), want[0]))
	if v = look(s); len(v.Conflict.Wishes) > 0 || v.Servings[0].Cells[hand.Palm].Count != 2 {
		t.Errorf("%+v", v.Conflict)
	}
	both := look(opened(with("meal_wishes", "day: palm 1; meal 1: palm 2", "weight", "heavy")))
	if both.HasMeals || len(both.Conflict.Wishes) != 2 || both.Lead == "" {
		t.Errorf("beside another problem: %+v", both.Conflict)
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
	if under := nearWords(hand.Distance{UnderFloor: true}, unit.Style{}); !strings.HasSuffix(under, "Its fat lies under the floor: the wishes leave too little.") {
		t.Errorf("%q", under)
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

func TestOtherDaysAreToldByTheirDifferences(t *testing.T) {
	from, to := hand.Measures{Palm: 4, Fist: 5, CuppedHand: 6, Thumb: 5}, hand.Measures{Palm: 3.5, Fist: 5, CuppedHand: 7.5, Thumb: 6}
	if got := changeWords(from, to); got != "½ palm less, 1½ cupped hands more, 1 thumb more" {
		t.Errorf("%q", got)
	}
	now, other := hand.Distance{Energy: -52, Protein: 3, Fat: -1}, hand.Distance{Energy: 18, Protein: -7, Fat: 1, Carbohydrate: 2}
	if got := nearnessWords(now, other, unit.Style{}); got != "30 kcal nearer, 4 g protein farther, 2 g carbohydrate farther" {
		t.Errorf("%q", got)
	}
	if got := nearnessWords(now, now, unit.Style{}); got != "as near" {
		t.Errorf("%q", got)
	}
	if got := nearnessWords(now, other, unit.Style{EnergyIn: unit.InKilojoules}); !strings.HasPrefix(got, "150 kJ nearer") {
		t.Errorf("%q", got)
	}
	s := opened(answers())
	plan, _ := s.Plan()
	for i, o := range look(s).Others {
		if o.Day != plan.Targets.Allotment.Alternatives[i].Day || o.Words == "" || strings.ContainsRune(o.Words, '\uFFFD') {
			t.Errorf("%+v", o)
		}
	}
}

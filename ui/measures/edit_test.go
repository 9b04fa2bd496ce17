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

func TestEditsOfWishes(t *testing.T) {
	wishes := []hand.Wish{hand.Lock(1, hand.Palm, 2), {Meal: 1, Kind: hand.Thumb, Most: 3}, hand.Lock(0, hand.Fist, 6)}
	got := locked(wishes, 1, hand.Palm, 1.5)
	if len(got) != 3 || !slices.Contains(got, hand.Lock(1, hand.Palm, 1.5)) || slices.Contains(got, wishes[0]) {
		t.Errorf("%v", got)
	}
	if got := freed(wishes, 1, hand.Thumb); len(got) != 2 || slices.Contains(got, wishes[1]) {
		t.Errorf("%v", got)
	}
	day := lockedDay(wishes, hand.Measures{Palm: 4, Fist: 5, CuppedHand: 7, Thumb: 6.5})
	for _, want := range []hand.Wish{hand.Lock(0, hand.Palm, 4), hand.Lock(0, hand.CuppedHand, 7), hand.Lock(0, hand.Thumb, 6.5), wishes[2]} {
		if !slices.Contains(day, want) {
			t.Errorf("%v lacks %v", day, want)
		}
	}
	if len(wishes) != 3 || wishes[0] != hand.Lock(1, hand.Palm, 2) {
		t.Error("an edit changed what it started from")
	}
}

// A wish for a meal that there is not now waits, and an edit keeps it.
func TestEditsKeepWhatWaits(t *testing.T) {
	s := opened(with("meals_per_day", "2", "meal_wishes", "meal 4: palm 2; meal 1: palm 1"))
	keepWishes(s, locked(wishesOf(s), 2, hand.Fist, 2))
	if got := s.Get(draft.MealWishes); got != "meal 4: palm 2; meal 1: palm 1; meal 2: fist 2" {
		t.Errorf("%q", got)
	}
	if got := sizedText("light, usual, large", 2, hand.Large); got != "light, large, large" {
		t.Errorf("%q", got)
	}
	if got := sizedText("", 3, hand.Light); got != "usual, usual, light" {
		t.Errorf("%q", got)
	}
	if got := sizedText("light", 1, hand.Usual); got != "" {
		t.Errorf("%q", got)
	}
}

func codesOf(c food.BasketChoice) string {
	var codes []string
	for _, one := range c {
		codes = append(codes, one.Code)
	}
	return strings.Join(codes, " ")
}

func TestEditsOfABasketStartFromTheUsualFoods(t *testing.T) {
	_, fillings := hand.FillChosen(nil, food.Omnivore, nil)
	palm := fillings[hand.Palm]
	choice := withFood(nil, palm, "prawns")
	if len(choice) != len(palm.Foods)+1 || choice[len(choice)-1] != (food.ChosenFood{Code: "prawns", Share: 1}) {
		t.Fatalf("%v", choice)
	}
	for i, f := range palm.Foods {
		if choice[i].Code != f.Code || choice[i].Share != f.Share {
			t.Errorf("%v, usually %s %v", choice[i], f.Code, f.Share)
		}
	}
	fewer := withoutFood(nil, palm, "eggs")
	if len(fewer) != len(palm.Foods)-1 || strings.Contains(codesOf(fewer), "eggs") {
		t.Errorf("%v", fewer)
	}
	more := withShare(nil, palm, "cod", true)
	if i := slices.IndexFunc(more, func(c food.ChosenFood) bool { return c.Code == "cod" }); more[i].Share != 1.5 {
		t.Errorf("%v", more[i])
	}
	for _, c := range []food.BasketChoice{choice, fewer, more} {
		if err := c.Check(); err != nil {
			t.Error(err)
		}
	}
}

func TestEditsOfABasketKeepTheOtherMeasures(t *testing.T) {
	choice := food.BasketChoice{{Code: "olive_oil", Share: 3}, {Code: "cod", Share: 1}}
	_, fillings := hand.FillChosen(choice, food.Omnivore, nil)
	palm := fillings[hand.Palm]
	if got := withFood(choice, palm, "lentils"); codesOf(got) != "olive_oil cod lentils" {
		t.Errorf("%v", got)
	}
	if got := withFood(choice, palm, "cod"); codesOf(got) != "olive_oil cod" {
		t.Errorf("a food that is there was added: %v", got)
	}
	if got := withoutFood(choice, palm, "cod"); codesOf(got) != "olive_oil cod" {
		t.Errorf("the last food went: %v", got)
	}
	if got := usualFor(choice, palm); codesOf(got) != "olive_oil" {
		t.Errorf("%v", got)
	}
}

func TestSharesStepUpAndDown(t *testing.T) {
	for _, c := range []struct{ share, up, down unit.Ratio }{{1, 1.5, 0.5}, {0.25, 0.5, 0.25}, {10, 10, 8}, {0.7, 1, 0.5}} {
		if up, down := stepped(c.share, true), stepped(c.share, false); up != c.up || down != c.down {
			t.Errorf("%v: %v up, %v down", c.share, up, down)
		}
	}
}

func TestBasketLinesAreOfThisHand(t *testing.T) {
	_, fillings := hand.FillChosen(food.BasketChoice{{Code: "cod", Share: 1}, {Code: "chicken_breast", Share: 3}}, food.Omnivore, nil)
	lines := basketLines(fillings[hand.Palm], 0.8, unit.Style{})
	if len(lines) != 2 || lines[1].Code != "chicken_breast" || lines[1].Share != "75%" || lines[0].Share != "25%" {
		t.Fatalf("%+v", lines)
	}
	// 0.8 of a reference palm of 85 g.
	if !strings.HasPrefix(lines[1].Brings, "68 g: ") || !strings.Contains(lines[1].Brings, " protein, ") {
		t.Errorf("%q", lines[1].Brings)
	}
}

func TestListsLeaveOutWhatIsNotLiked(t *testing.T) {
	s := opened(with("dislikes", "liver, olives and celery; Oily\nfish"))
	if got := strings.Join(dislikesOf(s), "|"); got != "liver|olives|celery|Oily|fish" {
		t.Errorf("%q", got)
	}
	all, count := foodsFor(hand.Palm, s.Reading().Intake, nil)
	liked, fewer := foodsFor(hand.Palm, s.Reading().Intake, dislikesOf(s))
	if fewer >= count || len(all) == 0 {
		t.Errorf("%d of %d", fewer, count)
	}
	for _, line := range liked {
		if line.Class == "Fish and seafood" || strings.Contains(line.Foods, "salmon") {
			t.Errorf("%+v", line)
		}
	}
	vegan := opened(with("eating_pattern", "vegan", "avoid", "soya")).Reading().Intake
	_, fillings := hand.FillChosen(food.BasketChoice{{Code: "lentils", Share: 1}}, vegan.Pattern, vegan.Avoid)
	palm := fillings[hand.Palm]
	for _, f := range fitting("b", palm, vegan) {
		if !f.Suits(vegan.Pattern, vegan.Avoid) {
			t.Errorf("%s is offered", f.Name)
		}
	}
	if got := fitting("lentils", palm, vegan); len(got) > 0 {
		t.Errorf("offered, though it is there: %v", got)
	}
	if got := fitting("tofu", palm, vegan); len(got) > 0 {
		t.Errorf("%v", got)
	}
}

func TestWeighableFoodsHaveAReference(t *testing.T) {
	for _, f := range weighable("rice", hand.Fist) {
		if f.Cup == 0 {
			t.Errorf("%s cannot be weighed", f.Name)
		}
	}
	for _, f := range weighable("bread", hand.CuppedHand) {
		if f.Cup == 0 {
			t.Errorf("%s is a piece", f.Name)
		}
	}
	if len(weighable("chicken breast", hand.Palm)) == 0 || len(weighable("chicken breast", hand.Thumb)) > 0 {
		t.Error("chicken is weighed in the palm only")
	}
}

func TestAnyFoodCountsAsMeasures(t *testing.T) {
	v := look(opened(with("avoid", "milk")))
	milk, _ := food.ByCode("whole_milk")
	words := countWords(milk, v.PerMeasure, opened(with("avoid", "milk")).Reading().Intake, unit.Style{})
	if !strings.Contains(words, "counts as ") || !strings.Contains(words, "Not for this client") {
		t.Errorf("%q", words)
	}
}

func TestHandIsToldInWords(t *testing.T) {
	r := opened(with("hand.palm_breadth", "7.4 cm", "hand.palm_length", "10.3 cm", "hand.weighed.palm.food", "chicken_breast", "hand.weighed.palm.grams", "74 g")).Reading()
	c, known := calibrated(r)
	if !known {
		t.Fatal("the hand is not known")
	}
	told := factorsOf(c, r, unit.Style{})
	// 74 g of chicken, of which the reference palm takes 85 g.
	if told[hand.Palm].Value != "0.87 of the reference palm" || !strings.HasPrefix(told[hand.Palm].Span, "weighed; eight in ten between 0.") {
		t.Errorf("%+v", told[hand.Palm])
	}
	if told[hand.Fist].Span[:9] != "measured;" || !strings.HasPrefix(told[hand.Thumb].Span, "measured in part;") {
		t.Errorf("%q %q", told[hand.Fist].Span, told[hand.Thumb].Span)
	}
	if got := handSummary(c, known, r, unit.Style{}); !strings.HasPrefix(got, "weighed, measured and measured in part: palm 0.87, fist 0.7") {
		t.Errorf("%q", got)
	}
	if _, known := calibrated(opened(with("height", "")).Reading()); known {
		t.Error("a hand is known without a height")
	}
	wrong := opened(with("hand.hand_length", "38 cm")).Reading()
	if c, _ := calibrated(wrong); c.Size.HandLength > 25 {
		t.Errorf("a length that cannot be is reckoned with: %v", c.Size)
	}
}

func TestWeighingsAreToldInWords(t *testing.T) {
	for _, c := range []struct{ code, grams, value string }{
		{"", "", "not weighed"}, {"", "90", "not weighed"}, {"white_rice", "", "white rice, to be weighed"}, {"white_rice", "150 g", "150 g of white rice"}, {"white_rice", "150", "150 g of white rice"},
	} {
		if got := weighedWords(c.code, c.grams, hand.Fist, unit.Style{}); got.Value != c.value || got.Hint == "" || got.Food == "" {
			t.Errorf("%q %q: %+v", c.code, c.grams, got)
		}
	}
}

package draft

import (
	"reflect"
	"testing"

	"handbreadth/domain"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

// handForm is a whole form with answers about the hand.
func handForm(pairs ...string) Form { return with(filled(), pairs...) }

func TestHandFieldsAreNamedAsInTheDomain(t *testing.T) {
	for field, name := range map[Field]string{
		PalmBreadth: domain.FieldPalmBreadth, PalmLength: domain.FieldPalmLength, HandLength: domain.FieldHandLength,
		Basket: domain.FieldHand + "basket", MealWishes: domain.FieldWishes, MealSizes: domain.FieldMealSizes,
	} {
		if string(field) != name {
			t.Errorf("the form has %q, the domain %q", field, name)
		}
	}
}

func TestHandIsRead(t *testing.T) {
	rice, _ := food.ByCode("white_rice")
	got := Read(handForm(
		"hand.palm_breadth", "7,8 cm", "hand.palm_length", "10.6", "hand.hand_length", "7 in",
		"hand.weighed.fist.food", "white_rice", "hand.weighed.fist.grams", "150 g",
		"hand.basket", "chicken_breast 2, lentils", "hand.ranges", "yes",
		"meal_wishes", "meal 3: cupped hand 0; day: palm 2 to 9", "meal_sizes", "light",
	), unit.Style{})
	want := got.Intake.Hand
	want.Size = hand.Size{PalmBreadth: 7.8, PalmLength: 10.6, HandLength: 17.78}
	want.Weighed = []hand.Weighing{{Kind: hand.Fist, Food: rice, Grams: 150}}
	want.Basket = food.BasketChoice{{Code: "chicken_breast", Share: 2}, {Code: "lentils", Share: 1}}
	want.Ranges = true
	want.Wishes = []hand.Wish{hand.Lock(3, hand.CuppedHand, 0), {Kind: hand.Palm, Least: 2, Most: 9}}
	want.Sizes = []hand.MealSize{hand.Light, hand.Usual, hand.Usual}
	if !reflect.DeepEqual(got.Intake.Hand, want) || !got.Complete() {
		t.Errorf("%+v\n%v", got.Intake.Hand, got.Problems)
	}
	if words := got.Understood[WeighedGrams(hand.Fist)]; words != "150 g of white rice" {
		t.Errorf("%q", words)
	}
}

func TestHandProblemsAreAtTheirField(t *testing.T) {
	for _, c := range []struct {
		field Field
		form  Form
	}{
		{PalmBreadth, handForm("hand.palm_breadth", "22 cm")},
		{HandLength, handForm("hand.palm_length", "12 cm", "hand.hand_length", "12 cm")},
		{WeighedFood(hand.Palm), handForm("hand.weighed.palm.food", "mystery", "hand.weighed.palm.grams", "90 g")},
		{WeighedGrams(hand.Palm), handForm("hand.weighed.palm.food", "chicken_breast", "hand.weighed.palm.grams", "900 g")},
		{WeighedGrams(hand.Thumb), handForm("hand.weighed.thumb.food", "olive_oil", "hand.weighed.thumb.grams", "much")},
		{Basket, handForm("hand.basket", "no such thing")},
		{Basket, handForm("hand.basket", "chilli_sauce")},
		{MealWishes, handForm("meal_wishes", "meal 1: a palm")},
		{MealWishes, handForm("meal_wishes", "meal 1: palm 3; day: palm 2")},
		{MealSizes, handForm("meal_sizes", "light, huge")},
	} {
		got := Read(c.form, unit.Style{})
		p, told := got.Problems[c.field]
		if !told || len(got.Problems) != 1 || p.Given == "" || p.Accepted == "" {
			t.Errorf("%s: %v", c.field, got.Problems)
		}
	}
}

// Half an answer, or a wish for a meal that there is not now, waits and stops no
// plan.
func TestHandWaitsWithoutStopping(t *testing.T) {
	for _, c := range []struct {
		field Field
		form  Form
	}{
		{WeighedGrams(hand.Palm), handForm("hand.weighed.palm.food", "chicken_breast")},
		{WeighedFood(hand.Palm), handForm("hand.weighed.palm.grams", "90")},
		{MealWishes, handForm("meals_per_day", "2", "meal_wishes", "meal 3: palm 1; meal 2: palm 1")},
	} {
		got := Read(c.form, unit.Style{})
		if _, told := got.Remarks[c.field]; !told || !got.Complete() || len(got.Intake.Hand.Weighed) > 0 {
			t.Errorf("%s: %v, remarks %v", c.field, got.Problems, got.Remarks)
		}
		if c.field == MealWishes && len(got.Intake.Hand.Wishes) != 1 {
			t.Errorf("%v", got.Intake.Hand.Wishes)
		}
	}
}

func TestMealSizesComeBack(t *testing.T) {
	for text, want := range map[string][]hand.MealSize{
		"": nil, "usual, large": {hand.Usual, hand.Large}, "light": {hand.Light},
	} {
		got, ok := MealSizesOf(text)
		if !ok || !reflect.DeepEqual(got, want) || MealSizesText(append(got, hand.Usual)) != text {
			t.Errorf("%q: %v, %q", text, got, MealSizesText(got))
		}
	}
	if all := Read(handForm("meal_sizes", "usual, usual"), unit.Style{}).Intake.Hand.Sizes; all != nil {
		t.Errorf("meals alike have sizes %v", all)
	}
}

// Changes to one field made together undo one by one.
func TestWishesUndoOneByOne(t *testing.T) {
	s := NewSession(filled(), unit.Style{})
	for _, text := range []string{"meal 1: palm 1", "meal 1: palm 1½"} {
		s.SetAll(map[Field]string{MealWishes: text})
	}
	s.Undo()
	if got := s.Get(MealWishes); got != "meal 1: palm 1" {
		t.Errorf("%q", got)
	}
}

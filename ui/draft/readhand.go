package draft

import (
	"fmt"
	"strings"

	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

// hand reads the client's hand, what fills it and what is wished of the meals.
// It comes after the number of meals.
func (r *reader) hand() {
	h := &r.out.Intake.Hand
	h.Size = hand.Size{PalmBreadth: r.length(PalmBreadth), PalmLength: r.length(PalmLength), HandLength: r.length(HandLength)}
	for _, k := range hand.Kinds() {
		if w, ok := r.weighed(k); ok {
			h.Weighed = append(h.Weighed, w)
		}
	}
	h.Basket = r.basket()
	h.Ranges = r.form.Get(Ranges) == AnswerYes
	h.Wishes = r.wishes()
	h.Sizes = r.sizes()
}

// weighed reads what one measure of a food weighed. Half an answer is no slip:
// the other half is asked for, and stops no plan.
func (r *reader) weighed(k hand.Kind) (hand.Weighing, bool) {
	code, grams := r.form.Get(WeighedFood(k)), r.form.Get(WeighedGrams(k))
	if code == "" && grams == "" {
		return hand.Weighing{}, false
	}
	f, known := food.ByCode(code)
	switch {
	case code == "":
		r.remark(WeighedFood(k), "the food that was weighed")
		return hand.Weighing{}, false
	case !known:
		r.refuse(WeighedFood(k), "the code of a food in the table")
		return hand.Weighing{}, false
	case grams == "":
		r.remark(WeighedGrams(k), "what one "+k.Name()+" of "+f.Name+" weighed, in grams")
		return hand.Weighing{}, false
	}
	const most = 5000
	value, ok := r.amount(WeighedGrams(k), 0, most, "a weight in grams, such as 92 g", []string{"grams", "g"})
	w := hand.Weighing{Kind: k, Food: f, Grams: unit.Gram(value)}
	if !ok || !r.keep(WeighedGrams(k), w.Check(string(WeighedGrams(k)))) {
		return hand.Weighing{}, false
	}
	r.out.Understood[WeighedGrams(k)] = r.style.Grams(w.Grams) + " of " + f.Name
	return w, true
}

func (r *reader) basket() food.BasketChoice {
	choice, err := hand.ParseBasket(string(Basket), r.form.Get(Basket))
	if !r.keep(Basket, err) {
		return nil
	}
	if wrong, ok := choice.Check().(unit.Problems); ok {
		r.refuse(Basket, wrong[0].Accepted+", unlike "+wrong[0].Given)
		return nil
	}
	return choice
}

// wishes reads the wishes for meals. Those for meals that there are not wait
// until there are: the number of meals may change during the talk.
func (r *reader) wishes() []hand.Wish {
	all, err := hand.ParseWishes(string(MealWishes), r.form.Get(MealWishes))
	if !r.keep(MealWishes, err) {
		return nil
	}
	var wishes []hand.Wish
	for _, w := range all {
		if w.Meal <= r.out.Intake.MealsPerDay {
			wishes = append(wishes, w)
		}
	}
	if waiting := len(all) - len(wishes); waiting > 0 {
		r.remark(MealWishes, fmt.Sprintf("wishes for meals 1 to %d; the others wait until there are as many meals", r.out.Intake.MealsPerDay))
	}
	return wishes
}

// sizes reads the sizes of the meals: usual where none is told.
func (r *reader) sizes() []hand.MealSize {
	all, ok := MealSizesOf(r.form.Get(MealSizes))
	if !ok {
		r.refuse(MealSizes, "light, usual or large for each meal, with commas between")
		return nil
	}
	sizes := make([]hand.MealSize, r.out.Intake.MealsPerDay)
	alike := true
	for i := range sizes {
		sizes[i] = hand.Usual
		if i < len(all) {
			sizes[i] = all[i]
		}
		alike = alike && sizes[i] == sizes[0]
	}
	if alike {
		return nil
	}
	return sizes
}

// MealSizesOf reads the text of [MealSizes]; false where a word is not known.
func MealSizesOf(text string) ([]hand.MealSize, bool) {
	if strings.TrimSpace(text) == "" {
		return nil, true
	}
	var sizes []hand.MealSize
	for _, word := range strings.Split(text, ",") {
		size, known := hand.ParseMealSize(word)
		if !known {
			return nil, false
		}
		sizes = append(sizes, size)
	}
	return sizes, true
}

// MealSizesText writes sizes so that [MealSizesOf] reads them; nothing where all
// are usual.
func MealSizesText(sizes []hand.MealSize) string {
	last := 0
	words := make([]string, len(sizes))
	for i, size := range sizes {
		words[i] = size.String()
		if size != hand.Usual {
			last = i + 1
		}
	}
	return strings.Join(words[:last], ", ")
}

package measures

import (
	"slices"

	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// wishesOf returns the wishes of the form, those for meals that there are not
// now included, so that an edit keeps them.
func wishesOf(s Source) []hand.Wish {
	wishes, err := hand.ParseWishes(string(draft.MealWishes), s.Get(draft.MealWishes))
	if err != nil {
		return nil
	}
	return wishes
}

// keepWishes writes wishes into the form, as a step of its own to undo.
func keepWishes(s Source, wishes []hand.Wish) {
	s.SetAll(map[draft.Field]string{draft.MealWishes: hand.WishesText(wishes)})
}

// freed returns the wishes without those for a measure of a meal, or of the day
// where the meal is 0.
func freed(wishes []hand.Wish, meal int, k hand.Kind) []hand.Wish {
	return slices.DeleteFunc(slices.Clone(wishes), func(w hand.Wish) bool { return w.Meal == meal && w.Kind == k })
}

// locked returns the wishes with a measure of a meal fixed.
func locked(wishes []hand.Wish, meal int, k hand.Kind, n unit.Measure) []hand.Wish {
	return append(freed(wishes, meal, k), hand.Lock(meal, k, n))
}

// fitted are the measures that are found for the targets; vegetables are wished
// for.
var fitted = []hand.Kind{hand.Palm, hand.CuppedHand, hand.Thumb}

// lockedDay returns the wishes with the fitted measures of the day fixed.
func lockedDay(wishes []hand.Wish, day hand.Measures) []hand.Wish {
	for _, k := range fitted {
		wishes = locked(wishes, 0, k, day.Of(k))
	}
	return wishes
}

// without returns the wishes without one of them.
func without(wishes []hand.Wish, gone hand.Wish) []hand.Wish {
	return slices.DeleteFunc(slices.Clone(wishes), func(w hand.Wish) bool { return w == gone })
}

// isLocked reports whether a measure is fixed, and returns what is wished of it
// where that is less.
func isLocked(wishes []hand.Wish, meal int, k hand.Kind) (locked bool, bound string) {
	for _, w := range wishes {
		if w.Meal != meal || w.Kind != k {
			continue
		}
		if w.Least == w.Most {
			return true, ""
		}
		bound = boundWords(w)
	}
	return false, bound
}

func boundWords(w hand.Wish) string {
	switch {
	case w.Most >= hand.MostMeasures:
		return "at least " + w.Least.String()
	case w.Least == 0:
		return "at most " + w.Most.String()
	}
	return w.Least.String() + " to " + w.Most.String() + " wished"
}

// sizedText returns the text of the sizes of the meals with that of one changed.
func sizedText(text string, meal int, size hand.MealSize) string {
	sizes, _ := draft.MealSizesOf(text)
	for len(sizes) < meal {
		sizes = append(sizes, hand.Usual)
	}
	sizes[meal-1] = size
	return draft.MealSizesText(sizes)
}

// conflict is wishes that cannot be kept together.
type conflict struct {
	Words  string
	Wishes []hand.Wish
}

// conflictIn returns the smallest set of wishes that cannot be kept together,
// and the wishes that are left without it.
func conflictIn(meals int, wishes []hand.Wish) (conflict, []hand.Wish) {
	set := hand.Conflict(meals, wishes)
	if set == nil {
		return conflict{}, wishes
	}
	left := wishes
	words := make([]string, len(set))
	for i, w := range set {
		words[i] = w.Words()
		left = without(left, w)
	}
	return conflict{"These cannot be kept together: " + listed(words, "") + ". Take one of them back. Until then the day is shown without them.", set}, left
}

package intake

import (
	"slices"
	"strings"

	"handbreadth/domain/food"
	"handbreadth/ui/draft"
)

// avoided returns the allergens that a text rules out, in the order of the list.
func avoided(text string) []food.Allergen {
	var ruledOut []food.Allergen
	for _, word := range draft.AvoidWords(text) {
		found, _ := food.ParseAllergen(word)
		ruledOut = append(ruledOut, found...)
	}
	return slices.DeleteFunc(food.Allergens(), func(a food.Allergen) bool { return !slices.Contains(ruledOut, a) })
}

// withAllergens changes a text so that it rules out the chosen allergens. What
// is not touched stays as it was typed; words that are not known stay too.
func withAllergens(text string, chosen []food.Allergen) string {
	before := avoided(text)
	words := draft.AvoidWords(text)
	for _, a := range before {
		if !slices.Contains(chosen, a) {
			words = without(words, a)
		}
	}
	for _, a := range chosen {
		if !slices.Contains(before, a) {
			words = append(words, string(a))
		}
	}
	return strings.Join(words, ", ")
}

// without takes an allergen out of the words. A word that rules out others too,
// such as "nuts", is replaced by those, so that taking back one never lets
// another in.
func without(words []string, a food.Allergen) []string {
	var kept []string
	for _, word := range words {
		covers, _ := food.ParseAllergen(word)
		switch {
		case !slices.Contains(covers, a):
			kept = append(kept, word)
		case word == string(a):
		default:
			kept = append(kept, others(covers, a)...)
		}
	}
	return kept
}

// others are the words for the rest of what a word covered, but for those that
// would rule out the allergen again.
func others(covers []food.Allergen, a food.Allergen) []string {
	var words []string
	for _, other := range covers {
		again, _ := food.ParseAllergen(string(other))
		if other != a && !slices.Contains(again, a) {
			words = append(words, string(other))
		}
	}
	return words
}

// known is the text without the words that are not known.
func known(text string) string {
	words := slices.DeleteFunc(draft.AvoidWords(text), func(word string) bool {
		_, ok := food.ParseAllergen(word)
		return !ok
	})
	return strings.Join(words, ", ")
}

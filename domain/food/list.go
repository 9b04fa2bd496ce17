package food

import (
	"slices"
	"strings"
)

// ListFor returns the foods that fill the measure of a group alone, that suit an
// eating pattern, contain none of the avoided allergens and are not disliked, in
// the order of the table. A dislike is the code of a food or words: every word
// must be one of the food's names or its class, singular or plural, so that
// "nut" is not butternut squash and "fish" is all fish. It may be empty.
func ListFor(g Group, p Pattern, avoid []Allergen, dislikes []string) []Food {
	return listed(theTable().groups[g], p, avoid, dislikes)
}

// ListCounted returns the foods that fill no measure alone and are eaten as they
// are: milk, cheese, soups, dishes, sweets, drinks. They are chosen as
// [ListFor] chooses, and [Food.CountsAs] tells what they count as.
func ListCounted(p Pattern, avoid []Allergen, dislikes []string) []Food {
	var counted []Food
	for _, f := range theTable().foods {
		if _, fills := f.Fills(); !fills && f.eaten() {
			counted = append(counted, f)
		}
	}
	return listed(counted, p, avoid, dislikes)
}

func listed(from []Food, p Pattern, avoid []Allergen, dislikes []string) []Food {
	disliked := make([][]string, len(dislikes))
	for i, text := range dislikes {
		disliked[i] = stems(split(text))
	}
	var list []Food
	for _, f := range from {
		if f.Suits(p, avoid) && !slices.Contains(dislikes, f.Code) && !isDisliked(f, disliked) {
			list = append(list, f)
		}
	}
	return list
}

func isDisliked(f Food, disliked [][]string) bool {
	if len(disliked) == 0 {
		return false
	}
	words := stems(wordsOf(f))
	for _, asked := range disliked {
		hasAll := len(asked) > 0
		for _, word := range asked {
			hasAll = hasAll && slices.Contains(words, word)
		}
		if hasAll {
			return true
		}
	}
	return false
}

func stems(words []string) []string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = stem(w)
	}
	return out
}

// stem takes the plural off a folded English word: berries, tomatoes, radishes,
// eggs. Words in -ss are left alone.
func stem(w string) string {
	const least = 4 // letters before a word is taken for a plural
	for _, plural := range [...]struct{ ends, becomes string }{
		{"ies", "y"}, {"oes", "o"}, {"shes", "sh"}, {"ches", "ch"}, {"ss", "ss"}, {"s", ""},
	} {
		if before, ok := strings.CutSuffix(w, plural.ends); ok {
			if len(w) < least {
				return w
			}
			return before + plural.becomes
		}
	}
	return w
}

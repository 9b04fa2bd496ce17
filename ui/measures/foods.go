package measures

import (
	"slices"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// dislikesOf parts what the client does not like into words for the lists.
func dislikesOf(s Source) []string {
	var list []string
	for _, word := range strings.FieldsFunc(s.Get(draft.Dislikes), func(r rune) bool { return strings.ContainsRune(",;.\n", r) }) {
		for _, one := range strings.Split(word, " and ") {
			if one = strings.TrimSpace(one); one != "" {
				list = append(list, one)
			}
		}
	}
	return list
}

// classLine is the foods of one class for a measure.
type classLine struct{ Class, Foods string }

// foodsFor lists the foods for a measure by class, and how many there are.
func foodsFor(k hand.Kind, in domain.Intake, dislikes []string) (lines []classLine, count int) {
	names := map[food.Class][]string{}
	var order []food.Class
	for _, f := range food.ListFor(hand.GroupOf(k), in.Pattern, in.Avoid, dislikes) {
		if names[f.Class] == nil {
			order = append(order, f.Class)
		}
		names[f.Class] = append(names[f.Class], f.Name)
		count++
	}
	for _, class := range order {
		lines = append(lines, classLine{capital(class.Name()), strings.Join(names[class], "; ")})
	}
	return lines, count
}

// mostFound is how many foods a search shows.
const mostFound = 6

// fitting finds foods that suit the client and fill the measure of a filling, of
// which they are no part yet.
func fitting(text string, filling food.Filling, in domain.Intake) []food.Food {
	return found(text, func(f food.Food) bool {
		g, fills := f.Fills()
		there := slices.ContainsFunc(filling.Foods, func(other food.Food) bool { return other.Code == f.Code })
		return fills && g == filling.Group && !there && f.Suits(in.Pattern, in.Avoid)
	})
}

// weighable finds foods of which a measure can be weighed: in a fist and a cupped
// hand whatever has a volume.
func weighable(text string, k hand.Kind) []food.Food {
	return found(text, func(f food.Food) bool {
		g, fills := f.Fills()
		own := fills && g == hand.GroupOf(k)
		return hand.Weighing{Kind: k, Food: f}.Reference() > 0 && (own || k == hand.Fist || k == hand.CuppedHand)
	})
}

func found(text string, fits func(food.Food) bool) []food.Food {
	var list []food.Food
	for _, f := range food.Search(text) {
		if fits(f) && len(list) < mostFound {
			list = append(list, f)
		}
	}
	return list
}

// countWords tells what a portion of any food counts as for this client, and
// whether the client has it at all.
func countWords(f food.Food, per food.PerMeasure, in domain.Intake, style unit.Style) string {
	words := f.PortionWords + ", " + style.Grams(f.Portion) + ": counts as " + f.CountsAs(f.Portion, per).Words()
	if !f.Suits(in.Pattern, in.Avoid) {
		words += ". Not for this client: another eating pattern, or something that is avoided"
	}
	return words + "."
}

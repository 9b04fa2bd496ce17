package reports

import (
	"testing"

	"handbreadth/domain"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
)

// What a client does not eat is not drawn for them.
func TestNoFoodIsDrawnThatIsNotEaten(t *testing.T) {
	cases := []struct {
		name        string
		pattern     food.Pattern
		avoid       []food.Allergen
		palm, thumb bool
	}{
		{"omnivore", food.Omnivore, nil, false, false},
		{"vegan", food.Vegan, nil, true, false},
		{"vegetarian", food.Vegetarian, nil, true, false},
		{"no fish", food.Pescatarian, []food.Allergen{food.FishFlesh}, true, false},
		{"no tree nuts", food.Omnivore, []food.Allergen{food.TreeNuts}, false, true},
	}
	for _, c := range cases {
		got := bareFor(domain.Intake{Pattern: c.pattern, Avoid: c.avoid})
		if got[hand.Palm] != c.palm || got[hand.Thumb] != c.thumb || got[hand.Fist] || got[hand.CuppedHand] {
			t.Errorf("%s: bare %v", c.name, got)
		}
		s := newSheet(A4, house{bare: got})
		bare, full := s.picture(pictureKey{kind: hand.Palm}), newPicture(pictureKey{kind: hand.Palm}, s.opt.hand, s.wash)
		if same := string(bare.stream) == string(full.stream); same == c.palm {
			t.Errorf("%s: the palm is drawn with food: %v", c.name, same)
		}
	}
}

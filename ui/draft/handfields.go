package draft

import "handbreadth/domain/hand"

// The fields of the client's hand and of the wishes for meals.
const (
	PalmBreadth Field = "hand.palm_breadth"
	PalmLength  Field = "hand.palm_length"
	HandLength  Field = "hand.hand_length"
	Basket      Field = "hand.basket" // codes of foods with their shares: see [hand.ParseBasket]
	Ranges      Field = "hand.ranges" // [AnswerYes] tells measures as ranges
	MealWishes  Field = "meal_wishes" // see [hand.ParseWishes]
	MealSizes   Field = "meal_sizes"  // a name for each meal, with commas between
)

const weighedPrefix = "hand.weighed."

// WeighedFood returns the field of the food that was weighed in a measure, by
// its code.
func WeighedFood(k hand.Kind) Field { return Field(weighedPrefix + k.Key() + ".food") }

// WeighedGrams returns the field of what one measure of it weighed.
func WeighedGrams(k hand.Kind) Field { return Field(weighedPrefix + k.Key() + ".grams") }

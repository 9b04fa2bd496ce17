package food

// Class is the kind of a food: "meat", "starchy_vegetable".
type Class string

// The classes of foods.
const (
	ClassMeat             Class = "meat"
	ClassPoultry          Class = "poultry"
	ClassFish             Class = "fish"
	ClassEgg              Class = "egg"
	ClassMilk             Class = "milk"
	ClassCheese           Class = "cheese"
	ClassPulse            Class = "pulse"
	ClassLeafy            Class = "leafy"
	ClassVegetable        Class = "vegetable"
	ClassStarchyVegetable Class = "starchy_vegetable"
	ClassFruit            Class = "fruit"
	ClassGrain            Class = "grain"
	ClassBread            Class = "bread"
	ClassRoot             Class = "root"
	ClassFat              Class = "fat"
	ClassNut              Class = "nut"
	ClassSoup             Class = "soup"
	ClassDish             Class = "dish"
	ClassSweet            Class = "sweet"
	ClassSnack            Class = "snack"
	ClassSauce            Class = "sauce"
	ClassDrink            Class = "drink"
	ClassAlcohol          Class = "alcohol"
)

// classes holds each class in the order of the table, with its name and the
// measures that a food of it may fill alone.
var classes = []struct {
	class Class
	name  string
	fills []Group
}{
	{ClassMeat, "meat", []Group{Protein}},
	{ClassPoultry, "poultry", []Group{Protein}},
	{ClassFish, "fish and seafood", []Group{Protein}},
	{ClassEgg, "eggs", []Group{Protein}},
	{ClassMilk, "milk, yoghurt and plant drinks", []Group{Protein}},
	{ClassCheese, "cheese", []Group{Protein}},
	{ClassPulse, "pulses and soya", []Group{Protein}},
	{ClassLeafy, "leafy vegetables", []Group{Vegetables}},
	{ClassVegetable, "vegetables", []Group{Vegetables}},
	{ClassStarchyVegetable, "starchy vegetables", []Group{StarchAndFruit}},
	{ClassFruit, "fruit", []Group{StarchAndFruit, OilsAndNuts}},
	{ClassGrain, "grains, pasta and rice", []Group{StarchAndFruit}},
	{ClassBread, "bread and crackers", []Group{StarchAndFruit}},
	{ClassRoot, "starchy roots", []Group{StarchAndFruit}},
	{ClassFat, "oils and fats", []Group{OilsAndNuts}},
	{ClassNut, "nuts and seeds", []Group{OilsAndNuts, StarchAndFruit}},
	{ClassSoup, "soups", nil},
	{ClassDish, "mixed dishes", nil},
	{ClassSweet, "sweets and desserts", nil},
	{ClassSnack, "snacks", nil},
	{ClassSauce, "sauces and seasonings", nil},
	{ClassDrink, "drinks", nil},
	{ClassAlcohol, "alcohol", nil},
}

// Classes lists the classes in the order of the table.
func Classes() []Class { return append([]Class(nil), classList...) }

var classList = func() []Class {
	list := make([]Class, len(classes))
	for i, c := range classes {
		list[i] = c.class
	}
	return list
}()

// Name returns the class in words: "milk, yoghurt and plant drinks".
func (c Class) Name() string {
	for _, known := range classes {
		if known.class == c {
			return known.name
		}
	}
	return string(c)
}

// mayFill reports whether a food of the class may fill a measure alone.
func (c Class) mayFill(g Group) bool {
	for _, known := range classes {
		if known.class == c {
			for _, fills := range known.fills {
				if fills == g {
					return true
				}
			}
		}
	}
	return false
}

// State is how a food is when its figures hold.
type State string

// The states of a food.
const (
	StateRaw    State = "raw"
	StateCooked State = "cooked"
	StateDry    State = "dry"
	StateReady  State = "ready" // eaten as it is bought
)

var stateList = []State{StateRaw, StateCooked, StateDry, StateReady}

// Cuisine is a kitchen of the world in which a food is at home.
type Cuisine string

// Cuisines lists the kitchens in alphabetical order.
func Cuisines() []Cuisine { return append([]Cuisine(nil), cuisineList...) }

var cuisineList = []Cuisine{
	"african", "caribbean", "east_asian", "european", "latin_american", "mediterranean",
	"middle_eastern", "north_american", "oceanian", "south_asian", "south_east_asian",
}

// Size is the hand shape that an amount of a food is told by, or the serving
// where no hand shape suits.
type Size string

// The sizes.
const (
	SizePalm       Size = "palm"
	SizeFist       Size = "fist"
	SizeCuppedHand Size = "cupped_hand"
	SizeThumb      Size = "thumb"
	SizeServing    Size = "serving"
)

var sizeList = []Size{SizePalm, SizeFist, SizeCuppedHand, SizeThumb, SizeServing}

// group returns the group of foods that a hand shape measures, and false for a
// serving.
func (s Size) group() (Group, bool) {
	switch s {
	case SizePalm:
		return Protein, true
	case SizeFist:
		return Vegetables, true
	case SizeCuppedHand:
		return StarchAndFruit, true
	case SizeThumb:
		return OilsAndNuts, true
	}
	return 0, false
}

// Words returns the size in words, with what it is on the reference hand.
func (s Size) Words() string {
	switch s {
	case SizePalm:
		return "a palm (85 g cooked)"
	case SizeFist:
		return "a fist (240 ml)"
	case SizeCuppedHand:
		return "a cupped hand (120 ml)"
	case SizeThumb:
		return "a thumb (15 ml)"
	}
	return "a serving"
}

func oneOf[T ~string](text string, list []T) bool {
	for _, known := range list {
		if string(known) == text {
			return true
		}
	}
	return false
}

func joined[T ~string](list []T) string {
	out := ""
	for i, word := range list {
		if i > 0 {
			out += ", "
		}
		out += string(word)
	}
	return out
}

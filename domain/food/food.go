package food

import (
	"slices"

	"handbreadth/domain/unit"
)

// Group is what a food is in a meal; each hand measure is filled from one.
type Group int

// The groups of foods.
const (
	Protein        Group = iota // fills a palm
	Vegetables                  // fills a fist
	StarchAndFruit              // fills a cupped hand
	OilsAndNuts                 // fills a thumb
)

// Groups lists the groups in the order of the measures.
func Groups() []Group { return []Group{Protein, Vegetables, StarchAndFruit, OilsAndNuts} }

// Measure returns the name of the hand measure that the group fills: "palm".
func (g Group) Measure() string { return [...]string{"palm", "fist", "cupped hand", "thumb"}[g] }

// Food is one line of the table.
type Food struct {
	Code         string    // stable name, kept in a choice: "chicken_breast"
	NDB          string    // number in the USDA database
	Name         string    // in our own words
	Class        Class     // kind of food
	State        State     // in which its figures hold
	Size         Size      // hand shape that its portion is told by
	Portion      unit.Gram // that fills the reference measure, or one serving
	PortionWords string    // the household measure that the portion is
	Cup          unit.Gram // weight of 240 ml, 0 where it is not told by volume
	Share        unit.Ratio
	per100       per100
	origin       origin
	allergens    []Allergen
	known        bool // whether the allergens are known
	cuisines     []Cuisine
	measures     []Household
	from, cup    derivedFrom // how portion and cup weight were made
	also         string      // other names by which it is found
}

// Household is a measure of the kitchen: 1 cup chopped, 140 g.
type Household struct {
	Seq   int    // number in the source's list for the food
	Words string // "1 cup chopped"
	Grams unit.Gram
}

// derivedFrom says which household measure, times what, an amount is.
type derivedFrom struct {
	ndb    string // of the food whose measure is borrowed, "" for its own
	seq    int    // 0 where the amount is the palm's own weight
	factor float64
}

// Amounts is what an amount of a food brings. A figure that the source does not
// give counts as none; [Food.Details] tells whether it is known.
type Amounts struct {
	Energy                            unit.Kilocalorie
	Protein, Fat, Carbohydrate, Fibre unit.Gram
}

// Brings returns what a mass of the food brings.
func (f Food) Brings(mass unit.Gram) Amounts { return f.per100.brings(mass) }

func (a Amounts) plus(o Amounts, times float64) Amounts {
	return Amounts{
		Energy:       a.Energy + unit.Kilocalorie(times*float64(o.Energy)),
		Protein:      a.Protein + unit.Gram(times*float64(o.Protein)),
		Fat:          a.Fat + unit.Gram(times*float64(o.Fat)),
		Carbohydrate: a.Carbohydrate + unit.Gram(times*float64(o.Carbohydrate)),
		Fibre:        a.Fibre + unit.Gram(times*float64(o.Fibre)),
	}
}

// Contains reports whether the food contains the allergen. A food whose
// allergens are not known is treated as containing every one.
func (f Food) Contains(a Allergen) bool { return f.contains(a) }

func (f *Food) contains(a Allergen) bool { return !f.known || slices.Contains(f.allergens, a) }

// Allergens returns what the food is known to contain; nothing where that is
// not known, so ask [Food.AllergensKnown] before saying that it is free of any.
func (f Food) Allergens() []Allergen { return append([]Allergen(nil), f.allergens...) }

// AllergensKnown reports whether it is known what the food contains.
func (f Food) AllergensKnown() bool { return f.known }

// Suits reports whether an eating pattern has the food and it contains none of
// the avoided allergens.
func (f Food) Suits(p Pattern, avoid []Allergen) bool { return f.suits(p, avoid) }

func (f *Food) suits(p Pattern, avoid []Allergen) bool {
	return p.has(f.origin) && !slices.ContainsFunc(avoid, f.contains)
}

// Cuisines returns the kitchens in which the food is at home; none for a food
// that is eaten everywhere.
func (f Food) Cuisines() []Cuisine { return append([]Cuisine(nil), f.cuisines...) }

// Measures returns the kitchen measures of the food.
func (f Food) Measures() []Household { return append([]Household(nil), f.measures...) }

// eaten reports whether the food is eaten as it stands, rather than cooked
// first or put into something.
func (f Food) eaten() bool {
	switch f.State {
	case StateDry:
		return f.Class == ClassFruit
	case StateRaw:
		switch f.Class {
		case ClassMeat, ClassPoultry, ClassFish, ClassEgg, ClassPulse, ClassRoot, ClassGrain:
			return false
		}
	}
	return true
}

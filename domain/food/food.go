package food

import "handbreadth/domain/unit"

// Group is what a food is in a meal; each hand measure is filled from one.
type Group int

// The groups of foods.
const (
	Protein Group = iota
	Vegetables
	StarchAndFruit
	OilsAndNuts
)

// Food is one food with the portion that fills a hand measure.
type Food struct {
	NDB          string    // number in the USDA database
	Name         string    // in our own words
	Portion      unit.Gram // that fills the reference measure
	PortionWords string    // the household measure that the portion is
	Share        float64   // of the basket, relative to the others
	per100       per100
	origin       origin
	allergens    []Allergen
	known        bool // whether the allergens are known
}

// per100 is what a hundred grams bring: kcal, then grams.
type per100 struct{ energy, protein, fat, carbohydrate, fibre float64 }

// Amounts is what an amount of a food brings.
type Amounts struct {
	Energy                            unit.Kilocalorie
	Protein, Fat, Carbohydrate, Fibre unit.Gram
}

// Brings returns what a mass of the food brings.
func (f Food) Brings(mass unit.Gram) Amounts {
	k := float64(mass) / 100
	return Amounts{
		Energy:       unit.Kilocalorie(k * f.per100.energy),
		Protein:      unit.Gram(k * f.per100.protein),
		Fat:          unit.Gram(k * f.per100.fat),
		Carbohydrate: unit.Gram(k * f.per100.carbohydrate),
		Fibre:        unit.Gram(k * f.per100.fibre),
	}
}

// Contains reports whether the food contains the allergen. A food whose
// allergens are not known is treated as containing every one.
func (f Food) Contains(a Allergen) bool {
	if !f.known {
		return true
	}
	for _, has := range f.allergens {
		if has == a {
			return true
		}
	}
	return false
}

// Allergens returns what the food is known to contain.
func (f Food) Allergens() []Allergen { return append([]Allergen(nil), f.allergens...) }

// Basket returns the foods of a group that fit an eating pattern and contain
// none of the avoided allergens, in the order of the table. It is never empty:
// each group holds a plant food without a declared allergen.
func Basket(g Group, p Pattern, avoid []Allergen) []Food {
	var basket []Food
	for _, f := range table(g) {
		if p.has(f.origin) && !containsAny(f, avoid) {
			basket = append(basket, f)
		}
	}
	return basket
}

func containsAny(f Food, avoid []Allergen) bool {
	for _, a := range avoid {
		if f.Contains(a) {
			return true
		}
	}
	return false
}

func table(g Group) []Food {
	switch g {
	case Protein:
		return tableProtein
	case Vegetables:
		return tableVegetables
	case StarchAndFruit:
		return tableStarch
	default:
		return tableFats
	}
}

// Table returns every food of a group.
func Table(g Group) []Food { return append([]Food(nil), table(g)...) }

package food

import (
	"sort"
	"strings"
)

// Allergen is one of the allergens that EU or US law has declared on labels.
type Allergen string

// The allergens of Regulation (EU) 1169/2011, annex II, and of the US FALCPA
// with the FASTER Act of 2021 (wheat, tree nuts, crustaceans, sesame).
const (
	Gluten      Allergen = "gluten"
	Wheat       Allergen = "wheat"
	Crustaceans Allergen = "crustacean"
	Eggs        Allergen = "egg"
	FishFlesh   Allergen = "fish"
	Peanuts     Allergen = "peanut"
	Soybeans    Allergen = "soybean"
	Milk        Allergen = "milk"
	TreeNuts    Allergen = "tree_nut"
	Celery      Allergen = "celery"
	Mustard     Allergen = "mustard"
	Sesame      Allergen = "sesame"
	Sulphites   Allergen = "sulphite"
	Lupin       Allergen = "lupin"
	Molluscs    Allergen = "mollusc"
)

// Allergens lists the allergens in the order of the EU list.
func Allergens() []Allergen { return append([]Allergen(nil), allergenList...) }

var allergenList = []Allergen{
	Gluten, Wheat, Crustaceans, Eggs, FishFlesh, Peanuts, Soybeans, Milk,
	TreeNuts, Celery, Mustard, Sesame, Sulphites, Lupin, Molluscs,
}

// Name returns the allergen's name as a label prints it: "tree nuts".
func (a Allergen) Name() string {
	switch a {
	case Gluten:
		return "cereals containing gluten"
	case Wheat, FishFlesh, Milk, Celery, Mustard, Sesame, Lupin:
		return string(a)
	}
	return strings.ReplaceAll(string(a), "_", " ") + "s"
}

// words maps each accepted word to the allergens that it rules out. A word that
// covers more than one group rules out all of them.
var words = map[string][]Allergen{
	"gluten": {Gluten, Wheat}, "cereal": {Gluten, Wheat}, "gluten_cereal": {Gluten, Wheat}, "cereal_containing_gluten": {Gluten, Wheat}, "cereals_containing_gluten": {Gluten, Wheat},
	"wheat": {Wheat}, "rye": {Gluten}, "barley": {Gluten}, "oat": {Gluten},
	"crustacean": {Crustaceans}, "crustacean_shellfish": {Crustaceans}, "shellfish": {Crustaceans, Molluscs},
	"egg": {Eggs}, "fish": {FishFlesh}, "peanut": {Peanuts}, "groundnut": {Peanuts},
	"soybean": {Soybeans}, "soy": {Soybeans}, "soya": {Soybeans}, "soya_bean": {Soybeans}, "soy_bean": {Soybeans},
	"milk": {Milk}, "dairy": {Milk}, "lactose": {Milk},
	"tree_nut": {TreeNuts}, "nut": {TreeNuts, Peanuts},
	"almond": {TreeNuts}, "hazelnut": {TreeNuts}, "walnut": {TreeNuts}, "cashew": {TreeNuts}, "pecan": {TreeNuts},
	"brazil_nut": {TreeNuts}, "pistachio": {TreeNuts}, "macadamia": {TreeNuts}, "macadamia_nut": {TreeNuts},
	"celery": {Celery}, "mustard": {Mustard}, "sesame": {Sesame}, "sesame_seed": {Sesame},
	"sulphite": {Sulphites}, "sulfite": {Sulphites}, "sulphur_dioxide": {Sulphites}, "sulfur_dioxide": {Sulphites},
	"lupin": {Lupin}, "mollusc": {Molluscs}, "mollusk": {Molluscs},
}

// ParseAllergen reads one word, singular or plural, in lower snake case, and
// returns the allergens that it rules out; false where the word is not known.
func ParseAllergen(word string) ([]Allergen, bool) {
	w := strings.ReplaceAll(strings.ToLower(strings.TrimSpace(word)), " ", "_")
	for _, try := range []string{w, strings.TrimSuffix(w, "s"), strings.TrimSuffix(w, "es")} {
		if found, ok := words[try]; ok {
			return append([]Allergen(nil), found...), true
		}
	}
	return nil, false
}

// AllergenWords lists every accepted word in the singular, in alphabetical order.
func AllergenWords() []string {
	list := make([]string, 0, len(words))
	for w := range words {
		list = append(list, w)
	}
	sort.Strings(list)
	return list
}

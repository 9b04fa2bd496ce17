package food

import (
	_ "embed" // the table is data of this package
	"sync"
)

//go:embed foods.csv
var foodsCSV string

// index is the parsed table with what is looked up in it often.
type index struct {
	foods  []Food
	byCode map[string]int
	byNDB  map[string]int
	groups [4][]Food // that fill a measure
	usual  [4][]Food // of the usual baskets
}

// theTable parses the embedded table at its first use. A table that does not
// parse cannot be built into a program that passed its tests.
var theTable = sync.OnceValue(func() *index {
	foods, err := parse(foodsCSV)
	if err != nil {
		panic("food table: " + err.Error())
	}
	return indexed(foods)
})

func indexed(foods []Food) *index {
	t := &index{foods: foods, byCode: make(map[string]int, len(foods)), byNDB: make(map[string]int, len(foods))}
	for i, f := range foods {
		t.byCode[f.Code], t.byNDB[f.NDB] = i, i
		g, fills := f.Fills()
		if !fills {
			continue
		}
		t.groups[g] = append(t.groups[g], f)
		if f.Share > 0 {
			t.usual[g] = append(t.usual[g], f)
		}
	}
	return t
}

// All returns every food, in the order of the table: class by class.
func All() []Food { return append([]Food(nil), theTable().foods...) }

// ByCode returns the food with a code, and false where there is none.
func ByCode(code string) (Food, bool) {
	i, ok := theTable().byCode[code]
	return theTable().at(i, ok)
}

// ByNDB returns the food whose figures stand under a number of the USDA
// database, and false where there is none.
func ByNDB(number string) (Food, bool) {
	i, ok := theTable().byNDB[number]
	return theTable().at(i, ok)
}

func (t *index) at(i int, ok bool) (Food, bool) {
	if !ok {
		return Food{}, false
	}
	return t.foods[i], true
}

// Table returns every food that fills the measure of a group alone, those of
// the usual basket and the others.
func Table(g Group) []Food { return append([]Food(nil), theTable().groups[g]...) }

// Basket returns the foods of the usual basket of a group that fit an eating
// pattern and contain none of the avoided allergens, in the order of the table.
// It is never empty: each group holds a plant food without a declared allergen.
func Basket(g Group, p Pattern, avoid []Allergen) []Food {
	usual := theTable().usual[g]
	basket := make([]Food, 0, len(usual))
	for i := range usual {
		if usual[i].suits(p, avoid) {
			basket = append(basket, usual[i])
		}
	}
	return basket
}

// Mean returns what one portion of a basket brings, each food by its share;
// nothing where no food has one.
func Mean(basket []Food) Amounts {
	var sum Amounts
	var shares float64
	for i := range basket {
		f := &basket[i]
		sum = sum.plus(f.per100.brings(f.Portion), float64(f.Share))
		shares += float64(f.Share)
	}
	if shares == 0 {
		return Amounts{}
	}
	return Amounts{}.plus(sum, 1/shares)
}

package food

import "handbreadth/domain/unit"

// figure is a cell of the table that may be empty.
type figure struct {
	value float64
	known bool
}

// per100 is what a hundred grams bring: kcal, grams, then milligrams, and
// micrograms of vitamin D.
type per100 struct {
	energy, protein, fat, carbohydrate         float64
	fibre, saturated, sugars, alcohol          figure
	sodium, potassium, calcium, iron, vitaminC figure
	vitaminD                                   figure
}

func (n *per100) brings(mass unit.Gram) Amounts {
	k := float64(mass) / 100
	return Amounts{
		Energy:       unit.Kilocalorie(k * n.energy),
		Protein:      unit.Gram(k * n.protein),
		Fat:          unit.Gram(k * n.fat),
		Carbohydrate: unit.Gram(k * n.carbohydrate),
		Fibre:        unit.Gram(k * n.fibre.value),
	}
}

// Figure is an amount that the source may not give.
type Figure[T ~float64] struct {
	Value T
	Known bool // false: not given, which is not nought
}

// Details is what an amount of a food brings beside energy and macros.
type Details struct {
	Fibre, Saturated, Sugars, Alcohol          Figure[unit.Gram]
	Sodium, Potassium, Calcium, Iron, VitaminC Figure[unit.Milligram]
	VitaminD                                   Figure[unit.Microgram]
}

// Details returns what a mass of the food brings beside energy and macros.
func (f Food) Details(mass unit.Gram) Details {
	n, k := f.per100, float64(mass)/100
	return Details{
		Fibre: times[unit.Gram](n.fibre, k), Saturated: times[unit.Gram](n.saturated, k),
		Sugars: times[unit.Gram](n.sugars, k), Alcohol: times[unit.Gram](n.alcohol, k),
		Sodium: times[unit.Milligram](n.sodium, k), Potassium: times[unit.Milligram](n.potassium, k),
		Calcium: times[unit.Milligram](n.calcium, k), Iron: times[unit.Milligram](n.iron, k),
		VitaminC: times[unit.Milligram](n.vitaminC, k), VitaminD: times[unit.Microgram](n.vitaminD, k),
	}
}

func times[T ~float64](f figure, k float64) Figure[T] {
	return Figure[T]{Value: T(k * f.value), Known: f.known}
}

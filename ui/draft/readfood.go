package draft

import (
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/macro"
	"handbreadth/domain/unit"
)

// goal reads what the weight should do. Where it should stay, what was typed for
// another weight stays in the form and is not read.
func (r *reader) goal() {
	g := energy.Goal{Kind: energy.GoalKind(r.form.Get(GoalKind))}
	if g.Kind != energy.Maintain {
		g.Weight = r.weight(GoalWeight)
		g.By = r.date(GoalBy)
		g.PerWeek = r.rate(GoalPerWeek)
	}
	g.Energy = r.energy(GoalEnergy)
	r.out.Intake.Goal = g
}

// rate reads a change of weight a week, without a sign.
func (r *reader) rate(field Field) unit.KilogramPerWeek {
	text := r.form.Get(field)
	if text == "" {
		return 0
	}
	rate, err := unit.ParseRateIn(string(field), text, r.style.System)
	if r.keep(field, err) {
		r.out.Understood[field] = r.style.Rate(rate)
	}
	return rate
}

func (r *reader) food() {
	in := &r.out.Intake
	if text := r.form.Get(Pattern); text != "" {
		in.Pattern = food.Pattern(text)
	}
	if n, ok := r.number(Meals, domain.LeastMeals, domain.MostMeals, "1 to 6 meals a day"); ok {
		in.MealsPerDay = int(n)
		if n != float64(int(n)) {
			r.refuse(Meals, "1 to 6 meals a day, as a whole number")
		}
	}
	for _, word := range AvoidWords(r.form.Get(Avoid)) {
		found, ok := food.ParseAllergen(word)
		if !ok {
			r.out.Problems[Avoid] = unit.Problem{Field: string(Avoid), Given: word, Accepted: "allergens of the EU and US lists, such as peanut, milk or gluten"}
			continue
		}
		in.Avoid = append(in.Avoid, found...)
	}
	in.UsualFibre, _ = r.grams(UsualFibre, domain.MostUsualFibre, "the fibre of a usual day, 0 to 150 g, or nothing")
}

// AvoidWords splits the text of [Avoid] into its words.
func AvoidWords(text string) []string {
	var list []string
	for _, word := range strings.Split(text, ",") {
		if word = strings.TrimSpace(word); word != "" {
			list = append(list, word)
		}
	}
	return list
}

// What is written behind an amount for each kilogram.
var perKilogram = []string{"g/kg", "g per kg", "g a kg"}

func (r *reader) settings() {
	in := &r.out.Intake
	in.CarbFatBalance = r.percent(Balance, 0, 100, in.CarbFatBalance)
	in.FatFloor = r.percent(FatFloor, macro.LeastFatFloor, macro.MostFatFloor, in.FatFloor)
	in.FatFloorPerKg = r.perKg(FatFloorPerKg, domain.LeastFatFloorPerKg, domain.MostFatFloorPerKg, "0.3 to 1.5 g/kg, or nothing")
	in.ProteinPerKg = r.perKg(Protein, macro.LeastProteinPerKg, macro.MostProteinPerKg, "0.8 to 2.5 g/kg, or nothing")
	in.ProteinBasis = choice(r, ProteinBasis, macro.Bases(), "by_bmi", "by_bmi, current, adjusted or lean, or nothing")
	in.Counting = choice(r, Counting, macro.Countings(), "total", "total or available, or nothing")
}

func (r *reader) perKg(field Field, least, most unit.GramPerKilogram, accepted string) unit.GramPerKilogram {
	value, _ := r.amount(field, float64(least), float64(most), accepted, perKilogram)
	return unit.GramPerKilogram(value)
}

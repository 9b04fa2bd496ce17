package hand

import "strconv"

// share deals a day's measures out to its meals as evenly as halves allow. Each
// half that is left over goes to the meal with the least energy so far, the
// measures with the most energy first, so that the meals end up alike.
func share(meals int, day Measures, contents Contents) []Meal {
	counts := make([][4]int, meals)
	energy := make([]float64, meals)
	for _, k := range byEnergy(contents) {
		total := halvesOf(day.Of(k))
		each, left := total/meals, total%meals
		per := float64(contents[k].Nutrients.Energy) / halvesInWhole
		got := make([]bool, meals)
		for i := range counts {
			counts[i][k] = each
			energy[i] += float64(each) * per
		}
		for ; left > 0; left-- {
			i := lightest(energy, got)
			got[i] = true
			counts[i][k]++
			energy[i] += per
		}
	}
	return name(counts, contents)
}

func byEnergy(c Contents) []Kind {
	order := Kinds()
	for i := 1; i < len(order); i++ {
		for j := i; j > 0 && c[order[j]].Nutrients.Energy > c[order[j-1]].Nutrients.Energy; j-- {
			order[j], order[j-1] = order[j-1], order[j]
		}
	}
	return order
}

func lightest(energy []float64, taken []bool) int {
	found := -1
	for i, e := range energy {
		if !taken[i] && (found < 0 || e < energy[found]-1e-9) {
			found = i
		}
	}
	return found
}

func name(counts [][4]int, contents Contents) []Meal {
	meals := make([]Meal, len(counts))
	for i, c := range counts {
		m := Measures{Palm: whole(c[Palm]), Fist: whole(c[Fist]), CuppedHand: whole(c[CuppedHand]), Thumb: whole(c[Thumb])}
		meals[i] = Meal{Name: "Meal " + strconv.Itoa(i+1), Measures: m, Brings: contents.Bring(m)}
	}
	return meals
}

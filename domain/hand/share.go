package hand

import "strconv"

// share deals a day's measures out to its meals: each measure as near to the
// wished sizes of the meals as halves and wishes allow, that is with the least
// sum of squares beside the even share, which giving one half after the other to
// the meal that lacks most of it reaches (the sum is separable and convex).
// Among meals that lack alike, the one with the least energy for its size goes
// first, the measures with the most energy before the others, so that the meals
// end up alike.
func share(a Aim, b mealBounds, day Measures, contents Contents) []Meal {
	d := dealer{sizes: sizes(a), counts: make([][4]int, a.Meals), energy: make([]float64, a.Meals), bounds: b.meals}
	for _, k := range byEnergy(contents) {
		d.deal(k, halvesOf(day.Of(k)), float64(contents[k].Nutrients.Energy)/halvesInWhole)
	}
	return name(d.counts, contents)
}

// sizes returns the share of the day of each meal; they add up to 1.
func sizes(a Aim) []float64 {
	out, sum := make([]float64, a.Meals), 0.0
	for i := range out {
		out[i] = 1
		if i < len(a.Sizes) && a.Sizes[i] > 0 {
			out[i] = float64(a.Sizes[i])
		}
		sum += out[i]
	}
	for i := range out {
		out[i] /= sum
	}
	return out
}

type dealer struct {
	sizes  []float64
	counts [][4]int
	energy []float64
	bounds [][4][2]int
}

func (d *dealer) deal(k Kind, total int, each float64) {
	left := total
	for m := range d.counts {
		d.counts[m][k] = d.bounds[m][k][0]
		d.energy[m] += float64(d.counts[m][k]) * each
		left -= d.counts[m][k]
	}
	for ; left > 0; left-- {
		m := d.next(k, total)
		if m < 0 {
			return
		}
		d.counts[m][k]++
		d.energy[m] += each
	}
}

// next returns the meal that the next half goes to, and -1 where none may have
// more.
func (d *dealer) next(k Kind, total int) int {
	const alike = 1e-9
	at, lacks := -1, 0.0
	for m := range d.counts {
		if d.counts[m][k] >= d.bounds[m][k][1] {
			continue
		}
		lack := d.sizes[m]*float64(total) - float64(d.counts[m][k])
		switch {
		case at < 0 || lack > lacks+alike:
			at, lacks = m, lack
		case lack > lacks-alike && d.energy[m]/d.sizes[m] < d.energy[at]/d.sizes[at]-alike:
			at, lacks = m, lack
		}
	}
	return at
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

func name(counts [][4]int, contents Contents) []Meal {
	meals := make([]Meal, len(counts))
	for i, c := range counts {
		m := Measures{Palm: whole(c[Palm]), Fist: whole(c[Fist]), CuppedHand: whole(c[CuppedHand]), Thumb: whole(c[Thumb])}
		meals[i] = Meal{Name: "Meal " + strconv.Itoa(i+1), Measures: m, Brings: contents.Bring(m)}
	}
	return meals
}

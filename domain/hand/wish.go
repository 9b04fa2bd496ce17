package hand

import (
	"fmt"
	"math"
	"sort"

	"handbreadth/domain/unit"
)

// Wish bounds one measure of one meal, or of the whole day: "no cupped hands at
// dinner" is at most 0, a lock is at least and at most the same.
type Wish struct {
	Meal  int // from 1; 0: the whole day
	Kind  Kind
	Least unit.Measure
	Most  unit.Measure
}

// MostMeasures is the most of one measure that a meal or a day can be given.
const MostMeasures unit.Measure = 48

// Lock returns the wish that fixes a measure of a meal.
func Lock(meal int, k Kind, n unit.Measure) Wish { return Wish{meal, k, n, n} }

// Check says what keeps a wish from being used in a day of so many meals.
func (w Wish) Check(field string, meals int) error {
	inHalves := func(m unit.Measure) bool { return float64(m)*halvesInWhole == math.Trunc(float64(m)*halvesInWhole) }
	switch {
	case w.Meal < 0 || w.Meal > meals:
		return unit.Problem{Field: field, Given: fmt.Sprintf("meal %d", w.Meal), Accepted: fmt.Sprintf("a meal from 1 to %d, or the whole day", meals)}
	case w.Kind < Palm || w.Kind > Thumb:
		return unit.Problem{Field: field, Given: fmt.Sprintf("measure %d", w.Kind), Accepted: "a palm, fist, cupped hand or thumb"}
	case !inHalves(w.Least) || !inHalves(w.Most) || w.Least < 0 || w.Most > MostMeasures || w.Least > w.Most:
		return unit.Problem{Field: field, Given: fmt.Sprintf("%v to %v", float64(w.Least), float64(w.Most)), Accepted: fmt.Sprintf("whole and half measures from 0 to %v, the least not over the most", float64(MostMeasures))}
	}
	return nil
}

// Words tells the wish: "at most 1 cupped hand at meal 2".
func (w Wish) Words() string {
	where := "a day"
	if w.Meal > 0 {
		where = fmt.Sprintf("at meal %d", w.Meal)
	}
	switch {
	case w.Least == w.Most && w.Most == 0:
		return fmt.Sprintf("no %s %s", w.Kind.Plural(), where)
	case w.Least == w.Most:
		return fmt.Sprintf("%s %s", w.Kind.Counted(w.Most), where)
	case w.Least == 0:
		return fmt.Sprintf("at most %s %s", w.Kind.Counted(w.Most), where)
	case w.open():
		return fmt.Sprintf("at least %s %s", w.Kind.Counted(w.Least), where)
	}
	return fmt.Sprintf("%s to %s %s", w.Least, w.Kind.Counted(w.Most), where)
}

// open reports whether the wish has no upper bound of its own.
func (w Wish) open() bool { return w.Most >= MostMeasures }

// Conflict returns the smallest set of wishes that cannot be kept together, and
// nothing where all can. Of several sets of one size the first is told.
//
// Each measure stands by itself, and its wishes bound sums: two wishes for one
// meal conflict where the least of one is over the most of the other; wishes for
// meals conflict with one for the day where their leasts add up to more than its
// most, or their mosts to less than its least.
func Conflict(meals int, wishes []Wish) []Wish {
	var smallest []Wish
	keep := func(set []Wish) {
		if len(set) > 0 && (smallest == nil || len(set) < len(smallest)) {
			smallest = set
		}
	}
	for _, k := range Kinds() {
		perMeal := make([][]Wish, meals+1)
		for _, w := range wishes {
			if w.Kind == k && w.Meal >= 0 && w.Meal <= meals {
				perMeal[w.Meal] = append(perMeal[w.Meal], w)
			}
		}
		for _, of := range perMeal {
			keep(opposed(of))
		}
		for _, day := range perMeal[0] {
			keep(overDay(day, perMeal[1:]))
			keep(underDay(day, perMeal[1:]))
		}
	}
	return smallest
}

// opposed returns two wishes for the same place of which no count keeps both.
func opposed(wishes []Wish) []Wish {
	for i, a := range wishes {
		for _, b := range wishes[i+1:] {
			if a.Least > b.Most || b.Least > a.Most {
				return []Wish{a, b}
			}
		}
	}
	return nil
}

// overDay returns the fewest wishes for meals that ask for more than a day may
// have, after that of the day.
func overDay(day Wish, perMeal [][]Wish) []Wish {
	var leasts []Wish
	for _, of := range perMeal {
		if len(of) > 0 {
			sort.SliceStable(of, func(i, j int) bool { return of[i].Least > of[j].Least })
			leasts = append(leasts, of[0])
		}
	}
	sort.SliceStable(leasts, func(i, j int) bool { return leasts[i].Least > leasts[j].Least })
	set, sum := []Wish{day}, unit.Measure(0)
	for _, w := range leasts {
		set, sum = append(set, w), sum+w.Least
		if sum > day.Most {
			return set
		}
	}
	return nil
}

// underDay returns the wishes for meals that leave less than a day must have:
// it takes all meals, each by its tightest wish.
func underDay(day Wish, perMeal [][]Wish) []Wish {
	set, sum := []Wish{day}, unit.Measure(0)
	for _, of := range perMeal {
		most := MostMeasures
		var tightest *Wish
		for i, w := range of {
			if w.Most < most {
				most, tightest = w.Most, &of[i]
			}
		}
		if tightest != nil {
			set = append(set, *tightest)
		}
		sum += most
	}
	if sum < day.Least {
		return set
	}
	return nil
}

// mealBounds are the least and most halves of each measure in each meal and in
// the day.
type mealBounds struct {
	meals [][4][2]int
	day   [4][2]int
}

// boundsOf joins the wishes of an aim with the bounds of meals.
func boundsOf(a Aim) mealBounds {
	b := mealBounds{meals: make([][4][2]int, a.Meals)}
	for _, k := range Kinds() {
		b.day[k] = [2]int{0, halvesOf(MostMeasures)}
		for m := range b.meals {
			b.meals[m][k] = [2]int{0, halvesOf(MostMeasures)}
		}
	}
	for _, w := range a.Wishes {
		at := &b.day[w.Kind]
		if w.Meal > 0 {
			at = &b.meals[w.Meal-1][w.Kind]
		}
		at[0], at[1] = max(at[0], halvesOf(w.Least)), min(at[1], halvesOf(w.Most))
	}
	for _, k := range Kinds() {
		least, most := 0, 0
		for m := range b.meals {
			least, most = least+b.meals[m][k][0], most+b.meals[m][k][1]
		}
		b.day[k][0], b.day[k][1] = max(b.day[k][0], least), min(b.day[k][1], most)
	}
	fists := min(max(a.fistHalves(), b.day[Fist][0]), b.day[Fist][1])
	b.day[Fist] = [2]int{fists, fists}
	return b
}

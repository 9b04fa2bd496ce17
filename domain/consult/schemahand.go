package consult

import (
	"handbreadth/domain"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

var (
	weighedSpan = spanOf(0.1, 5000, "a number of grams")
	shareSpan   = spanOf(0.001, 10, "a number")
)

func readHand(r *reader, v value, in *domain.Intake) { r.fields(v, in, handFields) }

var handFields = []field{
	{"palm_breadth", func(r *reader, v value, in *domain.Intake) {
		in.Hand.Size.PalmBreadth = quantity(r, v, unit.ParseLength)
	}},
	{"palm_length", func(r *reader, v value, in *domain.Intake) {
		in.Hand.Size.PalmLength = quantity(r, v, unit.ParseLength)
	}},
	{"hand_length", func(r *reader, v value, in *domain.Intake) {
		in.Hand.Size.HandLength = quantity(r, v, unit.ParseLength)
	}},
	{"weighed", func(r *reader, v value, in *domain.Intake) { r.fields(v, in, weighedFields()) }},
	{"basket", readBasket},
	{"ranges", func(r *reader, v value, in *domain.Intake) { in.Hand.Ranges, _ = r.flag(v) }},
}

// weighedFields is the schema of the weighings: a key for each measure.
func weighedFields() []field {
	var schema []field
	for _, k := range hand.Kinds() {
		schema = append(schema, field{k.Key(), func(r *reader, v value, in *domain.Intake) {
			before := len(r.problems)
			w := hand.Weighing{Kind: k}
			if _, isObject := r.fields(v, in, weighingFields(&w)); isObject && len(r.problems) == before {
				r.needs(v, w.Food.Code == "", "food", foodAccepted)
				r.needs(v, w.Grams == 0, "grams", weighedSpan.words)
			}
			if len(r.problems) == before {
				in.Hand.Weighed = append(in.Hand.Weighed, w)
			}
		}})
	}
	return schema
}

const foodAccepted = `the code of a food in the table, such as "chicken_breast"`

func weighingFields(w *hand.Weighing) []field {
	return []field{
		{"food", func(r *reader, v value, _ *domain.Intake) {
			code, ok := r.text(v, foodAccepted)
			f, known := food.ByCode(code)
			if ok && !known {
				r.refuse(v.path, code, foodAccepted)
			}
			w.Food = f
		}},
		{"grams", func(r *reader, v value, _ *domain.Intake) { w.Grams = unit.Gram(r.number(v, weighedSpan)) }},
	}
}

// needs names a key that an object lacks.
func (r *reader) needs(v value, lacks bool, key, accepted string) {
	if lacks {
		r.refuse(v.inside(key), "", accepted)
	}
}

// readBasket reads the foods that the practitioner chose, each with its share.
func readBasket(r *reader, v value, in *domain.Intake) {
	const accepted = `a list of foods with their shares, such as [{"code": "chicken_breast", "share": 2}]`
	if v.raw[0] != '[' {
		r.refuse(v.path, v.given(), accepted)
		return
	}
	for _, item := range v.items() {
		chosen := food.ChosenFood{Share: 1}
		schema := []field{
			{"code", func(r *reader, v value, _ *domain.Intake) { chosen.Code, _ = r.text(v, foodAccepted) }},
			{"share", func(r *reader, v value, _ *domain.Intake) { chosen.Share = unit.Ratio(r.number(v, shareSpan)) }},
		}
		r.fields(item, in, schema)
		in.Hand.Basket = append(in.Hand.Basket, chosen)
	}
}

func readWishes(r *reader, v value, in *domain.Intake) {
	const accepted = `a list of wishes, such as ["meal 1: cupped hand 0", "day: palm 2 to 3"]`
	if v.raw[0] != '[' {
		r.refuse(v.path, v.given(), accepted)
		return
	}
	for _, item := range v.items() {
		text, ok := r.text(item, accepted)
		if !ok {
			continue
		}
		w, err := hand.ParseWish(item.path, text)
		if r.problems.Keep(err); err == nil {
			in.Hand.Wishes = append(in.Hand.Wishes, w)
		}
	}
}

func readSizes(r *reader, v value, in *domain.Intake) {
	const accepted = `a size for each meal, such as ["light", "usual", "large"]`
	if v.raw[0] != '[' {
		r.refuse(v.path, v.given(), accepted)
		return
	}
	var words []string
	for _, size := range hand.MealSizes() {
		words = append(words, size.String())
	}
	for _, item := range v.items() {
		size, _ := hand.ParseMealSize(choice(r, item, words))
		in.Hand.Sizes = append(in.Hand.Sizes, size)
	}
}

// alternativesOf returns the next nearest days of measures.
func alternativesOf(a hand.Allotment) []Measures {
	list := make([]Measures, len(a.Alternatives))
	for i, other := range a.Alternatives {
		list[i] = measuresOf(other.Day)
	}
	return list
}

// handFactorsOf returns the size of the client's measures beside those of the
// reference adult.
func handFactorsOf(c hand.Calibration) Measures {
	of := func(k hand.Kind) float64 { return rounded(float64(c.Factors[k].Value), "") }
	return Measures{of(hand.Palm), of(hand.Fist), of(hand.CuppedHand), of(hand.Thumb)}
}

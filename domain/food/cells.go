package food

import (
	"strconv"
	"strings"

	"handbreadth/domain/unit"
)

// column is one column of the table: its name, what its cells accept, and how
// one is read into a food; false where it is refused.
type column struct {
	name, accepts string
	set           func(f *Food, cell string) bool
}

// columns are the columns of the table in their order.
var columns = []column{
	{"code", "lower case letters, digits and underscores", func(f *Food, c string) bool { f.Code = c; return isCode(c) }},
	{"name", "a name", func(f *Food, c string) bool { f.Name = c; return c != "" && c == strings.TrimSpace(c) }},
	{"class", joined(classList), func(f *Food, c string) bool { f.Class = Class(c); return oneOf(c, classList) }},
	{"state", joined(stateList), func(f *Food, c string) bool { f.State = State(c); return oneOf(c, stateList) }},
	{"origin", "plant, dairy_or_egg, fish, meat", func(f *Food, c string) (ok bool) { f.origin, ok = origins[c]; return ok }},
	{"ndb", "five digits", func(f *Food, c string) bool { f.NDB = c; return isNumber(c) }},
	needed("energy_kcal", 930, func(f *Food) *float64 { return &f.per100.energy }),
	needed("protein_g", 100, func(f *Food) *float64 { return &f.per100.protein }),
	needed("fat_g", 100, func(f *Food) *float64 { return &f.per100.fat }),
	optional("saturated_g", 100, func(f *Food) *figure { return &f.per100.saturated }),
	needed("carbohydrate_g", 100, func(f *Food) *float64 { return &f.per100.carbohydrate }),
	optional("fibre_g", 100, func(f *Food) *figure { return &f.per100.fibre }),
	optional("sugars_g", 100, func(f *Food) *figure { return &f.per100.sugars }),
	optional("alcohol_g", 100, func(f *Food) *figure { return &f.per100.alcohol }),
	optional("sodium_mg", 40000, func(f *Food) *figure { return &f.per100.sodium }),
	optional("potassium_mg", 40000, func(f *Food) *figure { return &f.per100.potassium }),
	optional("calcium_mg", 40000, func(f *Food) *figure { return &f.per100.calcium }),
	optional("iron_mg", 1000, func(f *Food) *figure { return &f.per100.iron }),
	optional("vitamin_c_mg", 5000, func(f *Food) *figure { return &f.per100.vitaminC }),
	optional("vitamin_d_ug", 1000, func(f *Food) *figure { return &f.per100.vitaminD }),
	{"measures", "measures such as 1: 1 cup chopped = 140; 2: 1 oz = 28.35", setMeasures},
	{"cup_g", "grams of 240 ml, or nothing", func(f *Food, c string) bool { return setGrams(&f.Cup, c, mostPortion) || c == "" }},
	{"cup_from", "a measure and a factor such as 2 x 0.5, where cup_g is given", func(f *Food, c string) bool {
		if f.Cup == 0 {
			return c == ""
		}
		return setFrom(&f.cup, c) && f.cup.seq > 0
	}},
	{"size", joined(sizeList), func(f *Food, c string) bool { f.Size = Size(c); return oneOf(c, sizeList) }},
	{"portion_g", "grams above 0", func(f *Food, c string) bool { return setGrams(&f.Portion, c, mostPortion) }},
	{"portion_from", "a measure and a factor such as 2 x 0.5 or 01088/1 x 1, or weight", func(f *Food, c string) bool {
		return c == "weight" || setFrom(&f.from, c)
	}},
	{"portion_words", "words", func(f *Food, c string) bool { f.PortionWords = c; return c != "" }},
	{"allergens", "unknown, none, or of " + joined(allergenList), setAllergens},
	{"also", "words", func(f *Food, c string) bool { f.also = c; return true }},
	{"cuisines", "of " + joined(cuisineList), setCuisines},
	{"share", "0 to 10", func(f *Food, c string) bool {
		share, ok := decimal(c)
		f.Share = unit.Ratio(share)
		return ok && share <= 10
	}},
}

var origins = map[string]origin{"plant": plant, "dairy_or_egg": dairyOrEgg, "fish": fish, "meat": meat}

func needed(name string, most float64, cell func(*Food) *float64) column {
	return column{name, "a number from 0 to " + strconv.FormatFloat(most, 'f', -1, 64), func(f *Food, c string) (ok bool) {
		*cell(f), ok = decimal(c)
		return ok && *cell(f) <= most
	}}
}

func optional(name string, most float64, cell func(*Food) *figure) column {
	return column{name, "a number from 0 to " + strconv.FormatFloat(most, 'f', -1, 64) + ", or nothing", func(f *Food, c string) bool {
		if c == "" {
			return true
		}
		value, ok := decimal(c)
		*cell(f) = figure{value, true}
		return ok && value <= most
	}}
}

// decimal reads digits with at most one point among them, nothing else. Both
// whole numbers of the division are exact, so the result is the nearest one.
func decimal(text string) (float64, bool) {
	const most = 12
	if text == "" || len(text) > most {
		return 0, false
	}
	whole, scale, point := 0.0, 1.0, false
	for i := range len(text) {
		switch c := text[i]; {
		case c >= '0' && c <= '9':
			whole = whole*10 + float64(c-'0')
			if point {
				scale *= 10
			}
		case c == '.' && !point && i > 0 && i < len(text)-1:
			point = true
		default:
			return 0, false
		}
	}
	return whole / scale, true
}

// Most grams of a portion, and of a household measure, which may be a melon.
const (
	mostPortion = 1000
	mostMeasure = 10000
)

func setGrams(g *unit.Gram, cell string, most float64) bool {
	value, ok := decimal(cell)
	*g = unit.Gram(value)
	return ok && value > 0 && value <= most
}

// setFrom reads "2 x 0.5" or "01088/1 x 1".
func setFrom(from *derivedFrom, cell string) bool {
	measure, factor, ok := strings.Cut(cell, " x ")
	if !ok {
		return false
	}
	if number, seq, borrowed := strings.Cut(measure, "/"); borrowed {
		from.ndb, measure = number, seq
		if !isNumber(number) {
			return false
		}
	}
	from.seq, ok = positive(measure)
	if !ok {
		return false
	}
	from.factor, ok = decimal(factor)
	return ok && from.factor > 0
}

// setMeasures reads "1: 1 cup chopped = 140; 2: 1 oz = 28.35".
func setMeasures(f *Food, cell string) bool {
	if cell == "" {
		return true
	}
	f.measures = make([]Household, 0, strings.Count(cell, "; ")+1)
	for part := range strings.SplitSeq(cell, "; ") {
		seq, rest, found := strings.Cut(part, ": ")
		words, grams, also := strings.Cut(rest, " = ")
		m := Household{Words: words}
		var ok bool
		m.Seq, ok = positive(seq)
		if !found || !also || !ok || words == "" || !setGrams(&m.Grams, grams, mostMeasure) {
			return false
		}
		f.measures = append(f.measures, m)
	}
	return true
}

func setAllergens(f *Food, cell string) bool {
	if cell == "unknown" {
		return true
	}
	f.known = true
	if cell == "none" {
		return true
	}
	for _, word := range strings.Fields(cell) {
		f.allergens = append(f.allergens, Allergen(word))
		if !oneOf(word, allergenList) {
			return false
		}
	}
	return len(f.allergens) > 0
}

func setCuisines(f *Food, cell string) bool {
	for _, word := range strings.Fields(cell) {
		f.cuisines = append(f.cuisines, Cuisine(word))
		if !oneOf(word, cuisineList) {
			return false
		}
	}
	return true
}

func positive(text string) (int, bool) {
	n, err := strconv.Atoi(text)
	return n, err == nil && n > 0 && n < 1000 && text[0] != '+'
}

func isNumber(text string) bool {
	const digits = 5
	if len(text) != digits {
		return false
	}
	for _, c := range text {
		if c < '0' || c > '9' {
			return false
		}
	}
	return true
}

func isCode(text string) bool {
	for _, c := range text {
		if (c < 'a' || c > 'z') && (c < '0' || c > '9') && c != '_' {
			return false
		}
	}
	return text != ""
}

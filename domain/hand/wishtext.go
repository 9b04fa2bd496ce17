package hand

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"handbreadth/domain/unit"
)

// wishAccepted says how a wish is written.
const wishAccepted = `a wish such as "meal 1: cupped hand 0", "meal 2: palm 1 to 2", "day: thumb at most 4" or "day: fist at least 5½"`

// The places and bounds of a wish, as they are written.
const (
	wishDay     = "day"
	wishMeal    = "meal "
	wishAtLeast = "at least "
	wishAtMost  = "at most "
	wishTo      = " to "
	wishBetween = ";"
)

// Text writes the wish so that [ParseWish] reads it: "meal 1: cupped hand 0".
func (w Wish) Text() string {
	where := wishDay
	if w.Meal > 0 {
		where = wishMeal + strconv.Itoa(w.Meal)
	}
	var count string
	switch {
	case w.Least == w.Most:
		count = w.Most.String()
	case w.open():
		count = wishAtLeast + w.Least.String()
	case w.Least == 0:
		count = wishAtMost + w.Most.String()
	default:
		count = w.Least.String() + wishTo + w.Most.String()
	}
	return where + ": " + w.Kind.Name() + " " + count
}

// WishesText writes wishes so that [ParseWishes] reads them.
func WishesText(wishes []Wish) string {
	texts := make([]string, len(wishes))
	for i, w := range wishes {
		texts[i] = w.Text()
	}
	return strings.Join(texts, wishBetween+" ")
}

// ParseWishes reads wishes with semicolons or line breaks between. The error is
// the [unit.Problem] of the first that cannot be read; which meals there are is
// not known here.
func ParseWishes(field, text string) ([]Wish, error) {
	var wishes []Wish
	for _, one := range strings.FieldsFunc(text, func(r rune) bool { return r == ';' || r == '\n' }) {
		if strings.TrimSpace(one) == "" {
			continue
		}
		w, err := ParseWish(field, one)
		if err != nil {
			return nil, err
		}
		wishes = append(wishes, w)
	}
	return wishes, nil
}

// ParseWish reads one wish: where ("day" or "meal 2"), the measure, and a count
// ("2", "1 to 2½", "at most 3", "at least 1"). The error is a [unit.Problem].
func ParseWish(field, text string) (Wish, error) {
	refused := unit.Problem{Field: field, Given: strings.TrimSpace(text), Accepted: wishAccepted}
	where, what, found := strings.Cut(strings.Join(strings.Fields(strings.ToLower(text)), " "), ":")
	if !found {
		return Wish{}, refused
	}
	var w Wish
	var ok bool
	if w.Meal, ok = parsePlace(strings.TrimSpace(where)); !ok {
		return Wish{}, refused
	}
	kind, count, ok := cutKind(strings.TrimSpace(what))
	if !ok {
		return Wish{}, refused
	}
	w.Kind = kind
	if w.Least, w.Most, ok = parseBounds(count); !ok {
		return Wish{}, refused
	}
	if err := w.Check(field, w.Meal); err != nil {
		return Wish{}, err
	}
	return w, nil
}

var placeText = regexp.MustCompile(`^meal (\d{1,2})$`)

// parsePlace reads "day" as 0 and "meal 2" as 2.
func parsePlace(text string) (meal int, ok bool) {
	if text == wishDay {
		return 0, true
	}
	m := placeText.FindStringSubmatch(text)
	if m == nil {
		return 0, false
	}
	meal, _ = strconv.Atoi(m[1]) // digits only, by the pattern
	return meal, meal > 0
}

// cutKind takes the name of a measure off the front.
func cutKind(text string) (k Kind, rest string, ok bool) {
	for _, k := range Kinds() {
		for _, name := range []string{k.Plural(), k.Name()} {
			if rest, found := strings.CutPrefix(text, name+" "); found {
				return k, rest, true
			}
		}
	}
	return 0, "", false
}

func parseBounds(text string) (least, most unit.Measure, ok bool) {
	if rest, found := strings.CutPrefix(text, wishAtLeast); found {
		least, ok = ParseMeasure(rest)
		return least, MostMeasures, ok
	}
	if rest, found := strings.CutPrefix(text, wishAtMost); found {
		most, ok = ParseMeasure(rest)
		return 0, most, ok
	}
	from, to, isRange := strings.Cut(text, wishTo)
	if least, ok = ParseMeasure(from); !ok || !isRange {
		return least, least, ok
	}
	most, ok = ParseMeasure(to)
	return least, most, ok
}

var measureText = regexp.MustCompile(`^(\d{1,2})?(½|[.,][05])?$`)

// ParseMeasure reads a count of whole and half measures: "2", "1½", "1.5", "½".
func ParseMeasure(text string) (n unit.Measure, ok bool) {
	m := measureText.FindStringSubmatch(text)
	if m == nil || text == "" {
		return 0, false
	}
	if m[1] != "" {
		whole, _ := strconv.Atoi(m[1]) // digits only, by the pattern
		n = unit.Measure(whole)
	}
	if m[2] == "½" || strings.HasSuffix(m[2], "5") {
		n += 1.0 / halvesInWhole
	}
	return n, true
}

// MealSize is how large a meal is wished beside the others; 1 is usual.
type MealSize float64

// The sizes that have a name. This program's choice, no source.
const (
	Light MealSize = 0.5
	Usual MealSize = 1
	Large MealSize = 1.5
)

// MealSizes lists the sizes that have a name, smallest first.
func MealSizes() []MealSize { return []MealSize{Light, Usual, Large} }

var sizeNames = map[MealSize]string{Light: "light", Usual: "usual", Large: "large"}

// String returns the name of the size, or the share itself.
func (s MealSize) String() string {
	if name, named := sizeNames[s]; named {
		return name
	}
	return fmt.Sprintf("%g", float64(s))
}

// ParseMealSize reads a size by its name.
func ParseMealSize(text string) (MealSize, bool) {
	text = strings.ToLower(strings.TrimSpace(text))
	for size, name := range sizeNames {
		if text == name {
			return size, true
		}
	}
	return 0, false
}

package consult

import (
	"fmt"
	"slices"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

const nameAccepted = "a name, which may not be blank"

var (
	sexes     = []energy.Sex{energy.Female, energy.Male}
	levels    = []energy.Category{energy.Inactive, energy.LowActive, energy.Active, energy.VeryActive}
	goalKinds = []energy.GoalKind{energy.Lose, energy.Maintain, energy.Gain}
)

var (
	palSpan     = spanOf(float64(energy.LeastPAL), float64(energy.MostPAL), "a number from 1.0 to 2.5, such as 1.62")
	kcalSpan    = spanOf(float64(domain.LeastEnergyAsked), float64(domain.MostEnergyAsked), "a number of kilocalories a day")
	mealsSpan   = spanOf(domain.LeastMeals, domain.MostMeals, "a whole number")
	balanceSpan = spanOf(0, 100, "a number")
	floorSpan   = spanOf(float64(macro.LeastFatFloor), float64(macro.MostFatFloor), "a number")
	proteinSpan = spanOf(float64(macro.LeastProteinPerKg), float64(macro.MostProteinPerKg), "a number of grams")
)

func spanOf(low, high float64, words string) span {
	if !strings.Contains(words, " from ") {
		words += fmt.Sprintf(" from %g to %g", low, high)
	}
	return span{low: low, high: high, words: words}
}

// rootFields is the schema of the consult file, in the order of the README.
var rootFields = []field{
	{"date", func(r *reader, v value, in *domain.Intake) { in.Date = quantity(r, v, unit.ParseDate) }},
	{"client", func(r *reader, v value, in *domain.Intake) { r.fields(v, in, clientFields) }},
	{"height", func(r *reader, v value, in *domain.Intake) { in.Height = quantity(r, v, unit.ParseHeight) }},
	{"weight", func(r *reader, v value, in *domain.Intake) { in.Weight = quantity(r, v, unit.ParseWeight) }},
	{"activity", readActivity},
	{"goal", func(r *reader, v value, in *domain.Intake) { r.fields(v, in, goalFields) }},
	{"meals_per_day", func(r *reader, v value, in *domain.Intake) { in.MealsPerDay = r.whole(v, mealsSpan) }},
	{"eating_pattern", func(r *reader, v value, in *domain.Intake) { in.Pattern = choice(r, v, food.Patterns()) }},
	{"avoid", readAvoid},
	{"screening", readScreening},
	{"carb_fat_balance_percent", func(r *reader, v value, in *domain.Intake) {
		in.CarbFatBalance = unit.Percent(r.number(v, balanceSpan))
	}},
	{"fat_floor_percent", func(r *reader, v value, in *domain.Intake) {
		in.FatFloor = unit.Percent(r.number(v, floorSpan))
	}},
	{"protein_g_per_kg", func(r *reader, v value, in *domain.Intake) {
		in.ProteinPerKg = unit.GramPerKilogram(r.number(v, proteinSpan))
	}},
	{"resting_equation", func(r *reader, v value, in *domain.Intake) {
		in.RestingEquation = choice(r, v, restingEquations())
	}},
	{"hold_reasons", readReasons},
}

var clientFields = []field{
	{"name", readName},
	{"born", func(r *reader, v value, in *domain.Intake) { in.Client.Born = quantity(r, v, unit.ParseDate) }},
	{"equation_sex", func(r *reader, v value, in *domain.Intake) { in.Client.EquationSex = choice(r, v, sexes) }},
}

var activityFields = []field{
	{"level", func(r *reader, v value, in *domain.Intake) { in.Activity.Category = choice(r, v, levels) }},
	{"pal", func(r *reader, v value, in *domain.Intake) { in.Activity.PAL = unit.PAL(r.number(v, palSpan)) }},
}

var goalFields = []field{
	{"kind", func(r *reader, v value, in *domain.Intake) { in.Goal.Kind = choice(r, v, goalKinds) }},
	{"weight", func(r *reader, v value, in *domain.Intake) { in.Goal.Weight = quantity(r, v, unit.ParseWeight) }},
	{"by", func(r *reader, v value, in *domain.Intake) { in.Goal.By = quantity(r, v, unit.ParseDate) }},
	{"kcal_per_day", func(r *reader, v value, in *domain.Intake) {
		in.Goal.Energy = unit.Kilocalorie(r.number(v, kcalSpan))
	}},
}

// restingEquations lists the equations that a consult file can be worked out
// by: those that need a lean mass, which it has no key for, are left out.
func restingEquations() []energy.RestingEquation {
	adult := energy.RestingInput{Sex: energy.Female, Age: 40, Weight: 70, Height: 170}
	var codes []energy.RestingEquation
	for _, c := range energy.Compare(energy.MifflinStJeor, adult) {
		if c.Worked {
			codes = append(codes, c.Equation.Code)
		}
	}
	return codes
}

func readName(r *reader, v value, in *domain.Intake) {
	text, ok := r.text(v, nameAccepted)
	if ok && !visible(text) {
		r.refuse(v.path, text, nameAccepted)
	}
	in.Client.Name = strings.TrimSpace(text)
}

// readActivity reads a level or a PAL: one of the two.
func readActivity(r *reader, v value, in *domain.Intake) {
	known, isObject := r.fields(v, in, activityFields)
	if isObject && known != 1 {
		r.refuse(v.path, v.given(), "one of level and pal, such as {\"level\": \"low_active\"} or {\"pal\": 1.62}")
	}
}

// readAvoid reads words for allergens; a word may rule out more than one.
func readAvoid(r *reader, v value, in *domain.Intake) {
	if v.raw[0] != '[' {
		r.refuse(v.path, v.given(), "a list of allergens, such as [\"peanut\", \"milk\"], or []")
		return
	}
	accepted := "an allergen: " + oneOf(food.Allergens()) + ", or another word that the README lists"
	for _, item := range v.items() {
		word, ok := r.text(item, accepted)
		if !ok {
			continue
		}
		named, known := food.ParseAllergen(word)
		if !known {
			r.refuse(item.path, word, accepted)
		}
		for _, a := range named {
			if !slices.Contains(in.Avoid, a) {
				in.Avoid = append(in.Avoid, a)
			}
		}
	}
}

const keyAllAsked = "all_asked"

// readScreening reads the answers. Where all were asked, those not listed are no.
func readScreening(r *reader, v value, in *domain.Intake) {
	allAsked := false
	schema := []field{{keyAllAsked, func(r *reader, v value, _ *domain.Intake) { allAsked, _ = r.flag(v) }}}
	for _, code := range questionCodes() {
		schema = append(schema, field{string(code), func(r *reader, v value, in *domain.Intake) {
			yes, ok := r.flag(v)
			switch {
			case ok && yes:
				in.Screening = in.Screening.With(code, screen.Yes)
			case ok:
				in.Screening = in.Screening.With(code, screen.No)
			}
		}})
	}
	r.fields(v, in, schema)
	if allAsked {
		in.Screening = in.Screening.AllNo()
	}
}

func questionCodes() []screen.Code {
	questions := screen.Questions()
	codes := make([]screen.Code, 0, len(questions)+1)
	for _, q := range questions {
		codes = append(codes, q.Code)
	}
	return append(codes, screen.Frail)
}

// readReasons reads why holds are lifted. An empty text is no reason.
func readReasons(r *reader, v value, in *domain.Intake) {
	var schema []field
	for _, code := range HoldCodes() {
		schema = append(schema, field{code, func(r *reader, v value, in *domain.Intake) {
			text, ok := r.text(v, "the reason in words, or an empty text for none")
			if ok && visible(text) {
				in.Reasons[code] = screen.Reason{Text: strings.TrimSpace(text)}
			}
		}})
	}
	in.Reasons = screen.Reasons{}
	r.fields(v, in, schema)
}

// dateReasons dates the reasons to the visit.
func dateReasons(in *domain.Intake) {
	for code, reason := range in.Reasons {
		reason.Date = in.Date
		in.Reasons[code] = reason
	}
}

// computedHolds are the holds that come of figures, not of a question.
var computedHolds = []string{screen.NotAskedCode, "energy_low", "rate_fast", "older_adult"}

// HoldCodes lists the codes of the findings that can hold a plan: the keys of
// hold_reasons.
func HoldCodes() []string {
	codes := slices.Clone(computedHolds)
	for _, q := range screen.Questions() {
		answers := screen.Answers{q.Code: screen.Yes}
		if slices.ContainsFunc(screen.Findings(answers, screen.Facts{}), func(f derive.Finding) bool {
			return f.Code == string(q.Code) && f.Level == derive.Hold
		}) {
			codes = append(codes, string(q.Code))
		}
	}
	return codes
}

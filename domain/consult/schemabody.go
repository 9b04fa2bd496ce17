package consult

import (
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/body"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

var (
	populations = []body.Population{body.WorldPoints, body.AsianPoints}
	levels      = []energy.Category{energy.Inactive, energy.LowActive, energy.Active, energy.VeryActive}
	nursed      = []nursing{"first_half_year", "second_half_year"}
)

// nursing is a word for how old a breastfed child is.
type nursing string

var nursingAges = map[nursing]energy.BreastfeedingAge{
	nursed[0]: energy.FirstHalfYear, nursed[1]: energy.SecondHalfYear,
}

var (
	fatSpan   = spanOf(float64(domain.LeastFatPercent), float64(domain.MostFatPercent), "a number")
	palSpan   = spanOf(float64(energy.LeastPAL), float64(energy.MostPAL), "a number from 1.0 to 2.5, such as 1.62")
	weekSpan  = spanOf(1, domain.LongestPregnancy, "a whole number")
	hoursSpan = spanOf(0.01, float64(energy.HoursInDay), "a number of hours")
)

var bodyFields = []field{
	{"neck", func(r *reader, v value, in *domain.Intake) { in.Body.Neck = quantity(r, v, unit.ParseLength) }},
	{"waist", func(r *reader, v value, in *domain.Intake) { in.Body.Waist = quantity(r, v, unit.ParseLength) }},
	{"hip", func(r *reader, v value, in *domain.Intake) { in.Body.Hip = quantity(r, v, unit.ParseLength) }},
	{"fat_percent", func(r *reader, v value, in *domain.Intake) { in.Body.Fat = unit.Percent(r.number(v, fatSpan)) }},
	{"points", func(r *reader, v value, in *domain.Intake) { in.Body.Points = choice(r, v, populations) }},
}

var reproductionFields = []field{
	{"weeks", func(r *reader, v value, in *domain.Intake) { in.Reproduction.Weeks = r.whole(v, weekSpan) }},
	{"weight_before", func(r *reader, v value, in *domain.Intake) {
		in.Reproduction.PrePregnant = quantity(r, v, unit.ParseWeight)
	}},
	{"breastfeeding", func(r *reader, v value, in *domain.Intake) {
		in.Reproduction.Breastfeeding = nursingAges[choice(r, v, nursed)]
	}},
}

var activityFields = []field{
	{"level", func(r *reader, v value, in *domain.Intake) { in.Activity.Category = choice(r, v, levels) }},
	{"pal", func(r *reader, v value, in *domain.Intake) { in.Activity.PAL = unit.PAL(r.number(v, palSpan)) }},
	{"customary", func(r *reader, v value, in *domain.Intake) { in.Activity.Customary = choice(r, v, customaryCodes()) }},
	{"day", readDay},
}

func customaryCodes() []string {
	var codes []string
	for _, m := range energy.Multipliers() {
		codes = append(codes, m.Code)
	}
	return codes
}

// readActivity reads how active the client is, told in one of the ways.
func readActivity(r *reader, v value, in *domain.Intake) {
	known, isObject := r.fields(v, in, activityFields)
	if isObject && known != 1 {
		r.refuse(v.path, v.given(), "one of level, pal, customary and day, such as {\"level\": \"low_active\"} or {\"pal\": 1.62}")
	}
}

// readDay reads the hours of an average day. What is left of 24 hours is filled
// by the computation, which says so.
func readDay(r *reader, v value, in *domain.Intake) {
	const accepted = `a list of what fills the day, such as [{"what": "desk_work", "hours": 8}]`
	if v.raw[0] != '[' || len(v.items()) == 0 {
		r.refuse(v.path, v.given(), accepted)
		return
	}
	for _, item := range v.items() {
		in.Activity.Day = append(in.Activity.Day, r.span(item, in))
	}
}

// The keys of a part of the day.
const (
	what  = string(energy.DayPursuit)
	hours = string(energy.DayHours)
)

// spanFields is the schema of a part of the day.
func spanFields(s *energy.Span) []field {
	return []field{
		{what, func(r *reader, v value, _ *domain.Intake) { s.Pursuit = r.pursuit(v) }},
		{hours, func(r *reader, v value, _ *domain.Intake) { s.Hours = energy.Hour(r.number(v, hoursSpan)) }},
	}
}

// span reads a part of the day.
func (r *reader) span(v value, in *domain.Intake) energy.Span {
	var s energy.Span
	if _, isObject := r.fields(v, in, spanFields(&s)); !isObject {
		return s
	}
	if s.Pursuit.Code == "" && !r.covers(v.inside(what)) {
		r.refuse(v.inside(what), "", oneOf(pursuitWords()))
	}
	if s.Hours == 0 && !r.covers(v.inside(hours)) {
		r.refuse(v.inside(hours), "", hoursSpan.words)
	}
	return s
}

// pursuit reads an activity by its word or its code in the Compendium.
func (r *reader) pursuit(v value) energy.Pursuit {
	text, ok := r.text(v, oneOf(pursuitWords()))
	if !ok {
		return energy.Pursuit{}
	}
	for _, p := range energy.Pursuits() {
		if text == p.Code || text == pursuitWord(p) {
			return p
		}
	}
	r.refuse(v.path, text, oneOf(pursuitWords())+", or its code in the Compendium of Physical Activities")
	return energy.Pursuit{}
}

// pursuitWord is the name of an activity as a key: desk_work.
func pursuitWord(p energy.Pursuit) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(p.Name), func(c rune) bool {
		return (c < 'a' || c > 'z') && (c < '0' || c > '9')
	}), "_")
}

func pursuitWords() []string {
	var words []string
	for _, p := range energy.Pursuits() {
		words = append(words, pursuitWord(p))
	}
	return words
}

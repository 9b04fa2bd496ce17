package consult

import (
	"slices"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/food"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

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
			if answer := r.answer(v); answer != screen.NotAsked {
				in.Screening = in.Screening.With(code, answer)
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

// scoredFields is the schema of what was scored: a key for each questionnaire
// and the details that the refeeding criteria ask for.
func scoredFields() []field {
	var schema []field
	for _, q := range screen.Questionnaires() {
		points := spanOf(0, float64(q.Most), "a whole number")
		schema = append(schema, field{q.Code, func(r *reader, v value, in *domain.Intake) {
			before := len(r.problems)
			n := r.whole(v, points)
			if len(r.problems) > before {
				return
			}
			if in.Scored.Scores == nil {
				in.Scored.Scores = screen.Scores{}
			}
			in.Scored.Scores[q.Code] = screen.Score{Points: n, Asked: true}
		}})
	}
	return append(schema, refeedingFields...)
}

var (
	lossSpan = spanOf(0, float64(domain.MostRecentLoss), "a number")
	daysSpan = spanOf(0, float64(domain.MostDaysOfLittle), "a whole number of days")
)

var refeedingFields = []field{
	{"recent_loss_percent", func(r *reader, v value, in *domain.Intake) {
		in.Scored.RecentLoss = screen.Told[unit.Percent]{Value: unit.Percent(r.number(v, lossSpan)), Asked: true}
	}},
	{"days_of_little_food", func(r *reader, v value, in *domain.Intake) {
		in.Scored.DaysOfLittle = screen.Told[unit.Day]{Value: unit.Day(r.whole(v, daysSpan)), Asked: true}
	}},
	{"low_electrolytes", func(r *reader, v value, in *domain.Intake) { in.Scored.LowElectrolytes = r.answer(v) }},
	{"alcohol_or_listed_medicine", func(r *reader, v value, in *domain.Intake) { in.Scored.AlcoholOrDrugs = r.answer(v) }},
}

// answer reads yes or no as true or false.
func (r *reader) answer(v value) screen.Answer {
	yes, ok := r.flag(v)
	switch {
	case !ok:
		return screen.NotAsked
	case yes:
		return screen.Yes
	}
	return screen.No
}

// readReasons reads why holds are lifted. An empty text is no reason.
func readReasons(r *reader, v value, in *domain.Intake) {
	var schema []field
	for _, code := range screen.HoldCodes() {
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

package draft

import (
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/screen"
)

// ScoreOf returns the field of the score of a published questionnaire, and
// ScoreItem that of one answer in our own words, which compute it where no score
// of the published form was typed.
func ScoreOf(code string) Field { return Field(scoredPrefix + code) }

// ScoreItem returns the field of one answer to a questionnaire.
func ScoreItem(code, item string) Field { return Field(scoredPrefix + code + "." + item) }

func (r *reader) screening() {
	answers, reasons := screen.Answers{}, screen.Reasons{}
	for field, value := range r.form {
		name := string(field)
		if code, ok := strings.CutPrefix(name, screeningPrefix); ok {
			switch strings.TrimSpace(value) {
			case AnswerNo:
				answers[screen.Code(code)] = screen.No
			case AnswerYes:
				answers[screen.Code(code)] = screen.Yes
			}
			continue
		}
		rest, ok := strings.CutPrefix(name, reasonPrefix)
		if code, isText := strings.CutSuffix(rest, "."+string(ReasonText)); ok && isText {
			reasons[code] = r.reason(code)
		}
	}
	r.out.Intake.Screening, r.out.Intake.Reasons = answers, reasons
}

func (r *reader) reason(code string) screen.Reason {
	return screen.Reason{
		Text:         r.form.Get(Reason(code, ReasonText)),
		By:           r.form.Get(Reason(code, ReasonBy)),
		Registration: r.form.Get(Reason(code, ReasonRegistration)),
		Date:         r.date(Reason(code, ReasonDate)),
		Prescriber:   r.form.Get(Reason(code, ReasonPrescriber)),
	}
}

// The words for how old a breastfed child is.
const (
	NotBreastfeeding = AnswerNo
	FirstHalfYear    = "first_half_year"
	SecondHalfYear   = "second_half_year"
)

var nursed = map[string]energy.BreastfeedingAge{FirstHalfYear: energy.FirstHalfYear, SecondHalfYear: energy.SecondHalfYear}

// reproduction reads what follows from a pregnancy or from breastfeeding, unless
// the screening question on it was answered no: then what was told before stays
// in the form and is not read. What was not asked is not taken as no.
func (r *reader) reproduction() {
	in := &r.out.Intake
	if in.Screening.Of(screen.Pregnant) == screen.No {
		return
	}
	told := energy.Reproduction{PrePregnant: r.weight(WeightBefore)}
	if n, ok := r.amount(PregnantWeeks, 1, domain.LongestPregnancy, "the completed weeks of pregnancy, 1 to 42", []string{"weeks", "week"}); ok {
		told.Weeks = int(n)
	}
	told.Breastfeeding = nursed[choice(r, Breastfeeding, []string{NotBreastfeeding, FirstHalfYear, SecondHalfYear}, "", "no, first_half_year or second_half_year")]
	in.Reproduction = told
}

package screening

import (
	"strings"

	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// reasonParts are the parts of a reason in the order of the form.
var reasonParts = []draft.ReasonPart{
	draft.ReasonText, draft.ReasonBy, draft.ReasonRegistration, draft.ReasonDate, draft.ReasonPrescriber,
}

var reasonLabels = map[draft.ReasonPart]string{
	draft.ReasonText:         "Why the plan may go on",
	draft.ReasonBy:           "Who decided",
	draft.ReasonRegistration: "Their registration",
	draft.ReasonDate:         "Date",
	draft.ReasonPrescriber:   "Prescriber contacted, and what they said",
}

var reasonHints = map[draft.ReasonPart]string{
	draft.ReasonText:         "In a sentence or two. It is kept with the plan.",
	draft.ReasonRegistration: "As the local register writes it.",
	draft.ReasonDate:         "Such as 2 March 2026.",
	draft.ReasonPrescriber:   "Who, when, and the answer; or that they were not contacted.",
}

var partNames = map[draft.ReasonPart]string{
	draft.ReasonBy: "who decided", draft.ReasonRegistration: "the registration",
	draft.ReasonDate: "the date", draft.ReasonPrescriber: "whether the prescriber was contacted",
}

// reasonStatus says how far the record of a reason has come.
func reasonStatus(code string, form draft.Form) string {
	if form.Get(draft.Reason(code, draft.ReasonText)) == "" {
		return "The plan is held until it is written here why it may go on."
	}
	var missing []string
	for _, part := range reasonParts {
		if form.Get(draft.Reason(code, part)) == "" {
			missing = append(missing, partNames[part])
		}
	}
	if len(missing) == 0 {
		return "Recorded in full."
	}
	return "Recorded. For a full record add " + joined(missing) + "."
}

func joined(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " and " + words[last]
}

// copied are the parts that are the same for every reason of a visit.
var copied = []draft.ReasonPart{draft.ReasonBy, draft.ReasonRegistration, draft.ReasonDate}

// lender returns the code of another hold among those shown whose reason says
// who decided, where this one does not say so yet.
func lender(code string, shown []string, form draft.Form) (string, bool) {
	for _, part := range copied {
		if form.Get(draft.Reason(code, part)) != "" {
			return "", false
		}
	}
	for _, other := range shown {
		if other != code && form.Get(draft.Reason(other, draft.ReasonBy)) != "" {
			return other, true
		}
	}
	return "", false
}

// understandDate reads the date of a reason as if it were typed.
func understandDate(text string) (string, error) {
	d, err := unit.ParseDate("date", text)
	if err != nil {
		return "", err
	}
	return "= " + d.Weekday().String() + " " + d.Long(), nil
}

// codeOf returns the code of the hold that a field of a reason belongs to.
func codeOf(field draft.Field) (code string, ok bool) {
	rest, ok := strings.CutPrefix(string(field), reasonPrefix)
	if !ok {
		return "", false
	}
	dot := strings.LastIndex(rest, ".")
	if dot < 0 {
		return "", false
	}
	return rest[:dot], true
}

// questionOf returns the question that a field is the answer of.
func questionOf(field draft.Field) (screen.Code, bool) {
	code, ok := strings.CutPrefix(string(field), questionPrefix)
	return screen.Code(code), ok
}

var (
	questionPrefix = string(draft.Screening(""))
	reasonPrefix   = strings.TrimSuffix(string(draft.Reason("", "")), ".")
)

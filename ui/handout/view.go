package handout

import (
	"slices"

	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// state says what paper a client file has come to.
type state int

const (
	waiting  state = iota // something is missing or could not be read
	held                  // a reason is missing
	referred              // the paper is the referral note
	open                  // the paper is the handout
)

// view is what the section says of the client file.
type view struct {
	State  state
	Title  string
	Lead   string // why there is no handout; "" where there is one
	Wanted string // what is missing, one a line; "" where nothing is
	Holds  []hold
	Way    way // where what is missing is filled in
}

// hold is one finding that waits for a reason.
type hold struct {
	Finding derive.Finding
	Way     way
}

// way leads to another section.
type way struct {
	Label   string
	Section string
	Field   draft.Field
}

// ready reports whether there is a paper.
func (v view) ready() bool { return v.State == referred || v.State == open }

func look(plan domain.Plan, planned bool, r draft.Reading) view {
	switch {
	case !planned:
		return waitingView(r)
	case plan.Gate.Referred():
		return view{State: referred, Title: "A referral comes first", Lead: referredLead}
	case plan.Gate.Held():
		return heldView(plan)
	}
	return view{State: open}
}

func heldView(plan domain.Plan) view {
	v := view{State: held, Title: "On hold", Lead: heldLead(len(plan.Gate.Holds))}
	for _, f := range plan.Gate.Holds {
		v.Holds = append(v.Holds, hold{f, wayToReason(f.Code, plan)})
	}
	return v
}

// noPages reports that no page of a handout is chosen. The referral note has
// its own.
func noPages(s state, c Choice) bool { return s == open && len(c.Pages) == 0 }

// visitWords writes the next visit for the paper. It is "" and false for a text
// that is no day after the visit.
func visitWords(text string, visit unit.Date) (words string, ok bool) {
	if text == "" {
		return "", true
	}
	day, err := unit.ParseDate(string(draft.NextVisit), text)
	if err != nil || checkVisit(day, visit) != nil {
		return "", false
	}
	return day.Long(), true
}

// checkVisit refuses a next visit that is not after this one.
func checkVisit(next, visit unit.Date) error {
	if visit.IsZero() || next.After(visit) {
		return nil
	}
	return unit.Problem{
		Field: string(draft.NextVisit), Given: next.Long(),
		Accepted: "a day after the visit of " + visit.Long(),
	}
}

// keysOf returns the keys of the chosen pages, in their order.
func keysOf(pages []PageName, chosen []int) []string {
	var keys []string
	for i, page := range pages {
		if slices.Contains(chosen, i) {
			keys = append(keys, page.Key)
		}
	}
	return keys
}

package targets

import (
	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/chart"
	"handbreadth/ui/draft"
)

// state says what a client file has come to.
type state int

const (
	waiting  state = iota // something is missing or could not be read
	referred              // a referral takes the plan's place
	held                  // a reason is missing
	open                  // may be issued
)

// row is a number as the section tells it, with how it came about.
type row struct {
	Label string // "" leaves the label as it is
	Value string // "1884 kcal"
	Note  string // "likely 1640 to 2130"
	Steps []derive.Step
}

// shown reports whether the row has something to say.
func (r row) shown() bool { return r.Value != "" }

// fix is a change of the form that one button makes, in one step.
type fix struct {
	Label   string
	Changes map[draft.Field]string
}

// view is everything that the section shows beside what was typed.
type view struct {
	State state
	Title string // heads the lead
	// Lead says why there is no target, or that it is held; "" where it is open.
	Lead string
	Way  way // where the lead is answered
	// Rescue brings a wish that is referred for its own sake back inside the
	// guards; it names no figure. Empty where there is nothing to bring back.
	Rescue fix

	Goal    goalView
	Outcome outcome
	// Course is what the chart shows; HasCourse is false where there is none.
	Course    chart.Course
	HasCourse bool

	HasMaintenance bool
	Energy         energyView

	HasTargets bool
	Macros     macroView
}

// way leads to another section.
type way struct {
	Label   string
	Section string
	Field   draft.Field
}

func look(s Source) view {
	var v view
	v.Goal = goalOf(s)
	plan, planned := s.Plan()
	if !planned {
		v.State, v.Way = waiting, wayToWant(s.Reading())
		v.Title, v.Lead = waitingLead(s.Reading())
		return v
	}
	v.HasMaintenance, v.Energy = true, energyOf(plan, s.Style())
	if plan.Gate.Referred() {
		v.State, v.Title, v.Lead = referred, "No target", referredLead(plan)
		v.Way, v.Rescue = wayToCause(plan.Gate.Refers[0]), rescue(plan)
		return v
	}
	v.State = open
	if plan.Gate.Held() {
		v.State, v.Title, v.Lead, v.Way = held, "On hold", heldLead(plan), wayToReason(plan)
	}
	v.target(plan, s.Style())
	return v
}

// target tells what there is only where a plan has a target.
func (v *view) target(p domain.Plan, style unit.Style) {
	v.HasTargets = true
	v.Course, v.HasCourse = chart.Of(p, style)
	v.Goal.comesTo(p, style)
	v.Outcome = outcomeOf(p, v.State, style)
	v.Macros = macrosOf(p, style)
}

// kindOf is the goal as chosen, which may be none yet.
func kindOf(s Source) energy.GoalKind { return energy.GoalKind(s.Get(draft.GoalKind)) }

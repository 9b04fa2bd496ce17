package screening

import (
	"fmt"
	"slices"

	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/screen"
	"handbreadth/ui/draft"
)

// group is a kind of finding by what it does to the plan that is asked for.
type group int

const (
	refers   group = iota // take the plan's place
	holds                 // stop it until a reason is recorded, or did so
	cautions              // ask for care
	idle                  // stop something that is not asked for
	notes                 // mention
	groupCount
)

var groupTitles = [groupCount]string{
	"Refer first", "On hold", "Take care", "Does not stop what is asked for", "Notes",
}

// item is a finding as the section tells it.
type item struct {
	Finding derive.Finding
	// Reason reports that a reason can be recorded here.
	Reason bool
	// Lifted reports that one was.
	Lifted bool
}

// outcome is what the answers and the figures come to.
type outcome struct {
	Lead     string
	Referred bool
	Groups   [groupCount][]item
}

const (
	leadEmpty     = "Nothing so far."
	leadUnplanned = "From the answers so far. Age, weight and energy are looked at too once the intake is complete, and reasons are recorded then."
	leadReferred  = "A referral comes first, so no plan is made. The referral note is on the Handout page. A reason does not lift a referral."
	leadOpen      = "Nothing stops the plan that is asked for."
	leadLifted    = "The reasons are recorded, so the plan may go on. They are kept with it."
	footWords     = "The findings follow published guidance and do not diagnose. The treating clinician, local rules and licensed practice come first."
)

func heldLead(n int) string {
	if n == 1 {
		return "1 finding holds the plan until a reason is recorded."
	}
	return fmt.Sprintf("%d findings hold the plan until a reason is recorded for each.", n)
}

// outcomeOf reads the findings. Without a plan only the answers speak.
func outcomeOf(plan domain.Plan, planned bool, reading draft.Reading) outcome {
	if !planned {
		return early(reading.Intake)
	}
	o := outcome{Referred: plan.Gate.Referred()}
	for _, f := range plan.Findings {
		g, it := sorted(f, plan.Gate)
		it.Reason = it.Reason && !o.Referred
		it.Finding = inBrief(f, reading)
		o.Groups[g] = append(o.Groups[g], it)
	}
	switch {
	case o.Referred:
		o.Lead = leadReferred
	case plan.Gate.Held():
		o.Lead = heldLead(len(plan.Gate.Holds))
	case len(plan.Gate.Lifted) > 0:
		o.Lead = leadLifted
	default:
		o.Lead = leadOpen
	}
	return o
}

func early(told domain.Intake) outcome {
	found := fromTold(told)
	if len(found) == 0 {
		return outcome{Lead: leadEmpty}
	}
	o := outcome{Lead: leadUnplanned}
	for _, f := range found {
		g := levelGroups[f.Level]
		o.Groups[g] = append(o.Groups[g], item{Finding: f})
	}
	return o
}

var levelGroups = map[derive.Level]group{
	derive.Refer: refers, derive.Hold: holds, derive.Caution: cautions, derive.Note: notes,
}

func sorted(f derive.Finding, gate screen.Gate) (group, item) {
	switch {
	case slices.Contains(gate.Refers, f):
		return refers, item{}
	case slices.Contains(gate.Holds, f):
		return holds, item{Reason: true}
	case slices.Contains(gate.Lifted, f):
		return holds, item{Reason: true, Lifted: true}
	case f.Level >= derive.Hold:
		return idle, item{}
	}
	return levelGroups[f.Level], item{}
}

// inBrief counts the questions that were not asked instead of listing their
// codes: the rows above show which they are.
func inBrief(f derive.Finding, reading draft.Reading) derive.Finding {
	if f.Code != screen.NotAskedCode {
		return f
	}
	n := len(screen.Unasked(reading.Intake.Screening))
	f.Text = fmt.Sprintf("%d questions have no answer yet. What was not asked is not taken as no.", n)
	if n == 1 {
		f.Text = "1 question has no answer yet. What was not asked is not taken as no."
	}
	return f
}

// title is the heading of a group; a hold with its reason is none any more.
func (o outcome) title(g group) string {
	if g != holds {
		return groupTitles[g]
	}
	for _, it := range o.Groups[holds] {
		if !it.Lifted {
			return groupTitles[holds]
		}
	}
	return "Reason recorded"
}

// glance says in one line at the top what is found below; "" where nothing is.
func (o outcome) glance() string {
	waiting := 0
	for _, it := range o.Groups[holds] {
		if !it.Lifted {
			waiting++
		}
	}
	switch {
	case len(o.Groups[refers]) > 0:
		return counted(len(o.Groups[refers]), "finding asks for a referral", "findings ask for a referral")
	case waiting > 0:
		return counted(waiting, "finding holds the plan", "findings hold the plan")
	case len(o.Groups[cautions]) > 0:
		return counted(len(o.Groups[cautions]), "finding asks for care", "findings ask for care")
	}
	return ""
}

func counted(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}

// reasons lists the findings for which a reason can be recorded, and the first
// that waits for one.
func (o outcome) reasons() (codes []string, first string) {
	for _, it := range o.Groups[holds] {
		if !it.Reason {
			continue
		}
		codes = append(codes, it.Finding.Code)
		if first == "" && !it.Lifted {
			first = it.Finding.Code
		}
	}
	return codes, first
}

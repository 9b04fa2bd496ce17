package sheet

import (
	"fmt"
	"slices"

	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/ui/draft"
)

// item is a finding with what can be done about it.
type item struct {
	Finding derive.Finding
	Action  action
}

// action leads to where something is answered. Without a label there is none.
type action struct {
	Label   string
	Section string
	Field   draft.Field
}

// group is the findings that do the same to the plan.
type group struct {
	Title string
	Items []item
}

// The titles of the groups, gravest first.
const (
	titleRefers  = "Refer first"
	titleHolds   = "On hold"
	titleLifted  = "Reason recorded"
	titleSpeaks  = "Does not stop this plan"
	titleCaution = "Take care"
	titleNotes   = "Notes"
	titleAnswers = "From the answers so far"
)

// grouped sorts a plan's findings by what they do to it.
func grouped(p domain.Plan) []group {
	answers := p.Intake.Screening
	var refers, holds, lifted, speaks, cautions, notes []item
	for _, f := range p.Findings {
		switch {
		case slices.Contains(p.Gate.Refers, f):
			refers = append(refers, item{f, cause(f.Code)})
		case slices.Contains(p.Gate.Holds, f):
			holds = append(holds, item{inBrief(f, answers), answerTo(f, answers)})
		case slices.Contains(p.Gate.Lifted, f):
			lifted = append(lifted, item{inBrief(f, answers), action{}})
		case f.Level >= derive.Hold:
			speaks = append(speaks, item{inBrief(f, answers), action{}})
		case f.Level == derive.Caution:
			cautions = append(cautions, item{f, action{}})
		default:
			notes = append(notes, item{f, action{}})
		}
	}
	return filled(
		group{titleRefers, refers}, group{titleHolds, holds}, group{titleLifted, lifted},
		group{titleCaution, cautions}, group{titleSpeaks, speaks}, group{titleNotes, notes},
	)
}

func filled(groups ...group) []group {
	return slices.DeleteFunc(groups, func(g group) bool { return len(g.Items) == 0 })
}

// early is what the answers alone give, before there is a plan.
type early struct {
	items []item
	stops int // how many of them stop any plan
}

func (e early) groups() []group { return filled(group{titleAnswers, e.items}) }

func fromAnswers(answers screen.Answers) early {
	var e early
	for _, f := range screen.Findings(answers, unremarkable) {
		if !screen.Known(screen.Code(f.Code)) {
			continue
		}
		if f.Level == derive.Refer && f.Scope.Covers(derive.ScopePlan) {
			e.stops++
		}
		e.items = append(e.items, item{f, action{}})
	}
	return e
}

// unremarkable are facts that give no finding of their own.
var unremarkable = screen.Facts{
	Age: screen.AdultAge, Sex: energy.Male, BMI: screen.OverweightBMI, Goal: energy.Maintain,
	Outcome: energy.Outcome{Target: derive.Exact(energy.LeastEnergy(energy.Male))},
	Resting: energy.LeastEnergy(energy.Male), Carbohydrate: macro.CarbohydrateRDA,
}

// inBrief shortens the finding that lists every unasked question by its code,
// which is no reading for a narrow sheet.
func inBrief(f derive.Finding, answers screen.Answers) derive.Finding {
	if f.Code != screen.NotAskedCode {
		return f
	}
	verb := "questions have"
	missing := len(screen.Unasked(answers))
	if missing == 1 {
		verb = "question has"
	}
	f.Text = fmt.Sprintf("%d screening %s no answer yet. What was not asked is not taken as no.", missing, verb)
	return f
}

// answerTo returns where a hold is lifted.
func answerTo(f derive.Finding, answers screen.Answers) action {
	if f.Code == screen.NotAskedCode {
		return action{"Ask the questions", sectionScreening, firstUnasked(answers)}
	}
	return action{"Record a reason", sectionScreening, draft.Reason(f.Code, draft.ReasonText)}
}

// cause returns where the answer stands that a referral rests on.
func cause(code string) action {
	switch code {
	case "under_18":
		return action{"See the birth date", sectionIntake, draft.Born}
	case "target_underweight":
		return action{"See the goal weight", sectionIntake, draft.GoalWeight}
	case "energy_very_low":
		return action{"See the goal", sectionTargets, draft.GoalKind}
	case "underweight_now", "refeeding_risk":
		return action{"See the weight", sectionIntake, draft.Weight}
	}
	return action{"See the answer", sectionScreening, draft.Screening(screen.Code(code))}
}

func firstUnasked(answers screen.Answers) draft.Field {
	if missing := screen.Unasked(answers); len(missing) > 0 {
		return draft.Screening(missing[0])
	}
	return ""
}

package handout

import (
	"fmt"
	"path/filepath"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/screen"
	"handbreadth/ui/draft"
)

// The sections that this one leads to.
const (
	sectionIntake    = "intake"
	sectionScreening = "screening"
	sectionTargets   = "targets"
)

const (
	referredLead = "No target is set, so the paper is the referral note: what was found, and what is asked of the clinician. It can be looked at, saved and printed here."
	unreadLead   = "An answer could not be read, so there is no handout yet."
	missingLead  = "The handout can be made when these are filled in:"

	wordsNoPages  = "No page is chosen. Choose at least one."
	wordsDrawing  = "Making the pages…"
	wordsStopped  = "Stopped before the pages were made."
	wordsNoVisit  = "The next visit is no day after this visit, so nothing was made. Write it as 30 March 2026, or leave it empty."
	wordsSaving   = "Saving…"
	wordsPrinting = "Preparing to print…"
	wordsPrinted  = "Handed over for printing."
)

var labels = map[draft.Field]string{
	draft.Date: "date of the visit", draft.Born: "date of birth", draft.Sex: "sex for the equation",
	draft.Height: "height", draft.Weight: "weight", draft.Activity: "activity",
	draft.PAL: "activity as a number", draft.GoalKind: "goal", draft.GoalWeight: "goal weight",
	draft.GoalBy: "goal date", draft.GoalEnergy: "agreed energy", draft.Meals: "meals a day",
	draft.Pattern: "eating pattern", draft.Avoid: "foods to avoid",
	draft.Balance: "carbohydrate-fat balance", draft.FatFloor: "fat floor", draft.Protein: "protein",
}

// order is the order in which answers that could not be read are named.
var order = []draft.Field{
	draft.Date, draft.Born, draft.Sex, draft.Height, draft.Weight, draft.Activity, draft.PAL,
	draft.GoalKind, draft.GoalWeight, draft.GoalBy, draft.GoalEnergy, draft.Meals, draft.Pattern,
	draft.Avoid, draft.Balance, draft.FatFloor, draft.Protein,
}

// waitingView says what is missing, or what could not be read, and leads to the
// first of it.
func waitingView(r draft.Reading) view {
	v := view{State: waiting, Title: "More is needed", Lead: missingLead}
	fields := r.Missing
	if len(r.Problems) > 0 {
		v.Lead, fields = unreadLead, nil
		for _, field := range order {
			if _, wrong := r.Problems[field]; wrong {
				fields = append(fields, field)
			}
		}
	}
	if len(fields) == 0 {
		v.Way = way{"Go to the intake", sectionIntake, ""}
		return v
	}
	names := make([]string, len(fields))
	for i, field := range fields {
		names[i] = labels[field]
	}
	v.Wanted = capital(strings.Join(names, ", ")) + "."
	v.Way = way{"Go to the " + names[0], sectionOf(fields[0]), fields[0]}
	return v
}

// sectionOf returns the section in which a field is filled in.
func sectionOf(field draft.Field) string {
	switch field {
	case draft.GoalKind, draft.GoalWeight, draft.GoalBy, draft.GoalEnergy, draft.Balance, draft.FatFloor, draft.Protein:
		return sectionTargets
	}
	return sectionIntake
}

func heldLead(holds int) string {
	if holds == 1 {
		return "One finding needs a reason first. The handout can be made as soon as it is recorded."
	}
	return fmt.Sprintf("%d findings need a reason first. The handout can be made as soon as all are recorded.", holds)
}

// wayToReason leads to where a hold is lifted.
func wayToReason(code string, plan domain.Plan) way {
	if code != screen.NotAskedCode {
		return way{"Record a reason in Screening", sectionScreening, draft.Reason(code, draft.ReasonText)}
	}
	w := way{Label: "Ask the questions in Screening", Section: sectionScreening}
	if missing := screen.Unasked(plan.Intake.Screening); len(missing) > 0 {
		w.Field = draft.Screening(missing[0])
	}
	return w
}

// savedWords tells where the paper is now.
func savedWords(path string) string {
	return "Saved as " + filepath.Base(path) + " in the folder " + filepath.Base(filepath.Dir(path)) + "."
}

func pageWords(number, of int) string { return fmt.Sprintf("Page %d of %d", number, of) }

func capital(words string) string { return strings.ToUpper(words[:1]) + words[1:] }

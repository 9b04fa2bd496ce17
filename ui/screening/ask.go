package screening

import (
	"fmt"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/ui/draft"
)

// row is one question of the list.
type row struct {
	Code    screen.Code
	Section screen.Section
	Ask     string
}

// allRows lists every question that may be asked, in the order of the list.
func allRows() []row {
	var rows []row
	for i, q := range screen.Questions() {
		rows = append(rows, row{q.Code, q.Section, q.Ask})
		last := i+1 == len(screen.Questions()) || screen.Questions()[i+1].Section != q.Section
		if q.Section == screen.SectionLife && last {
			rows = append(rows, row{screen.Frail, q.Section, screen.FrailAsk})
		}
	}
	return rows
}

// isAsked reports whether a question belongs to this client's list: frailty is
// asked of older people only.
func isAsked(r row, reading draft.Reading) bool {
	return r.Code != screen.Frail || reading.Intake.Age() >= macro.OlderAge
}

// open lists the questions of this client without an answer.
func open(reading draft.Reading) (missing []screen.Code, all int) {
	for _, r := range allRows() {
		if !isAsked(r, reading) {
			continue
		}
		all++
		if reading.Intake.Screening.Of(r.Code) == screen.NotAsked {
			missing = append(missing, r.Code)
		}
	}
	return missing, all
}

func progressWords(missing, all int) string {
	if missing == 0 {
		return fmt.Sprintf("All %d asked", all)
	}
	return fmt.Sprintf("%d of %d asked", all-missing, all)
}

func confirmWords(n int) string {
	if n == 1 {
		return "This records 1 question as asked at this visit and answered no. Was it asked?"
	}
	return fmt.Sprintf("This records %d questions as asked at this visit and answered no. Was each of them asked?", n)
}

func confirmLabel(n int) string {
	if n == 1 {
		return "Yes, it was asked"
	}
	return fmt.Sprintf("Yes, all %d were asked", n)
}

func doneWords(n int) string {
	if n == 1 {
		return "1 question recorded as asked and answered no."
	}
	return fmt.Sprintf("%d questions recorded as asked and answered no.", n)
}

// unremarkable are facts that give no finding of their own.
var unremarkable = screen.Facts{
	Age: screen.AdultAge, Sex: energy.Male, BMI: screen.OverweightBMI, Goal: energy.Maintain,
	Outcome: energy.Outcome{Target: derive.Exact(energy.LeastEnergy(energy.Male))},
	Resting: energy.LeastEnergy(energy.Male), Carbohydrate: macro.CarbohydrateRDA,
}

// fromTold are the findings that the answers alone give, with the scores and the
// details that were told beside them.
func fromTold(told domain.Intake) []derive.Finding {
	facts := unremarkable
	facts.Scored, facts.Reproduction = told.Scored, told.Reproduction
	var found []derive.Finding
	for _, f := range screen.Findings(told.Screening, facts) {
		if screen.Known(screen.Code(f.Code)) || strings.HasPrefix(f.Code, "refeeding") {
			found = append(found, f)
		}
	}
	return found
}

// noteOf says below a question what a yes stops. Findings that only speak say so
// themselves.
func noteOf(code screen.Code, answer screen.Answer) string {
	if answer != screen.Yes {
		return ""
	}
	var told []string
	for _, f := range fromTold(domain.Intake{Screening: screen.Answers{code: screen.Yes}}) {
		switch {
		case f.Code != string(code):
		case f.Level == derive.Refer:
			told = append(told, "Refer: no "+stopped(f.Scope)+".")
		case f.Level == derive.Hold:
			told = append(told, "Hold: no "+stopped(f.Scope)+" until a reason is recorded.")
		}
	}
	return strings.Join(told, " ")
}

// scopeWords says what a scope stops, gravest first.
var scopeWords = []struct {
	scope derive.Scope
	words string
}{
	{derive.ScopePlan, "plan at all"},
	{derive.ScopeDeficit, "target under maintenance"},
	{derive.ScopeSurplus, "target over maintenance"},
	{derive.ScopeProtein, "protein other than 0.8 g/kg"},
	{derive.ScopeCarbohydrate, "low carbohydrate"},
	{derive.ScopeFibre, "rise in fibre"},
	{derive.ScopeFluid, "advice to drink more"},
}

// stopped lists what a scope stops: "target under maintenance and advice to
// drink more". What every hold stops besides is left out.
func stopped(scope derive.Scope) string {
	var words []string
	for _, s := range scopeWords {
		if scope.Covers(s.scope) {
			words = append(words, s.words)
		}
	}
	return strings.Join(words, ", no ")
}

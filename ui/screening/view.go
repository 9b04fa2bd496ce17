package screening

import (
	"fmt"

	"handbreadth/domain/derive"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/ui/draft"
)

// view is what the section says about the form as it stands.
type view struct {
	Progress string
	Open     []screen.Code // questions that were not asked
	Frail    bool          // whether frailty is asked about
	Heading  string        // what the answers mean for the plan
	Findings []shown
}

// shown is one finding and what can be done about it.
type shown struct {
	Finding derive.Finding
	Reason  bool   // a reason can be recorded
	Given   bool   // a reason was recorded
	Remark  string // where to go from here
}

func look(form draft.Form, r draft.Reading, plan planned) view {
	answers := r.Intake.Screening
	v := view{Open: screen.Unasked(answers)}
	all := len(screen.Questions())
	v.Progress = fmt.Sprintf("%d of %d asked", all-len(v.Open), all)
	v.Frail = askFrail(r)
	if !plan.ok {
		v.Heading = "What the answers mean shows once the intake has what a plan needs."
		return v
	}
	v.Heading = headingOf(plan)
	for _, f := range plan.findings {
		v.Findings = append(v.Findings, plan.show(f, form))
	}
	return v
}

func askFrail(r draft.Reading) bool {
	in := r.Intake
	return !in.Client.Born.IsZero() && !in.Date.IsZero() && in.Age() >= macro.OlderAge
}

// planned is what the section takes from a plan.
type planned struct {
	ok       bool
	findings []derive.Finding
	gate     screen.Gate
}

func headingOf(p planned) string {
	switch {
	case p.gate.Referred():
		return "Referred: no plan is made here. The referral note is in Handout."
	case p.gate.Held():
		if len(p.gate.Holds) == 1 {
			return "Held: one finding needs a reason before the plan can be given out."
		}
		return fmt.Sprintf("Held: %d findings need a reason before the plan can be given out.", len(p.gate.Holds))
	case len(p.gate.Lifted) > 0:
		return "Open: every hold has its reason."
	}
	return "Open: nothing stops this plan."
}

func (p planned) show(f derive.Finding, form draft.Form) shown {
	s := shown{Finding: f}
	if f.Level == derive.Hold && f.Scope.Covers(p.gate.Asked) {
		s.Reason = f.Code != screen.NotAskedCode
		s.Given = form.Get(draft.Reason(f.Code, draft.ReasonText)) != ""
		s.Remark = "A reason lifts this hold. It is kept with the plan."
		if !s.Reason {
			s.Remark = "Ask what is left, or record why it was not asked."
			s.Reason = true
		}
	}
	if f.Level >= derive.Hold && !f.Scope.Covers(p.gate.Asked) {
		s.Remark = "Does not stop this plan as it stands."
	}
	return s
}

// confirmWords asks before the questions that are left are answered together.
func confirmWords(left int) string {
	if left == 1 {
		return "Was the question that is left asked, and answered with no?"
	}
	return fmt.Sprintf("Were the %d questions that are left all asked, and answered with no?", left)
}

// allNo is what answering the questions that are left with no puts into the form.
func allNo(v view, form draft.Form) map[draft.Field]string {
	texts := map[draft.Field]string{}
	for _, code := range v.Open {
		texts[draft.Screening(code)] = draft.AnswerNo
	}
	if frail := draft.Screening(screen.Frail); v.Frail && form.Get(frail) == "" {
		texts[frail] = draft.AnswerNo
	}
	return texts
}

// textOf is what an answer puts into the form.
func textOf(a screen.Answer) string {
	switch a {
	case screen.Yes:
		return draft.AnswerYes
	case screen.No:
		return draft.AnswerNo
	}
	return ""
}

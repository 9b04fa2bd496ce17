package ui

import (
	"context"
	"strings"

	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/task"
)

// NewClient goes to the list and asks for a name.
func (s *Shell) NewClient() {
	if s.desk == nil {
		return
	}
	if s.place != PlaceClients {
		s.Go(PlaceClients)
	}
	s.clients.AskName()
	s.changed()
}

// ShowSection shows a section of the open client file.
func (s *Shell) ShowSection(section Section) {
	if s.file == nil {
		s.toast.Say("Open a client file first.")
		return
	}
	if s.place != PlaceFile {
		s.Go(PlaceFile)
	}
	s.file.show(section)
	s.file.enterBody()
}

// SaveNow writes at once and says so.
func (s *Shell) SaveNow() {
	if s.desk == nil {
		return
	}
	if err := s.Flush(); err != nil {
		s.toast.Warn(s.tools.Words(err))
		return
	}
	s.toast.Say("Saved. It saves itself as you type.")
}

// Undo takes back the last change of the open form.
func (s *Shell) Undo() { s.turnBack((*draft.Session).Undo, "There is nothing to undo.") }

// Redo makes the change again that was taken back.
func (s *Shell) Redo() { s.turnBack((*draft.Session).Redo, "There is nothing to redo.") }

// undoInEntry takes undo and redo in a client file, where they are those of the
// form; elsewhere an entry undoes its own typing.
func (s *Shell) undoInEntry(again bool) bool {
	if s.place != PlaceFile || s.palette != nil || s.asking != nil {
		return false
	}
	if again {
		s.Redo()
	} else {
		s.Undo()
	}
	return true
}

func (s *Shell) turnBack(turn func(*draft.Session) (draft.Field, bool), otherwise string) {
	if s.file == nil || s.place != PlaceFile {
		return
	}
	if _, done := turn(s.file.session); !done {
		s.toast.Say(otherwise)
	}
}

// ToggleSheet shows or hides the running sheet.
func (s *Shell) ToggleSheet() {
	if s.file == nil || s.place != PlaceFile {
		return
	}
	s.file.fold.toggle()
	s.file.object.Refresh()
	s.changed()
}

// KeepPlan keeps the plan as it stands as the next version, or the referral.
func (s *Shell) KeepPlan() {
	f := s.file
	if f == nil || f.isKept() {
		return
	}
	plan, ok := f.session.Plan()
	if !ok {
		s.toast.Say(f.whyNoPlan())
		return
	}
	if plan.Gate.Held() {
		s.toast.Offer("This plan is held until a reason is written down.", "Go to Screening", func() { s.ShowSection(SectionScreening) })
		return
	}
	form := f.session.Form()
	task.Run(s.tools.Run, "Keeping the plan", func(ctx context.Context) (Kept, error) {
		return f.file.Keep(ctx, form, plan)
	}, func(kept Kept, err error) {
		if err != nil {
			s.toast.Warn(err.Error())
			return
		}
		f.showKept(kept)
		s.toast.Say("Kept: " + kept.String() + ".")
	})
}

// whyNoPlan says in plain words what a plan still needs.
func (f *clientFile) whyNoPlan() string {
	reading := f.session.Reading()
	if len(reading.Problems) > 0 {
		return "There is no plan yet: something in the intake cannot be read. It is marked there."
	}
	var names []string
	for _, field := range reading.Missing {
		if name, known := fieldNames[field]; known {
			names = append(names, name)
		}
	}
	return "There is no plan yet. Still needed: " + strings.Join(names, ", ") + "."
}

// fieldNames are the words for what a plan cannot do without.
var fieldNames = map[draft.Field]string{
	draft.Date: "the date of the visit", draft.Born: "the birth date", draft.Sex: "the sex for the equation",
	draft.Height: "the height", draft.Weight: "the weight", draft.Activity: "the activity", draft.PAL: "the PAL",
	draft.GoalKind: "the goal", draft.GoalWeight: "the weight to reach",
}

// NewVisit starts a visit today from the last one. The screening is asked anew:
// what was no counts as not asked, since much can happen between two visits.
func (s *Shell) NewVisit() {
	f := s.file
	if f == nil {
		return
	}
	if err := f.flush(); err != nil {
		s.toast.Warn(s.tools.Words(err))
		return
	}
	form := newVisit(f.session.Form(), s.desk.Today())
	next := s.newClientFile(f.id, f.file, form)
	next.saver.turn = f.saver.turn
	next.saver.saved = f.saver.turn
	next.saver.change(form)
	s.file = next
	s.Go(PlaceFile)
	next.show(SectionIntake)
	next.enterBody()
}

// newVisit is the form that a visit starts from.
func newVisit(last draft.Form, today unit.Date) draft.Form {
	form := last.Clone()
	form[draft.Date] = today.Long()
	delete(form, draft.NextVisit)
	questions := []screen.Code{screen.Frail}
	for _, q := range screen.Questions() {
		questions = append(questions, q.Code)
	}
	for _, code := range questions {
		if field := draft.Screening(code); form[field] == draft.AnswerNo {
			delete(form, field)
		}
	}
	for field := range form {
		if draft.AskedEachVisit(field) {
			delete(form, field)
		}
	}
	return form
}

// Package screening is the section in which the screening questions are asked,
// and in which the reasons are recorded that lift what findings hold.
package screening

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// Source is the open client file, read and written by its fields.
type Source interface {
	Form() draft.Form
	Reading() draft.Reading
	Try(field draft.Field, text string) draft.Reading
	Style() unit.Style
	Plan() (domain.Plan, bool)
	Get(field draft.Field) string
	Set(field draft.Field, text string)
	SetAll(texts map[draft.Field]string)
	Undo() (draft.Field, bool)
	Hear(f func(changed draft.Field))
}

// Screen is the section of one client file.
type Screen struct {
	// OnGo leads to another section and, where one is named, to a field in it.
	OnGo func(section string, field draft.Field)

	source   Source
	progress *widgets.Text
	others   *others
	rows     map[screen.Code]*question
	cards    []*scoreCard
	findings *findings
	page     *widgets.Page
}

// question is one row of the list.
type question struct {
	*widgets.YesNo
	row    row
	object *fyne.Container // with the hairline above
	note   string
	follow *followUp // what a yes asks further; nil for most
}

// columnWidth keeps lines readable in a wide window.
const columnWidth = 760

// New returns the section of a client file; it follows every change.
func New(source Source) *Screen {
	s := &Screen{source: source, rows: map[screen.Code]*question{}, progress: widgets.NewText("", widgets.Title)}
	s.others = newOthers(source, s.settle)
	s.findings = newFindings(source, s.settle, s.goTo)
	column := widgets.ColumnGap(theme.Three, widgets.ColumnGap(theme.Unit,
		widgets.Ends(s.progress, s.others.ask), widgets.NewText(howTo, widgets.Small), s.others.below, s.findings.glance))
	for _, section := range screen.Sections() {
		column.Add(s.newSection(section))
	}
	column.Add(s.newScores())
	column.Add(s.findings.object)
	s.page = widgets.NewPage(widgets.Narrow(columnWidth, column))
	s.show()
	source.Hear(func(changed draft.Field) { s.hear(changed) })
	return s
}

const howTo = "Ask at every visit. What was not asked is never taken as no. Keys: y, n, Delete for not asked; up and down go to the next question."

// Object returns what to put into the window.
func (s *Screen) Object() fyne.CanvasObject { return s.page }

// Focus moves the focus to a question, to a detail that it asks for, to a scored
// questionnaire, or to a part of the reason for a finding.
func (s *Screen) Focus(field draft.Field) {
	s.settle()
	if code, is := questionOf(field); is {
		if q, known := s.rows[code]; known && q.object.Visible() {
			widgets.FocusOn(q.YesNo)
		}
		return
	}
	for _, q := range s.rows {
		if q.follow != nil && q.follow.focus(field) {
			return
		}
	}
	for _, c := range s.cards {
		if c.focus(field) {
			return
		}
	}
	s.findings.focus(field)
}

// newScores makes the cards of the scored questionnaires.
func (s *Screen) newScores() fyne.CanvasObject {
	column := widgets.ColumnGap(0)
	for _, q := range screen.Questionnaires() {
		c := newScoreCard(s.source, q, s.settle)
		s.cards = append(s.cards, c)
		column.Add(c.fold)
	}
	return widgets.ColumnGap(theme.Unit, widgets.NewText(scoresTitle, widgets.Title), widgets.NewText(scoresLead, widgets.Small), column)
}

func (s *Screen) newSection(section screen.Section) fyne.CanvasObject {
	column := widgets.ColumnGap(0, widgets.InsetSides(0, 0, 0, theme.Unit, widgets.NewText(string(section), widgets.Title)))
	for _, r := range allRows() {
		if r.Section == section {
			column.Add(s.newRow(r).object)
		}
	}
	return column
}

func (s *Screen) newRow(r row) *question {
	q := &question{row: r}
	field := draft.Screening(r.Code)
	q.YesNo = widgets.Name(widgets.NewYesNo(r.Ask, func(a screen.Answer) { s.source.Set(field, textOf(a)) }), string(field))
	q.object = widgets.ColumnGap(0, widgets.NewHairline(), widgets.InsetSides(0, theme.Unit, 0, theme.Unit, q.YesNo))
	if q.follow = s.newFollow(r.Code); q.follow != nil {
		q.object.Add(q.follow.object)
	}
	s.rows[r.Code] = q
	return q
}

// newFollow makes what a question asks further, nil for most.
func (s *Screen) newFollow(code screen.Code) *followUp {
	switch code {
	case screen.Pregnant:
		return newFollowUp(s.source, pregnancyLead, "", pregnancyFields, pregnancyAsked)
	case screen.UnexplainedLoss:
		return newFollowUp(s.source, refeedingLead, refeedingFrom, refeedingFields, refeedingAsked)
	}
	return nil
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

// answerOf is the answer that a text of the form is.
func answerOf(text string) screen.Answer {
	switch text {
	case draft.AnswerYes:
		return screen.Yes
	case draft.AnswerNo:
		return screen.No
	}
	return screen.NotAsked
}

func (s *Screen) hear(changed draft.Field) {
	s.others.heard(changed)
	s.show()
}

// show follows the form.
func (s *Screen) show() {
	reading, form := s.source.Reading(), s.source.Form()
	missing, all := open(reading)
	s.progress.SetText(progressWords(len(missing), all))
	s.others.show(len(missing))
	changed := false
	for code, q := range s.rows {
		q.show(reading.Intake.Screening.Of(code), isAsked(q.row, reading))
		if q.follow != nil {
			changed = q.follow.show(reading, form) || changed
		}
	}
	for _, c := range s.cards {
		c.show()
	}
	s.findings.show()
	if changed {
		s.settle()
	}
}

func (q *question) show(answer screen.Answer, asked bool) {
	q.object.Hidden = !asked
	if q.Answer() != answer {
		q.SetAnswer(answer)
	}
	if note := noteOf(q.row.Code, answer); note != q.note {
		q.note = note
		q.SetNote(note)
	}
}

func (s *Screen) goTo(section string) {
	if s.OnGo != nil {
		s.OnGo(section, "")
	}
}

// settle lays out anew after something came, went or changed its height.
func (s *Screen) settle() {
	if s.page == nil {
		return
	}
	s.page.Settle()
}

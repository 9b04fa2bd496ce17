// Package screening is the section in which the screening questions are asked,
// and in which the reasons are recorded that lift what findings hold.
package screening

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain"
	"handbreadth/domain/screen"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// Source is the open client file, read and written by its fields.
type Source interface {
	Form() draft.Form
	Reading() draft.Reading
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
	findings *findings
	page     *widgets.Page
}

// question is one row of the list.
type question struct {
	*widgets.YesNo
	row    row
	object *fyne.Container // with the hairline above
	note   string
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
	column.Add(s.findings.object)
	s.page = widgets.NewPage(widgets.Narrow(columnWidth, column))
	s.show()
	source.Hear(func(changed draft.Field) { s.hear(changed) })
	return s
}

const howTo = "Ask at every visit. What was not asked is never taken as no. Keys: y, n, Delete for not asked; up and down go to the next question."

// Object returns what to put into the window.
func (s *Screen) Object() fyne.CanvasObject { return s.page }

// Focus moves the focus to a question or to a part of the reason for a finding.
func (s *Screen) Focus(field draft.Field) {
	if code, is := questionOf(field); is {
		if q, known := s.rows[code]; known && q.object.Visible() {
			s.settle()
			widgets.FocusOn(q.YesNo)
		}
		return
	}
	s.settle()
	s.findings.focus(field)
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
	s.rows[r.Code] = q
	return q
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

func (s *Screen) hear(changed draft.Field) {
	s.others.heard(changed)
	s.show()
}

// show follows the form.
func (s *Screen) show() {
	reading := s.source.Reading()
	missing, all := open(reading)
	s.progress.SetText(progressWords(len(missing), all))
	s.others.show(len(missing))
	for code, q := range s.rows {
		q.show(reading.Intake.Screening.Of(code), isAsked(q.row, reading))
	}
	s.findings.show()
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
	scroll := s.page.Scroll()
	content := scroll.Content.(*fyne.Container)
	view := scroll.Size()
	if view.Width == 0 {
		return
	}
	size := fyne.NewSize(view.Width, max(view.Height, content.MinSize().Height))
	content.Resize(size)
	content.Layout.Layout(content.Objects, size)
	scroll.Refresh()
}

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
	Hear(f func(changed draft.Field))
}

// Screen is the section of one client file.
type Screen struct {
	source    Source
	progress  *widgets.Text
	all       *allNoRow
	questions map[screen.Code]*widgets.YesNo
	outcome   *outcome
	page      *widgets.Page
}

// columnWidth keeps lines readable in a wide window.
const columnWidth = 720

// New returns the section of a client file; it follows every change.
func New(s Source) *Screen {
	v := &Screen{source: s, progress: widgets.NewText("", widgets.Strong), questions: map[screen.Code]*widgets.YesNo{}}
	v.all = newAllNoRow(v.answerAllNo, v.settle)
	v.outcome = newOutcome(s, v.settle)
	column := widgets.ColumnGap(theme.Two,
		widgets.ColumnGap(theme.Unit, v.progress, v.outcome.heading, widgets.NewText(howTo, widgets.Small), v.all.object))
	for _, section := range screen.Sections() {
		column.Add(v.newSection(section))
	}
	column.Add(widgets.ColumnGap(theme.Two, widgets.NewHairline(), widgets.NewText("What the answers mean", widgets.Title), v.outcome.cards))
	v.page = widgets.NewPage(widgets.Narrow(columnWidth, column))
	v.show()
	s.Hear(func(draft.Field) { v.show() })
	return v
}

const howTo = "Asked at every visit. What was not asked is never taken as no. Keys: y, n, and Delete for not asked; arrows go up and down. The wordings are our own."

// Object returns what to put into the window.
func (s *Screen) Object() fyne.CanvasObject { return s.page }

// Focus moves the focus to a question or to the reason for a finding.
func (s *Screen) Focus(field draft.Field) {
	for code, q := range s.questions {
		if draft.Screening(code) == field {
			widgets.FocusOn(q)
			return
		}
	}
	s.outcome.focus(field)
}

func (s *Screen) newSection(section screen.Section) fyne.CanvasObject {
	column := widgets.ColumnGap(theme.Unit+theme.Half, widgets.NewText(string(section), widgets.Title))
	for _, q := range screen.Questions() {
		if q.Section == section {
			column.Add(s.newQuestion(q.Code, q.Ask))
		}
	}
	if section == screen.SectionLife {
		column.Add(s.newQuestion(screen.Frail, screen.FrailAsk))
	}
	return widgets.ColumnGap(theme.Two, widgets.NewHairline(), column)
}

func (s *Screen) newQuestion(code screen.Code, ask string) fyne.CanvasObject {
	q := widgets.NewYesNo(ask, func(a screen.Answer) { s.source.Set(draft.Screening(code), textOf(a)) })
	s.questions[code] = widgets.Name(q, "screening."+string(code))
	return q
}

func (s *Screen) answerAllNo() {
	form := s.source.Form()
	s.source.SetAll(allNo(s.look(), form))
}

func (s *Screen) look() view {
	plan, ok := s.source.Plan()
	return look(s.source.Form(), s.source.Reading(), planned{ok, plan.Findings, plan.Gate})
}

// show follows the form.
func (s *Screen) show() {
	v := s.look()
	s.progress.SetText(v.Progress)
	answers := s.source.Reading().Intake.Screening
	for code, q := range s.questions {
		if a := answers.Of(code); q.Answer() != a {
			q.SetAnswer(a)
		}
	}
	s.questions[screen.Frail].Hidden = !v.Frail
	s.all.show(len(v.Open))
	s.outcome.show(v)
	s.settle()
}

// settle lays out anew after something changed its height.
func (s *Screen) settle() {
	if s.page == nil {
		return
	}
	scroll := s.page.Scroll()
	content, ok := scroll.Content.(*fyne.Container)
	width := scroll.Size().Width
	if !ok || width == 0 {
		return
	}
	size := fyne.NewSize(width, max(scroll.Size().Height, content.MinSize().Height))
	content.Resize(size)
	content.Layout.Layout(content.Objects, size)
	scroll.Refresh()
}

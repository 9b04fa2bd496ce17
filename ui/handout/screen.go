// Package handout is the section in which the papers are chosen, looked at,
// saved and printed.
package handout

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain"
	"handbreadth/ui/draft"
	"handbreadth/ui/task"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// Screen is the section of one client file.
type Screen struct {
	// OnGo leads to another section and, where one is named, to a field in it.
	OnGo func(section string, field draft.Field)
	// OnChoosePath asks where to save, beginning with a proposed file name, and
	// calls chosen with the path; it does not call where nothing was chosen.
	// From [New] on it is a file dialog over the window of the section.
	OnChoosePath func(proposed string, chosen func(path string))

	session *draft.Session
	papers  Papers
	run     task.Runner
	stop    func() // stops what is being saved or printed; nil: nothing is

	now     view
	stale   bool // the pages are to be made when the section is shown
	notice  *notice
	choices *choices
	preview *preview
	sides   *sides
	page    *widgets.Page
	object  *pane
}

// New returns the section of a client file; it follows every change.
func New(s *draft.Session, papers Papers, run task.Runner) *Screen {
	return newScreen(s, papers, run, task.System{})
}

func newScreen(s *draft.Session, papers Papers, run task.Runner, clock task.Clock) *Screen {
	screen := &Screen{session: s, papers: papers, run: run}
	screen.OnChoosePath = screen.askPath
	screen.notice = newNotice(screen.goTo)
	screen.choices = newChoices(s, papers.PageNames(), screen.changed, screen.onSave, screen.onPrint, screen.onStop)
	screen.preview = newPreview(papers, run, clock, screen.wanted, screen.settle)
	screen.sides = newSides(screen.choices.object, screen.preview.object)
	screen.page = widgets.NewPage(widgets.ColumnGap(theme.Two, screen.notice.object, screen.sides))
	screen.object = newPane(screen.page, screen.shown)
	screen.show()
	screen.renew(screen.preview.start)
	s.Hear(func(draft.Field) { screen.changed() })
	return screen
}

// Object returns what to put into the window.
func (s *Screen) Object() fyne.CanvasObject { return s.object }

// Focus moves the focus to a field of the section; a field that has no place
// here changes nothing.
func (s *Screen) Focus(field draft.Field) {
	switch field {
	case draft.NextStep:
		widgets.FocusOn(s.choices.step)
	case draft.NextVisit:
		widgets.FocusOn(s.choices.visit)
	}
}

// SetPaper chooses the size of paper, [A4] or [Letter]; another text changes
// nothing.
func (s *Screen) SetPaper(paper string) {
	for i, known := range paperSizes {
		if known == paper && i != s.choices.paper.Selected() {
			s.choices.paper.SetSelected(i)
			s.changed()
		}
	}
}

// changed follows a change of the form or of a choice.
func (s *Screen) changed() {
	if s.stop == nil {
		s.choices.told.say("", "", false)
	}
	s.show()
	s.renew(s.preview.soon)
}

// shown makes the pages that were put off while the section was hidden.
func (s *Screen) shown() {
	if s.stale {
		s.renew(s.preview.start)
	}
}

func (s *Screen) show() {
	plan, planned := s.session.Plan()
	s.now = look(plan, planned, s.session.Reading())
	s.notice.show(s.now)
	s.choices.show(s.now, s.stop == nil)
	s.preview.object.Hidden = !s.now.ready()
	s.settle()
}

// renew has the pages made, or taken away where there are none. While the
// section is hidden that is put off.
func (s *Screen) renew(make func()) {
	s.stale = false
	switch {
	case !s.now.ready():
		s.preview.drop("")
	case noPages(s.now.State, s.choices.choice()):
		s.preview.drop(wordsNoPages)
	case !s.object.Visible():
		s.stale = true
	default:
		make()
	}
}

func (s *Screen) wanted() (domain.Plan, Choice) {
	plan, _ := s.session.Plan()
	return plan, s.choices.choice()
}

func (s *Screen) goTo(w way) {
	if s.OnGo != nil && w.Section != "" {
		s.OnGo(w.Section, w.Field)
	}
}

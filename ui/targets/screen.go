// Package targets is the section in which the goal, the energy and the macros
// are set and explained.
package targets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"handbreadth/domain"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// Source is the open client file, read and written by its fields.
type Source interface {
	Form() draft.Form
	Plan() (domain.Plan, bool)
	Reading() draft.Reading
	Get(field draft.Field) string
	Set(field draft.Field, text string)
	SetAll(texts map[draft.Field]string)
	Style() unit.Style
	Hear(f func(changed draft.Field))
}

// Screen is the section of one client file.
type Screen struct {
	// OnGo leads to a section ("intake", "screening") and, where one is named, to
	// a field in it.
	OnGo func(section string, field draft.Field)

	source  Source
	style   unit.Style
	notice  *notice
	course  *courseCard
	goal    *goalCard
	energy  *energyCard
	macros  *macroCard
	compare *compareCard
	page    *widgets.Page
	inside  *fyne.Container
	object  *widgets.Wakeful
	stale   bool // something has changed while the section was hidden
}

// The course leads; the goal stands beside it where there is room.
const (
	courseWidth float32 = 500
	goalWidth   float32 = 352
)

// New returns the section of a client file; it follows every change while it is
// shown, and catches up when it is shown again.
func New(s Source) *Screen {
	screen := &Screen{source: s, inside: container.NewStack()}
	screen.object = widgets.NewWakeful(screen.inside, screen.wake)
	screen.build()
	s.Hear(func(draft.Field) { screen.follow() })
	return screen
}

// Object returns what to put into the window.
func (s *Screen) Object() fyne.CanvasObject { return s.object }

// Focus moves the focus to a field of the section; a field that has no place
// here changes nothing.
func (s *Screen) Focus(field draft.Field) {
	if object := s.place(field); object != nil {
		s.settle()
		widgets.FocusOn(object)
	}
}

// place is what takes the focus for a field; what is folded opens first.
func (s *Screen) place(field draft.Field) fyne.CanvasObject {
	switch field {
	case draft.GoalKind:
		return s.goal.kind
	case draft.GoalWeight:
		return s.goal.weight.Field
	case draft.GoalBy:
		return s.goal.reach(byDate)
	case draft.GoalPerWeek:
		return s.goal.reach(byRate)
	case draft.GoalEnergy:
		return s.goal.reach(byEnergy)
	case draft.RestingEquation:
		return s.energy.strip
	case draft.MeasuredResting:
		return s.energy.reach()
	}
	return s.macros.place(field)
}

// build makes the widgets; they write numbers in one style only.
func (s *Screen) build() {
	s.style = s.source.Style()
	s.notice = newNotice(s.goTo, s.source)
	s.course = newCourseCard(s.style, s.settle)
	s.goal = newGoalCard(s.source, s.settle)
	s.energy = newEnergyCard(s.source, s.goTo, s.settle)
	s.macros = newMacroCard(s.source, s.settle)
	s.compare = newCompareCard(s.source, s.again)
	s.show()
	s.page = widgets.NewPage(widgets.ColumnGap(theme.Two, s.notice.object,
		widgets.WithAside(courseWidth, goalWidth, s.course.object, s.goal.object),
		s.macros.object, s.energy.object, s.compare.object))
	s.inside.Objects = []fyne.CanvasObject{s.page}
	s.inside.Refresh()
}

func (s *Screen) wake() {
	if s.stale {
		s.follow()
	}
}

func (s *Screen) follow() {
	s.stale = !s.object.Visible()
	if s.stale {
		return
	}
	if s.source.Style() != s.style {
		s.build()
		return
	}
	s.again()
}

// again shows everything anew and lays it out.
func (s *Screen) again() {
	s.show()
	s.settle()
}

func (s *Screen) show() {
	v := look(s.source)
	s.notice.show(v)
	s.course.show(v)
	s.goal.show(v)
	s.energy.show(v)
	s.macros.show(v)
	s.compare.show(v)
}

// settle lays out anew after something changed its height.
func (s *Screen) settle() { settle(s.page.Scroll()) }

func (s *Screen) goTo(w way) {
	if s.OnGo != nil && w.Section != "" {
		s.OnGo(w.Section, w.Field)
	}
}

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
	Style() unit.Style
	Hear(f func(changed draft.Field))
}

// Screen is the section of one client file.
type Screen struct {
	// OnGo leads to a section ("intake", "screening") and, where one is named, to
	// a field in it.
	OnGo func(section string, field draft.Field)

	source Source
	style  unit.Style
	notice *notice
	goal   *goalCard
	energy *energyCard
	macros *macroCard
	page   *widgets.Page
	object *fyne.Container
}

// cardWidth is the least width at which two cards stand side by side.
const cardWidth float32 = 400

// New returns the section of a client file; it follows every change.
func New(s Source) *Screen {
	screen := &Screen{source: s, object: container.NewStack()}
	screen.build()
	s.Hear(func(draft.Field) { screen.follow() })
	return screen
}

// Object returns what to put into the window.
func (s *Screen) Object() fyne.CanvasObject { return s.object }

// Focus moves the focus to a field of the section; a field that has no place
// here changes nothing.
func (s *Screen) Focus(field draft.Field) {
	if object, ok := s.inputs()[field]; ok {
		widgets.FocusOn(object)
	}
}

func (s *Screen) inputs() map[draft.Field]fyne.CanvasObject {
	return map[draft.Field]fyne.CanvasObject{
		draft.GoalKind: s.goal.kind, draft.GoalWeight: s.goal.weight.Field, draft.GoalBy: s.goal.by.Field,
		draft.GoalEnergy: s.goal.agreed.Field, draft.Balance: s.macros.slider,
		draft.FatFloor: s.macros.floor.Field, draft.Protein: s.macros.protein.Field,
	}
}

// build makes the widgets; they write numbers in one style only.
func (s *Screen) build() {
	s.style = s.source.Style()
	s.notice = newNotice(s.goTo)
	s.goal = newGoalCard(s.source)
	s.energy = newEnergyCard(s.style, s.settle)
	s.macros = newMacroCard(s.source, s.settle)
	s.show()
	s.page = widgets.NewPage(widgets.ColumnGap(theme.Two, s.notice.object,
		widgets.Beside(cardWidth, s.goal.object, s.energy.object), s.macros.object))
	s.object.Objects = []fyne.CanvasObject{s.page}
	s.object.Refresh()
}

func (s *Screen) follow() {
	if s.source.Style() != s.style {
		s.build()
		return
	}
	s.show()
	s.settle()
}

func (s *Screen) show() {
	v := look(s.source)
	s.notice.show(v)
	s.goal.show(v)
	s.energy.show(v)
	s.macros.show(v)
}

// settle lays out anew after something changed its height.
func (s *Screen) settle() { settle(s.page.Scroll()) }

func (s *Screen) goTo(w way) {
	if s.OnGo != nil && w.Section != "" {
		s.OnGo(w.Section, w.Field)
	}
}

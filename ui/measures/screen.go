// Package measures is the section that shows what a hand measure holds for this
// client and the measures of each meal.
package measures

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
	Plan() (domain.Plan, bool)
	Reading() draft.Reading
	Set(field draft.Field, text string)
	Style() unit.Style
	Hear(f func(changed draft.Field))
}

// Screen is the section of one client file.
type Screen struct {
	// OnGo leads to a section ("intake", "screening") and, where one is named, to
	// a field in it.
	OnGo func(section string, field draft.Field)

	source   Source
	style    unit.Style
	notice   *notice
	contents *contentsCard
	meals    *mealsCard
	near     *nearCard
	page     *widgets.Page
	object   *fyne.Container
}

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
	if field == draft.Meals {
		widgets.FocusOn(s.meals.choice)
	}
}

// build makes the widgets; they write numbers in one style only.
func (s *Screen) build() {
	s.style = s.source.Style()
	s.notice = newNotice(s.goTo)
	s.contents = newContentsCard(s.style, s.settle)
	s.meals = newMealsCard(s.source)
	s.near = newNearCard(s.style, s.settle)
	s.show()
	s.page = widgets.NewPage(widgets.ColumnGap(theme.Two,
		s.notice.object, s.contents.object, s.meals.object, s.near.object))
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
	s.contents.show(v)
	s.meals.show(v)
	s.near.show(v)
}

// settle lays out anew after something changed its height.
func (s *Screen) settle() { settle(s.page.Scroll()) }

func (s *Screen) goTo(w way) {
	if s.OnGo != nil && w.Section != "" {
		s.OnGo(w.Section, w.Field)
	}
}

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
	Try(field draft.Field, text string) draft.Reading
	Get(field draft.Field) string
	Set(field draft.Field, text string)
	SetAll(texts map[draft.Field]string)
	Style() unit.Style
	Hear(f func(changed draft.Field))
}

// Screen is the section of one client file. The grid leads; the hand, what the
// measures hold and the foods for them are folded.
type Screen struct {
	// OnGo leads to a section ("intake", "screening") and, where one is named, to
	// a field in it.
	OnGo func(section string, field draft.Field)

	source   Source
	style    unit.Style
	notice   *notice
	conflict *conflictCard
	grid     *gridCard
	near     *nearCard
	hand     *handFold
	contents *contentsFold
	foods    *foodsFold
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

// The grid stands beside how near it comes where there is room.
const (
	gridWidth float32 = 860
	nearWidth float32 = 400
)

// build makes the widgets; they write numbers in one style only.
func (s *Screen) build() {
	s.style = s.source.Style()
	s.notice = newNotice(s.goTo)
	s.conflict = newConflictCard(s.source)
	s.grid = newGridCard(s.source)
	s.near = newNearCard(s.source, s.settle)
	s.hand = newHandFold(s.source, s.onFold)
	s.contents = newContentsFold(s.source, s.onFold)
	s.foods = newFoodsFold(s.source, s.onFold)
	s.page = widgets.NewPageInset(theme.Two, widgets.ColumnGap(theme.Two,
		s.notice.object, s.conflict.object, widgets.WithAside(gridWidth, nearWidth, s.grid.object, s.near.object),
		widgets.ColumnGap(0, s.hand.fold, s.contents.fold, s.foods.fold)))
	s.show()
	s.object.Objects = []fyne.CanvasObject{s.page}
	s.object.Refresh()
}

// Focus moves the focus to a field of the section, and opens what it lies in; a
// field that has no place here changes nothing.
func (s *Screen) Focus(field draft.Field) {
	switch field {
	case draft.Meals:
		widgets.FocusOn(s.grid.count)
	case draft.Ranges:
		widgets.FocusOn(s.grid.ranges)
	case draft.MealWishes:
		widgets.FocusOn(s.grid.rows[0].cells[0])
	case draft.MealSizes:
		widgets.FocusOn(s.grid.rows[0].size)
	case draft.Basket:
		s.openFold(s.contents.fold)
		widgets.FocusOn(s.contents.baskets[0].object)
	}
	if s.hand.has(field) {
		s.openFold(s.hand.fold)
		s.hand.focus(field)
	}
}

func (s *Screen) openFold(f *widgets.Fold) {
	f.SetOpen(true)
	s.onFold()
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
	s.conflict.show(v)
	s.grid.show(v)
	s.near.show(v)
	s.hand.show(v)
	s.contents.show(v)
	s.foods.show(v)
}

// onFold shows what is in a fold that was opened.
func (s *Screen) onFold() {
	s.show()
	s.settle()
}

// settle lays out anew after something changed its height.
func (s *Screen) settle() { s.page.Settle() }

func (s *Screen) goTo(w way) {
	if s.OnGo != nil && w.Section != "" {
		s.OnGo(w.Section, w.Field)
	}
}

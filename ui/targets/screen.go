// Package targets is the section in which the goal, the energy and the macros are
// set and explained.
package targets

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/widgets"
)

// Source is the open client file, read and written by its fields.
type Source interface {
	Plan() (domain.Plan, bool)
	Reading() draft.Reading
	Get(field draft.Field) string
	Set(field draft.Field, text string)
	Style() unit.Style
	Hear(f func(changed draft.Field))
}

// Screen is the section of one client file.
type Screen struct {
	// OnGo leads to a section and, where one is named, to a field in it.
	OnGo func(section string, field draft.Field)

	source Source
	energy *widgets.Text
	object fyne.CanvasObject
}

// New returns the section of a client file; it follows every change.
func New(s Source) *Screen {
	screen := &Screen{source: s, energy: widgets.NewText("", widgets.Display)}
	screen.object = widgets.Column(screen.energy)
	s.Hear(func(draft.Field) { screen.show() })
	screen.show()
	return screen
}

// Object returns what to put into the window.
func (s *Screen) Object() fyne.CanvasObject { return s.object }

// Focus moves the focus to a field of the section.
func (s *Screen) Focus(draft.Field) {}

func (s *Screen) show() {
	text := ""
	if plan, ok := s.source.Plan(); ok && plan.Targets != nil {
		text = s.source.Style().Energy(plan.Targets.Energy.Value)
	}
	s.energy.SetText(text)
}

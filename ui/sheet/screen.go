// Package sheet is the running sheet: what the client file comes to so far,
// beside every section. It changes as the practitioner types.
package sheet

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// Width is how wide the shell should make the sheet.
const Width float32 = 320

// Screen is the running sheet of one client file.
type Screen struct {
	// OnGo leads to a section ("intake", "screening", "targets", "handout") and,
	// where one is named, to a field in it.
	OnGo func(section string, field draft.Field)

	source Source
	style  unit.Style
	body   *body
	page   *widgets.Page
	object *fyne.Container
}

// New returns the sheet of a client file; it follows every change.
func New(s Source) *Screen {
	screen := &Screen{source: s, object: container.NewStack()}
	screen.build()
	s.Hear(func(draft.Field) { screen.follow() })
	return screen
}

// Object returns what to put into the window.
func (s *Screen) Object() fyne.CanvasObject { return s.object }

// build makes the widgets; they write numbers in one style only.
func (s *Screen) build() {
	s.style = s.source.Style()
	s.body = newBody(s.style, s.goTo, s.settle)
	s.body.show(look(s.source))
	s.page = widgets.NewPageInset(theme.Two, s.body.object)
	s.object.Objects = []fyne.CanvasObject{s.page}
	s.object.Refresh()
}

func (s *Screen) follow() {
	if s.source.Style() != s.style {
		s.build()
		return
	}
	s.body.show(look(s.source))
	s.settle()
}

// settle lays out anew after something changed its height.
func (s *Screen) settle() { settle(s.page.Scroll()) }

func (s *Screen) goTo(a action) {
	if s.OnGo != nil && a.Section != "" {
		s.OnGo(a.Section, a.Field)
	}
}

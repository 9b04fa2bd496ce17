// Package sheet is the running sheet: what the client file comes to so far,
// beside every section. It changes as the practitioner types.
package sheet

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/draft"
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
	energy *widgets.Text
	object fyne.CanvasObject
}

// New returns the sheet of a client file; it follows every change.
func New(s Source) *Screen {
	screen := &Screen{source: s, energy: widgets.NewText("", widgets.Display)}
	screen.object = widgets.Column(screen.energy)
	s.Hear(func(draft.Field) { screen.show() })
	screen.show()
	return screen
}

// Object returns what to put into the window.
func (s *Screen) Object() fyne.CanvasObject { return s.object }

func (s *Screen) show() { s.energy.SetText(look(s.source).Target.Value) }

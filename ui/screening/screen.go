// Package screening is the section in which the screening questions are asked,
// and in which the reasons are recorded that lift what findings hold.
package screening

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

// Focus moves the focus to a field of the section.
func (s *Screen) Focus(draft.Field) {}

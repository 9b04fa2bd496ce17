// Package handout is the section in which the papers are chosen, looked at,
// saved and printed.
package handout

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/draft"
	"handbreadth/ui/task"
	"handbreadth/ui/widgets"
)

// Screen is the section of one client file.
type Screen struct {
	// OnGo leads to another section and, where one is named, to a field in it.
	OnGo func(section string, field draft.Field)
	// OnChoosePath asks where to save, beginning with a proposed file name, and
	// calls chosen with the path; it does not call where nothing was chosen.
	OnChoosePath func(proposed string, chosen func(path string))

	session *draft.Session
	papers  Papers
	run     task.Runner
	page    *widgets.Page
}

// New returns the section of a client file; it follows every change.
func New(s *draft.Session, papers Papers, run task.Runner) *Screen {
	return &Screen{session: s, papers: papers, run: run, page: widgets.NewPage(widgets.Column())}
}

// Object returns what to put into the window.
func (s *Screen) Object() fyne.CanvasObject { return s.page }

// Focus moves the focus to a field of the section.
func (s *Screen) Focus(draft.Field) {}

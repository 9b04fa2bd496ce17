// Package ui is the shell: the window with its rail, the open client file, the
// running sheet, the palette and the keys. It is the only package that knows
// that two screens exist.
package ui

import (
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/clients"
	"handbreadth/ui/help"
	"handbreadth/ui/practice"
	"handbreadth/ui/task"
	"handbreadth/ui/widgets"
)

// Tools is what the shell works with.
type Tools struct {
	Run     task.Runner
	Clock   task.Clock         // of pauses; nil: the system's
	Words   func(error) string // plain words for an error of the records
	Changed func()             // called when something on the screen may have changed; nil: nobody
}

// Opener finds and opens the files of the practice. Its methods but Begun are
// called in the background.
type Opener interface {
	Begun() bool // a practice was started on this computer
	Practice(ctx context.Context) (Desk, error)
	Demo(ctx context.Context) (Desk, error)
}

// Place is what the middle of the window shows.
type Place int

// The places.
const (
	PlaceWelcome Place = iota
	PlaceClients
	PlaceFile
	PlacePractice
	PlaceHelp
)

// title is the name of the program in the window's title.
const title = "Handbreadth"

// Shell is the window. All its methods are called where the user interface runs.
type Shell struct {
	app    fyne.App
	window fyne.Window
	opener Opener
	tools  Tools

	desk     Desk // nil until a file of a practice is open
	demo     bool
	place    Place
	back     Place // where Escape leads from practice and help
	settings *saver[Settings]

	rail     *widgets.Rail
	side     *fyne.Container   // the rail and the mark
	mark     fyne.CanvasObject // of demo data, below the rail
	middle   *fyne.Container
	page     *fyne.Container // all but the toast
	toast    *widgets.Toast
	progress *progressBar
	clients  *clients.Screen
	practice *practice.Screen
	help     *help.Screen
	file     *clientFile // nil while none is open
	palette  *palette    // nil while it is closed
	asking   *question   // nil while nothing is asked
}

// New fills the window. Nothing is opened yet: see Start.
func New(app fyne.App, window fyne.Window, opener Opener, tools Tools) *Shell {
	s := &Shell{app: app, window: window, opener: opener, tools: tools, middle: container.NewStack()}
	if s.tools.Words == nil {
		s.tools.Words = task.Words
	}
	s.wear(Settings{})
	s.build()
	s.bind()
	widgets.HandleEscape(s.Back)
	widgets.HandleKeys(s.plainKey)
	widgets.HandleUndo(s.undoInEntry)
	window.SetCloseIntercept(s.Close)
	return s
}

// The places of the rail, in its order.
var railPlaces = []Place{PlaceClients, PlacePractice, PlaceHelp}

func (s *Shell) build() {
	s.rail = widgets.NewRail([]widgets.RailItem{
		{Label: "Clients", Icon: widgets.IconClients, Name: "rail.clients"},
		{Label: "Practice", Icon: widgets.IconPractice, Name: "rail.practice"},
		{Label: "Help", Icon: widgets.IconHelp, Name: "rail.help"},
	}, func(index int) { s.Go(railPlaces[index]) })
	s.mark = demoMark()
	s.mark.Hide()
	s.toast = widgets.NewToast(s.tools.Clock)
	s.progress = newProgressBar()
	s.side = container.NewBorder(nil, nil, nil, widget.NewSeparator(), container.NewBorder(nil, s.mark, nil, nil, s.rail))
	s.side.Hide()
	s.page = bordered(nil, nil, s.side, s.middle)
	s.window.SetContent(widgets.Over(container.NewStack(s.page, s.progress.object), s.toast))
}

// bordered sets objects round one in the middle, in the order in which Tab goes
// through them: Fyne's own border puts the middle first. All but the middle may
// be nil.
func bordered(top, bottom, left, middle fyne.CanvasObject) *fyne.Container {
	box := container.New(layout.NewBorderLayout(top, bottom, left, nil))
	for _, object := range []fyne.CanvasObject{left, top, middle, bottom} {
		if object != nil {
			box.Add(object)
		}
	}
	return box
}

// Go shows a place. An open client file is left when the list is shown, and
// stays open behind practice and help.
func (s *Shell) Go(place Place) {
	if s.desk == nil || place == PlaceFile && s.file == nil {
		return
	}
	if place == PlaceClients {
		s.leaveFile()
	}
	if s.place == PlaceFile || s.place == PlaceClients {
		s.back = s.place
	}
	s.place = place
	switch place {
	case PlaceClients:
		s.rail.Select(0)
		s.clients.Renew()
		s.show(s.clients.Object())
		s.clients.FocusSearch()
	case PlaceFile:
		s.rail.Select(0)
		s.show(s.file.object)
	case PlacePractice:
		s.rail.Select(1)
		s.show(s.practiceScreen().Object())
		s.enterPage()
	case PlaceHelp:
		s.rail.Select(2)
		s.show(s.helpScreen().Object())
		widgets.FocusOn(s.rail.Button(s.rail.Selected()))
	}
	s.changed()
}

func (s *Shell) show(object fyne.CanvasObject) {
	s.window.Canvas().Unfocus()
	s.middle.Objects = []fyne.CanvasObject{object}
	s.middle.Refresh()
}

func (s *Shell) practiceScreen() *practice.Screen {
	if s.practice == nil {
		s.practice = practice.New(s.desk.Settings(), practice.Ways{
			Changed: s.changeSettings, Choose: s.choosePicture,
		})
	}
	return s.practice
}

func (s *Shell) helpScreen() *help.Screen {
	if s.help == nil {
		s.help = help.New(s.helpGroups())
	}
	return s.help
}

// Back goes one step back: it closes what lies over the page, then leaves the
// field for the sections, then the file for the list.
func (s *Shell) Back() {
	switch {
	case s.asking != nil:
		s.asking.close()
	case s.palette != nil:
		s.palette.close()
	case s.place == PlacePractice || s.place == PlaceHelp:
		s.Go(s.back)
	case s.place == PlaceFile && s.file.leaveField():
	case s.place == PlaceFile:
		s.Go(PlaceClients)
	case s.place == PlaceClients:
		s.clients.ClearSearch()
	}
}

// Close saves what is not saved yet and closes the window. Where that is not
// possible it asks first.
func (s *Shell) Close() {
	err := s.Flush()
	if err == nil {
		s.window.Close()
		return
	}
	s.ask(clients.Question{
		Title: "Close without the last change?", Words: s.tools.Words(err),
		Yes: "Close all the same", Do: s.window.Close,
	})
}

// Flush writes all that is not on the disk yet.
func (s *Shell) Flush() error {
	if s.settings != nil {
		if err := s.settings.flush(); err != nil {
			return err
		}
	}
	if s.file != nil {
		return s.file.flush()
	}
	return nil
}

func (s *Shell) changed() {
	if s.tools.Changed != nil {
		s.tools.Changed()
	}
}

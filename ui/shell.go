// Package ui is the shell: the window with its rail, the open client file, the
// running sheet, the palette and the keys. It is the only package that knows
// that two screens exist.
package ui

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"handbreadth/assets/icons"
	"handbreadth/ui/clients"
	"handbreadth/ui/help"
	"handbreadth/ui/practice"
	"handbreadth/ui/safety"
	"handbreadth/ui/task"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// Tools is what the shell works with.
type Tools struct {
	Run     task.Runner
	Clock   task.Clock         // of pauses; nil: the system's
	Now     func() time.Time   // nil: time.Now
	Words   func(error) string // plain words for an error of the records
	Changed func()             // called when something on the screen may have changed; nil: nobody
	// Minute is how long a minute of waiting is before the program locks by
	// itself; 0 is a minute.
	Minute time.Duration
}

// Place is what the middle of the window shows.
type Place int

// The places.
const (
	PlaceWelcome Place = iota
	PlaceGate          // a page in front of the practice, or of one of its secrets
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
	runner task.Runner // of what outlives a locking
	tools  Tools       // their runner ends with the session
	span   *task.Span  // the session; nil outside of one
	slow   *task.Span  // what is stopped at the end of the program, too

	door     Door // nil until a file of a practice is open
	desk     Desk // nil while it is locked
	gate     gate // nil while the practice is at hand
	gateName string
	stay     whereabouts // where to go on after unlocking
	idle     idleWatch
	duty     duty
	place    Place
	back     Place // where Escape leads from practice and help
	settings *saver[Settings]

	rail     *widgets.Rail
	side     *fyne.Container   // the rail and the mark
	mark     fyne.CanvasObject // of demo data, below the rail
	lock     *widgets.RailButton
	middle   *fyne.Container
	page     *fyne.Container // all but the toast
	toast    *widgets.Toast
	progress *progressBar
	clients  *clients.Screen
	practice *practice.Screen
	safety   *safety.Section
	help     *help.Screen
	file     *clientFile // nil while none is open
	palette  *palette    // nil while it is closed
	asking   *question   // nil while nothing is asked
}

// New fills the window. Nothing is opened yet: see Start.
func New(app fyne.App, window fyne.Window, opener Opener, tools Tools) *Shell {
	s := &Shell{app: app, window: window, opener: opener, runner: tools.Run, tools: tools}
	if s.tools.Words == nil {
		s.tools.Words = task.Words
	}
	if s.tools.Now == nil {
		s.tools.Now = time.Now
	}
	s.slow = task.NewSpan(s.runner)
	s.idle = idleWatch{shell: s}
	s.wear(opener.Look())
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
	s.lock = widgets.Name(widgets.NewRailButton("Lock", icons.Lock, s.Lock), "rail.lock")
	s.lock.Hide()
	s.middle = container.NewStack()
	s.toast = widgets.NewToast(s.tools.Clock)
	s.progress = newProgressBar()
	foot := widgets.Inset(theme.Half, container.NewStack(s.mark, s.lock))
	s.side = container.NewBorder(nil, nil, nil, widget.NewSeparator(), container.NewBorder(nil, foot, nil, nil, s.rail))
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
	if s.desk == nil || s.gate != nil || place == PlaceFile && s.file == nil {
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
		s.safety.Renew()
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
		s.safety = s.newSafety()
		s.practice = practice.New(s.currentSettings(), practice.Ways{
			Changed: s.changeSettings, Choose: s.choosePicture, See: s.safety.See,
		}, s.safety.Object())
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
	case s.gate != nil:
		s.gate.Escape()
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

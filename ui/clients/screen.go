// Package clients is the list of clients: finding one, making one, putting one
// away.
package clients

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"handbreadth/ui/task"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// Question is asked before something that cannot be undone.
type Question struct {
	Title, Words, Yes string
	Do                func()
}

// Ways lead up from the list.
type Ways struct {
	Open  func(id string)                       // opens a client file
	Ask   func(Question)                        // asks over the page
	Say   func(words string)                    // says in passing
	Offer func(words, label string, act func()) // says, and offers something
}

// Screen is the list.
type Screen struct {
	book Book
	run  task.Runner
	ways Ways

	search  *widgets.SearchField
	name    *widgets.Field
	making  *fyne.Container // the line that asks for a name
	list    *widgets.List
	count   *widgets.Text
	archive *widgets.Button
	start   *widgets.Button
	empty   fyne.CanvasObject

	headings *fyne.Container
	object   *fyne.Container

	archived bool // the archived ones are shown
	ids      []string
	glances  map[string]Glance
	asked    map[string]bool // glances on their way
	waiting  []string        // glances to be read next
	reading  bool            // glances are being read
	turn     int             // how often the list was renewed
}

// New returns the list of a book.
func New(book Book, run task.Runner, ways Ways) *Screen {
	s := &Screen{book: book, run: run, ways: ways}
	s.build()
	s.Renew()
	return s
}

// Object is what is shown.
func (s *Screen) Object() fyne.CanvasObject { return s.object }

func (s *Screen) build() {
	s.search = widgets.Name(widgets.NewSearchField("Find a client by name"), "clients.search")
	s.search.OnChanged = func(string) { s.find() }
	s.start = widgets.Name(widgets.NewPrimaryButton("New client", s.AskName), "clients.new")
	s.archive = widgets.Name(widgets.NewQuietButton("Show archived", s.toggleArchived), "clients.archived")
	s.count = widgets.NewLine("", widgets.Small)
	s.list = widgets.Name(widgets.NewList(
		func() int { return len(s.ids) },
		func() fyne.CanvasObject { return newLine(s) },
		func(i int, row fyne.CanvasObject) { s.fill(i, row.(*line)) },
	), "clients.list")
	s.list.OnChosen = func(i int) { s.ways.Open(s.ids[i]) }
	s.search.Steer(s.list)
	s.buildMaking()
	s.empty = widgets.NewEmptyState("No clients yet",
		"Begin with a name; the rest is asked in the intake.", "New client", s.AskName)
	head := widgets.ColumnGap(theme.Two,
		widgets.Ends(widgets.NewText("Clients", widgets.Display), container.NewHBox(s.archive, s.start)),
		s.making,
		widgets.Ends(widgets.Narrow(480, s.search), s.count),
	)
	const rowInset = theme.Unit + theme.Half // of a row's content in the list
	s.headings = widgets.InsetSides(theme.Two+rowInset, theme.Unit, theme.Two+rowInset, 0, newHeadings())
	top := widgets.ColumnGap(0, widgets.InsetSides(theme.Three, theme.Three, theme.Three, 0, head), s.headings)
	const most = 1280 // columns further apart are hard to follow
	s.object = widgets.Narrow(most, container.New(
		layout.NewBorderLayout(top, nil, nil, nil), top, // first, for Tab
		widgets.InsetSides(theme.Two, 0, theme.Two, theme.Two, container.NewStack(s.list, s.empty)),
	))
}

// buildMaking makes the line in which a new client's name is typed.
func (s *Screen) buildMaking() {
	s.name = widgets.Name(widgets.NewField("Name of the new client", "Enter opens the file."), "clients.name")
	s.name.OnEnter = s.create
	open := widgets.Name(widgets.NewPrimaryButton("Open the file", func() { s.create(s.name.Text()) }), "clients.create")
	cancel := widgets.Name(widgets.NewQuietButton("Cancel", s.stopMaking), "clients.cancel")
	s.making = widgets.Narrow(640, widgets.Column(s.name, widgets.Row(open, cancel)))
	s.making.Hide()
}

// Renew reads the list anew, for example after a file was changed.
func (s *Screen) Renew() {
	s.glances, s.asked, s.waiting = map[string]Glance{}, map[string]bool{}, nil
	s.turn++
	s.find()
}

// Again shows the list anew, for example when more names are known; where the
// highlight is stays.
func (s *Screen) Again() {
	cursor := s.list.Cursor()
	s.find()
	s.list.SetCursor(cursor)
}

// FocusSearch gives the focus to the search.
func (s *Screen) FocusSearch() { widgets.FocusOn(s.search) }

// ClearSearch empties the search and puts away the line for a new name.
func (s *Screen) ClearSearch() {
	s.search.SetText("")
	s.stopMaking()
	s.find()
}

// AskName opens the line for a new client's name.
func (s *Screen) AskName() {
	s.name.SetText("")
	s.making.Show()
	s.object.Refresh()
	widgets.FocusOn(s.name)
}

func (s *Screen) stopMaking() {
	if s.making.Visible() {
		s.making.Hide()
		s.object.Refresh()
		s.FocusSearch()
	}
}

func (s *Screen) create(name string) {
	name = strings.TrimSpace(name)
	if name == "" {
		s.name.SetProblem("A name is needed, so that the client can be found again. Initials will do.")
		return
	}
	task.Run(s.run, "Making the client file", func(ctx context.Context) (string, error) {
		return s.book.Create(ctx, name)
	}, func(id string, err error) {
		if err != nil {
			s.name.SetProblem(err.Error())
			return
		}
		s.making.Hide()
		s.ways.Open(id)
	})
}

func (s *Screen) toggleArchived() {
	s.archived = !s.archived
	label := "Show archived"
	if s.archived {
		label = "Back to clients"
	}
	s.archive.SetText(label)
	s.find()
}

// find shows who matches the search.
func (s *Screen) find() {
	query := s.search.Text()
	s.ids = s.book.Find(query, s.archived)
	s.count.SetText(counted(len(s.ids), query, s.archived))
	none := len(s.ids) == 0 && strings.TrimSpace(query) == "" && !s.archived
	show(s.empty, none)
	show(s.headings, !none)
	s.list.SetCursor(0)
	s.list.Refresh()
	s.object.Refresh()
}

func show(object fyne.CanvasObject, shown bool) {
	if shown {
		object.Show()
	} else {
		object.Hide()
	}
}

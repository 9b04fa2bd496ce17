package clients

import (
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/task"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// line is one client of the list.
type line struct {
	widget.BaseWidget
	id                          string
	name, age, last, next, stat *widgets.Text
	archive, remove             *link
	box                         *fyne.Container
}

// The columns of the list: the name takes what the others leave.
const (
	ageWidth    = 44
	dateWidth   = 120
	statusWidth = 190
	doWidth     = 140
	columnGap   = theme.Unit
)

func newLine(s *Screen) *line {
	l := &line{
		name: widgets.NewLine("", widgets.Strong), age: widgets.NewLine("", widgets.Body),
		last: widgets.NewLine("", widgets.Body), next: widgets.NewLine("", widgets.Body),
		stat: widgets.NewLine("", widgets.Body),
	}
	l.archive = newLink("Archive", func() { s.PutAway(l.id) })
	l.remove = newLink("Delete", func() { s.AskDelete(l.id) })
	l.box = columns(l.name, l.age, l.last, l.next, l.stat, container.NewHBox(l.archive, l.remove))
	l.ExtendBaseWidget(l)
	return l
}

// CreateRenderer implements fyne.Widget.
func (l *line) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(l.box) }

func newHeadings() fyne.CanvasObject {
	cell := func(text string) fyne.CanvasObject { return widgets.NewLine(text, widgets.Small) }
	return columns(cell("Name"), cell("Age"), cell("Last visit"), cell("Next visit"), cell("Status"), cell(""))
}

func columns(cells ...fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: columnsLayout{}, Objects: cells}
}

// columnsLayout sets the cells of a line.
type columnsLayout struct{}

var columnWidths = []float32{0, ageWidth, dateWidth, dateWidth, statusWidth, doWidth}

// MinSize leaves the name a sensible width.
func (columnsLayout) MinSize(cells []fyne.CanvasObject) fyne.Size {
	const leastName = 140
	width, height := float32(leastName), float32(0)
	for i, cell := range cells {
		width += columnWidths[i] + columnGap
		height = max(height, cell.MinSize().Height)
	}
	return fyne.NewSize(width, height)
}

func (columnsLayout) Layout(cells []fyne.CanvasObject, size fyne.Size) {
	rest := size.Width
	for _, w := range columnWidths {
		rest -= w
	}
	rest -= columnGap * float32(len(cells)-1)
	x := float32(0)
	for i, cell := range cells {
		width := columnWidths[i]
		if i == 0 {
			width = rest
		}
		height := cell.MinSize().Height
		cell.Move(fyne.NewPos(x, (size.Height-height)/2))
		cell.Resize(fyne.NewSize(width, height))
		x += width + columnGap
	}
}

// fill shows a client in a line.
func (s *Screen) fill(index int, l *line) {
	if index >= len(s.ids) {
		return
	}
	id := s.ids[index]
	row, ok := s.book.Row(id)
	if !ok {
		return
	}
	today := s.book.Today()
	l.id = id
	l.name.SetText(row.Name)
	l.age.SetText(age(row.Born, today))
	l.next.SetText(day(row.NextVisit, today))
	label := "Archive"
	if row.Archived {
		label = "Bring back"
	}
	l.archive.setText(label)
	g, known := s.glances[id]
	if !known {
		l.last.SetText("")
		l.stat.SetText("")
		s.wantGlance(id)
		return
	}
	l.last.SetText(day(g.LastVisit, today))
	l.stat.SetText(g.words())
	l.stat.SetColour(colours[g.Status])
}

// colours says in which colour a state is set; the words alone tell it too.
var colours = map[Status]fyne.ThemeColorName{
	NotStarted: theme.Muted, Begun: theme.Muted, Ready: theme.Ink, Held: theme.Brick, Referred: theme.Brick, Kept: theme.Ink,
}

// wantGlance reads in the background how far a client file is. What is asked
// for while a reading runs is read together after it.
func (s *Screen) wantGlance(id string) {
	if s.asked[id] {
		return
	}
	s.asked[id] = true
	s.waiting = append(s.waiting, id)
	s.readGlances()
}

func (s *Screen) readGlances() {
	if s.reading || len(s.waiting) == 0 {
		return
	}
	s.reading = true
	ids, turn := s.waiting, s.turn
	s.waiting = nil
	task.Run(s.run, "Reading the list", func(ctx context.Context) (map[string]Glance, error) {
		return s.book.Glances(ctx, ids)
	}, func(found map[string]Glance, err error) {
		s.reading = false
		if err != nil {
			s.ways.Say(err.Error())
			return
		}
		if turn == s.turn { // else the list was renewed meanwhile
			for id, g := range found {
				s.glances[id] = g
			}
		}
		s.list.Refresh()
		s.readGlances()
	})
}

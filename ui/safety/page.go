package safety

import (
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// PageWays lead on from the page.
type PageWays struct {
	ChooseFile func(chosen func(path string))
	Ask        func(Question)
	Restore    func(Restoring)
	Back       func()
}

// RestorePage restores a backup where no practice is open: on a new computer, or
// where the file in use does not open.
type RestorePage struct {
	restorer Restorer
	tools    Tools
	ways     PageWays

	path   *widgets.Field
	work   *long
	found  *fyne.Container
	box    *restoreBox // nil until a file was found
	object *widgets.Page
}

const (
	pageWidth = 600
	pageTop   = 2 * theme.Four
)

// NewRestorePage returns the page.
func NewRestorePage(restorer Restorer, tools Tools, ways PageWays) *RestorePage {
	p := &RestorePage{restorer: restorer, tools: tools, ways: ways, found: widgets.Column()}
	p.work = newLong("restore", tools, func() { p.refresh() })
	p.path = widgets.Name(widgets.NewField("Backup file", "Its name begins with handbreadth- and ends in .backup."), "restore.path")
	p.path.OnEnter = func(string) { p.onOpen() }
	open := widgets.Name(widgets.NewPrimaryButton("Look at it", p.onOpen), "restore.open")
	choose := widgets.Name(widgets.NewQuietButton("Choose…", func() { ways.ChooseFile(p.chosen) }), "restore.choose")
	back := widgets.Name(widgets.NewQuietButton("Go back", p.Escape), "restore.back")
	content := widgets.ColumnGap(theme.Two,
		widgets.NewText("Restore a backup", widgets.Display),
		widgets.NewText("Plug in the stick or disk with your backups and choose the newest file. It is unpacked into a new file and checked first; nothing that is there now is touched until you say so.", widgets.Body),
		p.path, widgets.Row(open, choose, back), p.work.box, p.found)
	p.object = widgets.NewPage(container.New(pageLayout{}, content))
	return p
}

// pageLayout sets a column in the middle of the width.
type pageLayout struct{}

// MinSize implements fyne.Layout.
func (pageLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := objects[0].MinSize()
	return fyne.NewSize(size.Width, size.Height+pageTop)
}

// Layout implements fyne.Layout.
func (pageLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	width := min(pageWidth, size.Width)
	objects[0].Resize(fyne.NewSize(width, size.Height-pageTop))
	objects[0].Move(fyne.NewPos((size.Width-width)/2, pageTop))
}

// Object is what is shown.
func (p *RestorePage) Object() fyne.CanvasObject { return p.object }

// FocusFirst gives the focus to the path.
func (p *RestorePage) FocusFirst() { widgets.FocusOn(p.path) }

// Escape goes back, and removes what was unpacked.
func (p *RestorePage) Escape() {
	if p.work.busy() || p.box != nil && p.box.work.busy() {
		return
	}
	if p.box != nil {
		p.box.onLeave()
	}
	p.ways.Back()
}

func (p *RestorePage) refresh() {
	if p.object != nil {
		p.object.Refresh()
	}
}

func (p *RestorePage) chosen(path string) {
	p.path.SetText(path)
	p.onOpen()
}

func (p *RestorePage) onOpen() {
	path := p.path.Text()
	if path == "" {
		p.path.SetProblem("Choose a file first.")
		widgets.FocusOn(p.path)
		return
	}
	if p.box != nil {
		p.box.onLeave()
	}
	var found Backup
	p.work.start("Looking at the backup", nil, func(ctx context.Context, _ Progress) (err error) {
		found, err = p.restorer.Describe(ctx, path)
		return err
	}, func(err error) {
		if err != nil {
			p.path.SetProblem(err.Error())
			return
		}
		p.box = newRestoreBox("restore.found", found, p.restorer, nil, p.tools, restoreWays{
			ask: p.ways.Ask, restore: p.ways.Restore, changed: p.refresh,
		})
		about := widgets.NewText(found.contents()+"; "+found.about(), widgets.Small)
		setShown(about, !found.Unknown)
		p.found.Objects = []fyne.CanvasObject{widgets.NewText(found.title(p.tools.now()), widgets.Strong), about, p.box.object}
		p.refresh()
		widgets.FocusOn(p.box.secret)
	})
}

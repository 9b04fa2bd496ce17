package safety

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// backupPart is the part on backups.
type backupPart struct {
	s *Section

	due        *widgets.Text
	folder     *widgets.Field
	use, now   *widgets.Button
	elsewhere  *widgets.Button
	work       *long
	list       *fyne.Container
	all        *widgets.Button
	allLine    *fyne.Container
	showAll    bool
	shown      []string // paths in the list
	unreadable *widgets.Text
	file       *fyne.Container // of a backup from elsewhere
	object     *fyne.Container
}

// fewBackups is how many are shown at first.
const fewBackups = 6

func (s *Section) buildBackups() fyne.CanvasObject {
	p := &backupPart{s: s, due: widgets.NewText("", widgets.Body), unreadable: widgets.NewText("", widgets.Small)}
	s.kept = p
	p.work = newLong("safety.backup", s.tools, p.show)
	p.folder = widgets.Name(widgets.NewField("Folder for backups",
		"Best on another disk or a stick: a backup beside the file is lost with it. Backups are sealed as the practice is."), "safety.folder")
	p.folder.OnEnter = func(string) { p.onUse() }
	p.use = widgets.Name(widgets.NewQuietButton("Use this folder", p.onUse), "safety.folder.use")
	choose := widgets.Name(widgets.NewQuietButton("Choose…", func() { s.ways.ChooseFolder(p.chosen) }), "safety.folder.choose")
	p.now = widgets.Name(widgets.NewPrimaryButton("Back up now", p.onNow), "safety.backup.now")
	p.elsewhere = widgets.Name(widgets.NewQuietButton("Back up to another folder…", func() { s.ways.ChooseFolder(p.onElsewhere) }), "safety.backup.elsewhere")
	p.all = widgets.Name(widgets.NewTextButton("", p.onAll), "safety.backup.all")
	other := widgets.Name(widgets.NewQuietButton("Restore from another file…", func() { s.ways.ChooseFile(p.onFile) }), "safety.restore.other")
	p.list, p.file, p.allLine = widgets.Column(), widgets.Column(), widgets.Row(p.all)
	p.file.Hide()
	const narrow = 640
	p.object = widgets.ColumnGap(theme.Two, p.due,
		widgets.Column(widgets.Narrow(narrow, p.folder), widgets.Row(p.use, choose)),
		widgets.Column(widgets.Row(p.now, p.elsewhere), p.work.box),
		widgets.Column(p.list, p.allLine, p.unreadable),
		widgets.Column(widgets.Row(other), p.file))
	p.folder.SetText(s.backups.Folder)
	p.renew()
	return p.object
}

// renew shows what the folder has.
func (p *backupPart) renew() {
	b := p.s.backups
	p.due.SetText(b.DueWords)
	p.due.SetStyle(widgets.Body)
	if b.Gone != "" {
		p.due.SetText(b.Gone)
		p.due.SetStyle(widgets.Problem)
	}
	p.unreadable.SetText("")
	if n := len(b.Unreadable); n > 0 {
		p.unreadable.SetText(counted(n, "file there is named like a backup but cannot be understood: ", "files there are named like backups but cannot be understood: ") + strings.Join(b.Unreadable, ", ") + ".")
	}
	setShown(p.unreadable, len(b.Unreadable) > 0)
	p.fill()
	p.show()
}

// fill makes the lines of the list anew where others are to be shown, so that an
// open line stays open.
func (p *backupPart) fill() {
	list := p.s.backups.List
	p.all.SetText(fmt.Sprintf("Show all %d backups", len(list)))
	more := len(list) > fewBackups && !p.showAll
	setShown(p.all, more)
	setShown(p.allLine, more)
	if !p.showAll {
		list = list[:min(len(list), fewBackups)]
	}
	var paths []string
	for _, b := range list {
		paths = append(paths, b.Path)
	}
	if strings.Join(paths, "\n") == strings.Join(p.shown, "\n") {
		return
	}
	p.shown, p.list.Objects = paths, nil
	widgets.Unname("safety.backup.line")
	for i, b := range list {
		p.list.Add(p.line(fmt.Sprintf("safety.backup.line.%d", i+1), b))
	}
}

// line is a backup that opens to what can be done with it.
func (p *backupPart) line(name string, b Backup) fyne.CanvasObject {
	place := widgets.Column()
	line := widgets.Name(widgets.NewSetting(b.title(p.s.tools.now()), place), name)
	line.SetValue(b.contents(), b.about())
	line.OnToggled = func(open bool) {
		if open && len(place.Objects) == 0 {
			place.Add(newRestoreBox(name, b, p.s.keeper, p.s.keeper.Rehearse, p.s.tools, p.restoreWays()).object)
		}
		p.s.object.Refresh()
	}
	return line
}

func (p *backupPart) restoreWays() restoreWays {
	return restoreWays{ask: p.s.ways.Ask, restore: p.s.ways.Restore, changed: p.s.object.Refresh}
}

func (p *backupPart) show() {
	setEnabled(!p.work.busy(), p.now, p.elsewhere, p.use)
	p.s.object.Refresh()
}

func (p *backupPart) onAll() {
	p.showAll = true
	p.renew()
}

func (p *backupPart) chosen(path string) {
	p.folder.SetText(path)
	p.onUse()
}

func (p *backupPart) onUse() {
	folder := strings.TrimSpace(p.folder.Text())
	p.work.start("Choosing the folder", nil, func(ctx context.Context, _ Progress) error {
		return p.s.keeper.SetFolder(ctx, folder)
	}, func(err error) {
		if err != nil {
			p.folder.SetProblem(err.Error())
			widgets.FocusOn(p.folder)
			return
		}
		p.folder.SetProblem("")
		p.work.say("Backups go there from now on, once for each day on which the program is used.")
		if folder == "" {
			p.work.say("No backups are made any more.")
		}
		p.s.readBackups()
	})
}

func (p *backupPart) onNow() { p.backUp(p.s.keeper.BackUp) }

func (p *backupPart) onElsewhere(folder string) {
	p.backUp(func(ctx context.Context) (Backup, error) { return p.s.keeper.BackUpTo(ctx, folder) })
}

func (p *backupPart) backUp(how func(ctx context.Context) (Backup, error)) {
	var made Backup
	p.work.start("Making a backup", nil, func(ctx context.Context, _ Progress) (err error) {
		made, err = how(ctx)
		return err
	}, func(err error) {
		words := ""
		if made.Path != "" {
			words = "Made and checked: " + filepath.Base(made.Path) + ", " + made.contents() + ", " + made.about() + "."
		}
		p.work.end(words, err)
		p.s.readBackups()
	})
}

// onFile shows a backup from elsewhere.
func (p *backupPart) onFile(path string) {
	var found Backup
	p.work.start("Looking at the backup", nil, func(ctx context.Context, _ Progress) (err error) {
		found, err = p.s.keeper.Describe(ctx, path)
		return err
	}, func(err error) {
		if err != nil {
			p.work.warn(err.Error())
			return
		}
		const name = "safety.restore"
		p.file.Objects = []fyne.CanvasObject{
			widgets.NewText(found.title(p.s.tools.now()), widgets.Strong),
			newRestoreBox(name, found, p.s.keeper, p.s.keeper.Rehearse, p.s.tools, p.restoreWays()).object,
		}
		p.file.Show()
	})
}

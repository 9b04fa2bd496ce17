package safety

import (
	"context"

	"fyne.io/fyne/v2"

	"handbreadth/ui/task"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// recordPart is the part with the record of who did what.
type recordPart struct {
	s       *Section
	entries []Entry
	lines   *fyne.Container
	more    *widgets.Button
	line    *fyne.Container // of the button
	check   *widgets.Button
	told    told
	object  *fyne.Container
}

// entriesAtOnce is how many entries are read at a time.
const entriesAtOnce = 20

const wordsRecord = "Each entry is chained to the one before: one that is removed or changed leaves a break that the check finds."

func (s *Section) buildRecord() fyne.CanvasObject {
	p := &recordPart{s: s, lines: widgets.ColumnGap(theme.Half), told: newTold("safety.record.told")}
	s.past = p
	p.more = widgets.Name(widgets.NewTextButton("Show earlier entries", p.onMore), "safety.record.more")
	p.line = widgets.Row(p.more)
	p.check = widgets.Name(widgets.NewQuietButton("Check the record", p.onCheck), "safety.record.check")
	p.object = widgets.ColumnGap(theme.Two, widgets.NewText(wordsRecord, widgets.Body),
		widgets.Column(widgets.Row(p.check), p.told.Text), p.lines, p.line)
	p.renew()
	return p.object
}

// renew shows the newest entries.
func (p *recordPart) renew() {
	p.entries = nil
	p.read(0)
}

func (p *recordPart) onMore() {
	if n := len(p.entries); n > 0 {
		p.read(p.entries[n-1].Number)
	}
}

func (p *recordPart) read(before int64) {
	task.Run(p.s.tools.Run, "Reading the record", func(ctx context.Context) ([]Entry, error) {
		return p.s.keeper.Record(ctx, before, entriesAtOnce)
	}, func(found []Entry, err error) {
		if err != nil {
			p.told.warn(err.Error())
			p.s.object.Refresh()
			return
		}
		if before == 0 {
			p.entries = nil
		}
		p.entries = append(p.entries, found...)
		p.show()
	})
}

func (p *recordPart) show() {
	p.lines.Objects = nil
	now := p.s.tools.now()
	for _, e := range p.entries {
		p.lines.Add(&fyne.Container{Layout: &entryLayout{}, Objects: []fyne.CanvasObject{
			widgets.NewLine(moment(e.At, now), widgets.Small), widgets.NewText(e.Words, widgets.Body), widgets.NewText(e.Who, widgets.Body),
		}})
	}
	earlier := len(p.entries) > 0 && p.entries[len(p.entries)-1].Number > 1
	setShown(p.more, earlier)
	setShown(p.line, earlier)
	p.s.object.Refresh()
}

func (p *recordPart) onCheck() {
	p.check.Disable()
	p.told.say("Checking every entry…")
	task.Run(p.s.tools.Run, "Checking the record", p.s.keeper.CheckRecord, func(words string, err error) {
		p.check.Enable()
		p.told.end(words, err)
		p.s.object.Refresh()
	})
}

// entryLayout sets moment, words and name in columns. It remembers the width
// that it was given, since a layout is asked for its least height without it.
type entryLayout struct{ width float32 }

const (
	momentWidth = 192
	leastWords  = 160
)

func (*entryLayout) height(objects []fyne.CanvasObject, width float32) float32 {
	half := (width - momentWidth) / 2
	height := objects[0].MinSize().Height
	for _, o := range objects[1:] {
		height = max(height, o.(*widgets.Text).HeightFor(half))
	}
	return height
}

// MinSize implements fyne.Layout.
func (l *entryLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	const least = momentWidth + 2*leastWords
	return fyne.NewSize(least, l.height(objects, max(least, l.width)))
}

// Layout implements fyne.Layout.
func (l *entryLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	l.width = size.Width
	half := (size.Width - momentWidth) / 2
	for i, x := range []float32{0, momentWidth, momentWidth + half} {
		width := half
		if i == 0 {
			width = momentWidth
		}
		objects[i].Move(fyne.NewPos(x, 0))
		objects[i].Resize(fyne.NewSize(width-theme.Unit, size.Height))
	}
}

// copiesPart is the part on old copies.
type copiesPart struct {
	s      *Section
	words  *widgets.Text
	remove *widgets.Button
	told   told
	object *fyne.Container
}

const wordsCopies = "They were made before updates and restores, and still have every client of their time, also those that were deleted since."

func (s *Section) buildCopies() fyne.CanvasObject {
	p := &copiesPart{s: s, words: widgets.NewText("", widgets.Body), told: newTold("safety.copies.told")}
	s.old = p
	p.remove = widgets.Name(widgets.NewQuietButton("Remove them…", p.onRemove), "safety.copies.remove")
	p.object = widgets.ColumnGap(theme.Two, p.words, widgets.Column(widgets.Row(p.remove), p.told.Text))
	p.renew()
	return p.object
}

func (p *copiesPart) renew() {
	p.words.SetText(counted(p.s.copies, "copy lies", "copies lie") + " beside your client file. " + wordsCopies)
	setShown(p.words, p.s.copies > 0)
	setShown(p.remove, p.s.copies > 0)
}

func (p *copiesPart) onRemove() {
	p.s.ways.Ask(Question{
		Title: "Remove the old copies?",
		Words: counted(p.s.copies, "copy is", "copies are") + " removed for good. Your client file and your backups stay as they are.",
		Yes:   "Remove them",
		Do: func() {
			task.Run(p.s.tools.Run, "Removing old copies", p.s.keeper.RemoveOldCopies, func(n int, err error) {
				p.told.end(counted(n, "copy is", "copies are")+" removed.", err)
				p.s.readCopies()
			})
		},
	})
}

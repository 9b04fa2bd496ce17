package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"handbreadth/ui/sheet"
	"handbreadth/ui/task"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// progressBar is a note in the lower right corner while something takes its
// time: what is being done, and a way to stop it. It lies over the page, so that
// nothing moves under the pointer when it comes and goes.
type progressBar struct {
	object *fyne.Container
	note   *widgets.Card
	words  *widgets.Text
	stop   *widgets.Button
	shown  []task.Progress // the one on the screen last
}

func newProgressBar() *progressBar {
	p := &progressBar{words: widgets.NewText("", widgets.Small)}
	p.stop = widgets.Name(widgets.NewTextButton("Stop", p.cancel), "progress.stop")
	p.note = widgets.NewCard("", widgets.Ends(p.words, p.stop))
	p.note.Hide()
	p.object = container.New(cornerLayout{}, p.note)
	return p
}

// cornerLayout sets one object in the lower right corner.
type cornerLayout struct{}

// MinSize takes no room.
func (cornerLayout) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.Size{} }

// Layout implements fyne.Layout.
func (cornerLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	const width = sheet.Width - theme.Two
	note := objects[0].(*widgets.Card)
	height := note.HeightFor(width)
	note.Resize(fyne.NewSize(width, height))
	note.Move(fyne.NewPos(size.Width-width-theme.Unit, size.Height-height-theme.Unit))
}

func (p *progressBar) cancel() {
	if n := len(p.shown); n > 0 {
		p.shown[n-1].Cancel()
	}
}

// tell takes a job that takes its time, or its end.
func (p *progressBar) tell(progress task.Progress) {
	var kept []task.Progress
	for _, other := range p.shown {
		if other.ID != progress.ID {
			kept = append(kept, other)
		}
	}
	if !progress.Ended {
		kept = append(kept, progress)
	}
	p.shown = kept
	if len(kept) == 0 {
		p.note.Hide()
		return
	}
	p.words.SetText(kept[len(kept)-1].Label + "…")
	p.note.Show()
}

// Progress shows a job that takes its time. It is called where the user
// interface runs.
//
// The pages in front of the practice tell themselves how far they are.
func (s *Shell) Progress(progress task.Progress) {
	if s.gate != nil && !progress.Ended {
		return
	}
	s.progress.tell(progress)
	s.progress.object.Refresh()
}

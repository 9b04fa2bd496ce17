package ui

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/task"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// progressBar is the line at the foot of the window while something takes its
// time: what is being done, and a way to stop it.
type progressBar struct {
	object *fyne.Container
	words  *widgets.Text
	stop   *widgets.Button
	shown  []task.Progress // the one on the screen last
}

func newProgressBar() *progressBar {
	p := &progressBar{words: widgets.NewText("", widgets.Small)}
	p.stop = widgets.Name(widgets.NewTextButton("Stop", p.cancel), "progress.stop")
	p.object = widgets.InsetSides(theme.Three, theme.Half, theme.Three, theme.Half, widgets.Ends(p.words, p.stop))
	p.object.Hide()
	return p
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
		p.object.Hide()
		return
	}
	p.words.SetText(kept[len(kept)-1].Label + "…")
	p.object.Show()
}

// Progress shows a job that takes its time. It is called where the user
// interface runs.
func (s *Shell) Progress(progress task.Progress) {
	s.progress.tell(progress)
	s.page.Refresh()
}

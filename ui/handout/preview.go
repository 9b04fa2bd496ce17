package handout

import (
	"context"
	"image"
	"time"

	"fyne.io/fyne/v2"

	"handbreadth/domain"
	"handbreadth/ui/task"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// previewPause is how long nothing has to change before the pages are made
// anew.
const previewPause = 300 * time.Millisecond

// preview shows the pages as pictures. The pages that were made last stay until
// new ones are there.
type preview struct {
	object *widgets.Card
	papers Papers
	clock  task.Clock
	wait   *task.Debouncer
	latest task.Latest
	settle func()
	wanted func() (domain.Plan, Choice)

	told  *told
	pages *fyne.Container
	busy  bool
	stop  func() // what the button asks to stop; nil: it makes the pages
	quiet func() // drops the words that are not shown yet; nil: none wait
}

func newPreview(papers Papers, run task.Runner, clock task.Clock, wanted func() (domain.Plan, Choice), settle func()) *preview {
	p := &preview{
		papers: papers, clock: clock, wait: task.NewDebouncer(previewPause, clock), latest: task.Latest{Runner: run},
		wanted: wanted, settle: settle, pages: widgets.ColumnGap(theme.Two),
	}
	p.told = newTold("handout.again", p.onButton)
	p.object = widgets.Name(widgets.NewCard("Preview", widgets.Column(p.told.object, p.pages)), "handout.preview")
	return p
}

// onButton stops the pages that are being made, or makes them.
func (p *preview) onButton() {
	if p.busy {
		p.stop()
		return
	}
	p.start()
}

// soon makes the pages once nothing has changed for a while.
func (p *preview) soon() { p.wait.Do(p.start) }

// drop shows no pages, only words, and stops what is being made.
func (p *preview) drop(words string) {
	p.wait.Cancel()
	p.latest.Cancel()
	p.ended()
	p.pages.Objects = nil
	p.say(words, "", false)
}

// start makes the pages now.
func (p *preview) start() {
	p.wait.Cancel()
	plan, choice := p.wanted()
	p.ended()
	p.busy = true
	var done bool
	work := func(ctx context.Context) ([]image.Image, error) { return p.papers.Preview(ctx, plan, choice) }
	stop := task.Run(&p.latest, "Making the pages of the preview", work, func(pages []image.Image, err error) {
		done = true
		p.made(pages, err)
	})
	if done {
		return
	}
	p.stop = stop
	if len(p.pages.Objects) == 0 {
		p.drawing()
		return
	}
	p.quiet = task.After(p.clock, task.ProgressAfter, p.drawing)
}

// drawing says that the pages are being made.
func (p *preview) drawing() {
	p.quiet = nil
	p.say(wordsDrawing, "Stop", false)
}

// ended forgets the job that ran.
func (p *preview) ended() {
	p.busy, p.stop = false, nil
	if p.quiet != nil {
		p.quiet()
		p.quiet = nil
	}
}

func (p *preview) made(pages []image.Image, err error) {
	p.ended()
	switch {
	case task.Canceled(err):
		p.say(wordsStopped, "Make the pages", false)
	case err != nil:
		p.pages.Objects = nil
		p.say(err.Error(), "Try again", true)
	default:
		p.show(pages)
		p.say("", "", false)
	}
}

func (p *preview) show(pages []image.Image) {
	p.pages.Objects = nil
	for i, page := range pages {
		p.pages.Add(widgets.ColumnGap(theme.Half,
			widgets.NewText(pageWords(i+1, len(pages)), widgets.Small), newPicture(page)))
	}
}

func (p *preview) say(words, button string, wrong bool) {
	p.told.say(words, button, wrong)
	p.object.Refresh()
	p.settle()
}

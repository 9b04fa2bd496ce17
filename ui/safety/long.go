package safety

import (
	"context"

	"fyne.io/fyne/v2"

	"handbreadth/ui/task"
	"handbreadth/ui/widgets"
)

// told is a line that says what goes on in a part, or what went wrong.
type told struct{ *widgets.Text }

func newTold(name string) told {
	t := told{widgets.NewText("", widgets.Small)}
	widgets.Name(t.Text, name)
	t.Hide()
	return t
}

func (t told) say(words string)  { t.show(words, widgets.Small) }
func (t told) warn(words string) { t.show(words, widgets.Problem) }

func (t told) show(words string, style widgets.TextStyle) {
	t.SetStyle(style)
	t.SetText(words)
	setShown(t.Text, words != "")
}

// end says how a work ended.
func (t told) end(words string, err error) {
	if err != nil {
		t.warn(task.Words(err))
		return
	}
	t.say(words)
}

// long is a work that takes its time and can be stopped, one at a time for a
// part of the section.
type long struct {
	tools Tools
	meter *widgets.Meter
	stop  *widgets.Button
	told  told
	line  *fyne.Container // of the button
	box   *fyne.Container

	cancel func() // nil while nothing runs
	shown  func() // told when something began or ended
}

func newLong(name string, tools Tools, shown func()) *long {
	l := &long{tools: tools, meter: widgets.NewMeter(), told: newTold(name + ".told"), shown: shown}
	l.stop = widgets.Name(widgets.NewQuietButton("Stop", func() {
		if l.cancel != nil {
			l.cancel()
		}
	}), name+".stop")
	const meterWidth = 240
	l.line = widgets.Row(l.stop)
	l.box = widgets.Column(widgets.Narrow(meterWidth, l.meter), l.told.Text, l.line)
	l.meter.Hide()
	l.arrange()
	return l
}

// arrange takes no room where there is nothing to show.
func (l *long) arrange() {
	setShown(l.stop, l.busy())
	setShown(l.line, l.busy())
	setShown(l.box.Objects[0], l.meter.Visible())
	setShown(l.box, l.busy() || l.told.Visible())
}

// say tells how the work ended, or why it was not begun.
func (l *long) say(words string) { l.end(words, nil) }

func (l *long) warn(words string) { l.end("", &task.Failure{Words: words}) }

func (l *long) end(words string, err error) {
	l.told.end(words, err)
	l.arrange()
}

func (l *long) busy() bool { return l.cancel != nil }

// start runs a work; words tells how far it is, and is nil where it does not
// say. Done is told the end.
func (l *long) start(label string, words func(done, total int) string, work func(ctx context.Context, progress Progress) error, done func(err error)) {
	if l.busy() {
		return
	}
	gauge := &task.Gauge{}
	unfollow := func() {}
	l.told.say(label + "…")
	if words != nil {
		l.told.say(words(0, 0))
		unfollow = gauge.Follow(l.tools.Clock, func(done, total int) { l.follow(words, done, total) })
	}
	l.cancel = func() {}
	l.arrange()
	l.shown()
	over := false
	stop := l.tools.Run.Start(task.Job{
		Label: label,
		Work:  func(ctx context.Context) error { return work(ctx, gauge.Set) },
		Done: func(err error) {
			over = true
			unfollow()
			l.cancel = nil
			l.meter.Hide()
			l.say("")
			done(err)
			l.shown()
		},
	})
	if !over {
		l.cancel = stop
	}
}

func (l *long) follow(words func(done, total int) string, done, total int) {
	l.told.say(words(done, total))
	setShown(l.meter, total > 0)
	if total > 0 {
		l.meter.SetShare(float64(done) / float64(total))
	}
	l.arrange()
	l.shown()
}

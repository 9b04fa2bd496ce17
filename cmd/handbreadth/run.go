package main

import (
	"context"
	"errors"
	"os"
	"runtime"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"handbreadth/store"
	"handbreadth/ui"
	"handbreadth/ui/task"
)

// program is what run wires together.
type program struct {
	options options
	place   place
	window  fyne.Window
	shell   *ui.Shell
	clock   func() time.Time
	desk    *desk // the one opened last; closed at the end
	jobs    *jobs
}

var errNoScreen = errors.New("there is no screen here (DISPLAY is not set): " +
	"start Handbreadth from a desktop, or use go run ./cmd/dev start, which makes a virtual one")

// run opens the window and stays until it is closed.
func run(o options) error {
	if runtime.GOOS == "linux" && os.Getenv("DISPLAY") == "" && os.Getenv("WAYLAND_DISPLAY") == "" {
		return errNoScreen
	}
	p := &program{options: o, clock: time.Now}
	if o.tour != "" {
		return p.tour()
	}
	var err error
	if p.place, err = newPlace(o.data); err != nil {
		return err
	}
	return p.open(func() { p.shell.Start(o.demo) })
}

// open makes the window, begins with what begin does, and shows it until it is
// closed.
func (p *program) open(begin func()) error {
	log, logFile := p.place.log()
	a := app.NewWithID("org.handbreadth.app")
	leavePreferences(a)
	p.window = a.NewWindow("Handbreadth")
	p.window.SetPadded(false)
	p.window.SetMaster()
	background := &task.Background{Words: store.Plain, Log: log, OnProgress: func(t task.Progress) { p.shell.Progress(t) }}
	p.jobs = &jobs{Runner: background}
	tools := ui.Tools{Run: p.jobs, Words: store.Plain}
	p.probe(&tools)
	p.shell = ui.New(a, p.window, p, tools)
	p.window.Resize(p.options.size)
	if p.options.benchStart {
		onFrames(1, func() { p.firstFrame(a) })
	}
	begin()
	p.window.ShowAndRun()
	unsaved := p.shell.Flush() // where the program was asked to end from outside
	background.Wait()
	return errors.Join(unsaved, p.close(), logFile.Close())
}

// leavePreferences keeps the toolkit from writing its preferences once more at
// the end, as it does when they change: it reads them back while it writes, and
// reports the half-written file as an error.
func leavePreferences(a fyne.App) {
	if atEnd, ok := a.Lifecycle().(interface{ SetOnStoppedHookExecuted(func()) }); ok {
		atEnd.SetOnStoppedHookExecuted(func() {})
	}
}

// close lets go of the file and empties the shelf of papers.
func (p *program) close() error {
	if p.desk == nil {
		return nil
	}
	return errors.Join(p.desk.close(), p.desk.shelf.empty())
}

// Begun reports whether a practice was started here.
func (p *program) Begun() bool { return p.place.begun() }

// Practice opens the practice's own file, making it where it is missing.
func (p *program) Practice(ctx context.Context) (ui.Desk, error) { return p.sit(ctx, false) }

// Demo opens the invented practice, filling it where it is empty.
func (p *program) Demo(ctx context.Context) (ui.Desk, error) { return p.sit(ctx, true) }

func (p *program) sit(ctx context.Context, demo bool) (ui.Desk, error) {
	d, err := openDesk(ctx, p.place.file(demo), p.clock, p.place.shelf(demo))
	if err != nil {
		return nil, err
	}
	if demo {
		err = d.readyDemo(ctx)
	}
	if err == nil {
		err = d.shelf.empty() // what an earlier run that was killed left
	}
	if err != nil {
		return nil, errors.Join(err, d.close())
	}
	if p.desk != nil {
		if err := p.desk.close(); err != nil {
			return nil, errors.Join(err, d.close())
		}
	}
	p.desk = d
	return d, nil
}

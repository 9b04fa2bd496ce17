package main

import (
	"context"
	"errors"
	"os"
	"runtime"
	"sync"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"handbreadth/store"
	"handbreadth/store/vault"
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
	effort  vault.Effort // of a new passphrase; 0: measured
	jobs    *jobs

	mu   sync.Mutex
	door *door // the one opened last; closed at the end
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
	onFrames(1, p.watchInput)
	if p.options.benchStart {
		onFrames(1, func() { p.firstFrame(a) })
	}
	begin()
	p.window.ShowAndRun()
	unsaved := p.shell.Flush() // where the program was asked to end from outside
	p.shell.Stop()
	background.Wait()
	return errors.Join(unsaved, p.close(), logFile.Close())
}

// leavePreferences keeps the toolkit from writing its preferences once more at
// the end, as it does when they change: it reads them back while it writes, and
// reports the half-written file as an error. There must be no hook at all: one
// that is called while the toolkit stops may wait for its loop, which has ended.
func leavePreferences(a fyne.App) {
	if atEnd, ok := a.Lifecycle().(interface{ SetOnStoppedHookExecuted(func()) }); ok {
		atEnd.SetOnStoppedHookExecuted(nil)
	}
}

// close lets go of the file and empties the shelf of papers.
func (p *program) close() error {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.door == nil {
		return nil
	}
	err := p.door.close()
	p.door = nil
	return err
}

// Begun reports whether a practice was started here.
func (p *program) Begun() bool { return p.place.begun() }

// Look is what the window wore last.
func (p *program) Look() ui.Settings { return p.place.look() }

// Advise judges a passphrase while no practice is open.
func (p *program) Advise(passphrase string) ui.Advice { return advise(passphrase) }

// Practice opens the practice's own file, making it where it is missing.
func (p *program) Practice(ctx context.Context) (ui.Door, error) { return p.stand(ctx, false) }

// Demo opens the invented practice.
func (p *program) Demo(ctx context.Context) (ui.Door, error) { return p.stand(ctx, true) }

// stand opens a file in place of the one before, or returns the one that is
// open.
func (p *program) stand(ctx context.Context, demo bool) (ui.Door, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.door != nil && p.door.demo == demo {
		return p.door, nil
	}
	opened, err := openDoor(ctx, p.place, demo, p.clock, p.effort)
	if err != nil {
		return nil, err
	}
	if p.door != nil {
		if err := p.door.close(); err != nil {
			return nil, errors.Join(err, opened.close())
		}
	}
	p.door = opened
	return opened, nil
}

// entered returns the desk that is open, nil where there is none.
func (p *program) entered() *desk {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.door == nil {
		return nil
	}
	p.door.mu.Lock()
	defer p.door.mu.Unlock()
	return p.door.desk
}

// Describe tells what a backup file says to have.
func (p *program) Describe(_ context.Context, path string) (ui.Backup, error) { return describe(path) }

// Prepare unpacks a backup beside the practice's file, which is not open.
func (p *program) Prepare(ctx context.Context, path, secret string) (ui.Restoring, error) {
	return prepare(ctx, p.place, path, secret)
}

var errNotOurs = errors.New("not a backup that was prepared here")

// Restore closes the practice's file and puts the restored one in its place.
func (p *program) Restore(ctx context.Context, r ui.Restoring) error {
	ready, is := r.(*restoring)
	if !is {
		return errNotOurs
	}
	p.mu.Lock()
	if p.door != nil {
		p.door.mu.Lock()
		p.door.ready = nil // else closing would remove it
		p.door.mu.Unlock()
	}
	p.mu.Unlock()
	if err := p.close(); err != nil {
		return errors.Join(err, ready.Discard())
	}
	_, err := ready.unpacked.Exchange(ctx, p.clock())
	return err
}

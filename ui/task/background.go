package task

import (
	"context"
	"log/slog"
	"sync"
	"time"

	"fyne.io/fyne/v2"
)

// ProgressAfter is how long work runs before progress is shown.
const ProgressAfter = 500 * time.Millisecond

// Progress tells that a job takes its time. It is called where the user
// interface runs.
type Progress struct {
	ID     int    // the same at start and end of one job
	Label  string // what is being done
	Ended  bool   // true once, when a job that was shown has ended
	Cancel func() // asks the work to stop
}

// Background runs each job in a goroutine of its own. Its zero value is ready;
// set the fields before the first job.
type Background struct {
	OnProgress func(Progress)     // after [ProgressAfter], and at the end; nil: not shown
	Words      func(error) string // plain words for an error; nil: [Words]
	Log        *slog.Logger       // nil: slog.Default()
	Clock      Clock              // nil: the system's

	mu   sync.Mutex
	last int
	busy sync.WaitGroup
}

var _ Runner = (*Background)(nil)

// Start runs a job in the background.
func (b *Background) Start(job Job) (cancel func()) {
	ctx, stop := context.WithCancel(context.Background())
	shown := b.announce(job.Label, stop)
	b.busy.Add(1)
	go func() {
		defer b.busy.Done()
		defer stop()
		err := guarded(ctx, job.Work)
		ended := shown.end()
		err = failed(b.log(), b.words(), job.Label, err)
		fyne.Do(func() {
			ended()
			if job.Done != nil {
				job.Done(err)
			}
		})
	}()
	return stop
}

// Wait blocks until all jobs have ended and handed over their results to the
// user interface. It is for the end of the program.
func (b *Background) Wait() { b.busy.Wait() }

func (b *Background) log() *slog.Logger {
	if b.Log != nil {
		return b.Log
	}
	return slog.Default()
}

func (b *Background) words() func(error) string {
	if b.Words != nil {
		return b.Words
	}
	return Words
}

func (b *Background) nextID() int {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.last++
	return b.last
}

// announcement is the progress of one job: shown late, ended once.
type announcement struct {
	tell     func(Progress)
	progress Progress
	stop     func()
	mu       sync.Mutex
	shown    bool
	over     bool
}

func (b *Background) announce(label string, cancel func()) *announcement {
	a := &announcement{tell: b.OnProgress, progress: Progress{ID: b.nextID(), Label: label, Cancel: cancel}}
	if a.tell != nil {
		a.stop = clockOr(b.Clock).AfterFunc(ProgressAfter, a.show)
	}
	return a
}

func (a *announcement) show() {
	a.mu.Lock()
	wanted := !a.over
	a.shown = wanted
	a.mu.Unlock()
	if wanted {
		a.tell(a.progress)
	}
}

// end marks the work as over, so that progress is not shown any more, and
// returns what tells the end where progress was shown.
func (a *announcement) end() func() {
	if a.tell == nil {
		return func() {}
	}
	a.mu.Lock()
	a.over = true
	a.mu.Unlock()
	return func() {
		a.stop()
		a.mu.Lock()
		shown := a.shown
		a.mu.Unlock()
		if shown {
			ended := a.progress
			ended.Ended = true
			a.tell(ended)
		}
	}
}

// guarded runs work; a panic becomes an error.
func guarded(ctx context.Context, work func(context.Context) error) (err error) {
	defer func() {
		if value := recover(); value != nil {
			err = panicked{value}
		}
	}()
	if err := ctx.Err(); err != nil {
		return err
	}
	return work(ctx)
}

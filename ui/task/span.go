package task

import (
	"context"
	"sync"
)

// Span runs the jobs of a time that ends at once, such as that between unlocking
// and locking: at its end they are asked to stop, and none of their results is
// shown any more. It may be used from any goroutine.
type Span struct {
	runner Runner

	mu      sync.Mutex
	over    bool
	last    int
	running map[int]func()
}

var _ Runner = (*Span)(nil)

// NewSpan returns a span whose jobs are run by a runner.
func NewSpan(runner Runner) *Span { return &Span{runner: runner, running: map[int]func(){}} }

// Start runs a job. After the end of the span nothing is run.
func (s *Span) Start(job Job) (cancel func()) {
	id, open := s.enter()
	if !open {
		return func() {}
	}
	work, done := job.Work, job.Done
	job.Work = func(ctx context.Context) error {
		if s.Over() {
			return context.Canceled
		}
		return work(ctx)
	}
	job.Done = func(err error) {
		if s.leave(id) && done != nil {
			done(err)
		}
	}
	stop := s.runner.Start(job)
	s.remember(id, stop)
	return stop
}

func (s *Span) enter() (id int, open bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.over {
		return 0, false
	}
	s.last++
	s.running[s.last] = func() {}
	return s.last, true
}

// remember keeps how a job is stopped, unless it has ended meanwhile.
func (s *Span) remember(id int, stop func()) {
	s.mu.Lock()
	over := s.over
	if _, runs := s.running[id]; runs {
		s.running[id] = stop
	}
	s.mu.Unlock()
	if over {
		stop()
	}
}

// leave forgets a job that has ended, and reports whether its result is wanted.
func (s *Span) leave(id int) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	delete(s.running, id)
	return !s.over
}

// Over reports whether the span has ended.
func (s *Span) Over() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.over
}

// End asks all jobs to stop, and drops what they would show.
func (s *Span) End() {
	s.mu.Lock()
	s.over = true
	stops := make([]func(), 0, len(s.running))
	for _, stop := range s.running {
		stops = append(stops, stop)
	}
	s.mu.Unlock()
	for _, stop := range stops {
		stop()
	}
}

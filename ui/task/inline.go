package task

import (
	"context"
	"io"
	"log/slog"
)

// Inline runs a job at once, in the caller's goroutine. It is for tests.
type Inline struct {
	Words func(error) string // nil: [Words]
}

var _ Runner = Inline{}

// Start runs the work and then Done, before it returns.
func (r Inline) Start(job Job) (cancel func()) {
	words := r.Words
	if words == nil {
		words = Words
	}
	err := guarded(context.Background(), job.Work)
	err = failed(slog.New(slog.NewTextHandler(io.Discard, nil)), words, job.Label, err)
	if job.Done != nil {
		job.Done(err)
	}
	return func() {}
}

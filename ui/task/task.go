// Package task runs work in the background and brings its result back to where
// the user interface runs. It is the only package that calls fyne.Do.
//
// The one rule: read widgets before [Run], hand plain values to the work, touch
// widgets only in done. Tests use [Inline] and a [ManualClock].
package task

import (
	"context"
	"errors"
)

// Job is one piece of work.
type Job struct {
	// Label says what is being done, in plain words without names of people:
	// "Opening the client file". It is shown as progress and logged.
	Label string
	// Work runs away from the user interface. It stops when ctx is done.
	Work func(ctx context.Context) error
	// Done runs where the user interface runs, exactly once, with what went
	// wrong or nil. An error is a [*Failure].
	Done func(err error)
}

// Runner runs jobs.
type Runner interface {
	// Start runs a job and returns at once, or after Done for an inline runner.
	// Calling cancel asks the work to stop; Done is then called with a failure
	// for which errors.Is(err, context.Canceled) holds, unless the work had
	// finished before.
	Start(job Job) (cancel func())
}

// Run runs work that returns a value and hands the value to done. After an
// error the value is the zero value.
func Run[T any](r Runner, label string, work func(ctx context.Context) (T, error), done func(T, error)) (cancel func()) {
	var result T
	return r.Start(Job{
		Label: label,
		Work: func(ctx context.Context) error {
			value, err := work(ctx)
			if err == nil {
				result = value
			}
			return err
		},
		Done: func(err error) { done(result, err) },
	})
}

// Canceled reports whether a job ended because it was asked to stop.
func Canceled(err error) bool { return errors.Is(err, context.Canceled) }

package task

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"log/slog"
	"strings"

	"handbreadth/domain/unit"
)

// Failure is what went wrong, with words for the person at the desk.
type Failure struct {
	Words string // never empty, never technical
	Cause error
}

// Error returns the plain words.
func (f *Failure) Error() string { return f.Words }

// Unwrap gives the cause to errors.Is and errors.As.
func (f *Failure) Unwrap() error { return f.Cause }

const (
	wordsStopped = "Stopped before it was done."
	wordsAccess  = "This file or folder may not be used. Choose another, or ask whoever looks after this computer."
	wordsMissing = "This file is no longer there. Choose another."
	wordsExists  = "There is already a file with this name. Choose another name."
	wordsUnknown = "This did not work. Try again; if it happens again, the log has the details."
)

// Words returns what to show for an error: a failure's own words, a problem of
// an input in one line, and plain words for files and for what was stopped. A
// nil error has none.
func Words(err error) string {
	var failure *Failure
	var problem unit.Problem
	var problems unit.Problems
	switch {
	case err == nil:
		return ""
	case errors.As(err, &failure):
		return failure.Words
	case errors.As(err, &problem):
		return problem.Error()
	case errors.As(err, &problems):
		return problems.Error()
	case errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		return wordsStopped
	case errors.Is(err, fs.ErrPermission):
		return wordsAccess
	case errors.Is(err, fs.ErrNotExist):
		return wordsMissing
	case errors.Is(err, fs.ErrExist):
		return wordsExists
	}
	return wordsUnknown
}

// failed turns an error of a job into a failure, and logs it. The log gets the
// label and the types of the errors, never their texts: those may hold a name,
// a path or an answer.
func failed(log *slog.Logger, words func(error) string, label string, err error) error {
	if err == nil {
		return nil
	}
	if !Canceled(err) {
		log.Error("task failed", "task", label, "kind", kinds(err))
	}
	var known *Failure
	if errors.As(err, &known) {
		return err
	}
	return &Failure{Words: words(err), Cause: err}
}

// kinds names the types in the chain of an error, outermost first.
func kinds(err error) string {
	var names []string
	var walk func(err error)
	walk = func(err error) {
		if err == nil {
			return
		}
		names = append(names, fmt.Sprintf("%T", err))
		switch e := err.(type) {
		case interface{ Unwrap() error }:
			walk(e.Unwrap())
		case interface{ Unwrap() []error }:
			for _, part := range e.Unwrap() {
				walk(part)
			}
		}
	}
	walk(err)
	return strings.Join(names, " < ")
}

// panicked is the error of work that panicked; its value is kept out of Error,
// for it may hold what a client said.
type panicked struct{ value any }

func (p panicked) Error() string { return fmt.Sprintf("panic of type %T", p.value) }

package ui

import (
	"context"
	"time"

	"handbreadth/ui/task"
)

// savePause is how long a change may wait to be written.
const savePause = 200 * time.Millisecond

// SaveState says whether what was typed is on the disk.
type SaveState int

// The states of saving.
const (
	Saved SaveState = iota
	Saving
	SaveFailed
)

// saver writes what changes, as it changes: the first change starts a short
// pause, and the newest value at its end is written. It is used where the user
// interface runs.
type saver[T any] struct {
	label string
	run   task.Runner
	pause *task.Debouncer
	// write is on the disk when it returns. Turns count the changes; it must
	// ignore a turn that comes after a later one.
	write func(ctx context.Context, turn int, value T) error
	show  func(state SaveState, words string)
	words func(error) string

	value T
	turn  int // of value
	saved int // the latest turn on the disk
	busy  bool
	state SaveState
}

func newSaver[T any](
	tools Tools, label string, write func(context.Context, int, T) error, show func(SaveState, string),
) *saver[T] {
	return &saver[T]{
		label: label, run: tools.Run, pause: task.NewDebouncer(savePause, tools.Clock),
		write: write, show: show, words: tools.Words,
	}
}

// change takes a new value.
func (s *saver[T]) change(value T) {
	s.turn++
	s.value = value
	s.tell(Saving, "")
	if !s.pause.Waiting() {
		s.pause.Do(s.start)
	}
}

// start writes the newest value in the background, one write at a time.
func (s *saver[T]) start() {
	if s.busy || s.saved == s.turn {
		return
	}
	s.busy = true
	turn, value := s.turn, s.value
	s.run.Start(task.Job{
		Label: s.label,
		Work:  func(ctx context.Context) error { return s.write(ctx, turn, value) },
		Done:  func(err error) { s.done(turn, err) },
	})
}

func (s *saver[T]) done(turn int, err error) {
	s.busy = false
	switch {
	case turn <= s.saved: // a flush was faster
	case err != nil:
		s.tell(SaveFailed, err.Error())
		return
	default:
		s.saved = turn
	}
	if s.saved < s.turn {
		if !s.pause.Waiting() {
			s.start()
		}
		return
	}
	s.tell(Saved, "")
}

// flush writes what is not on the disk yet, before it returns: for leaving and
// closing.
func (s *saver[T]) flush() error {
	s.pause.Cancel()
	if s.saved == s.turn {
		return nil
	}
	if err := s.write(context.Background(), s.turn, s.value); err != nil {
		s.tell(SaveFailed, s.words(err))
		return err
	}
	s.saved = s.turn
	s.tell(Saved, "")
	return nil
}

func (s *saver[T]) tell(state SaveState, words string) {
	s.state = state
	s.show(state, words)
}

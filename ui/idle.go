package ui

import (
	"time"

	"handbreadth/ui/practice"
	"handbreadth/ui/task"
)

// idleWatch locks the window when nobody typed or moved the pointer for a while.
// It goes by the clock on the wall, so that a computer that slept locks as soon
// as it wakes.
type idleWatch struct {
	shell *Shell
	last  time.Time // when somebody was there last
	on    bool
	count int
	stop  func()
}

// idleLooks is how often the watch looks within the time after which it locks,
// and idleEvery how often at least.
const (
	idleLooks = 10
	idleEvery = 5 * time.Second
)

// begin starts the watch, or starts it anew with another time.
func (w *idleWatch) begin() {
	w.end()
	w.last, w.on = w.shell.tools.Now(), true
	w.wait()
}

// end ends the watch.
func (w *idleWatch) end() {
	if w.stop != nil {
		w.stop()
	}
	w.on, w.stop = false, nil
}

// limit is after how long the window locks; 0 is never.
func (w *idleWatch) limit() time.Duration {
	minutes := practice.DefaultLockMinutes
	if w.shell.settings != nil {
		minutes = w.shell.currentSettings().LockMinutes()
	}
	minute := w.shell.tools.Minute
	if minute == 0 {
		minute = time.Minute
	}
	return time.Duration(max(0, minutes)) * minute
}

func (w *idleWatch) wait() {
	every := idleEvery
	if limit := w.limit(); limit > 0 {
		every = min(every, limit/idleLooks)
	}
	w.stop = task.After(w.shell.tools.Clock, every, w.look)
}

// look locks where it is time, and looks again later otherwise.
func (w *idleWatch) look() {
	if !w.on || w.overdue() {
		return
	}
	w.wait()
}

// overdue locks where it is time, and reports whether it did.
func (w *idleWatch) overdue() bool {
	now, limit := w.shell.tools.Now().Round(0), w.limit()
	switch {
	case now.Before(w.last), w.shell.busy():
		w.last = now
	case limit > 0 && now.Sub(w.last.Round(0)) >= limit:
		w.shell.Lock()
		return true
	}
	return false
}

// Touch tells that somebody typed or moved the pointer.
func (s *Shell) Touch() {
	w := &s.idle
	w.count++
	if w.on && !w.overdue() {
		w.last = s.tools.Now()
	}
}

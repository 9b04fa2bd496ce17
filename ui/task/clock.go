package task

import (
	"slices"
	"sync"
	"time"

	"fyne.io/fyne/v2"
)

// Clock calls a function later, where the user interface runs.
type Clock interface {
	// AfterFunc calls f once, after d. Calling stop where the user interface
	// runs, before that, prevents it.
	AfterFunc(d time.Duration, f func()) (stop func())
}

// System is the clock of the machine.
type System struct{}

// AfterFunc is time.AfterFunc, brought to the user interface.
func (System) AfterFunc(d time.Duration, f func()) (stop func()) {
	timer := time.AfterFunc(d, func() { fyne.Do(f) })
	return func() { timer.Stop() }
}

func clockOr(c Clock) Clock {
	if c == nil {
		return System{}
	}
	return c
}

// ManualClock is a clock for tests: time passes only in [ManualClock.Advance].
// Its zero value is ready.
type ManualClock struct {
	mu      sync.Mutex
	now     time.Duration
	pending []*alarm
}

type alarm struct {
	at time.Duration
	f  func()
}

// AfterFunc remembers f until the clock has advanced by d.
func (c *ManualClock) AfterFunc(d time.Duration, f func()) (stop func()) {
	c.mu.Lock()
	defer c.mu.Unlock()
	a := &alarm{at: c.now + d, f: f}
	c.pending = append(c.pending, a)
	return func() {
		c.mu.Lock()
		defer c.mu.Unlock()
		c.pending = slices.DeleteFunc(c.pending, func(b *alarm) bool { return b == a })
	}
}

// Advance lets time pass and calls what is due, earliest first, in the caller's
// goroutine: the one that stands for the user interface in a test.
func (c *ManualClock) Advance(d time.Duration) {
	c.mu.Lock()
	until := c.now + d
	c.mu.Unlock()
	for {
		due := c.next(until)
		if due == nil {
			return
		}
		due.f()
	}
}

// next takes the earliest alarm that is due and sets the time to it; without
// one it sets the time to until.
func (c *ManualClock) next(until time.Duration) *alarm {
	c.mu.Lock()
	defer c.mu.Unlock()
	var found *alarm
	for _, a := range c.pending {
		if a.at <= until && (found == nil || a.at < found.at) {
			found = a
		}
	}
	if found == nil {
		c.now = until
		return nil
	}
	c.now = max(c.now, found.at)
	c.pending = slices.DeleteFunc(c.pending, func(b *alarm) bool { return b == found })
	return found
}

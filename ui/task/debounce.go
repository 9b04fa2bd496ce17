package task

import "time"

// TypingPause is the pause after a keystroke that is taken as "typed for now".
const TypingPause = 150 * time.Millisecond

// Debouncer runs the last of a quick row of calls, once nothing has come for a
// while. Its methods are called where the user interface runs, and so is what
// it runs.
type Debouncer struct {
	pause time.Duration
	clock Clock
	turn  int
	next  func()
	stop  func()
}

// NewDebouncer returns a debouncer; a nil clock is the system's.
func NewDebouncer(pause time.Duration, clock Clock) *Debouncer {
	return &Debouncer{pause: pause, clock: clockOr(clock)}
}

// Do runs f after the pause, unless Do is called again before.
func (d *Debouncer) Do(f func()) {
	d.Cancel()
	d.next = f
	turn := d.turn
	d.stop = d.clock.AfterFunc(d.pause, func() {
		if turn == d.turn {
			d.Flush()
		}
	})
}

// Flush runs what waits now; nothing waits after it.
func (d *Debouncer) Flush() {
	f := d.next
	d.Cancel()
	if f != nil {
		f()
	}
}

// Cancel drops what waits.
func (d *Debouncer) Cancel() {
	d.turn++
	d.next = nil
	if d.stop != nil {
		d.stop()
		d.stop = nil
	}
}

// Waiting reports whether something waits.
func (d *Debouncer) Waiting() bool { return d.next != nil }

// After runs f once, after the pause, where the user interface runs; calling
// cancel there before that prevents it. A nil clock is the system's.
func After(clock Clock, pause time.Duration, f func()) (cancel func()) {
	d := NewDebouncer(pause, clock)
	d.Do(f)
	return d.Cancel
}

package task

import (
	"sync"
	"time"
)

// Gauge carries how far a work is from where it runs to where it is shown. Its
// zero value is ready.
type Gauge struct {
	mu          sync.Mutex
	done, total int
}

// gaugeEvery is how often what a gauge says is shown.
const gaugeEvery = 100 * time.Millisecond

// Set notes how far the work is. It is called where the work runs.
func (g *Gauge) Set(done, total int) {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.done, g.total = done, total
}

// Read returns what was noted last; the total is 0 before the first time.
func (g *Gauge) Read() (done, total int) {
	g.mu.Lock()
	defer g.mu.Unlock()
	return g.done, g.total
}

// Follow calls show several times a second, where the user interface runs, until
// stop is called there. A nil clock is the system's.
func (g *Gauge) Follow(clock Clock, show func(done, total int)) (stop func()) {
	over := false
	var cancel func()
	var look func()
	look = func() {
		if over {
			return
		}
		show(g.Read())
		cancel = After(clock, gaugeEvery, look)
	}
	cancel = After(clock, gaugeEvery, look)
	return func() {
		over = true
		cancel()
	}
}

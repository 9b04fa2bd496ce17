package task

import (
	"context"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"
	"pgregory.net/rapid"
)

// held keeps jobs until a test lets them end, in any order.
type held struct{ jobs []heldJob }

type heldJob struct {
	job     Job
	stopped *bool
}

func (h *held) Start(job Job) func() {
	stopped := false
	h.jobs = append(h.jobs, heldJob{job, &stopped})
	return func() { stopped = true }
}

func TestLatestDropsTheOlder(t *testing.T) {
	h := &held{}
	latest := &Latest{Runner: h}
	var done []string
	start := func(name string) {
		latest.Start(Job{Label: name, Done: func(error) { done = append(done, name) }})
	}
	start("f")
	start("fa")
	start("far")
	if !*h.jobs[0].stopped || !*h.jobs[1].stopped || *h.jobs[2].stopped {
		t.Error("the older are to be stopped, the newest not")
	}
	for _, i := range []int{1, 2, 0} {
		h.jobs[i].job.Done(nil)
	}
	if !slices.Equal(done, []string{"far"}) {
		t.Errorf("done: %v", done)
	}
}

func TestLatestCancelled(t *testing.T) {
	h := &held{}
	latest := &Latest{Runner: h}
	latest.Start(Job{Done: func(error) { t.Error("called back after Cancel") }})
	latest.Cancel()
	h.jobs[0].job.Done(nil)
	if !*h.jobs[0].stopped {
		t.Error("not stopped")
	}
}

func TestLatestInline(t *testing.T) {
	latest := &Latest{Runner: Inline{}}
	var got []int
	for i := range 3 {
		Run(latest, "count", func(context.Context) (int, error) { return i, nil }, func(n int, err error) { got = append(got, n) })
	}
	if !slices.Equal(got, []int{0, 1, 2}) {
		t.Errorf("got %v", got)
	}
}

func TestDebouncerRunsTheLast(t *testing.T) {
	clock := &ManualClock{}
	d := NewDebouncer(TypingPause, clock)
	var ran []string
	for _, text := range []string{"7", "72", "72.6"} {
		d.Do(func() { ran = append(ran, text) })
		clock.Advance(TypingPause - 1)
	}
	if len(ran) > 0 || !d.Waiting() {
		t.Fatalf("ran too early: %v", ran)
	}
	clock.Advance(1)
	if !slices.Equal(ran, []string{"72.6"}) || d.Waiting() {
		t.Errorf("ran %v, waiting %v", ran, d.Waiting())
	}
	clock.Advance(time.Hour)
	if len(ran) != 1 {
		t.Errorf("ran again: %v", ran)
	}
}

func TestDebouncerFlushAndCancel(t *testing.T) {
	clock := &ManualClock{}
	d := NewDebouncer(TypingPause, clock)
	ran := 0
	d.Do(func() { ran++ })
	d.Flush()
	d.Flush()
	if ran != 1 {
		t.Errorf("flushed %d times", ran)
	}
	d.Do(func() { ran++ })
	d.Cancel()
	clock.Advance(time.Hour)
	if ran != 1 {
		t.Error("ran after Cancel")
	}
}

func TestAfter(t *testing.T) {
	clock := &ManualClock{}
	ran := 0
	After(clock, time.Second, func() { ran++ })
	cancel := After(clock, time.Second, func() { t.Error("ran after cancel") })
	cancel()
	clock.Advance(time.Second)
	if ran != 1 {
		t.Errorf("ran %d times", ran)
	}
}

func TestSystemClock(t *testing.T) {
	test.NewTempApp(t)
	rang := make(chan struct{})
	System{}.AfterFunc(time.Nanosecond, func() { close(rang) })
	<-rang
	stop := System{}.AfterFunc(time.Hour, func() { t.Error("rang after stop") })
	stop()
}

// Alarms ring in the order of their times, each once, none before its time.
func TestManualClockRingsInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		clock := &ManualClock{}
		var rang []int
		delays := rapid.SliceOfN(rapid.IntRange(0, 50), 1, 20).Draw(t, "delays")
		for _, d := range delays {
			clock.AfterFunc(time.Duration(d), func() { rang = append(rang, d) })
		}
		until := rapid.IntRange(0, 60).Draw(t, "until")
		clock.Advance(time.Duration(until))
		var due []int
		for _, d := range delays {
			if d <= until {
				due = append(due, d)
			}
		}
		slices.Sort(due)
		if !slices.Equal(rang, due) {
			t.Errorf("until %d of %v: rang %v, want %v", until, delays, rang, due)
		}
	})
}

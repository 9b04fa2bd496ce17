package task

import (
	"context"
	"testing"
	"time"
)

// laterRunner is a runner whose jobs wait to be run.
type laterRunner struct {
	jobs    []Job
	stopped int
}

func (h *laterRunner) Start(job Job) func() {
	h.jobs = append(h.jobs, job)
	return func() { h.stopped++ }
}

func (h *laterRunner) finish() {
	for _, job := range h.jobs {
		job.Done(job.Work(context.Background()))
	}
	h.jobs = nil
}

func TestASpanRunsItsJobs(t *testing.T) {
	h := &laterRunner{}
	s := NewSpan(h)
	worked, told := false, false
	s.Start(Job{Work: func(context.Context) error { worked = true; return nil }, Done: func(error) { told = true }})
	h.finish()
	if !worked || !told {
		t.Errorf("worked %v, told %v", worked, told)
	}
}

func TestTheEndOfASpanStopsItsJobsAndDropsTheirResults(t *testing.T) {
	h := &laterRunner{}
	s := NewSpan(h)
	worked, told := false, false
	s.Start(Job{Work: func(context.Context) error { worked = true; return nil }, Done: func(error) { told = true }})
	s.End()
	h.finish()
	if worked || told || h.stopped != 1 {
		t.Errorf("worked %v, told %v, stopped %d times", worked, told, h.stopped)
	}
	s.Start(Job{Work: func(context.Context) error { worked = true; return nil }, Done: func(error) { told = true }})
	if len(h.jobs) != 0 {
		t.Error("a job was started after the end")
	}
}

func TestASpanEndsInTheMiddleOfAJob(t *testing.T) {
	s := NewSpan(Inline{})
	told := false
	s.Start(Job{Work: func(context.Context) error { s.End(); return nil }, Done: func(error) { told = true }})
	if told {
		t.Error("a result was shown after the end")
	}
}

func TestAGaugeIsFollowedUntilItIsStopped(t *testing.T) {
	clock, gauge := &ManualClock{}, &Gauge{}
	var seen [][2]int
	stop := gauge.Follow(clock, func(done, total int) { seen = append(seen, [2]int{done, total}) })
	gauge.Set(3, 10)
	clock.Advance(gaugeEvery)
	gauge.Set(10, 10)
	clock.Advance(gaugeEvery)
	stop()
	clock.Advance(time.Second)
	if want := [][2]int{{3, 10}, {10, 10}}; len(seen) != 2 || seen[0] != want[0] || seen[1] != want[1] {
		t.Errorf("seen %v, want %v", seen, want)
	}
}

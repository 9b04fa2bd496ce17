package main

import (
	"sync/atomic"

	"handbreadth/ui/task"
)

// jobs is a runner that knows whether something is under way.
type jobs struct {
	task.Runner
	running atomic.Int32
}

// Start runs a job and counts it until its result is shown.
func (j *jobs) Start(job task.Job) (cancel func()) {
	j.running.Add(1)
	done := job.Done
	job.Done = func(err error) {
		j.running.Add(-1)
		if done != nil {
			done(err)
		}
	}
	return j.Runner.Start(job)
}

func (j *jobs) busy() bool { return j.running.Load() > 0 }

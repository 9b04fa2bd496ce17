package task

// Latest runs jobs of one kind of which only the newest matters, such as a
// search while typing: a newer job stops the older one, whose Done is not
// called. Its methods are called where the user interface runs.
type Latest struct {
	Runner Runner

	turn int
	stop func()
}

var _ Runner = (*Latest)(nil)

// Start stops the job before and runs this one.
func (l *Latest) Start(job Job) (cancel func()) {
	l.Cancel()
	turn := l.turn
	done := job.Done
	job.Done = func(err error) {
		if turn != l.turn {
			return
		}
		l.stop = nil
		if done != nil {
			done(err)
		}
	}
	stop := l.Runner.Start(job)
	if turn == l.turn {
		l.stop = stop
	}
	return stop
}

// Cancel stops the job that runs, if any, without calling its Done.
func (l *Latest) Cancel() {
	l.turn++
	if l.stop != nil {
		l.stop()
		l.stop = nil
	}
}

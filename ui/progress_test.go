package ui

import (
	"testing"

	"handbreadth/ui/task"
)

func TestProgressMovesNothingAndCanBeStopped(t *testing.T) {
	b := open(t, nil)
	before := b.shell.page.Size()
	stopped := false
	first := task.Progress{ID: 1, Label: "Making the pages", Cancel: func() { stopped = true }}
	b.shell.Progress(first)
	p := b.shell.progress
	if !p.note.Visible() || p.words.Text() != "Making the pages…" {
		t.Errorf("it says %q", p.words.Text())
	}
	if b.shell.page.Size() != before {
		t.Error("the page moved")
	}
	b.tap("progress.stop")
	if !stopped {
		t.Error("not stopped")
	}
	b.shell.Progress(task.Progress{ID: 2, Label: "Saving"})
	b.shell.Progress(task.Progress{ID: 2, Label: "Saving", Ended: true})
	if p.words.Text() != "Making the pages…" {
		t.Errorf("after the second ended it says %q", p.words.Text())
	}
	first.Ended = true
	b.shell.Progress(first)
	if p.note.Visible() {
		t.Error("still there after both ended")
	}
}

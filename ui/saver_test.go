package ui

import (
	"context"
	"errors"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/ui/draft"
	"handbreadth/ui/task"
)

func TestTypingIsSavedWithinThePause(t *testing.T) {
	b := open(t, nil)
	b.shell.Set(draft.Weight, "7")
	b.clock.Advance(savePause / 2)
	b.shell.Set(draft.Weight, "78")
	if got := b.shell.State().Save; got != "saving" {
		t.Errorf("while typing it says %q", got)
	}
	b.clock.Advance(savePause / 2)
	if got := b.file().form[draft.Weight]; got != "78" {
		t.Errorf("on the disk is %q: going on typing put the save off", got)
	}
	if got := b.shell.State().Save; got != "saved" {
		t.Errorf("after the pause it says %q", got)
	}
}

func TestLeavingSavesAtOnce(t *testing.T) {
	b := open(t, nil)
	b.shell.Set(draft.Weight, "78 kg")
	b.shell.Go(PlaceClients)
	if f := b.file(); f.form[draft.Weight] != "78 kg" || f.settled[draft.Weight] != "78 kg" {
		t.Errorf("on the disk is %q", f.form[draft.Weight])
	}
}

func TestClosingSavesAtOnce(t *testing.T) {
	b := open(t, nil)
	b.shell.Set(draft.Weight, "78 kg")
	b.shell.Close()
	if got := b.file().form[draft.Weight]; got != "78 kg" {
		t.Errorf("on the disk is %q", got)
	}
}

func TestClosingAsksWhereItCannotSave(t *testing.T) {
	b := open(t, nil)
	b.shell.Set(draft.Weight, "78 kg")
	b.desk.trouble = errors.New("disk is full")
	b.shell.Close()
	if !b.shell.State().Asking {
		t.Error("closed without asking")
	}
	if got := b.focused(); got != "question.no" {
		t.Errorf("the focus is on %q, want the way back", got)
	}
}

func TestAFailedSaveIsShownAndTriedAgain(t *testing.T) {
	b := open(t, nil)
	b.desk.trouble = errors.New("disk is full")
	b.shell.Set(draft.Weight, "78 kg")
	b.clock.Advance(savePause)
	state := b.shell.State()
	if state.Save != "failed" || state.Toast != "plainly: disk is full" {
		t.Fatalf("it says %q and %q", state.Save, state.Toast)
	}
	b.desk.trouble = nil
	b.tap("file.again")
	if got := b.file().form[draft.Weight]; got != "78 kg" || b.shell.State().Save != "saved" {
		t.Errorf("on the disk is %q, it says %q", got, b.shell.State().Save)
	}
}

// A write that ends late never says "Saved" for what came after it.
func TestSavedIsSaidOnlyOfWhatIsOnTheDisk(t *testing.T) {
	test.NewTempApp(t)
	held := &heldRunner{}
	clock := &task.ManualClock{}
	var states []SaveState
	var written []string
	s := newSaver(Tools{Run: held, Clock: clock, Words: task.Words}, "Saving",
		func(_ context.Context, _ int, v string) error {
			written = append(written, v)
			return nil
		},
		func(state SaveState, _ string) { states = append(states, state) })
	s.change("a")
	clock.Advance(savePause)
	s.change("ab")
	held.finish()
	if last := states[len(states)-1]; last != Saving {
		t.Errorf("says %v while \"ab\" is not on the disk", last)
	}
	clock.Advance(savePause)
	held.finish()
	if last := states[len(states)-1]; last != Saved || written[len(written)-1] != "ab" {
		t.Errorf("says %v, wrote %v", last, written)
	}
}

// heldRunner runs a job when it is told to.
type heldRunner struct{ jobs []task.Job }

func (h *heldRunner) Start(job task.Job) func() {
	h.jobs = append(h.jobs, job)
	return func() {}
}

func (h *heldRunner) finish() {
	jobs := h.jobs
	h.jobs = nil
	for _, job := range jobs {
		job.Done(job.Work(context.Background()))
	}
}

func TestSaveNowSaysSo(t *testing.T) {
	b := open(t, nil)
	b.shell.Set(draft.Weight, "78 kg")
	b.press(fyne.KeyS, control)
	if b.file().form[draft.Weight] != "78 kg" || b.shell.State().Toast == "" {
		t.Errorf("said %q", b.shell.State().Toast)
	}
}

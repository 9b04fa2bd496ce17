package ui

import (
	"errors"
	"testing"
	"time"
)

func TestABackupIsLookedForAtTheStartAndEveryHour(t *testing.T) {
	b := newBench(t, &fakeOpener{begun: true, desk: &fakeDesk{settings: Settings{LockAfter: -1}}})
	if got := b.opener.door.backups; got != 1 {
		t.Fatalf("looked %d times at the start", got)
	}
	b.pass(3 * time.Hour)
	if got := b.opener.door.backups; got != 4 {
		t.Errorf("looked %d times after three hours", got)
	}
}

func TestATroubleWithBackupsIsToldOnce(t *testing.T) {
	door := &fakeDoor{passphrase: somePhrase, sealed: true, backupErr: errors.New("the folder is not there")}
	b := newBench(t, &fakeOpener{begun: true, door: door, desk: &fakeDesk{settings: Settings{LockAfter: -1}}})
	if got := b.shell.State().Toast; got != "plainly: the folder is not there" {
		t.Fatalf("said %q", got)
	}
	b.shell.toast.Close()
	b.pass(2 * time.Hour)
	if got := b.shell.State().Toast; got != "" {
		t.Errorf("said again: %q", got)
	}
	door.backupErr = nil
	b.pass(time.Hour)
	door.backupErr = errors.New("the folder is not there")
	b.pass(time.Hour)
	if got := b.shell.State().Toast; got == "" {
		t.Error("a new trouble is not told")
	}
}

func TestNoBackupsAreMadeOfTheDemoNorWhileLocked(t *testing.T) {
	b := newBench(t, &fakeOpener{})
	b.tap("welcome.demo")
	if got := b.opener.door.backups; got != 0 {
		t.Errorf("looked %d times", got)
	}
	b = newBench(t, &fakeOpener{begun: true})
	b.shell.Lock()
	b.pass(5 * time.Hour)
	if got := b.opener.door.backups; got != 1 {
		t.Errorf("looked %d times, %d of them locked", got, got-1)
	}
}

func TestAnInterruptedSealingGoesOnAfterUnlocking(t *testing.T) {
	b := newBench(t, &fakeOpener{begun: true, door: &fakeDoor{passphrase: somePhrase, sealed: true, unfinished: true}})
	if got := b.opener.door.resumed; got != 1 {
		t.Errorf("resumed %d times", got)
	}
}

func TestTheListFollowsTheNamesAsTheyAreRead(t *testing.T) {
	desk := &fakeDesk{loading: true}
	b := newBench(t, &fakeOpener{begun: true, desk: desk})
	if b.shell.State().Loading {
		t.Error("still loading after the names were read")
	}
	b.runner.held = true
	desk.loading = true
	b.shell.awaitNames()
	desk.files = append(desk.files, &fakeFile{desk: desk, id: "wren", name: "Wren Applecart"})
	b.pass(namesEvery)
	b.runner.release()
	if state := b.shell.State(); state.Loading || state.Place != "clients" {
		t.Errorf("state %+v", state)
	}
	b.shell.Lock()
	b.pass(time.Second)
	if b.place() != "locked" {
		t.Errorf("place %q", b.place())
	}
}

func TestTheEndStopsWhatTakesLong(t *testing.T) {
	b := newBench(t, &fakeOpener{begun: true})
	b.shell.Stop()
	if !b.shell.slow.Over() {
		t.Error("not stopped")
	}
}

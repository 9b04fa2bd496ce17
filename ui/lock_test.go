package ui

import (
	"errors"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"

	"handbreadth/ui/clients"
	"handbreadth/ui/draft"
	"handbreadth/ui/practice"
	"handbreadth/ui/task"
	"handbreadth/ui/widgets"
	"handbreadth/ui/widgets/widgettest"
)

// everything is all that the window has, dialogs included.
func (b *bench) everything() string {
	var all strings.Builder
	all.WriteString(b.window.Title() + "\n" + widgettest.Outline(b.window))
	for _, overlay := range b.window.Canvas().Overlays().List() {
		all.WriteString(widgettest.OutlineOf(overlay))
	}
	return all.String()
}

func (b *bench) unlock() {
	b.t.Helper()
	b.fill("unlock.passphrase", somePhrase)
	b.key(fyne.KeyReturn)
}

// What a locked window must not show: the client, and what the practice set.
var private = []string{"Wren", "Applecart", "Lantern", "stairs", "79.5"}

func TestTheLockedWindowShowsNothing(t *testing.T) {
	b := open(t, draft.Form{draft.Why: "the stairs"})
	for _, section := range Sections() {
		b.shell.ShowSection(section)
	}
	if seen := b.everything(); !strings.Contains(seen, "Wren Applecart") {
		t.Fatal("the name is not even in the open window")
	}
	b.press(fyne.KeyL, control)
	if b.place() != "locked" || b.window.Title() != "Handbreadth" {
		t.Fatalf("place %q, title %q", b.place(), b.window.Title())
	}
	seen := b.everything()
	for _, word := range private {
		if strings.Contains(seen, word) {
			t.Errorf("the locked window has %q:\n%s", word, seen)
		}
	}
	for name := range widgets.Named() {
		if head, _, _ := strings.Cut(name, "."); head != "unlock" && head != "rail" && head != "progress" {
			t.Errorf("%s is still known", name)
		}
	}
	if b.opener.door.locks != 1 || b.shell.file != nil || b.shell.desk != nil {
		t.Error("the file is not locked, or its content is still held")
	}
}

func TestLockingSavesAndUnlockingGoesOnAtTheSamePlace(t *testing.T) {
	b := open(t, nil)
	b.shell.ShowSection(SectionIntake)
	b.fill("intake."+string(draft.Weight), "x")
	b.shell.Set(draft.Weight, "78 kg")
	b.shell.Lock()
	if got := b.file().form[draft.Weight]; got != "78 kg" {
		t.Fatalf("on the disk is %q", got)
	}
	b.unlock()
	state := b.shell.State()
	if state.Place != "file" || state.Section != "intake" || state.Client != "wren" || state.Form.Get(draft.Weight) != "78 kg" {
		t.Errorf("state %+v", state)
	}
	if got := b.focused(); got != "intake."+string(draft.Weight) {
		t.Errorf("focus on %q", got)
	}
}

func TestWhatCannotBeSavedIsThereAgainAfterUnlocking(t *testing.T) {
	b := open(t, nil)
	b.desk.trouble = errors.New("disk is full")
	b.shell.Set(draft.Weight, "78 kg")
	b.shell.SetLook(LookDark)
	b.shell.Lock()
	if b.place() != "locked" {
		t.Fatal("a full disk keeps the window open")
	}
	b.desk.trouble = nil
	b.unlock()
	b.pass(savePause)
	if got := b.shell.State().Form.Get(draft.Weight); got != "78 kg" || b.file().form[draft.Weight] != "78 kg" {
		t.Errorf("the form has %q, the disk %q", got, b.file().form[draft.Weight])
	}
	if b.desk.settings.Look != LookDark {
		t.Error("the settings were lost")
	}
}

func TestLockingGoesBackToThePracticeAndTheList(t *testing.T) {
	b := newBench(t, &fakeOpener{begun: true})
	for place, name := range map[Place]string{PlaceClients: "clients", PlacePractice: "practice", PlaceHelp: "help"} {
		b.shell.Go(place)
		b.tap("rail.lock")
		if b.place() != "locked" {
			t.Fatalf("not locked from %s", name)
		}
		b.unlock()
		if b.place() != name {
			t.Errorf("back at %q, want %q", b.place(), name)
		}
	}
}

func TestLockingClosesWhatLiesOverThePage(t *testing.T) {
	b := open(t, nil)
	b.shell.toast.Say("Wren Applecart is archived.")
	b.shell.OpenPalette()
	b.shell.Lock()
	if seen := b.everything(); b.shell.State().Palette || strings.Contains(seen, "Wren") {
		t.Errorf("the palette or the toast is still there:\n%s", seen)
	}
	b.unlock()
	b.shell.ask(clients.Question{Title: "Delete everything on Wren Applecart?", Yes: "Delete"})
	dialog.ShowInformation("", "Wren Applecart", b.window)
	b.shell.Lock()
	if seen := b.everything(); b.shell.State().Asking || b.window.Canvas().Overlays().Top() != nil || strings.Contains(seen, "Wren") {
		t.Errorf("a question or a dialog is still there:\n%s", seen)
	}
}

func TestWhatRunsWhileTheWindowIsLockedShowsNothing(t *testing.T) {
	b := open(t, nil)
	b.shell.Go(PlaceClients)
	b.runner.held = true
	b.shell.OpenClient("wren")
	b.runner.held = false
	b.shell.Lock()
	b.runner.release()
	if b.place() != "locked" || b.shell.file != nil {
		t.Errorf("place %q", b.place())
	}
	b.shell.Progress(task.Progress{ID: 7, Label: "Saving the paper of Wren"})
	if seen := b.everything(); strings.Contains(seen, "Wren") {
		t.Errorf("progress is shown:\n%s", seen)
	}
}

func TestKeysDoNothingWhileTheWindowIsLocked(t *testing.T) {
	b := open(t, nil)
	b.shell.Lock()
	for _, key := range []fyne.KeyName{fyne.KeyN, fyne.KeyK, fyne.KeyS, fyne.KeyP, fyne.Key1, fyne.Key6} {
		b.press(key, control)
	}
	for _, key := range []fyne.KeyName{fyne.KeyF1, fyne.KeyF6, fyne.KeyEscape} {
		b.key(key)
	}
	if state := b.shell.State(); state.Place != "locked" || state.Palette || state.Toast != "" {
		t.Errorf("state %+v", state)
	}
}

func TestTheKeysAreAwayBeforeTheNextTry(t *testing.T) {
	b := open(t, nil)
	b.runner.held = true
	b.shell.Lock()
	b.unlock()
	if b.place() != "locked" || b.opener.door.locks != 0 {
		t.Fatal("tried before the keys were away")
	}
	b.runner.release()
	if b.place() != "file" || b.opener.door.locks != 1 {
		t.Errorf("place %q, locked %d times", b.place(), b.opener.door.locks)
	}
}

func TestWhatHasNoPassphraseIsNotLocked(t *testing.T) {
	b := newBench(t, &fakeOpener{})
	b.tap("welcome.demo")
	b.press(fyne.KeyL, control)
	if b.place() != "clients" || b.shell.State().Toast != wordsDemoOpen || b.shell.lock.Visible() {
		t.Errorf("place %q, said %q", b.place(), b.shell.State().Toast)
	}
	b = newBench(t, &fakeOpener{begun: true, door: &fakeDoor{}})
	b.tap("unlock.back")
	b.press(fyne.KeyL, control)
	if b.place() != "clients" || b.shell.State().Toast != wordsNothingToLock {
		t.Errorf("place %q, said %q", b.place(), b.shell.State().Toast)
	}
}

const tenMinutes = practice.DefaultLockMinutes * time.Minute

func TestTheWindowLocksByItself(t *testing.T) {
	b := open(t, nil)
	b.pass(tenMinutes - time.Minute)
	if b.place() != "file" {
		t.Fatal("locked too early")
	}
	b.pass(2 * time.Minute)
	if b.place() != "locked" {
		t.Error("not locked")
	}
	b.pass(time.Hour)
	if b.opener.door.locks != 1 {
		t.Errorf("locked %d times", b.opener.door.locks)
	}
}

func TestSomebodyAtTheDeskKeepsTheWindowOpen(t *testing.T) {
	b := open(t, nil)
	for range 30 {
		b.pass(time.Minute)
		b.shell.Touch()
	}
	if b.place() != "file" || b.shell.State().Touched != 30 {
		t.Errorf("place %q, touched %d times", b.place(), b.shell.State().Touched)
	}
}

func TestTheTimeOfLockingIsSet(t *testing.T) {
	b := newBench(t, &fakeOpener{begun: true, desk: &fakeDesk{settings: Settings{LockAfter: 30}}})
	b.pass(tenMinutes + time.Minute)
	if b.place() != "clients" {
		t.Fatal("locked after ten minutes, want thirty")
	}
	b.shell.Go(PlacePractice)
	b.shell.setLockAfter(5)
	b.pass(6 * time.Minute)
	if b.place() != "locked" || b.desk.settings.LockAfter != 5 {
		t.Errorf("place %q, on the disk are %d minutes", b.place(), b.desk.settings.LockAfter)
	}
	b.unlock()
	b.shell.setLockAfter(-1)
	b.pass(24 * time.Hour)
	if b.place() != "practice" {
		t.Error("locked though it never should")
	}
}

// What a page sets later keeps what another part set before.
func TestThePracticePageKeepsTheTimeOfLocking(t *testing.T) {
	b := newBench(t, &fakeOpener{begun: true})
	b.shell.Go(PlacePractice)
	b.shell.setLockAfter(30)
	b.fill("practice.name", "Lantern")
	b.pass(savePause)
	if got := b.desk.settings; got.LockAfter != 30 || got.Name != "Lantern" {
		t.Errorf("on the disk is %+v", got)
	}
}

func TestAComputerThatSleptLocksAsItWakes(t *testing.T) {
	b := open(t, nil)
	b.now = b.now.Add(8 * time.Hour) // the clock of pauses stands still meanwhile
	b.shell.Touch()
	if b.place() != "locked" {
		t.Error("the first touch after the night finds the window open")
	}
}

func TestAClockThatWasSetBackDoesNotKeepTheWindowOpen(t *testing.T) {
	b := open(t, nil)
	b.now = b.now.Add(-8 * time.Hour)
	for range practice.DefaultLockMinutes + 1 {
		b.pass(time.Minute)
	}
	if b.place() != "locked" {
		t.Error("not locked")
	}
}

func TestTheCodeThatIsShownIsLockedAwayToo(t *testing.T) {
	b := newBench(t, &fakeOpener{})
	b.tap("welcome.start")
	b.choosePassphrase()
	b.pass(tenMinutes + time.Minute)
	if b.place() != "locked" || strings.Contains(b.everything(), "ABCD") {
		t.Errorf("place %q", b.place())
	}
}

// A code that is being made would be lost by locking, since it is shown once.
func TestTheWindowDoesNotLockWhileACodeIsBeingMade(t *testing.T) {
	b := atPractice(t)
	b.tap("safety.renew")
	b.fill("unlock.old", somePhrase)
	b.runner.held = true
	b.tap("unlock.do")
	b.pass(tenMinutes + time.Minute)
	if b.place() != "renew" {
		t.Fatalf("place %q", b.place())
	}
	b.runner.release()
	if b.place() != "code" {
		t.Errorf("place %q", b.place())
	}
}

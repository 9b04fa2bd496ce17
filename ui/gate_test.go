package ui

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"handbreadth/ui/draft"
	"handbreadth/ui/widgets"
	"handbreadth/ui/widgets/widgettest"
)

func (b *bench) place() string { return b.shell.State().Place }

// fill types into a field by its name.
func (b *bench) fill(name, text string) {
	b.t.Helper()
	widgets.FocusOn(b.named(name))
	b.typing(text)
}

func (b *bench) choosePassphrase() {
	b.t.Helper()
	b.fill("unlock.first", somePhrase)
	b.fill("unlock.again", somePhrase)
	b.tap("unlock.do")
}

// typeBack types the groups that are asked for.
func (b *bench) typeBack() {
	b.t.Helper()
	for i, group := range someCode.Groups {
		name := fmt.Sprintf("unlock.asked%d", i+1)
		if _, asked := widgets.Named()[name]; asked {
			b.fill(name, group)
		}
	}
	b.tap("unlock.do")
}

func TestTheFirstStartSealsThePractice(t *testing.T) {
	b := newBench(t, &fakeOpener{})
	b.tap("welcome.start")
	if b.place() != "passphrase" || b.focused() != "unlock.first" {
		t.Fatalf("place %q, focus on %q", b.place(), b.focused())
	}
	b.choosePassphrase()
	if b.place() != "code" || !strings.Contains(widgettest.Outline(b.window), "ABCD") {
		t.Fatalf("place %q, or no code", b.place())
	}
	b.tap("unlock.print")
	b.tap("unlock.on")
	b.typeBack()
	door := b.opener.door
	if b.place() != "clients" || !door.sealed || !door.tried || len(door.printed) != 1 {
		t.Errorf("place %q, door %+v", b.place(), door)
	}
	if strings.Contains(widgettest.Outline(b.window), "ABCD") || widgets.Named()["unlock.first"] != nil {
		t.Error("the code or the passphrase is still in the window")
	}
}

func TestTheSheetCanBeTriedLater(t *testing.T) {
	b := newBench(t, &fakeOpener{})
	b.tap("welcome.start")
	b.choosePassphrase()
	b.tap("unlock.on")
	b.tap("unlock.back")
	if b.place() != "code" {
		t.Fatalf("place %q, want the code again", b.place())
	}
	b.tap("unlock.on")
	b.tap("unlock.later")
	if b.place() != "clients" || b.opener.door.tried {
		t.Errorf("place %q, tried %v", b.place(), b.opener.door.tried)
	}
}

func TestTheFirstStartCanBeLeft(t *testing.T) {
	b := newBench(t, &fakeOpener{})
	b.tap("welcome.start")
	b.key(fyne.KeyEscape)
	if b.place() != "welcome" {
		t.Errorf("place %q", b.place())
	}
}

func TestAFileThatCannotBeMadeSaysSoAtThePassphrase(t *testing.T) {
	opener := &fakeOpener{trouble: errors.New("disk is full")}
	b := newBench(t, opener)
	b.tap("welcome.start")
	b.choosePassphrase()
	if b.place() != "passphrase" || b.named("unlock.told").(*widgets.Text).Text() != "plainly: disk is full" {
		t.Errorf("place %q", b.place())
	}
}

func TestAnOpenPracticeIsOfferedSealing(t *testing.T) {
	b := newBench(t, &fakeOpener{begun: true, door: &fakeDoor{}})
	if b.place() != "passphrase" {
		t.Fatalf("place %q", b.place())
	}
	b.tap("unlock.back")
	if b.place() != "clients" || b.opener.door.sealed || b.shell.lock.Visible() {
		t.Error("sealed against the wish, or cannot be left for later")
	}
}

func TestASealingThatWasStoppedGoesOn(t *testing.T) {
	b := newBench(t, &fakeOpener{begun: true, door: &fakeDoor{sealErr: context.Canceled}})
	b.choosePassphrase()
	if b.place() != "code" || !strings.Contains(widgettest.Outline(b.window), "Not everything from before is sealed yet") {
		t.Fatalf("place %q, or it is not told", b.place())
	}
	b.tap("unlock.on")
	b.tap("unlock.later")
	if b.place() != "clients" || b.opener.door.resumed != 1 || !b.shell.lock.Visible() {
		t.Errorf("place %q, resumed %d times", b.place(), b.opener.door.resumed)
	}
}

func TestThePassphraseOpensALockedPractice(t *testing.T) {
	b := newBench(t, lockedPractice())
	if b.place() != "locked" || b.focused() != "unlock.passphrase" {
		t.Fatalf("place %q, focus on %q", b.place(), b.focused())
	}
	b.typing("wrong")
	b.key(fyne.KeyReturn)
	if b.place() != "locked" || b.named("unlock.passphrase").(*widgets.Field).Problem() != "plainly: wrong passphrase" {
		t.Fatal("opened with a wrong passphrase, or did not say so")
	}
	b.named("unlock.passphrase").(*widgets.Field).SetText(somePhrase)
	b.key(fyne.KeyReturn)
	if b.place() != "clients" {
		t.Errorf("place %q", b.place())
	}
}

func lockedPractice() *fakeOpener {
	return &fakeOpener{begun: true, door: &fakeDoor{passphrase: somePhrase, sealed: true, locked: true, tried: true}}
}

func TestTheRecoveryCodeLeadsToANewCode(t *testing.T) {
	b := newBench(t, lockedPractice())
	b.tap("unlock.recover")
	if b.place() != "recover" {
		t.Fatalf("place %q", b.place())
	}
	b.key(fyne.KeyEscape)
	if b.place() != "locked" {
		t.Fatalf("Escape leads to %q", b.place())
	}
	b.tap("unlock.recover")
	b.fill("unlock.code", someCode.String())
	b.choosePassphrase()
	if b.place() != "code" {
		t.Fatalf("place %q", b.place())
	}
	b.tap("unlock.on")
	b.typeBack()
	if b.place() != "clients" {
		t.Errorf("place %q", b.place())
	}
}

func TestPassphraseAndCodeAreChangedFromThePractice(t *testing.T) {
	b := atPractice(t)
	b.tap("safety.change")
	if b.place() != "change" {
		t.Fatalf("place %q", b.place())
	}
	b.key(fyne.KeyEscape)
	if b.place() != "practice" || !b.shell.side.Visible() {
		t.Fatalf("Escape leads to %q", b.place())
	}
	b.tap("safety.change")
	b.fill("unlock.old", somePhrase)
	b.choosePassphrase()
	if b.place() != "practice" || b.shell.State().Toast == "" {
		t.Errorf("place %q, said %q", b.place(), b.shell.State().Toast)
	}
	b.tap("safety.renew")
	b.fill("unlock.old", somePhrase)
	b.tap("unlock.do")
	if b.place() != "code" {
		t.Fatalf("place %q", b.place())
	}
	b.tap("unlock.on")
	b.typeBack()
	if b.place() != "practice" {
		t.Errorf("place %q", b.place())
	}
}

func TestThePracticeSaysWhatIsStillToBeDone(t *testing.T) {
	b := newBench(t, &fakeOpener{begun: true})
	b.shell.Go(PlacePractice)
	if !strings.Contains(widgettest.Outline(b.window), "No folder for backups is chosen yet.") {
		t.Error("it is not said")
	}
	b.tap("practice.see")
	if got := b.focused(); got != "safety.backups" {
		t.Errorf("leads to %q", got)
	}
}

// atPractice opens a practice and the part on its passphrase.
func atPractice(t *testing.T) *bench {
	t.Helper()
	b := newBench(t, &fakeOpener{begun: true})
	b.shell.Go(PlacePractice)
	fold := b.named("safety.keys").(*widgets.Fold)
	fold.SetOpen(true)
	return b
}

func TestNothingElseIsReachedFromAPageInFront(t *testing.T) {
	b := atPractice(t)
	b.tap("safety.renew")
	for _, key := range []fyne.KeyName{fyne.KeyN, fyne.KeyK, fyne.KeyL, fyne.Key1} {
		b.press(key, control)
	}
	b.key(fyne.KeyF1)
	b.key(fyne.KeyF6)
	b.shell.OpenPalette()
	if state := b.shell.State(); state.Place != "renew" || state.Palette {
		t.Errorf("state %+v", state)
	}
}

func TestABackupIsRestoredFromThePractice(t *testing.T) {
	b := newBench(t, &fakeOpener{begun: true})
	b.shell.Go(PlacePractice)
	restoring := &fakeRestoring{}
	b.shell.restore(restoring)
	if b.opener.restored != Restoring(restoring) || b.place() != "locked" {
		t.Fatalf("restored %v, place %q", b.opener.restored, b.place())
	}
	if !strings.Contains(widgettest.Outline(b.window), "The backup is in place.") {
		t.Error("it is not told")
	}
	b.typing("of that day")
	b.key(fyne.KeyReturn)
	if b.place() != "clients" {
		t.Errorf("place %q", b.place())
	}
}

func TestARestoreThatFailsOpensTheFileAsItWas(t *testing.T) {
	opener := lockedPractice()
	b := newBench(t, opener)
	b.typing(somePhrase)
	b.key(fyne.KeyReturn)
	opener.restoreErr = errors.New("disk is full")
	opener.door.locked = true
	b.shell.restore(&fakeRestoring{})
	if b.place() != "locked" || !strings.Contains(widgettest.Outline(b.window), "disk is full") {
		t.Errorf("place %q, or the reason is not told", b.place())
	}
}

func TestARestoreAsksWhereTheLastChangeCannotBeSaved(t *testing.T) {
	b := open(t, nil)
	b.shell.Set(draft.Weight, "78 kg")
	b.desk.trouble = errors.New("disk is full")
	b.shell.restore(&fakeRestoring{})
	if !b.shell.State().Asking || b.opener.restored != nil {
		t.Fatal("restored without asking")
	}
	b.tap("question.yes")
	if b.opener.restored == nil || b.place() != "locked" {
		t.Errorf("restored %v, place %q", b.opener.restored, b.place())
	}
}

func TestARestoreOnANewComputer(t *testing.T) {
	b := newBench(t, &fakeOpener{})
	b.tap("welcome.restore")
	if b.place() != "restore" || b.focused() != "restore.path" {
		t.Fatalf("place %q, focus on %q", b.place(), b.focused())
	}
	b.key(fyne.KeyEscape)
	if b.place() != "welcome" {
		t.Fatalf("Escape leads to %q", b.place())
	}
	b.tap("welcome.restore")
	b.typing("stick/handbreadth.backup")
	b.tap("restore.open")
	b.tap("restore.found.look")
	b.tap("restore.found.put")
	b.tap("question.yes")
	if b.opener.restored == nil || b.place() != "locked" {
		t.Errorf("restored %v, place %q", b.opener.restored, b.place())
	}
}

func TestALockedPracticeIsRestoredFromAnEarlierDay(t *testing.T) {
	b := newBench(t, lockedPractice())
	b.tap("unlock.recover")
	b.tap("unlock.restore")
	if b.place() != "restore" {
		t.Fatalf("place %q", b.place())
	}
	b.key(fyne.KeyEscape)
	if b.place() != "locked" {
		t.Errorf("Escape leads to %q", b.place())
	}
}

func TestAPracticeThatDoesNotOpenCanBeRestored(t *testing.T) {
	b := newBench(t, &fakeOpener{begun: true, trouble: errors.New("damaged")})
	b.tap("welcome.restore")
	if b.place() != "restore" {
		t.Errorf("place %q", b.place())
	}
}

package unlock

import (
	"errors"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"handbreadth/ui/widgets"
	"handbreadth/ui/widgets/widgettest"
)

// locked is a locked window and what it led to.
type locked struct {
	*bench
	guard              *fakeGuard
	screen             *Enter
	opened, recovering int
}

func newLocked(t *testing.T) *locked {
	l := &locked{bench: newBench(t), guard: &fakeGuard{passphrase: goodPhrase, locked: true}}
	l.screen = NewEnter(l.guard, l.tools(), EnterWays{
		Opened: func() { l.opened++ }, Recover: func() { l.recovering++ },
	}, "")
	l.show(l.screen)
	l.screen.Ready()
	return l
}

func TestEnterUnlocks(t *testing.T) {
	l := newLocked(t)
	if got := l.focused(); got != "unlock.passphrase" {
		t.Fatalf("focus on %q", got)
	}
	l.typing(goodPhrase)
	l.key(fyne.KeyReturn)
	if l.opened != 1 {
		t.Error("not opened")
	}
}

func TestAWrongPassphraseIsToldAndKept(t *testing.T) {
	l := newLocked(t)
	l.typing("wrong one")
	l.key(fyne.KeyReturn)
	f := field(t, "unlock.passphrase")
	if l.opened != 0 || f.Problem() != errWrong.Words || f.Text() != "wrong one" || l.focused() != "unlock.passphrase" {
		t.Errorf("opened %d, says %q, holds %q, focus on %q", l.opened, f.Problem(), f.Text(), l.focused())
	}
	l.typing("x")
	if f.Problem() != "" {
		t.Error("still complains while it is mended")
	}
}

func TestTheDelayCountsDown(t *testing.T) {
	l := newLocked(t)
	l.typing("wrong one")
	l.guard.wait = 2 * time.Second
	l.screen.tried(errWrong)
	if said(t) != "Too many wrong passphrases. Try again in 2 seconds." {
		t.Errorf("says %q", said(t))
	}
	l.key(fyne.KeyReturn)
	if len(l.guard.tried) != 0 {
		t.Error("tried during the delay")
	}
	l.guard.wait = time.Second
	l.clock.Advance(waitEvery)
	if said(t) != "Too many wrong passphrases. Try again in 1 second." {
		t.Errorf("later it says %q", said(t))
	}
	l.guard.wait = 0
	l.clock.Advance(waitEvery)
	if said(t) != wordsTry {
		t.Errorf("at the end it says %q", said(t))
	}
	l.key(fyne.KeyReturn)
	if len(l.guard.tried) != 1 {
		t.Error("cannot be tried after the delay")
	}
}

func TestEnterBeforeTheKeysAreAwayIsDoneThen(t *testing.T) {
	b, guard, opened := newBench(t), &fakeGuard{passphrase: goodPhrase, locked: true}, 0
	s := NewEnter(guard, b.tools(), EnterWays{Opened: func() { opened++ }}, "")
	b.show(s)
	b.typing(goodPhrase)
	b.key(fyne.KeyReturn)
	if opened != 0 || len(guard.tried) != 0 {
		t.Fatal("tried before it was ready")
	}
	s.Ready()
	if opened != 1 {
		t.Error("not opened")
	}
}

func TestANoteTellsWhatHappenedBefore(t *testing.T) {
	b := newBench(t)
	const note = "The backup of 2 March 2026 is in place."
	b.show(NewEnter(&fakeGuard{}, b.tools(), EnterWays{}, note))
	if !strings.Contains(widgettest.Outline(b.window), note) {
		t.Error("the note is not there")
	}
}

// recovering is the page of the recovery code and what it led to.
type recovering struct {
	*bench
	guard *fakeGuard
	code  Code
	err   error
	went  int
	back  int
}

func newRecovering(t *testing.T) *recovering {
	r := &recovering{bench: newBench(t), guard: &fakeGuard{locked: true, code: someCode, next: otherCode}}
	r.show(NewRecover(r.guard, fakeAdvise, r.tools(), RecoverWays{
		Recovered: func(code Code, err error) { r.code, r.err, r.went = code, err, r.went+1 },
		Back:      func() { r.back++ },
	}))
	return r
}

func (r *recovering) fillAll(code string) {
	r.fill("unlock.code", code)
	r.fill("unlock.first", goodPhrase)
	r.fill("unlock.again", goodPhrase)
}

func TestTheRecoveryCodeGivesANewPassphraseAndANewCode(t *testing.T) {
	r := newRecovering(t)
	r.fillAll("abcd efgh jklm nopr stuw xyza bcde fghj")
	r.key(fyne.KeyReturn)
	if r.went != 1 || r.err != nil || r.code.String() != otherCode.String() || r.guard.passphrase != goodPhrase {
		t.Errorf("led on %d times with %v, %v", r.went, r.code, r.err)
	}
}

func TestASlipInTheCodeIsToldBeforeAnythingIsTried(t *testing.T) {
	r := newRecovering(t)
	r.fillAll("abcd")
	widgettest.Press(t, "unlock.do")
	if r.went != 0 || !r.guard.locked || field(t, "unlock.code").Problem() == "" || r.focused() != "unlock.code" {
		t.Errorf("says %q, focus on %q", field(t, "unlock.code").Problem(), r.focused())
	}
}

func TestAnotherCodeIsRefusedInPlainWords(t *testing.T) {
	r := newRecovering(t)
	r.fillAll(otherCode.String())
	widgettest.Press(t, "unlock.do")
	if r.went != 0 || field(t, "unlock.code").Problem() != "This code belongs to another file." {
		t.Errorf("says %q", field(t, "unlock.code").Problem())
	}
}

func TestAPracticeThatIsOpenIsEnteredWithoutANewCode(t *testing.T) {
	r := newRecovering(t)
	r.guard.renewFails = true
	r.fillAll(someCode.String())
	widgettest.Press(t, "unlock.do")
	if r.went != 1 || r.err == nil || !r.code.IsZero() {
		t.Errorf("led on %d times with %v, %v", r.went, r.code, r.err)
	}
}

func TestTheCodeIsPrintedAndSaved(t *testing.T) {
	b, sheet, on := newBench(t), &fakeSheet{}, 0
	asked := ""
	screen := NewShowCode(someCode, sheet, b.tools(), CodeWays{
		On:         func() { on++ },
		ChoosePath: func(name string, chosen func(string)) { asked = name; chosen("stick/sheet.pdf") },
	}, "")
	b.show(screen)
	for i, group := range someCode.Groups {
		if got := widgets.Named()["unlock.group"+place(i)].(*widgets.Text).Text(); got != group {
			t.Errorf("group %d shows %q", i+1, got)
		}
	}
	b.key(fyne.KeySpace)
	if sheet.printed != someCode.String() || said(t) != wordsSheetPrinted {
		t.Errorf("printed %q, says %q", sheet.printed, said(t))
	}
	widgettest.Press(t, "unlock.save")
	if asked != "recovery sheet.pdf" || sheet.saved != "stick/sheet.pdf: "+someCode.String() || said(t) != wordsSheetSaved {
		t.Errorf("saved %q, says %q", sheet.saved, said(t))
	}
	sheet.trouble = errors.New("no printer")
	widgettest.Press(t, "unlock.print")
	if said(t) != "plainly: no printer" {
		t.Errorf("says %q", said(t))
	}
	if screen.Escape(); on != 0 {
		t.Error("Escape lost the code")
	}
	widgettest.Press(t, "unlock.on")
	if on != 1 {
		t.Error("did not go on")
	}
}

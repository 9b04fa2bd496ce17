package ui

import (
	"errors"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"handbreadth/domain/screen"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
)

func TestAFreshMachineOffersTwoWays(t *testing.T) {
	b := newBench(t, &fakeOpener{})
	if got := b.shell.State().Place; got != "welcome" {
		t.Fatalf("place %q", got)
	}
	if got := b.focused(); got != "welcome.start" {
		t.Errorf("focus on %q", got)
	}
	b.key(fyne.KeyReturn)
	if got := b.shell.State().Place; got != "passphrase" {
		t.Errorf("after starting: %q", got)
	}
}

func TestTheDemoIsMarked(t *testing.T) {
	b := newBench(t, &fakeOpener{})
	b.tap("welcome.demo")
	if !b.shell.mark.Visible() || !strings.Contains(b.window.Title(), "demo data") {
		t.Errorf("mark %v, title %q", b.shell.mark.Visible(), b.window.Title())
	}
	own := newBench(t, &fakeOpener{begun: true})
	if own.shell.mark.Visible() || strings.Contains(own.window.Title(), "demo") {
		t.Error("the practice's own file is marked as demo")
	}
}

func TestAFileThatCannotBeOpenedSaysWhyAndOffersToTryAgain(t *testing.T) {
	opener := &fakeOpener{begun: true, trouble: errors.New("in use")}
	b := newBench(t, opener)
	if got := b.focused(); got != "welcome.again" {
		t.Fatalf("focus on %q", got)
	}
	opener.trouble = nil
	b.key(fyne.KeySpace)
	if got := b.shell.State().Place; got != "clients" {
		t.Errorf("after trying again: %q", got)
	}
}

func TestNewClientInOneStep(t *testing.T) {
	b := newBench(t, &fakeOpener{begun: true})
	b.press(fyne.KeyN, control)
	if got := b.focused(); got != "clients.name" {
		t.Fatalf("focus on %q", got)
	}
	b.typing("Oskar")
	b.key(fyne.KeyReturn)
	state := b.shell.State()
	if state.Place != "file" || state.Section != "intake" || state.Client != "oskar" {
		t.Fatalf("state %+v", state)
	}
	if got := b.focused(); got != "intake."+string(draft.Born) {
		t.Errorf("focus on %q, want the first thing that is missing", got)
	}
}

func TestKeysChooseSections(t *testing.T) {
	b := open(t, nil)
	for i, key := range []fyne.KeyName{fyne.Key1, fyne.Key2, fyne.Key3, fyne.Key4, fyne.Key5} {
		b.press(key, control)
		if got, want := b.shell.State().Section, Section(i).Name(); got != want {
			t.Errorf("%s shows %q, want %q", key, got, want)
		}
	}
	b.press(fyne.KeyP, control)
	if got := b.shell.State().Section; got != "handout" {
		t.Errorf("Ctrl+P shows %q", got)
	}
}

func TestF6GoesRoundTheWindow(t *testing.T) {
	b := open(t, nil)
	b.shell.ShowSection(SectionTargets)
	var seen []region
	for range 4 {
		b.key(fyne.KeyF6)
		seen = append(seen, b.shell.regionOfFocus())
	}
	want := []region{regionSheet, regionRail, regionStrip, regionBody}
	for i := range want {
		if seen[i] != want[i] {
			t.Fatalf("F6 went %v, want %v", seen, want)
		}
	}
}

func TestEscapeGoesBackStepByStep(t *testing.T) {
	b := open(t, nil)
	b.shell.ShowSection(SectionTargets)
	b.key(fyne.KeyEscape)
	if got := b.focused(); got != "strip" {
		t.Errorf("first Escape: focus on %q, want the sections", got)
	}
	b.key(fyne.KeyF1)
	if got := b.shell.State().Place; got != "help" {
		t.Fatalf("F1 shows %q", got)
	}
	b.key(fyne.KeyEscape)
	if got := b.shell.State().Place; got != "file" {
		t.Errorf("Escape from help shows %q, want the file", got)
	}
	b.key(fyne.KeyEscape)
	if got := b.shell.State().Place; got != "clients" {
		t.Errorf("Escape from the sections shows %q, want the list", got)
	}
}

func TestTheSheetFoldsAwayInANarrowWindow(t *testing.T) {
	b := open(t, nil)
	if b.shell.State().Folded {
		t.Error("folded at 1366")
	}
	b.window.Resize(fyne.NewSize(1199, 768))
	if !b.shell.State().Folded {
		t.Error("not folded at 1199")
	}
	b.press(fyne.Key6, control)
	if b.shell.State().Folded {
		t.Error("the key did not bring it back")
	}
	b.tap("sheet.toggle")
	if !b.shell.State().Folded {
		t.Error("the button did not fold it")
	}
	b.window.Resize(fyne.NewSize(1300, 768))
	if b.shell.State().Folded {
		t.Error("still folded at 1300")
	}
}

func TestUndoAndRedo(t *testing.T) {
	b := open(t, nil)
	b.shell.Set(draft.Weight, "70 kg")
	b.window.Canvas().(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutUndo{})
	if got := b.shell.file.session.Get(draft.Weight); got != "79.5 kg" {
		t.Errorf("after undo: %q", got)
	}
	b.press(fyne.KeyZ, controlShift)
	if got := b.shell.file.session.Get(draft.Weight); got != "70 kg" {
		t.Errorf("after redo: %q", got)
	}
}

func TestKeepingAPlan(t *testing.T) {
	b := open(t, nil)
	b.tap("file.keep")
	if got := b.shell.State().Kept; got != "Plan 1, 2 March 2026" {
		t.Fatalf("kept %q; %q", got, b.shell.State().Toast)
	}
	if label, can := b.shell.file.keepLabel(); can {
		t.Errorf("can be kept again as it is: %q", label)
	}
	b.shell.Set(draft.Weight, "79 kg")
	b.tap("file.keep")
	if got := b.shell.State().Kept; got != "Plan 2, 2 March 2026" {
		t.Errorf("after a change: %q", got)
	}
}

func TestAHeldPlanIsNotKeptAndSaysWhy(t *testing.T) {
	b := open(t, draft.Form{draft.Screening(screen.Lithium): draft.AnswerYes})
	if got := b.shell.State().Status; got != "held" {
		t.Fatalf("status %q", got)
	}
	b.tap("file.keep")
	state := b.shell.State()
	if state.Kept != "" || !strings.Contains(state.Toast, "held") {
		t.Errorf("kept %q, said %q", state.Kept, state.Toast)
	}
}

func TestAReferralIsKeptAsOne(t *testing.T) {
	b := open(t, draft.Form{draft.Screening(screen.Type1Diabetes): draft.AnswerYes})
	b.tap("file.keep")
	if got := b.shell.State().Kept; got != "Referred, 2 March 2026" {
		t.Errorf("kept %q", got)
	}
}

func TestAnIncompletePlanSaysWhatIsMissing(t *testing.T) {
	b := open(t, draft.Form{draft.Weight: ""})
	b.tap("file.keep")
	if got := b.shell.State().Toast; !strings.Contains(got, "the weight") {
		t.Errorf("said %q", got)
	}
}

// What was no at the last visit counts as not asked at the next.
func TestANewVisitAsksAgain(t *testing.T) {
	form := complete()
	form[draft.Screening(screen.ThyroidTreated)] = draft.AnswerYes
	form[draft.NextVisit] = "2 March 2026"
	form["scored.scoff"], form[draft.PregnantWeeks], form[draft.WeightBefore] = "0", "12", "61 kg"
	got := newVisit(form, today)
	if got["scored.scoff"] != "" || got[draft.PregnantWeeks] != "" || got[draft.WeightBefore] != "61 kg" {
		t.Error("an old score or week counts as asked, or the weight before was lost")
	}
	if got[draft.Date] != "2 March 2026" || got[draft.NextVisit] != "" {
		t.Errorf("date %q, next visit %q", got[draft.Date], got[draft.NextVisit])
	}
	if got[draft.Screening(screen.Lithium)] != "" || got[draft.Screening(screen.ThyroidTreated)] != draft.AnswerYes {
		t.Error("a no was carried over, or a yes was not")
	}
	if got[draft.Weight] != form[draft.Weight] {
		t.Error("the measurements were not carried over")
	}
}

func TestSavingAHandoutKeepsThePlanFirst(t *testing.T) {
	b := open(t, nil)
	b.shell.SaveHandout("there.pdf", func(err error) {
		if err != nil {
			t.Error(err)
		}
	})
	f := b.file()
	if len(f.saved) != 1 || f.kept.Number != 1 {
		t.Fatalf("papers %v, kept %+v", f.saved, f.kept)
	}
	b.shell.SaveHandout("again.pdf", func(error) {})
	if f.kept.Number != 1 {
		t.Error("the same plan was kept twice")
	}
}

func TestTheLookFollowsTheSettings(t *testing.T) {
	b := newBench(t, &fakeOpener{begun: true})
	if theme.IsDark() {
		t.Error("dark at first")
	}
	b.shell.SetLook(LookDark)
	if !theme.IsDark() {
		t.Error("not dark after it was chosen")
	}
	b.clock.Advance(savePause)
	if b.desk.settings.Look != LookDark {
		t.Error("the look was not saved")
	}
}

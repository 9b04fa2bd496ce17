package ui

import (
	"testing"

	"fyne.io/fyne/v2"
)

func TestThePaletteOpensAClientByKeyboard(t *testing.T) {
	b := open(t, nil)
	b.shell.Go(PlaceClients)
	b.press(fyne.KeyK, control)
	if got := b.focused(); got != "palette.search" {
		t.Fatalf("focus on %q", got)
	}
	b.typing("apple")
	b.key(fyne.KeyReturn)
	if state := b.shell.State(); state.Place != "file" || state.Palette {
		t.Errorf("state %+v", state)
	}
}

func TestThePaletteFindsSectionsAndActions(t *testing.T) {
	b := open(t, nil)
	b.press(fyne.KeyK, control)
	b.typing("meas")
	b.key(fyne.KeyReturn)
	if got := b.shell.State().Section; got != "measures" {
		t.Errorf("section %q", got)
	}
	b.press(fyne.KeyK, control)
	b.typing("dark")
	b.key(fyne.KeyReturn)
	if got := b.shell.currentSettings().Look; got != LookDark {
		t.Errorf("look %q", got)
	}
}

func TestThePaletteLeadsToSafeKeepingAndLocks(t *testing.T) {
	b := open(t, nil)
	b.press(fyne.KeyK, control)
	b.typing("backups")
	b.key(fyne.KeyReturn)
	if b.place() != "practice" || b.focused() != "safety.keys" {
		t.Errorf("place %q, focus on %q", b.place(), b.focused())
	}
	b.press(fyne.KeyK, control)
	b.typing("lock")
	b.key(fyne.KeyReturn)
	if b.place() != "locked" {
		t.Errorf("place %q", b.place())
	}
}

func TestAClientIsDeletedByKeyboardAfterAQuestion(t *testing.T) {
	b := open(t, nil)
	b.press(fyne.KeyK, control)
	b.typing("delete")
	b.key(fyne.KeyReturn)
	if state := b.shell.State(); !state.Asking || state.Place != "clients" {
		t.Fatalf("state %+v", state)
	}
	if len(b.desk.files) != 1 {
		t.Fatal("deleted before the answer")
	}
	b.window.Canvas().FocusNext()
	if got := b.focused(); got != "question.yes" {
		t.Fatalf("focus on %q", got)
	}
	b.key(fyne.KeySpace)
	if len(b.desk.files) != 0 || b.shell.State().Asking {
		t.Errorf("%d files", len(b.desk.files))
	}
}

func TestThePaletteMovesByArrowsAndClosesByEscape(t *testing.T) {
	b := open(t, nil)
	b.press(fyne.KeyK, control)
	p := b.shell.palette
	b.key(fyne.KeyDown)
	if got := p.list.Cursor(); got != 1 {
		t.Errorf("cursor at %d", got)
	}
	b.key(fyne.KeyEscape)
	if b.shell.State().Palette {
		t.Error("still open")
	}
}

func TestMatching(t *testing.T) {
	for _, c := range []struct {
		title, query string
		want         bool
	}{
		{"Show or hide the running sheet", "sheet", true},
		{"Show or hide the running sheet", "run sh", true},
		{"Show or hide the running sheet", "heet", false},
		{"Undo", "", true},
		{"Undo", "redo", false},
	} {
		if got := matches(c.title, c.query); got != c.want {
			t.Errorf("%q with %q: %v", c.title, c.query, got)
		}
	}
}

func TestEveryKeyOfTheHelpIsBoundOnce(t *testing.T) {
	b := open(t, nil)
	seen := map[string]bool{}
	for _, bound := range b.shell.bindings() {
		name := bound.shortcut.ShortcutName()
		if seen[name] {
			t.Errorf("%s is bound twice", name)
		}
		seen[name] = true
	}
}

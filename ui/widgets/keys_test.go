package widgets

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

func TestKeysOfTheWindowReachItFromEveryWidget(t *testing.T) {
	test.NewTempApp(t)
	var got []fyne.KeyName
	HandleKeys(func(key fyne.KeyName) bool {
		got = append(got, key)
		return key == fyne.KeyF6
	})
	defer HandleKeys(nil)
	key := &fyne.KeyEvent{Name: fyne.KeyF6}
	field := NewField("Weight", "")
	NewQuietButton("Go", nil).TypedKey(key)
	field.entry.TypedKey(key)
	NewList(func() int { return 0 }, nil, nil).TypedKey(key)
	if want := []fyne.KeyName{fyne.KeyF6, fyne.KeyF6, fyne.KeyF6}; !slices.Equal(got, want) {
		t.Errorf("the window got %v, want %v", got, want)
	}
}

func TestUndoInAnEntryGoesToTheFormFirst(t *testing.T) {
	test.NewTempApp(t)
	var got []bool
	taken := true
	HandleUndo(func(again bool) bool {
		got = append(got, again)
		return taken
	})
	defer HandleUndo(nil)
	field := NewField("Weight", "")
	test.Type(field.entry, "72")
	field.entry.TypedShortcut(&fyne.ShortcutUndo{})
	field.entry.TypedShortcut(&fyne.ShortcutRedo{})
	if field.Text() != "72" || !slices.Equal(got, []bool{false, true}) {
		t.Errorf("text %q after %v", field.Text(), got)
	}
	taken = false
	field.entry.TypedShortcut(&fyne.ShortcutUndo{})
	if field.Text() == "72" {
		t.Error("an undo that nobody took did not reach the entry")
	}
}

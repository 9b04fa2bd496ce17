package widgets

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// What is typed stays as typed wherever the lines happen to wrap.
func TestAnAreaKeepsEveryBlank(t *testing.T) {
	test.NewTempApp(t)
	want := "A quiet week " + strings.Repeat("and then a bus ", 12)
	for width := float32(240); width < 420; width += 29 {
		area := NewArea("Notes", "", 4)
		window := test.NewTempWindow(t, area)
		window.Resize(fyne.NewSize(width, 300))
		window.Canvas().Focus(area.entry)
		for _, r := range want {
			area.entry.TypedRune(r)
		}
		if got := area.Text(); got != want {
			t.Fatalf("%v wide: %q", width, got)
		}
		for range len(want) {
			area.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyBackspace})
		}
		if got := area.Text(); got != "" {
			t.Fatalf("%v wide, taken back: %q", width, got)
		}
	}
}

func TestTypingOverASelection(t *testing.T) {
	test.NewTempApp(t)
	field := NewField("Weight", "")
	window := test.NewTempWindow(t, field)
	window.Canvas().Focus(field.entry)
	test.Type(field.entry, "79.5 kg")
	field.entry.TypedShortcut(&fyne.ShortcutSelectAll{})
	test.Type(field.entry, "78 kg")
	if got := field.Text(); got != "78 kg" {
		t.Errorf("text %q", got)
	}
}

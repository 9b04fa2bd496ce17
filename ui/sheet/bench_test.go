package sheet

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets/widgettest"
)

// BenchmarkKeystroke is what a letter costs with the sheet shown: the plan worked
// out, and all of the sheet brought up to date and laid out.
func BenchmarkKeystroke(b *testing.B) {
	widgettest.Program(b, theme.Light)
	s := opened(answers())
	screen := New(s)
	widgettest.Window(b, screen.Object(), Width, 700)
	for i := 0; b.Loop(); i++ {
		s.Set(draft.Weight, []string{"78 kg", "79 kg"}[i%2])
	}
}

// BenchmarkKeystrokeOpened is the same with a derivation open.
func BenchmarkKeystrokeOpened(b *testing.B) {
	widgettest.Program(b, theme.Light)
	s := opened(answers())
	screen := New(s)
	widgettest.Window(b, screen.Object(), Width, 700)
	test.Tap(screen.body.target.FocusTarget().(fyne.Tappable))
	for i := 0; b.Loop(); i++ {
		s.Set(draft.Weight, []string{"78 kg", "79 kg"}[i%2])
	}
}

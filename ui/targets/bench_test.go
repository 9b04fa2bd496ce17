package targets

import (
	"testing"

	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets/widgettest"
)

// BenchmarkKeystroke is what a letter costs with the section shown: the plan
// worked out, and all of the section brought up to date and laid out.
func BenchmarkKeystroke(b *testing.B) {
	widgettest.Program(b, theme.Light)
	s := opened(answers())
	screen := New(s)
	widgettest.Window(b, screen.Object(), widgettest.LaptopWidth, 700)
	for i := 0; b.Loop(); i++ {
		s.Set(draft.Weight, []string{"78 kg", "79 kg"}[i%2])
	}
}

// BenchmarkKeystrokeCompared is the same with two goals kept beside the plan's.
func BenchmarkKeystrokeCompared(b *testing.B) {
	widgettest.Program(b, theme.Light)
	s, screen := comparing()
	widgettest.Window(b, screen.Object(), widgettest.LaptopWidth, 700)
	for i := 0; b.Loop(); i++ {
		s.Set(draft.Weight, []string{"78 kg", "79 kg"}[i%2])
	}
}

// BenchmarkSessionAlone is the part of it that is the plan.
func BenchmarkSessionAlone(b *testing.B) {
	s := opened(answers())
	for i := 0; b.Loop(); i++ {
		s.Set(draft.Weight, []string{"78 kg", "79 kg"}[i%2])
	}
}

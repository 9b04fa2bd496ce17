package sheet

import (
	"testing"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets/widgettest"
)

// What the sheet looks like, in words and places.
func TestOutlines(t *testing.T) {
	for _, name := range []string{"normal", "held", "referred", "waiting"} {
		widgettest.Program(t, theme.Light)
		screen := New(opened(galleryForms()[name]))
		widgettest.AssertOutline(t, widgettest.Window(t, screen.Object(), Width, 700), name)
	}
}

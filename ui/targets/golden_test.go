package targets

import (
	"testing"

	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets/widgettest"
)

// What the section looks like, in words and places: before anything is told, where
// a referral comes first, and with everything told.
func TestOutlines(t *testing.T) {
	for name, form := range map[string]draft.Form{
		"empty": galleryForms()["empty"], "referred": galleryForms()["referred"], "unsafe": galleryForms()["held"],
	} {
		widgettest.Program(t, theme.Light)
		screen := New(opened(form))
		widgettest.AssertOutline(t, widgettest.Window(t, screen.Object(), widgettest.LaptopWidth, 640), name)
	}
	widgettest.Program(t, theme.Light)
	_, screen := comparing()
	widgettest.AssertOutline(t, widgettest.Window(t, screen.Object(), widgettest.LaptopWidth, 640), "compared")
}

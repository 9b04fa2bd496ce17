package intake

import (
	"testing"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets/widgettest"
)

// What the section looks like, in words and places: as it is seen first, and
// with everything told and open.
func TestOutlines(t *testing.T) {
	t.Run("first", func(t *testing.T) {
		widgettest.Program(t, theme.Light)
		s := New(draft.NewSession(draft.Form{}, unit.Style{}))
		widgettest.AssertOutline(t, widgettest.Window(t, s.Object(), widgettest.LaptopWidth, 640), "first")
	})
	t.Run("whole", func(t *testing.T) {
		widgettest.Program(t, theme.Light)
		s := New(draft.NewSession(told(), unit.Style{}))
		window := widgettest.Window(t, s.Object(), widgettest.LaptopWidth, 640)
		s.onFoldAll()
		folded := widgettest.Outline(window)
		s.onFoldAll()
		widgettest.AssertOutline(t, window, "whole")
		if folded == widgettest.Outline(window) {
			t.Error("folding changes nothing")
		}
	})
}

package intake

import (
	"fmt"
	"testing"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets/widgettest"
)

// TestGallery writes pictures of the section to the folder that
// HANDBREADTH_GALLERY names: as it is seen first, folded, and whole.
func TestGallery(t *testing.T) {
	widgettest.NeedGallery(t)
	us := unit.Style{System: unit.USCustomary}
	whole, folded := func(s *Screen) { s.onFoldAll(); s.onFoldAll() }, func(s *Screen) { s.onFoldAll() }
	first := func(*Screen) {}
	for _, c := range []struct {
		name          string
		form          draft.Form
		style         unit.Style
		do            func(*Screen)
		width, height float32
	}{
		{"first", draft.Form{}, unit.Style{}, first, widgettest.LaptopWidth, 640},
		{"first-wide", filled(), unit.Style{}, first, widgettest.DesktopWidth, 950},
		{"folded", told(), us, folded, widgettest.LaptopWidth, 640},
		{"filled", filled(), unit.Style{}, first, widgettest.LaptopWidth, 1500},
		{"whole", told(), unit.Style{}, whole, widgettest.LaptopWidth, 3700},
		{"whole-narrow", told(), us, whole, widgettest.NarrowWidth, 4000},
		{"problems", withProblems(), unit.Style{}, whole, widgettest.LaptopWidth, 3700},
	} {
		for look, variant := range widgettest.Looks() {
			if look == "dark" && c.width == widgettest.NarrowWidth {
				continue
			}
			t.Run(c.name+look, func(t *testing.T) { keep(t, variant, c.form, c.style, c.do, c.width, c.height, c.name+"-"+look) })
		}
	}
}

func keep(t *testing.T, variant theme.Variant, form draft.Form, style unit.Style, do func(*Screen), width, height float32, name string) {
	widgettest.Program(t, variant)
	s := New(draft.NewSession(form, style))
	window := widgettest.Window(t, s.Object(), width, height)
	do(s)
	window.Canvas().Focus(s.folds[3].FocusTarget())
	s.page.Scroll().ScrollToTop()
	widgettest.Picture(t, window, fmt.Sprintf("intake-%s-%.0f", name, width))
}

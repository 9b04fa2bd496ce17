package screening

import (
	"fmt"
	"testing"

	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets/widgettest"
)

// TestGallery writes pictures of the section in both looks to the folder that
// HANDBREADTH_GALLERY names.
func TestGallery(t *testing.T) {
	widgettest.NeedGallery(t)
	some := with(invented(), "screening.lithium", "yes", "screening.warfarin", "yes", "screening.gallstones", "no", "client.born", "1950-02-01")
	for _, c := range []struct {
		name          string
		form          draft.Form
		width, height float32
	}{
		{"first", draft.Form{}, widgettest.LaptopWidth, 640},
		{"some", some, widgettest.LaptopWidth, 2600},
		{"early", draft.Form{"screening.suicidal_thoughts": "yes", "screening.lithium": "yes"}, widgettest.NarrowWidth, 2600},
		{"held", with(askedOf(screen.Lithium, screen.Kidney, screen.GLP1), "hold_reasons.kidney_disease.text", "Agreed with the renal dietitian.",
			"hold_reasons.kidney_disease.by", "R. Sample", "hold_reasons.kidney_disease.date", "2026-03-02"), widgettest.LaptopWidth, 3000},
		{"referred", askedOf(screen.Pregnant, screen.Warfarin), widgettest.LaptopWidth, 2600},
		{"scored", scored(), widgettest.LaptopWidth, 3900},
		{"scored-wide", scored(), widgettest.DesktopWidth, 950},
		{"scored-narrow", scored(), widgettest.NarrowWidth, 3900},
	} {
		for look, variant := range widgettest.Looks() {
			t.Run(c.name+look, func(t *testing.T) { keep(t, variant, c.form, c.width, c.height, c.name+"-"+look) })
		}
	}
}

func keep(t *testing.T, variant theme.Variant, form draft.Form, width, height float32, name string) {
	widgettest.Program(t, variant)
	s := New(draft.NewSession(form, unit.Style{}))
	window := widgettest.Window(t, s.Object(), width, height)
	for _, c := range s.cards {
		c.fold.SetOpen(len(form) == len(scored()))
		c.show()
	}
	s.settle()
	if width == widgettest.DesktopWidth {
		s.page.Scroll().ScrollToBottom()
	}
	widgettest.Picture(t, window, fmt.Sprintf("screening-%s-%.0f", name, width))
}

package screening

import (
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// inWindow shows an object in a window without a display.
func inWindow(t *testing.T, object fyne.CanvasObject, width, height float32) fyne.Window {
	t.Helper()
	window := test.NewTempWindow(t, container.NewStack(canvas.NewRectangle(theme.Colour(theme.Paper)), object))
	window.SetPadded(false)
	window.Resize(fyne.NewSize(width, height))
	settle(window.Content())
	return window
}

// program starts a test program in a look.
func program(t *testing.T, variant theme.Variant) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(theme.New(variant, 1))
	t.Cleanup(widgets.ResetNames)
}

// settle lays out until heights that follow widths have come to rest, as the
// real driver does from frame to frame.
func settle(root fyne.CanvasObject) {
	for range 4 {
		lay(root)
	}
}

func lay(object fyne.CanvasObject) {
	switch o := object.(type) {
	case *fyne.Container:
		if o.Layout != nil {
			o.Layout.Layout(o.Objects, o.Size())
		}
		for _, child := range o.Objects {
			lay(child)
		}
	case fyne.Widget:
		r := test.WidgetRenderer(o)
		r.Layout(o.Size())
		for _, child := range r.Objects() {
			lay(child)
		}
	}
}

// keepPicture writes what a window shows.
func keepPicture(t *testing.T, window fyne.Window, dir, name string) {
	t.Helper()
	settle(window.Content())
	file, err := os.Create(filepath.Join(dir, name+".png"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if err := png.Encode(file, window.Canvas().Capture()); err != nil {
		t.Fatal(err)
	}
}

// TestGallery writes pictures of the section in both looks to the folder that
// HANDBREADTH_GALLERY names.
func TestGallery(t *testing.T) {
	dir := os.Getenv("HANDBREADTH_GALLERY")
	if dir == "" {
		t.Skip("set HANDBREADTH_GALLERY to a folder to get the pictures")
	}
	some := with(invented(), "screening.lithium", "yes", "screening.warfarin", "yes", "screening.gallstones", "no", "client.born", "1950-02-01")
	forms := map[string]draft.Form{
		"empty": {}, "early": {"screening.suicidal_thoughts": "yes", "screening.lithium": "yes"}, "some": some,
		"held": with(askedOf(screen.Lithium, screen.Kidney, screen.GLP1), "hold_reasons.kidney_disease.text", "Agreed with the renal dietitian.",
			"hold_reasons.kidney_disease.by", "R. Sample", "hold_reasons.kidney_disease.date", "2026-03-02"),
		"referred": askedOf(screen.Pregnant, screen.Warfarin), "open": askedOf(),
	}
	for look, variant := range map[string]theme.Variant{"light": theme.Light, "dark": theme.Dark} {
		for name, form := range forms {
			for size, width := range map[string]float32{"958": 958, "700": 700} {
				t.Run(name+size+look, func(t *testing.T) {
					program(t, variant)
					s := New(draft.NewSession(form, unit.Style{}))
					window := inWindow(t, s.Object(), width, 2600)
					if name == "some" {
						press(t, "screening.all_no")
					}
					keepPicture(t, window, dir, "screening-"+name+"-"+size+"-"+look)
				})
			}
		}
	}
}

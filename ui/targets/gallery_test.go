package targets

import (
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"handbreadth/ui/theme"
)

// inWindow puts the screen into a window without a display.
func inWindow(t *testing.T, v theme.Variant, object fyne.CanvasObject, size fyne.Size) fyne.Window {
	t.Helper()
	app := test.NewTempApp(t)
	app.Settings().SetTheme(theme.New(v, 1))
	w := test.NewTempWindow(t, container.NewStack(canvas.NewRectangle(theme.Colour(theme.Paper)), object))
	w.SetPadded(false)
	w.Resize(size)
	return w
}

// keepPicture writes what the window shows into the folder that is named by
// HANDBREADTH_GALLERY, to be looked at.
func keepPicture(t *testing.T, w fyne.Window, name string) {
	t.Helper()
	file, err := os.Create(filepath.Join(os.Getenv("HANDBREADTH_GALLERY"), name+".png"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if err := png.Encode(file, w.Canvas().Capture()); err != nil {
		t.Fatal(err)
	}
}

func TestGallery(t *testing.T) {
	if os.Getenv("HANDBREADTH_GALLERY") == "" {
		t.Skip("HANDBREADTH_GALLERY names no folder")
	}
	for name, form := range galleryForms() {
		for look, variant := range map[string]theme.Variant{"light": theme.Light, "dark": theme.Dark} {
			for wide, size := range map[string]fyne.Size{"958": fyne.NewSize(958, 1000), "700": fyne.NewSize(700, 1300)} {
				test.NewTempApp(t).Settings().SetTheme(theme.New(variant, 1))
				screen := New(opened(form))
				w := inWindow(t, variant, screen.Object(), size)
				keepPicture(t, w, "targets-"+name+"-"+wide+"-"+look)
			}
		}
	}
}

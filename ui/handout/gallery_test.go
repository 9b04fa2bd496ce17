package handout

import (
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"handbreadth/ui/task"
	"handbreadth/ui/theme"
)

// keepPicture writes what the window shows into the folder that is named by
// HANDBREADTH_GALLERY, to be looked at.
func keepPicture(t *testing.T, w fyne.Window, name string) {
	t.Helper()
	fillGaps(w)
	file, err := os.Create(filepath.Join(os.Getenv("HANDBREADTH_GALLERY"), name+".png"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if err := png.Encode(file, w.Canvas().Capture()); err != nil {
		t.Fatal(err)
	}
}

// fillGaps gives rectangles without a colour a clear one: the painter without a
// display cannot paint none.
func fillGaps(w fyne.Window) {
	for _, object := range test.LaidOutObjects(w.Canvas().Content()) {
		if r, ok := object.(*canvas.Rectangle); ok && r.FillColor == nil {
			r.FillColor = color.Transparent
		}
	}
}

func TestGallery(t *testing.T) {
	if os.Getenv("HANDBREADTH_GALLERY") == "" {
		t.Skip("HANDBREADTH_GALLERY names no folder")
	}
	for name, form := range galleryForms() {
		for look, variant := range map[string]theme.Variant{"light": theme.Light, "dark": theme.Dark} {
			for wide, size := range map[string]fyne.Size{"958": fyne.NewSize(958, 1000), "700": fyne.NewSize(700, 1300)} {
				d := sitIn(t, form, task.Inline{}, variant, size)
				if name == "open" {
					d.screen.onSave()
				}
				keepPicture(t, d.window, "handout-"+name+"-"+wide+"-"+look)
			}
		}
	}
}

func TestGalleryOfTrouble(t *testing.T) {
	if os.Getenv("HANDBREADTH_GALLERY") == "" {
		t.Skip("HANDBREADTH_GALLERY names no folder")
	}
	slow := &slowRunner{}
	d := sit(t, answers(), slow)
	keepPicture(t, d.window, "handout-busy")
	d.papers.err = errDisk
	slow.next(t)
	d.screen.onSave()
	slow.next(t)
	keepPicture(t, d.window, "handout-failed")
}

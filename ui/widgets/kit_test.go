package widgets

import (
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/ui/theme"
)

// open shows an object in a window of a test program in the light look.
func open(t *testing.T, object fyne.CanvasObject, width, height float32) fyne.Window {
	t.Helper()
	window := test.NewTempWindow(t, object)
	window.SetPadded(false)
	window.Resize(fyne.NewSize(width, height))
	settle(object)
	return window
}

// program starts a test program in a look.
func program(t *testing.T, variant theme.Variant) fyne.App {
	t.Helper()
	app := test.NewTempApp(t)
	app.Settings().SetTheme(theme.New(variant, 1))
	t.Cleanup(ResetNames)
	return app
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

// press sends a key to a focusable.
func press(target fyne.Focusable, keys ...fyne.KeyName) {
	for _, key := range keys {
		target.TypedKey(&fyne.KeyEvent{Name: key})
	}
}

// savePicture writes what a window shows.
func savePicture(t *testing.T, window fyne.Window, dir, name string) {
	t.Helper()
	file, err := os.Create(filepath.Join(dir, name))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if err := png.Encode(file, window.Canvas().Capture()); err != nil {
		t.Fatal(err)
	}
}

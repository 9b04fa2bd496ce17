// Package widgettest helps the tests of screens: it starts a program without a
// display, lays a screen out as the real driver does, presses buttons by their
// names and keeps pictures. It is imported by tests only.
//
//	widgettest.Program(t, theme.Light)
//	window := widgettest.Window(t, screen.Object(), 958, 700)
//	widgettest.Press(t, "targets.take")
//	if got := widgettest.Focused(window.Canvas()); got != "targets.goal.by" { ... }
package widgettest

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
	"handbreadth/ui/widgets"
)

// The widths that the middle of the window has beside the running sheet.
const (
	LaptopWidth  = 958  // of a window of 1366 x 768
	DesktopWidth = 1512 // of a window of 1920 x 1080
	NarrowWidth  = 700
)

// Program starts a test program in a look. Names are forgotten at its end.
func Program(t testing.TB, variant theme.Variant) fyne.App {
	t.Helper()
	app := test.NewTempApp(t)
	app.Settings().SetTheme(theme.New(variant, 1))
	t.Cleanup(widgets.ResetNames)
	return app
}

// Window shows an object on paper in a window without a display.
func Window(t testing.TB, object fyne.CanvasObject, width, height float32) fyne.Window {
	t.Helper()
	window := test.NewTempWindow(t, container.NewStack(canvas.NewRectangle(theme.Colour(theme.Paper)), object))
	window.SetPadded(false)
	window.Resize(fyne.NewSize(width, height))
	Settle(window)
	return window
}

// Settle lays out until heights that follow widths have come to rest, as the
// real driver does from frame to frame.
func Settle(window fyne.Window) {
	const frames = 4
	for range frames {
		lay(window.Content())
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

// Looks are the looks that pictures are kept in, by the end of their names.
func Looks() map[string]theme.Variant {
	return map[string]theme.Variant{"light": theme.Light, "dark": theme.Dark}
}

// galleryFolder names the variable that names the folder for pictures.
const galleryFolder = "HANDBREADTH_GALLERY"

// NeedGallery skips a test where no folder for pictures is named.
func NeedGallery(t testing.TB) {
	t.Helper()
	if os.Getenv(galleryFolder) == "" {
		t.Skip("set " + galleryFolder + " to a folder to get the pictures")
	}
}

// Picture writes what a window shows into the folder for pictures.
func Picture(t testing.TB, window fyne.Window, name string) {
	t.Helper()
	Settle(window)
	file, err := os.Create(filepath.Join(os.Getenv(galleryFolder), name+".png"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if err := png.Encode(file, window.Canvas().Capture()); err != nil {
		t.Fatal(err)
	}
}

// Press clicks a button by its name; it must be there to be seen.
func Press(t testing.TB, name string) {
	t.Helper()
	button, is := widgets.Named()[name].(*widgets.Button)
	if !is || !button.Visible() {
		t.Fatalf("no button %s", name)
	}
	button.Tapped(&fyne.PointEvent{})
}

// Focused returns the name of what has the focus, "" where it has none.
func Focused(c fyne.Canvas) string {
	for name, object := range widgets.Named() {
		target, is := object.(fyne.Focusable)
		if f, has := object.(widgets.Focuser); has {
			target, is = f.FocusTarget(), true
		}
		if is && target == c.Focused() {
			return name
		}
	}
	return ""
}

// Walk presses Tab from where nothing has the focus until it comes round again,
// and returns the names of what had it; "" stands for what has no name.
func Walk(c fyne.Canvas) []string {
	c.Unfocus()
	c.FocusNext()
	first, names := c.Focused(), []string(nil)
	const most = 1000
	for focused := first; focused != nil && len(names) < most; focused = c.Focused() {
		if len(names) > 0 && focused == first {
			break
		}
		names = append(names, Focused(c))
		c.FocusNext()
	}
	return names
}

// Key sends keys to what has the focus.
func Key(c fyne.Canvas, keys ...fyne.KeyName) {
	for _, key := range keys {
		c.Focused().TypedKey(&fyne.KeyEvent{Name: key})
	}
}

package widgettest

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"handbreadth/ui/widgets"
)

// goldenNew names the variable that lets outlines be written anew.
const goldenNew = "HANDBREADTH_GOLDEN"

// Outline lists what can be seen in a window from its top: each text and each
// named control with its place, one a line. Colours are left out, so that it
// changes with layout and words only.
func Outline(window fyne.Window) string { return OutlineOf(window.Content()) }

// OutlineOf lists what can be seen in an object, such as a dialog over a window.
func OutlineOf(object fyne.CanvasObject) string {
	names := map[fyne.CanvasObject]string{}
	for name, object := range widgets.Named() {
		names[object] = name
	}
	var out strings.Builder
	outline(&out, object, fyne.NewPos(0, 0), names)
	return out.String()
}

func outline(out *strings.Builder, object fyne.CanvasObject, at fyne.Position, names map[fyne.CanvasObject]string) {
	if !object.Visible() {
		return
	}
	line := func(what string) {
		whole := func(value float32) int { return int(math.Round(float64(value))) }
		size := object.Size()
		fmt.Fprintf(out, "%4d %5d  %4d x %-4d %s\n", whole(at.X), whole(at.Y), whole(size.Width), whole(size.Height), what)
	}
	if name, named := names[object]; named {
		line("[" + name + "]")
	}
	switch o := object.(type) {
	case *canvas.Text:
		if strings.TrimSpace(o.Text) != "" {
			line(o.Text)
		}
	case *fyne.Container:
		for _, child := range o.Objects {
			outline(out, child, at.Add(child.Position()), names)
		}
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(o).Objects() {
			outline(out, child, at.Add(child.Position()), names)
		}
	}
}

// AssertOutline compares the outline of a window with the file that is kept in
// testdata, and says which line differs first. With HANDBREADTH_GOLDEN set the
// file is written anew, to be read before it is kept.
func AssertOutline(t testing.TB, window fyne.Window, name string) {
	t.Helper()
	Settle(window)
	path := filepath.Join("testdata", name+".txt")
	got := Outline(window)
	if os.Getenv(goldenNew) != "" {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	kept, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	want := strings.ReplaceAll(string(kept), "\r\n", "\n")
	if got == want {
		return
	}
	gotLines, wantLines := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range min(len(gotLines), len(wantLines)) {
		if gotLines[i] != wantLines[i] {
			t.Fatalf("%s, line %d:\n%s\nwas\n%s", path, i+1, gotLines[i], wantLines[i])
		}
	}
	t.Fatalf("%s: %d lines, was %d", path, len(gotLines), len(wantLines))
}

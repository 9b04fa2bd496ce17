package icons

import (
	"bytes"
	"flag"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/fyne-io/oksvg"
	"github.com/srwiley/rasterx"
)

var update = flag.Bool("update", false, "write the program's icon anew")

const appIcon = "../icon.png"

// raster paints an icon with the toolkit's own SVG reader, black on white.
func raster(t *testing.T, svg []byte, px int) *image.RGBA {
	t.Helper()
	icon, err := oksvg.ReadIconStream(bytes.NewReader(svg), oksvg.StrictErrorMode)
	if err != nil {
		t.Fatal(err)
	}
	icon.SetTarget(0, 0, float64(px), float64(px))
	img := image.NewRGBA(image.Rect(0, 0, px, px))
	draw.Draw(img, img.Rect, image.White, image.Point{}, draw.Src)
	icon.Draw(rasterx.NewDasher(px, px, rasterx.NewScannerGV(px, px, img, img.Rect)), 1)
	return img
}

// inked is the share of the picture that is covered, and whether its edge is.
func inked(img *image.RGBA) (share float64, edge bool) {
	px := img.Rect.Dx()
	for y := range px {
		for x := range px {
			dark := 1 - float64(img.RGBAAt(x, y).R)/255
			share += dark / float64(px*px)
			if dark > 0.5 && (x == 0 || y == 0 || x == px-1 || y == px-1) {
				edge = true
			}
		}
	}
	return share, edge
}

// TestIconsKeepTheirWeight paints every icon small and large: the same share
// is covered, so the line scales with the picture, and nothing is cut off.
func TestIconsKeepTheirWeight(t *testing.T) {
	for _, n := range Names() {
		small, _ := inked(raster(t, Icon(n), 24))
		large, edge := inked(raster(t, Icon(n), 240))
		if large < 0.05 || large > 0.45 {
			t.Errorf("%s covers %.2f of its square", n, large)
		}
		if r := small / large; r < 0.85 || r > 1.15 {
			t.Errorf("%s covers %.3f at 24 pixels but %.3f at 240", n, small, large)
		}
		if edge {
			t.Errorf("%s touches the edge", n)
		}
	}
}

func TestIconsAreOneFilledPath(t *testing.T) {
	for _, n := range Names() {
		svg := Icon(n)
		if c := bytes.Count(svg, []byte("<path")); c != 1 {
			t.Errorf("%s has %d paths, want 1: a theme recolours one fill", n, c)
		}
		for _, bad := range []string{"stroke", "style", "currentColor", "none", "NaN"} {
			if bytes.Contains(svg, []byte(bad)) {
				t.Errorf("%s contains %q", n, bad)
			}
		}
	}
	if Icon("no such icon") != nil {
		t.Error("an unknown name gives a picture")
	}
}

// TestIconsDiffer compares all pairs at 24 pixels.
func TestIconsDiffer(t *testing.T) {
	names := Names()
	for i, a := range names {
		for _, b := range names[i+1:] {
			if bytes.Equal(raster(t, Icon(a), 24).Pix, raster(t, Icon(b), 24).Pix) {
				t.Errorf("%s and %s look the same", a, b)
			}
		}
	}
}

// TestAppIcon compares the committed picture with what the code paints. Run
// with -update after changing the drawing.
func TestAppIcon(t *testing.T) {
	want := App(512)
	if *update {
		save(t, want, appIcon)
	}
	data, err := os.ReadFile(appIcon)
	if err != nil {
		t.Fatal(err)
	}
	got, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	if got.Bounds() != want.Bounds() {
		t.Fatalf("icon.png is %v, want %v", got.Bounds(), want.Bounds())
	}
	const rounding = 2 // of 255: anti-aliasing may differ between machines
	for y := range 512 {
		for x := range 512 {
			if apart(got.At(x, y), want.At(x, y)) > rounding {
				t.Fatalf("icon.png differs at %d,%d: run go test -run TestAppIcon -update", x, y)
			}
		}
	}
}

// apart is the greatest difference of two colours in any channel, of 255.
func apart(a, b color.Color) int {
	r1, g1, b1, a1 := a.RGBA()
	r2, g2, b2, a2 := b.RGBA()
	worst := 0
	for _, d := range []int{int(r1) - int(r2), int(g1) - int(g2), int(b1) - int(b2), int(a1) - int(a2)} {
		worst = max(worst, d, -d)
	}
	return worst >> 8
}

// TestGallery writes a sheet of all icons to the folder HANDBREADTH_GALLERY.
func TestGallery(t *testing.T) {
	dir := os.Getenv("HANDBREADTH_GALLERY")
	if dir == "" {
		t.Skip("set HANDBREADTH_GALLERY to a folder to get the sheet")
	}
	sheet := image.NewRGBA(image.Rect(0, 0, 10*110, 3*130))
	draw.Draw(sheet, sheet.Rect, image.White, image.Point{}, draw.Src)
	for i, n := range Names() {
		at := image.Pt(i%10*110+5, i/10*130+5)
		draw.Draw(sheet, image.Rect(0, 0, 72, 72).Add(at), raster(t, Icon(n), 72), image.Point{}, draw.Src)
		draw.Draw(sheet, image.Rect(0, 0, 24, 24).Add(at.Add(image.Pt(78, 48))), raster(t, Icon(n), 24), image.Point{}, draw.Src)
	}
	save(t, sheet, filepath.Join(dir, "icons.png"))
	save(t, App(64), filepath.Join(dir, "app-64.png"))
	save(t, App(32), filepath.Join(dir, "app-32.png"))
}

func save(t *testing.T, img image.Image, name string) {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

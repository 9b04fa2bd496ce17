package hand

import (
	"bytes"
	"fmt"
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

var (
	light = Palette{Ink: "#22302E", Wash: "#BFD3CB", Paper: "#FFFFFF"}
	dark  = Palette{Ink: "#E8E4DA", Wash: "#3C5B53", Paper: "#1D2A27"}
	black = Palette{Ink: "#000000", Wash: "#CFCFCF", Paper: "#FFFFFF"}
)

// raster paints a picture as the screen does: with the toolkit's own SVG
// reader, onto a ground.
func raster(svg []byte, ground color.Color) (*image.RGBA, error) {
	icon, err := oksvg.ReadIconStream(bytes.NewReader(svg), oksvg.StrictErrorMode)
	if err != nil {
		return nil, err
	}
	w, h := size(svg)
	icon.SetTarget(0, 0, float64(w), float64(h))
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.Draw(img, img.Bounds(), image.NewUniform(ground), image.Point{}, draw.Src)
	icon.Draw(rasterx.NewDasher(w, h, rasterx.NewScannerGV(w, h, img, img.Bounds())), 1)
	return img, nil
}

// size reads the width and height attributes.
func size(svg []byte) (w, h int) {
	var fw, fh float64
	at := bytes.Index(svg, []byte(" width="))
	if _, err := fmt.Sscanf(string(svg[at:]), ` width="%f" height="%f"`, &fw, &fh); err != nil {
		panic(err)
	}
	return int(fw + 0.5), int(fh + 0.5)
}

func hex(s string) color.RGBA {
	c := color.RGBA{A: 255}
	if _, err := fmt.Sscanf(s, "#%02X%02X%02X", &c.R, &c.G, &c.B); err != nil {
		panic(err)
	}
	return c
}

// TestGallery writes contact sheets to the folder HANDBREADTH_GALLERY: each
// measure small and large, on light, dark, and black on white.
func TestGallery(t *testing.T) {
	dir := os.Getenv("HANDBREADTH_GALLERY")
	if dir == "" {
		t.Skip("set HANDBREADTH_GALLERY to a folder to get the contact sheets")
	}
	for _, m := range Measures() {
		big, err := raster(SVG(Draw(m, Reference(), Options{}), light, 900), hex(light.Paper))
		if err != nil {
			t.Fatal(err)
		}
		save(t, big, filepath.Join(dir, fmt.Sprintf("big-%d.png", m)))
	}
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

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
	save(t, contact(t), filepath.Join(dir, "contact.png"))
	save(t, unlabelled(t), filepath.Join(dir, "unlabelled.png"))
	save(t, hands(t), filepath.Join(dir, "hands.png"))
	for _, m := range Measures() {
		for i, opt := range variants {
			img := picture(t, m, opt, light, 900)
			save(t, img, filepath.Join(dir, fmt.Sprintf("big-%d-%d.png", m, i)))
		}
	}
}

// unlabelled shows each measure as a stranger would be asked about it: numbered by
// its place only, large with food, then bare, half and small in black.
func unlabelled(t *testing.T) image.Image {
	const cell = 300
	rows := []struct {
		opt Options
		px  float64
		p   Palette
	}{
		{Options{WithFood: true}, 280, light},
		{Options{}, 280, light},
		{Options{Half: true, WithFood: true}, 280, light},
		{Options{}, 64, black},
		{Options{}, 32, black},
	}
	sheet := image.NewRGBA(image.Rect(0, 0, 4*cell, 3*cell+220))
	draw.Draw(sheet, sheet.Bounds(), image.White, image.Point{}, draw.Src)
	y := 0
	for _, row := range rows {
		high := int(row.px) + 20
		for i, m := range Measures() {
			img := picture(t, m, row.opt, row.p, row.px)
			at := image.Pt(i*cell+(cell-img.Bounds().Dx())/2, y+(high-img.Bounds().Dy())/2)
			draw.Draw(sheet, img.Bounds().Add(at), img, image.Point{}, draw.Src)
		}
		y += high
	}
	return sheet
}

// variants are the ways in which one measure is shown.
var variants = []Options{{}, {Half: true}, {WithFood: true}, {Half: true, WithFood: true}}

func picture(t *testing.T, m Measure, opt Options, p Palette, px float64) *image.RGBA {
	t.Helper()
	opt.Detail = max(opt.Detail, DetailFor(px))
	img, err := raster(SVG(Draw(m, Reference(), opt), p, px), hex(p.Paper))
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// contact lays out all variants at 24, 32 and 64 pixels and at 120 mm (454
// pixels at 96 dots an inch), one band a palette.
func contact(t *testing.T) image.Image {
	sizes := []int{24, 32, 64, 454}
	cell := 470
	band := 24 + 40 + 80 + cell*2 + 40
	sheet := image.NewRGBA(image.Rect(0, 0, 8*cell, 3*band))
	for b, p := range []Palette{light, dark, black} {
		ground := image.Rect(0, b*band, sheet.Bounds().Dx(), (b+1)*band)
		draw.Draw(sheet, ground, image.NewUniform(hex(p.Paper)), image.Point{}, draw.Src)
		for i := range 16 {
			m, opt := Measures()[i%4], variants[i/4]
			y := b*band + 8
			for _, px := range sizes {
				img := picture(t, m, opt, p, float64(px))
				x, top := 10+i*(px+12), y
				if px > 100 {
					x, top = (i%8)*cell, y+(i/8)*cell
				}
				to := img.Bounds().Add(image.Pt(x+(px-img.Bounds().Dx())/2, top+(px-img.Bounds().Dy())/2))
				draw.Draw(sheet, to, img, image.Point{}, draw.Src)
				y += px + 12
			}
		}
	}
	return sheet
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

// hands draws the measures of unlike hands, at one scale.
func hands(t *testing.T) image.Image {
	t.Helper()
	cell := 420
	all := []Dimensions{
		{PalmBreadth: 72, PalmLength: 100, HandLength: 165},
		{PalmBreadth: 95, PalmLength: 119, HandLength: 210},
		{PalmBreadth: 95, PalmLength: 100, HandLength: 165, ThumbLength: 52, ThumbBreadth: 25},
		{PalmBreadth: 72, PalmLength: 119, HandLength: 210, ThumbLength: 75, ThumbBreadth: 17},
	}
	sheet := image.NewRGBA(image.Rect(0, 0, 4*cell, 4*cell))
	draw.Draw(sheet, sheet.Bounds(), image.NewUniform(hex(light.Paper)), image.Point{}, draw.Src)
	for row, d := range all {
		for col, m := range Measures() {
			drawing := Draw(m, d, Options{WithFood: row%2 == 1})
			img, err := raster(SVG(drawing, light, 1.8*max(drawing.Width, drawing.Height)), hex(light.Paper))
			if err != nil {
				t.Fatal(err)
			}
			draw.Draw(sheet, img.Bounds().Add(image.Pt(col*cell+10, row*cell+10)), img, image.Point{}, draw.Src)
		}
	}
	return sheet
}

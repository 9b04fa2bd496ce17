package reports

import (
	"bytes"
	"image"
	_ "image/jpeg" // the formats that a logo may have
	_ "image/png"
	"math"

	"golang.org/x/image/draw"

	"handbreadth/domain/unit"
)

// FieldLogo is the name of the brand's logo in problems.
const FieldLogo = "brand.logo"

// The box that a logo fits in, in millimetres, and how finely it is printed.
const (
	logoWide    = 52
	logoHigh    = 15
	logoDPI     = 300
	mostPixels  = 50_000_000
	mmPerInch   = 25.4
	acceptsLogo = "a PNG or JPEG picture of at most 50 million pixels"
)

// logo is a decoded picture, flattened on white: three bytes a pixel.
type logo struct {
	pixels     []byte
	cols, rows int
	wide, high float64 // millimetres on paper
}

// newLogo decodes a picture and brings it to the size of print. An empty file
// is no logo. The error is a [unit.Problem].
func newLogo(file []byte) (*logo, error) {
	if len(file) == 0 {
		return nil, nil
	}
	problem := unit.Problem{Field: FieldLogo, Given: "a file that cannot be read as a picture", Accepted: acceptsLogo}
	head, _, err := image.DecodeConfig(bytes.NewReader(file))
	if err != nil || head.Width < 1 || head.Height < 1 {
		return nil, problem
	}
	if head.Width > mostPixels/head.Height {
		problem.Given = "a picture that is too large"
		return nil, problem
	}
	picture, _, err := image.Decode(bytes.NewReader(file))
	if err != nil {
		return nil, problem
	}
	return printed(picture), nil
}

func printed(picture image.Image) *logo {
	size := picture.Bounds().Size()
	scale := math.Min(logoWide/float64(size.X), logoHigh/float64(size.Y))
	l := &logo{wide: scale * float64(size.X), high: scale * float64(size.Y)}
	l.cols, l.rows = pixelsFor(l.wide, size.X), pixelsFor(l.high, size.Y)
	flat := image.NewRGBA(image.Rect(0, 0, l.cols, l.rows))
	draw.Draw(flat, flat.Bounds(), image.White, image.Point{}, draw.Src)
	draw.CatmullRom.Scale(flat, flat.Bounds(), picture, picture.Bounds(), draw.Over, nil)
	l.pixels = make([]byte, 0, 3*l.cols*l.rows)
	for i := 0; i < len(flat.Pix); i += 4 {
		l.pixels = append(l.pixels, flat.Pix[i:i+3]...)
	}
	return l
}

func pixelsFor(mm float64, given int) int {
	return max(1, min(given, int(math.Ceil(mm/mmPerInch*logoDPI))))
}

package widgets

import (
	"image/color"

	"fyne.io/fyne/v2/canvas"
)

// mix returns a colour between two: share 0 is a, share 1 is b.
func mix(a, b color.NRGBA, share float64) color.NRGBA {
	between := func(p, q uint8) uint8 { return uint8(float64(p)*(1-share) + float64(q)*share + 0.5) }
	return color.NRGBA{R: between(a.R, b.R), G: between(a.G, b.G), B: between(a.B, b.B), A: 0xFF}
}

// nothing paints nothing. Fyne's software painter does not take a colour that is
// not set.
var nothing = color.Transparent

// newBox returns a rectangle that paints nothing yet.
func newBox() *canvas.Rectangle { return canvas.NewRectangle(nothing) }

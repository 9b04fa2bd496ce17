//go:build (!gles && !arm && !arm64) || darwin

package main

import (
	"image"

	"fyne.io/fyne/v2"
	"github.com/go-gl/gl/v2.1/gl"
)

// capture returns the picture of a window. The toolkit's own capture reads the
// buffer that is on the screen, which drivers without a graphics card leave
// empty; the buffer that was drawn last has the same picture.
func capture(w fyne.Window) image.Image {
	c := w.Canvas()
	width, height := c.PixelCoordinateForPosition(fyne.NewPos(c.Size().Width, c.Size().Height))
	picture := image.NewNRGBA(image.Rect(0, 0, width, height))
	pixels := make([]uint8, len(picture.Pix))
	w.(drawing).RunWithContext(func() {
		gl.ReadBuffer(gl.BACK)
		gl.ReadPixels(0, 0, int32(width), int32(height), gl.RGBA, gl.UNSIGNED_BYTE, gl.Ptr(pixels))
	})
	for y := range height { // the drawing counts lines from below
		copy(picture.Pix[y*picture.Stride:], pixels[(height-1-y)*picture.Stride:(height-y)*picture.Stride])
	}
	return picture
}

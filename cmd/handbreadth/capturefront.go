//go:build (gles || arm || arm64) && !darwin

package main

import (
	"image"

	"fyne.io/fyne/v2"
)

// capture returns the picture of a window as the toolkit reads it: its drawing
// library for small devices has no other way.
func capture(w fyne.Window) image.Image { return w.Canvas().Capture() }

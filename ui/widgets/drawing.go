package widgets

import (
	"fmt"
	"image"
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	draw "handbreadth/assets/hand"
	"handbreadth/domain/hand"
	"handbreadth/ui/theme"
)

// drawingKey says which drawing of a measure is meant.
type drawingKey struct {
	kind        hand.Kind
	half        bool
	detail      draw.Detail
	dims        draw.Dimensions
	ink, ground string
}

// handDrawing is a drawing as a picture, with its shape.
type handDrawing struct {
	picture fyne.Resource
	aspect  float32 // width over height
}

// drawings keeps what was drawn. A practice sees a handful of hands a day; the
// store starts anew when it has grown past a few hundred pictures.
var drawings = struct {
	sync.Mutex
	made   map[drawingKey]handDrawing
	serial int // names each drawing for good: the rasters are kept by name
}{made: map[drawingKey]handDrawing{}}

const mostDrawings = 400

// drawingOf returns the drawing of a measure for a place of so many device
// pixels, in the look in force.
func drawingOf(kind hand.Kind, half bool, dims draw.Dimensions, pixels float64) handDrawing {
	key := drawingKey{kind, half, draw.DetailFor(pixels), dims, theme.Hex(theme.Ink), theme.Hex(theme.Card)}
	drawings.Lock()
	defer drawings.Unlock()
	if made, ok := drawings.made[key]; ok {
		return made
	}
	if len(drawings.made) >= mostDrawings {
		clear(drawings.made)
	}
	d := draw.Draw(measureOf(kind), dims, draw.Options{Half: half, Detail: key.detail})
	const sourceSize = 240
	svg := draw.SVG(d, draw.Palette{Ink: key.ink, Wash: washHex(), Paper: key.ground}, sourceSize)
	drawings.serial++
	made := handDrawing{
		picture: fyne.NewStaticResource(fmt.Sprintf("hand-%s-%v-%d-%s-%d.svg", kind.Name(), half, key.detail, key.ink[1:], drawings.serial), svg),
		aspect:  float32(d.Width / d.Height),
	}
	drawings.made[key] = made
	return made
}

// rasters keeps the drawings as they were rendered, by size in device pixels.
// The toolkit reads the whole source of a vector picture whenever it asks for
// the size of one that is not on the screen yet, which costs tens of
// milliseconds for a hand.
var rasters = struct {
	sync.Mutex
	made map[rasterKey]image.Image
}{made: map[rasterKey]image.Image{}}

type rasterKey struct {
	picture       string
	width, height int
}

// raster returns the drawing rendered for a place of so many device pixels; nil
// where it cannot be rendered.
func (d handDrawing) raster(width, height float32) image.Image {
	key := rasterKey{d.picture.Name(), int(width + 0.5), int(height + 0.5)}
	rasters.Lock()
	defer rasters.Unlock()
	if made, ok := rasters.made[key]; ok {
		return made
	}
	if len(rasters.made) >= mostDrawings {
		clear(rasters.made)
	}
	render := canvas.NewImageFromResource(d.picture)
	render.FillMode = canvas.ImageFillContain
	render.Resize(fyne.NewSize(float32(key.width), float32(key.height)))
	rasters.made[key] = render.Image
	return render.Image
}

// washHex is the one tint of the drawings: between the tint of the look and its
// ink, so that it shows on the card and on paper.
func washHex() string {
	c := mix(theme.Colour(theme.Tint), theme.Colour(theme.Spruce), 0.18)
	return fmt.Sprintf("#%02X%02X%02X", c.R, c.G, c.B)
}

// measureOf returns the drawing's name for a measure.
func measureOf(kind hand.Kind) draw.Measure {
	switch kind {
	case hand.Fist:
		return draw.Fist
	case hand.CuppedHand:
		return draw.CuppedHand
	case hand.Thumb:
		return draw.Thumb
	}
	return draw.Palm
}

package theme

import (
	"math"

	"fyne.io/fyne/v2"
	fynetheme "fyne.io/fyne/v2/theme"
)

// The grid: distances are multiples of half a unit.
const (
	Half  float32 = 4
	Unit  float32 = 8
	Two   float32 = 16
	Three float32 = 24
	Four  float32 = 32
)

// Target is the least width and height of what can be clicked.
// Source: WCAG 2.2, success criterion 2.5.8, 24 by 24 CSS pixels.
const Target float32 = 24

// FocusWidth is the width of the ring round what has the focus. Source: WCAG
// 2.2, success criterion 2.4.13, a perimeter at least 2 CSS pixels thick.
const FocusWidth float32 = 2

// Radius rounds the corners of what can be used.
const Radius float32 = 4

// The text sizes before scaling.
const (
	smallSize   float32 = 13
	bodySize    float32 = 15
	titleSize   float32 = 20
	displaySize float32 = 28
)

// Size returns Fyne's sizes on the grid of this program.
func (t *Theme) Size(name fyne.ThemeSizeName) float32 {
	switch name {
	case fynetheme.SizeNameCaptionText:
		return t.scaled(smallSize)
	case fynetheme.SizeNameText:
		return t.scaled(bodySize)
	case fynetheme.SizeNameSubHeadingText:
		return t.scaled(titleSize)
	case fynetheme.SizeNameHeadingText:
		return t.scaled(displaySize)
	case fynetheme.SizeNameInlineIcon:
		return 20 * t.scale
	case fynetheme.SizeNamePadding, fynetheme.SizeNameInnerPadding:
		return Unit
	case fynetheme.SizeNameLineSpacing:
		return Half
	case fynetheme.SizeNameScrollBar:
		return 12
	case fynetheme.SizeNameScrollBarSmall:
		return Half
	case fynetheme.SizeNameInputRadius, fynetheme.SizeNameSelectionRadius, fynetheme.SizeNameScrollBarRadius:
		return Radius
	case fynetheme.SizeNameInputBorder, fynetheme.SizeNameSeparatorThickness:
		return 1
	}
	return t.Theme.Size(name)
}

// textSizes are the sizes of texts before scaling.
var textSizes = [...]float32{smallSize, bodySize, titleSize, displaySize}

// scaled is a size at the scale of the theme. Those of texts are asked for with
// every text that is measured, so they were worked out before.
func (t *Theme) scaled(size float32) float32 {
	for i, known := range textSizes {
		if known == size {
			return t.sizes[i]
		}
	}
	return unclipped(size * t.scale)
}

// sizesAt are the text sizes at a scale.
func sizesAt(scale float32) (sizes [len(textSizes)]float32) {
	for i, size := range textSizes {
		sizes[i] = unclipped(size * scale)
	}
	return sizes
}

// Parts of the size of a text in the type family: the height above the line,
// that of a whole line, and how deep a "g" goes. Source: the metrics of the
// family's faces, which all four share; a test reads them.
const (
	ascentShare = 0.944828
	lineShare   = 1.155766
	tailShare   = 0.205078
)

// unclipped returns the size nearest to the one asked for, within a unit and a
// half, at which no tail of a letter is cut. Where a unit is a pixel, Fyne
// rounds the height of a line to whole pixels and what lies above the line up,
// so that at some sizes less is left below than a "g" needs.
func unclipped(size float32) float32 {
	const step, most = 1.0 / 64, 96
	for i := range most {
		for _, tried := range []float32{size - float32(i)*step, size + float32(i)*step} {
			if hasRoom(float64(tried)) {
				return tried
			}
		}
	}
	return size
}

// hasRoom reports whether a "g" keeps its tail; a third of a pixel is not seen.
func hasRoom(size float64) bool {
	below := math.Round(lineShare*size) - math.Ceil(ascentShare*size)
	return below >= tailShare*size-1.0/3
}

// TextScale is the text scale of the theme in force.
func TextScale() float32 {
	if t, ok := fyne.CurrentApp().Settings().Theme().(*Theme); ok {
		return t.scale
	}
	return 1
}

// Small is the size of hints, sources and remarks.
func Small() float32 { return current(smallSize) }

// Body is the size of ordinary text.
func Body() float32 { return current(bodySize) }

// Title is the size of a card's or a page's title.
func Title() float32 { return current(titleSize) }

// Display is the size of the one number that matters most.
func Display() float32 { return current(displaySize) }

// current scales a size by the theme in force.
func current(size float32) float32 {
	if t, ok := fyne.CurrentApp().Settings().Theme().(*Theme); ok {
		return t.scaled(size)
	}
	return unclipped(size)
}

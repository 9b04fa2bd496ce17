package theme

import (
	"image/color"

	"fyne.io/fyne/v2"
)

// The named colours of the program. They are theme keys like Fyne's own, so
// that a text segment may name them; [Colour] looks them up.
const (
	Paper     fyne.ThemeColorName = "handbreadth-paper"     // the ground of the window
	Card      fyne.ThemeColorName = "handbreadth-card"      // what lies on the paper
	Ink       fyne.ThemeColorName = "handbreadth-ink"       // text and lines
	Muted     fyne.ThemeColorName = "handbreadth-muted"     // text of the second rank
	Faint     fyne.ThemeColorName = "handbreadth-faint"     // text of what is switched off
	Rule      fyne.ThemeColorName = "handbreadth-rule"      // hairlines between parts
	Edge      fyne.ThemeColorName = "handbreadth-edge"      // the border of what can be used
	Tint      fyne.ThemeColorName = "handbreadth-tint"      // the one tint: selection, wash
	Hover     fyne.ThemeColorName = "handbreadth-hover"     // under the pointer
	Spruce    fyne.ThemeColorName = "handbreadth-spruce"    // primary
	OnSpruce  fyne.ThemeColorName = "handbreadth-on-spruce" // text on spruce
	Rust      fyne.ThemeColorName = "handbreadth-rust"      // focus and attention
	Amber     fyne.ThemeColorName = "handbreadth-amber"     // caution
	Blue      fyne.ThemeColorName = "handbreadth-blue"      // note
	Brick     fyne.ThemeColorName = "handbreadth-brick"     // hold and refer, problems
	Selection fyne.ThemeColorName = "handbreadth-selection" // behind selected text
)

// Names lists the named colours.
func Names() []fyne.ThemeColorName {
	return []fyne.ThemeColorName{
		Paper, Card, Ink, Muted, Faint, Rule, Edge, Tint, Hover, Spruce, OnSpruce, Rust, Amber, Blue, Brick, Selection,
	}
}

// palette holds a colour for each name, as 0xRRGGBB.
type palette map[fyne.ThemeColorName]uint32

var light = palette{
	Paper: 0xF7F4EE, Card: 0xFFFFFF, Ink: 0x22302E, Muted: 0x5C6B68, Faint: 0x7C8885,
	Rule: 0xDAD5CA, Edge: 0x7C8783, Tint: 0xE0EBE5, Hover: 0xEFEBE1,
	Spruce: 0x1E5B4F, OnSpruce: 0xFFFFFF, Rust: 0xB4541A, Amber: 0x8A5F0A, Blue: 0x2F5D8C, Brick: 0x9B2C2C,
	Selection: 0xC9DFD6,
}

var dark = palette{
	Paper: 0x15201D, Card: 0x1D2A27, Ink: 0xE8E4DA, Muted: 0xA9B6B0, Faint: 0x7F8D88,
	Rule: 0x35453F, Edge: 0x788883, Tint: 0x284039, Hover: 0x24332F,
	Spruce: 0x6FB5A2, OnSpruce: 0x15201D, Rust: 0xF0A070, Amber: 0xE2B75C, Blue: 0x8DB8E8, Brick: 0xF09A94,
	Selection: 0x35584E,
}

// colour returns the colour of a name, and false where the palette has none.
func (p palette) colour(name fyne.ThemeColorName) (color.NRGBA, bool) {
	rgb, known := p[name]
	return color.NRGBA{R: uint8(rgb >> 16), G: uint8(rgb >> 8), B: uint8(rgb), A: 0xFF}, known
}

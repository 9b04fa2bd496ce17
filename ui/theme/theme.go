// Package theme gives the program its look: the colours of a field notebook in
// light and dark, the Go type family, and sizes on an 8-unit grid.
package theme

import (
	"fmt"
	"image/color"

	"fyne.io/fyne/v2"
	fynetheme "fyne.io/fyne/v2/theme"

	"handbreadth/assets"
)

// Variant says whether the look follows the system or is chosen.
type Variant int

// The variants.
const (
	FollowSystem Variant = iota
	Light
	Dark
)

// The least and the greatest text scale.
const (
	LeastScale    = 0.8
	GreatestScale = 2.0
)

// Theme is the program's theme. It delegates to Fyne's own for what it does not
// name. A Theme does not change: make a new one and set it again.
type Theme struct {
	fyne.Theme
	variant Variant
	scale   float32
	sizes   [len(textSizes)]float32 // of texts, in the order of textSizes
}

// New returns a theme. The scale multiplies all text sizes; 1 is normal, it is
// kept within [LeastScale] and [GreatestScale], and 0 means 1.
func New(v Variant, scale float32) *Theme {
	if scale == 0 {
		scale = 1
	}
	scale = min(max(scale, LeastScale), GreatestScale)
	return &Theme{Theme: fynetheme.DefaultTheme(), variant: v, scale: scale, sizes: sizesAt(scale)}
}

// Variant returns what the theme was made with.
func (t *Theme) Variant() Variant { return t.variant }

// Scale returns the text scale.
func (t *Theme) Scale() float32 { return t.scale }

// Color returns a named colour of this package, or what Fyne's name means here.
func (t *Theme) Color(name fyne.ThemeColorName, system fyne.ThemeVariant) color.Color {
	p := t.palette(system)
	if own, ok := meaning[name]; ok {
		name = own
	}
	if c, ok := p.colour(name); ok {
		return c
	}
	return t.Theme.Color(name, t.system(system))
}

// meaning says which named colour each of Fyne's names has.
var meaning = map[fyne.ThemeColorName]fyne.ThemeColorName{
	fynetheme.ColorNameBackground:          Paper,
	fynetheme.ColorNameButton:              Hover,
	fynetheme.ColorNameDisabledButton:      Hover,
	fynetheme.ColorNameDisabled:            Faint,
	fynetheme.ColorNameError:               Brick,
	fynetheme.ColorNameFocus:               Tint,
	fynetheme.ColorNameForeground:          Ink,
	fynetheme.ColorNameForegroundOnError:   Card,
	fynetheme.ColorNameForegroundOnPrimary: OnSpruce,
	fynetheme.ColorNameForegroundOnSuccess: OnSpruce,
	fynetheme.ColorNameForegroundOnWarning: Card,
	fynetheme.ColorNameHeaderBackground:    Card,
	fynetheme.ColorNameHover:               Hover,
	fynetheme.ColorNameHyperlink:           Spruce,
	fynetheme.ColorNameInputBackground:     Card,
	fynetheme.ColorNameInputBorder:         Edge,
	fynetheme.ColorNameMenuBackground:      Card,
	fynetheme.ColorNameOverlayBackground:   Card,
	fynetheme.ColorNamePlaceHolder:         Muted,
	fynetheme.ColorNamePressed:             Tint,
	fynetheme.ColorNamePrimary:             Spruce,
	fynetheme.ColorNameScrollBar:           Edge,
	fynetheme.ColorNameSelection:           Selection,
	fynetheme.ColorNameSeparator:           Rule,
	fynetheme.ColorNameSuccess:             Spruce,
	fynetheme.ColorNameWarning:             Amber,
}

func (t *Theme) palette(system fyne.ThemeVariant) palette {
	if t.system(system) == fynetheme.VariantDark {
		return dark
	}
	return light
}

// system returns the variant in force.
func (t *Theme) system(given fyne.ThemeVariant) fyne.ThemeVariant {
	switch t.variant {
	case Light:
		return fynetheme.VariantLight
	case Dark:
		return fynetheme.VariantDark
	}
	return given
}

// Font returns the face of the Go type family for a style; symbols and fixed
// width stay with Fyne's own.
func (t *Theme) Font(style fyne.TextStyle) fyne.Resource {
	switch {
	case style.Monospace, style.Symbol:
		return t.Theme.Font(style)
	case style.Bold:
		return bold
	case style.Italic:
		return italic
	}
	return regular
}

var (
	regular = fyne.NewStaticResource("Go-Regular.ttf", assets.Regular())
	medium  = fyne.NewStaticResource("Go-Medium.ttf", assets.Medium())
	bold    = fyne.NewStaticResource("Go-Bold.ttf", assets.Bold())
	italic  = fyne.NewStaticResource("Go-Italic.ttf", assets.Italic())
)

// MediumFace is the face between regular and bold, for labels; it is set as a
// text's own font, since Fyne has no style for it.
func MediumFace() fyne.Resource { return medium }

// IsDark reports whether the look in force is the dark one.
func IsDark() bool {
	settings := fyne.CurrentApp().Settings()
	if t, ok := settings.Theme().(*Theme); ok {
		return t.system(settings.ThemeVariant()) == fynetheme.VariantDark
	}
	return settings.ThemeVariant() == fynetheme.VariantDark
}

// Colour returns a named colour in the look in force. It works under another
// theme too. Must be called where the user interface runs.
func Colour(name fyne.ThemeColorName) color.NRGBA {
	p := light
	if IsDark() {
		p = dark
	}
	c, _ := p.colour(name)
	return c
}

// Hex returns a named colour in the look in force as "#RRGGBB", for drawings.
func Hex(name fyne.ThemeColorName) string {
	c := Colour(name)
	return fmt.Sprintf("#%02X%02X%02X", c.R, c.G, c.B)
}

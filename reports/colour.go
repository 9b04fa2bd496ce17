package reports

import (
	"math"
	"strconv"
	"strings"

	"handbreadth/domain/unit"
)

// colour is a colour of the sRGB space.
type colour struct{ R, G, B uint8 }

// The colours of the papers: ink on white, one tint and one hue, which is the
// practice's own.
var (
	ink           = colour{0x22, 0x30, 0x2E}
	muted         = colour{0x52, 0x60, 0x5D}
	hairline      = colour{0xB9, 0xB4, 0xA8}
	white         = colour{0xFF, 0xFF, 0xFF}
	defaultColour = colour{0x1E, 0x5B, 0x4F}
)

// FieldColour is the name of the brand's colour in problems.
const FieldColour = "brand.colour"

// leastContrast is the least contrast of text. Source: WCAG 2.2, success
// criterion 1.4.3, level AA.
const leastContrast = 4.5

// luminance is the relative luminance of a colour, 0 (black) to 1 (white).
// Source: WCAG 2.2, definition of relative luminance (sRGB, threshold 0.04045).
func (c colour) luminance() float64 {
	linear := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

// contrast is the contrast ratio of two colours, 1 to 21.
// Source: WCAG 2.2, definition of contrast ratio.
func contrast(a, b colour) float64 {
	la, lb := a.luminance(), b.luminance()
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

// readable darkens a colour, keeping its hue, until it reaches the least
// contrast on white.
func readable(c colour) colour {
	const step = 0.97
	for contrast(c, white) < leastContrast {
		c = colour{scaled(c.R, step), scaled(c.G, step), scaled(c.B, step)}
	}
	return c
}

func scaled(v uint8, by float64) uint8 { return uint8(float64(v) * by) }

// tint mixes a colour with white: 0 is white, 1 the colour.
func tint(c colour, share float64) colour {
	mix := func(v uint8) uint8 { return uint8(math.Round(255 + share*(float64(v)-255))) }
	return colour{mix(c.R), mix(c.G), mix(c.B)}
}

// parseColour reads "#1E5B4F"; empty is the program's own colour. The error is
// a [unit.Problem].
func parseColour(text string) (colour, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return defaultColour, nil
	}
	digits, hashed := strings.CutPrefix(text, "#")
	value, err := strconv.ParseUint(digits, 16, 32)
	if !hashed || len(digits) != 6 || err != nil {
		return colour{}, unit.Problem{Field: FieldColour, Given: text, Accepted: "a colour such as #1E5B4F: six digits of 0-9 and A-F after #"}
	}
	return colour{uint8(value >> 16), uint8(value >> 8), uint8(value)}, nil
}

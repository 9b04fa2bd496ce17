package theme

import (
	"image/color"
	"math"
)

// Contrast returns the contrast ratio of two opaque colours, 1 to 21.
//
// Source: WCAG 2.2, definitions of "contrast ratio" and "relative luminance":
// (L1 + 0.05) / (L2 + 0.05), the lighter first.
func Contrast(a, b color.NRGBA) float64 {
	la, lb := luminance(a), luminance(b)
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

// luminance is 0.2126 R + 0.7152 G + 0.0722 B of the linear channels.
func luminance(c color.NRGBA) float64 {
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

// linear undoes the transfer curve of sRGB, with the threshold 0.04045 that the
// errata of WCAG 2 give.
func linear(channel uint8) float64 {
	v := float64(channel) / 255
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

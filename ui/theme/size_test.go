package theme

import (
	"math"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"handbreadth/assets"
)

// Source: the faces themselves.
func TestSharesAreThoseOfTheFaces(t *testing.T) {
	const em = 1000
	for name, face := range map[string][]byte{"regular": assets.Regular(), "medium": assets.Medium(), "bold": assets.Bold(), "italic": assets.Italic()} {
		f, err := sfnt.Parse(face)
		if err != nil {
			t.Fatal(err)
		}
		var buffer sfnt.Buffer
		m, err := f.Metrics(&buffer, fixed.I(em), font.HintingNone)
		if err != nil {
			t.Fatal(err)
		}
		g, err := f.GlyphIndex(&buffer, 'g')
		if err != nil {
			t.Fatal(err)
		}
		box, _, err := f.GlyphBounds(&buffer, g, fixed.I(em), font.HintingNone)
		if err != nil {
			t.Fatal(err)
		}
		for what, pair := range map[string][2]float64{
			"ascent": {float64(m.Ascent), ascentShare}, "line": {float64(m.Height), lineShare}, "tail": {float64(box.Max.Y), tailShare},
		} {
			const rounding = 1e-4 // of fixed point at this size
			if got := pair[0] / 64 / em; math.Abs(got-pair[1]) > rounding {
				t.Errorf("%s, %s: the face has %.6f, the constant is %.6f", name, what, got, pair[1])
			}
		}
	}
}

func TestEverySizeKeepsTheTailsOfLetters(t *testing.T) {
	for _, scale := range []float32{0.8, 0.9, 1, 1.15, 1.3, 1.5, 2} {
		for _, size := range []float32{smallSize, bodySize, titleSize, displaySize} {
			got := New(Light, scale).scaled(size)
			if !hasRoom(float64(got)) {
				t.Errorf("size %.1f at scale %.2f: %.3f cuts tails", size, scale, got)
			}
			if off := math.Abs(float64(got - size*scale)); off > 1.5 {
				t.Errorf("size %.1f at scale %.2f became %.3f", size, scale, got)
			}
		}
	}
}

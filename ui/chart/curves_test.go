package chart

import (
	"image"
	"image/color"
	"math"
	"testing"

	"handbreadth/domain/unit"
)

var paints = curveColours{
	fill: color.NRGBA{R: 200, G: 220, B: 210, A: 255}, hatch: color.NRGBA{R: 100, G: 120, B: 110, A: 255},
	edge: color.NRGBA{R: 10, G: 10, B: 200, A: 255}, static: color.NRGBA{R: 200, G: 10, B: 10, A: 255},
	expected: color.NRGBA{A: 255},
}

func painted(c Course, high, low float64, w, h int, scale float64, colours curveColours) *image.NRGBA {
	img := image.NewNRGBA(image.Rect(0, 0, w, h))
	paintCurves(img, c, high, low, scale, colours)
	return img
}

// In a picture of 100 days and 60 to 90 kg, 10 px a kilogram, the expected weight
// of day 50 is 75 kg: 150 px from the top; the range ends at 140 and 160.
func TestCurvesLieWhereTheirWeightsAre(t *testing.T) {
	for _, scale := range []float64{1, 2, 3} {
		c := straight(100)
		c.Static = nil
		w, h := int(400*scale), int(300*scale)
		img := painted(c, 90, 60, w, h, scale, paints)
		x := w / 2
		at := func(units float64) int { return int(units * scale) }
		if got := img.NRGBAAt(x, at(150)); got != paints.expected {
			t.Errorf("scale %v: %v in the middle of the line", scale, got)
		}
		for _, outside := range []float64{130, 170} {
			if got := img.NRGBAAt(x, at(outside)); got.A != 0 {
				t.Errorf("scale %v: %v at %v, outside of the range", scale, got, outside)
			}
		}
		for y := at(142.5); y < at(147.5); y++ {
			if got := img.NRGBAAt(x, y); got.A != 255 || got.B > 211 && got.R < 100 {
				t.Errorf("scale %v: %v inside of the range", scale, got)
			}
		}
	}
}

// The line falls 10 units in 40, so along a column it is wider than across by the
// root of 1 + 1/16.
func TestExpectedLineIsAsThickAcrossOnASlope(t *testing.T) {
	white := color.NRGBA{R: 255, G: 255, B: 255, A: 255}
	for _, scale := range []float64{1, 2, 3} {
		c := straight(100)
		c.Static = nil
		w, h := int(400*scale), int(300*scale)
		img := painted(c, 90, 60, w, h, scale, curveColours{fill: white, hatch: white, edge: white, expected: color.NRGBA{A: 255}})
		ink := 0.0
		for y := range h {
			if c := img.NRGBAAt(w/2, y); c.A == 255 {
				ink += float64(255-c.R) / 255
			}
		}
		if want := expectedWidth * math.Sqrt(1+1.0/16); math.Abs(ink/scale-want) > 0.05 {
			t.Errorf("scale %v: %.3f units, want %.3f", scale, ink/scale, want)
		}
	}
}

// The slanted lines cover their part: a line of 1 in 7.
func TestHatchCoversItsShare(t *testing.T) {
	for _, scale := range []float64{1, 2, 3} {
		p := curves{scale: scale, colours: paints}
		period, row := p.hatching(50)
		covered := 0.0
		for x := range period {
			covered += (float64(paints.fill.R) - float64(row[4*x])) / (float64(paints.fill.R) - float64(paints.hatch.R))
		}
		if got := covered / float64(period); math.Abs(got-hatchWidth/hatchPeriod) > 0.03 {
			t.Errorf("scale %v: %.3f, want %.3f", scale, got, hatchWidth/hatchPeriod)
		}
	}
}

func TestStaticRuleIsDashed(t *testing.T) {
	c := straight(100)
	for i := range c.Bands {
		c.Bands[i].Low, c.Bands[i].High = c.Bands[i].Weight, c.Bands[i].Weight
	}
	const w, h = 1000, 300 // 10 px a day and a kilogram
	img := painted(c, 90, 60, w, h, 1, paints)
	on, changes, before := 0, 0, false
	for x := 40; x < 480; x++ {
		y := int((90 - float64(c.Static(0)) + (float64(x)+0.5)/10/5) * 10)
		red := img.NRGBAAt(x, y).R > 150 && img.NRGBAAt(x, y).A > 100
		if red {
			on++
		}
		if red != before {
			changes++
		}
		before = red
	}
	if got := float64(on) / 440; math.Abs(got-dashLength/(dashLength+dashSpace)) > 0.08 {
		t.Errorf("%.2f of the line is drawn", got)
	}
	if changes < 50 {
		t.Errorf("only %d changes along the line", changes)
	}
	for x := 520; x < w; x += 5 {
		for y := range h {
			if c := img.NRGBAAt(x, y); c.R > 150 && c.G < 60 {
				t.Fatalf("the rule goes on at %d after it reached the goal", x)
			}
		}
	}
}

func TestNothingToDrawIsNoFault(t *testing.T) {
	if img := painted(Course{}, 90, 60, 10, 10, 1, paints); img.Rect.Dx() != 10 {
		t.Error("no picture")
	}
	painted(straight(1), 90, 60, 0, 0, 1, paints)
	c := straight(3)
	c.Bands = c.Bands[:1]
	painted(c, 90, 60, 40, 40, 1, paints)
}

// Weights outside of the axes stay outside of the picture.
func TestCurvesStayInThePicture(t *testing.T) {
	c := straight(100)
	for i := range c.Bands {
		c.Bands[i].High = unit.Kilogram(1e6)
		c.Bands[i].Low = -1e6
	}
	painted(c, 76, 74, 200, 100, 1.5, paints)
}

package widgets

import (
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2/canvas"

	draw "handbreadth/assets/hand"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

// inked is the share of ink in a part of a picture, from the mix of ink and
// ground in each pixel.
func inked(img image.Image, part image.Rectangle, ink, ground color.NRGBA) float64 {
	sum := 0.0
	for y := part.Min.Y; y < part.Max.Y; y++ {
		for x := part.Min.X; x < part.Max.X; x++ {
			c := color.NRGBAModel.Convert(img.At(x, y)).(color.NRGBA)
			sum += (float64(ground.G) - float64(c.G)) / (float64(ground.G) - float64(ink.G))
		}
	}
	return sum / float64(part.Dx()*part.Dy())
}

// The share of ink follows from the geometry: a line of 1.6 in 6, two dots of
// radius 1.5 in a cell of 6 by 6 (worked by hand).
func TestPatternsHaveTheirShareOfInk(t *testing.T) {
	program(t, theme.Light)
	ink, ground := theme.Colour(theme.Ink), theme.Colour(theme.Tint)
	for _, scale := range []float64{1, 2, 3} {
		for kind, want := range map[pattern]float64{
			solid: 1, hatch: 1.6 / 6, dots: 2 * math.Pi * 1.5 * 1.5 / 36,
		} {
			size := int(240 * scale)
			p := newPatternPainter(size, size, scale)
			p.fill(kind, 0, size)
			middle := image.Rect(int(12*scale), int(12*scale), int(228*scale), int(228*scale))
			if got := inked(p.img, middle, ink, ground); math.Abs(got-want) > 0.03 {
				t.Errorf("pattern %d at scale %v: %.3f ink, want %.3f", kind, scale, got, want)
			}
		}
	}
}

// The lengths of the bar's parts are the shares of the energy: 4, 9 and 4 kcal/g
// (Regulation (EU) 1169/2011, annex XIV).
func TestMacroBarPartsAreTheShares(t *testing.T) {
	program(t, theme.Light)
	bar := NewMacroBar(unit.Style{})
	bar.SetGrams(100, 40, 210) // 400, 360, 840 of 1600 kcal
	open(t, bar, 400, 200)
	const w, h = 1600, 48
	img := bar.draw(w, h)
	var gaps []int
	for x := 1; x < w; x++ {
		_, _, _, here := img.At(x, h/2).RGBA()
		_, _, _, before := img.At(x-1, h/2).RGBA()
		if here != 0 && before == 0 {
			gaps = append(gaps, x)
		}
	}
	if len(gaps) != 2 || gaps[0] != 400 || gaps[1] != 760 {
		t.Errorf("parts begin at %v, want 400 and 760", gaps)
	}
	for i, want := range []string{"100 g · 25 %", "40 g · 23 %", "210 g · 53 %"} {
		if got := bar.Value(i); got != want {
			t.Errorf("legend %d: %q, want %q", i, got, want)
		}
	}
}

func TestMacroBarWithoutNumbers(t *testing.T) {
	program(t, theme.Light)
	bar := NewMacroBar(unit.Style{})
	bar.SetGrams(100, 40, 210)
	bar.ShowNumbers(false)
	open(t, bar, 400, 200)
	shown := textsIn(bar)
	if strings.ContainsAny(shown, "0123456789%") {
		t.Errorf("numbers are shown:\n%s", shown)
	}
	if !strings.Contains(shown, "Protein") {
		t.Error("the names are gone, too")
	}
}

func TestMacroBarOfNothing(t *testing.T) {
	program(t, theme.Light)
	bar := NewMacroBar(unit.Style{})
	bar.SetGrams(-1, 0, 0)
	open(t, bar, 400, 200)
	if img := bar.draw(100, 20); img.Bounds().Dx() != 100 {
		t.Error("no picture of an empty bar")
	}
	if bar.Value(0) != "0 g · 0 %" {
		t.Errorf("says %q", bar.Value(0))
	}
}

// pictures counts the drawings in a figure, wholes and halves.
func pictures(m *MeasureFigure) (wholes, halves int) {
	whole, half := m.image(m.drawing(false)).Image, m.image(m.drawing(true)).Image
	for _, o := range m.row.Objects {
		if img, is := o.(*canvas.Image); is {
			switch img.Image {
			case whole:
				wholes++
			case half:
				halves++
			}
		}
	}
	return wholes, halves
}

func TestMeasureFigureDrawsWholesAndHalves(t *testing.T) {
	program(t, theme.Light)
	for _, c := range []struct {
		count          unit.Measure
		wholes, halves int
		caption        string
	}{
		{0, 0, 0, "no palm"},
		{0.5, 0, 1, "½ palm"},
		{1, 1, 0, "1 palm"},
		{1.5, 1, 1, "1½ palms"},
		{4, 4, 0, "4 palms"},
		{5.5, 1, 1, "5½ palms"},
		{-1, 0, 0, "no palm"},
	} {
		m := NewMeasureFigure(hand.Palm, 48)
		m.SetCount(c.count)
		open(t, m, 400, 200)
		if wholes, halves := pictures(m); wholes != c.wholes || halves != c.halves || m.Caption() != c.caption {
			t.Errorf("%v: %d wholes, %d halves, %q", c.count, wholes, halves, m.Caption())
		}
	}
	many := NewMeasureFigure(hand.Fist, 48)
	many.SetCount(5.5)
	open(t, many, 400, 200)
	if !strings.Contains(textsIn(many), "5 ×") {
		t.Error("five fists drawn as one without saying so")
	}
}

func TestMeasureFigureDrawsOnceForEachLook(t *testing.T) {
	app := program(t, theme.Light)
	a, b := drawingOf(hand.Palm, true, draw.Reference(), 48), drawingOf(hand.Palm, true, draw.Reference(), 48)
	if a.picture != b.picture {
		t.Error("the same drawing was made twice")
	}
	if other := drawingOf(hand.Palm, false, draw.Reference(), 48); other.picture == a.picture {
		t.Error("a half is drawn as a whole")
	}
	app.Settings().SetTheme(theme.New(theme.Dark, 1))
	if night := drawingOf(hand.Palm, true, draw.Reference(), 48); night.picture == a.picture {
		t.Error("the dark look shows the light drawing")
	}
}

func TestMeasureFigureOfTheClientsHand(t *testing.T) {
	program(t, theme.Light)
	m := NewMeasureFigure(hand.Palm, 48)
	m.SetCount(1)
	open(t, m, 400, 200)
	before := m.row.Objects[0].(*canvas.Image).Image
	broad := draw.Reference()
	broad.PalmBreadth *= 1.3
	m.SetHand(broad)
	if m.row.Objects[0].(*canvas.Image).Image == before {
		t.Error("another hand, the same drawing")
	}
	m.SetFoods("")
	if strings.Contains(textsIn(m), "protein") {
		t.Error("the foods are still shown")
	}
}

func TestEachKindHasItsDrawing(t *testing.T) {
	for kind, want := range map[hand.Kind]draw.Measure{
		hand.Palm: draw.Palm, hand.Fist: draw.Fist, hand.CuppedHand: draw.CuppedHand, hand.Thumb: draw.Thumb,
	} {
		if got := measureOf(kind); got != want || got.String() != kind.Name() {
			t.Errorf("%s is drawn as %s", kind.Name(), got)
		}
	}
}

func TestEveryIconIsDrawnInItsColour(t *testing.T) {
	program(t, theme.Light)
	for _, name := range []IconName{
		IconClients, IconKitchen, IconPractice, IconHelp, IconSearch, IconAdd, IconClose, IconCheck, IconUndo,
		IconOpen, IconOpened, IconPrint, IconSave, IconNote, IconCaution, IconHold, IconRefer,
	} {
		svg := string(Icon(name, theme.Brick).Content())
		if !strings.Contains(svg, `fill="#9B2C2C"`) || !strings.Contains(svg, "<path") {
			t.Errorf("%s: %s", name, svg)
		}
	}
	if Icon(IconAdd, theme.Ink) != Icon(IconAdd, theme.Ink) {
		t.Error("the same icon was made twice")
	}
}

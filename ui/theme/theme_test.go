package theme

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	fynetheme "fyne.io/fyne/v2/theme"
	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"

	"handbreadth/assets"
)

// pair is a foreground that is used on a background.
type pair struct{ fore, back fyne.ThemeColorName }

// textPairs are all the pairs in which text is set.
var textPairs = []pair{
	{Ink, Paper},
	{Ink, Card},
	{Ink, Tint},
	{Ink, Hover},
	{Ink, Selection},
	{Muted, Paper},
	{Muted, Card},
	{Muted, Tint},
	{Muted, Hover},
	{Spruce, Paper},
	{Spruce, Card},
	{Spruce, Tint},
	{Spruce, Hover},
	{OnSpruce, Spruce},
	{Rust, Paper},
	{Rust, Card},
	{Amber, Paper},
	{Amber, Card},
	{Blue, Paper},
	{Blue, Card},
	{Brick, Paper},
	{Brick, Card},
	{Card, Brick},
	{Card, Amber},
}

// linePairs are lines, borders and shapes that carry meaning.
var linePairs = []pair{
	{Rust, Paper},
	{Rust, Card},
	{Rust, Tint},
	{Rust, Hover},
	{Edge, Paper},
	{Edge, Card},
	{Edge, Hover},
	{Ink, Tint},
	{Spruce, Tint},
	{Spruce, Paper},
	{Faint, Paper},
	{Faint, Card}, // text of what is switched off: exempt from 4.5:1 (1.4.3, "Incidental"); kept readable all the same
}

func eachPalette(t *testing.T, check func(t *testing.T, p palette)) {
	for name, p := range map[string]palette{"light": light, "dark": dark} {
		t.Run(name, func(t *testing.T) { check(t, p) })
	}
}

func atLeast(t *testing.T, p palette, pairs []pair, least float64) {
	for _, q := range pairs {
		fore, foreKnown := p.colour(q.fore)
		back, backKnown := p.colour(q.back)
		if !foreKnown || !backKnown {
			t.Fatalf("%s on %s: not in the palette", q.fore, q.back)
		}
		if got := Contrast(fore, back); got < least {
			t.Errorf("%s on %s: contrast %.2f, want %.1f or more", q.fore, q.back, got, least)
		}
	}
}

// Source: WCAG 2.2, success criterion 1.4.3 (AA): 4.5:1 for text.
func TestTextReachesAA(t *testing.T) {
	eachPalette(t, func(t *testing.T, p palette) { atLeast(t, p, textPairs, 4.5) })
}

// Source: WCAG 2.2, success criterion 1.4.11 (AA): 3:1 for what is not text.
func TestLinesReachThreeToOne(t *testing.T) {
	eachPalette(t, func(t *testing.T, p palette) { atLeast(t, p, linePairs, 3) })
}

// Source: the formula of WCAG 2.2 worked by hand: black on white is 1.05/0.05;
// #767676 is widely known as the lightest grey that passes on white (from
// memory: 4.54), #777777 as the first that does not (4.48).
func TestContrastFormula(t *testing.T) {
	white := color.NRGBA{R: 255, G: 255, B: 255, A: 255}
	grey := func(v uint8) color.NRGBA { return color.NRGBA{R: v, G: v, B: v, A: 255} }
	for _, c := range []struct {
		fore color.NRGBA
		want float64
	}{{grey(0), 21}, {white, 1}, {grey(0x76), 4.54}, {grey(0x77), 4.48}} {
		if got := Contrast(c.fore, white); got < c.want-0.005 || got > c.want+0.005 {
			t.Errorf("contrast of %v on white: %.3f, want %.2f", c.fore, got, c.want)
		}
		if Contrast(c.fore, white) != Contrast(white, c.fore) {
			t.Errorf("contrast of %v depends on the order", c.fore)
		}
	}
}

func TestEveryNameHasAColour(t *testing.T) {
	eachPalette(t, func(t *testing.T, p palette) {
		if len(p) != len(Names()) {
			t.Errorf("%d colours for %d names", len(p), len(Names()))
		}
		for _, name := range Names() {
			if _, ok := p.colour(name); !ok {
				t.Errorf("no colour for %s", name)
			}
		}
		for theirs, ours := range meaning {
			if _, ok := p.colour(ours); !ok {
				t.Errorf("%s means %s, which has no colour", theirs, ours)
			}
		}
	})
}

func TestVariantFollowsTheSystemOrIsForced(t *testing.T) {
	lightPaper, _ := light.colour(Paper)
	darkPaper, _ := dark.colour(Paper)
	for _, c := range []struct {
		variant Variant
		system  fyne.ThemeVariant
		want    color.NRGBA
	}{
		{FollowSystem, fynetheme.VariantLight, lightPaper},
		{FollowSystem, fynetheme.VariantDark, darkPaper},
		{Light, fynetheme.VariantDark, lightPaper},
		{Dark, fynetheme.VariantLight, darkPaper},
	} {
		if got := New(c.variant, 1).Color(fynetheme.ColorNameBackground, c.system); got != c.want {
			t.Errorf("variant %d on system %d: %v, want %v", c.variant, c.system, got, c.want)
		}
	}
}

func TestColourFollowsTheThemeInForce(t *testing.T) {
	app := test.NewTempApp(t)
	for _, c := range []struct {
		variant Variant
		want    string
	}{{Light, "#F7F4EE"}, {Dark, "#15201D"}} {
		app.Settings().SetTheme(New(c.variant, 1))
		if got := Hex(Paper); got != c.want {
			t.Errorf("paper is %s, want %s", got, c.want)
		}
		if IsDark() != (c.variant == Dark) {
			t.Errorf("variant %d: IsDark says %v", c.variant, IsDark())
		}
	}
}

func TestSizesScaleWithinBounds(t *testing.T) {
	app := test.NewTempApp(t)
	for _, c := range []struct{ asked, want float32 }{{0, 15}, {1, 15}, {1.5, 22.5}, {9, 30}, {0.1, 12}} {
		app.Settings().SetTheme(New(Light, c.asked))
		if got, want := Body(), unclipped(c.want); got != want {
			t.Errorf("scale %v: body text %v, want %v", c.asked, got, want)
		}
		if got, want := fynetheme.TextSize(), unclipped(c.want); got != want {
			t.Errorf("scale %v: Fyne's text %v, want %v", c.asked, got, want)
		}
	}
	app.Settings().SetTheme(New(Light, 1))
	want := [4]float32{unclipped(13), unclipped(15), unclipped(20), unclipped(28)}
	if got := [4]float32{Small(), Body(), Title(), Display()}; got != want {
		t.Errorf("sizes %v, want %v: those nearest to 13, 15, 20, 28", got, want)
	}
}

func TestFacesAreTheTypeFamily(t *testing.T) {
	th := New(Light, 1)
	for _, c := range []struct {
		style fyne.TextStyle
		want  string
	}{
		{fyne.TextStyle{}, "Go-Regular.ttf"},
		{fyne.TextStyle{Bold: true}, "Go-Bold.ttf"},
		{fyne.TextStyle{Italic: true}, "Go-Italic.ttf"},
	} {
		if got := th.Font(c.style).Name(); got != c.want {
			t.Errorf("style %+v: %s, want %s", c.style, got, c.want)
		}
	}
	if th.Font(fyne.TextStyle{Symbol: true}) == nil {
		t.Error("no face for symbols")
	}
}

// Columns of figures line up only when all digits are equally wide.
func TestFiguresAreTabular(t *testing.T) {
	for name, data := range map[string][]byte{
		"regular": assets.Regular(), "medium": assets.Medium(), "bold": assets.Bold(),
	} {
		parsed, err := opentype.Parse(data)
		if err != nil {
			t.Fatal(err)
		}
		face, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: 100, DPI: 72, Hinting: font.HintingNone})
		if err != nil {
			t.Fatal(err)
		}
		zero, _ := face.GlyphAdvance('0')
		for digit := '1'; digit <= '9'; digit++ {
			if width, ok := face.GlyphAdvance(digit); !ok || width != zero {
				t.Errorf("%s: %c is %v wide, 0 is %v", name, digit, width, zero)
			}
		}
	}
}

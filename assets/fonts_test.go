package assets

import (
	"bytes"
	"image/png"
	"slices"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// classes are the kinds of text that the screen and the papers show.
var classes = map[string]string{
	"Latin":     "The quick brown fox jumps over the lazy dog. THE QUICK BROWN FOX 0123456789 !?&%@#()[]{}/\\*+=<>|~^_-,;:'\"",
	"Western":   "àâäáãåæçéèêëíìîïñóòôöõøœßúùûüýÿ ÀÂÄÁÃÅÆÇÉÈÊËÍÌÎÏÑÓÒÔÖÕØŒÚÙÛÜÝŸ ¿¡ «»",
	"Central":   "čďěňřšťůžąćęłńśźżőűăâîşţ ČĎĚŇŘŠŤŮŽĄĆĘŁŃŚŹŻŐŰĂÂÎŞŢ",
	"Baltic":    "āčēģīķļņšūžėįųąę ĀČĒĢĪĶĻŅŠŪŽĖĮŲ",
	"Turkish":   "ğışİĞŞçöü",
	"Greek":     "αβγδεζηθικλμνξοπρσςτυφχψω ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩ άέήίόύώϊϋΐΰ ΆΈΉΊΌΎΏ",
	"Cyrillic":  "абвгдеёжзийклмнопрстуфхцчшщъыьэюя АБВГДЕЁЖЗИЙКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯ ґєіїўђјљњћџ ҐЄІЇЎ",
	"symbols":   "×−–—…½¼¾°±≈≤≥→•·’“”",
	"currency":  "€£$",
	"reference": "§©®™²³¹µ",
}

func TestFacesCoverWhatWeShow(t *testing.T) {
	for name, text := range classes {
		if missing := Missing(text); len(missing) > 0 {
			t.Errorf("%s: no glyph for %q", name, string(missing))
		}
	}
}

func TestMissingNamesWhatLacks(t *testing.T) {
	got := Missing("a漢b\n字漢 ✓")
	if want := []rune{'漢', '字', '✓'}; !slices.Equal(got, want) {
		t.Errorf("missing %q, want %q", string(got), string(want))
	}
	if got := Missing(""); got != nil {
		t.Errorf("empty text misses %q", string(got))
	}
}

// TestDigitsAreTabular compares the advances of the digits, so that columns of
// numbers line up, in each face.
func TestDigitsAreTabular(t *testing.T) {
	for name, data := range faces() {
		f, err := sfnt.Parse(data)
		if err != nil {
			t.Fatal(err)
		}
		want := advance(t, f, '0')
		for _, r := range "123456789" {
			if got := advance(t, f, r); got != want {
				t.Errorf("%s: digit %c is %v wide, 0 is %v", name, r, got, want)
			}
		}
		if advance(t, f, 'i') == advance(t, f, 'm') {
			t.Errorf("%s: i and m are equally wide, so this is no text face", name)
		}
	}
}

func advance(t *testing.T, f *sfnt.Font, r rune) fixed.Int26_6 {
	t.Helper()
	var buf sfnt.Buffer
	i, err := f.GlyphIndex(&buf, r)
	if err != nil || i == 0 {
		t.Fatalf("no glyph for %q: %v", r, err)
	}
	a, err := f.GlyphAdvance(&buf, i, fixed.I(1000), font.HintingNone)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestAppIconIsASquarePicture(t *testing.T) {
	c, err := png.DecodeConfig(bytes.NewReader(AppIcon()))
	if err != nil {
		t.Fatal(err)
	}
	if c.Width != 512 || c.Height != 512 {
		t.Errorf("the icon is %d x %d, want 512 x 512", c.Width, c.Height)
	}
}

// FuzzMissing feeds any text: no panic, each character at most once, and what
// it names is in the text.
func FuzzMissing(f *testing.F) {
	for _, text := range classes {
		f.Add(text)
	}
	f.Add("\xff\x00\U0010ffff")
	f.Fuzz(func(t *testing.T, text string) {
		seen := map[rune]bool{}
		for _, r := range Missing(text) {
			if seen[r] || !slices.Contains([]rune(text), r) {
				t.Errorf("%q is named twice or is not in the text", r)
			}
			seen[r] = true
		}
	})
}

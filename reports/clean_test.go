package reports

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func TestClean(t *testing.T) {
	for _, c := range []struct{ name, given, want string }{
		{"plain", "Meal 1", "Meal 1"},
		{"space and line ends", "  one\n\ttwo \r\n three  ", "one two three"},
		{"control characters", "a\x00b\x1b[0mc\u200bd\ufeff", "ab[0mcd"},
		{"invalid UTF-8", "caf\xe9", "caf□"},
		{"above U+FFFF", "soup 🥣 now", "soup □ now"},
		{"no glyph", "漢字", "□□"},
		{"Greek and Cyrillic", "Ελένη Жанна Ђорђе", "Ελένη Жанна Ђорђе"},
		{"diacritics", "Åsa Łukasz Žižek Ñandú Ağaoğlu", "Åsa Łukasz Žižek Ñandú Ağaoğlu"},
		{"composed", "e\u0301", "é"},
		{"bare letter for an accent that the faces lack", "Nguyễn", "Nguyen"},
		{"lookalike", "high‑fibre", "high-fibre"},
		{"symbols of the formulas", "10 × 1½ − 5 ≤ 7 ± 2 kg/m²", "10 × 1½ − 5 ≤ 7 ± 2 kg/m²"},
		{"overlong word", strings.Repeat("x", 170), strings.Repeat("x", 80) + " " + strings.Repeat("x", 80) + " " + strings.Repeat("x", 10)},
		{"nothing", "\u00a0 \n", ""},
		{"a letter that is only a mark", "A\u037a b", "A□ b"},
		{"only no-break space at the end", "end \u00a0", "end"},
	} {
		if got := clean(c.given); got != c.want {
			t.Errorf("%s: clean(%q) = %q, want %q", c.name, c.given, got, c.want)
		}
	}
}

func checkClean(t interface{ Errorf(string, ...any) }, given string) {
	got := clean(given)
	if !utf8.ValidString(got) {
		t.Errorf("clean(%q) = %q: not valid UTF-8", given, got)
	}
	for _, r := range got {
		if r > 0xFFFF || unicode.IsControl(r) || !known(r) {
			t.Errorf("clean(%q) keeps %U", given, r)
		}
	}
	for _, word := range strings.Split(got, " ") {
		if utf8.RuneCountInString(word) > longestWord {
			t.Errorf("clean(%q) keeps a word of %d characters", given, utf8.RuneCountInString(word))
		}
	}
	if again := clean(got); again != got {
		t.Errorf("clean(%q) = %q, and cleaned again %q", given, got, again)
	}
}

func TestCleanIsSafeAndSettled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		checkClean(t, rapid.OneOf(rapid.String(), rapid.StringOf(rapid.RuneFrom([]rune("ễe\u0301\u0302\u00a0 \n‑🥣漢xДάß")))).Draw(t, "text"))
	})
}

// What counts as plain is left as it is by the cleaning itself.
func TestPlainTextsAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.RuneFrom(nil, &unicode.RangeTable{R16: []unicode.Range16{{Lo: ' ', Hi: '~', Stride: 1}}})).Draw(t, "text")
		text += strings.Repeat("x", rapid.SampledFrom([]int{0, longestWord, longestWord + 1, longestText}).Draw(t, "more"))
		if isPlain(text) && cleaned(text) != text {
			t.Fatalf("%q is called plain and becomes %q", text, cleaned(text))
		}
	})
	for text, plain := range map[string]bool{
		"": true, "Meal 1": true, "two  spaces": false, " lead": false, "trail ": false, "tab\t": false, "é": false,
		strings.Repeat("x", longestWord): true, strings.Repeat("x", longestWord+1): false,
	} {
		if isPlain(text) != plain {
			t.Errorf("%q: plain is %v", text, !plain)
		}
	}
}

func FuzzClean(f *testing.F) {
	for _, seed := range []string{"", "Meal 1", "caf\xe9", "🥣", "e\u0301\u0323", strings.Repeat("x\u00a0", 60), "\U0010ffff\x00"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) { checkClean(t, text) })
}

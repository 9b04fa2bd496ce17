package widgets

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// perRune measures a text as so many units a rune.
func perRune(text string) float32 { return float32(utf8.RuneCountInString(text)) }

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		text  string
		width float32
		want  []string
	}{
		{"", 5, []string{""}},
		{"one two", 7, []string{"one two"}},
		{"one two", 6, []string{"one", "two"}},
		{"one\ntwo", 20, []string{"one", "two"}},
		{"so unbreakable", 5, []string{"so", "unbre", "akabl", "e"}},
		{"ab", 0.5, []string{"a", "b"}},
	} {
		if got := wrap(c.text, c.width, perRune); !slices.Equal(got, c.want) {
			t.Errorf("%q at %v: %q, want %q", c.text, c.width, got, c.want)
		}
	}
}

// No line is wider than the width, unless a single rune is, and no letter is
// lost or moved.
func TestWrapKeepsEveryLetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a-zé\n ]{0,80}`).Draw(t, "text")
		width := rapid.Float32Range(1, 30).Draw(t, "width")
		lines := wrap(text, width, perRune)
		for _, line := range lines {
			if perRune(line) > width && utf8.RuneCountInString(line) > 1 {
				t.Errorf("line %q is wider than %v", line, width)
			}
		}
		letters := func(s string) string { return strings.NewReplacer(" ", "", "\n", "").Replace(s) }
		if got := letters(strings.Join(lines, "")); got != letters(text) {
			t.Errorf("%q became %q", text, lines)
		}
	})
}

func TestShorten(t *testing.T) {
	for _, c := range []struct {
		width float32
		want  string
	}{{20, "Ottoline Farrow"}, {15, "Ottoline Farrow"}, {10, "Ottoline…"}, {4, "Ott…"}, {0, "…"}} {
		if got := shorten("Ottoline Farrow", c.width, perRune); got != c.want {
			t.Errorf("at %v: %q, want %q", c.width, got, c.want)
		}
	}
}

package reports

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/unit"
)

// The ratios follow from the WCAG 2.2 definition: 21 for black on white is named
// there; #767676 has a luminance of 0.1812 by hand, so (1 + 0.05) / 0.2312 = 4.54.
func TestContrast(t *testing.T) {
	black := colour{}
	if got := contrast(black, white); math.Abs(got-21) > 1e-9 {
		t.Errorf("black on white: %v, want 21", got)
	}
	if got := contrast(colour{0x76, 0x76, 0x76}, white); math.Abs(got-4.54) > 0.005 {
		t.Errorf("#767676 on white: %v, want 4.54", got)
	}
	if got := contrast(white, white); got != 1 {
		t.Errorf("white on white: %v, want 1", got)
	}
}

func TestEveryTextColourIsReadable(t *testing.T) {
	for name, c := range map[string]colour{"ink": ink, "muted": muted, "default": defaultColour} {
		if got := contrast(c, white); got < leastContrast {
			t.Errorf("%s on white has a contrast of %.2f, want %v", name, got, leastContrast)
		}
	}
}

func TestReadableDarkensOnlyWhatIsTooLight(t *testing.T) {
	if got := readable(defaultColour); got != defaultColour {
		t.Errorf("a readable colour became %v", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		part := rapid.Uint8()
		c := colour{part.Draw(t, "red"), part.Draw(t, "green"), part.Draw(t, "blue")}
		got := readable(c)
		if contrast(got, white) < leastContrast {
			t.Fatalf("%v became %v with a contrast of %.2f", c, got, contrast(got, white))
		}
		if got.R > c.R || got.G > c.G || got.B > c.B {
			t.Fatalf("%v became lighter: %v", c, got)
		}
		if contrast(c, white) >= leastContrast && got != c {
			t.Fatalf("%v was readable and became %v", c, got)
		}
	})
}

func TestParseColour(t *testing.T) {
	got, err := parseColour(" #1e5B4f ")
	if err != nil || got != defaultColour {
		t.Errorf("got %v, %v", got, err)
	}
	if got, err := parseColour(""); err != nil || got != defaultColour {
		t.Errorf("nothing: got %v, %v", got, err)
	}
	for _, bad := range []string{"1E5B4F", "#1E5B4", "#1E5B4F0", "#GGGGGG", "green", "#-1E5B4"} {
		_, err := parseColour(bad)
		var problem unit.Problem
		if !errors.As(err, &problem) || problem.Field != FieldColour {
			t.Errorf("%q: got %v, want a problem of %s", bad, err, FieldColour)
		}
	}
}

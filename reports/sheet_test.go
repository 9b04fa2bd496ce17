package reports

import (
	"bytes"
	"errors"
	"image"
	"image/jpeg"
	"strings"
	"testing"

	"handbreadth/domain/unit"
)

func emptySheet(t *testing.T) *sheet {
	t.Helper()
	h := house{title: "Test", hue: defaultColour}
	s := newSheet(A4, h)
	if err := s.frame(letterhead{h}, pagefoot{house: h}); err != nil {
		t.Fatal(err)
	}
	return s
}

type panicking struct{ gap }

func (panicking) draw(canvas) { panic("torn paper") }

func TestAPanicOfTheEngineIsAnError(t *testing.T) {
	s := emptySheet(t)
	if err := s.add(panicking{gap(10)}); err != nil {
		t.Fatal(err)
	}
	if _, err := s.finish(); !errors.Is(err, ErrPaper) || !strings.Contains(err.Error(), "torn paper") {
		t.Errorf("got %v, want an error of the paper", err)
	}
}

func TestABlockTallerThanThePageIsRefused(t *testing.T) {
	s := emptySheet(t)
	if err := s.add(gap(s.room() + 1)); !errors.Is(err, ErrPaper) {
		t.Errorf("got %v, want an error of the paper", err)
	}
	if err := s.add(gap(s.room())); err != nil {
		t.Errorf("a block as tall as the page: %v", err)
	}
}

func TestABrandThatLeavesNoRoomIsRefused(t *testing.T) {
	h := house{hue: defaultColour, practice: strings.Repeat("long name ", 200)}
	err := newSheet(A4, h).frame(letterhead{h}, pagefoot{house: h})
	var problem unit.Problem
	if !errors.As(err, &problem) || problem.Field != "brand" {
		t.Errorf("got %v, want a problem of the brand", err)
	}
}

func TestWrap(t *testing.T) {
	const most = 40.0
	text := "Eat a fist of greens at noon and " + strings.Repeat("x", 60) + " too"
	lines := wrap(regular, sizeBody, most, text)
	if got := strings.ReplaceAll(strings.Join(lines, ""), " ", ""); got != strings.ReplaceAll(text, " ", "") {
		t.Errorf("letters were lost: %q", lines)
	}
	for _, line := range lines {
		if width(regular, sizeBody, line) > most {
			t.Errorf("%q is wider than %v mm", line, most)
		}
	}
	if got := wrap(regular, sizeBody, most, "  "); got != nil {
		t.Errorf("nothing to write gave %q", got)
	}
}

func TestLogo(t *testing.T) {
	var wide bytes.Buffer
	if err := jpeg.Encode(&wide, image.NewGray(image.Rect(0, 0, 2000, 100)), nil); err != nil {
		t.Fatal(err)
	}
	for name, file := range map[string][]byte{"square": testLogo(t), "wide": wide.Bytes()} {
		l, err := newLogo(file)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if l.wide > logoWide+1e-9 || l.high > logoHigh+1e-9 || len(l.pixels) != 3*l.cols*l.rows {
			t.Errorf("%s: %v x %v mm, %d x %d pixels, %d bytes", name, l.wide, l.high, l.cols, l.rows, len(l.pixels))
		}
	}
	l, _ := newLogo(testLogo(t))
	if corner := l.pixels[:3]; !bytes.Equal(corner, []byte{255, 255, 255}) {
		t.Errorf("a clear ground became %v, want white", corner)
	}
	if l, err := newLogo(nil); l != nil || err != nil {
		t.Errorf("no logo: %v, %v", l, err)
	}
}

func FuzzLogo(f *testing.F) {
	f.Add([]byte(nil))
	f.Add([]byte("GIF89a"))
	f.Add(testLogo(f))
	f.Add(testLogo(f)[:200])
	f.Fuzz(func(t *testing.T, file []byte) {
		l, err := newLogo(file)
		var problem unit.Problem
		switch {
		case err != nil && !errors.As(err, &problem):
			t.Errorf("got %v, want a problem", err)
		case err == nil && len(file) > 0 && len(l.pixels) != 3*l.cols*l.rows:
			t.Errorf("%d x %d pixels in %d bytes", l.cols, l.rows, len(l.pixels))
		}
	})
}

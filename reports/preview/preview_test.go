package preview

import (
	"context"
	"errors"
	"fmt"
	"image"
	"os"
	"path/filepath"
	"testing"

	"codeberg.org/go-pdf/fpdf"
)

// sample is a PDF of so many A4 pages, each with a black band at its foot.
func sample(t testing.TB, pages int) []byte {
	t.Helper()
	doc := fpdf.New("P", "mm", "A4", "")
	for range pages {
		doc.AddPage()
		doc.SetFillColor(0, 0, 0)
		doc.Rect(0, 250, 210, 47, "F")
	}
	var out writer
	if err := doc.Output(&out); err != nil {
		t.Fatal(err)
	}
	return out
}

type writer []byte

func (w *writer) Write(p []byte) (int, error) {
	*w = append(*w, p...)
	return len(p), nil
}

// TestMain keeps the compiled module in a folder of its own, as the program does.
func TestMain(m *testing.M) {
	folder, err := os.MkdirTemp("", "handbreadth-preview")
	if err != nil {
		panic(err)
	}
	Start(filepath.Join(folder, "renderer"))
	code := m.Run()
	kept, _ := filepath.Glob(filepath.Join(folder, "renderer", "*"))
	if code == 0 && len(kept) == 0 {
		fmt.Println("the compiled module was not kept")
		code = 1
	}
	_ = os.RemoveAll(folder)
	os.Exit(code)
}

func dark(picture image.Image, x, y int) bool {
	r, g, b, _ := picture.At(x, y).RGBA()
	return r+g+b < 3*0x4000
}

func TestPagesShowsEachPage(t *testing.T) {
	const dpi = 72
	pages, err := Pages(context.Background(), sample(t, 3), dpi)
	if err != nil {
		t.Fatal(err)
	}
	if len(pages) != 3 {
		t.Fatalf("got %d pictures, want 3", len(pages))
	}
	for i, page := range pages {
		size := page.Bounds().Size()
		// A4 is 595.28 x 841.89 points of 1/72 inch.
		if size.X < 594 || size.X > 597 || size.Y < 841 || size.Y > 843 {
			t.Errorf("page %d is %v, want about 595 x 842", i+1, size)
		}
		if dark(page, size.X/2, size.Y/2) {
			t.Errorf("page %d is dark in the middle, where nothing is drawn", i+1)
		}
		if !dark(page, size.X/2, size.Y-20) {
			t.Errorf("page %d is light at the foot, where a band is drawn", i+1)
		}
	}
}

func TestPagesRefuses(t *testing.T) {
	for name, pdf := range map[string][]byte{
		"nothing": nil,
		"words":   []byte("this is no document"),
		"cut":     sample(t, 1)[:60],
	} {
		if _, err := Pages(context.Background(), pdf, 72); !errors.Is(err, ErrNotPDF) {
			t.Errorf("%s: got %v, want ErrNotPDF", name, err)
		}
	}
	for _, dpi := range []int{0, 35, 601, -1} {
		if _, err := Pages(context.Background(), sample(t, 1), dpi); !errors.Is(err, ErrResolution) {
			t.Errorf("%d dpi: got %v, want ErrResolution", dpi, err)
		}
	}
	// The worker must still serve after what it refused.
	if _, err := Pages(context.Background(), sample(t, 1), 72); err != nil {
		t.Errorf("after refusals: %v", err)
	}
}

func TestPagesHeedsItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Pages(ctx, sample(t, 1), 72); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v, want context.Canceled", err)
	}
}

func BenchmarkPage(b *testing.B) {
	pdf := sample(b, 1)
	if _, err := Pages(context.Background(), pdf, 100); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := Pages(context.Background(), pdf, 100); err != nil {
			b.Fatal(err)
		}
	}
}

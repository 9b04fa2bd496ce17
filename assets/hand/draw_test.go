package hand

import (
	"bytes"
	"encoding/csv"
	"image"
	"image/color"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"handbreadth/assets/internal/curve"

	"pgregory.net/rapid"
)

// everyOption lists all ways to draw one measure.
func everyOption() []Options {
	var all []Options
	for _, detail := range []Detail{Full, Medium, Small} {
		for _, half := range []bool{false, true} {
			for _, food := range []bool{false, true} {
				all = append(all, Options{Half: half, WithFood: food, Detail: detail})
			}
		}
	}
	return all
}

// outside returns the first point of a drawing outside its box, if any.
func outside(d Drawing) (Point, bool) {
	const rounding = 1e-6
	for _, path := range d.Paths {
		for _, seg := range path.Segments {
			for _, q := range seg.points() {
				inside := q.X >= -rounding && q.Y >= -rounding && q.X <= d.Width+rounding && q.Y <= d.Height+rounding
				if !inside { // also when a coordinate is not a number
					return q, true
				}
			}
		}
	}
	return Point{}, false
}

func TestEveryDrawingPaintsInsideItsBox(t *testing.T) {
	for _, m := range Measures() {
		for _, opt := range everyOption() {
			d := Draw(m, Reference(), opt)
			if q, is := outside(d); is {
				t.Errorf("%v %+v: point %v lies outside %.1f x %.1f", m, opt, q, d.Width, d.Height)
			}
			img, err := raster(SVG(d, black, 320), color.White)
			if err != nil {
				t.Fatalf("%v %+v: %v", m, opt, err)
			}
			if n := painted(img, color.RGBA{A: 255}); n < 300 {
				t.Errorf("%v %+v: only %d ink pixels", m, opt, n)
			}
			if n := painted(img, hex(black.Wash)); n < 600 {
				t.Errorf("%v %+v: only %d wash pixels", m, opt, n)
			}
			if edge := inkedEdge(img); edge > 0 {
				t.Errorf("%v %+v: %d pixels of ink touch the edge of the picture", m, opt, edge)
			}
		}
	}
}

// painted counts the pixels of exactly one colour.
func painted(img *image.RGBA, c color.RGBA) int {
	n := 0
	for y := range img.Bounds().Dy() {
		for x := range img.Bounds().Dx() {
			if img.RGBAAt(x, y) == c {
				n++
			}
		}
	}
	return n
}

// inkedEdge counts fully inked pixels in the outermost rows and columns.
func inkedEdge(img *image.RGBA) int {
	n, w, h := 0, img.Bounds().Dx(), img.Bounds().Dy()
	for y := range h {
		for x := range w {
			if (x == 0 || y == 0 || x == w-1 || y == h-1) && img.RGBAAt(x, y).R < 40 {
				n++
			}
		}
	}
	return n
}

// TestHalfWashesHalf measures the washed area in the picture. A half is drawn
// by length or height, so the area is only about half.
func TestHalfWashesHalf(t *testing.T) {
	for _, m := range Measures() {
		for _, detail := range []Detail{Full, Medium, Small} {
			whole := washed(t, m, Options{Detail: detail})
			half := washed(t, m, Options{Detail: detail, Half: true})
			if share := half / whole; share < 0.35 || share > 0.65 {
				t.Errorf("%v at detail %d: half washes %.2f of the whole", m, detail, share)
			}
		}
	}
}

// washed is the washed area in square millimetres.
func washed(t *testing.T, m Measure, opt Options) float64 {
	t.Helper()
	d := Draw(m, Reference(), opt)
	longer := max(d.Width, d.Height)
	img, err := raster(SVG(d, black, 600), color.White)
	if err != nil {
		t.Fatal(err)
	}
	perPixel := longer / 600
	return float64(painted(img, hex(black.Wash))) * perPixel * perPixel
}

// silhouette is the outline of the open hand: the first shape of the drawing.
func silhouette(d Drawing) []Point {
	var c curve.Curve
	for _, seg := range d.Paths[0].Segments {
		switch seg.Op {
		case MoveTo:
			c = append(c, seg.P[0])
		case CubicTo:
			c = append(c, seg.P[:]...)
		}
	}
	return c.Flat(0.2)
}

// breadthAt measures the outline from the middle to both sides at a height.
func breadthAt(outline []Point, middle, y float64) float64 {
	left, right := math.Inf(-1), math.Inf(1)
	for i, b := range outline {
		a := outline[(i+len(outline)-1)%len(outline)]
		if (a.Y >= y) == (b.Y >= y) {
			continue
		}
		x := a.X + (b.X-a.X)*(y-a.Y)/(b.Y-a.Y)
		if x < middle {
			left = max(left, x)
		} else {
			right = min(right, x)
		}
	}
	return right - left
}

func spanOf(t interface{ Fatalf(string, ...any) }, d Drawing, name string) Span {
	for _, s := range d.Spans {
		if s.Name == name {
			return s
		}
	}
	t.Fatalf("no span %q", name)
	return Span{}
}

// TestPalmIsLifeSize measures the drawn outline of the open hand at 1:1.
func TestPalmIsLifeSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		palm := rapid.Float64Range(95, 130).Draw(t, "palm length")
		want := WithThumb(Dimensions{
			PalmBreadth: rapid.Float64Range(68, 100).Draw(t, "palm breadth"),
			PalmLength:  palm,
			HandLength:  palm * rapid.Float64Range(1.55, 1.8).Draw(t, "hand over palm"),
		})
		d := Draw(Palm, want, Options{})
		outline := silhouette(d)
		span := spanOf(t, d, "palm breadth")
		middle := (span.From.X + span.To.X) / 2
		near(t, "palm breadth", breadthAt(outline, middle, span.From.Y), want.PalmBreadth)
		near(t, "palm breadth as marked", span.From.To(span.To), want.PalmBreadth)

		wrist := spanOf(t, d, "hand length").From.Y
		top := math.Inf(1)
		for _, q := range outline {
			top = min(top, q.Y)
		}
		near(t, "hand length", wrist-top, want.HandLength)
		crease := spanOf(t, d, "palm length")
		near(t, "palm length", crease.From.To(crease.To), want.PalmLength)
	})
}

func near(t *rapid.T, what string, got, want float64) {
	if math.Abs(got-want) > 0.01*want {
		t.Fatalf("%s is drawn %.1f mm, want %.1f mm within 1 %%", what, got, want)
	}
}

// TestDrawingsGrowWithTheHand scales the whole hand: everything but nothing
// else scales, the slip of the wash aside.
func TestDrawingsGrowWithTheHand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom(Measures()).Draw(t, "measure")
		k := rapid.Float64Range(0.75, 1.3).Draw(t, "factor")
		ref := Reference()
		grown := Dimensions{k * ref.PalmBreadth, k * ref.PalmLength, k * ref.HandLength, k * ref.ThumbLength, k * ref.ThumbBreadth}
		a, b := Draw(m, ref, Options{}), Draw(m, grown, Options{})
		for _, pair := range [][2]float64{{a.Width, b.Width}, {a.Height, b.Height}} {
			if math.Abs(pair[1]/pair[0]-k) > 0.02 {
				t.Fatalf("%v: hand times %.3f gives drawing times %.3f", m, k, pair[1]/pair[0])
			}
		}
	})
}

// TestEachDimensionShows changes one dimension at a time: the drawings that
// depend on it grow along it.
func TestEachDimensionShows(t *testing.T) {
	cases := []struct {
		name    string
		change  func(*Dimensions)
		measure Measure
		size    func(Drawing) float64
		share   [2]float64 // how much of a fifth more must be seen in the size
	}{
		{"palm breadth in the palm", func(d *Dimensions) { d.PalmBreadth *= 1.2 }, Palm, width, [2]float64{0.5, 1}},
		{"palm breadth in the fist", func(d *Dimensions) { d.PalmBreadth *= 1.2 }, Fist, width, [2]float64{0.85, 1.05}},
		{"palm length in the fist", func(d *Dimensions) { d.PalmLength *= 1.2 }, Fist, height, [2]float64{0.9, 1.05}},
		{"hand length in the palm", func(d *Dimensions) { d.HandLength *= 1.2 }, Palm, height, [2]float64{0.8, 1.05}},
		{"hand length in the cupped hand", func(d *Dimensions) { d.HandLength *= 1.2 }, CuppedHand, width, [2]float64{0.9, 1.05}},
		{"palm breadth in the cupped hand", func(d *Dimensions) { d.PalmBreadth *= 1.2 }, CuppedHand, height, [2]float64{0.9, 1.05}},
		{"thumb length in the thumb", func(d *Dimensions) { d.ThumbLength *= 1.2 }, Thumb, height, [2]float64{0.3, 0.6}},
	}
	for _, c := range cases {
		d := Reference()
		before := c.size(Draw(c.measure, d, Options{}))
		c.change(&d)
		grew := (c.size(Draw(c.measure, d, Options{}))/before - 1) / 0.2
		if grew < c.share[0] || grew > c.share[1] {
			t.Errorf("%s: a fifth more shows as %.2f of it, want %.2f to %.2f", c.name, grew, c.share[0], c.share[1])
		}
	}
}

func width(d Drawing) float64  { return d.Width }
func height(d Drawing) float64 { return d.Height }

func TestThumbBreadthShows(t *testing.T) {
	d := Reference()
	before := washed(t, Thumb, Options{})
	d.ThumbBreadth *= 1.2
	drawing := Draw(Thumb, d, Options{})
	img, err := raster(SVG(drawing, black, 600), color.White)
	if err != nil {
		t.Fatal(err)
	}
	perPixel := max(drawing.Width, drawing.Height) / 600
	after := float64(painted(img, hex(black.Wash))) * perPixel * perPixel
	if r := after / before; r < 1.14 || r > 1.28 {
		t.Errorf("a thumb a fifth broader is washed %.2f times as much, want about 1.2", r)
	}
}

// TestAnyHandCanBeDrawn feeds odd sizes: the drawing stays finite and inside.
func TestAnyHandCanBeDrawn(t *testing.T) {
	odd := []float64{0, -3, math.NaN(), math.Inf(1), 1, 1000}
	size := rapid.OneOf(rapid.Float64Range(20, 400), rapid.SampledFrom(odd))
	rapid.Check(t, func(t *rapid.T) {
		d := Dimensions{size.Draw(t, "a"), size.Draw(t, "b"), size.Draw(t, "c"), size.Draw(t, "d"), size.Draw(t, "e")}
		m := rapid.SampledFrom(Measures()).Draw(t, "measure")
		opt := rapid.SampledFrom(everyOption()).Draw(t, "options")
		drawing := Draw(m, d, opt)
		if q, is := outside(drawing); is {
			t.Fatalf("%v of %+v: point %v outside %v x %v", m, d, q, drawing.Width, drawing.Height)
		}
	})
}

// TestReferenceIsTheMeanOfTheSurvey compares with the open ANSUR II (2012)
// means, male and female, and with the reference folder's copy where it is.
func TestReferenceIsTheMeanOfTheSurvey(t *testing.T) {
	means := map[string]float64{"handbreadth": (88.26 + 78.15) / 2, "palmlength": (116.46 + 108.70) / 2, "handlength": (193.28 + 181.08) / 2}
	if dir := os.Getenv("HANDBREADTH_REFERENCE"); dir != "" {
		means = surveyMeans(t, filepath.Join(dir, "hand-anthropometry.csv"))
	}
	ref := Reference()
	got := map[string]float64{"handbreadth": ref.PalmBreadth, "palmlength": ref.PalmLength, "handlength": ref.HandLength}
	for name, mm := range got {
		if math.Abs(mm-means[name]) > 0.005 {
			t.Errorf("%s is %.3f mm, want %.3f", name, mm, means[name])
		}
	}
}

// surveyMeans averages the two sexes' means in the reference folder's table.
func surveyMeans(t *testing.T, name string) map[string]float64 {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	means := map[string]float64{}
	for _, row := range rows[1:] {
		mean, err := strconv.ParseFloat(row[3], 64)
		if err != nil {
			t.Fatal(err)
		}
		means[row[1]] += mean / 2
	}
	return means
}

func TestDetailFollowsSize(t *testing.T) {
	for px, want := range map[float64]Detail{24: Small, 32: Small, 44: Small, 48: Medium, 64: Medium, 120: Full, 454: Full} {
		if got := DetailFor(px); got != want {
			t.Errorf("%v pixels: detail %d, want %d", px, got, want)
		}
	}
	small, full := Draw(Fist, Reference(), Options{Detail: Small}), Draw(Fist, Reference(), Options{})
	if len(small.Paths) >= len(full.Paths) {
		t.Errorf("the small fist has %d shapes, the full one %d: want fewer", len(small.Paths), len(full.Paths))
	}
}

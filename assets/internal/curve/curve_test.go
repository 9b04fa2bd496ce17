package curve

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// area is what a closed polygon encloses (shoelace formula), positive when it
// runs clockwise on screen.
func area(poly []Point) float64 {
	var sum float64
	for i, q := range poly {
		p := poly[(i+len(poly)-1)%len(poly)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return sum / 2
}

func somePoints(t *rapid.T) []Point {
	n := rapid.IntRange(3, 8).Draw(t, "points")
	pts := make([]Point, n)
	for i := range pts {
		// steps forward keep the line from crossing itself
		pts[i] = Pt(float64(i)*20+rapid.Float64Range(-4, 4).Draw(t, "x"), rapid.Float64Range(-8, 8).Draw(t, "y"))
	}
	return pts
}

func TestSplineMeetsItsPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pts := somePoints(t)
		c := Spline(pts...)
		for i, p := range pts {
			if c[3*i] != p {
				t.Fatalf("point %d is %v, want %v", i, c[3*i], p)
			}
		}
	})
}

// TestRibbonsRunClockwise checks what lets lines share one filled shape: all
// outlines run the same way round, whichever way the line was drawn, and
// enclose length times width plus the two round ends.
func TestRibbonsRunClockwise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		half := rapid.Float64Range(0.2, 1.5).Draw(t, "half width")
		turn := rapid.Float64Range(0, 360).Draw(t, "turn")
		pts := somePoints(t)
		for i := range pts {
			pts[i] = pts[i].Turned(turn)
		}
		line := Spline(pts...)
		for _, c := range []Curve{line, line.Reversed()} {
			s := Sample(c, 0.5)
			got := area(Ribbon(s, func(int) (float64, float64) { return half, half }).Flat(0.1))
			want := 2*half*s.Total() + math.Pi*half*half
			if math.Abs(got-want) > 0.03*want {
				t.Fatalf("outline encloses %.2f, want %.2f", got, want)
			}
		}
	})
}

func TestLoopCloses(t *testing.T) {
	square := []Point{Pt(0, 0), Pt(10, 0), Pt(10, 10), Pt(0, 10)}
	c := Loop(square...)
	if c[0] != c[len(c)-1] {
		t.Errorf("starts at %v, ends at %v", c[0], c[len(c)-1])
	}
	if a := area(c.Flat(0.1)); a < 100 || a > 160 {
		t.Errorf("a smooth loop through a 10 by 10 square encloses %.1f, want between the square's 100 and its circle's 157", a)
	}
}

// TestClippedHalves cuts shapes along a line: the two sides add up.
func TestClippedHalves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Loop(Pt(0, 0), Pt(30, -5), Pt(40, 20), Pt(10, 35))
		poly := c.Flat(0.5)
		on := Pt(rapid.Float64Range(-10, 50).Draw(t, "x"), rapid.Float64Range(-10, 40).Draw(t, "y"))
		normal := Pt(1, 0).Turned(rapid.Float64Range(0, 360).Draw(t, "turn"))
		sum := area(Clipped(poly, on, normal)) + area(Clipped(poly, on, normal.Mul(-1)))
		if math.Abs(sum-area(poly)) > 1e-6 {
			t.Fatalf("the sides enclose %.6f, the whole %.6f", sum, area(poly))
		}
	})
}

func TestPartIsThatShareOfTheLength(t *testing.T) {
	c := Bow(Pt(0, 0), Pt(60, 10), 12)
	whole := Sample(c, 0.1).Total()
	if got := Sample(c.Part(0.25, 0.75), 0.1).Total(); math.Abs(got-whole/2) > 0.03*whole {
		t.Errorf("the middle half is %.2f long, want %.2f", got, whole/2)
	}
}

func TestJoinBridgesGaps(t *testing.T) {
	c := Join(Straight(Pt(0, 0), Pt(1, 0)), nil, Straight(Pt(1, 1), Pt(2, 1)))
	if (len(c)-1)%3 != 0 || Sample(c, 0.05).Total() < 2.99 {
		t.Errorf("joined curve has %d points and is %.2f long, want a whole chain of length 3", len(c), Sample(c, 0.05).Total())
	}
}

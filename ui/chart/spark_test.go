package chart

import (
	"image"
	"testing"

	"fyne.io/fyne/v2/container"

	"handbreadth/ui/theme"
)

func TestSparkShowsTheCourseAndTheGoal(t *testing.T) {
	program(t)
	s := NewSpark()
	shown(t, container.NewVBox(s), 288, 60)
	if img := s.paint(288, 44); img.Bounds().Dx() != 288 {
		t.Error("a spark without a course paints nothing")
	}
	c := straight(100)
	s.SetCourse(c)
	if s.Course().Static != nil || s.goal.Hidden {
		t.Errorf("static %v, goal hidden %v", s.Course().Static != nil, s.goal.Hidden)
	}
	// The course falls, so its line is higher at the left.
	img := s.paint(288, 44)
	first, last := inkRow(img.(*image.NRGBA), 2), inkRow(img.(*image.NRGBA), 285)
	if first < 0 || last < 0 || first >= last {
		t.Errorf("the line goes from row %d to row %d", first, last)
	}
	c.Goal = 0
	s.SetCourse(c)
	if !s.goal.Hidden {
		t.Error("a goal that is not named is drawn")
	}
}

// inkRow is the first row of a column that is nearly ink.
func inkRow(img *image.NRGBA, x int) int {
	ink := theme.Colour(theme.Ink)
	for y := range 44 {
		if c := img.NRGBAAt(x, y); c.A > 200 && int(c.G)-int(ink.G) < 30 && int(c.G) >= int(ink.G)-2 {
			return y
		}
	}
	return -1
}

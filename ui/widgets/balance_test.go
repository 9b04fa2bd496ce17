package widgets

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"pgregory.net/rapid"

	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

func TestBalanceKeys(t *testing.T) {
	program(t, theme.Light)
	var told []unit.Percent
	s := NewBalanceSlider(func(p unit.Percent) { told = append(told, p) })
	open(t, s, 400, 200)
	press(s, fyne.KeyRight, fyne.KeyLeft, fyne.KeyPageUp, fyne.KeyPageDown, fyne.KeyEnd, fyne.KeyEnd, fyne.KeyHome, fyne.KeyHome, fyne.KeyUp, fyne.KeyDown)
	want := []unit.Percent{51, 50, 55, 50, 100, 0, 1, 0}
	if !slices.Equal(told, want) {
		t.Errorf("told %v, want %v", told, want)
	}
}

func TestBalanceStopsAtTheWallAndSaysWhy(t *testing.T) {
	program(t, theme.Light)
	var told []unit.Percent
	s := NewBalanceSlider(func(p unit.Percent) { told = append(told, p) })
	open(t, s, 400, 200)
	s.SetWall(62.5, "fat is at least 20 % of energy.")
	if s.AtWall() || !strings.HasPrefix(s.Caption(), "Fat floor at the wall") {
		t.Errorf("at 50: caption %q", s.Caption())
	}
	press(s, fyne.KeyEnd, fyne.KeyRight)
	if !slices.Equal(told, []unit.Percent{62.5}) || s.Value() != 62.5 || !s.AtWall() {
		t.Errorf("told %v, at %v", told, s.Value())
	}
	if !strings.Contains(s.Caption(), "fat is at least 20 % of energy.") || !strings.Contains(s.Caption(), "stops here") {
		t.Errorf("caption %q", s.Caption())
	}
	press(s, fyne.KeyLeft)
	if s.Value() != 62 {
		t.Errorf("one step from the wall: %v", s.Value())
	}
}

func TestBalanceKeepsTheWishBehindAWall(t *testing.T) {
	program(t, theme.Light)
	s := NewBalanceSlider(func(unit.Percent) { t.Error("called back by code") })
	open(t, s, 400, 200)
	s.SetValue(80)
	s.SetWall(60, "floor")
	if s.Value() != 60 {
		t.Errorf("value %v behind the wall", s.Value())
	}
	s.SetWall(100, "")
	if s.Value() != 80 || s.Caption() != "" {
		t.Errorf("value %v once the wall is gone", s.Value())
	}
}

func TestBalanceByPointer(t *testing.T) {
	program(t, theme.Light)
	s := NewBalanceSlider(nil)
	open(t, s, 400, 200)
	s.SetWall(70, "floor")
	width := s.Size().Width
	for _, c := range []struct{ x, want float32 }{{-20, 0}, {s.draw.x(30, width), 30}, {s.draw.x(90, width), 70}, {width + 50, 70}} {
		test.TapAt(s, fyne.NewPos(c.x, 30))
		if s.Value() != unit.Percent(c.want) {
			t.Errorf("click at %v: %v, want %v", c.x, s.Value(), c.want)
		}
	}
	s.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(s.draw.x(44, width), 30)}})
	s.DragEnd()
	if s.Value() != 44 {
		t.Errorf("dragged to %v", s.Value())
	}
	s.Disable()
	test.TapAt(s, fyne.NewPos(s.draw.x(10, width), 30))
	press(s, fyne.KeyHome)
	if s.Value() != 44 {
		t.Error("moved though switched off")
	}
}

// Whatever is pressed, the thumb stays between 0 and the wall, and what is told
// is where it stands.
func TestBalanceNeverPassesTheWall(t *testing.T) {
	program(t, theme.Light)
	keys := []fyne.KeyName{
		fyne.KeyLeft, fyne.KeyRight, fyne.KeyUp, fyne.KeyDown, fyne.KeyPageUp, fyne.KeyPageDown, fyne.KeyHome, fyne.KeyEnd,
	}
	rapid.Check(t, func(t *rapid.T) {
		s := NewBalanceSlider(nil)
		s.OnChanged = func(p unit.Percent) {
			if p != s.Value() {
				t.Errorf("told %v at %v", p, s.Value())
			}
		}
		for range rapid.IntRange(1, 30).Draw(t, "steps") {
			if rapid.Bool().Draw(t, "move the wall") {
				s.SetWall(unit.Percent(rapid.Float64Range(-10, 120).Draw(t, "wall")), "floor")
			}
			press(s, rapid.SampledFrom(keys).Draw(t, "key"))
			if s.Value() < 0 || s.Value() > s.wall {
				t.Errorf("at %v with the wall at %v", s.Value(), s.wall)
			}
		}
	})
}

package widgets

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/ui/theme"
)

func init() { sheets["strips"] = stripsSheet }

// estimates are invented values for one thing.
var estimates = []StripValue{
	{Label: "First equation", Value: 1494, Text: "1494 kcal"},
	{Label: "Second equation, with height", Value: 1532, Text: "1532 kcal"},
	{Label: "Third equation", Value: 1380, Text: "1380 kcal", Hollow: true, Why: "made from people up to 60 years"},
	{Label: "Fourth equation", Value: 1610, Text: "1610 kcal", Closed: true},
	{Label: "Fifth equation", Value: 1701, Text: "1701 kcal"},
}

func newEstimates(chosen func(int)) *DotStrip {
	s := NewDotStrip("Resting energy", chosen)
	s.Set(estimates, 0, 1345, 1643)
	s.SetCaption("The band is 10 % either side of the one in use.")
	return s
}

func stripsSheet() fyne.CanvasObject {
	focused := newEstimates(nil)
	focused.FocusGained()
	none := NewDotStrip("", nil)
	none.Set(estimates[:2], -1, 0, 0)
	track, over := NewShareTrack(), NewShareTrack()
	track.Set(20, 10, 35)
	over.Set(43, 20, 35)
	closed := NewSetting("Fat floor", NewField("Part of energy", "15 to 40 %"))
	closed.SetValue("20 %", "the lower edge of the range for adults")
	opened := NewSetting("Protein", Column(NewField("For each kilogram", "0.8 to 2.5 g"), NewChoice("Training", []Option{{Label: "None"}, {Label: "Strength"}}, nil)))
	opened.SetValue("1.2 g/kg", "losing weight, on the weight of 78 kg")
	opened.SetOpen(true)
	return NewPage(WithAside(420, 300,
		NewCard("Strip", ColumnGap(theme.Two, newEstimates(nil), focused, none)),
		NewCard("Settings", ColumnGap(theme.Unit, closed, opened, track, over))))
}

func (s *DotStrip) boxSizes() []fyne.Size {
	var sizes []fyne.Size
	for _, r := range s.draw.rows {
		sizes = append(sizes, r.size)
	}
	return sizes
}

func TestStripIsChosenByKeyAndClick(t *testing.T) {
	program(t, theme.Light)
	var chosen []int
	s := newEstimates(func(i int) { chosen = append(chosen, i) })
	open(t, s, 500, 300)
	press(s, fyne.KeyUp, fyne.KeyDown, fyne.KeyDown, fyne.KeyDown) // the fourth is closed
	if s.Chosen() != 4 {
		t.Errorf("chosen %d", s.Chosen())
	}
	press(s, fyne.KeyHome, fyne.KeyEnd)
	test.TapAt(s, s.Spot(3))
	if s.Chosen() != 4 {
		t.Error("a closed value is chosen")
	}
	test.TapAt(s, s.Spot(1))
	if want := []int{1, 2, 4, 0, 4, 1}; len(chosen) != len(want) {
		t.Errorf("told %v, want %v", chosen, want)
	}
	s.Set(estimates, 2, 1242, 1518)
	if s.Chosen() != 2 || len(chosen) != 6 {
		t.Error("setting calls back")
	}
}

func TestDotsLieOnOneScale(t *testing.T) {
	program(t, theme.Light)
	s := newEstimates(nil)
	open(t, s, 500, 300)
	middle := func(i int) float32 {
		dot := s.draw.rows[i].dot
		return dot.Position().X + dot.Size().Width/2
	}
	perUnit := (middle(4) - middle(0)) / (1701 - 1494)
	for i, v := range estimates {
		if got, want := middle(i), middle(0)+perUnit*float32(v.Value-1494); got < want-0.5 || got > want+0.5 {
			t.Errorf("%s lies at %v, want %v", v.Label, got, want)
		}
	}
	band := s.draw.rows[3].band
	if left, want := band.Position().X, middle(0)+perUnit*(1345-1494); left < want-0.5 || left > want+0.5 {
		t.Errorf("the band begins at %v, want %v", left, want)
	}
	if hollow := s.draw.rows[2].dot; hollow.FillColor == hollow.StrokeColor {
		t.Error("what is not meant for the case is not hollow")
	}
}

func TestShareTrackMarksTheShare(t *testing.T) {
	program(t, theme.Light)
	track := NewShareTrack()
	track.Set(20, 10, 35)
	open(t, Column(track), 400, 40)
	if got := track.at.Position().X + trackMarker/2; got != 80 {
		t.Errorf("20 %% of 400 lies at %v", got)
	}
	if track.band.Position().X != 40 || track.band.Size().Width != 100 {
		t.Errorf("10 to 35 %% lies at %v, %v wide", track.band.Position().X, track.band.Size().Width)
	}
	track.Set(-5, 10, 35)
	if track.at.Position().X != 0 {
		t.Error("a share under nothing leaves the track")
	}
}

func TestSettingOpensByKey(t *testing.T) {
	program(t, theme.Light)
	toggled := 0
	s := NewSetting("Fat floor", NewField("Part of energy", ""))
	s.OnToggled = func(bool) { toggled++ }
	open(t, Column(s), 400, 300)
	closed := s.Size().Height
	press(s.FocusTarget(), fyne.KeyReturn)
	if !s.Open() || toggled != 1 || s.HeightFor(400) < closed+40 {
		t.Errorf("open %v, told %d times, %v high", s.Open(), toggled, s.HeightFor(400))
	}
	s.SetOpen(false)
	if s.Open() || toggled != 1 {
		t.Error("closing by code calls back")
	}
}

func TestAsideGoesBelowWhereItIsNarrow(t *testing.T) {
	program(t, theme.Light)
	main, side := NewQuietButton("Main", nil), NewQuietButton("Side", nil)
	box := WithAside(400, 300, main, side)
	open(t, box, 900, 300)
	if side.Position().X != 900-300 || main.Size().Width != 900-300-asideGap || side.Position().Y != 0 {
		t.Errorf("wide: main %v, side at %v", main.Size(), side.Position())
	}
	open(t, box, 600, 300)
	if side.Position().X != 0 || side.Position().Y <= main.Size().Height || main.Size().Width != 600 {
		t.Errorf("narrow: main %v, side at %v", main.Size(), side.Position())
	}
	side.Hide()
	open(t, box, 900, 300)
	if main.Size().Width != 900 {
		t.Errorf("alone: %v wide", main.Size().Width)
	}
}

package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

// ShareTrack shows where a share lies between nothing and all, beside the range
// that is usual. Words beside it say the same.
type ShareTrack struct {
	widget.BaseWidget
	line, band, at   *canvas.Rectangle
	share, low, high unit.Percent
}

// NewShareTrack returns a track with nothing on it.
func NewShareTrack() *ShareTrack {
	t := &ShareTrack{line: newBox(), band: newBox(), at: newBox()}
	t.ExtendBaseWidget(t)
	return t
}

// Set shows a share beside a range.
func (t *ShareTrack) Set(share, low, high unit.Percent) {
	if share != t.share || low != t.low || high != t.high {
		t.share, t.low, t.high = share, low, high
		t.Refresh()
	}
}

// The height of a track and the widths of what is on it.
const (
	trackTall   float32 = 12
	trackMarker float32 = 4
	wholeShare          = 100
)

// CreateRenderer implements fyne.Widget.
func (t *ShareTrack) CreateRenderer() fyne.WidgetRenderer {
	t.recolor()
	return &renderer{
		of: t, parts: []fyne.CanvasObject{t.line, t.band, t.at},
		min:    func() fyne.Size { return fyne.NewSize(theme.Four, trackTall) },
		layout: t.layout, recolor: t.recolor,
	}
}

func (t *ShareTrack) layout(size fyne.Size) {
	x := func(p unit.Percent) float32 { return size.Width * float32(min(max(p, 0), wholeShare)/wholeShare) }
	middle := size.Height / 2
	place(t.line, 0, middle-0.5, size.Width, 1)
	place(t.band, x(t.low), middle-3, x(t.high)-x(t.low), 6)
	at := min(max(x(t.share)-trackMarker/2, 0), size.Width-trackMarker)
	place(t.at, at, middle-trackTall/2, trackMarker, trackTall)
}

func (t *ShareTrack) recolor() {
	t.line.FillColor = theme.Colour(theme.Edge)
	t.band.FillColor, t.band.StrokeColor, t.band.StrokeWidth = theme.Colour(theme.Tint), theme.Colour(theme.Edge), 1
	t.at.FillColor, t.at.CornerRadius = theme.Colour(theme.Ink), 1
	t.band.Hidden = t.high <= t.low
}

package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/theme"
)

// Meter shows how much of a whole is filled. The text beside it says the same in
// words; where more than the whole was given it is full and brick.
type Meter struct {
	widget.BaseWidget
	whole, part *canvas.Rectangle
	share       float64
}

// NewMeter returns an empty meter.
func NewMeter() *Meter {
	m := &Meter{whole: newBox(), part: newBox()}
	m.ExtendBaseWidget(m)
	return m
}

// Share returns the filled share, which may be over 1.
func (m *Meter) Share() float64 { return m.share }

// SetShare fills a share of the whole, from 0; over 1 is too much.
func (m *Meter) SetShare(share float64) {
	if share != m.share {
		m.share = share
		m.Refresh()
	}
}

// CreateRenderer implements fyne.Widget.
func (m *Meter) CreateRenderer() fyne.WidgetRenderer {
	const least, height = 96, theme.Unit
	m.recolor()
	return &renderer{
		of: m, parts: []fyne.CanvasObject{m.whole, m.part},
		min: func() fyne.Size { return fyne.NewSize(least, height) },
		layout: func(size fyne.Size) {
			place(m.whole, 0, 0, size.Width, size.Height)
			place(m.part, 0, 0, size.Width*float32(min(1, max(0, m.share))), size.Height)
		},
		recolor: m.recolor,
	}
}

func (m *Meter) recolor() {
	m.whole.FillColor, m.whole.StrokeColor, m.whole.StrokeWidth = theme.Colour(theme.Card), theme.Colour(theme.Edge), 1
	m.part.FillColor = theme.Colour(theme.Spruce)
	if m.share > 1 {
		m.part.FillColor = theme.Colour(theme.Brick)
	}
	m.whole.CornerRadius, m.part.CornerRadius = theme.Half, theme.Half
	m.part.Hidden = m.share <= 0
}

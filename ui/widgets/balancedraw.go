package widgets

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

// The measures of the slider's drawing.
const (
	thumbSize   float32 = 24
	trackHeight float32 = 6
	wallWidth   float32 = 4
	wallHeight  float32 = 28
)

// balanceDrawing is what the slider looks like: the value above, the track with
// ticks, the closed part behind the wall hatched, the ends named below.
type balanceDrawing struct {
	value, left, right, caption *Text
	track, done, thumb, grip    *canvas.Rectangle
	wall                        *canvas.Rectangle
	closed                      *canvas.Raster
	ticks                       []*canvas.Rectangle
}

func newBalanceDrawing() *balanceDrawing {
	d := &balanceDrawing{
		value: NewText("", Strong), left: NewText("more fat", Small), right: NewText("more carbohydrate", Small),
		caption: NewText("", Small),
		track:   newBox(), done: newBox(), thumb: newBox(),
		grip: newBox(), wall: newBox(),
	}
	d.right.SetAlign(fyne.TextAlignTrailing)
	d.closed = canvas.NewRaster(func(w, h int) image.Image {
		p := newPatternPainter(w, h, float64(h)/float64(d.closed.Size().Height))
		p.ground = theme.Colour(theme.Card)
		p.ink = theme.Colour(theme.Edge)
		p.fill(hatch, 0, w)
		return p.img
	})
	for range 11 {
		d.ticks = append(d.ticks, newBox())
	}
	return d
}

func (d *balanceDrawing) parts() []fyne.CanvasObject {
	parts := []fyne.CanvasObject{d.value, d.left, d.right, d.caption}
	for _, tick := range d.ticks {
		parts = append(parts, tick)
	}
	return append(parts, d.track, d.done, d.closed, d.wall, d.thumb, d.grip)
}

// x returns where a balance lies; balanceAt is its inverse.
func (d *balanceDrawing) x(balance unit.Percent, width float32) float32 {
	return thumbSize/2 + (width-thumbSize)*float32(balance/balanceMost)
}

func (d *balanceDrawing) balanceAt(x, width float32) unit.Percent {
	return balanceMost * unit.Percent((x-thumbSize/2)/max(1, width-thumbSize))
}

// arrange returns the height of the slider and, where set is true, places its
// parts.
func (d *balanceDrawing) arrange(s *BalanceSlider, width float32, set bool) float32 {
	d.say(s)
	valueHeight := d.value.HeightFor(width)
	rail := valueHeight + theme.Unit
	middle := rail + wallHeight/2
	ends := rail + wallHeight + theme.Half
	half := (width - theme.Two) / 2
	endsHeight := max(d.left.HeightFor(half), d.right.HeightFor(half))
	height := ends + endsHeight
	captionHeight := float32(0)
	if d.caption.Text() != "" {
		captionHeight = d.caption.HeightFor(width)
		height += theme.Half + captionHeight
	}
	if !set {
		return height
	}
	place(d.value, 0, 0, width, valueHeight)
	place(d.left, 0, ends, half, endsHeight)
	place(d.right, width-half, ends, half, endsHeight)
	place(d.caption, 0, ends+endsHeight+theme.Half, width, captionHeight)
	d.placeRail(s, width, middle)
	return height
}

func (d *balanceDrawing) placeRail(s *BalanceSlider, width, middle float32) {
	first, last, at, wall := d.x(0, width), d.x(balanceMost, width), d.x(s.Value(), width), d.x(s.wall, width)
	top := middle - trackHeight/2
	place(d.track, first, top, last-first, trackHeight)
	place(d.done, first, top, at-first, trackHeight)
	place(d.closed, wall, middle-wallHeight/2+theme.Half, last-wall, wallHeight-theme.Unit)
	place(d.wall, wall-wallWidth/2, middle-wallHeight/2, wallWidth, wallHeight)
	for i, tick := range d.ticks {
		x := d.x(balanceMost*unit.Percent(i)/unit.Percent(len(d.ticks)-1), width)
		place(tick, x-0.5, middle+trackHeight/2+2, 1, theme.Half)
	}
	place(d.thumb, at-thumbSize/2, middle-thumbSize/2, thumbSize, thumbSize)
	place(d.grip, at-1, middle-5, 2, 10)
	setRing(s.ring, s.focused, at-thumbSize/2, middle-thumbSize/2, thumbSize, thumbSize)
	s.ring.CornerRadius = thumbSize/2 + ringGap
}

// say sets the texts.
func (d *balanceDrawing) say(s *BalanceSlider) {
	value := s.Value()
	number := func(p unit.Percent) string { return s.style.Number(float64(p), 0) + " %" }
	d.value.SetText("Carbohydrate " + number(value) + " : fat " + number(balanceMost-value) + " of what protein leaves")
	d.caption.SetText(s.Caption())
}

func (d *balanceDrawing) paint(s *BalanceSlider) {
	d.say(s)
	off := s.Disabled()
	ink := theme.Colour(inkOf(off, theme.Spruce))
	d.track.FillColor, d.track.CornerRadius = theme.Colour(theme.Rule), trackHeight/2
	d.track.StrokeColor, d.track.StrokeWidth = theme.Colour(theme.Edge), 1
	d.done.FillColor, d.done.CornerRadius = ink, trackHeight/2
	d.thumb.FillColor, d.thumb.CornerRadius = ink, thumbSize/2
	d.thumb.StrokeColor, d.thumb.StrokeWidth = theme.Colour(theme.Card), 2
	if s.hovered && !off {
		d.thumb.FillColor = mix(theme.Colour(theme.Spruce), theme.Colour(theme.Ink), 0.2)
	}
	d.grip.FillColor, d.grip.CornerRadius = theme.Colour(theme.OnSpruce), 1
	d.wall.FillColor, d.wall.CornerRadius = theme.Colour(inkOf(off, theme.Ink)), 1
	walled := s.wall < balanceMost
	d.wall.Hidden, d.closed.Hidden = !walled, !walled
	for _, tick := range d.ticks {
		tick.FillColor = theme.Colour(theme.Edge)
	}
	d.value.SetColour(inkOf(off, theme.Ink))
	d.caption.SetColour(inkOf(off, theme.Muted))
	if s.AtWall() {
		d.caption.SetColour(inkOf(off, theme.Rust))
	}
}

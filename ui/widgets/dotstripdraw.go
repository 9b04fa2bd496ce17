package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/ui/theme"
)

// stripDrawing is what a strip looks like: a line for each value with its name,
// its dot on the common scale and the value, and the band behind the dots.
type stripDrawing struct {
	title, caption *Text
	rows           []*stripRow
}

// stripRow is the line of one value. The band and the line of the value in use
// run through it beside the dot, and leave the remark below free.
type stripRow struct {
	back              *canvas.Rectangle
	band, left, right *canvas.Rectangle // the band and its edges
	in                *canvas.Rectangle // the value in use
	label, text, why  *Text
	dot               *canvas.Circle
	at                fyne.Position
	size              fyne.Size
}

// The measures of a strip.
const (
	stripDot    float32 = 11
	stripInUse  float32 = 15
	stripPad            = theme.Half // above and below a line's text
	stripMargin float32 = 0.06       // of the scale, free at both ends
	stripLabel          = 0.42       // of the width, at most, for the names
)

func newStripDrawing(title string) *stripDrawing {
	return &stripDrawing{title: NewText(title, Strong), caption: NewText("", Small)}
}

// make makes as many lines as there are values.
func (d *stripDrawing) make(n int) {
	for len(d.rows) < n {
		d.rows = append(d.rows, &stripRow{
			back: newBox(), band: newBox(), left: newBox(), right: newBox(), in: newBox(), label: NewText("", Body), text: NewLine("", Body),
			why: NewText("", Small), dot: canvas.NewCircle(nothing),
		})
	}
	d.rows = d.rows[:n]
}

func (d *stripDrawing) parts() []fyne.CanvasObject {
	parts := []fyne.CanvasObject{d.title, d.caption}
	for _, r := range d.rows {
		parts = append(parts, r.back, r.band, r.left, r.right, r.in, r.label, r.text, r.why, r.dot)
	}
	return parts
}

// columns are where the scale begins and ends, between names and values.
func (d *stripDrawing) columns(width float32) (from, to float32) {
	label, text := float32(0), float32(0)
	for _, r := range d.rows {
		label = max(label, Strong.measure(r.label.Text()).Width)
		text = max(text, Strong.measure(r.text.Text()).Width)
	}
	from = theme.Unit + min(label+1, width*stripLabel) + theme.Two
	return from, max(from+1, width-theme.Unit-text-theme.Two)
}

// arrange returns the height of the strip and, where set is true, places its
// parts.
func (d *stripDrawing) arrange(s *DotStrip, width float32, set bool) float32 {
	d.say(s)
	y := float32(0)
	if d.title.Text() != "" {
		y = d.title.HeightFor(width) + theme.Half
	}
	top := y
	from, to := d.columns(width)
	for i, r := range d.rows {
		height := r.height(from, width)
		if set {
			r.set(y, width, height, from)
			r.setScale(s, i, from, to)
		}
		y += height
	}
	caption := float32(0)
	if d.caption.Text() != "" {
		caption = d.caption.HeightFor(width)
	}
	if set {
		place(d.title, 0, 0, width, max(0, top-theme.Half))
		place(d.caption, 0, y+theme.Half, width, caption)
		d.placeRing(s, top, width, y)
	}
	if caption > 0 {
		y += theme.Half + caption
	}
	return y
}

// placeRing lays the ring round the line of the value in use, or round all.
func (d *stripDrawing) placeRing(s *DotStrip, top, width, bottom float32) {
	if s.chosen < 0 {
		setRing(s.ring, s.focused, ringGap, top, width-2*ringGap, bottom-top)
		return
	}
	r := d.rows[s.chosen]
	setRing(s.ring, s.focused, r.at.X+ringGap, r.at.Y+ringGap, r.size.Width-2*ringGap, r.size.Height-2*ringGap)
}

// x returns where a value lies on the scale, which holds all values and the band.
func (s *DotStrip) x(value float64, from, to float32) float32 {
	low, high := s.low, s.high
	for i, v := range s.values {
		if i == 0 && s.high <= s.low {
			low, high = v.Value, v.Value
		}
		low, high = min(low, v.Value), max(high, v.Value)
	}
	if high <= low {
		return (from + to) / 2
	}
	free := (to - from) * stripMargin
	return from + free + (to-from-2*free)*float32((value-low)/(high-low))
}

func (r *stripRow) height(from, width float32) float32 {
	height := max(r.label.HeightFor(from-theme.Unit-theme.Two), r.text.lineHeight())
	if r.why.Text() != "" {
		height += r.why.HeightFor(width - 2*theme.Unit)
	}
	return max(height+2*stripPad, theme.Target)
}

func (r *stripRow) set(y, width, height, from float32) {
	r.at, r.size = fyne.NewPos(0, y), fyne.NewSize(width, height)
	place(r.back, 0, y, width, height)
	labelWidth := from - theme.Unit - theme.Two
	labelHeight := r.label.HeightFor(labelWidth)
	place(r.label, theme.Unit, y+stripPad, labelWidth, labelHeight)
	text := r.text.MinSize()
	place(r.text, width-theme.Unit-text.Width, y+stripPad, text.Width, text.Height)
	place(r.why, theme.Unit, y+stripPad+labelHeight, width-2*theme.Unit, r.why.HeightFor(width-2*theme.Unit))
}

// setScale places what stands on the scale.
func (r *stripRow) setScale(s *DotStrip, index int, from, to float32) {
	y, height := r.at.Y, r.size.Height
	if r.why.Text() != "" {
		height = r.why.Position().Y - y
	}
	left, right := s.x(s.low, from, to), s.x(s.high, from, to)
	r.band.Hidden = s.high <= s.low
	r.left.Hidden, r.right.Hidden, r.in.Hidden = r.band.Hidden, r.band.Hidden, s.chosen < 0
	place(r.band, left, y, right-left, height)
	place(r.left, left, y, 1, height)
	place(r.right, right-1, y, 1, height)
	if s.chosen >= 0 {
		place(r.in, s.x(s.values[s.chosen].Value, from, to)-0.5, y, 1, height)
	}
	size := stripDot
	if index == s.chosen {
		size = stripInUse
	}
	at := s.x(s.values[index].Value, from, to)
	place(r.dot, at-size/2, y+stripPad+(r.text.lineHeight()-size)/2, size, size)
}

// say sets the texts.
func (d *stripDrawing) say(s *DotStrip) {
	for i, r := range d.rows {
		v := s.values[i]
		r.label.SetText(v.Label)
		r.text.SetText(v.Text)
		r.why.SetText(v.Why)
		r.why.Hidden = v.Why == ""
	}
}

func (d *stripDrawing) paint(s *DotStrip) {
	d.say(s)
	d.title.Hidden = d.title.Text() == ""
	d.caption.Hidden = d.caption.Text() == ""
	for i, r := range d.rows {
		v := s.values[i]
		r.paint(v, i == s.chosen, s.hovered && i == s.over && !v.Closed && !s.Disabled())
	}
}

func (r *stripRow) paint(v StripValue, inUse, hovered bool) {
	r.back.FillColor, r.back.CornerRadius = nothing, theme.Radius
	if hovered {
		r.back.FillColor = theme.Colour(theme.Hover)
	}
	r.band.FillColor, r.in.FillColor = theme.Colour(theme.Tint), theme.Colour(theme.Spruce)
	r.left.FillColor, r.right.FillColor = theme.Colour(theme.Edge), theme.Colour(theme.Edge)
	style, ink := Body, theme.Colour(theme.Ink)
	if inUse {
		style, ink = Strong, theme.Colour(theme.Spruce)
	}
	r.label.SetStyle(style)
	r.text.SetStyle(style)
	words := fyne.ThemeColorName(theme.Ink)
	if v.Hollow {
		words = theme.Muted
	}
	r.label.SetColour(words)
	r.text.SetColour(words)
	r.dot.FillColor, r.dot.StrokeColor, r.dot.StrokeWidth = ink, ink, 2
	if v.Hollow {
		r.dot.FillColor = theme.Colour(theme.Card)
	}
}

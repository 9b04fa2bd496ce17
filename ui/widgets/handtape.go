package widgets

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	draw "handbreadth/assets/hand"
	"handbreadth/domain/hand"
	"handbreadth/ui/theme"
)

// HandTape is the drawing of an open hand with the lengths that a tape takes,
// numbered: 1 the breadth of the palm, 2 its length, 3 the length of the hand.
type HandTape struct {
	widget.BaseWidget
	dims   draw.Dimensions
	drawn  draw.Drawing // of these dimensions
	height float32
	image  *canvas.Image
	shown  string
	lines  []*canvas.Line // of each length: the line, and an end at either side
	marks  []*tapeMark
}

// tapeMark is a number on a length.
type tapeMark struct {
	disc  *canvas.Circle
	label *Text
}

// The names of the lengths in the drawing, in the order of their numbers.
var tapeSpans = []string{"palm breadth", "palm length", "hand length"}

// linesOfLength is the line and its two ends.
const linesOfLength = 3

// NewHandTape returns a drawing of a height.
func NewHandTape(height float32) *HandTape {
	t := &HandTape{height: height, image: canvas.NewImageFromImage(nil)}
	t.draw(draw.Reference())
	t.image.FillMode = canvas.ImageFillContain
	for i := range tapeSpans {
		for range linesOfLength {
			line := canvas.NewLine(nothing)
			line.StrokeWidth = 2
			t.lines = append(t.lines, line)
		}
		t.marks = append(t.marks, &tapeMark{canvas.NewCircle(nothing), NewLine(strconv.Itoa(i+1), Small)})
		t.marks[i].label.SetAlign(fyne.TextAlignCenter)
	}
	t.ExtendBaseWidget(t)
	return t
}

// SetHand draws the client's own hand.
func (t *HandTape) SetHand(dims draw.Dimensions) {
	if dims != t.dims {
		t.draw(dims)
		t.Refresh()
	}
}

func (t *HandTape) draw(dims draw.Dimensions) {
	t.dims = dims
	t.drawn = draw.Draw(draw.Palm, dims, draw.Options{Detail: draw.DetailFor(float64(t.height))})
}

// CreateRenderer implements fyne.Widget.
func (t *HandTape) CreateRenderer() fyne.WidgetRenderer {
	parts := []fyne.CanvasObject{t.image}
	for _, line := range t.lines {
		parts = append(parts, line)
	}
	for _, mark := range t.marks {
		parts = append(parts, mark.disc, mark.label)
	}
	t.recolor()
	return &renderer{of: t, parts: parts, min: func() fyne.Size { return fyne.NewSize(tapeLeast, t.height) }, layout: t.layout, recolor: t.recolor}
}

// The room at the right of the drawing for the length of the hand, and the least
// width of both.
const (
	tapeSide  float32 = 28
	tapeLeast float32 = 120
)

func (t *HandTape) recolor() {
	for _, line := range t.lines {
		line.StrokeColor = theme.Colour(theme.Spruce)
	}
	for _, mark := range t.marks {
		mark.disc.FillColor, mark.disc.StrokeColor, mark.disc.StrokeWidth = theme.Colour(theme.Card), theme.Colour(theme.Spruce), 1
		mark.label.SetColour(theme.Ink)
	}
}

// layout draws the hand as large as the place allows.
func (t *HandTape) layout(size fyne.Size) {
	d := t.drawn
	perMillimetre := min(t.height/float32(d.Height), max(1, size.Width-tapeSide)/float32(d.Width))
	width, height := float32(d.Width)*perMillimetre, float32(d.Height)*perMillimetre
	t.picture(width, height)
	place(t.image, 0, 0, width, height)
	for i, name := range tapeSpans {
		for _, span := range d.Spans {
			if span.Name != name {
				continue
			}
			from, to := pointAt(span.From, perMillimetre), pointAt(span.To, perMillimetre)
			if i == len(tapeSpans)-1 { // beside the hand: it begins where the palm does
				from.X, to.X = width+tapeSide/2, width+tapeSide/2
			}
			t.mark(i, from, to)
		}
	}
}

func pointAt(p draw.Point, scale float32) fyne.Position {
	return fyne.NewPos(float32(p.X)*scale, float32(p.Y)*scale)
}

// mark sets the line of a length with its ends and its number.
func (t *HandTape) mark(index int, from, to fyne.Position) {
	const end, size = 6, 18
	lines := t.lines[linesOfLength*index:]
	across := fyne.NewPos(end, 0)
	if from.Y == to.Y || abs(from.X-to.X) > abs(from.Y-to.Y) {
		across = fyne.NewPos(0, end)
	}
	setLine(lines[0], from, to)
	setLine(lines[1], from.Subtract(across), from.Add(across))
	setLine(lines[2], to.Subtract(across), to.Add(across))
	share := [...]float32{0.28, 0.35, 0.5}[index] // where nothing else is marked
	at := fyne.NewPos(from.X+(to.X-from.X)*share, from.Y+(to.Y-from.Y)*share)
	mark, line := t.marks[index], Small.measure("1").Height
	place(mark.disc, at.X-size/2, at.Y-size/2, size, size)
	place(mark.label, at.X-size/2, at.Y-line/2, size, line)
}

func setLine(line *canvas.Line, from, to fyne.Position) { line.Position1, line.Position2 = from, to }

func abs(v float32) float32 { return max(v, -v) }

// picture renders the hand where it or the look has changed.
func (t *HandTape) picture(width, height float32) {
	scale := float32(1)
	if on := canvasOf(t); on != nil {
		scale = on.Scale()
	}
	d := drawingOf(hand.Palm, false, t.dims, float64(t.height*scale))
	if key := d.picture.Name(); key != t.shown {
		t.shown = key
		t.image.Image = d.raster(width*scale, height*scale)
		t.image.Refresh()
	}
}

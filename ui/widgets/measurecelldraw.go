package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	draw "handbreadth/assets/hand"
	"handbreadth/assets/icons"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

// cellButton is less or more in a cell: a box with a minus or a plus of bars.
type cellButton struct {
	box  *canvas.Rectangle
	bars []*canvas.Rectangle // across and, for more, upright
}

func newCellButton(more bool) *cellButton {
	b := &cellButton{box: newBox(), bars: []*canvas.Rectangle{newBox()}}
	if more {
		b.bars = append(b.bars, newBox())
	}
	return b
}

func (b *cellButton) parts() []fyne.CanvasObject {
	parts := []fyne.CanvasObject{b.box}
	for _, bar := range b.bars {
		parts = append(parts, bar)
	}
	return parts
}

func (b *cellButton) place(x, y, width, height float32) {
	place(b.box, x, y, width, height)
	length, weight := grown(9), grown(1.5)
	place(b.bars[0], x+(width-length)/2, y+(height-weight)/2, length, weight)
	if len(b.bars) > 1 {
		place(b.bars[1], x+(width-weight)/2, y+(height-length)/2, weight, length)
	}
}

func (b *cellButton) paint(used, over, disabled bool) {
	b.box.CornerRadius, b.box.StrokeWidth = theme.Radius, 1
	b.box.FillColor, b.box.StrokeColor = nothing, theme.Colour(theme.Rule)
	ink := inkOf(disabled, theme.Muted)
	if used {
		b.box.FillColor, b.box.StrokeColor = theme.Colour(theme.Card), theme.Colour(theme.Edge)
		ink = theme.Spruce
	}
	if over {
		b.box.FillColor = theme.Colour(theme.Hover)
	}
	for _, bar := range b.bars {
		bar.FillColor = theme.Colour(ink)
	}
}

func (c *MeasureCell) parts() []fyne.CanvasObject {
	parts := []fyne.CanvasObject{c.box}
	for _, d := range c.drawn {
		parts = append(parts, d.object)
	}
	parts = append(append(parts, c.less.parts()...), c.more.parts()...)
	return append(parts, c.number, c.lock.image, c.free, c.leave, c.note, c.ring)
}

// CreateRenderer implements fyne.Widget.
func (c *MeasureCell) CreateRenderer() fyne.WidgetRenderer {
	c.recolor()
	c.r = &renderer{of: c, min: c.leastSize, layout: c.layout, recolor: c.recolor}
	c.r.parts = c.parts()
	return c.r
}

func (c *MeasureCell) leastSize() fyne.Size {
	width := 2*cellPad + grown(2*cellButtonWidth+cellCountWidth)
	return fyne.NewSize(width, c.HeightFor(max(width, c.Size().Width)))
}

// stepperHeight is the height of the count with less and more.
func stepperHeight() float32 { return max(theme.Target+2, Title.measure("1").Height) }

// HeightFor returns the height that the cell needs at a width.
func (c *MeasureCell) HeightFor(width float32) float32 {
	return cellPad + cellDraw + theme.Half + stepperHeight() + theme.Half + c.noteHeight(width) + cellPad/2
}

// noteHeight keeps room for one line, so that a remark moves nothing.
func (c *MeasureCell) noteHeight(width float32) float32 {
	return max(Small.measure("Hg").Height, c.note.HeightFor(width-2*cellPad))
}

func (c *MeasureCell) layout(size fyne.Size) {
	place(c.box, 0, 0, size.Width, size.Height)
	c.redraw(size.Width - 2*cellPad - smallIcon() - theme.Half)
	for _, d := range c.drawn {
		d.object.Move(d.at.AddXY(cellPad, cellPad))
	}
	place(c.lock.image, size.Width-cellPad-smallIcon(), cellPad, smallIcon(), smallIcon())
	y, height := cellPad+cellDraw+theme.Half, stepperHeight()
	button, count := grown(cellButtonWidth), grown(cellCountWidth)
	c.less.place(cellPad, y, button, height)
	place(c.number, cellPad+button, y+(height-Title.measure("1").Height)/2, count, Title.measure("1").Height)
	c.more.place(cellPad+button+count, y, button, height)
	c.placeWords(cellPad+2*button+count+theme.Unit, y, size.Width-cellPad, height)
	note := c.noteHeight(size.Width)
	place(c.note, cellPad, y+height+theme.Half, size.Width-2*cellPad, note)
	setRing(c.ring, c.focused, 0, 0, size.Width, size.Height)
}

// placeWords sets what else a click can do, where there is room: lock or free
// the count, and leave the measure out.
func (c *MeasureCell) placeWords(x, y, right, height float32) {
	line := Small.measure("Hg").Height
	for _, word := range []*Text{c.free, c.leave} {
		width := word.MinSize().Width
		if word.Hidden || x+width > right {
			word.Hidden = true
			continue
		}
		place(word, x, y+(height-line)/2, width, line)
		x += width + theme.Unit
	}
}

func (c *MeasureCell) recolor() {
	c.box.CornerRadius, c.box.StrokeWidth = theme.Radius, 1
	c.box.FillColor, c.box.StrokeColor = nothing, nothing
	if c.locked {
		c.box.FillColor, c.box.StrokeColor = theme.Colour(theme.Tint), theme.Colour(theme.Edge)
	}
	c.lock.set(icons.Lock, theme.Ink)
	c.lock.image.Hidden = !c.locked
	c.less.paint(c.inUse(), c.over == cellLess && c.hovered, c.Disabled())
	c.more.paint(c.inUse(), c.over == cellMore && c.hovered, c.Disabled())
	c.number.SetColour(inkOf(c.Disabled(), theme.Ink))
	if c.count == 0 {
		c.number.SetColour(theme.Muted)
	}
	c.free.Hidden, c.leave.Hidden = !c.inUse(), !c.inUse() || (c.count == 0 && c.locked)
	c.free.SetText("lock")
	if c.locked {
		c.free.SetText("free")
	}
	for _, word := range []*Text{c.free, c.leave} {
		word.SetColour(theme.Spruce)
	}
}

// drawnAt is a drawing and its place in the row.
type drawnAt struct {
	object fyne.CanvasObject
	at     fyne.Position
}

// cellDrawing is what the drawings of a cell depend on.
type cellDrawing struct {
	count       unit.Measure
	room, scale float32
	look        string
}

// redraw makes the drawings that fit into a width, where something has changed.
func (c *MeasureCell) redraw(room float32) {
	scale := float32(1)
	if on := canvasOf(c); on != nil {
		scale = on.Scale()
	}
	now := cellDrawing{c.count, room, scale, theme.Hex(theme.Ink) + theme.Hex(theme.Card)}
	if now == c.drawnFor {
		return
	}
	c.drawnFor = now
	c.drawn = drawMeasures(c.kind, c.count, room, scale)
	if c.r != nil {
		c.r.parts = c.parts()
	}
}

// drawMeasures returns the drawings of a count in a row: as many as there are
// where they fit, else one with the number before it.
func drawMeasures(kind hand.Kind, count unit.Measure, room, scale float32) []drawnAt {
	wholes, half := split(count)
	whole := drawingOf(kind, false, draw.Reference(), float64(cellDraw*scale))
	width := min(cellDraw*whole.aspect, cellDraw*1.25)
	each := width + theme.Half
	n := wholes
	if half {
		n++
	}
	var row []drawnAt
	x := float32(0)
	if wholes > 1 && (n > mostDrawn || float32(n)*each-theme.Half > room) {
		times := NewLine(unit.Measure(wholes).String()+" ×", Strong)
		times.Resize(times.MinSize())
		row = append(row, drawnAt{times, fyne.NewPos(0, (cellDraw-times.MinSize().Height)/2)})
		x, wholes = times.MinSize().Width+theme.Half, 1
	}
	for range wholes {
		row = append(row, drawnAt{cellImage(whole, width, scale), fyne.NewPos(x, 0)})
		x += each
	}
	if half {
		halved := drawingOf(kind, true, draw.Reference(), float64(cellDraw*scale))
		row = append(row, drawnAt{cellImage(halved, width, scale), fyne.NewPos(x, 0)})
	}
	return row
}

func cellImage(d handDrawing, width, scale float32) *canvas.Image {
	image := canvas.NewImageFromImage(d.raster(width*scale, cellDraw*scale))
	image.FillMode = canvas.ImageFillContain
	image.Resize(fyne.NewSize(width, cellDraw))
	return image
}

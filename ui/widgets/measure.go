package widgets

import (
	"fmt"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	draw "handbreadth/assets/hand"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

// mostDrawn is how many whole measures are drawn one by one; of more, one is
// drawn with the number before it.
const mostDrawn = 4

// MeasureFigure is a count of one hand measure as drawings: wholes, and a half
// drawn as a half, with the count in words below.
type MeasureFigure struct {
	composite
	kind    hand.Kind
	size    float32
	count   unit.Measure
	dims    draw.Dimensions
	row     *fyne.Container
	caption *Text
	foods   *Text
	shown   string // what the row was last drawn for
}

// NewMeasureFigure returns a figure of no measures, drawn as high as size.
func NewMeasureFigure(kind hand.Kind, size float32) *MeasureFigure {
	m := &MeasureFigure{
		kind: kind, size: size, dims: draw.Reference(),
		row: RowGap(theme.Half), caption: NewText("", Strong), foods: NewText(kind.Foods(), Small),
	}
	m.recolor = m.drawRow
	m.drawRow()
	m.init(m, ColumnGap(2, m.row, m.caption, m.foods))
	m.show()
	return m
}

// Count returns the count.
func (m *MeasureFigure) Count() unit.Measure { return m.count }

// Caption returns the count in words.
func (m *MeasureFigure) Caption() string { return m.caption.Text() }

// SetCount shows another count, to the nearest half.
func (m *MeasureFigure) SetCount(count unit.Measure) {
	m.count = max(0, count)
	m.show()
}

// SetHand draws the client's own hand.
func (m *MeasureFigure) SetHand(dims draw.Dimensions) {
	m.dims = dims
	m.show()
}

// SetFoods changes the line below the count; "" removes it.
func (m *MeasureFigure) SetFoods(foods string) {
	m.foods.SetText(foods)
	m.show()
}

func (m *MeasureFigure) show() {
	wholes, half := split(m.count)
	m.caption.SetText(m.kind.Counted(m.count))
	m.caption.SetColour(theme.Ink)
	if wholes == 0 && !half {
		m.caption.SetText("no " + m.kind.Name())
		m.caption.SetColour(theme.Muted)
	}
	m.foods.Hidden = m.foods.Text() == ""
	m.drawRow()
	m.Refresh()
}

// split returns the wholes and whether a half is left.
func split(count unit.Measure) (wholes int, half bool) {
	halves := int(math.Round(2 * float64(count)))
	return halves / 2, halves%2 == 1
}

// drawRow makes the drawings, when the count, the hand or the look has changed.
func (m *MeasureFigure) drawRow() {
	wholes, half := split(m.count)
	whole, halved := m.drawing(false), m.drawing(true)
	key := fmt.Sprint(m.count, whole.picture.Name(), halved.picture.Name(), m.scale())
	if key == m.shown {
		return
	}
	m.shown = key
	m.row.Objects = nil
	if wholes > mostDrawn {
		m.row.Objects = append(m.row.Objects, NewLine(unit.Measure(wholes).String()+" ×", Strong))
		wholes = 1
	}
	for range wholes {
		m.row.Objects = append(m.row.Objects, m.image(whole))
	}
	if half {
		m.row.Objects = append(m.row.Objects, m.image(halved))
	}
	if len(m.row.Objects) == 0 {
		m.row.Objects = append(m.row.Objects, newGap(m.size))
	}
}

func (m *MeasureFigure) drawing(half bool) handDrawing {
	return drawingOf(m.kind, half, m.dims, float64(m.size*m.scale()))
}

// scale is how many device pixels a unit has where the figure is.
func (m *MeasureFigure) scale() float32 {
	if m.self != nil {
		if c := canvasOf(m); c != nil {
			return c.Scale()
		}
	}
	return 1
}

// image is one drawing in a box of the figure's height and no wider than high.
func (m *MeasureFigure) image(d handDrawing) *canvas.Image {
	size := fyne.NewSize(min(m.size*d.aspect, m.size*1.25), m.size)
	image := canvas.NewImageFromImage(d.raster(size.Width*m.scale(), size.Height*m.scale()))
	image.FillMode = canvas.ImageFillContain
	image.SetMinSize(size)
	return image
}

// newGap is an empty place as high as a drawing, so that captions line up.
func newGap(height float32) *canvas.Rectangle {
	gap := newBox()
	gap.SetMinSize(fyne.NewSize(1, height))
	return gap
}

package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"

	"handbreadth/assets/icons"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

// MeasureCell is a count of one hand measure that can be changed: drawn, with
// the count between less and more, and a remark below. A count that is locked
// shows so. By keyboard: up and down change it by a half, a digit sets it, 0
// leaves the measure out, L locks it as it is and frees it, Delete frees it; the
// other arrows and Page keys go to the cells beside. With the mouse: less and
// more, a drag upwards and downwards, a click on the count to lock and free it.
type MeasureCell struct {
	control
	// OnSet is told of another count.
	OnSet func(n unit.Measure)
	// OnLock is asked to lock the count as it is, or to free it.
	OnLock func(locked bool)
	// OnGo is asked to move the focus by so many cells across and down.
	OnGo func(across, down int)

	kind   hand.Kind
	count  unit.Measure
	locked bool
	over   cellPart
	pulled float32 // of a drag, that was not counted yet

	r           *renderer
	box         *canvas.Rectangle
	drawn       []drawnAt
	drawnFor    cellDrawing
	number      *Text
	less, more  *cellButton
	lock        *icon
	free, leave *Text
	note        *Text
}

// cellPart is what a click in a cell means.
type cellPart int

const (
	cellGround cellPart = iota
	cellLess
	cellMore
	cellCount
	cellFree
	cellLeave
)

// The sizes of a cell.
const (
	cellDraw        float32 = 32 // height of the drawings
	cellPad         float32 = 8
	cellButtonWidth float32 = 24
	cellCountWidth  float32 = 38
)

// mostOfMeasure is the most that a cell counts up to.
const mostOfMeasure unit.Measure = 48

// NewMeasureCell returns a cell with a count of nought.
func NewMeasureCell(kind hand.Kind) *MeasureCell {
	c := &MeasureCell{
		kind: kind, box: newBox(), number: NewLine("0", Title), less: newCellButton(false), more: newCellButton(true),
		lock: newIcon(icons.Lock, theme.Ink, smallIcon()),
		free: NewLine("", Small), leave: NewLine("none", Small), note: NewText("", Small),
	}
	c.number.SetAlign(fyne.TextAlignCenter)
	c.init(c)
	return c
}

// Count returns the count.
func (c *MeasureCell) Count() unit.Measure { return c.count }

// Locked reports whether the count shows as locked.
func (c *MeasureCell) Locked() bool { return c.locked }

// Note returns the remark.
func (c *MeasureCell) Note() string { return c.note.Text() }

// Set shows a count, whether it is locked, and a remark below.
func (c *MeasureCell) Set(count unit.Measure, locked bool, note string) {
	if count == c.count && locked == c.locked && note == c.note.Text() {
		return
	}
	c.count, c.locked = count, locked
	c.number.SetText(count.String())
	c.note.SetText(note)
	c.Refresh()
}

// Spot returns the middle of a part, from the cell's top left corner: "less",
// "more" or "count".
func (c *MeasureCell) Spot(part string) fyne.Position {
	object := map[string]fyne.CanvasObject{"less": c.less.box, "more": c.more.box, "count": c.number}[part]
	return object.Position().AddXY(object.Size().Width/2, object.Size().Height/2)
}

// Tapped does what the part under the pointer is for.
func (c *MeasureCell) Tapped(ev *fyne.PointEvent) {
	if c.Disabled() {
		return
	}
	c.takeFocus()
	switch c.find(ev.Position) {
	case cellLess:
		c.step(-1)
	case cellMore:
		c.step(1)
	case cellCount, cellFree:
		c.toggle()
	case cellLeave:
		c.set(0)
	}
}

// dragStep is how far a drag goes for half a measure.
const dragStep float32 = 20

// Dragged changes the count by a half for each step upwards or downwards.
func (c *MeasureCell) Dragged(ev *fyne.DragEvent) {
	if c.Disabled() {
		return
	}
	c.takeFocus()
	c.pulled -= ev.Dragged.DY
	steps := int(c.pulled / dragStep)
	c.pulled -= float32(steps) * dragStep
	c.step(steps)
}

// DragEnd forgets what was not counted.
func (c *MeasureCell) DragEnd() { c.pulled = 0 }

// TypedKey changes, locks and moves.
func (c *MeasureCell) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyUp:
		c.step(1)
	case fyne.KeyDown:
		c.step(-1)
	case fyne.KeyDelete, fyne.KeyBackspace:
		if c.locked {
			c.toggle()
		}
	case fyne.KeyLeft:
		c.leaveFor(-1, 0)
	case fyne.KeyRight:
		c.leaveFor(1, 0)
	case fyne.KeyPageUp:
		c.leaveFor(0, -1)
	case fyne.KeyPageDown:
		c.leaveFor(0, 1)
	default:
		commonKey(c, key.Name)
	}
}

// TypedRune sets a count and locks.
func (c *MeasureCell) TypedRune(r rune) {
	switch {
	case r >= '0' && r <= '9':
		c.set(unit.Measure(r - '0'))
	case r == 'l' || r == 'L':
		c.toggle()
	case r == '+':
		c.step(1)
	case r == '-':
		c.step(-1)
	}
}

func (c *MeasureCell) step(halves int) {
	if halves != 0 {
		c.set(c.count + unit.Measure(halves)/2)
	}
}

// set asks for a count. One that is as it was, and locked, is no change.
func (c *MeasureCell) set(n unit.Measure) {
	n = min(max(n, 0), mostOfMeasure)
	if c.Disabled() || c.OnSet == nil || (n == c.count && c.locked) {
		return
	}
	c.OnSet(n)
}

func (c *MeasureCell) toggle() {
	if !c.Disabled() && c.OnLock != nil {
		c.OnLock(!c.locked)
	}
}

func (c *MeasureCell) leaveFor(across, down int) {
	if c.OnGo != nil {
		c.OnGo(across, down)
	}
}

// MouseMoved follows the pointer over the parts.
func (c *MeasureCell) MouseMoved(ev *desktop.MouseEvent) {
	if part := c.find(ev.Position); part != c.over {
		c.over = part
		c.Refresh()
	}
}

// MouseOut notes that the pointer has left.
func (c *MeasureCell) MouseOut() {
	c.over = cellGround
	c.control.MouseOut()
}

// find returns the part at a position.
func (c *MeasureCell) find(at fyne.Position) cellPart {
	for _, part := range []struct {
		object fyne.CanvasObject
		is     cellPart
	}{{c.less.box, cellLess}, {c.more.box, cellMore}, {c.number, cellCount}, {c.lock.image, cellFree}, {c.free, cellFree}, {c.leave, cellLeave}} {
		if part.object.Visible() && inside(at, part.object.Position(), part.object.Size()) {
			return part.is
		}
	}
	return cellGround
}

// inUse reports whether the words of a cell are shown: while it has the focus
// or the pointer.
func (c *MeasureCell) inUse() bool { return (c.focused || c.hovered) && !c.Disabled() }

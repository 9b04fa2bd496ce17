package widgets

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
)

// Column stacks objects, one unit apart.
func Column(objects ...fyne.CanvasObject) *fyne.Container {
	return ColumnGap(theme.Unit, objects...)
}

// ColumnGap stacks objects with a gap between them. Each gets the full width
// and the height that it needs at that width.
func ColumnGap(gap float32, objects ...fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: &columnLayout{gap: gap}, Objects: objects}
}

// columnLayout remembers the width that it was given, since a Fyne layout is
// asked for its least height without being told the width.
type columnLayout struct{ gap, width float32 }

func (l *columnLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	width := float32(0)
	for _, o := range objects {
		if o.Visible() {
			width = max(width, o.MinSize().Width)
		}
	}
	return fyne.NewSize(width, l.heightFor(objects, max(width, l.width)))
}

func (l *columnLayout) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	height, gap := float32(0), float32(0)
	for _, o := range objects {
		if o.Visible() {
			height += gap + heightOf(o, width)
			gap = l.gap
		}
	}
	return height
}

func (l *columnLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	l.width = size.Width
	y := float32(0)
	for _, o := range objects {
		if o.Visible() {
			height := heightOf(o, size.Width)
			place(o, 0, y, size.Width, height)
			y += height + l.gap
		}
	}
}

// Row sets objects side by side, one unit apart, each as wide as it needs; what
// does not fit goes on to the next line.
func Row(objects ...fyne.CanvasObject) *fyne.Container {
	return RowGap(theme.Unit, objects...)
}

// RowGap is [Row] with a gap between the objects and between the lines.
func RowGap(gap float32, objects ...fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: &rowLayout{gap: gap}, Objects: objects}
}

type rowLayout struct{ gap, width float32 }

func (l *rowLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	widest := float32(0)
	for _, o := range objects {
		if o.Visible() {
			widest = max(widest, o.MinSize().Width)
		}
	}
	width := l.width
	if width == 0 {
		width = l.wide(objects)
	}
	return fyne.NewSize(widest, l.heightFor(objects, max(widest, width)))
}

// wide is the width at which all objects stand on one line.
func (l *rowLayout) wide(objects []fyne.CanvasObject) float32 {
	all, gap := float32(0), float32(0)
	for _, o := range objects {
		if o.Visible() {
			all += gap + o.MinSize().Width
			gap = l.gap
		}
	}
	return all
}

// wideWidth is the width at which an object needs no second line, where that is
// more than its least.
func wideWidth(object fyne.CanvasObject) float32 {
	least := object.MinSize().Width
	if box, ok := object.(*fyne.Container); ok {
		if row, is := box.Layout.(*rowLayout); is {
			return max(least, row.wide(box.Objects))
		}
	}
	return least
}

func (l *rowLayout) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	return l.flow(objects, width, func(fyne.CanvasObject, fyne.Position, fyne.Size) {})
}

func (l *rowLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	l.width = size.Width
	l.flow(objects, size.Width, func(o fyne.CanvasObject, at fyne.Position, s fyne.Size) {
		o.Move(at)
		o.Resize(s)
	})
}

// flow sets the objects in lines, middled on each line, and returns the height.
func (l *rowLayout) flow(objects []fyne.CanvasObject, width float32, set func(fyne.CanvasObject, fyne.Position, fyne.Size)) float32 {
	y := float32(0)
	for start := 0; start < len(objects); {
		end, x, lineHeight := start, float32(0), float32(0)
		for ; end < len(objects); end++ {
			if !objects[end].Visible() {
				continue
			}
			s := objects[end].MinSize()
			if x > 0 && x+s.Width > width+0.5 {
				break
			}
			x += s.Width + l.gap
			lineHeight = max(lineHeight, s.Height)
		}
		x = 0
		for _, o := range objects[start:end] {
			if o.Visible() {
				s := o.MinSize()
				set(o, fyne.NewPos(x, y+(lineHeight-s.Height)/2), fyne.NewSize(min(s.Width, width), s.Height))
				x += s.Width + l.gap
			}
		}
		if lineHeight > 0 {
			y += lineHeight + l.gap
		}
		start = end
	}
	return max(0, y-l.gap)
}

// Grid sets objects in equal columns, as many as fit with the least width each,
// two units apart across and one and a half down. A row is as high as its
// highest object.
func Grid(leastWidth float32, objects ...fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: &gridLayout{least: leastWidth, most: len(objects)}, Objects: objects}
}

// Beside sets two objects side by side while each gets the least width, else
// one below the other.
func Beside(leastWidth float32, left, right fyne.CanvasObject) *fyne.Container {
	return Grid(leastWidth, left, right)
}

type gridLayout struct {
	least, width float32
	most         int
}

func (l *gridLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	width := float32(0)
	for _, o := range objects {
		if o.Visible() {
			width = max(width, o.MinSize().Width)
		}
	}
	return fyne.NewSize(width, l.heightFor(objects, max(width, l.width)))
}

func (l *gridLayout) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	return l.each(objects, width, func(fyne.CanvasObject, fyne.Position, fyne.Size) {})
}

func (l *gridLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	l.width = size.Width
	l.each(objects, size.Width, func(o fyne.CanvasObject, at fyne.Position, s fyne.Size) {
		o.Move(at)
		o.Resize(s)
	})
}

func (l *gridLayout) each(objects []fyne.CanvasObject, width float32, set func(fyne.CanvasObject, fyne.Position, fyne.Size)) float32 {
	const across, down = theme.Two, theme.Unit + theme.Half
	var shown []fyne.CanvasObject
	least := l.least
	for _, o := range objects {
		if o.Visible() {
			shown = append(shown, o)
			least = max(least, o.MinSize().Width)
		}
	}
	columns := max(1, min(len(shown), l.most, int((width+across)/(least+across))))
	cell := (width - across*float32(columns-1)) / float32(columns)
	y, gap := float32(0), float32(0)
	for start := 0; start < len(shown); start += columns {
		row := shown[start:min(start+columns, len(shown))]
		height := float32(0)
		for _, o := range row {
			height = max(height, heightOf(o, cell))
		}
		y += gap
		for i, o := range row {
			set(o, fyne.NewPos(float32(i)*(cell+across), y), fyne.NewSize(cell, height))
		}
		y += height
		gap = down
	}
	return y
}

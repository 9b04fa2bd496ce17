package widgets

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
)

// HeadedRow sets a head of a fixed width, which grows with the text, before
// cells that share the rest equally, all as high as the highest. Rows with the
// same head and as many cells make a table.
func HeadedRow(head float32, objects ...fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: &headedLayout{head: head}, Objects: objects}
}

// HeadedLine is [HeadedRow] with everything in the middle of the line, for text
// beside what can be used.
func HeadedLine(head float32, objects ...fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: &headedLayout{head: head, middle: true}, Objects: objects}
}

type headedLayout struct {
	head, width float32
	middle      bool
}

// headedGap lies between the cells.
const headedGap = theme.Unit

// cell returns the width of each cell.
func (l *headedLayout) cell(objects []fyne.CanvasObject, width float32) float32 {
	cells := float32(len(objects) - 1)
	return max(0, (width-grown(l.head)-cells*headedGap)/cells)
}

func (l *headedLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := float32(0)
	for _, o := range objects[1:] {
		least = max(least, o.MinSize().Width)
	}
	width := grown(l.head) + float32(len(objects)-1)*(headedGap+least)
	return fyne.NewSize(width, l.heightFor(objects, max(width, l.width)))
}

func (l *headedLayout) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	height := heightOf(objects[0], grown(l.head))
	for _, o := range objects[1:] {
		height = max(height, heightOf(o, l.cell(objects, width)))
	}
	return height
}

func (l *headedLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	l.width = size.Width
	l.place(objects[0], 0, grown(l.head), size.Height)
	cell := l.cell(objects, size.Width)
	for i, o := range objects[1:] {
		l.place(o, grown(l.head)+headedGap+float32(i)*(cell+headedGap), cell, size.Height)
	}
}

func (l *headedLayout) place(object fyne.CanvasObject, x, width, height float32) {
	if !l.middle {
		place(object, x, 0, width, height)
		return
	}
	own := heightOf(object, width)
	place(object, x, (height-own)/2, width, own)
}

// Sized gives an object a width of its own, which grows with the text.
func Sized(width float32, object fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: sizedLayout(width), Objects: []fyne.CanvasObject{object}}
}

type sizedLayout float32

func (l sizedLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(grown(float32(l)), heightOf(objects[0], grown(float32(l))))
}

func (l sizedLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	place(objects[0], 0, 0, size.Width, size.Height)
}

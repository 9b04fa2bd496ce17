package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/ui/theme"
)

// Card is a sheet on the paper: a title and what belongs to it. Cards do not
// lie on cards; inside one, hairlines and space part things.
type Card struct {
	composite
	box     *canvas.Rectangle
	title   *Text
	content *fyne.Container
}

// NewCard returns a card. The title may be empty.
func NewCard(title string, content fyne.CanvasObject) *Card {
	c := &Card{box: newBox(), title: NewText(title, Title), content: Column(content)}
	c.box.CornerRadius, c.box.StrokeWidth = theme.Radius, 1
	c.recolor = func() {
		c.box.FillColor, c.box.StrokeColor = theme.Colour(theme.Card), theme.Colour(theme.Rule)
	}
	c.title.Hidden = title == ""
	inner := Inset(theme.Two, ColumnGap(theme.Unit+theme.Half, c.title, c.content))
	c.init(c, &fyne.Container{Layout: backLayout{}, Objects: []fyne.CanvasObject{c.box, inner}})
	return c
}

// SetTitle changes the title; "" shows none.
func (c *Card) SetTitle(title string) {
	c.title.SetText(title)
	c.title.Hidden = title == ""
	c.Refresh()
}

// SetContent changes what is in the card.
func (c *Card) SetContent(content fyne.CanvasObject) {
	c.content.Objects = []fyne.CanvasObject{content}
	c.Refresh()
}

// backLayout lays the first object behind the second.
type backLayout struct{}

func (backLayout) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[1].MinSize() }

func (backLayout) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	return heightOf(objects[1], width)
}

func (backLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	place(objects[0], 0, 0, size.Width, size.Height)
	place(objects[1], 0, 0, size.Width, size.Height)
}

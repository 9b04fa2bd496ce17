package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// composite is a widget that is made of others laid out in one body.
type composite struct {
	widget.BaseWidget
	self    fyne.Widget
	body    fyne.CanvasObject
	recolor func() // may be nil
	gone    func() // may be nil
}

// init makes self the widget that the composite belongs to.
func (c *composite) init(self fyne.Widget, body fyne.CanvasObject) {
	c.self, c.body = self, body
	c.ExtendBaseWidget(self)
}

// HeightFor returns the height that the widget needs at a width.
func (c *composite) HeightFor(width float32) float32 { return heightOf(c.body, width) }

// CreateRenderer implements fyne.Widget.
func (c *composite) CreateRenderer() fyne.WidgetRenderer {
	if c.recolor != nil {
		c.recolor()
	}
	return &renderer{
		of:      c.self,
		parts:   []fyne.CanvasObject{c.body},
		min:     func() fyne.Size { return c.body.MinSize() },
		layout:  func(size fyne.Size) { relayout(c.body, size) },
		recolor: c.recolor,
		gone:    c.gone,
	}
}

// relayout gives an object its size and lays out what is in it, even where the
// size is as before.
func relayout(object fyne.CanvasObject, size fyne.Size) {
	object.Resize(size)
	box, ok := object.(*fyne.Container)
	if !ok || box.Layout == nil {
		return
	}
	box.Layout.Layout(box.Objects, size)
	for _, o := range box.Objects {
		if inner, is := o.(*fyne.Container); is && inner.Visible() {
			relayout(inner, inner.Size())
		}
	}
}

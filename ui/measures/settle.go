package measures

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// settle lays out a page's content anew after parts of it changed their height.
// It moves and resizes; it draws nothing that has not changed.
func settle(scroll *container.Scroll) {
	scroll.Refresh()
	if content, ok := scroll.Content.(*fyne.Container); ok {
		layOut(content)
	}
}

func layOut(c *fyne.Container) {
	if c.Layout != nil {
		c.Layout.Layout(c.Objects, c.Size())
	}
	for _, o := range c.Objects {
		if inner, ok := o.(*fyne.Container); ok && inner.Visible() {
			layOut(inner)
		}
	}
}

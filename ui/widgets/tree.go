package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// parent is a widget of this package that tells its parts; Fyne keeps the
// renderers of widgets to itself.
type parent interface{ Parts() []fyne.CanvasObject }

// Parts returns what the widget is made of.
func (c *composite) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{c.body} }

// childrenOf returns the objects directly below one.
func childrenOf(object fyne.CanvasObject) []fyne.CanvasObject {
	switch o := object.(type) {
	case *fyne.Container:
		return o.Objects
	case parent:
		return o.Parts()
	case *container.Scroll:
		return []fyne.CanvasObject{o.Content}
	case *container.ThemeOverride:
		return []fyne.CanvasObject{o.Content}
	case *container.Split:
		return []fyne.CanvasObject{o.Leading, o.Trailing}
	}
	return nil
}

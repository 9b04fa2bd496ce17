package handout

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// pane holds the section and tells when it is shown again.
type pane struct {
	widget.BaseWidget
	content fyne.CanvasObject
	shown   func()
}

func newPane(content fyne.CanvasObject, shown func()) *pane {
	p := &pane{content: content, shown: shown}
	p.ExtendBaseWidget(p)
	return p
}

// Show shows the section.
func (p *pane) Show() {
	p.BaseWidget.Show()
	p.shown()
}

// CreateRenderer implements fyne.Widget.
func (p *pane) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(p.content) }

// settle lays out anew after something changed its height.
func (s *Screen) settle() {
	if s.page == nil {
		return
	}
	scroll := s.page.Scroll()
	scroll.Refresh()
	layOut(scroll)
	s.sides.Refresh()
}

// layOut gives what is in a page its place again. It moves and resizes; it
// draws nothing that has not changed.
func layOut(scroll *container.Scroll) {
	if content, ok := scroll.Content.(*fyne.Container); ok {
		layOutAll(content)
	}
}

func layOutAll(c *fyne.Container) {
	if c.Layout != nil {
		c.Layout.Layout(c.Objects, c.Size())
	}
	for _, o := range c.Objects {
		if inner, ok := o.(*fyne.Container); ok && inner.Visible() {
			layOutAll(inner)
		}
	}
}

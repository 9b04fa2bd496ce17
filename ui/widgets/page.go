package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"handbreadth/ui/theme"
)

// Page scrolls its content up and down and keeps what has the focus in view.
type Page struct {
	composite
	scroll *container.Scroll
}

// pages are those that are in a window now.
var pages = map[*Page]bool{}

// NewPage returns a page with a margin of three units.
func NewPage(content fyne.CanvasObject) *Page {
	return NewPageInset(theme.Three, content)
}

// NewPageInset returns a page with a margin of its own; keep it at half a unit
// or more, so that the ring round the focus is not cut off.
func NewPageInset(margin float32, content fyne.CanvasObject) *Page {
	p := &Page{scroll: container.NewVScroll(Inset(margin, content))}
	p.init(p, p.scroll)
	return p
}

// Scroll returns Fyne's scroll container, for its offset.
func (p *Page) Scroll() *container.Scroll { return p.scroll }

// CreateRenderer implements fyne.Widget.
func (p *Page) CreateRenderer() fyne.WidgetRenderer {
	pages[p] = true
	p.gone = func() { delete(pages, p) }
	return p.composite.CreateRenderer()
}

// reveal scrolls the page that holds an object so that the object is in view.
func reveal(object fyne.CanvasObject) {
	for p := range pages {
		if at, found := offsetIn(p.scroll.Content, object, fyne.NewPos(0, 0)); found {
			p.show(at.Y, object.Size().Height)
		}
	}
}

// show scrolls as little as needed, with a margin that leaves the label above
// and the hint below in view.
func (p *Page) show(y, height float32) {
	const margin = theme.Four + theme.Unit
	view := p.scroll.Size().Height
	top, bottom := p.scroll.Offset.Y, p.scroll.Offset.Y+view
	target := top
	if y+height+margin > bottom {
		target = y + height + margin - view
	}
	if y-margin < target {
		target = max(0, y-margin)
	}
	if target != top {
		p.scroll.ScrollToOffset(fyne.NewPos(0, target))
	}
}

// offsetIn finds an object below root and returns where it lies there.
func offsetIn(root, object fyne.CanvasObject, at fyne.Position) (fyne.Position, bool) {
	if root == object {
		return at, true
	}
	for _, child := range childrenOf(root) {
		if found, ok := offsetIn(child, object, at.Add(child.Position())); ok {
			return found, true
		}
	}
	return fyne.Position{}, false
}

package widgets

import "fyne.io/fyne/v2"

// Settle lays the content out anew after something came, went or changed its
// height, as the next frame would, so that what is scrolled to or focused next
// is where it will be seen.
func (p *Page) Settle() {
	content := p.scroll.Content.(*fyne.Container)
	view := p.scroll.Size()
	if view.Width == 0 {
		return
	}
	size := fyne.NewSize(view.Width, max(view.Height, content.MinSize().Height))
	content.Resize(size)
	content.Layout.Layout(content.Objects, size)
	p.scroll.Refresh()
}

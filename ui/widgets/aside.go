package widgets

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
)

// WithAside sets a main part beside one of a fixed width that grows with the
// text. Where the main part would get less than its least width, the other goes
// below it. Both are as high as the higher one needs while they stand side by
// side.
func WithAside(leastMain, aside float32, main, side fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: &asideLayout{leastMain: leastMain, aside: aside}, Objects: []fyne.CanvasObject{main, side}}
}

type asideLayout struct{ leastMain, aside, width float32 }

// asideGap lies between the parts, across and down.
const asideGap = theme.Two

// beside reports whether both parts fit side by side at a width.
func (l *asideLayout) beside(width float32) bool {
	return width >= grown(l.leastMain)+asideGap+grown(l.aside)
}

func (l *asideLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	width := float32(0)
	for _, o := range objects {
		if o.Visible() {
			width = max(width, o.MinSize().Width)
		}
	}
	return fyne.NewSize(width, l.heightFor(objects, max(width, l.width)))
}

func (l *asideLayout) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	return l.arrange(objects, width, func(fyne.CanvasObject, float32, float32, float32, float32) {})
}

func (l *asideLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	l.width = size.Width
	l.arrange(objects, size.Width, place)
}

func (l *asideLayout) arrange(objects []fyne.CanvasObject, width float32, set func(o fyne.CanvasObject, x, y, w, h float32)) float32 {
	main, side := objects[0], objects[1]
	switch {
	case !main.Visible() && !side.Visible():
		return 0
	case !main.Visible():
		return l.alone(side, width, set)
	case !side.Visible():
		return l.alone(main, width, set)
	}
	if !l.beside(width) {
		below := l.alone(main, width, set) + asideGap
		height := heightOf(side, width)
		set(side, 0, below, width, height)
		return below + height
	}
	sideWidth := grown(l.aside)
	mainWidth := width - asideGap - sideWidth
	height := max(heightOf(main, mainWidth), heightOf(side, sideWidth))
	set(main, 0, 0, mainWidth, height)
	set(side, mainWidth+asideGap, 0, sideWidth, height)
	return height
}

func (l *asideLayout) alone(o fyne.CanvasObject, width float32, set func(o fyne.CanvasObject, x, y, w, h float32)) float32 {
	height := heightOf(o, width)
	set(o, 0, 0, width, height)
	return height
}

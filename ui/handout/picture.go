package handout

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/theme"
)

// leastPage is the least width of a page in the preview, mostPage the width
// from which on it only gets coarser.
const (
	leastPage float32 = 200
	mostPage  float32 = 800
)

// picture is one page, as wide as there is room and in its own shape.
type picture struct {
	widget.BaseWidget
	image  *canvas.Image
	edge   *canvas.Rectangle
	aspect float32 // height for one of width
}

func newPicture(page image.Image) *picture {
	p := &picture{image: canvas.NewImageFromImage(page), edge: canvas.NewRectangle(nil), aspect: 1}
	p.image.FillMode = canvas.ImageFillStretch
	p.image.ScaleMode = canvas.ImageScaleSmooth
	p.edge.StrokeWidth = 1
	if size := page.Bounds().Size(); size.X > 0 {
		p.aspect = float32(size.Y) / float32(size.X)
	}
	p.ExtendBaseWidget(p)
	return p
}

// HeightFor returns the height that the page has at a width.
func (p *picture) HeightFor(width float32) float32 { return min(width, mostPage) * p.aspect }

// CreateRenderer implements fyne.Widget.
func (p *picture) CreateRenderer() fyne.WidgetRenderer {
	r := &pictureRenderer{p}
	r.recolor()
	return r
}

type pictureRenderer struct{ p *picture }

func (r *pictureRenderer) Destroy() {}

func (r *pictureRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.p.image, r.p.edge}
}

func (r *pictureRenderer) MinSize() fyne.Size {
	return fyne.NewSize(leastPage, r.p.HeightFor(max(leastPage, r.p.Size().Width)))
}

func (r *pictureRenderer) Layout(size fyne.Size) {
	page := fyne.NewSize(min(size.Width, mostPage), r.p.HeightFor(size.Width))
	r.p.image.Resize(page)
	r.p.edge.Resize(page)
}

func (r *pictureRenderer) Refresh() {
	r.recolor()
	r.Layout(r.p.Size())
	canvas.Refresh(r.p)
}

func (r *pictureRenderer) recolor() { r.p.edge.StrokeColor = theme.Colour(theme.Rule) }

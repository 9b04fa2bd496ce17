package unlock

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"handbreadth/domain/hand"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// The column of a page: wide enough for readable lines, begun below the top.
const (
	columnWidth = 600
	columnTop   = 2 * theme.Four
)

// middleLayout sets a column in the middle of the width.
type middleLayout struct{}

// MinSize implements fyne.Layout.
func (middleLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := objects[0].MinSize()
	return fyne.NewSize(size.Width, size.Height+columnTop)
}

// Layout implements fyne.Layout.
func (middleLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	width := min(columnWidth, size.Width)
	objects[0].Resize(fyne.NewSize(width, size.Height-columnTop))
	objects[0].Move(fyne.NewPos((size.Width-width)/2, columnTop))
}

// front lays out a page: a title, what it is about, and its parts below.
func front(title, lead string, parts ...fyne.CanvasObject) fyne.CanvasObject {
	head := []fyne.CanvasObject{widgets.NewText(title, widgets.Display), widgets.NewText(lead, widgets.Body)}
	return widgets.NewPage(container.New(middleLayout{}, widgets.ColumnGap(theme.Two, append(head, parts...)...)))
}

// figures are the four hand measures, which say what program this is and
// nothing of anybody.
func figures() fyne.CanvasObject {
	const size, least = 72, 120
	drawn := make([]fyne.CanvasObject, 0, len(hand.Kinds()))
	for _, kind := range hand.Kinds() {
		figure := widgets.NewMeasureFigure(kind, size)
		figure.SetCount(1)
		drawn = append(drawn, figure)
	}
	return widgets.Grid(least, drawn...)
}

// told is the line below the buttons of a page that says what goes on, or what
// went wrong.
type told struct{ *widgets.Text }

func newTold(name string) told {
	t := told{widgets.NewText("", widgets.Small)}
	widgets.Name(t.Text, name)
	t.Hide()
	return t
}

func (t told) say(words string)  { t.show(words, widgets.Small) }
func (t told) warn(words string) { t.show(words, widgets.Problem) }

func (t told) show(words string, style widgets.TextStyle) {
	t.SetStyle(style)
	t.SetText(words)
	setShown(t.Text, words != "")
}

func setShown(object fyne.CanvasObject, shown bool) {
	if shown {
		object.Show()
	} else {
		object.Hide()
	}
}

// switchable is what can be switched off while something runs.
type switchable interface {
	Enable()
	Disable()
}

func setEnabled(enabled bool, all ...switchable) {
	for _, one := range all {
		if enabled {
			one.Enable()
		} else {
			one.Disable()
		}
	}
}

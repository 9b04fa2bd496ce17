package clients

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// link is a word in a line of the list that can be clicked. It is no tab stop,
// for a list would have hundreds: by keyboard, open the file and use the
// palette.
type link struct {
	widget.BaseWidget
	text   *widgets.Text
	tapped func()
}

var (
	_ fyne.Tappable      = (*link)(nil)
	_ desktop.Hoverable  = (*link)(nil)
	_ desktop.Cursorable = (*link)(nil)
)

func newLink(label string, tapped func()) *link {
	l := &link{text: widgets.NewLine(label, widgets.Small), tapped: tapped}
	l.text.SetColour(theme.Muted)
	l.ExtendBaseWidget(l)
	return l
}

func (l *link) setText(label string) { l.text.SetText(label) }

// Tapped is a click.
func (l *link) Tapped(*fyne.PointEvent) { l.tapped() }

// MouseIn shows that the word can be clicked.
func (l *link) MouseIn(*desktop.MouseEvent) { l.text.SetColour(theme.Spruce) }

// MouseMoved follows the pointer.
func (l *link) MouseMoved(*desktop.MouseEvent) {}

// MouseOut notes that the pointer has left.
func (l *link) MouseOut() { l.text.SetColour(theme.Muted) }

// Cursor shows a hand.
func (l *link) Cursor() desktop.Cursor { return desktop.PointerCursor }

// CreateRenderer implements fyne.Widget.
func (l *link) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(widgets.InsetSides(theme.Half, theme.Half, theme.Half, theme.Half, l.text))
}

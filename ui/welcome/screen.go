// Package welcome is the first thing that is seen on a fresh machine, and what
// is seen where the practice's file cannot be opened.
package welcome

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"handbreadth/domain/hand"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// The names of the controls.
const (
	NameStart   = "welcome.start"
	NameDemo    = "welcome.demo"
	NameAgain   = "welcome.again"
	NameRestore = "welcome.restore"
)

// Ways lead on from the screen; those that are nil are not offered.
type Ways struct {
	Start   func() // the practice, or another try
	Demo    func()
	Restore func() // from a backup
}

// The column of the screen: wide enough for readable lines, begun below the top.
const (
	columnWidth = 600
	columnTop   = 3 * theme.Four
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

// Screen offers ways to begin.
type Screen struct {
	object fyne.CanvasObject
	first  *widgets.Button
}

// New returns the screen of a fresh machine: to start the practice's own file, to
// bring it from another computer, or to look around in an invented one.
func New(ways Ways) *Screen {
	s := &Screen{}
	s.first = widgets.Name(widgets.NewPrimaryButton("Start my practice", ways.Start), NameStart)
	s.build("Handbreadth",
		"From an intake to a plan that fits in a hand: energy and macros with their sources, "+
			"meals in palms, fists, cupped hands and thumbs, and a paper to take home.",
		"Everything stays on this computer, sealed with your passphrase. The demo has invented clients in a file of its own "+
			"that is not sealed; nothing in it touches your practice.",
		s.buttons(ways))
	return s
}

// NewTrouble returns the screen for a file that cannot be opened: what, why in
// plain words, and the ways on.
func NewTrouble(title, words string, ways Ways) *Screen {
	s := &Screen{}
	s.first = widgets.Name(widgets.NewPrimaryButton("Try again", ways.Start), NameAgain)
	s.build(title, words, "The log beside the file has the details for whoever looks after this computer.", s.buttons(ways))
	return s
}

func (s *Screen) buttons(ways Ways) fyne.CanvasObject {
	buttons := widgets.Row(s.first)
	if ways.Restore != nil {
		buttons.Add(widgets.Name(widgets.NewQuietButton("Restore a backup", ways.Restore), NameRestore))
	}
	if ways.Demo != nil {
		buttons.Add(widgets.Name(widgets.NewQuietButton("Look around with demo data", ways.Demo), NameDemo))
	}
	return buttons
}

func (s *Screen) build(title, lead, remark string, buttons fyne.CanvasObject) {
	content := widgets.ColumnGap(theme.Two,
		measures(),
		widgets.NewText(title, widgets.Display),
		widgets.NewText(lead, widgets.Body),
		buttons,
		widgets.NewText(remark, widgets.Small),
	)
	s.object = widgets.NewPage(container.New(middleLayout{}, content))
}

// Object is what is shown.
func (s *Screen) Object() fyne.CanvasObject { return s.object }

// FocusFirst gives the focus to the way on that most people take.
func (s *Screen) FocusFirst() { widgets.FocusOn(s.first) }

// figureSize is how high the drawings of the first screen are.
const figureSize = 72

// measures are one of each hand measure, as a first look at what this is about.
func measures() fyne.CanvasObject {
	figures := make([]fyne.CanvasObject, 0, len(hand.Kinds()))
	for _, kind := range hand.Kinds() {
		figure := widgets.NewMeasureFigure(kind, figureSize)
		figure.SetCount(1)
		figures = append(figures, figure)
	}
	const least = 120
	return widgets.Grid(least, figures...)
}

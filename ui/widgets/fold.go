package widgets

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
)

// FoldMark is what the head of a fold says at its right.
type FoldMark struct {
	Text string
	Kind MarkKind
}

// MarkKind says how a mark is meant.
type MarkKind int

// The kinds of marks.
const (
	MarkSummary MarkKind = iota // what is in the fold; it stands there while that is closed
	MarkWanting                 // what is still needed
	MarkWrong                   // something is to be mended
)

// Fold is a part of a page under a head that opens and closes it. While it is
// closed, its head tells in one line at the right what is in it. The content is
// made when the fold opens for the first time.
type Fold struct {
	composite
	// OnToggled is called after the person at the desk opened or closed it.
	OnToggled func(open bool)

	head    *foldHead
	content *fyne.Container
	build   func() fyne.CanvasObject // nil once the content is made
	mark    FoldMark
}

// NewFold returns a closed fold.
func NewFold(title string, build func() fyne.CanvasObject) *Fold {
	f := &Fold{build: build}
	f.head = newFoldHead(title, f.toggle)
	f.content = InsetSides(foldInset(), theme.Half, 0, theme.Two, Column())
	f.content.Hidden = true
	f.init(f, ColumnGap(0, NewHairline(), f.head, f.content))
	return f
}

// FocusTarget returns the head, which takes the focus.
func (f *Fold) FocusTarget() fyne.Focusable { return f.head }

// Title returns the title.
func (f *Fold) Title() string { return f.head.title.Text() }

// Open reports whether the content is shown.
func (f *Fold) Open() bool { return f.head.open }

// SetOpen shows or hides the content, without calling back.
func (f *Fold) SetOpen(open bool) {
	if open && f.build != nil {
		f.content.Objects[0] = f.build()
		f.build = nil
	}
	f.head.open = open
	f.content.Hidden = !open
	f.showMark()
	f.Refresh()
}

// Mark returns what the head says at the right, as shown.
func (f *Fold) Mark() string { return f.head.mark.Text() }

// SetMark sets what the head says at the right.
func (f *Fold) SetMark(mark FoldMark) {
	if mark != f.mark {
		f.mark = mark
		f.showMark()
	}
}

func (f *Fold) showMark() {
	text, colour := f.mark.Text, fyne.ThemeColorName(theme.Muted)
	switch {
	case f.mark.Kind == MarkWrong:
		colour = theme.Brick
	case f.mark.Kind == MarkSummary && f.head.open:
		text = ""
	}
	f.head.mark.SetColour(colour)
	f.head.mark.SetText(text)
	f.head.Refresh()
}

func (f *Fold) toggle() {
	f.SetOpen(!f.Open())
	if f.OnToggled != nil {
		f.OnToggled(f.Open())
	}
}

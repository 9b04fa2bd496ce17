package ui

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/sheet"
)

// foldBelow is the width of the window under which the running sheet folds away.
const foldBelow = 1200

// foldLayout sets the section and the running sheet side by side. The sheet
// folds away in a narrow window; asking for it brings it back, and asking again
// folds it in a wide one, until the window changes from one to the other.
type foldLayout struct {
	window func() float32 // the width of the window
	folded func(bool)     // told whenever it changes; never nil

	asked  bool // the practitioner turned it round
	narrow bool
	now    bool
	told   bool
}

// toggle turns the sheet round.
func (l *foldLayout) toggle() { l.asked = !l.asked }

func (l *foldLayout) isFolded() bool {
	if narrow := l.window() < foldBelow; narrow != l.narrow {
		l.narrow, l.asked = narrow, false
	}
	return l.narrow != l.asked
}

// MinSize leaves room for the section alone.
func (l *foldLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := objects[0].MinSize()
	return fyne.NewSize(size.Width, size.Height)
}

// Layout implements fyne.Layout.
func (l *foldLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	folded := l.isFolded()
	width := size.Width
	if folded {
		objects[1].Hide()
	} else {
		objects[1].Show()
		width -= sheet.Width
		objects[1].Move(fyne.NewPos(width, 0))
		objects[1].Resize(fyne.NewSize(sheet.Width, size.Height))
	}
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(fyne.NewSize(width, size.Height))
	if folded != l.now || !l.told {
		l.now, l.told = folded, true
		l.folded(folded)
	}
}

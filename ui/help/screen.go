// Package help lists the keys and says where the numbers come from.
package help

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// Key is one line of the list of keys.
type Key struct {
	Keys string // "Ctrl+K"
	Does string // "Find clients and actions"
}

// Group is a part of the list.
type Group struct {
	Title string
	Keys  []Key
}

// Screen is the page of help.
type Screen struct{ object *widgets.Page }

const (
	leastColumn = 340 // width of a group
	keyWidth    = 132 // width of the keys of a line
	lineWidth   = 760
)

// New returns the page with the keys given.
func New(groups []Group) *Screen {
	cards := make([]fyne.CanvasObject, len(groups))
	for i, g := range groups {
		cards[i] = widgets.NewCard(g.Title, keyLines(g.Keys))
	}
	content := widgets.ColumnGap(theme.Two,
		widgets.NewText("Help", widgets.Display),
		widgets.Grid(leastColumn, cards...),
		widgets.NewCard("How it thinks", widgets.Narrow(lineWidth, widgets.Column(paragraphs()...))),
	)
	return &Screen{object: widgets.NewPage(content)}
}

// Object is what is shown.
func (s *Screen) Object() fyne.CanvasObject { return s.object }

func keyLines(keys []Key) fyne.CanvasObject {
	lines := make([]fyne.CanvasObject, len(keys))
	for i, k := range keys {
		lines[i] = &fyne.Container{
			Layout:  keyLayout{},
			Objects: []fyne.CanvasObject{widgets.NewLine(k.Keys, widgets.Strong), widgets.NewText(k.Does, widgets.Body)},
		}
	}
	return widgets.Column(lines...)
}

// keyLayout sets the keys in a column of its own.
type keyLayout struct{}

func (keyLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	does := objects[1].MinSize()
	return fyne.NewSize(keyWidth+does.Width, max(objects[0].MinSize().Height, does.Height))
}

func (keyLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(fyne.NewSize(keyWidth, objects[0].MinSize().Height))
	objects[1].Move(fyne.NewPos(keyWidth, 0))
	objects[1].Resize(fyne.NewSize(size.Width-keyWidth, size.Height))
}

// thoughts say what a newcomer asks first.
var thoughts = []string{
	"Each answer changes the plan at once; the running sheet at the right shows it. What you type is saved as you type it.",
	"Every number opens into how it was worked out: the formula with this client's values, its range and where it was published.",
	"Screening can hold a plan until you write down a reason, or refer the client to a clinician first. What was not asked is never read as no.",
	"A plan that you keep is never changed: the next one is a new version, so that a paper can always be matched to what was said.",
	"Your practice is sealed with its passphrase; the recovery sheet opens it when that is forgotten, and nothing else does. Backups, the record of who did what and the time after which the window locks are in Practice, under Safe keeping.",
	"Handbreadth does not diagnose and does not replace medical care.",
}

func paragraphs() []fyne.CanvasObject {
	out := make([]fyne.CanvasObject, len(thoughts))
	for i, t := range thoughts {
		out[i] = widgets.NewText(t, widgets.Body)
	}
	return out
}

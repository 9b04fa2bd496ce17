package handout

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/widgets"
)

// told is a line that says how something goes, with a button while it can be
// stopped.
type told struct {
	object *fyne.Container
	text   *widgets.Text
	button *widgets.Button
	row    *fyne.Container
}

func newTold(name string, tapped func()) *told {
	t := &told{text: widgets.NewText("", widgets.Small)}
	t.button = widgets.Name(widgets.NewQuietButton("", tapped), name)
	t.row = widgets.Row(t.button)
	t.object = widgets.Column(t.text, t.row)
	t.say("", "", false)
	return t
}

// say shows words, and a button where it has a label; both empty show nothing.
func (t *told) say(words, button string, wrong bool) {
	style := widgets.Small
	if wrong {
		style = widgets.Problem
	}
	t.text.SetStyle(style)
	t.text.SetText(words)
	t.button.SetText(button)
	t.row.Hidden = button == ""
	t.object.Hidden = words == ""
}

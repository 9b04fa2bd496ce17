package measures

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// notice says at the top why there are no measures, or that they are held, and leads
// to where that is answered.
type notice struct {
	object *widgets.Card
	text   *widgets.Text
	button *widgets.Button
	row    *fyne.Container
	way    way
}

func newNotice(goTo func(way)) *notice {
	n := &notice{text: widgets.NewText("", widgets.Body)}
	n.button = widgets.Name(widgets.NewQuietButton("", func() { goTo(n.way) }), "measures.way")
	n.row = widgets.Row(n.button)
	n.object = widgets.NewCard("", widgets.ColumnGap(theme.Unit+theme.Half, n.text, n.row))
	return n
}

func (n *notice) show(v view) {
	n.way = v.Way
	n.object.SetTitle(v.State.title())
	n.text.SetText(v.Lead)
	n.button.SetText(v.Way.Label)
	n.row.Hidden = v.Way.Label == ""
	n.object.Hidden = v.Lead == ""
}

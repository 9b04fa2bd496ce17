package targets

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// notice says at the top why there is no target, or that it is held, and leads
// to where that is answered.
type notice struct {
	object *widgets.Card
	text   *widgets.Text
	button *widgets.Button
	rescue *widgets.Button
	row    *fyne.Container
	now    view
}

func newNotice(goTo func(way), s Source) *notice {
	n := &notice{text: widgets.NewText("", widgets.Body)}
	n.button = widgets.Name(widgets.NewQuietButton("", func() { goTo(n.now.Way) }), "targets.way")
	n.rescue = widgets.Name(widgets.NewQuietButton("", func() { s.SetAll(n.now.Rescue.Changes) }), "targets.rescue")
	n.row = widgets.Row(n.button, n.rescue)
	n.object = widgets.NewCard("", widgets.ColumnGap(theme.Unit+theme.Half, n.text, n.row))
	return n
}

func (n *notice) show(v view) {
	n.now = v
	n.object.SetTitle(v.Title)
	n.text.SetText(v.Lead)
	n.button.SetText(v.Way.Label)
	n.button.Hidden = v.Way.Label == ""
	n.rescue.SetText(v.Rescue.Label)
	n.rescue.Hidden = v.Rescue.Label == ""
	n.row.Hidden = n.button.Hidden && n.rescue.Hidden
	n.object.Hidden = v.Lead == ""
}

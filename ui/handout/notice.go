package handout

import (
	"fmt"

	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// notice says at the top why there is no handout, and leads to where that is
// answered.
type notice struct {
	object       *fyne.Container
	card         *widgets.Card
	text, wanted *widgets.Text
	button       *widgets.Button
	row          *fyne.Container
	holds        *fyne.Container
	goTo         func(way)
	way          way
}

func newNotice(goTo func(way)) *notice {
	n := &notice{
		text: widgets.NewText("", widgets.Body), wanted: widgets.NewText("", widgets.Strong),
		holds: widgets.Column(), goTo: goTo,
	}
	n.button = widgets.Name(widgets.NewQuietButton("", n.follow), "handout.way")
	n.row = widgets.Row(n.button)
	n.card = widgets.NewCard("", widgets.ColumnGap(theme.Unit+theme.Half, n.text, n.wanted, n.row))
	n.object = widgets.Column(n.card, n.holds)
	return n
}

func (n *notice) follow() { n.goTo(n.way) }

func (n *notice) show(v view) {
	n.way = v.Way
	n.card.SetTitle(v.Title)
	n.text.SetText(v.Lead)
	n.wanted.SetText(v.Wanted)
	n.wanted.Hidden = v.Wanted == ""
	n.button.SetText(v.Way.Label)
	n.row.Hidden = v.Way.Label == ""
	n.showHolds(v.Holds)
	n.object.Hidden = v.Lead == ""
	n.card.Refresh()
}

// showHolds shows a card for each finding, with its button.
func (n *notice) showHolds(holds []hold) {
	n.holds.Objects = nil
	n.holds.Hidden = len(holds) == 0
	for i, h := range holds {
		card := widgets.NewFindingCard(h.Finding)
		button := card.SetAction(h.Way.Label, func() { n.goTo(h.Way) })
		widgets.Name(button, fmt.Sprintf("handout.hold%d", i+1))
		n.holds.Add(card)
	}
	n.holds.Refresh()
}

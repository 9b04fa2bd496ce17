package measures

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"

	"handbreadth/domain/hand"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// conflictCard tells wishes that cannot be kept together, and takes one back.
type conflictCard struct {
	object *widgets.Card
	source Source
	words  *widgets.Text
	ways   *fyne.Container
	shown  []hand.Wish
}

func newConflictCard(s Source) *conflictCard {
	c := &conflictCard{source: s, words: widgets.NewText("", widgets.Body), ways: widgets.Row()}
	c.object = widgets.NewCard("Wishes in each other's way", widgets.ColumnGap(theme.Unit+theme.Half, c.words, c.ways))
	return c
}

func (c *conflictCard) show(v view) {
	c.object.Hidden = len(v.Conflict.Wishes) == 0
	if c.object.Hidden || slices.Equal(v.Conflict.Wishes, c.shown) {
		return
	}
	c.shown = v.Conflict.Wishes
	c.words.SetText(v.Conflict.Words)
	c.ways.Objects = nil
	for i, w := range c.shown {
		back := widgets.NewQuietButton("Take back: "+w.Words(), func() { keepWishes(c.source, without(wishesOf(c.source), w)) })
		c.ways.Add(widgets.Name(back, fmt.Sprintf("measures.back%d", i+1)))
	}
}

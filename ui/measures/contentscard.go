package measures

import (
	"strings"

	"fyne.io/fyne/v2"

	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// contentsCard shows what one measure holds for this client.
type contentsCard struct {
	object   *widgets.Card
	basket   *widgets.Text
	measures [4]*oneMeasure
	brings   [4]*opening
}

// oneMeasure is one of the four: drawn large, with what it holds.
type oneMeasure struct {
	object                 *fyne.Container
	amount, spread, filled *widgets.Text
}

// The drawing of one measure, the least width of its column, and that of what
// it brings, which opens into a long derivation.
const (
	drawnSize   float32 = 96
	drawnWidth  float32 = 135
	bringsWidth float32 = 360
)

func newContentsCard(style unit.Style, changed func()) *contentsCard {
	c := &contentsCard{basket: widgets.NewText("", widgets.Small)}
	var columns, brings []fyne.CanvasObject
	for _, kind := range hand.Kinds() {
		c.measures[kind] = newOneMeasure(kind)
		columns = append(columns, c.measures[kind].object)
		c.brings[kind] = newOpening("measures."+strings.ReplaceAll(kind.Name(), " ", "_"), "One "+kind.Name()+" brings", style, changed)
		brings = append(brings, c.brings[kind])
	}
	c.object = widgets.NewCard("What one measure holds",
		widgets.ColumnGap(theme.Two, c.basket, widgets.Grid(drawnWidth, columns...),
			widgets.NewHairline(), widgets.Grid(bringsWidth, brings...)))
	return c
}

func newOneMeasure(kind hand.Kind) *oneMeasure {
	m := &oneMeasure{
		amount: widgets.NewText("", widgets.Body), spread: widgets.NewText("", widgets.Small), filled: widgets.NewText("", widgets.Small),
	}
	m.filled.SetColour(theme.Ink)
	figure := widgets.NewMeasureFigure(kind, drawnSize)
	figure.SetCount(1)
	m.object = widgets.Column(figure, widgets.ColumnGap(0, m.amount, m.spread), m.filled)
	return m
}

func (c *contentsCard) show(v view) {
	c.object.Hidden = !v.HasContents
	if !v.HasContents {
		return
	}
	c.basket.SetText(v.Basket)
	for kind, m := range c.measures {
		told := v.Contents[kind]
		m.amount.SetText(told.Amount)
		m.spread.SetText(told.Spread)
		m.filled.SetText(told.Filled)
		c.brings[kind].set(told.Brings, told.Macros, told.Steps)
	}
}

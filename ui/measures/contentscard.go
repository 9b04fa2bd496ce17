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
}

// oneMeasure is one of the four: drawn large, with what it holds.
type oneMeasure struct {
	object                 *fyne.Container
	amount, spread, filled *widgets.Text
	brings                 *opening
}

// The drawing of one measure and the least width of its column.
const (
	drawnSize  float32 = 96
	drawnWidth float32 = 190
)

func newContentsCard(style unit.Style, changed func()) *contentsCard {
	c := &contentsCard{basket: widgets.NewText("", widgets.Small)}
	columns := make([]fyne.CanvasObject, 0, len(c.measures))
	for _, kind := range hand.Kinds() {
		c.measures[kind] = newOneMeasure(kind, style, changed)
		columns = append(columns, c.measures[kind].object)
	}
	c.object = widgets.NewCard("What one measure holds",
		widgets.ColumnGap(theme.Two, c.basket, widgets.Grid(drawnWidth, columns...)))
	return c
}

func newOneMeasure(kind hand.Kind, style unit.Style, changed func()) *oneMeasure {
	m := &oneMeasure{
		amount: widgets.NewText("", widgets.Body), spread: widgets.NewText("", widgets.Small), filled: widgets.NewText("", widgets.Small),
	}
	m.filled.SetColour(theme.Ink)
	m.brings = newOpening("measures."+strings.ReplaceAll(kind.Name(), " ", "_"), "Brings", style, changed)
	figure := widgets.NewMeasureFigure(kind, drawnSize)
	figure.SetCount(1)
	m.object = widgets.Column(figure, widgets.ColumnGap(0, m.amount, m.spread), m.filled, m.brings)
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
		m.brings.set(told.Brings, told.Leading, told.Steps)
	}
}

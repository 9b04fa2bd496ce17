package measures

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// nearCard says how near the day comes to its targets, in words, and in numbers
// for those who open them.
type nearCard struct {
	object *widgets.Card
	words  *widgets.Text
	table  *distanceTable
	how    *opening
}

func newNearCard(style unit.Style, changed func()) *nearCard {
	c := &nearCard{words: widgets.NewText("", widgets.Body), table: newDistanceTable()}
	numbers := newOpening("measures.near", "In numbers", style, changed)
	numbers.SetMore(c.table.object)
	c.how = newOpening("measures.how", "How the measures are chosen", style, changed)
	c.object = widgets.NewCard("How near this comes", widgets.Column(c.words, numbers, c.how))
	return c
}

func (c *nearCard) show(v view) {
	c.object.Hidden = !v.HasMeals
	if !v.HasMeals {
		return
	}
	c.words.SetText(v.Near)
	c.table.show(v.Distances)
	c.how.set("", "", v.Steps)
}

// distanceTable sets what the measures bring beside each target.
type distanceTable struct {
	object *fyne.Container
	lines  [][4]*widgets.Text
}

// tableWidth keeps the columns near to each other in a wide window.
const tableWidth float32 = 640

func newDistanceTable() *distanceTable {
	const energyAndNutrients = 5
	t := &distanceTable{}
	rows := widgets.ColumnGap(theme.Half, tableRow("", "Target", "Measures bring", "Difference", widgets.Small).object)
	for range energyAndNutrients {
		row := tableRow("", "", "", "", widgets.Body)
		t.lines = append(t.lines, row.cells)
		rows.Add(row.object)
	}
	t.object = widgets.Narrow(tableWidth, rows)
	return t
}

type row struct {
	object *fyne.Container
	cells  [4]*widgets.Text
}

func tableRow(name, target, brings, words string, style widgets.TextStyle) row {
	r := row{object: container.New(layout.NewGridLayout(len(row{}.cells)))}
	for i, text := range []string{name, target, brings, words} {
		r.cells[i] = widgets.NewText(text, style)
		if i > 0 {
			r.cells[i].SetAlign(fyne.TextAlignTrailing)
		}
		r.object.Add(r.cells[i])
	}
	return r
}

func (t *distanceTable) show(distances []beside) {
	for i, d := range distances {
		for column, text := range [...]string{d.Name, d.Target, d.Brings, d.Words} {
			t.lines[i][column].SetText(text)
		}
	}
}

package chart

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/unit"
	"handbreadth/ui/widgets"
)

// table is the course in figures. Its rows are kept and say something else when
// the course changes.
type table struct {
	object *fyne.Container
	rows   []*tableRow
}

// tableRow is one line of the table.
type tableRow struct {
	object *fyne.Container
	cells  [4]*widgets.Text
}

func newTable() *table {
	return &table{object: widgets.ColumnGap(2)}
}

func (t *table) set(c Course, style unit.Style) {
	t.line(0, widgets.Small, "Day", "Expected", "8 in 10 between", "Static rule")
	days := c.tableDays()
	for i, day := range days {
		w := c.Say(day, style)
		t.line(i+1, widgets.Body, w.Date, w.Expected, w.Range, w.Static)
	}
	for i, row := range t.rows {
		row.object.Hidden = i > len(days)
	}
}

// line sets the texts of a row, which is made where there is none yet.
func (t *table) line(i int, style widgets.TextStyle, texts ...string) {
	if i == len(t.rows) {
		t.add()
	}
	for n, text := range texts {
		t.rows[i].cells[n].SetStyle(style)
		t.rows[i].cells[n].SetText(text)
	}
}

func (t *table) add() {
	row := &tableRow{}
	objects := make([]fyne.CanvasObject, len(row.cells))
	for i := range row.cells {
		row.cells[i] = widgets.NewText("", widgets.Body)
		objects[i] = row.cells[i]
	}
	const least = 96
	row.object = widgets.Grid(least, objects...)
	t.rows = append(t.rows, row)
	t.object.Add(row.object)
}

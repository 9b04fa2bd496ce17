package chart

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// table is the course in figures. Its rows are kept and say something else when
// the course changes.
type table struct {
	object *fyne.Container
	rows   []*tableRow
	layout tableLayout
}

// tableRow is one line of the table.
type tableRow struct {
	object *fyne.Container
	cells  [columns]*widgets.Text
}

// columns of the table: the day, the expected weight, its range, the static rule.
const columns = 4

func newTable(style unit.Style) *table {
	w := widest(style)
	t := &table{object: widgets.ColumnGap(2)}
	for i, text := range []string{w.Date, w.Expected, w.Range, w.Static} {
		t.layout.widest[i] = widgets.NewLine(text, widgets.Body)
	}
	return t
}

func (t *table) set(c Course, style unit.Style) {
	last := "Static rule"
	if c.Static == nil {
		last = ""
	}
	t.line(0, widgets.Small, "Day", "Expected", "8 in 10 between", last)
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
	row := &tableRow{object: &fyne.Container{Layout: &t.layout}}
	for i := range row.cells {
		row.cells[i] = widgets.NewLine("", widgets.Body)
		row.object.Objects = append(row.object.Objects, row.cells[i])
	}
	t.rows = append(t.rows, row)
	t.object.Add(row.object)
}

// tableLayout sets cells in columns as wide as their widest texts, closer
// together where there is little room.
type tableLayout struct{ widest [columns]*widgets.Text }

func (l *tableLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	size := fyne.NewSize(theme.Half*(columns-1), 0)
	for _, text := range l.widest {
		size = fyne.NewSize(size.Width+text.MinSize().Width, max(size.Height, text.MinSize().Height))
	}
	return size
}

func (l *tableLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	spare := size.Width - l.MinSize(nil).Width
	gap := theme.Half + min(theme.Three, max(0, spare/(columns-1)))
	x := float32(0)
	for i, o := range objects {
		width := l.widest[i].MinSize().Width
		put(o, box{x, 0, width, size.Height})
		x += width + gap
	}
}

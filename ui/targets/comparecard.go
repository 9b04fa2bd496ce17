package targets

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// compareCard sets goals side by side: the one of the plan, and those that are
// kept to be compared with it. One of them becomes the plan by a button.
type compareCard struct {
	object *widgets.Card
	source Source
	kept   scenarios
	// changed is told when columns come or go.
	changed func()

	keep  *widgets.Button
	hint  *widgets.Text
	table *fyne.Container
	head  []*fyne.Container // the rows
	cells [mostScenarios + 1]*columnCells
}

// columnCells are the widgets of one column.
type columnCells struct {
	title, asked, remark *widgets.Text
	values               [len(compared)]*widgets.Text
	take, remove         *widgets.Button
	buttons              *fyne.Container
}

func newCompareCard(s Source, changed func()) *compareCard {
	c := &compareCard{source: s, changed: changed, hint: widgets.NewText("", widgets.Body)}
	c.keep = widgets.Name(widgets.NewQuietButton("Keep this goal to compare", c.onKeep), "targets.keep")
	for i := range c.cells {
		c.cells[i] = c.newCells(i)
	}
	c.table = widgets.ColumnGap(theme.Half)
	c.build()
	c.object = widgets.NewCard("What if", widgets.ColumnGap(theme.Two, c.hint, c.table, widgets.Row(c.keep)))
	return c
}

func (c *compareCard) newCells(index int) *columnCells {
	cells := &columnCells{
		title: widgets.NewText("", widgets.Strong), asked: widgets.NewText("", widgets.Small), remark: widgets.NewText("", widgets.Small),
	}
	cells.remark.SetColour(theme.Brick)
	for i := range cells.values {
		cells.values[i] = widgets.NewText("", widgets.Body)
	}
	cells.take = widgets.NewQuietButton("Make it the plan", func() { c.onTake(index) })
	cells.remove = widgets.NewTextButton("Remove", func() { c.onRemove(index) })
	if index > 0 {
		name := []string{"", "targets.goal_a", "targets.goal_b"}[index]
		widgets.Name(cells.take, name+".take")
		widgets.Name(cells.remove, name+".remove")
	}
	cells.buttons = widgets.InsetSides(0, theme.Unit, 0, 0, widgets.Row(cells.take, cells.remove))
	return cells
}

// build lays the cells out in rows: a name, and a cell for each column.
func (c *compareCard) build() {
	add := func(name string, cell func(*columnCells) fyne.CanvasObject) {
		label := widgets.NewText(name, widgets.Body)
		label.SetColour(theme.Muted)
		objects := []fyne.CanvasObject{label}
		for _, cells := range c.cells {
			objects = append(objects, cell(cells))
		}
		row := widgets.Grid(cellWidth, objects...)
		c.head = append(c.head, row)
		c.table.Add(row)
	}
	add("", func(cells *columnCells) fyne.CanvasObject {
		return widgets.ColumnGap(0, cells.title, cells.asked, cells.remark)
	})
	for i, name := range compared {
		if i == 4 {
			c.table.Add(widgets.NewHairline())
		}
		add(name, func(cells *columnCells) fyne.CanvasObject { return cells.values[i] })
	}
	add("", func(cells *columnCells) fyne.CanvasObject { return cells.buttons })
}

// cellWidth is the least width of a cell.
const cellWidth float32 = 112

func (c *compareCard) show(v view) {
	c.object.Hidden = !v.HasTargets
	if !v.HasTargets {
		return
	}
	c.hint.SetText(compareHint(len(c.kept)))
	c.table.Hidden = len(c.kept) == 0
	c.keep.Hidden = len(c.kept) >= mostScenarios
	if c.table.Hidden {
		return
	}
	plan, _ := c.source.Plan()
	now := column{Title: "The plan", IsPlan: true}
	now.fill(plan, c.source.Style())
	c.set(0, now)
	form := c.source.Form()
	for i := 1; i < len(c.cells); i++ {
		if i <= len(c.kept) {
			c.set(i, columnOf(form, c.kept[i-1], c.source.Style()))
		}
		c.hide(i, i > len(c.kept))
	}
	c.cells[0].buttons.Hidden = false
	c.cells[0].take.Hidden, c.cells[0].remove.Hidden = true, true
}

func compareHint(kept int) string {
	if kept == 0 {
		return "Keep this goal, then change it above: both stand side by side, and either can become the plan."
	}
	return "Change the goal above and see it beside what was kept. What the plan had stays here when another goal takes its place."
}

func (c *compareCard) set(index int, col column) {
	cells := c.cells[index]
	cells.title.SetText(col.Title)
	say(cells.asked, col.Asked)
	say(cells.remark, col.Remark)
	for i, text := range col.Rows {
		if text == "" {
			text = notYet
		}
		cells.values[i].SetText(text)
	}
}

// hide shows or hides the cells of a column in every row.
func (c *compareCard) hide(index int, hidden bool) {
	for _, row := range c.head {
		setShown(row.Objects[index+1], !hidden)
	}
}

func (c *compareCard) now() map[draft.Field]string { return snapshot(c.source.Get) }

func (c *compareCard) onKeep() {
	if c.kept.keep(c.now()) {
		c.changed()
	}
}

func (c *compareCard) onRemove(index int) {
	if index > 0 && index <= len(c.kept) {
		c.kept.remove(index - 1)
		c.changed()
	}
}

// onTake makes a kept goal the plan, in one step of the form.
func (c *compareCard) onTake(index int) {
	if index > 0 && index <= len(c.kept) {
		c.source.SetAll(c.kept.take(index-1, c.now()))
	}
}

package measures

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// nearCard offers the other days that come near, and opens into how near this one
// comes in numbers and how it was found.
type nearCard struct {
	object *widgets.Card
	source Source
	others [mostOthers]*otherLine
	fixed  *fyne.Container
	free   *widgets.Button
	table  *distanceTable
	how    *opening
}

// mostOthers is how many other days are offered.
const mostOthers = 3

func newNearCard(s Source, changed func()) *nearCard {
	c := &nearCard{source: s, table: newDistanceTable()}
	others := widgets.ColumnGap(theme.Half)
	for i := range c.others {
		c.others[i] = newOtherLine(s, "measures.take"+strconv.Itoa(i+1))
		others.Add(c.others[i].object)
	}
	c.free = widgets.Name(widgets.NewTextButton("Free the day", c.onFree), "measures.free_day")
	c.fixed = widgets.Ends(widgets.NewText("The day is fixed, so that few others or none are left.", widgets.Small), c.free)
	others.Add(c.fixed)
	numbers := newOpening("measures.near", "How near this day comes, in numbers", s.Style(), changed)
	numbers.SetMore(c.table.object)
	c.how = newOpening("measures.how", "How the measures are chosen", s.Style(), changed)
	c.object = widgets.NewCard("Other days that come near", widgets.ColumnGap(theme.Two, others, widgets.Column(numbers.Disclosure, c.how.Disclosure)))
	return c
}

func (c *nearCard) show(v view) {
	c.object.Hidden = !v.HasMeals
	if !v.HasMeals {
		return
	}
	for i, line := range c.others {
		line.object.Hidden = i >= len(v.Others)
		if i < len(v.Others) {
			line.show(v.Others[i])
		}
	}
	c.fixed.Hidden = !v.DayLocked
	c.table.show(v.Distances)
	c.how.set("", "", v.Steps)
}

func (c *nearCard) onFree() {
	wishes := wishesOf(c.source)
	for _, k := range fitted {
		wishes = freed(wishes, 0, k)
	}
	keepWishes(c.source, wishes)
}

// otherLine is another day that can be taken in the place of this one.
type otherLine struct {
	object *fyne.Container
	words  *widgets.Text
	now    other
}

func newOtherLine(s Source, name string) *otherLine {
	l := &otherLine{words: widgets.NewText("", widgets.Body)}
	take := widgets.Name(widgets.NewTextButton("Take", func() { keepWishes(s, lockedDay(wishesOf(s), l.now.Day)) }), name)
	l.object = widgets.Ends(l.words, take)
	return l
}

func (l *otherLine) show(o other) {
	l.now = o
	l.words.SetText(o.Words)
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

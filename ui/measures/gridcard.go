package measures

import (
	"strconv"

	"fyne.io/fyne/v2"

	"handbreadth/domain"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// gridCard is the day: a row a meal, a cell a measure. Changing a cell locks it,
// and the rest is found anew around it.
type gridCard struct {
	object *widgets.Card
	source Source
	count  *widgets.Segments
	ranges *widgets.Segments
	free   *widgets.Button
	rows   [domain.MostMeals]*mealLine
	day    *mealLine
	near   *widgets.Text
	grid   *fyne.Container
}

// headWidth is the width of what stands before the cells of a row.
const headWidth float32 = 152

const gridHow = "Up and Down, a drag, − and + change a cell and lock it; the rest follows. L locks and frees, Delete frees, 0 leaves it out."

func newGridCard(s Source) *gridCard {
	c := &gridCard{source: s, near: widgets.NewText("", widgets.Strong), grid: widgets.ColumnGap(theme.Half, gridHead(), widgets.NewHairline())}
	var counts []string
	for n := domain.LeastMeals; n <= domain.MostMeals; n++ {
		counts = append(counts, strconv.Itoa(n))
	}
	c.count = widgets.Name(widgets.NewSegments("Meals a day", counts, c.onCount), "measures."+string(draft.Meals))
	c.ranges = widgets.Name(widgets.NewSegments("Told as", []string{"counts", "ranges"}, c.onRanges), "measures."+string(draft.Ranges))
	c.free = widgets.Name(widgets.NewTextButton("Free all", c.onFree), "measures.free")
	for i := range c.rows {
		c.rows[i] = c.newLine(i+1, "measures.meal"+strconv.Itoa(i+1))
		c.grid.Add(c.rows[i].object)
	}
	c.day = c.newLine(0, "measures.day")
	c.grid.Add(widgets.NewHairline())
	c.grid.Add(c.day.object)
	c.grid.Add(widgets.NewHairline())
	c.grid.Add(widgets.InsetSides(0, theme.Half, 0, 0, widgets.ColumnGap(theme.Half, c.near, widgets.NewText(gridHow, widgets.Small))))
	top := widgets.Ends(widgets.RowGap(theme.Three, c.count, c.ranges), c.free)
	c.object = widgets.NewCard("Meal by meal", widgets.ColumnGap(theme.Unit+theme.Half, top, c.grid))
	return c
}

// gridHead labels the columns by food, and by the measure that each is told in.
func gridHead() fyne.CanvasObject {
	cells := []fyne.CanvasObject{widgets.NewText("", widgets.Small)}
	for _, k := range hand.Kinds() {
		cells = append(cells, widgets.InsetSides(theme.Unit, 0, 0, 0, widgets.ColumnGap(0,
			widgets.NewText(capital(k.Foods()), widgets.Strong), widgets.NewText("in "+k.Plural(), widgets.Small))))
	}
	return widgets.HeadedRow(headWidth, cells...)
}

func (c *gridCard) show(v view) {
	c.object.Hidden = v.State == referred
	c.count.SetSelected(v.Meals - domain.LeastMeals)
	c.ranges.SetSelected(map[bool]int{true: 1}[v.Ranges])
	c.free.Hidden = !v.Wished
	c.grid.Hidden = !v.HasMeals
	if !v.HasMeals {
		return
	}
	for i, line := range c.rows {
		line.object.Hidden = i >= len(v.Servings)
		if i < len(v.Servings) {
			line.show(v.Servings[i])
		}
	}
	c.day.show(v.Day)
	c.near.SetText(v.Near)
}

func (c *gridCard) onCount(index int) {
	c.source.Set(draft.Meals, strconv.Itoa(index+domain.LeastMeals))
}

func (c *gridCard) onRanges(index int) {
	c.source.Set(draft.Ranges, []string{"", draft.AnswerYes}[index])
}

func (c *gridCard) onFree() { keepWishes(c.source, nil) }

// lines returns the rows that are shown, from the top.
func (c *gridCard) lines() []*mealLine {
	var shown []*mealLine
	for _, line := range c.rows {
		if line.object.Visible() {
			shown = append(shown, line)
		}
	}
	return append(shown, c.day)
}

// goFrom moves the focus to another cell; at an edge it stays.
func (c *gridCard) goFrom(from *mealLine, k hand.Kind, across, down int) {
	lines := c.lines()
	for i, line := range lines {
		if line != from {
			continue
		}
		row, column := i+down, int(k)+across
		if row >= 0 && row < len(lines) && column >= 0 && column < len(line.cells) {
			widgets.FocusOn(lines[row].cells[column])
		}
	}
}

// mealLine is a row of the grid with what it shows now.
type mealLine struct {
	object       *fyne.Container
	name, brings *widgets.Text
	size         *widgets.Segments // nil for the day
	cells        [4]*widgets.MeasureCell
	now          serving
}

// newLine makes the row of a meal, or of the day where the meal is 0.
func (c *gridCard) newLine(meal int, name string) *mealLine {
	line := &mealLine{name: widgets.NewText("", widgets.Strong), brings: widgets.NewText("", widgets.Small)}
	head := widgets.ColumnGap(theme.Half, line.name, line.brings)
	if meal > 0 {
		var words []string
		for _, size := range hand.MealSizes() {
			words = append(words, size.String())
		}
		line.size = widgets.Name(widgets.NewSegments("", words, func(i int) { c.onSize(meal, i) }), name+".size")
		head.Add(line.size)
	}
	objects := []fyne.CanvasObject{widgets.InsetSides(0, theme.Unit, 0, 0, head)}
	for _, k := range hand.Kinds() {
		line.cells[k] = c.newCell(line, meal, k, name)
		objects = append(objects, line.cells[k])
	}
	line.object = widgets.Name(widgets.HeadedRow(headWidth, objects...), name)
	return line
}

func (c *gridCard) newCell(line *mealLine, meal int, k hand.Kind, name string) *widgets.MeasureCell {
	cell := widgets.Name(widgets.NewMeasureCell(k), name+"."+k.Key())
	cell.OnSet = func(n unit.Measure) { keepWishes(c.source, locked(wishesOf(c.source), meal, k, n)) }
	cell.OnLock = func(lock bool) { c.onLock(meal, k, cell.Count(), lock) }
	cell.OnGo = func(across, down int) { c.goFrom(line, k, across, down) }
	return cell
}

func (c *gridCard) onLock(meal int, k hand.Kind, n unit.Measure, lock bool) {
	if lock {
		keepWishes(c.source, locked(wishesOf(c.source), meal, k, n))
		return
	}
	keepWishes(c.source, freed(wishesOf(c.source), meal, k))
}

func (c *gridCard) onSize(meal, index int) {
	text := sizedText(c.source.Get(draft.MealSizes), meal, hand.MealSizes()[index])
	c.source.SetAll(map[draft.Field]string{draft.MealSizes: text})
}

func (l *mealLine) show(s serving) {
	if s == l.now {
		return
	}
	l.now = s
	l.name.SetText(s.Name)
	l.brings.SetText(s.Brings)
	if l.size != nil {
		l.size.SetSelected(s.Size)
	}
	for k, cell := range l.cells {
		cell.Set(s.Cells[k].Count, s.Cells[k].Locked, s.Cells[k].Note)
	}
}

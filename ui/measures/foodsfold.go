package measures

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"

	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// foodsFold lists the foods for each measure that suit the client, and says what
// any other food counts as. Its lists are made while it is open.
type foodsFold struct {
	fold    *widgets.Fold
	source  Source
	changed func()

	search *widgets.SearchField
	found  *widgets.Text
	lists  [4]*foodList
	shown  string // the client that the lists were made for
	now    view
}

// foodList is the foods for one measure.
type foodList struct {
	object *fyne.Container
	title  *widgets.Text
	lines  *fyne.Container
}

const (
	listWidth float32 = 400
	foodsHow          = "Suited to the eating pattern, without what is avoided and what is not liked."
)

func newFoodsFold(s Source, changed func()) *foodsFold {
	f := &foodsFold{source: s, changed: changed}
	f.fold = widgets.Name(widgets.NewFold("Foods for each measure", f.build), "measures.fold.foods")
	f.fold.SetMark(widgets.FoldMark{Text: "what suits this client, and what any food counts as"})
	f.fold.OnToggled = func(bool) { changed() }
	return f
}

func (f *foodsFold) build() fyne.CanvasObject {
	f.search = widgets.Name(widgets.NewSearchField("What does a food count as? Milk, soup, lasagne"), "measures.foods.search")
	f.search.OnChanged = f.onSearch
	f.found = widgets.NewText("", widgets.Body)
	f.found.Hidden = true
	var lists []fyne.CanvasObject
	for _, k := range hand.Kinds() {
		f.lists[k] = &foodList{title: widgets.NewText("", widgets.Strong), lines: widgets.ColumnGap(theme.Half)}
		f.lists[k].object = widgets.ColumnGap(theme.Half, f.lists[k].title, f.lists[k].lines)
		lists = append(lists, f.lists[k].object)
	}
	return widgets.ColumnGap(theme.Two, widgets.Narrow(listWidth, f.search), f.found, widgets.NewText(foodsHow, widgets.Small), widgets.Grid(listWidth, lists...))
}

func (f *foodsFold) show(v view) {
	f.fold.Hidden = !v.HasContents
	f.now = v
	if !v.HasContents || !f.fold.Open() {
		return
	}
	in, dislikes := f.source.Reading().Intake, dislikesOf(f.source)
	client := fmt.Sprint(in.Pattern, in.Avoid, dislikes)
	if client == f.shown {
		return
	}
	f.shown = client
	for _, k := range hand.Kinds() {
		lines, count := foodsFor(k, in, dislikes)
		f.lists[k].show(fmt.Sprintf("%s: %d for a %s", capital(k.Foods()), count, k.Name()), lines)
	}
	f.onSearch(f.search.Text())
}

func (l *foodList) show(title string, lines []classLine) {
	l.title.SetText(title)
	l.lines.Objects = nil
	for _, line := range lines {
		foods := widgets.NewText(line.Foods+".", widgets.Body)
		l.lines.Add(widgets.ColumnGap(0, widgets.NewText(line.Class, widgets.Small), foods))
	}
	l.lines.Refresh()
}

func (f *foodsFold) onSearch(text string) {
	in, style := f.source.Reading().Intake, f.source.Style()
	var lines []string
	for _, one := range found(text, func(food.Food) bool { return true }) {
		lines = append(lines, capital(one.Name)+", "+countWords(one, f.now.PerMeasure, in, style))
	}
	if len(lines) == 0 && text != "" {
		lines = []string{"Nothing is found."}
	}
	f.found.SetText(strings.Join(lines, "\n"))
	f.found.Hidden = len(lines) == 0
	f.changed()
}

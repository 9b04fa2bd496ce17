package measures

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/food"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// picker finds a food by a few letters: what fits is listed below, and the first
// is taken with Enter.
type picker struct {
	object  *fyne.Container
	search  *widgets.SearchField
	results *fyne.Container
	none    *widgets.Text
	name    string
	find    func(text string) []food.Food
	picked  func(food.Food)
	changed func()
	found   []food.Food
}

// newPicker returns an empty picker; changed is told when its height may have.
func newPicker(name, placeholder string, find func(text string) []food.Food, picked func(food.Food), changed func()) *picker {
	p := &picker{
		search: widgets.Name(widgets.NewSearchField(placeholder), name), results: widgets.ColumnGap(0),
		none: widgets.NewText("", widgets.Small), name: name, find: find, picked: picked, changed: changed,
	}
	p.none.Hidden = true
	p.search.OnChanged = p.look
	p.search.OnEnter = p.takeFirst
	p.object = widgets.ColumnGap(theme.Half, p.search, p.results, p.none)
	return p
}

func (p *picker) look(text string) {
	p.found = p.find(text)
	p.results.Objects = nil
	for i, f := range p.found {
		button := widgets.NewTextButton(f.Name, func() { p.take(p.found[i]) })
		p.results.Add(widgets.Row(widgets.Name(button, p.name+"."+f.Code)))
	}
	p.none.SetText("Nothing that fits is found.")
	p.none.Hidden = text == "" || len(p.found) > 0
	p.changed()
}

func (p *picker) takeFirst(string) {
	if len(p.found) > 0 {
		p.take(p.found[0])
	}
}

func (p *picker) take(f food.Food) {
	p.search.SetText("")
	p.look("")
	p.picked(f)
}

package sheet

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// wantList shows what a plan still needs, each a button that leads to its
// field. It keeps its lines and changes only what they say.
type wantList struct {
	object *fyne.Container
	lines  []*wantLine
	goTo   func(action)
}

type wantLine struct {
	object  *fyne.Container
	button  *widgets.Button
	problem *widgets.Text
	want    want
}

func newWantList(goTo func(action)) *wantList {
	return &wantList{object: widgets.ColumnGap(theme.Half, widgets.NewText("Still to fill in", widgets.Strong)), goTo: goTo}
}

func (l *wantList) set(wants []want) {
	widgets.Unname("sheet.want")
	for i, w := range wants {
		if i == len(l.lines) {
			l.add()
		}
		l.lines[i].set(w)
	}
	for i, line := range l.lines {
		line.object.Hidden = i >= len(wants)
	}
	l.object.Hidden = len(wants) == 0
}

func (l *wantList) add() {
	line := &wantLine{problem: widgets.NewText("", widgets.Problem)}
	line.button = widgets.NewTextButton("", func() {
		l.goTo(action{line.want.Label, line.want.Section, line.want.Field})
	})
	line.object = widgets.ColumnGap(0, flush(line.button), line.problem)
	l.lines = append(l.lines, line)
	l.object.Add(line.object)
}

// flush sets a text button so that its words stand at the margin.
func flush(button *widgets.Button) *fyne.Container {
	return widgets.InsetSides(-theme.Half, 0, 0, 0, widgets.Row(button))
}

func (l *wantLine) set(w want) {
	l.want = w
	l.button.SetText(w.Label)
	l.problem.SetText(w.Problem)
	l.problem.Hidden = w.Problem == ""
	widgets.Name(l.button, "sheet.want."+string(w.Field))
}

package sheet

import (
	"fmt"

	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// findingList shows the groups of findings. It keeps its cards and changes only
// what they say.
type findingList struct {
	object *fyne.Container
	parts  []*findingGroup
	goTo   func(action)
	// changed is told when a group folds or unfolds.
	changed func()
}

// mostGroups is how many groups of findings there can be.
const mostGroups = 6

func newFindingList(goTo func(action), changed func()) *findingList {
	l := &findingList{object: widgets.ColumnGap(theme.Two), goTo: goTo, changed: changed}
	for range mostGroups {
		part := newFindingGroup(l)
		l.parts = append(l.parts, part)
		l.object.Add(part.object)
	}
	return l
}

func (l *findingList) set(groups []group) {
	for i, part := range l.parts {
		if i < len(groups) {
			part.set(groups[i])
		}
		part.object.Hidden = i >= len(groups)
	}
	l.object.Hidden = len(groups) == 0
}

// findingGroup is one group. The mildest one, the notes, is folded until it is
// asked for.
type findingGroup struct {
	list    *findingList
	object  *fyne.Container
	title   *widgets.Text
	fold    *widgets.Button
	foldRow *fyne.Container
	cards   *fyne.Container
	shown   []*findingLine
	notes   bool
	open    bool
}

// findingLine is a card with what it shows now.
type findingLine struct {
	card *widgets.FindingCard
	item item
}

func newFindingGroup(l *findingList) *findingGroup {
	g := &findingGroup{list: l, title: widgets.NewText("", widgets.Strong), cards: widgets.Column()}
	g.fold = widgets.NewTextButton("", g.toggle)
	g.foldRow = flush(g.fold)
	g.object = widgets.Column(g.title, g.foldRow, g.cards)
	return g
}

func (g *findingGroup) set(to group) {
	g.notes = to.Title == titleNotes
	g.title.SetText(to.Title)
	g.fold.SetText(noteCount(len(to.Items)))
	for i, it := range to.Items {
		if i == len(g.shown) {
			g.add(it)
		}
		g.shown[i].set(it, g.list.goTo)
	}
	for i, line := range g.shown {
		line.card.Hidden = i >= len(to.Items)
	}
	g.arrange()
}

func (g *findingGroup) add(it item) {
	line := &findingLine{card: widgets.NewFindingCard(it.Finding)}
	g.shown = append(g.shown, line)
	g.cards.Add(line.card)
}

func (l *findingLine) set(it item, goTo func(action)) {
	if l.item == it {
		return
	}
	l.item = it
	l.card.SetFinding(it.Finding)
	button := l.card.SetAction(it.Action.Label, func() { goTo(it.Action) })
	if button != nil {
		widgets.Name(button, "sheet.finding."+it.Finding.Code)
	}
}

func (g *findingGroup) toggle() {
	g.open = !g.open
	g.arrange()
	g.list.changed()
}

func (g *findingGroup) arrange() {
	g.title.Hidden = g.notes
	g.foldRow.Hidden = !g.notes
	g.cards.Hidden = g.notes && !g.open
	g.fold.SetIcon(widgets.IconOpen)
	if g.open {
		g.fold.SetIcon(widgets.IconOpened)
	}
	if g.notes {
		widgets.Name(g.fold, "sheet.notes")
	}
}

func noteCount(n int) string {
	if n == 1 {
		return "1 note"
	}
	return fmt.Sprintf("%d notes", n)
}

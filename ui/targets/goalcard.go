package targets

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/energy"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// goalKinds are the goals in the order of the choice.
var goalKinds = []energy.GoalKind{energy.Lose, energy.Maintain, energy.Gain}

// goalCard is what was asked for and what it comes to.
type goalCard struct {
	object *widgets.Card
	source Source
	now    view

	kind               *widgets.Choice
	weight, by, agreed *input
	whereTo            *fyne.Container

	asked, comesTo, fast *widgets.Text
	take                 *widgets.Button
	tooFast, outcome     *fyne.Container
}

func newGoalCard(s Source) *goalCard {
	c := &goalCard{source: s}
	c.kind = widgets.Name(widgets.NewChoice("The client would like to", []widgets.Option{
		{Label: "Lose weight"}, {Label: "Hold it"}, {Label: "Gain weight"},
	}, c.onKind), "targets."+string(draft.GoalKind))
	c.weight = newInput(s, draft.GoalWeight, "Goal weight", "")
	c.by = newInput(s, draft.GoalBy, "By", "a date, such as 31 August 2026")
	c.agreed = newInput(s, draft.GoalEnergy, "Agreed energy", "a day, instead of a date; may stay empty")
	const fieldWidth = 150
	c.whereTo = widgets.Grid(fieldWidth, c.weight.Field, c.by.Field)
	c.buildOutcome()
	c.object = widgets.NewCard("Goal", widgets.ColumnGap(theme.Two, c.kind, c.whereTo, c.agreed.Field, c.outcome))
	return c
}

func (c *goalCard) buildOutcome() {
	c.asked, c.comesTo = widgets.NewText("", widgets.Strong), widgets.NewText("", widgets.Body)
	c.fast = widgets.NewText("", widgets.Body)
	c.fast.SetColour(theme.Brick)
	c.take = widgets.Name(widgets.NewQuietButton("", c.onTake), "targets.take")
	c.tooFast = widgets.Column(c.fast, widgets.Row(c.take))
	c.outcome = widgets.Column(widgets.NewHairline(), c.asked, c.comesTo, c.tooFast)
}

func (c *goalCard) show(v view) {
	c.now = v
	c.kind.SetSelected(chosenKind(c.source.Get(draft.GoalKind)))
	c.whereTo.Hidden = !v.NamesWeight
	for _, in := range []*input{c.weight, c.by, c.agreed} {
		in.show()
	}
	c.outcome.Hidden = v.Goal.Asked == ""
	c.asked.SetText(v.Goal.Asked)
	c.comesTo.SetText(v.Goal.ComesTo)
	c.fast.SetText(v.Goal.Fast)
	c.take.SetText(v.Goal.Safe.Label)
	c.tooFast.Hidden = v.Goal.Fast == ""
}

func chosenKind(text string) int {
	for i, kind := range goalKinds {
		if string(kind) == text {
			return i
		}
	}
	return -1
}

func (c *goalCard) onKind(index int) { c.source.Set(draft.GoalKind, string(goalKinds[index])) }

// onTake brings the goal inside the guards.
func (c *goalCard) onTake() {
	for _, change := range c.now.Goal.Safe.Changes {
		c.source.Set(change.Field, change.Text)
	}
}

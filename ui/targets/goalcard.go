package targets

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// goalKinds are the goals in the order of the choice.
var goalKinds = []energy.GoalKind{energy.Lose, energy.Maintain, energy.Gain}

// goalCard is where the goal is set: what it is, and in which way it is said.
type goalCard struct {
	object *widgets.Card
	source Source
	now    view
	shown  wish // the way whose field is shown
	kept   *memory

	kind   *widgets.Choice
	weight *input
	ways   *widgets.Choice
	fields map[wish]*input
	pace   *fyne.Container // the ways

	asked, customary *widgets.Text
	trouble, unsafe  *widgets.Text
	safe             *opening
	takes            [2]*widgets.Button
	guard, outcome   *fyne.Container
}

func newGoalCard(s Source, changed func()) *goalCard {
	c := &goalCard{source: s, kept: newMemory(), fields: map[wish]*input{}}
	c.kind = widgets.Name(widgets.NewChoice("The client would like to", []widgets.Option{
		{Label: "Lose weight"}, {Label: "Hold it"}, {Label: "Gain weight"},
	}, c.onKind), "targets."+string(draft.GoalKind))
	c.weight = newInput(s, draft.GoalWeight, "Goal weight", "such as 70 kg")
	options := make([]widgets.Option, len(wishes))
	for i, w := range wishes {
		options[i].Label = w.label()
	}
	c.ways = widgets.Name(widgets.NewChoice("Set by", options, c.onWish), "targets.wish")
	c.fields[byDate] = newInput(s, draft.GoalBy, "By", "a date, such as 31 August 2026")
	c.fields[byRate] = newInput(s, draft.GoalPerWeek, "A week", "such as 0.5 kg or 1 lb")
	c.fields[byEnergy] = newInput(s, draft.GoalEnergy, "Agreed energy a day", "such as 1900 kcal")
	c.pace = widgets.Column(c.ways)
	c.buildOutcome(s.Style(), changed)
	const most = 480
	c.object = widgets.NewCard("Goal", widgets.Narrow(most, widgets.ColumnGap(theme.Two, c.kind, c.weight.Field, c.pace,
		c.fields[byDate].Field, c.fields[byRate].Field, c.fields[byEnergy].Field, c.outcome)))
	return c
}

func (c *goalCard) buildOutcome(style unit.Style, changed func()) {
	c.asked, c.customary = widgets.NewText("", widgets.Strong), widgets.NewText("", widgets.Body)
	c.trouble, c.unsafe = widgets.NewText("", widgets.Body), widgets.NewText("", widgets.Body)
	for _, text := range []*widgets.Text{c.trouble, c.unsafe} {
		text.SetColour(theme.Brick)
	}
	c.safe = newOpening("safe", "Safe energy", style, changed)
	c.takes = [2]*widgets.Button{
		widgets.Name(widgets.NewQuietButton("", func() { c.onTake(0) }), "targets.take"),
		widgets.Name(widgets.NewQuietButton("", func() { c.onTake(1) }), "targets.take_other"),
	}
	c.guard = widgets.Column(c.unsafe, widgets.Row(c.takes[0], c.takes[1]), c.safe)
	c.outcome = widgets.Column(widgets.NewHairline(), c.asked, c.customary, c.trouble, c.guard)
}

func (c *goalCard) show(v view) {
	c.now = v
	g := v.Goal
	c.kind.SetSelected(chosenKind(g.Kind))
	if g.Wishes {
		c.shown = g.Wish
	}
	c.showFields(g)
	say(c.asked, g.Asked)
	say(c.customary, g.Customary)
	say(c.trouble, g.Trouble)
	say(c.unsafe, g.Unsafe)
	c.guard.Hidden = g.Unsafe == ""
	c.safe.setOrHide(g.Safe)
	for i, button := range c.takes {
		button.Hidden = i >= len(g.Offers)
		if !button.Hidden {
			button.SetText(g.Offers[i].Label)
		}
	}
	c.outcome.Hidden = g.Asked == "" && g.Trouble == ""
}

// showFields shows the field of the way that is looked at; for holding the weight
// an energy may be agreed, and nothing else is asked.
func (c *goalCard) showFields(g goalView) {
	setShown(c.weight.Field, g.NamesWeight)
	c.pace.Hidden = !g.NamesWeight
	shown := c.shown
	if !g.NamesWeight {
		shown = byEnergy
	}
	c.ways.SetSelected(int(shown))
	c.weight.show()
	for w, in := range c.fields {
		setShown(in.Field, w == shown)
		in.show()
	}
}

// reach shows the field of a way and returns what takes its focus.
func (c *goalCard) reach(w wish) fyne.CanvasObject {
	c.shown = w
	c.showFields(c.now.Goal)
	return c.fields[w].Field
}

func chosenKind(kind energy.GoalKind) int {
	for i, k := range goalKinds {
		if k == kind {
			return i
		}
	}
	return -1
}

func (c *goalCard) onKind(index int) { c.source.Set(draft.GoalKind, string(goalKinds[index])) }

// onWish says the goal in another way; the course stays as near as can be typed.
func (c *goalCard) onWish(index int) {
	to, from := wishes[index], c.shown
	if c.now.Goal.Wishes {
		from = c.now.Goal.Wish
	}
	var plan *domain.Plan
	if p, planned := c.source.Plan(); planned {
		plan = &p
	}
	c.shown = to
	c.source.SetAll(c.kept.turn(from, to, c.source.Get, plan, c.source.Style()))
	c.showFields(c.now.Goal)
}

// onTake brings the goal inside the guards.
func (c *goalCard) onTake(index int) {
	if index < len(c.now.Goal.Offers) {
		c.source.SetAll(c.now.Goal.Offers[index].Changes)
	}
}

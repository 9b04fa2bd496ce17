package handout

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// WithoutNumbers is kept with the client, so that nobody whom numbers harm is
// given them at the next visit because a switch was forgotten.
const WithoutNumbers draft.Field = "handout.without_numbers"

// paperSizes are the papers in the order of the choice.
var paperSizes = []string{A4, Letter}

// choices is the card on which the paper is chosen, saved and printed.
type choices struct {
	object  *widgets.Card
	session *draft.Session
	names   []PageName

	pages, without *widgets.MultiChoice
	paper          *widgets.Choice
	step           *widgets.Field
	visit          *widgets.DateField
	plan           *fyne.Container // what only a handout has
	save, print    *widgets.Button
	told           *told
}

// newChoices begins with the usual pages; changed is told of every choice that is not
// in the form.
func newChoices(s *draft.Session, names []PageName, changed, save, print, stop func()) *choices {
	c := &choices{session: s, names: names, told: newTold("handout.stop", stop)}
	c.buildPages(func([]int) { changed() }, func(int) { changed() })
	c.buildNext()
	c.save = widgets.Name(widgets.NewPrimaryButton("Save as PDF", save), "handout.save")
	c.save.SetIcon(widgets.IconSave)
	c.print = widgets.Name(widgets.NewQuietButton("Print", print), "handout.print")
	c.print.SetIcon(widgets.IconPrint)
	c.plan = widgets.ColumnGap(theme.Two, c.pages, c.without, c.step, c.visit)
	c.object = widgets.NewCard("Handout", widgets.ColumnGap(theme.Two,
		c.plan, c.paper, widgets.Row(c.save, c.print), c.told.object))
	return c
}

func (c *choices) buildPages(several func([]int), one func(int)) {
	options := make([]widgets.Option, len(c.names))
	var usual []int
	for i, page := range c.names {
		options[i].Label = page.Name
		if !page.Extra {
			usual = append(usual, i)
		}
	}
	c.pages = widgets.Name(widgets.NewMultiChoice("Pages", options, several), "handout.pages")
	c.pages.SetSelected(usual)
	c.without = widgets.Name(widgets.NewMultiChoice("", []widgets.Option{{
		Label: "Without numbers", Description: "No weight, energy or grams: only measures, foods and steps.",
	}}, c.onWithout), "handout.without_numbers")
	c.paper = widgets.Name(widgets.NewChoice("Paper", []widgets.Option{{Label: "A4"}, {Label: "US Letter"}}, one), "handout.paper")
	c.paper.SetSelected(0)
}

func (c *choices) buildNext() {
	const rows = 3
	c.step = widgets.Name(widgets.NewArea("Next step", "What was agreed to try first.", rows), "handout."+string(draft.NextStep))
	c.step.OnChanged = c.onStep
	c.visit = widgets.Name(widgets.NewDateField("Next visit", "Such as 30 March 2026; may stay empty."), "handout."+string(draft.NextVisit))
	c.visit.CheckDate = func(next unit.Date) error { return checkVisit(next, c.session.Reading().Intake.Date) }
	c.visit.OnChanged = c.onVisit
}

func (c *choices) onStep(text string)  { c.session.Set(draft.NextStep, text) }
func (c *choices) onVisit(text string) { c.session.Set(draft.NextVisit, text) }

func (c *choices) onWithout(selected []int) {
	text := ""
	if len(selected) > 0 {
		text = draft.AnswerYes
	}
	c.session.Set(WithoutNumbers, text)
}

// show follows the form and what paper there is.
func (c *choices) show(v view, free bool) {
	c.object.SetTitle(map[bool]string{true: "Referral note", false: "Handout"}[v.State == referred])
	c.plan.Hidden = v.State == referred
	if on := c.withoutNumbers(); on != (len(c.without.Selected()) > 0) {
		c.without.SetSelected(map[bool][]int{true: {0}}[on])
	}
	showText(c.step, c.session.Get(draft.NextStep))
	showText(&c.visit.Field, c.session.Get(draft.NextVisit))
	for _, b := range []*widgets.Button{c.save, c.print} {
		if free && v.ready() && !noPages(v.State, c.choice()) {
			b.Enable()
		} else {
			b.Disable()
		}
	}
	c.object.Refresh()
}

func (c *choices) withoutNumbers() bool { return c.session.Get(WithoutNumbers) == draft.AnswerYes }

// showText follows the form; the text that is being typed is the form's own.
func showText(f *widgets.Field, text string) {
	if text != f.Text() {
		f.SetText(text)
		return
	}
	f.Recheck()
}

// choice is what is chosen now. A next visit that cannot be read is left out.
func (c *choices) choice() Choice {
	form := c.session.Form()
	visit, _ := visitWords(form.Get(draft.NextVisit), c.session.Reading().Intake.Date)
	return Choice{
		Paper: paperSizes[c.paper.Selected()], WithoutNumbers: c.withoutNumbers(),
		Pages: keysOf(c.names, c.pages.Selected()), NextStep: form.Get(draft.NextStep), NextVisit: visit,
	}
}

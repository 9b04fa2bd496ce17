package screening

import (
	"slices"

	"fyne.io/fyne/v2"

	"handbreadth/domain/derive"
	"handbreadth/domain/screen"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// findings shows what the answers and the figures come to. Cards are made once
// for a finding and kept, so that typing a reason is not disturbed.
type findings struct {
	source Source
	settle func()

	glance *fyne.Container // at the top: how many there are, and the way to them
	count  *widgets.Text
	see    *widgets.Button

	object *fyne.Container
	title  *widgets.Text
	lead   *widgets.Text
	note   *fyne.Container // with the way to the referral note
	groups [groupCount]*findingGroup
	cards  map[string]*findingCard
	shown  []string // codes of the holds whose reasons are shown
	first  string   // the first of them that waits; "" where none does
}

// findingGroup is one kind of findings under its heading.
type findingGroup struct {
	object *fyne.Container
	title  *widgets.Text
	cards  *fyne.Container
}

func newFindings(source Source, settle func(), goTo func(section string)) *findings {
	f := &findings{source: source, settle: settle, cards: map[string]*findingCard{}}
	f.count = widgets.NewLine("", widgets.Strong)
	f.see = widgets.Name(widgets.NewTextButton("Go there", f.reveal), "screening.see")
	f.glance = widgets.Row(f.count, f.see)
	f.title = widgets.NewText("What this comes to", widgets.Title)
	f.lead = widgets.NewText("", widgets.Body)
	f.note = widgets.Row(widgets.Name(widgets.NewQuietButton("Go to the referral note", func() { goTo("handout") }), "screening.referral"))
	f.object = widgets.ColumnGap(theme.Two, widgets.NewHairline(), widgets.ColumnGap(theme.Unit, f.title, f.lead, f.note))
	for g := range f.groups {
		f.groups[g] = newFindingGroup()
		f.object.Add(f.groups[g].object)
	}
	f.object.Add(widgets.NewText(footWords, widgets.Small))
	return f
}

func newFindingGroup() *findingGroup {
	g := &findingGroup{title: widgets.NewText("", widgets.Strong), cards: widgets.ColumnGap(theme.Unit + theme.Half)}
	g.object = widgets.Column(g.title, g.cards)
	return g
}

// show follows the form.
func (f *findings) show() {
	plan, planned := f.source.Plan()
	o := outcomeOf(plan, planned, f.source.Reading())
	glance := o.glance()
	f.count.SetText(glance)
	f.glance.Hidden = glance == ""
	f.lead.SetText(o.Lead)
	f.note.Hidden = !o.Referred
	f.shown, f.first = o.reasons()
	f.see.Hidden = !o.Referred && f.first == ""
	for g := range f.groups {
		f.showGroup(group(g), o)
	}
}

func (f *findings) showGroup(g group, o outcome) {
	shown := f.groups[g]
	shown.title.SetText(o.title(g))
	shown.object.Hidden = len(o.Groups[g]) == 0
	objects := make([]fyne.CanvasObject, len(o.Groups[g]))
	for i, it := range o.Groups[g] {
		objects[i] = f.card(it).object
	}
	if !slices.Equal(objects, shown.cards.Objects) {
		shown.cards.Objects = objects
		shown.cards.Refresh()
	}
}

func (f *findings) card(it item) *findingCard {
	key := it.Finding.Code + " " + it.Finding.Level.String()
	c, made := f.cards[key]
	if !made {
		c = newFindingCard(it.Finding)
		f.cards[key] = c
	}
	if c.card.Finding() != it.Finding {
		c.card.SetFinding(it.Finding)
	}
	if it.Reason && c.reason == nil {
		c.addReason(f.source, f.settle)
	}
	if c.reason != nil {
		c.reason.show(f.shown)
		c.arrange(it)
	}
	return c
}

// focus moves the focus to a part of a reason.
func (f *findings) focus(field draft.Field) {
	code, is := codeOf(field)
	if !is {
		return
	}
	c, known := f.cards[code+" "+derive.Hold.String()]
	if !known || c.reason == nil || !slices.Contains(f.shown, code) {
		return
	}
	c.open()
	c.reason.focus(field)
}

// reveal goes to the first thing that can be done below.
func (f *findings) reveal() {
	if f.note.Visible() {
		widgets.FocusOn(f.note.Objects[0])
		return
	}
	f.focus(draft.Reason(f.first, draft.ReasonText))
}

// findingCard is one finding, with its reason below where one is asked for.
type findingCard struct {
	object *fyne.Container
	card   *widgets.FindingCard
	reason *reasonForm
	opener *fyne.Container // with the button that opens the form; nil where it is open
	opened bool
	settle func()
}

func newFindingCard(f derive.Finding) *findingCard {
	c := &findingCard{card: widgets.NewFindingCard(f)}
	c.object = widgets.ColumnGap(theme.Unit+theme.Half, c.card)
	return c
}

// addReason adds the form of the reason. What was not asked is better asked than
// excused, so its form is opened by a button first.
func (c *findingCard) addReason(source Source, settle func()) {
	code := c.card.Finding().Code
	c.settle = settle
	c.reason = newReasonForm(code, source)
	c.object.Add(c.reason.object)
	if code == screen.NotAskedCode {
		b := widgets.Name(widgets.NewTextButton("Record why they were not asked", c.onOpen), "screening.not_asked.reason")
		c.opener = widgets.InsetSides(theme.Unit+theme.Half, 0, 0, theme.Half, widgets.Row(b))
		c.object.Add(c.opener)
	}
}

// arrange shows the form, or the button that opens it.
func (c *findingCard) arrange(it item) {
	c.opened = c.opened || it.Lifted
	folded := c.opener != nil && !c.opened
	c.reason.object.Hidden = !it.Reason || folded
	if c.opener != nil {
		c.opener.Hidden = !it.Reason || !folded
	}
}

// open shows the form.
func (c *findingCard) open() {
	c.opened = true
	c.arrange(item{Reason: true})
	c.settle()
}

func (c *findingCard) onOpen() {
	c.open()
	c.reason.focus(draft.Reason(c.card.Finding().Code, draft.ReasonText))
}

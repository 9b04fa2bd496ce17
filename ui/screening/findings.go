package screening

import (
	"slices"

	"fyne.io/fyne/v2"

	"handbreadth/domain/derive"
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
	f.count = widgets.NewText("", widgets.Strong)
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
		c.reason = newReasonForm(it.Finding.Code, f.source)
		c.object.Add(c.reason.object)
	}
	if c.reason != nil {
		c.reason.object.Hidden = !it.Reason
		c.reason.show(f.shown)
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
	if !known || c.reason == nil || !c.reason.object.Visible() {
		return
	}
	f.settle()
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
}

func newFindingCard(f derive.Finding) *findingCard {
	c := &findingCard{card: widgets.NewFindingCard(f)}
	c.object = widgets.ColumnGap(theme.Unit+theme.Half, c.card)
	return c
}

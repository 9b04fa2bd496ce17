package screening

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/screen"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// detail shows and takes one field beside the questions.
type detail interface {
	Object() fyne.CanvasObject
	// show follows the form.
	show()
}

// typed is a detail that is typed.
type typed struct {
	*widgets.Field
	source Source
	field  draft.Field
}

func newTyped(source Source, field draft.Field, label, hint string) *typed {
	t := &typed{Field: widgets.NewField(label, hint), source: source, field: field}
	t.Check = t.check
	t.OnChanged = func(text string) { source.Set(field, text) }
	widgets.Name(t.Field, "screening."+string(field))
	return t
}

func (t *typed) Object() fyne.CanvasObject { return t.Field }

func (t *typed) check(text string) (string, error) {
	r := t.source.Try(t.field, text)
	if p, wrong := r.Wrong(t.field); wrong {
		return "", p
	}
	if words := r.Understood[t.field]; words != "" {
		return "= " + words, nil
	}
	return "", nil
}

func (t *typed) show() {
	if text := t.source.Get(t.field); text != t.Text() {
		t.SetText(text)
		return
	}
	t.Recheck()
}

// asked is a detail that is answered with yes or no.
type asked struct {
	*widgets.YesNo
	source Source
	field  draft.Field
}

func newAsked(source Source, field draft.Field, ask string) *asked {
	a := &asked{source: source, field: field}
	a.YesNo = widgets.NewYesNo(ask, func(answer screen.Answer) { source.Set(field, textOf(answer)) })
	widgets.Name(a.YesNo, "screening."+string(field))
	return a
}

func (a *asked) Object() fyne.CanvasObject { return a.YesNo }

func (a *asked) show() {
	if answer := answerOf(a.source.Get(a.field)); answer != a.Answer() {
		a.SetAnswer(answer)
	}
}

// picked is a detail that is one of several answers; the first is not asked.
type picked struct {
	*widgets.Choice
	source Source
	field  draft.Field
	values []string
}

func newPicked(source Source, field draft.Field, label string, options []widgets.Option, values []string) *picked {
	p := &picked{source: source, field: field, values: append([]string{""}, values...)}
	options = append([]widgets.Option{{Label: "Not asked"}}, options...)
	p.Choice = widgets.NewChoice(label, options, func(i int) { source.Set(field, p.values[i]) })
	widgets.Name(p.Choice, "screening."+string(field))
	return p
}

func (p *picked) Object() fyne.CanvasObject { return p.Choice }

func (p *picked) show() {
	at := 0
	for i, value := range p.values {
		if value == p.source.Get(p.field) {
			at = i
		}
	}
	if at != p.Selected() {
		p.SetSelected(at)
	}
}

// newDetail makes a detail of a pregnancy or of the refeeding criteria.
func newDetail(source Source, field draft.Field) detail {
	switch field {
	case draft.LowElectrolytes, draft.AlcoholOrDrugs:
		return newAsked(source, field, detailLabels[field])
	case draft.Breastfeeding:
		return newPicked(source, field, detailLabels[field],
			[]widgets.Option{{Label: "None"}, {Label: "0 to 6 months"}, {Label: "7 to 12 months"}},
			[]string{draft.NotBreastfeeding, draft.FirstHalfYear, draft.SecondHalfYear})
	}
	return newTyped(source, field, detailLabels[field], detailHint(field, source.Style()))
}

// followUp is what is asked further below a question that points to it.
type followUp struct {
	object  *fyne.Container
	details map[draft.Field]detail
	isAsked func(r draft.Reading, form draft.Form) bool
}

func newFollowUp(source Source, lead, from string, fields []draft.Field, isAsked func(draft.Reading, draft.Form) bool) *followUp {
	f := &followUp{details: map[draft.Field]detail{}, isAsked: isAsked}
	column := widgets.ColumnGap(theme.Unit+theme.Half, widgets.NewText(lead, widgets.Small))
	const pairWidth = 240
	var pair []fyne.CanvasObject
	for _, field := range fields {
		d := newDetail(source, field)
		f.details[field] = d
		if _, isTyped := d.(*typed); isTyped {
			pair = append(pair, d.Object())
			continue
		}
		if pair != nil {
			column.Add(widgets.Grid(pairWidth, pair...))
			pair = nil
		}
		column.Add(d.Object())
	}
	if from != "" {
		column.Add(widgets.NewText(from, widgets.Source))
	}
	f.object = widgets.InsetSides(theme.Three, theme.Half, 0, theme.Two, column)
	return f
}

// show follows the form and reports whether it came or went.
func (f *followUp) show(r draft.Reading, form draft.Form) (changed bool) {
	before := f.object.Hidden
	f.object.Hidden = !f.isAsked(r, form)
	for _, d := range f.details {
		d.show()
	}
	return before != f.object.Hidden
}

// focus moves the focus to a detail and reports whether it is one of these and
// shown.
func (f *followUp) focus(field draft.Field) bool {
	d, mine := f.details[field]
	return mine && f.object.Visible() && widgets.FocusOn(d.Object())
}

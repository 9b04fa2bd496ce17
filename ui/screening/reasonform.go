package screening

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// reasonForm takes the reason that lifts one hold.
type reasonForm struct {
	object *fyne.Container
	code   string
	source Source
	status *widgets.Text
	copy   *fyne.Container // with the button that takes over who decided
	lender string          // the hold whose reason is taken over
	fields map[draft.ReasonPart]*widgets.Field
	inputs map[draft.Field]fyne.CanvasObject
}

func newReasonForm(code string, source Source) *reasonForm {
	r := &reasonForm{
		code: code, source: source, status: widgets.NewText("", widgets.Small),
		fields: map[draft.ReasonPart]*widgets.Field{}, inputs: map[draft.Field]fyne.CanvasObject{},
	}
	box := map[draft.ReasonPart]fyne.CanvasObject{}
	for _, part := range reasonParts {
		box[part] = r.newField(part)
	}
	r.copy = widgets.Row(widgets.Name(widgets.NewTextButton("Take name, registration and date from the other reason", r.onCopy),
		"screening."+string(draft.Reason(code, "copy"))))
	const leastWidth = 210
	column := widgets.ColumnGap(theme.Unit+theme.Half, r.status, box[draft.ReasonText], r.copy,
		widgets.Grid(leastWidth, box[draft.ReasonBy], box[draft.ReasonRegistration], box[draft.ReasonDate]), box[draft.ReasonPrescriber])
	r.object = widgets.InsetSides(theme.Two, 0, 0, theme.Unit, column)
	return r
}

func (r *reasonForm) newField(part draft.ReasonPart) fyne.CanvasObject {
	field, label, hint := draft.Reason(r.code, part), reasonLabels[part], reasonHints[part]
	var object fyne.CanvasObject
	const rows = 2
	switch part {
	case draft.ReasonText, draft.ReasonPrescriber:
		area := widgets.NewArea(label, hint, rows)
		r.fields[part], object = area, area
	case draft.ReasonDate:
		date := widgets.NewDateField(label, hint)
		date.Check = understandDate
		r.fields[part], object = &date.Field, date
	default:
		line := widgets.NewField(label, hint)
		r.fields[part], object = line, line
	}
	r.fields[part].OnChanged = func(text string) { r.source.Set(field, text) }
	r.inputs[field] = widgets.Name(object, "screening."+string(field))
	return object
}

// show follows the form; shown are the holds whose reasons are on the screen.
func (r *reasonForm) show(shown []string) {
	for part, f := range r.fields {
		if text := r.source.Get(draft.Reason(r.code, part)); f.Text() != text {
			f.SetText(text)
		}
	}
	form := r.source.Form()
	r.status.SetText(reasonStatus(r.code, form))
	lender, can := lender(r.code, shown, form)
	r.lender = lender
	r.copy.Hidden = !can
}

// onCopy takes over who decided, their registration and the date.
func (r *reasonForm) onCopy() {
	texts := map[draft.Field]string{}
	for _, part := range copied {
		texts[draft.Reason(r.code, part)] = r.source.Get(draft.Reason(r.lender, part))
	}
	r.source.SetAll(texts)
	widgets.FocusOn(r.inputs[draft.Reason(r.code, draft.ReasonPrescriber)])
}

func (r *reasonForm) focus(field draft.Field) {
	if object, mine := r.inputs[field]; mine {
		widgets.FocusOn(object)
	}
}

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
	fields map[draft.ReasonPart]*widgets.Field
	inputs map[draft.Field]fyne.CanvasObject
}

// reasonParts are the parts of a reason as they are asked for.
var reasonParts = []struct {
	part        draft.ReasonPart
	label, hint string
}{
	{draft.ReasonText, "Reason for going on", "A sentence is enough. Without it the plan stays held."},
	{draft.ReasonBy, "Decided by", "Name"},
	{draft.ReasonRegistration, "Registration", "As the local register writes it"},
	{draft.ReasonDate, "Date", ""},
	{draft.ReasonPrescriber, "Prescriber", "Contacted or not, and what they said"},
}

func newReasonForm(code string, s Source) *reasonForm {
	r := &reasonForm{code: code, source: s, fields: map[draft.ReasonPart]*widgets.Field{}, inputs: map[draft.Field]fyne.CanvasObject{}}
	boxes := make([]fyne.CanvasObject, len(reasonParts))
	for i, p := range reasonParts {
		boxes[i] = r.newField(p.part, p.label, p.hint)
	}
	const pairWidth = 240
	r.object = widgets.InsetSides(theme.Two, theme.Half, 0, theme.Unit, widgets.ColumnGap(theme.Unit,
		boxes[0], widgets.Grid(pairWidth, boxes[1:]...)))
	return r
}

func (r *reasonForm) newField(part draft.ReasonPart, label, hint string) fyne.CanvasObject {
	field := draft.Reason(r.code, part)
	var object fyne.CanvasObject
	switch part {
	case draft.ReasonText:
		const rows = 2
		area := widgets.NewArea(label, hint, rows)
		r.fields[part], object = area, area
	case draft.ReasonDate:
		date := widgets.NewDateField(label, hint)
		r.fields[part], object = &date.Field, date
	default:
		line := widgets.NewField(label, hint)
		r.fields[part], object = line, line
	}
	r.fields[part].OnChanged = func(text string) { r.source.Set(field, text) }
	r.inputs[field] = widgets.Name(object, "screening."+string(field))
	return object
}

// show shows the form where it was changed elsewhere.
func (r *reasonForm) show() {
	for part, f := range r.fields {
		if text := r.source.Get(draft.Reason(r.code, part)); f.Text() != text {
			f.SetText(text)
		}
	}
}

// focus moves the focus to a field of the form, and reports whether it is here.
func (r *reasonForm) focus(field draft.Field) bool {
	object, mine := r.inputs[field]
	return mine && widgets.FocusOn(object)
}

package targets

import (
	"handbreadth/ui/draft"
	"handbreadth/ui/widgets"
)

// input is a field of the form: what is typed goes into the form at once, and
// what the form has is shown.
type input struct {
	*widgets.Field
	source Source
	field  draft.Field
}

func newInput(s Source, field draft.Field, label, hint string) *input {
	in := &input{Field: widgets.NewField(label, hint), source: s, field: field}
	in.Check = in.check
	in.OnChanged = func(text string) { s.Set(field, text) }
	widgets.Name(in.Field, "targets."+string(field))
	return in
}

// check reads the form as it would be with this text, so that a text that does
// not go with another answer is told, too.
func (in *input) check(text string) (understood string, err error) {
	reading := in.source.Reading()
	if text != in.source.Get(in.field) {
		form := in.source.Form()
		form[in.field] = text
		reading = draft.Read(form, in.source.Style())
	}
	if problem, wrong := reading.Wrong(in.field); wrong {
		return "", problem
	}
	if words := reading.Understood[in.field]; words != "" {
		return "= " + words, nil
	}
	return "", nil
}

// show follows the form; the text that is being typed is the form's own.
func (in *input) show() {
	if text := in.source.Get(in.field); text != in.Text() {
		in.SetText(text)
		return
	}
	in.Recheck()
}

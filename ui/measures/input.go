package measures

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

func newInput(s Source, field draft.Field, label string) *input {
	in := &input{Field: widgets.NewField(label, ""), source: s, field: field}
	in.Check = in.check
	in.OnChanged = in.changed
	widgets.Name(in.Field, "measures."+string(field))
	return in
}

func (in *input) changed(text string) { in.source.Set(in.field, text) }

// check reads the form as it would be with this text, so that a text that does
// not go with another answer is told, too.
func (in *input) check(text string) (understood string, err error) {
	r := in.source.Try(in.field, text)
	if problem, wrong := r.Wrong(in.field); wrong {
		return "", problem
	}
	if words := r.Understood[in.field]; words != "" {
		return "= " + words, nil
	}
	return "", nil
}

// show follows the form; the text that is being typed is the form's own.
func (in *input) show(hint string) {
	in.SetHint(hint)
	if text := in.source.Get(in.field); text != in.Text() {
		in.SetText(text)
		return
	}
	in.Recheck()
}

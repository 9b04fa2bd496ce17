package targets

import (
	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
	"handbreadth/ui/widgets"
)

// opening is a number that makes its derivation only while it is open, so that
// typing does not build what nobody sees.
type opening struct {
	*widgets.Disclosure
	steps   []derive.Step
	changed func()
}

// newOpening returns a closed number; changed is told when it opens or closes.
func newOpening(name, label string, style unit.Style, changed func()) *opening {
	o := &opening{Disclosure: widgets.Name(widgets.NewDisclosure(label, style), "targets."+name), changed: changed}
	o.OnToggled = o.toggled
	return o
}

// set shows a number, or a dash where there is none yet.
func (o *opening) set(r row) {
	value := r.Value
	if value == "" {
		value = notYet
	}
	if r.Label != "" && r.Label != o.Label() {
		o.SetLabel(r.Label)
	}
	o.SetValue(value, r.Note)
	o.steps = r.Steps
	if o.Open() {
		o.SetSteps(r.Steps)
	}
}

// setOrHide shows a number, and nothing where there is none.
func (o *opening) setOrHide(r row) {
	o.Hidden = !r.shown()
	if r.shown() {
		o.set(r)
	}
}

func (o *opening) toggled(open bool) {
	if open {
		o.SetSteps(o.steps)
	}
	o.changed()
}

// notYet stands where a figure is not known yet.
const notYet = "–"

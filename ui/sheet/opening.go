package sheet

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
	more    *widgets.Text
	changed func()
}

// newOpening returns a closed number; changed is told when it opens or closes.
func newOpening(name, label string, style unit.Style, changed func()) *opening {
	o := &opening{Disclosure: widgets.Name(widgets.NewDisclosure(label, style), name), changed: changed}
	o.more = widgets.NewText("", widgets.Small)
	o.OnToggled = o.toggled
	return o
}

// set shows a figure, or a dash where there is none yet.
func (o *opening) set(f figure) {
	value := f.Value
	if value == "" {
		value = notYet
	}
	o.SetValue(value, f.Note)
	o.steps = f.Steps
	o.more.SetText(f.More)
	if o.Open() {
		o.showSteps()
	}
}

// showSteps makes the derivation, with what other ways say below it.
func (o *opening) showSteps() {
	o.SetSteps(o.steps)
	if o.more.Text() == "" {
		o.SetMore(nil)
		return
	}
	o.SetMore(o.more)
}

func (o *opening) toggled(open bool) {
	if open {
		o.showSteps()
	}
	o.changed()
}

// notYet stands where a figure is not known yet.
const notYet = "–"

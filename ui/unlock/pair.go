package unlock

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

const (
	labelShow = "Show what is typed"
	labelHide = "Hide what is typed"
	hintFirst = "Three or four words that do not belong together are easy to keep in mind and hard to guess."
	hintAgain = "So that a slip of the fingers does not lock you out."
)

// pair asks for a new passphrase twice, and tells as it is typed how far it
// would hold.
type pair struct {
	advise        Adviser
	first, second *widgets.Field
	meter         *widgets.Meter
	show          *widgets.Button
	object        *fyne.Container
}

// newPair makes the fields below a name; enter is what Enter in the second does.
func newPair(name, label string, advise Adviser, enter func()) *pair {
	p := &pair{advise: advise, meter: widgets.NewMeter()}
	p.first = widgets.Name(widgets.NewPasswordField(label, hintFirst), name+".first")
	p.second = widgets.Name(widgets.NewPasswordField("The same again", hintAgain), name+".again")
	p.first.OnChanged = func(string) { p.typed() }
	p.second.OnChanged = func(string) { p.typed() }
	p.first.OnLeave = func(string) { p.left() }
	p.second.OnEnter = func(string) { enter() }
	p.show = widgets.Name(widgets.NewTextButton(labelShow, p.turn), name+".show")
	p.object = widgets.ColumnGap(theme.Two,
		widgets.Column(p.first, widgets.Narrow(240, p.meter)), p.second, widgets.Row(p.show))
	return p
}

// typed shows what the adviser says; what is wrong goes as it is mended.
func (p *pair) typed() {
	text := p.first.Text()
	advice := p.advise(text)
	p.meter.SetShare(strength(advice, text))
	p.first.SetHint(advice.Words)
	if text == "" {
		p.first.SetHint(hintFirst)
	}
	if wrong, _ := pairProblem(advice, text, p.second.Text()); wrong == "" {
		p.first.SetProblem("")
	}
	if text == p.second.Text() {
		p.second.SetProblem("")
	}
}

// left says what keeps the first passphrase from being taken, once it is left.
func (p *pair) left() {
	text := p.first.Text()
	if advice := p.advise(text); text != "" && !advice.Accepted {
		p.first.SetHint("")
		p.first.SetProblem(advice.Words)
	}
}

// turn shows what is typed, or hides it.
func (p *pair) turn() {
	hidden := !p.first.Hidden()
	p.first.SetHidden(hidden)
	p.second.SetHidden(hidden)
	label := labelHide
	if hidden {
		label = labelShow
	}
	p.show.SetText(label)
}

// take returns the passphrase, or shows what is wrong and leads there.
func (p *pair) take() (passphrase string, ok bool) {
	text := p.first.Text()
	wrong, differs := pairProblem(p.advise(text), text, p.second.Text())
	if wrong != "" {
		p.first.SetHint("")
	}
	p.first.SetProblem(wrong)
	p.second.SetProblem(differs)
	switch {
	case wrong != "":
		widgets.FocusOn(p.first)
	case differs != "":
		widgets.FocusOn(p.second)
	default:
		return text, true
	}
	return "", false
}

func (p *pair) setEnabled(enabled bool) { setEnabled(enabled, p.first, p.second, p.show) }

package chart

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// readout is what the chart says of one day.
type readout struct {
	object                        *fyne.Container
	day, expected, within, static pair
	words                         Words
}

// widest are the widest texts that a readout has, so that nothing moves while
// the pointer does.
func widest(style unit.Style) Words {
	const heavy unit.Kilogram = 188.8
	w := Words{Date: "28 September 2028", After: "after 104 weeks"}
	weight := heavy
	if style.System == unit.UKCustomary {
		weight = (18*unit.PoundPerStone + 10) * unit.KilogramPerPound
	}
	w.Expected, w.Static = style.Weight(weight), style.Weight(weight)
	w.Range = between(weight, weight+1, style)
	return w
}

func newReadout(style unit.Style) *readout {
	w := widest(style)
	r := &readout{
		day: newPair(w.After, w.Date), expected: newPair("Expected", w.Expected),
		within: newPair("8 in 10 between", w.Range), static: newPair("Static rule", w.Static),
	}
	r.object = widgets.RowGap(theme.Three, r.day.object, r.expected.object, r.within.object, r.static.object)
	return r
}

func (r *readout) set(w Words) {
	r.words = w
	r.day.name.SetText(w.After)
	r.day.value.SetText(w.Date)
	r.expected.value.SetText(w.Expected)
	r.within.value.SetText(w.Range)
	r.static.value.SetText(w.Static)
}

// pair is a value below its name, as wide as its widest texts.
type pair struct {
	object      *fyne.Container
	name, value *widgets.Text
}

func newPair(name, widestValue string) pair {
	p := pair{name: widgets.NewLine(name, widgets.Small), value: widgets.NewLine("", widgets.Strong)}
	room := pairLayout{widgets.NewLine(name, widgets.Small), widgets.NewLine(widestValue, widgets.Strong)}
	p.object = &fyne.Container{Layout: room, Objects: []fyne.CanvasObject{p.name, p.value}}
	return p
}

// pairLayout sets one line below another, in the room that the widest texts take.
type pairLayout struct{ name, value *widgets.Text }

func (l pairLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	name, value := l.name.MinSize(), l.value.MinSize()
	return fyne.NewSize(max(name.Width, value.Width), name.Height+value.Height)
}

func (l pairLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	height := l.name.MinSize().Height
	put(objects[0], box{0, 0, size.Width, height})
	put(objects[1], box{0, height, size.Width, size.Height - height})
}

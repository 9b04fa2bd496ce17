package measures

import (
	"fyne.io/fyne/v2"

	draw "handbreadth/assets/hand"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// handFold takes the size of the client's hand: by tape, or by what one measure
// weighed in a kitchen.
type handFold struct {
	fold    *widgets.Fold
	source  Source
	changed func()

	tape    *widgets.HandTape
	lengths []*input
	factors [4]*opening
	weighed [4]*weighing
}

func newHandFold(s Source, changed func()) *handFold {
	f := &handFold{source: s, changed: changed}
	f.fold = widgets.Name(widgets.NewFold("This client's hand", f.build), "measures.fold.hand")
	f.fold.OnToggled = func(bool) { changed() }
	return f
}

// The sizes of the parts of the fold.
const (
	tapeHeight  float32 = 240
	tapeWidth   float32 = 208
	factorWidth float32 = 400
	lengthWidth float32 = 480
	foldWidth   float32 = 1040
)

func (f *handFold) build() fyne.CanvasObject {
	f.tape = widgets.NewHandTape(tapeHeight)
	column := widgets.ColumnGap(theme.Unit, widgets.NewText(tapeHow, widgets.Small))
	for _, l := range lengths {
		in := newInput(f.source, l.Field, l.Label)
		f.lengths = append(f.lengths, in)
		column.Add(in.Field)
	}
	var factors, weighed []fyne.CanvasObject
	for _, k := range hand.Kinds() {
		f.factors[k] = newOpening("measures.hand."+k.Key(), "", f.source.Style(), f.changed)
		factors = append(factors, f.factors[k].Disclosure)
		f.weighed[k] = newWeighing(f.source, k, f.changed)
		weighed = append(weighed, f.weighed[k].object)
	}
	return widgets.Narrow(foldWidth, widgets.ColumnGap(theme.Two,
		widgets.HeadedRow(tapeWidth, f.tape, widgets.Narrow(lengthWidth, column)),
		widgets.ColumnGap(theme.Half, widgets.NewText("What that makes of each measure", widgets.Strong), widgets.Grid(factorWidth, factors...)),
		widgets.ColumnGap(theme.Half, widgets.NewText("Weighed in a kitchen", widgets.Strong), widgets.NewText(weighHow, widgets.Small), widgets.Grid(factorWidth, weighed...)),
	))
}

const weighHow = "Let the client take one measure of a food and weigh it. For its measure it wins over the tape."

func (f *handFold) show(v view) {
	f.fold.Hidden = v.State == referred
	f.fold.SetMark(widgets.FoldMark{Text: v.Hand})
	if !f.fold.Open() {
		return
	}
	f.tape.SetHand(dimensions(v.Calibration))
	for i, in := range f.lengths {
		in.show(estimateHint(lengths[i].Field, v.Calibration, v.Calibrated, f.source.Style()))
	}
	for k, told := range v.Factors {
		f.factors[k].SetLabel(told.Label)
		f.factors[k].set(told.Value, told.Span, told.Steps)
		f.weighed[k].show()
	}
}

// has reports whether a field lies in the fold.
func (f *handFold) has(field draft.Field) bool {
	for _, l := range lengths {
		if l.Field == field {
			return true
		}
	}
	for _, k := range hand.Kinds() {
		if field == draft.WeighedFood(k) || field == draft.WeighedGrams(k) {
			return true
		}
	}
	return false
}

// focus moves the focus to a field of the fold, which must be open.
func (f *handFold) focus(field draft.Field) {
	for _, in := range f.lengths {
		if in.field == field {
			widgets.FocusOn(in.Field)
		}
	}
	for k, w := range f.weighed {
		if food := draft.WeighedFood(hand.Kind(k)); field == food || field == w.grams.field {
			w.object.SetOpen(true)
			f.changed()
			if field == food {
				widgets.FocusOn(w.picker.search)
				return
			}
			widgets.FocusOn(w.grams.Field)
		}
	}
}

// dimensions returns a hand as the drawings take it.
func dimensions(c hand.Calibration) draw.Dimensions {
	millimetres := func(l unit.Centimetre) float64 { return 10 * float64(l) }
	return draw.WithThumb(draw.Dimensions{
		PalmBreadth: millimetres(c.Size.PalmBreadth), PalmLength: millimetres(c.Size.PalmLength), HandLength: millimetres(c.Size.HandLength),
	})
}

// weighing takes what one measure of a food weighed.
type weighing struct {
	object *widgets.Setting
	source Source
	kind   hand.Kind
	food   *widgets.Text
	picker *picker
	grams  *input
	back   *fyne.Container
}

func newWeighing(s Source, k hand.Kind, changed func()) *weighing {
	w := &weighing{source: s, kind: k, food: widgets.NewText("", widgets.Body), grams: newInput(s, draft.WeighedGrams(k), "What one "+k.Name()+" of it weighed")}
	name := "measures.weighed." + k.Key()
	w.picker = newPicker(name+".search", "Find the food that was weighed", func(text string) []food.Food { return weighable(text, k) }, w.onFood, changed)
	back := widgets.Name(widgets.NewTextButton("Take the weighing back", w.onBack), name+".back")
	w.back = widgets.Row(back)
	w.object = widgets.Name(widgets.NewSetting(capital(k.Name()), widgets.Column(w.food, w.picker.object, w.grams.Field, w.back)), name)
	w.object.OnToggled = func(bool) { changed() }
	return w
}

func (w *weighing) show() {
	code, grams := w.source.Get(draft.WeighedFood(w.kind)), w.source.Get(draft.WeighedGrams(w.kind))
	told := weighedWords(code, grams, w.kind, w.source.Style())
	w.object.SetValue(told.Value, "")
	w.food.SetText(told.Food)
	w.grams.show(told.Hint)
	w.back.Hidden = code == "" && grams == ""
}

func (w *weighing) onFood(f food.Food) {
	w.source.SetAll(map[draft.Field]string{draft.WeighedFood(w.kind): f.Code})
}

func (w *weighing) onBack() {
	w.source.SetAll(map[draft.Field]string{draft.WeighedFood(w.kind): "", draft.WeighedGrams(w.kind): ""})
}

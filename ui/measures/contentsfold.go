package measures

import (
	"strings"

	"fyne.io/fyne/v2"

	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// contentsFold shows what one measure holds for this client, and the foods that
// it is reckoned from.
type contentsFold struct {
	fold    *widgets.Fold
	source  Source
	changed func()

	measures [4]*oneMeasure
	baskets  [4]*basketBox
}

func newContentsFold(s Source, changed func()) *contentsFold {
	f := &contentsFold{source: s, changed: changed}
	f.fold = widgets.Name(widgets.NewFold("What one measure holds", f.build), "measures.fold.contents")
	f.fold.OnToggled = func(bool) { changed() }
	return f
}

// oneMeasure is one of the four: drawn large, with what it holds.
type oneMeasure struct {
	object         *fyne.Container
	figure         *widgets.MeasureFigure
	amount, spread *widgets.Text
}

// The drawing of one measure, and the least width of its column.
const (
	drawnSize  float32 = 88
	drawnWidth float32 = 135
)

func (f *contentsFold) build() fyne.CanvasObject {
	var columns []fyne.CanvasObject
	baskets := widgets.ColumnGap(theme.Half)
	for _, k := range hand.Kinds() {
		f.measures[k] = newOneMeasure(k)
		columns = append(columns, f.measures[k].object)
		f.baskets[k] = newBasketBox(f.source, k, f.changed)
		baskets.Add(f.baskets[k].object)
	}
	return widgets.Narrow(foldWidth, widgets.ColumnGap(theme.Two, widgets.Grid(drawnWidth, columns...), baskets))
}

func newOneMeasure(k hand.Kind) *oneMeasure {
	m := &oneMeasure{
		amount: widgets.NewText("", widgets.Body), spread: widgets.NewText("", widgets.Small), figure: widgets.NewMeasureFigure(k, drawnSize),
	}
	m.figure.SetCount(1)
	m.object = widgets.Column(m.figure, widgets.ColumnGap(0, m.amount, m.spread))
	return m
}

func (f *contentsFold) show(v view) {
	f.fold.Hidden = !v.HasContents
	f.fold.SetMark(widgets.FoldMark{Text: strings.TrimSuffix(v.Basket, ".")})
	if !v.HasContents || !f.fold.Open() {
		return
	}
	for k, m := range f.measures {
		m.figure.SetHand(dimensions(v.Calibration))
		m.amount.SetText(v.Contents[k].Amount)
		m.spread.SetText(v.Contents[k].Spread)
		f.baskets[k].show(v.Contents[k])
	}
}

// basketBox is one measure with the foods that fill it, which can be edited. Its
// lines are made while it is open.
type basketBox struct {
	object  *widgets.Setting
	source  Source
	kind    hand.Kind
	changed func()
	told    content

	brings *opening
	said   *widgets.Text
	lines  *fyne.Container
	foods  map[string]*foodLine // by code; kept, so that an edit keeps the focus
	usual  *fyne.Container
}

func newBasketBox(s Source, k hand.Kind, changed func()) *basketBox {
	b := &basketBox{source: s, kind: k, changed: changed, said: widgets.NewText("", widgets.Small), lines: widgets.ColumnGap(0), foods: map[string]*foodLine{}}
	name := "measures." + k.Key()
	b.brings = newOpening(name+".brings", "How this is reckoned", s.Style(), changed)
	find := func(text string) []food.Food { return fitting(text, b.told.Filling, s.Reading().Intake) }
	add := newPicker(name+".search", "Add a food", find, b.onAdd, changed)
	usual := widgets.Name(widgets.NewTextButton("Back to the usual foods", b.onUsual), name+".usual")
	b.usual = widgets.Row(usual)
	inner := widgets.ColumnGap(theme.Unit, b.brings.Disclosure, b.said, b.lines, widgets.Narrow(headWidth+2*drawnWidth, add.object), b.usual)
	b.object = widgets.Name(widgets.NewSetting("What is in a "+k.Name(), inner), name)
	b.object.OnToggled = b.onToggled
	return b
}

func (b *basketBox) onToggled(bool) {
	b.show(b.told)
	b.changed()
}

func (b *basketBox) show(c content) {
	b.told = c
	b.object.SetValue(c.Brings, c.Macros)
	if !b.object.Open() {
		return
	}
	b.brings.set("", "", c.Steps)
	b.said.SetText(c.Said)
	b.said.Hidden = c.Said == ""
	b.usual.Hidden = !c.Filling.Chosen && !c.Filling.FellBack
	b.showLines(basketLines(c.Filling, c.Hand, b.source.Style()))
}

// The widths of the names of foods in a basket, and of a share.
const (
	nameWidth  float32 = 190
	shareWidth float32 = 44
)

func (b *basketBox) showLines(lines []basketLine) {
	b.lines.Objects = nil
	for _, line := range lines {
		shown, made := b.foods[line.Code]
		if !made {
			shown = b.newLine(line)
			b.foods[line.Code] = shown
		}
		shown.show(line, len(lines) > 1)
		b.lines.Add(shown.object)
	}
	b.lines.Refresh()
}

// foodLine is one food of a basket.
type foodLine struct {
	object        *fyne.Container
	brings, share *widgets.Text
	remove        *widgets.Button
}

func (b *basketBox) newLine(line basketLine) *foodLine {
	name := "measures." + b.kind.Key() + "." + line.Code
	fewer := widgets.Name(widgets.NewTextButton("−", func() { b.onShare(line.Code, false) }), name+".less")
	more := widgets.Name(widgets.NewTextButton("+", func() { b.onShare(line.Code, true) }), name+".more")
	l := &foodLine{brings: widgets.NewText("", widgets.Small), share: widgets.NewText("", widgets.Body)}
	l.remove = widgets.Name(widgets.NewTextButton("Remove", func() { b.onRemove(line.Code) }), name+".remove")
	l.share.SetAlign(fyne.TextAlignCenter)
	edit := widgets.RowGap(0, fewer, widgets.Sized(shareWidth, l.share), more, l.remove)
	l.object = widgets.HeadedLine(nameWidth, widgets.NewText(line.Name, widgets.Body), widgets.Ends(l.brings, edit))
	return l
}

func (l *foodLine) show(line basketLine, removable bool) {
	l.brings.SetText(line.Brings)
	l.share.SetText(line.Share)
	if removable == l.remove.Disabled() {
		if removable {
			l.remove.Enable()
		} else {
			l.remove.Disable()
		}
	}
}

// choose writes a basket into the form, as a step of its own to undo.
func (b *basketBox) choose(choice food.BasketChoice) {
	b.source.SetAll(map[draft.Field]string{draft.Basket: hand.BasketText(choice)})
}

func (b *basketBox) chosen() food.BasketChoice { return b.source.Reading().Intake.Hand.Basket }

func (b *basketBox) onAdd(f food.Food) { b.choose(withFood(b.chosen(), b.told.Filling, f.Code)) }

func (b *basketBox) onShare(code string, more bool) {
	b.choose(withShare(b.chosen(), b.told.Filling, code, more))
}

func (b *basketBox) onRemove(code string) { b.choose(withoutFood(b.chosen(), b.told.Filling, code)) }

func (b *basketBox) onUsual() { b.choose(usualFor(b.chosen(), b.told.Filling)) }

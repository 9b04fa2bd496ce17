package sheet

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/widgets"
)

// The drawings of the day: two beside each other on the sheet.
const (
	figureSize float32 = 36
	figureCell float32 = 130
)

// dayFigures is the day's allotment, drawn.
type dayFigures struct {
	object  *fyne.Container
	figures [4]*widgets.MeasureFigure
	how     *opening
}

func newDayFigures(style unit.Style, changed func()) *dayFigures {
	d := &dayFigures{how: newOpening("sheet.day", "The day in measures", style, changed)}
	cells := make([]fyne.CanvasObject, 0, len(d.figures))
	for _, kind := range hand.Kinds() {
		d.figures[kind] = widgets.NewMeasureFigure(kind, figureSize)
		cells = append(cells, d.figures[kind])
	}
	d.object = widgets.Column(d.how, widgets.Grid(figureCell, cells...))
	return d
}

func (d *dayFigures) show(v view) {
	d.object.Hidden = v.Targets == nil
	if v.Targets == nil {
		return
	}
	for _, kind := range hand.Kinds() {
		if count := v.Day.Of(kind); count != d.figures[kind].Count() {
			d.figures[kind].SetCount(count)
		}
	}
	d.how.set(figure{Value: v.DayWords, Steps: v.Targets.Allotment.Steps})
}

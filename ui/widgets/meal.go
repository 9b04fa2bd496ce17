package widgets

import (
	"fyne.io/fyne/v2"

	draw "handbreadth/assets/hand"
	"handbreadth/domain/hand"
	"handbreadth/ui/theme"
)

// MealRow is one meal: its name, a remark, and the four measures drawn.
type MealRow struct {
	composite
	name, note *Text
	figures    [4]*MeasureFigure
}

// mealCell is the least width of one measure in a row.
const mealCell float32 = 112

// NewMealRow returns an empty row with drawings as high as size.
func NewMealRow(size float32) *MealRow {
	m := &MealRow{name: NewText("", Title), note: NewText("", Small)}
	m.note.Hidden = true
	cells := make([]fyne.CanvasObject, 0, len(m.figures))
	for _, kind := range hand.Kinds() {
		m.figures[kind] = NewMeasureFigure(kind, size)
		cells = append(cells, m.figures[kind])
	}
	head := ColumnGap(0, m.name, m.note)
	m.init(m, Column(head, Grid(mealCell, cells...), InsetSides(0, theme.Half, 0, 0, NewHairline())))
	return m
}

// Figure returns one of the four figures.
func (m *MealRow) Figure(kind hand.Kind) *MeasureFigure { return m.figures[kind] }

// SetMeal shows a meal.
func (m *MealRow) SetMeal(name string, measures hand.Measures) {
	m.name.SetText(name)
	for _, kind := range hand.Kinds() {
		m.figures[kind].SetCount(measures.Of(kind))
	}
	m.Refresh()
}

// SetNote shows a remark beside the name, such as what the meal brings; ""
// removes it.
func (m *MealRow) SetNote(note string) {
	m.note.SetText(note)
	m.note.Hidden = note == ""
	m.Refresh()
}

// SetHand draws the client's own hand.
func (m *MealRow) SetHand(dims draw.Dimensions) {
	for _, figure := range m.figures {
		figure.SetHand(dims)
	}
}

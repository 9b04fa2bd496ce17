package measures

import (
	"fmt"
	"testing"

	"handbreadth/domain/hand"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets/widgettest"
)

// From the change of one cell to the new grid: the form, the whole plan and the
// section, in a window without a display.
func BenchmarkCellChange(b *testing.B) {
	widgettest.Program(b, theme.Light)
	s := opened(answers())
	screen := New(s)
	widgettest.Window(b, screen.Object(), widgettest.LaptopWidth, 700)
	cell := screen.grid.rows[1].cells[hand.CuppedHand]
	i := 0
	for b.Loop() {
		cell.TypedRune(rune('1' + i%3))
		i++
	}
}

// The same without a window: what of it is the plan.
func BenchmarkCellChangePlan(b *testing.B) {
	s := opened(answers())
	i := 0
	for b.Loop() {
		s.SetAll(map[draft.Field]string{draft.MealWishes: fmt.Sprintf("meal 2: cupped hand %d", 1+i%3)})
		i++
	}
}

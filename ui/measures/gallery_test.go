package measures

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/widgets"
	"handbreadth/ui/widgets/widgettest"
)

// TestGallery writes pictures of the section, as wide as it is beside the running
// sheet, as a laptop and a large screen show it first, and with all open.
func TestGallery(t *testing.T) {
	widgettest.NeedGallery(t)
	for look, variant := range widgettest.Looks() {
		picture := func(name string, width, height float32, style unit.Style, form draft.Form, do func(*Screen, fyne.Window)) {
			widgettest.Program(t, variant)
			screen := New(draft.NewSession(form, style))
			window := widgettest.Window(t, screen.Object(), width, height)
			do(screen, window)
			widgettest.Picture(t, window, "measures-"+name+"-"+look)
		}
		nothing := func(*Screen, fyne.Window) {}
		for name, form := range galleryForms() {
			picture(name, widgettest.LaptopWidth, 1100, unit.Style{}, form, nothing)
		}
		picture("laptop", widgettest.LaptopWidth, 620, unit.Style{}, wished(), func(s *Screen, w fyne.Window) { w.Canvas().Focus(s.grid.rows[1].cells[2]) })
		picture("desktop", widgettest.DesktopWidth, 930, unit.Style{}, wished(), nothing)
		picture("narrow", widgettest.NarrowWidth, 1200, unit.Style{System: unit.USCustomary}, wished(), nothing)
		picture("hand", widgettest.LaptopWidth, 1700, unit.Style{}, measured(), func(s *Screen, _ fyne.Window) {
			test.Tap(s.hand.fold.FocusTarget().(fyne.Tappable))
			test.Tap(s.hand.weighed[0].object.FocusTarget().(fyne.Tappable))
			test.Tap(s.hand.factors[1].FocusTarget().(fyne.Tappable))
		})
		picture("contents", widgettest.LaptopWidth, 1900, unit.Style{}, chosen(), func(s *Screen, _ fyne.Window) {
			test.Tap(s.contents.fold.FocusTarget().(fyne.Tappable))
			test.Tap(s.contents.baskets[0].object.FocusTarget().(fyne.Tappable))
			test.Tap(s.contents.baskets[3].object.FocusTarget().(fyne.Tappable))
			test.Type(widgets.Named()["measures.thumb.search"].(*widgets.SearchField).FocusTarget(), "oil")
		})
		picture("taped", widgettest.LaptopWidth, 1500, unit.Style{System: unit.USCustomary, EnergyIn: unit.InKilojoules}, with("hand.palm_breadth", "3.7 in", "hand.palm_length", "4.9 in", "client.equation_sex", "male"), func(s *Screen, _ fyne.Window) {
			test.Tap(s.hand.fold.FocusTarget().(fyne.Tappable))
		})
		picture("foods", widgettest.DesktopWidth, 1900, unit.Style{}, with("dislikes", "liver, olives and celery", "avoid", "peanut"), func(s *Screen, _ fyne.Window) {
			test.Tap(s.foods.fold.FocusTarget().(fyne.Tappable))
			test.Type(s.foods.search.FocusTarget(), "milk")
		})
	}
}

package targets

import (
	"testing"

	"fyne.io/fyne/v2/test"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/widgets/widgettest"
)

// TestGallery writes pictures of the section, as wide as it is beside the running
// sheet, whole and as a laptop and a large screen show it first.
func TestGallery(t *testing.T) {
	widgettest.NeedGallery(t)
	for look, variant := range widgettest.Looks() {
		picture := func(name string, width, height float32, make func() *Screen) {
			widgettest.Program(t, variant)
			screen := make()
			widgettest.Picture(t, widgettest.Window(t, screen.Object(), width, height), "targets-"+name+"-"+look)
		}
		for name, form := range galleryForms() {
			picture(name, widgettest.LaptopWidth, 1900, func() *Screen { return New(opened(form)) })
		}
		plain := func() *Screen { return New(opened(answers())) }
		picture("laptop", widgettest.LaptopWidth, 620, plain)
		picture("desktop", widgettest.DesktopWidth, 930, plain)
		picture("narrow", widgettest.NarrowWidth, 2400, plain)
		picture("stones", widgettest.LaptopWidth, 1900, func() *Screen {
			return New(draft.NewSession(answers(), unit.Style{System: unit.UKCustomary, EnergyIn: unit.InKilojoules}))
		})
		picture("compared", widgettest.LaptopWidth, 2200, func() *Screen { _, screen := comparing(); return screen })
		picture("opened", widgettest.LaptopWidth, 3000, func() *Screen { screen := plain(); openAll(screen); return screen })
	}
}

// openAll opens everything that opens.
func openAll(s *Screen) {
	for _, o := range s.openings() {
		o.SetOpen(true)
		o.toggled(true)
	}
	for _, field := range []draft.Field{draft.Training, draft.FatFloor, draft.Counting, draft.UsualFibre, draft.MeasuredResting} {
		s.place(field)
	}
	test.Tap(s.course.panel.Toggle())
}

// openings are all numbers that the section shows.
func (s *Screen) openings() []*opening {
	all := []*opening{
		s.course.target, s.course.reached, s.course.first, s.course.half, s.course.holding, s.course.static, s.goal.safe,
		s.energy.resting, s.energy.activity, s.energy.maintenance, s.macros.beside, s.macros.fibre,
	}
	all = append(all, s.energy.checks[:]...)
	return append(all, s.macros.rows[:]...)
}

// comparing is a section with two goals kept beside the plan's.
func comparing() (*draft.Session, *Screen) {
	s := opened(answers())
	screen := New(s)
	test.Tap(screen.compare.keep)
	s.SetAll(byRate.only("0.5 kg"))
	test.Tap(screen.compare.keep)
	s.SetAll(byEnergy.only("2000 kcal"))
	return s, screen
}

package safety

import (
	"fmt"
	"testing"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
	"handbreadth/ui/widgets/widgettest"
)

// states are what the section is looked at in: which parts are open.
func states() map[string]func(b *bench) {
	return map[string]func(b *bench){
		"closed": func(*bench) {},
		"keys": func(b *bench) {
			b.keeper.state.SheetTried = false
			b.unfold("keys")
			b.section.Renew()
		},
		"open": func(b *bench) {
			b.keeper.state = State{}
			b.section.Renew()
			b.unfold("keys")
			b.unfold("lock")
		},
		"backups": func(b *bench) {
			b.unfold("backups")
			b.openLine(firstLine)
			b.fill(firstLine+".secret", somePhrase)
			b.press(firstLine + ".look")
		},
		"record": func(b *bench) {
			b.keeper.copies = 2
			b.section.Renew()
			b.unfold("record")
			b.unfold("copies")
			b.press("safety.record.check")
		},
	}
}

func (b *bench) in(variant theme.Variant, width, height float32) {
	widgettest.Program(b.t, variant)
	b.section = New(b.keeper, DefaultMinutes, b.tools(), b.ways())
	b.window = widgettest.Window(b.t, widgets.NewPage(b.section.Object()), width, height)
	b.section.Renew()
}

func TestGallery(t *testing.T) {
	widgettest.NeedGallery(t)
	for name, prepare := range states() {
		for look, variant := range widgettest.Looks() {
			for _, size := range [][2]float32{{1276, 768}, {1830, 1080}} {
				b := newBench(t, sealed())
				b.in(variant, size[0], size[1])
				prepare(b)
				widgettest.Picture(t, b.window, fmt.Sprintf("safety-%s-%d-%s", name, int(size[0]), look))
			}
		}
	}
	b, _ := onPage(t, sealed())
	b.fill("restore.path", "/media/stick/handbreadth-abcd-2026-03-01.backup")
	b.press("restore.open")
	b.fill("restore.found.secret", somePhrase)
	b.press("restore.found.look")
	widgettest.Picture(t, b.window, "safety-page")
}

// What the section looks like, in words and places.
func TestOutlines(t *testing.T) {
	for name, prepare := range states() {
		t.Run(name, func(t *testing.T) {
			b := newBench(t, sealed())
			prepare(b)
			widgettest.AssertOutline(t, b.window, name)
		})
	}
}

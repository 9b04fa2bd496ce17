package widgets

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

// What the practice writes with a comma is written with a comma everywhere.
func TestDecimalComma(t *testing.T) {
	program(t, theme.Light)
	comma := unit.Style{DecimalComma: true}
	slider, bar, steps := NewBalanceSlider(nil), NewMacroBar(unit.Style{}), NewDerivation(unit.Style{})
	slider.SetStyle(comma)
	bar.SetStyle(comma)
	steps.SetStyle(comma)
	steps.SetSteps([]derive.Step{{Label: "PAL", Result: 1.65}})
	open(t, Column(slider, bar, steps), 400, 400)
	if !strings.Contains(textsIn(steps), "1,65") {
		t.Errorf("shown:\n%s", textsIn(steps))
	}
	if !strings.Contains(textsIn(slider), "Carbohydrate 50 % : fat 50 %") {
		t.Errorf("shown:\n%s", textsIn(slider))
	}
}

func TestFieldRecheck(t *testing.T) {
	f, _, _ := weightField(t)
	f.SetText("72.6 kg")
	f.Check = func(text string) (string, error) { return "= 160 lb", nil }
	f.Recheck()
	if f.Understood() != "= 160 lb" {
		t.Errorf("understood %q after the units changed", f.Understood())
	}
}

func TestListLineMuted(t *testing.T) {
	program(t, theme.Light)
	line := NewListLine()
	line.SetMuted(true)
	if line.title.colour != theme.Faint {
		t.Error("the title is not muted")
	}
}

// A page that has left the window takes no more part in following the focus.
func TestPageIsForgotten(t *testing.T) {
	program(t, theme.Light)
	page := NewPage(NewText("a", Body))
	r := test.WidgetRenderer(page)
	if !pages[page] || page.Scroll() == nil {
		t.Fatal("the page is not followed")
	}
	r.Destroy()
	if pages[page] {
		t.Error("the page is still followed")
	}
}

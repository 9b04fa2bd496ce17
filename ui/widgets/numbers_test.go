package widgets

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

func TestPutIn(t *testing.T) {
	step := func(formula string, inputs ...derive.Input) derive.Step {
		return derive.Step{Formula: formula, Inputs: inputs, Result: 12, Unit: "g/day"}
	}
	weight := derive.Input{Name: "weight", Value: 72.6, Unit: "kg"}
	for _, c := range []struct {
		step derive.Step
		want string
		ok   bool
	}{
		{step("10 × weight", weight), "10 × 72.6 kg = 12 g/day", true},
		{step("weight + weight", weight), "72.6 kg + 72.6 kg = 12 g/day", true},
		{step("10 × weights", weight), "", false},
		{step("energy × energy after protein", derive.Input{Name: "energy", Value: 5}, derive.Input{Name: "energy after protein", Value: 7}), "5 × 7 = 12 g/day", true},
		{step("a × b", derive.Input{Name: "a", Text: "b"}, derive.Input{Name: "b", Value: 2}), "b × 2 = 12 g/day", true},
		{step("10 × mass", weight), "", false},
		{step("10"), "", false},
		{step("", weight), "", false},
		{step("x", derive.Input{}), "", false},
	} {
		got, ok := putIn(c.step, unit.Style{})
		if got != c.want || ok != c.ok {
			t.Errorf("%q with %v: %q %v, want %q %v", c.step.Formula, c.step.Inputs, got, ok, c.want, c.ok)
		}
	}
}

func TestFigure(t *testing.T) {
	comma := unit.Style{DecimalComma: true}
	for _, c := range []struct {
		value float64
		unit  string
		style unit.Style
		want  string
	}{
		{1440.4, "kcal/day", unit.Style{}, "1440"},
		{6.4, "kcal/day", unit.Style{}, "6"},
		{72.64, "kg", unit.Style{}, "72.6"},
		{72, "kg", unit.Style{}, "72"},
		{104.3, "g/day", unit.Style{}, "104"},
		{1.6, "", unit.Style{}, "1.6"},
		{1.625, "", comma, "1,63"},
		{-0.5, "kg", unit.Style{}, "-0.5"},
		{0, "", unit.Style{}, "0"},
		{100, "%", unit.Style{}, "100"},
	} {
		if got := figure(c.value, c.unit, c.style); got != c.want {
			t.Errorf("%v %s: %q, want %q", c.value, c.unit, got, c.want)
		}
	}
}

func TestSourceText(t *testing.T) {
	for _, c := range []struct {
		source derive.Source
		want   string
	}{
		{derive.Source{}, ""},
		{derive.CommonPractice, "Source: common practice, no source"},
		{derive.Source{Text: "FAO 2004", Confidence: derive.Seen}, "Source: FAO 2004 (read in the source)"},
		{derive.Source{Text: "FAO 2004", Confidence: derive.SeenSecond}, "Source: FAO 2004 (read in a later copy)"},
		{derive.Source{Text: "FAO 2004", Confidence: derive.Memory}, "Source: FAO 2004 (from memory, not yet confirmed)"},
	} {
		if got := SourceText(c.source); got != c.want {
			t.Errorf("%+v: %q, want %q", c.source, got, c.want)
		}
	}
}

// textsIn returns all texts that an object shows.
func textsIn(object fyne.CanvasObject) string {
	var texts []string
	each(object, func(o fyne.CanvasObject) {
		if text, is := o.(*canvas.Text); is {
			texts = append(texts, text.Text)
		}
	})
	return strings.Join(texts, "\n")
}

// each visits an object and all that is visible below it.
func each(object fyne.CanvasObject, visit func(fyne.CanvasObject)) {
	if !object.Visible() {
		return
	}
	visit(object)
	switch o := object.(type) {
	case *fyne.Container:
		for _, child := range o.Objects {
			each(child, visit)
		}
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(o).Objects() {
			each(child, visit)
		}
	}
}

func TestDisclosureOpensInPlace(t *testing.T) {
	program(t, theme.Light)
	d := NewDisclosure("Maintenance energy", unit.Style{})
	d.SetValue("2304 kcal", "2016 to 2592")
	d.SetSteps(demoSteps)
	open(t, d, 900, 600)
	closed := d.HeightFor(900)
	if shown := textsIn(d); strings.Contains(shown, "Mifflin") || !strings.Contains(shown, "2016 to 2592") {
		t.Fatalf("closed: %s", shown)
	}
	var told []bool
	d.OnToggled = func(open bool) { told = append(told, open) }
	press(d.FocusTarget(), fyne.KeyReturn)
	settle(d)
	shown := textsIn(d)
	for _, wanted := range []string{
		"10 × 72.6 kg + 6.25 × 168 cm − 5 × 35 years − 161 = 1440 kcal/day", "Range 1296 to 1584 kcal/day",
		"Mifflin", "1440 kcal/day × 1.6 = 2304 kcal/day", "from memory", "closest in people of this build",
	} {
		if !strings.Contains(shown, wanted) {
			t.Errorf("opened, %q is missing in:\n%s", wanted, shown)
		}
	}
	if d.HeightFor(900) <= closed || !d.Open() {
		t.Error("it did not grow")
	}
	press(d.FocusTarget(), fyne.KeySpace, fyne.KeyLeft, fyne.KeyRight, fyne.KeyRight, fyne.KeyLeft)
	test.Tap(d.header)
	if want := []bool{true, false, true, false, true}; !slices.Equal(told, want) {
		t.Errorf("told %v, want %v", told, want)
	}
}

func TestDisclosureByCode(t *testing.T) {
	program(t, theme.Light)
	d := NewDisclosure("Fat", unit.Style{})
	open(t, d, 400, 300)
	d.OnToggled = func(bool) { t.Error("called back by code") }
	d.SetOpen(true)
	d.SetMore(NewText("Other equations say much the same.", Small))
	settle(d)
	if !strings.Contains(textsIn(d), "Other equations") {
		t.Error("what was added below is not shown")
	}
	d.SetMore(nil)
	settle(d)
	if strings.Contains(textsIn(d), "Other equations") {
		t.Error("what was taken away is still shown")
	}
	small := d.header.HeightFor(400)
	d.SetValue("58 g", "")
	d.SetProminent(true)
	d.SetLabel("Fat a day")
	if d.header.HeightFor(400) <= small || d.Value() != "58 g" || d.Label() != "Fat a day" {
		t.Error("the value is not large, or not as set")
	}
}

func TestDerivationListsInputsThatHaveNoPlaceInTheFormula(t *testing.T) {
	program(t, theme.Light)
	d := NewDerivation(unit.Style{})
	d.SetSteps([]derive.Step{{Label: "PAL", Formula: "by category", Inputs: []derive.Input{{Name: "category", Text: "low active"}, {Name: "hours", Value: 1.5, Unit: "h"}}, Result: 1.6}})
	open(t, d, 500, 200)
	if shown := textsIn(d); !strings.Contains(shown, "With category low active, hours 1.5 h") {
		t.Errorf("shown:\n%s", shown)
	}
}

// A level is told by shape and word, not by colour alone.
func TestFindingLevelsDifferByIconAndWord(t *testing.T) {
	icons, words := map[IconName]bool{}, map[string]bool{}
	levels := []derive.Level{derive.Note, derive.Caution, derive.Hold, derive.Refer}
	for _, level := range levels {
		look := lookOf(level)
		icons[look.icon], words[look.word] = true, true
		if !strings.EqualFold(look.word, level.String()) {
			t.Errorf("level %v is called %q", level, look.word)
		}
	}
	if len(icons) != len(levels) || len(words) != len(levels) {
		t.Errorf("%d icons and %d words for %d levels", len(icons), len(words), len(levels))
	}
	if lookOf(0) != lookOf(derive.Refer) {
		t.Error("an unknown level is played down")
	}
}

func TestFindingCard(t *testing.T) {
	program(t, theme.Light)
	c := NewFindingCard(derive.Finding{Level: derive.Hold, Scope: derive.ScopeDeficit, Text: "Wait.", Source: derive.CommonPractice})
	open(t, c, 400, 300)
	shown := textsIn(c)
	for _, wanted := range []string{"Hold", "Wait.", "Stops: deficit", "common practice"} {
		if !strings.Contains(shown, wanted) {
			t.Errorf("%q is missing in:\n%s", wanted, shown)
		}
	}
	pressed := 0
	b := c.SetAction("Record a reason", func() { pressed++ })
	settle(c)
	test.Tap(b)
	if pressed != 1 || !strings.Contains(textsIn(c), "Record a reason") {
		t.Error("the button is missing or does nothing")
	}
	c.SetFinding(derive.Finding{Level: derive.Note, Scope: derive.ScopeFluid, Text: "Fine."})
	if none := c.SetAction("", nil); none != nil {
		t.Error("a button without a label")
	}
	settle(c)
	shown = textsIn(c)
	for _, unwanted := range []string{"Hold", "Stops", "Source", "Record"} {
		if strings.Contains(shown, unwanted) {
			t.Errorf("%q is still shown:\n%s", unwanted, shown)
		}
	}
}

package widgets

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

// weightField is a field for a weight in a window with another field after it.
func weightField(t *testing.T) (*Field, *Field, fyne.Canvas) {
	t.Helper()
	program(t, theme.Light)
	f, next := NewField("Weight", "kg or lb"), NewField("Height", "")
	f.Check = checkWeight
	window := open(t, Column(f, next), 400, 400)
	return f, next, window.Canvas()
}

func TestFieldTellsEachKeystroke(t *testing.T) {
	f, _, c := weightField(t)
	var told []string
	f.OnChanged = func(text string) { told = append(told, text) }
	c.Focus(f.FocusTarget())
	test.Type(f.FocusTarget(), "72")
	if !slices.Equal(told, []string{"7", "72"}) {
		t.Errorf("told %v", told)
	}
}

func TestFieldSettersDoNotCallBack(t *testing.T) {
	f, _, _ := weightField(t)
	f.OnChanged = func(string) { t.Error("OnChanged by code") }
	f.OnLeave = func(string) { t.Error("OnLeave by code") }
	f.SetText("72 kg")
	f.SetText("72 kg")
	f.SetProblem("no")
	f.SetUnderstood("yes")
	f.SetHint("h")
	f.SetLabel("l")
	if f.Text() != "72 kg" || f.Problem() != "no" || f.Understood() != "yes" || f.Label() != "l" {
		t.Error("a setter did not set")
	}
}

func TestFieldShowsProblemOnlyWhenLeft(t *testing.T) {
	f, next, c := weightField(t)
	c.Focus(f.FocusTarget())
	test.Type(f.FocusTarget(), "7x")
	if f.Problem() != "" || f.Understood() != "" {
		t.Fatalf("while typing: problem %q, understood %q", f.Problem(), f.Understood())
	}
	c.Focus(next.FocusTarget())
	if !strings.Contains(f.Problem(), "“7x”") || !f.problem.Visible() {
		t.Fatalf("when left: problem %q", f.Problem())
	}
	if !f.hint.Visible() {
		t.Error("the hint is gone when it is needed most")
	}
}

func TestFieldProblemGoesWhenMended(t *testing.T) {
	f, next, c := weightField(t)
	c.Focus(f.FocusTarget())
	test.Type(f.FocusTarget(), "72 k")
	c.Focus(next.FocusTarget())
	if f.Problem() == "" {
		t.Fatal("no problem with 72 k")
	}
	c.Focus(f.FocusTarget())
	press(f.FocusTarget(), fyne.KeyEnd)
	test.Type(f.FocusTarget(), "g")
	if f.Problem() != "" || f.Understood() != "= 72 kg" {
		t.Errorf("after mending: problem %q, understood %q", f.Problem(), f.Understood())
	}
	if f.hint.Visible() || !f.understood.Visible() {
		t.Error("the hint is to give way to how the text is understood")
	}
}

func TestFieldEnterCommitsAndGoesOn(t *testing.T) {
	f, next, c := weightField(t)
	var left []string
	f.OnLeave = func(text string) { left = append(left, text) }
	c.Focus(f.FocusTarget())
	test.Type(f.FocusTarget(), "160 lb")
	press(f.FocusTarget(), fyne.KeyReturn)
	if c.Focused() != next.FocusTarget() {
		t.Error("Enter did not go on")
	}
	if !slices.Equal(left, []string{"160 lb"}) {
		t.Errorf("left with %v, want once", left)
	}
}

func TestFieldOnEnterTakesTheKey(t *testing.T) {
	f, _, c := weightField(t)
	entered := ""
	f.OnEnter = func(text string) { entered = text }
	c.Focus(f.FocusTarget())
	test.Type(f.FocusTarget(), "1")
	press(f.FocusTarget(), fyne.KeyEnter)
	if entered != "1" || c.Focused() != f.FocusTarget() {
		t.Errorf("entered %q", entered)
	}
	if f.Problem() == "" {
		t.Error("Enter did not check")
	}
}

func TestFieldBlankIsNoProblem(t *testing.T) {
	f, next, c := weightField(t)
	c.Focus(f.FocusTarget())
	test.Type(f.FocusTarget(), "  ")
	c.Focus(next.FocusTarget())
	if f.Problem() != "" {
		t.Errorf("problem %q", f.Problem())
	}
}

func TestFieldKeepsAProblemSetByCodeUntilTheTextChanges(t *testing.T) {
	f, next, c := weightField(t)
	c.Focus(f.FocusTarget())
	f.SetProblem("This weight is missing.")
	c.Focus(next.FocusTarget())
	if f.Problem() == "" {
		t.Error("leaving took the problem away")
	}
	c.Focus(f.FocusTarget())
	test.Type(f.FocusTarget(), "7")
	if f.Problem() == "This weight is missing." {
		t.Error("typing left the problem")
	}
}

func TestFieldShowsFocus(t *testing.T) {
	f, next, c := weightField(t)
	c.Focus(f.FocusTarget())
	if !f.ring.Visible() || next.ring.Visible() {
		t.Error("the ring is not round the field with the focus")
	}
	c.Focus(next.FocusTarget())
	if f.ring.Visible() || !next.ring.Visible() {
		t.Error("the ring did not follow the focus")
	}
}

func TestFieldDisabled(t *testing.T) {
	f, next, c := weightField(t)
	f.Disable()
	c.FocusNext()
	if c.Focused() != next.FocusTarget() || !f.Disabled() {
		t.Error("Tab stops at a field that is switched off")
	}
	f.Enable()
	c.FocusPrevious()
	if c.Focused() != f.FocusTarget() {
		t.Error("Tab does not stop at a field that is switched on again")
	}
}

func TestAreaKeepsEnterAndLetsTabGoOn(t *testing.T) {
	program(t, theme.Light)
	area := NewArea("Usual day", "", 3)
	open(t, area, 300, 300)
	area.entry.FocusGained()
	test.Type(area.FocusTarget(), "a")
	press(area.FocusTarget(), fyne.KeyReturn)
	test.Type(area.FocusTarget(), "b")
	if area.Text() != "a\nb" {
		t.Errorf("text %q", area.Text())
	}
	if area.entry.AcceptsTab() {
		t.Error("Tab would be typed instead of going on")
	}
}

func TestPasswordIsHidden(t *testing.T) {
	program(t, theme.Light)
	f := NewPasswordField("Passphrase", "")
	f.SetText("marsh lantern")
	window := open(t, f, 300, 200)
	if markup := test.RenderToMarkup(window.Canvas()); strings.Contains(markup, "marsh") {
		t.Error("the passphrase is shown")
	}
}

func TestEscapeInField(t *testing.T) {
	f, _, _ := weightField(t)
	went := 0
	HandleEscape(func() { went++ })
	t.Cleanup(func() { HandleEscape(nil) })
	press(f.FocusTarget(), fyne.KeyEscape)
	if went != 1 {
		t.Errorf("Escape went back %d times", went)
	}
}

func TestEntryKeepsItsOwnShortcuts(t *testing.T) {
	f, _, c := weightField(t)
	c.Focus(f.FocusTarget())
	f.SetText("72 kg")
	f.entry.TypedShortcut(&fyne.ShortcutSelectAll{})
	if got := f.entry.SelectedText(); got != "72 kg" {
		t.Errorf("selected %q", got)
	}
}

func TestShortcutsForTheWindow(t *testing.T) {
	control := fyne.KeyModifierControl
	for _, c := range []struct {
		shortcut fyne.Shortcut
		want     bool
	}{
		{&desktop.CustomShortcut{KeyName: fyne.KeyK, Modifier: control}, true},
		{&desktop.CustomShortcut{KeyName: fyne.Key1, Modifier: control}, true},
		{&desktop.CustomShortcut{KeyName: fyne.KeyLeft, Modifier: control}, false},
		{&fyne.ShortcutCopy{}, false},
		{&fyne.ShortcutUndo{}, false},
	} {
		if got := forWindow(c.shortcut); got != c.want {
			t.Errorf("%s for the window: %v, want %v", c.shortcut.ShortcutName(), got, c.want)
		}
	}
}

func TestProblemWords(t *testing.T) {
	long := strings.Repeat("x", 90)
	for _, c := range []struct {
		err  error
		want string
	}{
		{unit.Problem{Given: "7x", Accepted: "a weight"}, "“7x” cannot be used here. Please write a weight."},
		{unit.Problem{Accepted: "a weight"}, "Please write a weight."},
		{unit.Problem{Given: "a\n b", Accepted: "c"}, "“a b” cannot be used here. Please write c."},
		{unit.Problem{Given: long, Accepted: "c"}, "“" + long[:40] + "…” cannot be used here. Please write c."},
		{unit.Problems{{Accepted: "a"}, {Accepted: "b"}}, "Please write a.\nPlease write b."},
		{errors.New("As it is."), "As it is."},
	} {
		if got := ProblemWords(c.err); got != c.want {
			t.Errorf("%v: %q, want %q", c.err, got, c.want)
		}
	}
}

func TestDateField(t *testing.T) {
	program(t, theme.Light)
	d, next := NewDateField("Born", ""), NewField("x", "")
	c := open(t, Column(d, next), 400, 400).Canvas()
	var last unit.Date
	var ok bool
	d.OnDate = func(date unit.Date, good bool) { last, ok = date, good }
	c.Focus(d.FocusTarget())
	test.Type(d.FocusTarget(), "17 May 1990")
	want := unit.Date{Year: 1990, Month: 5, Day: 17}
	if last != want || !ok || d.Understood() != "= Thursday 17 May 1990" {
		t.Errorf("told %v %v, understood %q", last, ok, d.Understood())
	}
	test.Type(d.FocusTarget(), "0")
	if ok || !last.IsZero() {
		t.Errorf("told %v %v for a year of five digits", last, ok)
	}
	c.Focus(next.FocusTarget())
	if d.Problem() == "" {
		t.Error("no problem shown when left")
	}
}

func TestDateFieldByCode(t *testing.T) {
	program(t, theme.Light)
	d := NewDateField("By", "")
	open(t, d, 400, 200)
	d.OnDate = func(unit.Date, bool) { t.Error("called back by code") }
	d.CheckDate = func(date unit.Date) error {
		if date.Year < 2000 {
			return unit.Problem{Given: date.String(), Accepted: "a day to come"}
		}
		return nil
	}
	d.SetDate(unit.Date{Year: 1999, Month: 1, Day: 1})
	if _, ok := d.Date(); ok || d.Problem() == "" {
		t.Error("a day that makes no sense was taken")
	}
	d.SetDate(unit.Date{Year: 2026, Month: 3, Day: 2})
	if date, ok := d.Date(); !ok || date.Day != 2 || d.Problem() != "" {
		t.Errorf("date %v %v, problem %q", date, ok, d.Problem())
	}
	d.SetDate(unit.Date{})
	if date, ok := d.Date(); !ok || !date.IsZero() || d.Text() != "" {
		t.Error("a date field that is empty has no date, and that is no problem")
	}
}

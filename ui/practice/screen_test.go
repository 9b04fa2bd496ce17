package practice

import (
	"bytes"
	"errors"
	"image"
	"image/png"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain/unit"
	"handbreadth/ui/task"
	"handbreadth/ui/widgets"
)

// page is the screen in a window without a display, and what it handed up.
type page struct {
	t      *testing.T
	screen *Screen
	window fyne.Window
	last   Settings
	turns  int
	file   []byte // what choosing a picture gives
	seen   int
}

func newPage(t *testing.T, settings Settings) *page {
	t.Helper()
	widgets.ResetNames()
	app := test.NewTempApp(t)
	p := &page{t: t}
	p.screen = New(settings, Ways{
		Changed: func(s Settings) {
			p.last = s
			p.turns++
		},
		Choose: func(chosen func(string, []byte)) { chosen("logo.png", p.file) },
		See:    func() { p.seen++ },
	})
	p.window = app.NewWindow("")
	p.window.SetContent(p.screen.Object())
	p.window.Resize(fyne.NewSize(1200, 900))
	return p
}

func (p *page) typing(name, text string) {
	p.t.Helper()
	object, ok := widgets.Named()[name].(widgets.Focuser)
	if !ok {
		p.t.Fatalf("nothing is named %s", name)
	}
	p.window.Canvas().Focus(object.FocusTarget())
	test.Type(object.FocusTarget(), text)
}

func TestEveryTextIsHandedUpAsTyped(t *testing.T) {
	p := newPage(t, Settings{})
	for name, got := range map[string]func() string{
		"practice.name":         func() string { return p.last.Name },
		"practice.practitioner": func() string { return p.last.Practitioner },
		"practice.registration": func() string { return p.last.Registration },
		"practice.contact":      func() string { return p.last.Contact },
		"practice.footer":       func() string { return p.last.Footer },
	} {
		p.typing(name, "Lantern")
		if got() != "Lantern" {
			t.Errorf("%s: handed up %q", name, got())
		}
	}
}

func TestChoicesAreHandedUp(t *testing.T) {
	p := newPage(t, Settings{})
	right := func(name string) {
		object := widgets.Named()[name].(widgets.Focuser).FocusTarget()
		object.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	}
	for _, name := range []string{"system", "energy", "decimal", "paper", "look", "text"} {
		right("practice." + name)
	}
	want := Settings{System: unit.UKCustomary, Energy: unit.InKilojoules, DecimalComma: true, Paper: PaperLetter, Look: LookDark, TextSize: 115}
	got := p.last
	if got.System != want.System || got.Energy != want.Energy || got.DecimalComma != want.DecimalComma ||
		got.Paper != want.Paper || got.Look != want.Look || got.TextSize != want.TextSize {
		t.Errorf("handed up %+v, want %+v", got, want)
	}
}

func TestWhatIsStillToBeDoneStandsAbove(t *testing.T) {
	p := newPage(t, Settings{})
	if p.screen.notice.Visible() {
		t.Error("something is to be done at first")
	}
	p.screen.ShowWanting("The recovery sheet was not tried yet.")
	tap(p, "practice.see")
	if !p.screen.notice.Visible() || p.screen.wanting.Text() != "The recovery sheet was not tried yet." || p.seen != 1 {
		t.Errorf("it says %q, led there %d times", p.screen.wanting.Text(), p.seen)
	}
	p.screen.ShowWanting("")
	if p.screen.notice.Visible() {
		t.Error("still there")
	}
}

// What was changed elsewhere stays when something is changed here.
func TestSettingsOfElsewhereAreKept(t *testing.T) {
	p := newPage(t, Settings{})
	p.screen.Follow(Settings{LockAfter: 30})
	p.typing("practice.name", "L")
	if p.last.LockAfter != 30 || p.last.LockMinutes() != 30 || (Settings{}).LockMinutes() != DefaultLockMinutes {
		t.Errorf("handed up %+v", p.last)
	}
}

func TestOnlyAColourIsTaken(t *testing.T) {
	p := newPage(t, Settings{Colour: "#1E5B4F"})
	p.typing("practice.colour", "#12")
	if p.turns != 0 {
		t.Errorf("half a colour was handed up: %q", p.last.Colour)
	}
	for text, want := range map[string]string{"": "", "1e5b4f": "#1E5B4F", " #AbCdEf ": "#ABCDEF"} {
		if got, err := readColour(text); err != nil || got != want {
			t.Errorf("%q: %q, %v", text, got, err)
		}
	}
	for _, text := range []string{"green", "#12345", "#1234567", "#GGGGGG"} {
		var problem unit.Problem
		if _, err := readColour(text); !errors.As(err, &problem) || problem.Given == "" {
			t.Errorf("%q: %v", text, err)
		}
	}
}

func TestALogoIsTakenAndRemoved(t *testing.T) {
	p := newPage(t, Settings{})
	p.file = picture(t, 8, 8)
	tap(p, "practice.logo")
	if p.last.LogoName != "logo.png" || !bytes.Equal(p.last.Logo, p.file) {
		t.Fatalf("handed up %q", p.last.LogoName)
	}
	tap(p, "practice.nologo")
	if p.last.LogoName != "" || p.last.Logo != nil {
		t.Errorf("still %q", p.last.LogoName)
	}
}

func TestWhatIsNoPictureIsRefusedInPlainWords(t *testing.T) {
	p := newPage(t, Settings{})
	for name, data := range map[string][]byte{
		"text": []byte("no picture"), "nothing": nil, "wide": picture(t, mostLogoPixels+1, 1), "large": make([]byte, mostLogoBytes+1),
	} {
		p.file = data
		tap(p, "practice.logo")
		var failure *task.Failure
		if err := checkLogo(data); !errors.As(err, &failure) || !strings.Contains(failure.Words, "PNG or JPEG") {
			t.Errorf("%s: %v", name, err)
		}
		if p.turns != 0 {
			t.Fatalf("%s was handed up", name)
		}
	}
	if got := p.screen.logoName.Text(); !strings.Contains(got, "PNG or JPEG") {
		t.Errorf("the page says %q", got)
	}
}

func tap(p *page, name string) {
	p.t.Helper()
	test.Tap(widgets.Named()[name].(fyne.Tappable))
}

func picture(t *testing.T, width, height int) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := png.Encode(&out, image.NewGray(image.Rect(0, 0, width, height))); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

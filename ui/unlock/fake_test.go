package unlock

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/ui/task"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
	"handbreadth/ui/widgets/widgettest"
)

// An invented passphrase and code.
const goodPhrase = "lantern orchard seven kites"

var (
	someCode  = Code{Groups: strings.Fields("ABCD EFGH JKLM NOPR STUW XYZA BCDE FGHJ")}
	otherCode = Code{Groups: strings.Fields("ZYXW UTSR PONM LKJH GFED CBAZ YXWU TSRP")}
)

// fakeGuard guards nothing. It knows one passphrase and one code.
type fakeGuard struct {
	passphrase string
	code       Code
	next       Code // the new code
	locked     bool
	wait       time.Duration
	trouble    error // of everything that changes something
	renewFails bool
	confirmed  bool
	tried      []string
}

var errWrong = &task.Failure{Words: "This is not the passphrase."}

func (g *fakeGuard) Wait() time.Duration { return g.wait }
func (g *fakeGuard) Locked() bool        { return g.locked }

func (g *fakeGuard) Unlock(_ context.Context, passphrase string) error {
	g.tried = append(g.tried, passphrase)
	if passphrase != g.passphrase {
		return errWrong
	}
	g.locked = false
	return nil
}

func (g *fakeGuard) ReadCode(typed string) (Code, error) {
	letters := strings.ToUpper(strings.Join(strings.Fields(typed), ""))
	if len(letters) != 32 {
		return Code{}, &task.Failure{Words: "A recovery code has 32 letters."}
	}
	var c Code
	for at := 0; at < len(letters); at += 4 {
		c.Groups = append(c.Groups, letters[at:at+4])
	}
	return c, nil
}

func (g *fakeGuard) Recover(_ context.Context, code Code, passphrase string) (Code, error) {
	if code.String() != g.code.String() {
		return Code{}, &task.Failure{Words: "This code belongs to another file."}
	}
	g.passphrase, g.locked = passphrase, false
	if g.renewFails {
		return Code{}, errors.New("disk is full")
	}
	g.code = g.next
	return g.next, nil
}

func (g *fakeGuard) Change(_ context.Context, old, passphrase string) error {
	if old != g.passphrase {
		return errWrong
	}
	g.passphrase = passphrase
	return g.trouble
}

func (g *fakeGuard) Renew(_ context.Context, passphrase string) (Code, error) {
	if passphrase != g.passphrase {
		return Code{}, errWrong
	}
	g.code = g.next
	return g.next, g.trouble
}

func (g *fakeGuard) Confirm(_ context.Context, code Code) error {
	g.confirmed = code.String() == g.code.String()
	return g.trouble
}

// fakeSheet makes no sheet.
type fakeSheet struct {
	printed, saved string
	trouble        error
}

func (s *fakeSheet) SheetName() string { return "recovery sheet.pdf" }

func (s *fakeSheet) PrintSheet(_ context.Context, code Code) error {
	s.printed = code.String()
	return s.trouble
}

func (s *fakeSheet) SaveSheet(_ context.Context, code Code, path string) error {
	s.saved = path + ": " + code.String()
	return s.trouble
}

// fakeAdvise accepts what is long enough.
func fakeAdvise(text string) Advice {
	const least, good = 8, 15
	switch n := len(text); {
	case n < least:
		return Advice{Words: "Too short: at least 8 letters."}
	case n < good:
		return Advice{Accepted: true, Words: "Fair. One or two words more make it far harder to guess."}
	}
	return Advice{Accepted: true, Good: true, Words: "Good. Keep it to yourself."}
}

// page is what all pages are.
type page interface {
	Object() fyne.CanvasObject
	FocusFirst()
}

// bench is a page in a window without a display.
type bench struct {
	t      *testing.T
	window fyne.Window
	clock  *task.ManualClock
}

// tools are those of a bench, with jobs that end at once.
func (b *bench) tools() Tools {
	return Tools{Run: task.Inline{Words: func(err error) string { return "plainly: " + err.Error() }}, Clock: b.clock}
}

func newBench(t *testing.T) *bench {
	t.Helper()
	widgettest.Program(t, theme.Light)
	return &bench{t: t, clock: &task.ManualClock{}}
}

func (b *bench) show(p page) {
	b.t.Helper()
	b.window = widgettest.Window(b.t, p.Object(), widgettest.LaptopWidth, 760)
	p.FocusFirst()
}

func (b *bench) focused() string { return widgettest.Focused(b.window.Canvas()) }

func (b *bench) key(keys ...fyne.KeyName) { widgettest.Key(b.window.Canvas(), keys...) }

// typing types into what has the focus.
func (b *bench) typing(text string) { test.Type(b.window.Canvas().Focused(), text) }

// fill types into a field by its name.
func (b *bench) fill(name, text string) {
	b.t.Helper()
	f := field(b.t, name)
	b.window.Canvas().Focus(f.FocusTarget())
	test.Type(f.FocusTarget(), text)
}

// field finds a field by its name.
func field(t *testing.T, name string) *widgets.Field {
	t.Helper()
	switch f := widgets.Named()[name].(type) {
	case *widgets.Field:
		return f
	case *oldField:
		return f.Field
	}
	t.Fatalf("no field is named %s", name)
	return nil
}

func said(t *testing.T) string {
	t.Helper()
	text, is := widgets.Named()["unlock.told"].(*widgets.Text)
	if !is || !text.Visible() {
		return ""
	}
	return text.Text()
}

package safety

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

var noon = time.Date(2026, time.March, 2, 12, 0, 0, 0, time.UTC)

const (
	someCode   = "ABCD EFGH JKLM NOPR STUW XYZA BCDE FGHJ"
	somePhrase = "lantern orchard seven kites"
)

// fakeKeeper keeps nothing.
type fakeKeeper struct {
	state   State
	backups Backups
	copies  int
	entries []Entry // the newest first
	present Inside
	none    bool  // there is no file in use
	trouble error // of everything that takes its time

	keys, resumed, made int
	madeIn              string
	prepared            []string
	restoring           *fakeRestoring
}

func (k *fakeKeeper) State() State { return k.state }

func (k *fakeKeeper) TryCode(_ context.Context, typed string) error {
	if typed != someCode {
		return errors.New("this is not the code")
	}
	k.state.SheetTried = true
	return nil
}

func (k *fakeKeeper) ChangeKey(_ context.Context, progress Progress) error {
	k.keys++
	progress(1, 2)
	return k.trouble
}

func (k *fakeKeeper) Resume(context.Context, Progress) error {
	k.resumed++
	k.state.Unfinished = false
	return k.trouble
}

func (k *fakeKeeper) Backups(context.Context) (Backups, error) { return k.backups, nil }

func (k *fakeKeeper) SetFolder(_ context.Context, folder string) error {
	if k.trouble == nil {
		k.backups.Folder = folder
	}
	return k.trouble
}

func (k *fakeKeeper) BackUp(ctx context.Context) (Backup, error) {
	return k.BackUpTo(ctx, k.backups.Folder)
}

func (k *fakeKeeper) BackUpTo(_ context.Context, folder string) (Backup, error) {
	if k.trouble != nil {
		return Backup{}, k.trouble
	}
	k.made, k.madeIn = k.made+1, folder
	b := someBackup(0)
	b.Path = folder + "/handbreadth-new.backup"
	k.backups.List = append([]Backup{b}, k.backups.List...)
	return b, nil
}

func (k *fakeKeeper) Rehearse(_ context.Context, _, secret string) (Inside, error) {
	return someBackup(1).Inside, k.opens(secret)
}

func (k *fakeKeeper) opens(secret string) error {
	if secret != somePhrase {
		return errors.New("this is not the passphrase")
	}
	return k.trouble
}

func (k *fakeKeeper) Describe(_ context.Context, path string) (Backup, error) {
	b := someBackup(1)
	b.Path = path
	return b, k.trouble
}

func (k *fakeKeeper) Prepare(_ context.Context, path, secret string) (Restoring, error) {
	if err := k.opens(secret); err != nil {
		return nil, err
	}
	k.prepared = append(k.prepared, path)
	k.restoring = &fakeRestoring{keeper: k, inside: someBackup(1).Inside}
	return k.restoring, nil
}

func (k *fakeKeeper) Record(_ context.Context, before int64, most int) (found []Entry, err error) {
	for _, e := range k.entries {
		if (before == 0 || e.Number < before) && len(found) < most {
			found = append(found, e)
		}
	}
	return found, k.trouble
}

func (k *fakeKeeper) CheckRecord(context.Context) (string, error) {
	return "Whole: 3 entries.", k.trouble
}

func (k *fakeKeeper) OldCopies(context.Context) (int, error) { return k.copies, nil }

func (k *fakeKeeper) RemoveOldCopies(context.Context) (int, error) {
	n := k.copies
	k.copies = 0
	return n, k.trouble
}

type fakeRestoring struct {
	keeper    *fakeKeeper
	inside    Inside
	discarded bool
}

func (r *fakeRestoring) Inside() Inside          { return r.inside }
func (r *fakeRestoring) Present() (Inside, bool) { return r.keeper.present, !r.keeper.none }

func (r *fakeRestoring) Discard() error {
	r.discarded = true
	return nil
}

// someBackup is a backup of so many days ago.
func someBackup(days int) Backup {
	at := noon.AddDate(0, 0, -days)
	return Backup{
		Path: "stick/handbreadth-" + at.Format(time.DateOnly) + ".backup", Bytes: 1_234_567,
		Inside: Inside{MadeAt: at, Clients: 12, Visits: 30, Plans: 14, LastChange: at.Add(-time.Hour), Sealed: true, Practice: "same"},
	}
}

// bench is the section in a window without a display, and what it led to.
type bench struct {
	t       *testing.T
	keeper  *fakeKeeper
	section *Section
	window  fyne.Window
	clock   *task.ManualClock
	runner  task.Runner

	went     map[string]int
	minutes  int
	path     string // what choosing gives
	asked    Question
	restored Restoring
	wanting  string
}

func newBench(t *testing.T, keeper *fakeKeeper) *bench {
	t.Helper()
	widgettest.Program(t, theme.Light)
	b := &bench{t: t, keeper: keeper, clock: &task.ManualClock{}, went: map[string]int{}}
	b.runner = task.Inline{Words: func(err error) string { return "plainly: " + err.Error() }}
	b.section = New(keeper, DefaultMinutes, b.tools(), b.ways())
	b.window = widgettest.Window(t, widgets.NewPage(b.section.Object()), 1200, 900)
	b.section.Renew()
	return b
}

func (b *bench) tools() Tools {
	return Tools{Run: b.runner, Clock: b.clock, Now: func() time.Time { return noon }}
}

func (b *bench) ways() Ways {
	went := func(where string) func() { return func() { b.went[where]++ } }
	choose := func(chosen func(string)) { chosen(b.path) }
	return Ways{
		Seal: went("seal"), Change: went("change"), Renew: went("renew"), Lock: went("lock"),
		LockAfter:    func(minutes int) { b.minutes = minutes },
		ChooseFolder: choose, ChooseFile: choose,
		Ask:     func(q Question) { b.asked = q },
		Restore: func(r Restoring) { b.restored = r },
		Wanting: func(words string) { b.wanting = words },
	}
}

// unfold opens a part.
func (b *bench) unfold(name string) {
	b.t.Helper()
	f, is := widgets.Named()["safety."+name].(*widgets.Fold)
	if !is {
		b.t.Fatalf("no part is named %s", name)
	}
	if !f.Open() {
		test.Tap(f.FocusTarget().(fyne.Tappable))
	}
	widgettest.Settle(b.window)
}

// openLine opens a backup of the list.
func (b *bench) openLine(name string) {
	b.t.Helper()
	test.Tap(widgets.Named()[name].(widgets.Focuser).FocusTarget().(fyne.Tappable))
	widgettest.Settle(b.window)
}

func (b *bench) press(name string) {
	b.t.Helper()
	widgettest.Press(b.t, name)
}

func (b *bench) fill(name, text string) {
	b.t.Helper()
	f, is := widgets.Named()[name].(*widgets.Field)
	if !is {
		b.t.Fatalf("no field is named %s", name)
	}
	b.window.Canvas().Focus(f.FocusTarget())
	test.Type(f.FocusTarget(), text)
}

func (b *bench) problem(name string) string { return widgets.Named()[name].(*widgets.Field).Problem() }

// said is what a line says, "" where it is not shown.
func (b *bench) said(name string) string {
	text, is := widgets.Named()[name].(*widgets.Text)
	if !is || !text.Visible() {
		return ""
	}
	return text.Text()
}

func (b *bench) mark(name string) string {
	return widgets.Named()["safety."+name].(*widgets.Fold).Mark()
}

func (b *bench) shows(words string) bool {
	widgettest.Settle(b.window)
	return strings.Contains(widgettest.Outline(b.window), words)
}

// sealed is a keeper of a practice in good order.
func sealed() *fakeKeeper {
	return &fakeKeeper{
		state:   State{Sealed: true, SheetTried: true},
		backups: Backups{Folder: "stick", Last: noon.Add(-time.Hour), DueWords: "There is a backup of today.", List: []Backup{someBackup(0), someBackup(1)}},
		present: Inside{MadeAt: noon, Clients: 13, Visits: 31, Plans: 15, LastChange: noon, Sealed: true, Practice: "same"},
		entries: []Entry{
			{Number: 3, At: noon, Words: "Plan 1 changed", Who: "Wren Applecart"},
			{Number: 2, At: noon.Add(-time.Hour), Words: "Unlocked"},
			{Number: 1, At: noon.AddDate(0, 0, -3), Words: "Begun"},
		},
	}
}

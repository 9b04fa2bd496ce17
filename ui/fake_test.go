package ui

import (
	"context"
	"errors"
	"image"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/task"
	"handbreadth/ui/widgets"
)

var today = unit.Date{Year: 2026, Month: time.March, Day: 2}

// fakeDesk is a practice in memory.
type fakeDesk struct {
	files    []*fakeFile
	settings Settings
	trouble  error // of every write
	opening  error // of opening a file
	loading  bool
}

func (d *fakeDesk) Loading() bool { return d.loading }

func (d *fakeDesk) Names(context.Context) error {
	d.loading = false
	return nil
}

func (d *fakeDesk) Find(query string, archived bool) []string {
	var ids []string
	for _, f := range d.files {
		if f.archived == archived && matches(f.name, query) {
			ids = append(ids, f.id)
		}
	}
	return ids
}

func (d *fakeDesk) file(id string) *fakeFile {
	for _, f := range d.files {
		if f.id == id {
			return f
		}
	}
	return nil
}

func (d *fakeDesk) Row(id string) (Row, bool) {
	f := d.file(id)
	if f == nil {
		return Row{}, false
	}
	return Row{ID: id, Name: f.name, Archived: f.archived}, true
}

func (d *fakeDesk) Today() unit.Date        { return today }
func (d *fakeDesk) RetentionNotice() string { return "The law may require you to keep records." }

func (d *fakeDesk) Glances(context.Context, []string) (map[string]Glance, error) {
	return map[string]Glance{}, nil
}

func (d *fakeDesk) Create(_ context.Context, name string) (string, error) {
	f := &fakeFile{desk: d, id: strings.ToLower(name), name: name, form: draft.Form{draft.Name: name, draft.Date: today.Long()}}
	d.files = append([]*fakeFile{f}, d.files...)
	return f.id, d.trouble
}

func (d *fakeDesk) Archive(_ context.Context, id string) error {
	d.file(id).archived = true
	return d.trouble
}

func (d *fakeDesk) Unarchive(_ context.Context, id string) error {
	d.file(id).archived = false
	return d.trouble
}

func (d *fakeDesk) Delete(_ context.Context, id string) error {
	d.files = slices.DeleteFunc(d.files, func(f *fakeFile) bool { return f.id == id })
	return d.trouble
}
func (d *fakeDesk) Settings() Settings { return d.settings }

func (d *fakeDesk) SaveSettings(_ context.Context, s Settings) error {
	if d.trouble == nil {
		d.settings = s
	}
	return d.trouble
}

func (d *fakeDesk) Open(_ context.Context, id string) (File, error) {
	if d.opening != nil {
		return nil, d.opening
	}
	if f := d.file(id); f != nil {
		return f, nil
	}
	return nil, errors.New("no such client")
}

// fakeFile is a client file in memory.
type fakeFile struct {
	desk     *fakeDesk
	id, name string
	archived bool
	form     draft.Form // as on the disk
	turn     int
	kept     Kept
	settled  draft.Form
	saved    []string // paths of papers
}

func (f *fakeFile) Form() draft.Form { return f.form.Clone() }
func (f *fakeFile) Kept() Kept       { return f.kept }

func (f *fakeFile) SaveDraft(_ context.Context, turn int, form draft.Form) error {
	if f.desk.trouble == nil && turn > f.turn {
		f.form, f.turn = form.Clone(), turn
	}
	return f.desk.trouble
}

func (f *fakeFile) Settle(_ context.Context, form draft.Form) error {
	f.settled = form
	return f.desk.trouble
}

func (f *fakeFile) Keep(_ context.Context, form draft.Form, plan domain.Plan) (Kept, error) {
	if plan.Gate.Held() {
		return Kept{}, errors.New("held")
	}
	f.kept = Kept{Number: f.kept.Number + 1, On: today, Referral: plan.Gate.Referred(), Form: form}
	return f.kept, nil
}
func (f *fakeFile) Papers() Papers { return fakePapers{f} }

type fakePapers struct{ file *fakeFile }

func (fakePapers) PageNames() []PageName                                  { return []PageName{{Key: "plan", Name: "Your plan"}} }
func (fakePapers) SuggestedName(domain.Plan) string                       { return "plan.pdf" }
func (fakePapers) Print(context.Context, domain.Plan, Kept, Choice) error { return nil }

func (fakePapers) Pictures(context.Context, domain.Plan, Kept, Choice) ([]image.Image, error) {
	return []image.Image{image.NewGray(image.Rect(0, 0, 210, 297))}, nil
}

func (p fakePapers) Save(_ context.Context, _ domain.Plan, _ Kept, _ Choice, path string) error {
	p.file.saved = append(p.file.saved, path)
	return nil
}

// bench is a shell in a window without a screen.
type bench struct {
	t      *testing.T
	shell  *Shell
	window fyne.Window
	clock  *task.ManualClock
	desk   *fakeDesk
	opener *fakeOpener
	runner *benchRunner
	now    time.Time
}

// benchRunner runs jobs at once, or keeps them while held is set.
type benchRunner struct {
	task.Inline
	held bool
	jobs []task.Job
}

func (r *benchRunner) Start(job task.Job) func() {
	if r.held {
		r.jobs = append(r.jobs, job)
		return func() {}
	}
	return r.Inline.Start(job)
}

// release runs what was kept.
func (r *benchRunner) release() {
	jobs := r.jobs
	r.held, r.jobs = false, nil
	for _, job := range jobs {
		r.Inline.Start(job)
	}
}

func newBench(t *testing.T, opener *fakeOpener) *bench {
	t.Helper()
	widgets.ResetNames()
	app := test.NewTempApp(t)
	b := &bench{t: t, clock: &task.ManualClock{}, opener: opener, window: app.NewWindow("")}
	if opener.desk == nil {
		opener.desk = &fakeDesk{}
	}
	b.desk = opener.desk
	b.window.SetPadded(false)
	words := func(err error) string { return "plainly: " + err.Error() }
	b.runner, b.now = &benchRunner{Inline: task.Inline{Words: words}}, time.Date(2026, time.March, 2, 12, 0, 0, 0, time.UTC)
	b.shell = New(app, b.window, opener, Tools{
		Run: b.runner, Clock: b.clock, Words: words, Now: func() time.Time { return b.now },
	})
	b.window.Resize(fyne.NewSize(1366, 768))
	b.shell.Start(false)
	return b
}

// open opens a practice with one client whose form is complete.
func open(t *testing.T, changes draft.Form) *bench {
	t.Helper()
	desk := &fakeDesk{}
	form := complete()
	for field, text := range changes {
		form[field] = text
	}
	desk.files = []*fakeFile{{desk: desk, id: "wren", name: "Wren Applecart", form: form}}
	b := newBench(t, &fakeOpener{begun: true, desk: desk})
	b.shell.OpenClient("wren")
	return b
}

func (b *bench) file() *fakeFile { return b.desk.file("wren") }

func complete() draft.Form {
	form := draft.Form{
		draft.Name: "Wren Applecart", draft.Date: "2 March 2026", draft.Born: "17 May 1984",
		draft.Sex: string(energy.Female), draft.Height: "168 cm", draft.Weight: "79.5 kg",
		draft.Activity: string(energy.LowActive), draft.GoalKind: string(energy.Lose), draft.GoalWeight: "75 kg",
	}
	for _, q := range screen.Questions() {
		form[draft.Screening(q.Code)] = draft.AnswerNo
	}
	return form
}

// press presses a key with a modifier, as the window gives it.
func (b *bench) press(key fyne.KeyName, modifier fyne.KeyModifier) {
	b.window.Canvas().(fyne.Shortcutable).TypedShortcut(&desktop.CustomShortcut{KeyName: key, Modifier: modifier})
}

// key gives a key to what has the focus, or to the window.
func (b *bench) key(key fyne.KeyName) {
	event := &fyne.KeyEvent{Name: key}
	if focused := b.window.Canvas().Focused(); focused != nil {
		focused.TypedKey(event)
		return
	}
	b.window.Canvas().OnTypedKey()(event)
}

// pass lets time pass.
func (b *bench) pass(d time.Duration) {
	b.now = b.now.Add(d)
	b.clock.Advance(d)
}

func (b *bench) typing(text string) {
	b.t.Helper()
	focused := b.window.Canvas().Focused()
	if focused == nil {
		b.t.Fatal("nothing has the focus")
	}
	test.Type(focused, text)
}

func (b *bench) named(name string) fyne.CanvasObject {
	b.t.Helper()
	object, ok := widgets.Named()[name]
	if !ok {
		b.t.Fatalf("nothing is named %s", name)
	}
	return object
}

func (b *bench) tap(name string) {
	b.t.Helper()
	test.Tap(b.named(name).(fyne.Tappable))
}

// focused is the name of what has the focus.
func (b *bench) focused() string {
	for name, object := range widgets.Named() {
		target, _ := object.(fyne.Focusable)
		if f, ok := object.(widgets.Focuser); ok {
			target = f.FocusTarget()
		}
		if target != nil && target == b.window.Canvas().Focused() {
			return name
		}
	}
	return ""
}

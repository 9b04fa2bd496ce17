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

// fakeOpener opens fake practices.
type fakeOpener struct {
	begun   bool
	desk    *fakeDesk
	door    *fakeDoor // made where it is nil
	trouble error
	look    Settings

	restored   Restoring
	restoreErr error
}

func (o *fakeOpener) Begun() bool                            { return o.begun }
func (o *fakeOpener) Look() Settings                         { return o.look }
func (o *fakeOpener) Practice(context.Context) (Door, error) { return o.open(false) }
func (o *fakeOpener) Demo(context.Context) (Door, error)     { return o.open(true) }

func (o *fakeOpener) open(demo bool) (Door, error) {
	if o.trouble != nil {
		return nil, o.trouble
	}
	if o.door == nil {
		o.door = &fakeDoor{passphrase: somePhrase, sealed: true, tried: true}
	}
	o.door.desk, o.door.demo = o.desk, demo
	if demo {
		o.door.sealed, o.door.locked = false, false
	}
	return o.door, nil
}

func (o *fakeOpener) Advise(passphrase string) Advice {
	return Advice{Accepted: len(passphrase) > 7, Words: "advice"}
}

func (o *fakeOpener) Describe(_ context.Context, path string) (Backup, error) {
	return Backup{Path: path}, nil
}

func (o *fakeOpener) Prepare(context.Context, string, string) (Restoring, error) {
	return &fakeRestoring{}, nil
}

func (o *fakeOpener) Restore(_ context.Context, r Restoring) error {
	o.restored = r
	if o.restoreErr == nil {
		o.begun = true
		o.door = &fakeDoor{passphrase: "of that day", sealed: true, locked: true}
	}
	return o.restoreErr
}

type fakeRestoring struct{ discarded bool }

func (r *fakeRestoring) Inside() Inside          { return Inside{Clients: 3} }
func (r *fakeRestoring) Present() (Inside, bool) { return Inside{}, false }

func (r *fakeRestoring) Discard() error {
	r.discarded = true
	return nil
}

// An invented passphrase and code.
const somePhrase = "lantern orchard seven kites"

var someCode = Code{Groups: strings.Fields("ABCD EFGH JKLM NOPR STUW XYZA BCDE FGHJ")}

// fakeDoor is a door that guards nothing.
type fakeDoor struct {
	desk                 *fakeDesk
	demo, sealed, locked bool
	tried, unfinished    bool
	passphrase           string
	sealErr              error // the rest of the sealing is not done
	sealFails            error // nothing is sealed

	locks, resumed, backups int
	backupErr               error
	printed                 []string
}

func (d *fakeDoor) Demo() bool                { return d.demo }
func (d *fakeDoor) Sealed() bool              { return d.sealed }
func (d *fakeDoor) Locked() bool              { return d.locked }
func (d *fakeDoor) Wait() time.Duration       { return 0 }
func (d *fakeDoor) Advise(text string) Advice { return (&fakeOpener{}).Advise(text) }

func (d *fakeDoor) Seal(_ context.Context, passphrase string, _ Progress) (Code, error) {
	if d.sealFails != nil {
		return Code{}, d.sealFails
	}
	d.sealed, d.passphrase, d.unfinished, d.tried = true, passphrase, d.sealErr != nil, false
	return someCode, d.sealErr
}

func (d *fakeDoor) Unlock(_ context.Context, passphrase string) error {
	if passphrase != d.passphrase {
		return errors.New("wrong passphrase")
	}
	d.locked = false
	return nil
}

func (d *fakeDoor) ReadCode(typed string) (Code, error) {
	return Code{Groups: strings.Fields(strings.ToUpper(typed))}, nil
}

func (d *fakeDoor) Recover(_ context.Context, _ Code, passphrase string) (Code, error) {
	d.locked, d.passphrase = false, passphrase
	return someCode, nil
}

func (d *fakeDoor) Change(_ context.Context, _, passphrase string) error {
	d.passphrase = passphrase
	return nil
}

func (d *fakeDoor) Renew(context.Context, string) (Code, error) { return someCode, nil }

func (d *fakeDoor) Confirm(context.Context, Code) error {
	d.tried = true
	return nil
}

func (d *fakeDoor) SheetName() string { return "sheet.pdf" }

func (d *fakeDoor) PrintSheet(_ context.Context, code Code) error {
	d.printed = append(d.printed, code.String())
	return nil
}

func (d *fakeDoor) SaveSheet(context.Context, Code, string) error { return nil }

func (d *fakeDoor) Enter(context.Context) (Desk, error) {
	if d.locked {
		return nil, errors.New("locked")
	}
	return d.desk, nil
}

func (d *fakeDoor) Lock(context.Context) { d.locked, d.locks = true, d.locks+1 }
func (d *fakeDoor) Keeper() Keeper       { return &fakeKeeper{door: d} }

func (d *fakeDoor) BackUpIfDue(context.Context) error {
	d.backups++
	return d.backupErr
}

// fakeKeeper keeps nothing.
type fakeKeeper struct {
	fakeOpener
	door *fakeDoor
}

func (k *fakeKeeper) State() KeepState {
	return KeepState{Demo: k.door.demo, Sealed: k.door.sealed, Unfinished: k.door.unfinished, SheetTried: k.door.tried}
}

func (k *fakeKeeper) Resume(context.Context, KeyMoves) error {
	k.door.resumed++
	k.door.unfinished = false
	return nil
}

func (k *fakeKeeper) TryCode(context.Context, string) error     { return nil }
func (k *fakeKeeper) ChangeKey(context.Context, KeyMoves) error { return nil }
func (k *fakeKeeper) Backups(context.Context) (Backups, error) {
	return Backups{DueWords: "No folder for backups is chosen yet."}, nil
}
func (k *fakeKeeper) SetFolder(context.Context, string) error { return nil }
func (k *fakeKeeper) BackUp(context.Context) (Backup, error)  { return Backup{}, nil }

func (k *fakeKeeper) BackUpTo(context.Context, string) (Backup, error) { return Backup{}, nil }

func (k *fakeKeeper) Rehearse(context.Context, string, string) (Inside, error) { return Inside{}, nil }
func (k *fakeKeeper) Record(context.Context, int64, int) ([]Entry, error)      { return nil, nil }
func (k *fakeKeeper) CheckRecord(context.Context) (string, error)              { return "", nil }
func (k *fakeKeeper) OldCopies(context.Context) (int, error)                   { return 0, nil }
func (k *fakeKeeper) RemoveOldCopies(context.Context) (int, error)             { return 0, nil }

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

package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/store"
	"handbreadth/store/vault"
	"handbreadth/ui"
	"handbreadth/ui/draft"
	"handbreadth/ui/task"
	"handbreadth/ui/widgets"
	"handbreadth/ui/widgets/widgettest"
)

// windowed is the program in a window without a display, on real files.
type windowed struct {
	t       *testing.T
	program *program
	window  fyne.Window
}

func inWindow(t *testing.T, folder string) *windowed {
	t.Helper()
	widgets.ResetNames()
	app := test.NewTempApp(t)
	w := &windowed{t: t, window: app.NewWindow("")}
	w.program = &program{place: place{folder}, clock: func() time.Time { return noon }, effort: vault.TestEffort}
	w.program.shell = ui.New(app, w.window, w.program, ui.Tools{
		Run: task.Inline{Words: store.Plain}, Clock: &task.ManualClock{}, Words: store.Plain, Now: w.program.clock,
	})
	w.window.Resize(fyne.NewSize(1366, 768))
	t.Cleanup(func() { _ = w.program.close() })
	w.program.shell.Start(false)
	return w
}

func (w *windowed) at(place string) {
	w.t.Helper()
	if got := w.program.shell.State().Place; got != place {
		w.t.Fatalf("at %q, want %q; it says %q", got, place, w.program.shell.State().Toast)
	}
}

func (w *windowed) press(name string) {
	w.t.Helper()
	widgettest.Press(w.t, name)
}

// open opens a fold or a line.
func (w *windowed) open(name string) {
	w.t.Helper()
	object, is := widgets.Named()[name].(widgets.Focuser)
	if !is {
		w.t.Fatalf("nothing is named %s", name)
	}
	test.Tap(object.FocusTarget().(fyne.Tappable))
}

func (w *windowed) fill(name, text string) {
	w.t.Helper()
	f, is := widgets.Named()[name].(*widgets.Field)
	if !is {
		w.t.Fatalf("no field is named %s", name)
	}
	w.window.Canvas().Focus(f.FocusTarget())
	test.Type(f.FocusTarget(), text)
}

func (w *windowed) says(name, words string) {
	w.t.Helper()
	text, is := widgets.Named()[name].(*widgets.Text)
	if !is || !strings.Contains(text.Text(), words) {
		w.t.Errorf("%s does not say %q", name, words)
	}
}

func (w *windowed) unlock(passphrase string) {
	w.t.Helper()
	w.at("locked")
	w.fill("unlock.passphrase", passphrase)
	w.press("unlock.do")
}

// choose types a new passphrase twice.
func (w *windowed) choose(passphrase string) {
	w.t.Helper()
	w.fill("unlock.first", passphrase)
	w.fill("unlock.again", passphrase)
	w.press("unlock.do")
}

// readCode reads the code off the window and types two groups of it back.
func (w *windowed) readCode() string {
	w.t.Helper()
	w.at("code")
	var groups []string
	for n := 1; n <= 8; n++ {
		groups = append(groups, widgets.Named()[fmt.Sprintf("unlock.group%d", n)].(*widgets.Text).Text())
	}
	w.press("unlock.on")
	for n, group := range groups {
		if name := fmt.Sprintf("unlock.asked%d", n+1); widgets.Named()[name] != nil {
			w.fill(name, strings.ToLower(group))
		}
	}
	w.press("unlock.do")
	return strings.Join(groups, " ")
}

// TestSafeKeepingFromTheFirstStart goes through it as a new practitioner would:
// a passphrase and the sheet, a client, a lock, a wrong passphrase, a backup,
// its check and its restore, the record, and at last the recovery code.
func TestSafeKeepingFromTheFirstStart(t *testing.T) {
	stick := t.TempDir()
	w := inWindow(t, t.TempDir())
	w.at("welcome")
	w.press("welcome.start")
	w.at("passphrase")
	w.choose(somePhrase)
	code := w.readCode()
	w.at("clients")
	w.program.shell.NewClient()
	w.fill("clients.name", "Wren Applecart")
	w.press("clients.create")
	w.at("file")
	w.program.shell.Set(draft.Weight, "78 kg")
	w.program.shell.Lock()
	w.unlock("lantern")
	w.at("locked")
	widgets.Named()["unlock.passphrase"].(*widgets.Field).SetText("")
	w.unlock(somePhrase)
	w.at("file")
	if got := w.program.shell.State().Form.Get(draft.Weight); got != "78 kg" {
		t.Errorf("the weight is %q", got)
	}
	w.backUp(stick)
	w.deleteEverything()
	w.restoreNewest(code)
	w.unlock(somePhrase)
	w.at("clients")
	if found := w.program.entered().Find("wren", false); len(found) != 1 {
		t.Errorf("restored %v", found)
	}
	w.program.shell.Go(ui.PlacePractice)
	w.open("safety.record")
	w.press("safety.record.check")
	w.says("safety.record.told", "The record is whole")
	w.program.shell.Lock()
	w.press("unlock.recover")
	w.fill("unlock.code", code)
	w.choose("another orchard of seven kites")
	if next := w.readCode(); next == code {
		t.Error("the code stayed the same")
	}
	w.at("practice")
}

func (w *windowed) backUp(stick string) {
	w.t.Helper()
	w.program.shell.Go(ui.PlacePractice)
	w.open("safety.backups")
	w.fill("safety.folder", filepath.Join(stick, "missing"))
	w.press("safety.folder.use")
	if widgets.Named()["safety.folder"].(*widgets.Field).Problem() == "" {
		w.t.Error("a folder that is not there was taken")
	}
	widgets.Named()["safety.folder"].(*widgets.Field).SetText(stick)
	w.press("safety.folder.use")
	w.press("safety.backup.now")
	w.says("safety.backup.told", "Made and checked")
}

func (w *windowed) deleteEverything() {
	w.t.Helper()
	w.program.shell.Go(ui.PlaceClients)
	defer w.program.shell.Go(ui.PlacePractice)
	entered := w.program.entered()
	for _, id := range entered.Find("", false) {
		if err := entered.Delete(context.Background(), id); err != nil {
			w.t.Fatal(err)
		}
	}
}

// restoreNewest checks the newest backup with the passphrase, and restores it
// with the recovery code.
func (w *windowed) restoreNewest(code string) {
	w.t.Helper()
	const line = "safety.backup.line.1"
	w.open(line)
	w.fill(line+".secret", somePhrase)
	w.press(line + ".check")
	w.says(line+".told", "It opens completely: 1 client")
	widgets.Named()[line+".secret"].(*widgets.Field).SetText(code)
	w.press(line + ".look")
	w.press(line + ".put")
	w.press("question.yes")
	w.at("locked")
}

// TestAPracticeMovesToAnotherComputer restores a backup where nothing is, with
// the recovery code alone.
func TestAPracticeMovesToAnotherComputer(t *testing.T) {
	ctx, stick := context.Background(), t.TempDir()
	old, code := sealedDoor(t, t.TempDir())
	newFile(t, enter(t, old), "Wren Applecart")
	backup, err := old.Keeper().BackUpTo(ctx, stick)
	if err != nil {
		t.Fatal(err)
	}
	w := inWindow(t, t.TempDir())
	w.press("welcome.restore")
	w.fill("restore.path", backup.Path)
	w.press("restore.open")
	w.fill("restore.found.secret", code.String())
	w.press("restore.found.look")
	w.press("restore.found.put")
	w.press("question.yes")
	w.at("locked")
	w.press("unlock.recover")
	w.fill("unlock.code", code.String())
	w.choose("another orchard of seven kites")
	w.readCode()
	w.at("clients")
	if found := w.program.entered().Find("wren", false); len(found) != 1 {
		t.Errorf("found %v", found)
	}
}

// TestAnOpenPracticeIsSealedAtItsNextStart takes a practice from before there
// was a passphrase.
func TestAnOpenPracticeIsSealedAtItsNextStart(t *testing.T) {
	folder := t.TempDir()
	before := newDoor(t, folder)
	newFile(t, enter(t, before), "Wren Applecart")
	if err := before.close(); err != nil {
		t.Fatal(err)
	}
	w := inWindow(t, folder)
	w.at("passphrase")
	w.press("unlock.back")
	w.at("clients")
	w.program.shell.Go(ui.PlacePractice)
	w.open("safety.keys")
	w.press("safety.seal")
	w.choose(somePhrase)
	w.readCode()
	w.at("practice")
	w.program.shell.Lock()
	w.unlock(somePhrase)
	w.at("practice")
	if found := w.program.entered().Find("wren", false); len(found) != 1 {
		t.Errorf("found %v", found)
	}
	content, err := os.ReadFile(filepath.Join(folder, fileName))
	if err != nil || strings.Contains(string(content), "Applecart") {
		t.Errorf("the name lies in clear, or %v", err)
	}
}

func TestADamagedPracticeIsRestored(t *testing.T) {
	ctx, folder, stick := context.Background(), t.TempDir(), t.TempDir()
	before, _ := sealedDoor(t, folder)
	newFile(t, enter(t, before), "Wren Applecart")
	backup, err := before.Keeper().BackUpTo(ctx, stick)
	if err != nil {
		t.Fatal(err)
	}
	if err := before.close(); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(folder, fileName), []byte("no database"), 0o600); err != nil {
		t.Fatal(err)
	}
	w := inWindow(t, folder)
	w.at("welcome")
	w.press("welcome.restore")
	w.fill("restore.path", backup.Path)
	w.press("restore.open")
	w.fill("restore.found.secret", somePhrase)
	w.press("restore.found.look")
	w.press("restore.found.put")
	w.press("question.yes")
	w.unlock(somePhrase)
	w.at("clients")
}

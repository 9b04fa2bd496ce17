package main

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"handbreadth/domain/unit"
	"handbreadth/store"
	"handbreadth/store/vault"
	"handbreadth/ui"
	"handbreadth/ui/draft"
	"handbreadth/ui/task"
)

// An invented passphrase.
const somePhrase = "lantern orchard seven kites"

// sealedDoor opens the file of a folder and seals it.
func sealedDoor(t *testing.T, folder string) (*door, ui.Code) {
	t.Helper()
	d := newDoor(t, folder)
	code, err := d.Seal(context.Background(), somePhrase, func(int, int) {})
	if err != nil {
		t.Fatal(err)
	}
	return d, code
}

func TestALockedFileIsOpenedAgain(t *testing.T) {
	ctx := context.Background()
	d, _ := sealedDoor(t, t.TempDir())
	before := enter(t, d)
	newFile(t, before, "Wren Applecart")
	d.Lock(ctx)
	if !d.Locked() || len(before.people) != 0 || len(before.Find("wren", false)) != 0 {
		t.Error("not locked, or names are still in memory")
	}
	if _, err := d.Enter(ctx); !errors.Is(err, store.ErrLocked) {
		t.Errorf("entering a locked file: %v", err)
	}
	if err := d.Unlock(ctx, "no"); !errors.Is(err, store.ErrWrongPassphrase) {
		t.Errorf("a wrong passphrase: %v", err)
	}
	if err := d.Unlock(ctx, somePhrase); err != nil {
		t.Fatal(err)
	}
	if found := enter(t, d).Find("wren", false); len(found) != 1 {
		t.Errorf("found %v", found)
	}
}

func TestTheDelayOfTheFileIsTheDoors(t *testing.T) {
	ctx := context.Background()
	d, _ := sealedDoor(t, t.TempDir())
	d.Lock(ctx)
	for range 4 {
		_ = d.Unlock(ctx, "no")
	}
	if d.Wait() == 0 {
		t.Error("no delay after four wrong ones")
	}
}

func TestTheRecoveryCodeIsReplacedAsItIsUsed(t *testing.T) {
	ctx := context.Background()
	d, code := sealedDoor(t, t.TempDir())
	d.Lock(ctx)
	typed, err := d.ReadCode(strings.ToLower(strings.Join(code.Groups, "")))
	if err != nil || typed.String() != code.String() {
		t.Fatalf("read %v, %v", typed, err)
	}
	next, err := d.Recover(ctx, typed, "another orchard of kites")
	if err != nil || next.IsZero() || next.String() == code.String() || d.Locked() {
		t.Fatalf("got %v, %v", next, err)
	}
	if err := d.Confirm(ctx, code); !errors.Is(err, store.ErrWrongCode) {
		t.Errorf("the old code still counts: %v", err)
	}
	if err := d.Confirm(ctx, next); err != nil || !d.Keeper().State().SheetTried {
		t.Errorf("the new one does not: %v", err)
	}
	d.Lock(ctx)
	if err := d.Unlock(ctx, "another orchard of kites"); err != nil {
		t.Error(err)
	}
}

func TestASlipInTheCodeHasPlainWords(t *testing.T) {
	d, _ := sealedDoor(t, t.TempDir())
	var failure *task.Failure
	if _, err := d.ReadCode("ABCD"); !errors.As(err, &failure) || failure.Words == "" {
		t.Errorf("got %v", err)
	}
	if err := d.Keeper().TryCode(context.Background(), "ABCD"); !errors.As(err, &failure) {
		t.Errorf("got %v", err)
	}
}

func TestThePracticesNamesAreNoSecret(t *testing.T) {
	d, _ := sealedDoor(t, t.TempDir())
	entered := enter(t, d)
	const name = "Quillow Thimblewick Lantern"
	before := d.Advise(name)
	if err := entered.SaveSettings(context.Background(), ui.Settings{Name: name}); err != nil {
		t.Fatal(err)
	}
	if after := d.Advise(name); !before.Accepted || after.Accepted {
		t.Errorf("before %+v, after %+v", before, after)
	}
}

// A paper that waits for the printer is gone when the file is locked, closed and
// opened.
func TestTheShelfIsEmptiedAtLockExitAndStart(t *testing.T) {
	folder := t.TempDir()
	d, _ := sealedDoor(t, folder)
	lay := func() string {
		t.Helper()
		path, err := d.shelf.put("Wren plan.pdf", []byte("%PDF-"))
		if err != nil {
			t.Fatal(err)
		}
		return path
	}
	gone := func(when, path string) {
		t.Helper()
		if _, err := os.Stat(path); !errors.Is(err, os.ErrNotExist) {
			t.Errorf("%s: the paper is still there", when)
		}
	}
	path := lay()
	d.Lock(context.Background())
	gone("locked", path)
	path = lay()
	if err := d.close(); err != nil {
		t.Fatal(err)
	}
	gone("closed", path)
	path = lay() // as a killed program leaves it
	newDoor(t, folder)
	gone("opened", path)
}

func TestTheRecoverySheetIsSavedAndNoted(t *testing.T) {
	ctx := context.Background()
	d, code := sealedDoor(t, t.TempDir())
	path := filepath.Join(t.TempDir(), d.SheetName())
	if err := d.SaveSheet(ctx, code, path); err != nil {
		t.Fatal(err)
	}
	written, err := os.ReadFile(path)
	if err != nil || !strings.HasPrefix(string(written), "%PDF-") {
		t.Errorf("the file begins %.8q, %v", written, err)
	}
	if got := newest(t, d).Words; got != "Saved as a file: recovery sheet" {
		t.Errorf("noted %q", got)
	}
}

// newest is the last entry of the record.
func newest(t *testing.T, d *door) ui.Entry {
	t.Helper()
	entries, err := d.Keeper().Record(context.Background(), 0, 1)
	if err != nil || len(entries) != 1 {
		t.Fatalf("%d entries, %v", len(entries), err)
	}
	return entries[0]
}

func TestTheRecordTellsWhoAndWhat(t *testing.T) {
	ctx := context.Background()
	d, _ := sealedDoor(t, t.TempDir())
	entered := enter(t, d)
	f := newFile(t, entered, "Wren Applecart")
	form := complete()
	plan := planOf(t, form)
	kept, err := f.Keep(ctx, form, plan)
	if err != nil {
		t.Fatal(err)
	}
	if err := f.Papers().Save(ctx, plan, kept, ui.Choice{Paper: "A4"}, filepath.Join(t.TempDir(), "paper.pdf")); err != nil {
		t.Fatal(err)
	}
	entries, err := d.Keeper().Record(ctx, 0, 100)
	if err != nil {
		t.Fatal(err)
	}
	told := map[string]string{}
	for _, e := range entries {
		told[e.Words] = e.Who
	}
	for words, who := range map[string]string{
		"Saved as a file: handout 1": "Wren Applecart", "Printed: handout": "Wren Applecart",
		"Client made": "Wren Applecart", "Client file opened": "Wren Applecart", "The record begins": "",
	} {
		if got, there := told[words]; !there || got != who {
			t.Errorf("%q by %q, want %q; all: %v", words, got, who, told)
		}
	}
	if err := entered.Delete(ctx, string(f.id)); err != nil {
		t.Fatal(err)
	}
	if e := newest(t, d); e.Words != "Client deleted" || e.Who != "a client who was deleted" {
		t.Errorf("newest %+v", e)
	}
	words, err := d.Keeper().CheckRecord(ctx)
	if err != nil || !regexp.MustCompile(`^The record is whole: \d+ entries since 2 March 2026`).MatchString(words) {
		t.Errorf("%q, %v", words, err)
	}
}

func TestEveryActionOfTheRecordHasPlainWords(t *testing.T) {
	for _, action := range []store.Action{
		store.Begun, store.Created, store.Opened, store.Changed, store.Printed, store.Exported,
		store.Deleted, store.Unlocked, store.BackedUp, store.Restored,
	} {
		if recordActions[action] == "" {
			t.Errorf("%s has no words", action)
		}
	}
	for _, c := range []struct {
		entry store.AuditEntry
		want  string
	}{
		{store.AuditEntry{Action: store.Changed, Detail: store.Detail{What: "plan", Number: 3}}, "Changed: plan 3"},
		{store.AuditEntry{Action: store.Changed, Detail: store.Detail{What: "identity", Number: 3}}, "Changed: name and birth date"},
		{store.AuditEntry{Action: store.Restored, Detail: store.Detail{What: "backup_of_2026-03-02"}}, "Restored: the backup of 2 March 2026"},
		{store.AuditEntry{Action: store.Unlocked, Detail: store.Detail{What: "wrong_passphrases_before", Number: 2}}, "Unlocked, after wrong passphrases: 2"},
		{store.AuditEntry{Action: store.Printed, Detail: store.Detail{What: "pocket_card"}}, "Printed: pocket card"},
		{store.AuditEntry{Action: "sung"}, "Sung"},
	} {
		if got := recordWords(c.entry); got != c.want {
			t.Errorf("%+v: %q, want %q", c.entry, got, c.want)
		}
	}
}

func TestABackupOfTheDayIsMadeOnce(t *testing.T) {
	ctx := context.Background()
	d, _ := sealedDoor(t, t.TempDir())
	enter(t, d)
	folder := t.TempDir()
	if err := d.BackUpIfDue(ctx); err != nil {
		t.Fatalf("without a folder: %v", err)
	}
	if err := d.Keeper().SetFolder(ctx, folder); err != nil {
		t.Fatal(err)
	}
	for range 2 {
		if err := d.BackUpIfDue(ctx); err != nil {
			t.Fatal(err)
		}
	}
	found, err := d.Keeper().Backups(ctx)
	if err != nil || len(found.List) != 1 || found.Due || !found.List[0].Sealed {
		t.Fatalf("found %+v, %v", found, err)
	}
	if err := os.RemoveAll(folder); err != nil {
		t.Fatal(err)
	}
	if found, err := d.Keeper().Backups(ctx); err != nil || found.Gone == "" {
		t.Errorf("the folder is gone: %+v, %v", found, err)
	}
	d.watch.now = func() time.Time { return noon.AddDate(0, 0, 1) }
	if err := d.BackUpIfDue(ctx); !errors.Is(err, store.ErrFolderGone) {
		t.Errorf("the next day: %v", err)
	}
}

// TestABackupComesBack makes a backup, loses something, and restores it with
// the recovery code of that day.
func TestABackupComesBack(t *testing.T) {
	ctx, folder, stick := context.Background(), t.TempDir(), t.TempDir()
	p := &program{place: place{folder}, clock: func() time.Time { return noon }, effort: vault.TestEffort}
	opened, err := p.Practice(ctx)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = p.close() })
	d := opened.(*door)
	code, err := d.Seal(ctx, somePhrase, func(int, int) {})
	if err != nil {
		t.Fatal(err)
	}
	entered := enter(t, d)
	f := newFile(t, entered, "Wren Applecart")
	if err := f.SaveDraft(ctx, 1, draft.Form{draft.Weight: "78 kg"}); err != nil {
		t.Fatal(err)
	}
	backup, err := d.Keeper().BackUpTo(ctx, stick)
	if err != nil {
		t.Fatal(err)
	}
	if err := entered.Delete(ctx, string(f.id)); err != nil {
		t.Fatal(err)
	}
	if found, err := p.Describe(ctx, backup.Path); err != nil || found.Clients != 1 || found.Unknown {
		t.Fatalf("described as %+v, %v", found, err)
	}
	if _, err := d.Keeper().Rehearse(ctx, backup.Path, "no"); !errors.Is(err, store.ErrWrongPassphrase) {
		t.Errorf("rehearsed with a wrong passphrase: %v", err)
	}
	if in, err := d.Keeper().Rehearse(ctx, backup.Path, somePhrase); err != nil || in.Clients != 1 {
		t.Errorf("rehearsed %+v, %v", in, err)
	}
	ready, err := d.Keeper().Prepare(ctx, backup.Path, code.String())
	if err != nil {
		t.Fatal(err)
	}
	present, known := ready.Present()
	if ready.Inside().Clients != 1 || present.Clients != 0 || !known {
		t.Errorf("inside %+v, present %+v", ready.Inside(), present)
	}
	if err := p.Restore(ctx, ready); err != nil {
		t.Fatal(err)
	}
	if opened, err = p.Practice(ctx); err != nil || !opened.Locked() {
		t.Fatalf("not open, or not locked: %v", err)
	}
	if err := opened.Unlock(ctx, somePhrase); err != nil {
		t.Fatal(err)
	}
	again := enter(t, opened.(*door))
	if found := again.Find("wren", false); len(found) != 1 {
		t.Errorf("found %v", found)
	}
	if n, err := opened.Keeper().OldCopies(ctx); err != nil || n != 1 {
		t.Errorf("%d old copies, %v", n, err)
	}
}

func TestWhatWasUnpackedIsGoneWhenTheFileIsLocked(t *testing.T) {
	ctx, folder := context.Background(), t.TempDir()
	d, _ := sealedDoor(t, folder)
	enter(t, d)
	backup, err := d.Keeper().BackUpTo(ctx, t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	if _, err := d.Keeper().Prepare(ctx, backup.Path, somePhrase); err != nil {
		t.Fatal(err)
	}
	before, err := filepath.Glob(filepath.Join(folder, "*.restoring"))
	if err != nil || len(before) != 1 {
		t.Fatalf("unpacked %v, %v", before, err)
	}
	d.Lock(ctx)
	if after, err := filepath.Glob(filepath.Join(folder, "*.restoring")); err != nil || len(after) != 0 {
		t.Errorf("still there: %v, %v", after, err)
	}
}

func TestARehearsalThatWasKilledLeavesNothing(t *testing.T) {
	folder := t.TempDir()
	left := filepath.Join(folder, "handbreadth-rehearsal-1")
	if err := os.MkdirAll(filepath.Join(left, "clients.db"), 0o700); err != nil {
		t.Fatal(err)
	}
	newDoor(t, folder)
	if _, err := os.Stat(left); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("still there: %v", err)
	}
}

func TestTheLookIsKnownBeforeUnlocking(t *testing.T) {
	folder := t.TempDir()
	d, _ := sealedDoor(t, folder)
	entered := enter(t, d)
	want := ui.Settings{Name: "Quillow Lantern", Look: ui.LookDark, TextSize: 130}
	if err := entered.SaveSettings(context.Background(), want); err != nil {
		t.Fatal(err)
	}
	if got := (place{folder}).look(); got.Look != ui.LookDark || got.TextSize != 130 || got.Name != "" {
		t.Errorf("known is %+v", got)
	}
	text, err := os.ReadFile(filepath.Join(folder, lookName))
	if err != nil || strings.Contains(string(text), "Quillow") {
		t.Errorf("the file has %q, %v", text, err)
	}
}

// A name that is read late never takes the place of one that was changed since.
func TestANewerNameWins(t *testing.T) {
	d := newDesk(t, t.TempDir())
	f := newFile(t, d, "Wren Applecart")
	if err := f.Settle(context.Background(), draft.Form{draft.Name: "Wren Hale"}); err != nil {
		t.Fatal(err)
	}
	d.know(f.id, identity{Name: "Wren Applecart", Born: unit.Date{}}, 1)
	if row, _ := d.Row(string(f.id)); row.Name != "Wren Hale" {
		t.Errorf("the list has %q", row.Name)
	}
	d.know("nobody", identity{Name: "Nobody"}, 1)
	if _, there := d.Row("nobody"); there {
		t.Error("a client who is gone came back")
	}
}

func TestOnlyWhatWasPreparedHereIsRestored(t *testing.T) {
	p := &program{place: place{t.TempDir()}, clock: func() time.Time { return noon }}
	if err := p.Restore(context.Background(), nil); !errors.Is(err, errNotOurs) {
		t.Errorf("got %v", err)
	}
}

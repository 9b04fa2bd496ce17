package main

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"sync"
	"time"

	"handbreadth/reports"
	"handbreadth/store"
	"handbreadth/store/vault"
	"handbreadth/ui"
	"handbreadth/ui/task"
)

// door is the open file of a practice, locked or not.
type door struct {
	place   place
	records *store.Store
	watch   *watch
	shelf   *shelf
	demo    bool

	mu    sync.Mutex
	desk  *desk      // nil until it was entered, and while it is locked
	ready *restoring // a backup that is unpacked beside the file; nil: none
}

var _ ui.Door = (*door)(nil)

// openDoor opens the practice's own file or the demo, making it where it is
// missing. The error is one of the store.
func openDoor(ctx context.Context, p place, demo bool, clock func() time.Time, effort vault.Effort) (*door, error) {
	d := &door{place: p, watch: &watch{clock}, shelf: p.shelf(demo), demo: demo}
	records, err := store.Open(ctx, p.file(demo), store.Options{
		Clock: func() time.Time { return d.watch.now() }, Effort: effort,
	})
	if err != nil {
		return nil, err
	}
	d.records = records
	if err := errors.Join(d.shelf.empty(), p.sweepTrials()); err != nil { // what an earlier run that was killed left
		return nil, errors.Join(err, records.Close())
	}
	return d, nil
}

// sweepTrials removes what a rehearsal that was killed left.
func (p place) sweepTrials() error {
	left, err := filepath.Glob(filepath.Join(p.folder, "handbreadth-rehearsal-*"))
	for _, folder := range left {
		err = errors.Join(err, os.RemoveAll(folder))
	}
	return err
}

// close lets go of the file and empties the shelf of papers.
func (d *door) close() error {
	d.forget()
	return errors.Join(d.records.Close(), d.shelf.empty())
}

// forget drops everything that was read.
func (d *door) forget() {
	d.mu.Lock()
	former, ready := d.desk, d.ready
	d.desk, d.ready = nil, nil
	d.mu.Unlock()
	if former != nil {
		former.empty()
	}
	if ready != nil {
		_ = ready.Discard() // the next opening removes what is left
	}
}

// Demo reports whether this is the invented practice.
func (d *door) Demo() bool { return d.demo }

// Sealed reports whether the file has a passphrase.
func (d *door) Sealed() bool { return d.records.Sealed() }

// Locked reports whether the file is locked.
func (d *door) Locked() bool { return d.records.Locked() }

// Enter reads what the list needs; the demo is filled where it is empty.
func (d *door) Enter(ctx context.Context) (ui.Desk, error) {
	entered, err := enterDesk(ctx, d.records, d.watch, d.shelf)
	if err != nil {
		return nil, err
	}
	if d.demo {
		err = entered.readyDemo(ctx)
	} else {
		entered.remember = d.place.remember
		d.place.remember(entered.Settings())
	}
	if err != nil {
		return nil, err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	d.desk = entered
	return entered, nil
}

// Lock drops everything that was read, takes the keys out of memory and empties
// the shelf. A paper that another program holds open stays until the end or the
// next start.
func (d *door) Lock(context.Context) {
	d.forget()
	d.records.Lock()
	_ = d.shelf.empty()
}

// Advise judges a passphrase; the names of the practice are no secret.
func (d *door) Advise(passphrase string) ui.Advice {
	var own []string
	d.mu.Lock()
	if d.desk != nil {
		s := d.desk.Settings()
		own = []string{s.Name, s.Practitioner}
	}
	d.mu.Unlock()
	return advise(passphrase, own...)
}

func advise(passphrase string, own ...string) ui.Advice {
	a := vault.Advise(passphrase, own...)
	return ui.Advice{Accepted: a.Accepted, Good: a.Strength == vault.Good, Words: a.Words}
}

// Wait is how long to wait until the next passphrase may be tried.
func (d *door) Wait() time.Duration { return d.records.UnlockWait() }

// Unlock opens the file with its passphrase.
func (d *door) Unlock(ctx context.Context, passphrase string) error {
	return d.records.Unlock(ctx, passphrase)
}

// Seal sets the first passphrase. The code is there as soon as it holds.
func (d *door) Seal(ctx context.Context, passphrase string, progress ui.Progress) (ui.Code, error) {
	code, err := d.records.SetPassphrase(ctx, passphrase, store.Progress(progress))
	return shown(code), err
}

// Change puts a new passphrase in the place of the old one.
func (d *door) Change(ctx context.Context, old, passphrase string) error {
	return d.records.ChangePassphrase(ctx, old, passphrase)
}

// Renew makes a new recovery code.
func (d *door) Renew(ctx context.Context, passphrase string) (ui.Code, error) {
	code, err := d.records.NewRecoveryCode(ctx, passphrase)
	return shown(code), err
}

// Recover opens the file with the recovery code, and makes a new one.
func (d *door) Recover(ctx context.Context, code ui.Code, passphrase string) (ui.Code, error) {
	found, err := readCode(code.String())
	if err != nil {
		return ui.Code{}, err
	}
	if err := d.records.Recover(ctx, found, passphrase); err != nil {
		return ui.Code{}, err
	}
	return d.Renew(ctx, passphrase)
}

// ReadCode reads a recovery code as people type it.
func (d *door) ReadCode(typed string) (ui.Code, error) {
	code, err := readCode(typed)
	return shown(code), err
}

// Confirm notes that the code is on a sheet that was tried.
func (d *door) Confirm(ctx context.Context, code ui.Code) error {
	found, err := readCode(code.String())
	if err != nil {
		return err
	}
	return d.records.ConfirmRecoveryCode(ctx, found)
}

// readCode reads a recovery code; the error is a task.Failure.
func readCode(typed string) (vault.RecoveryCode, error) {
	code, err := vault.ParseRecoveryCode(typed)
	var slip *vault.CodeProblem
	if errors.As(err, &slip) {
		return code, &task.Failure{Words: slip.Plain, Cause: err}
	}
	return code, err
}

func shown(code vault.RecoveryCode) ui.Code { return ui.Code{Groups: code.Groups()} }

// SheetName is a name for the file of the recovery sheet.
func (d *door) SheetName() string { return "Handbreadth recovery sheet.pdf" }

// whatSheet is what the record calls the recovery sheet.
const whatSheet = "recovery_sheet"

// PrintSheet hands the recovery sheet to the system's viewer or printer.
func (d *door) PrintSheet(ctx context.Context, code ui.Code) error {
	document, err := d.sheet(ctx, code)
	if err != nil {
		return err
	}
	path, err := d.shelf.put(d.SheetName(), document)
	if err != nil {
		return err
	}
	if err := handOver(ctx, path); err != nil {
		return err
	}
	return d.records.Note(ctx, store.Printed, "", store.Detail{What: whatSheet})
}

// SaveSheet writes the recovery sheet to a file.
func (d *door) SaveSheet(ctx context.Context, code ui.Code, path string) error {
	document, err := d.sheet(ctx, code)
	if err != nil {
		return err
	}
	if err := writePrivate(path, document); err != nil {
		return err
	}
	return d.records.Note(ctx, store.Exported, "", store.Detail{What: whatSheet})
}

func (d *door) sheet(ctx context.Context, code ui.Code) ([]byte, error) {
	settings, err := loadSettings(ctx, d.records)
	if err != nil {
		return nil, err
	}
	options := reports.Options{Brand: brand(settings)}
	if settings.PaperSize() == ui.PaperLetter {
		options.Paper = reports.Letter
	}
	return reports.RecoverySheet(reports.Recovery{Groups: code.Groups, Made: today(d.watch)}, options)
}

// BackUpIfDue makes the backup of the day where it is not made yet.
func (d *door) BackUpIfDue(ctx context.Context) error {
	plan, err := d.records.BackupPlan(ctx)
	if err != nil || !store.BackupDue(plan, d.watch.now()).Now {
		return err
	}
	_, err = d.records.BackUp(ctx)
	return err
}

// Keeper keeps the file safe.
func (d *door) Keeper() ui.Keeper { return keeper{d} }

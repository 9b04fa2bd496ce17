package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"handbreadth/domain/unit"
	"handbreadth/store"
	"handbreadth/ui"
)

// keeper keeps the open file of a practice safe.
type keeper struct{ door *door }

var _ ui.Keeper = keeper{}

// State is what is known at once.
func (k keeper) State() ui.KeepState {
	r := k.door.records
	return ui.KeepState{Demo: k.door.demo, Sealed: r.Sealed(), Unfinished: r.Unfinished(), SheetTried: r.RecoveryConfirmed()}
}

// TryCode notes that the recovery sheet is good, where it is.
func (k keeper) TryCode(ctx context.Context, typed string) error {
	code, err := readCode(typed)
	if err != nil {
		return err
	}
	return k.door.records.ConfirmRecoveryCode(ctx, code)
}

// ChangeKey seals everything anew.
func (k keeper) ChangeKey(ctx context.Context, progress ui.KeyMoves) error {
	return k.door.records.RotateKey(ctx, store.Progress(progress))
}

// Resume goes on with an interrupted sealing or change of the key.
func (k keeper) Resume(ctx context.Context, progress ui.KeyMoves) error {
	return k.door.records.Resume(ctx, store.Progress(progress))
}

// Backups tells what the folder for backups has.
func (k keeper) Backups(ctx context.Context) (b ui.Backups, err error) {
	plan, err := k.door.records.BackupPlan(ctx)
	if err != nil {
		return b, err
	}
	due := store.BackupDue(plan, k.door.watch.now())
	b = ui.Backups{Folder: plan.Folder, Last: plan.Last, Due: due.Now, DueWords: due.Words()}
	if plan.Folder == "" {
		return b, nil
	}
	found, err := store.Backups(plan.Folder)
	if errors.Is(err, store.ErrFolderGone) {
		b.Gone = store.Plain(err)
		return b, nil
	}
	for _, one := range found.List {
		b.List = append(b.List, listed(one))
	}
	for _, path := range found.Unreadable {
		b.Unreadable = append(b.Unreadable, filepath.Base(path))
	}
	return b, err
}

func listed(b store.Backup) ui.Backup {
	return ui.Backup{Path: b.Path, Bytes: b.Bytes, Inside: inside(b.Inside)}
}

func inside(i store.Inside) ui.Inside {
	return ui.Inside{
		MadeAt: i.MadeAt, Clients: i.Clients, Visits: i.Visits, Plans: i.Plans,
		LastChange: i.LastChange, Sealed: i.Sealed, Practice: i.Practice,
	}
}

// SetFolder chooses the folder for backups.
func (k keeper) SetFolder(ctx context.Context, folder string) error {
	return k.door.records.SetBackupFolder(ctx, folder)
}

// BackUp makes a backup in the folder for backups.
func (k keeper) BackUp(ctx context.Context) (ui.Backup, error) {
	b, err := k.door.records.BackUp(ctx)
	return listed(b), err
}

// BackUpTo makes a backup in another folder.
func (k keeper) BackUpTo(ctx context.Context, folder string) (ui.Backup, error) {
	b, err := k.door.records.BackUpTo(ctx, folder)
	return listed(b), err
}

// Rehearse restores a backup on trial, in a folder of its own beside the file.
func (k keeper) Rehearse(ctx context.Context, path, secret string) (ui.Inside, error) {
	found, err := store.Rehearse(ctx, path, k.door.place.folder, secretOf(secret))
	return inside(found), err
}

// secretOf takes what was typed as a recovery code where it can be one: no
// passphrase has its checking letters by chance.
func secretOf(typed string) store.Secret {
	if code, err := readCode(typed); err == nil {
		return store.WithRecoveryCode(code)
	}
	if typed == "" {
		return store.Secret{}
	}
	return store.WithPassphrase(typed)
}

// Describe tells what a backup file says to have.
func (k keeper) Describe(_ context.Context, path string) (ui.Backup, error) { return describe(path) }

// describe finds a backup among those of its folder. A file that is not listed
// there, for example under another name, is looked at when it is unpacked.
func describe(path string) (ui.Backup, error) {
	found, err := store.Backups(filepath.Dir(path))
	if err != nil {
		return ui.Backup{}, err
	}
	for _, one := range found.List {
		if one.Path == path {
			return listed(one), nil
		}
	}
	return ui.Backup{Path: path, Unknown: true}, nil
}

// Prepare unpacks a backup beside the file.
func (k keeper) Prepare(ctx context.Context, path, secret string) (ui.Restoring, error) {
	ready, err := prepare(ctx, k.door.place, path, secret)
	if err != nil {
		return nil, err
	}
	if present, err := k.door.records.Inside(ctx); err == nil {
		ready.present = &present
	}
	k.door.mu.Lock()
	defer k.door.mu.Unlock()
	k.door.ready = ready
	return ready, nil
}

// restoring is a backup that is unpacked beside the practice's file.
type restoring struct {
	unpacked *store.Restoring
	present  *store.Inside // nil: not known
}

func prepare(ctx context.Context, p place, path, secret string) (*restoring, error) {
	unpacked, err := store.PrepareRestore(ctx, path, p.file(false), secretOf(secret))
	if err != nil {
		return nil, err
	}
	return &restoring{unpacked: unpacked}, nil
}

// Inside tells what is in the backup, counted.
func (r *restoring) Inside() ui.Inside { return inside(r.unpacked.Inside) }

// Present tells what the file in use has.
func (r *restoring) Present() (ui.Inside, bool) {
	if r.present == nil {
		return ui.Inside{}, false
	}
	return inside(*r.present), true
}

// Discard removes what was unpacked.
func (r *restoring) Discard() error { return r.unpacked.Discard() }

// Record reads entries of the record, the newest first.
func (k keeper) Record(ctx context.Context, before int64, most int) ([]ui.Entry, error) {
	found, err := k.door.records.Trail(ctx, store.TrailQuery{Before: before, Limit: most})
	if err != nil {
		return nil, err
	}
	who := k.door.subjects()
	entries := make([]ui.Entry, len(found))
	for i, e := range found {
		entries[i] = ui.Entry{Number: e.Number, At: e.At, Words: recordWords(e), Who: who[e.About]}
		if e.About != "" && entries[i].Who == "" {
			entries[i].Who = "a client who was deleted"
		}
	}
	return entries, nil
}

// subjects tells which client the entries of the record mean.
func (d *door) subjects() map[string]string {
	d.mu.Lock()
	entered := d.desk
	d.mu.Unlock()
	names := map[string]string{}
	if entered == nil {
		return names
	}
	entered.mu.Lock()
	defer entered.mu.Unlock()
	for id, p := range entered.people {
		names[store.Subject(id)] = p.identity.Name
	}
	return names
}

// recordNames are what the record's short names mean.
var recordNames = map[string]string{
	string(store.KindIdentity): "name and birth date", string(kindReferral): "referral", string(kindHandout): "handout",
	string(store.FormIntake): "visit", "plan": "plan", settingPractice: "settings", settingLogo: "logo",
	"backup.folder": "folder for backups", whatSheet: "recovery sheet", "by_hand": "into another folder",
	"recovery_code": "with the recovery code", "old_copies": "old copies", "next_visit": "next visit",
}

// recordActions are the words for what was done.
var recordActions = map[store.Action]string{
	store.Begun: "The record begins", store.Created: "Client made", store.Opened: "Client file opened",
	store.Changed: "Changed", store.Printed: "Printed", store.Exported: "Saved as a file",
	store.Deleted: "Deleted", store.Unlocked: "Unlocked", store.BackedUp: "Backed up", store.Restored: "Restored",
}

// recordWords tells an entry in plain words.
func recordWords(e store.AuditEntry) string {
	words, known := recordActions[e.Action]
	switch {
	case !known:
		return e.Words()
	case e.Action == store.Unlocked && e.Detail.Number > 0:
		return fmt.Sprintf("Unlocked, after wrong passphrases: %d", e.Detail.Number)
	case e.Detail.What == "" && e.Action == store.Deleted:
		return "Client deleted"
	case e.Detail.What == "":
		return words
	}
	if day, of := strings.CutPrefix(e.Detail.What, "backup_of_"); of {
		if at, err := time.Parse(time.DateOnly, day); err == nil {
			return words + ": the backup of " + unit.FromTime(at).Long()
		}
	}
	what, named := recordNames[e.Detail.What]
	if !named {
		what = strings.NewReplacer("_", " ", ".", " ").Replace(e.Detail.What)
	}
	if e.Detail.Number > 0 && (e.Detail.What == "plan" || e.Detail.What == string(kindHandout)) {
		what = fmt.Sprintf("%s %d", what, e.Detail.Number)
	}
	return words + ": " + what
}

// CheckRecord walks the whole record.
func (k keeper) CheckRecord(ctx context.Context) (string, error) {
	state, err := k.door.records.CheckTrail(ctx)
	if err != nil {
		return "", err
	}
	return fmt.Sprintf("The record is whole: %d entries since %s, none removed or changed.",
		state.Entries, unit.FromTime(state.First.Local()).Long()), nil
}

// OldCopies counts the copies beside the file.
func (k keeper) OldCopies(context.Context) (int, error) {
	copies, err := k.door.records.OldCopies()
	return len(copies), err
}

// RemoveOldCopies removes them for good.
func (k keeper) RemoveOldCopies(ctx context.Context) (int, error) {
	return k.door.records.RemoveOldCopies(ctx)
}

// today is the day at the desk.
func today(w *watch) unit.Date { return unit.FromTime(w.now()) }

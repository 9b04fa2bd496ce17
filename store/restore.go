package store

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"time"

	"github.com/jmoiron/sqlx"

	"handbreadth/store/vault"
)

// restoringMark ends the name of a file that a backup was unpacked into and
// that has not taken the place of the client file yet.
const restoringMark = ".restoring"

// restoredNote tells the next opening to write the restore into the audit trail.
const restoredNote = "Restored"

// Restoring is a backup unpacked beside the client file, completely checked.
type Restoring struct {
	Inside // counted, not as the header says

	path, fresh string
}

// PrepareRestore unpacks a backup into a new file beside the client file and
// checks all of it. The client file, which may be open, is not touched; there
// need not be one. It fails with ErrNotABackup, ErrDamaged, ErrNewerVersion,
// ErrFolderGone, ErrDiskFull, ErrWrongPassphrase or ErrWrongCode. Nothing is
// then left behind.
func PrepareRestore(ctx context.Context, backup, clientFile string, secret Secret) (*Restoring, error) {
	path, err := settle(clientFile)
	if err != nil {
		return nil, err
	}
	r := &Restoring{path: path, fresh: path + restoringMark}
	if err := writeBeside(r.fresh, func(fresh string) error { return r.fill(ctx, backup, fresh, secret) }); err != nil {
		return nil, restoreTrouble(backup, err)
	}
	return r, nil
}

func (r *Restoring) fill(ctx context.Context, backup, fresh string, secret Secret) error {
	out, err := os.OpenFile(fresh, os.O_WRONLY|os.O_TRUNC, fileMode)
	if err != nil {
		return fileTrouble(err)
	}
	var open opener
	if !secret.isZero() {
		open = secret.open
	}
	promised, err := unpack(ctx, backup, out, open)
	if err := errors.Join(err, fileTrouble(out.Close())); err != nil {
		return err
	}
	found := backupHeader{Inside: promised.Inside}
	if err := inspectCopy(ctx, fresh, &found); err != nil {
		return err
	}
	if found.Schema != promised.Schema || !maps.Equal(found.Rows, promised.Rows) {
		return backupDamaged(fmt.Errorf("schema %d with %v, promised %d with %v",
			found.Schema, found.Rows, promised.Schema, promised.Rows))
	}
	r.Inside = found.Inside
	return noteRestore(ctx, fresh, promised.MadeAt)
}

// noteRestore leaves word in the new file that it comes from a backup.
func noteRestore(ctx context.Context, path string, madeAt time.Time) (err error) {
	db, err := openPool(path, writerSettings, 1)
	if err != nil {
		return explain(err)
	}
	defer func() { err = errors.Join(err, explain(db.Close())) }()
	text, err := json.Marshal(madeAt.UTC())
	if err != nil {
		return err
	}
	return inTransaction(ctx, db, nil, func(tx *sqlx.Tx) error {
		return putMeta(ctx, tx, restoredNote, string(text))
	})
}

// Discard removes the unpacked file.
func (r *Restoring) Discard() error {
	return fileTrouble(removeAll(append(companions(r.fresh), r.fresh)))
}

// Exchange puts the unpacked file in the place of the client file, which must
// be closed, and keeps that beside it under the name that it returns (empty
// where there was none). Whenever it is interrupted, the present file or the
// restored one is in its place, whole. It fails with ErrInUse where the file is
// open, and with ErrDiskFull; the file is then as it was.
func (r *Restoring) Exchange(ctx context.Context, now time.Time) (kept string, err error) {
	lock, err := takeLock(r.path + lockMark)
	if err != nil {
		return "", err
	}
	defer func() { err = errors.Join(err, lock.release()) }()
	if _, err := os.Stat(r.fresh); err != nil {
		return "", restoreTrouble(r.fresh, fileTrouble(err))
	}
	if kept, err = keepPresent(ctx, r.path, now); err != nil {
		return "", err
	}
	// A log of the old file must never meet the new one.
	if err := removeAll(companions(r.path)); err != nil {
		return kept, fileTrouble(err)
	}
	if err := os.Rename(r.fresh, r.path); err != nil {
		return kept, fileTrouble(err)
	}
	return kept, fileTrouble(syncFolder(filepath.Dir(r.path)))
}

// keepPresent copies the present file, with its log where that cannot be brought
// into it, and returns the name of the copy.
func keepPresent(ctx context.Context, path string, now time.Time) (string, error) {
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) && !logWaits(path) {
		return "", nil
	}
	bringLogIn(ctx, path)
	kept := unusedName(path+restoreMark+now.UTC().Format(nameLayout), "")
	for _, one := range [][2]string{{logOf(path), logOf(kept)}, {path, kept}} { // the file last: then all is there
		if _, err := os.Stat(one[0]); errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err := writeBeside(one[1], func(fresh string) error { return copyFile(ctx, one[0], fresh) }); err != nil {
			return "", err
		}
	}
	return kept, nil
}

// bringLogIn closes a file that a killed program left open. A damaged one stays
// as it is: its log is then kept beside it.
func bringLogIn(ctx context.Context, path string) {
	if !logWaits(path) || checkHeader(path) != nil {
		return
	}
	db, err := openPool(path, writerSettings, 1)
	if err != nil {
		return
	}
	_ = db.PingContext(ctx)
	_ = db.Close()
}

func copyFile(ctx context.Context, from, to string) error {
	in, err := os.Open(from)
	if err != nil {
		return fileTrouble(err)
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_TRUNC, fileMode)
	if err != nil {
		return fileTrouble(err)
	}
	_, err = io.Copy(out, stoppable{ctx, in})
	if err := errors.Join(err, out.Close()); err != nil {
		return fileTrouble(err)
	}
	return nil
}

// settleRestore writes a restore into the audit trail. While it cannot, because
// the disk is full or the keys are not there, the note waits.
func (s *Store) settleRestore(ctx context.Context) error {
	madeAt, err := s.Meta(ctx, restoredNote)
	if errors.Is(err, ErrNotFound) {
		return nil
	}
	if err != nil {
		return err
	}
	var at time.Time
	if err := json.Unmarshal([]byte(madeAt), &at); err != nil {
		return fail(ErrDamaged, err)
	}
	return s.write(ctx, func(tx *sqlx.Tx) error {
		about := Detail{What: "backup_of_" + at.UTC().Format(time.DateOnly)}
		if err := s.note(ctx, tx, Restored, "", about); err != nil {
			return err
		}
		_, err := run(ctx, tx, "DELETE FROM meta WHERE name = ?", restoredNote)
		return err
	})
}

// canWait reports whether an entry that could not be written yet keeps the file
// from being used: a full disk or a locked key does not.
func canWait(err error) bool { return errors.Is(err, ErrDiskFull) || errors.Is(err, vault.ErrLocked) }

// Names of a rehearsal. The lock tells one that goes on from what a killed one
// left.
const (
	trialPrefix = "handbreadth-rehearsal-"
	trialLock   = "rehearsal.lock"
)

// sweepTrial removes what a killed rehearsal left.
func sweepTrial(folder string) error {
	lock, err := takeLock(filepath.Join(folder, trialLock))
	if errors.Is(err, ErrInUse) {
		return nil
	}
	if err != nil {
		return err
	}
	return errors.Join(lock.release(), fileTrouble(os.RemoveAll(folder)))
}

// trialEffort is enough for a passphrase that is random and forgotten at once.
const trialEffort vault.Effort = 10

// Rehearse restores a backup on trial into a new private folder below folder,
// opens everything in it, and removes it again. It returns what is inside. It
// fails as PrepareRestore, Open and Check do.
func Rehearse(ctx context.Context, backup, folder string, secret Secret) (in Inside, err error) {
	trial, err := os.MkdirTemp(folder, trialPrefix)
	if err != nil {
		return in, fileTrouble(err)
	}
	lock, err := takeLock(filepath.Join(trial, trialLock))
	if err != nil {
		return in, errors.Join(err, os.RemoveAll(trial))
	}
	defer func() { err = errors.Join(err, lock.release(), fileTrouble(os.RemoveAll(trial))) }()
	path := filepath.Join(trial, "clients.db")
	r, err := PrepareRestore(ctx, backup, path, secret)
	if err != nil {
		return in, err
	}
	if _, err := r.Exchange(ctx, time.Now()); err != nil {
		return in, err
	}
	s, err := Open(ctx, path, Options{Effort: trialEffort})
	if err != nil {
		return in, err
	}
	defer func() { err = errors.Join(err, s.Close()) }()
	if err := secret.unlock(ctx, s); err != nil {
		return in, err
	}
	return r.Inside, s.Check(ctx)
}

// restoreTrouble gives an error the words for a restore.
func restoreTrouble(backup string, err error) error {
	if _, gone := os.Stat(backup); errors.Is(gone, fs.ErrNotExist) {
		return &UserError{
			Plain: "The backup is not there any more. If it is on a stick or another disk, plug that in and try again. " +
				"Your client file is as it was.",
			kind: ErrFolderGone, cause: err,
		}
	}
	if errors.Is(err, ErrDiskFull) {
		return &UserError{
			Plain: "There is no room to restore the backup beside your client file, which is as it was. " +
				"Make some room and try again.",
			kind: ErrDiskFull, cause: err,
		}
	}
	return err
}

package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"github.com/jmoiron/sqlx"
)

// Backup is a backup file and what it says to have.
type Backup struct {
	Path  string
	Bytes int64
	Inside
}

// Names in the file's own notes and settings.
const (
	lastBackupNote = "Backup.last"   // the moment of the last one that succeeded
	practiceNote   = "Practice"      // the random name of this practice's file
	folderSetting  = "backup.folder" // sealed, for a path may have a person's name
)

// SetBackupFolder chooses the folder for backups, which must be there; an empty
// one is none. A small file is written into it, so that another stick, or the
// empty place where a stick was, is not taken for it. It fails with
// ErrFolderGone or ErrReadOnlyFolder.
func (s *Store) SetBackupFolder(ctx context.Context, folder string) error {
	if folder != "" {
		var err error
		if folder, err = filepath.Abs(folder); err != nil {
			return fail(ErrFolderGone, err)
		}
		if err := markFolder(folder); err != nil {
			return backupTrouble(folder, err)
		}
	}
	return s.PutSetting(ctx, folderSetting, []byte(folder))
}

// BackupPlan returns where backups go and when the last one succeeded.
func (s *Store) BackupPlan(ctx context.Context) (p BackupPlan, err error) {
	folder, err := s.Setting(ctx, folderSetting)
	if err != nil && !errors.Is(err, ErrNotFound) {
		return p, err
	}
	p.Folder = string(folder.Body)
	note, err := s.Meta(ctx, lastBackupNote)
	if errors.Is(err, ErrNotFound) {
		return p, nil
	}
	if err != nil {
		return p, err
	}
	var last instant
	err = last.Scan(note)
	p.Last = last.Time
	return p, err
}

// BackUp makes a backup in the folder of the plan, verifies it, and removes
// those that newer ones supersede (7 days, 5 weeks and 12 months stay). Reading
// and saving go on meanwhile. It fails with ErrFolderGone, ErrReadOnlyFolder,
// ErrDiskFull, ErrLocked or ErrDamaged; the earlier backups are then all there.
// With ErrOldBackupsLeft the backup is made and returned. Backups are encrypted
// where the file has a passphrase; where it has none, whoever has the backup can
// read it.
func (s *Store) BackUp(ctx context.Context) (Backup, error) {
	plan, err := s.BackupPlan(ctx)
	if err != nil {
		return Backup{}, err
	}
	if plan.Folder == "" {
		return Backup{}, &UserError{Plain: Due{Why: DueNoFolder}.Words(), kind: ErrFolderGone}
	}
	if !isMarked(plan.Folder) {
		return Backup{}, fail(ErrFolderGone, fmt.Errorf("%s has no mark", plan.Folder))
	}
	b, err := s.backUpTo(ctx, plan.Folder)
	if err != nil {
		return Backup{}, err
	}
	if err := s.noteBackup(ctx, b.MadeAt); err != nil {
		return Backup{}, err
	}
	return b, rotate(plan.Folder, b)
}

// BackUpTo makes and verifies one backup in any folder, for example on a stick
// to take home. The plan does not change, and nothing is removed.
func (s *Store) BackUpTo(ctx context.Context, folder string) (Backup, error) {
	b, err := s.backUpTo(ctx, folder)
	if err != nil {
		return Backup{}, err
	}
	return b, s.Note(ctx, BackedUp, "", Detail{What: "by_hand"})
}

func (s *Store) noteBackup(ctx context.Context, at time.Time) error {
	return s.write(ctx, func(tx *sqlx.Tx) error {
		if err := putMeta(ctx, tx, lastBackupNote, at.UTC().Format(instantLayout)); err != nil {
			return err
		}
		return s.note(ctx, tx, BackedUp, "", Detail{})
	})
}

func (s *Store) backUpTo(ctx context.Context, folder string) (b Backup, err error) {
	if info, err := os.Stat(folder); err != nil || !info.IsDir() {
		return b, fail(ErrFolderGone, err)
	}
	if !s.backingUp.TryLock() {
		return b, &UserError{Plain: "A backup is being made at this moment. Wait until it is done.", kind: ErrInUse}
	}
	defer s.backingUp.Unlock()
	c, err := s.container()
	if err != nil {
		return b, err
	}
	practice, err := s.practice(ctx)
	if err != nil {
		return b, err
	}
	if err := sweepFolder(folder, practice); err != nil {
		return b, backupTrouble(folder, err)
	}
	// The copy is made and checked beside the file, where everything else of the
	// practice lies; only what is encrypted leaves that folder.
	working := s.path + copyMark
	defer func() { err = errors.Join(err, removeAll(append(companions(working), working))) }()
	h := backupHeader{Inside: Inside{MadeAt: s.now().Time, Practice: practice, Sealed: c != nil}}
	if err := s.copyOut(ctx, working, &h); err != nil {
		return b, backupTrouble("", err)
	}
	b = Backup{Path: backupName(folder, h.Inside), Inside: h.Inside}
	if err := writeBackup(ctx, b.Path, working, h, c); err != nil {
		return Backup{}, backupTrouble(folder, err)
	}
	info, err := os.Stat(b.Path)
	if err != nil {
		return Backup{}, backupTrouble(folder, fileTrouble(err))
	}
	b.Bytes = info.Size()
	return b, nil
}

// copyMark ends the name of the copy that a backup is made from.
const copyMark = ".copying"

// Inside counts what the open file has, to compare a backup with.
func (s *Store) Inside(ctx context.Context) (in Inside, err error) {
	if in.Practice, err = s.practice(ctx); err != nil {
		return in, err
	}
	err = s.read(ctx, func(tx *sqlx.Tx) error {
		if err := get(ctx, tx, &in.Schema, "SELECT max(version_id) FROM goose_db_version"); err != nil {
			return err
		}
		return look(ctx, tx, &in)
	})
	in.MadeAt = s.now().Time
	return in, err
}

// practice returns the random name of this practice's file, which its backups
// carry, so that those of two practices in one folder are told apart.
func (s *Store) practice(ctx context.Context) (name string, err error) {
	name, err = s.Meta(ctx, practiceNote)
	if !errors.Is(err, ErrNotFound) {
		return name, err
	}
	name = newID[string]()
	err = s.write(ctx, func(tx *sqlx.Tx) error {
		if _, err := run(ctx, tx, "INSERT INTO meta (name, value) VALUES (?, ?) ON CONFLICT (name) DO NOTHING",
			practiceNote, name); err != nil {
			return err
		}
		return get(ctx, tx, &name, "SELECT value FROM meta WHERE name = ?", practiceNote)
	})
	return name, err
}

// backupTrouble gives an error the words for a backup. Where the folder is gone
// by now, that is what the person needs to know.
func backupTrouble(folder string, err error) error {
	if err == nil {
		return nil
	}
	if folder != "" {
		if _, gone := os.Stat(folder); errors.Is(gone, fs.ErrNotExist) {
			return fail(ErrFolderGone, err)
		}
	}
	for _, known := range backupWords {
		if errors.Is(err, known.kind) {
			return &UserError{Plain: known.words, kind: known.kind, cause: err}
		}
	}
	return err
}

// backupWords are the words for a backup; the first that fits counts.
var backupWords = []struct {
	kind  error
	words string
}{
	{ErrDiskFull, "There is no room for the backup, so none was made; the earlier ones are all there. " +
		"Make some room, or choose another folder."},
	{ErrReadOnlyFolder, "Handbreadth cannot write in the folder for backups, so none was made. " +
		"Choose a folder that you may write in."},
	{ErrDisk, "The backup could not be written and read back without a fault, so it was not kept. " +
		"The disk or stick may be failing: choose another folder."},
	{ErrDamaged, "The client file is damaged, so no backup was made of it; the earlier ones are all there. " +
		"Close Handbreadth and restore the latest one."},
}

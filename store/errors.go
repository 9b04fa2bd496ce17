package store

import (
	"context"
	"database/sql"
	"errors"

	"handbreadth/domain/unit"
	"handbreadth/store/vault"
)

// The sentinels that a caller may test for with errors.Is. Each has plain words
// for the person at the desk, which [Plain] returns.
var (
	// ErrInUse: another copy of the program, or another program, has the file.
	ErrInUse = errors.New("file is in use")
	// ErrReadOnlyFolder: the folder or the file cannot be written.
	ErrReadOnlyFolder = errors.New("folder or file cannot be written")
	// ErrDamaged: not a database, cut short, or inconsistent inside.
	ErrDamaged = errors.New("file is damaged")
	// ErrForeign: a sound database that another program made.
	ErrForeign = errors.New("file belongs to another program")
	// ErrNewerVersion: written by a newer version of this program.
	ErrNewerVersion = errors.New("file is from a newer version")
	// ErrDiskFull: no room left; nothing of the refused change was kept.
	ErrDiskFull = errors.New("disk is full")
	// ErrDisk: the disk reported a fault while reading or writing.
	ErrDisk = errors.New("disk fault")
	// ErrUpdate: an older file could not be brought up to date; it is as it was.
	ErrUpdate = errors.New("file could not be brought up to date")
	// ErrNotFound: no such client, record, draft, intake, plan or setting.
	ErrNotFound = errors.New("not found")
	// ErrConflict: someone saved a newer version since the caller read.
	ErrConflict = errors.New("a newer version was saved meanwhile")
	// ErrImmutable: what is kept for good cannot be changed or removed.
	ErrImmutable = errors.New("kept entries cannot be changed")
	// ErrExists: a file of that name is already there and was left alone.
	ErrExists = errors.New("file already exists")
	// ErrTracesLeft: the client is deleted, but the file could not be wiped yet.
	ErrTracesLeft = errors.New("deleted, traces not yet wiped")
	// ErrLocked: the file has a passphrase that was not given yet.
	ErrLocked = vault.ErrLocked
	// ErrNotSealed: the file has no passphrase.
	ErrNotSealed = errors.New("file has no passphrase")
	// ErrAlreadySealed: the file has a passphrase already.
	ErrAlreadySealed = errors.New("file has a passphrase already")
	// ErrWrongPassphrase: not the passphrase of this file.
	ErrWrongPassphrase = errors.New("wrong passphrase")
	// ErrTooSoon: several wrong passphrases; see Store.UnlockWait.
	ErrTooSoon = errors.New("too soon after wrong passphrases")
	// ErrWrongCode: not the recovery code of this file.
	ErrWrongCode = errors.New("wrong recovery code")
	// ErrWeakPassphrase: a passphrase that is too easy to guess.
	ErrWeakPassphrase = errors.New("passphrase too easy to guess")
	// ErrTrailBroken: the audit trail is not whole; see TrailFault.
	ErrTrailBroken = errors.New("audit trail is broken")
	// ErrFolderGone: the folder for backups is not there, or is another one.
	ErrFolderGone = errors.New("backup folder is not there")
	// ErrOldBackupsLeft: the backup was made, older ones could not be removed.
	ErrOldBackupsLeft = errors.New("older backups could not be removed")
	// ErrNotABackup: the file is no backup of this program.
	ErrNotABackup = errors.New("not a backup")
)

// plainWords has the words for each sentinel.
var plainWords = map[error]string{
	ErrInUse: "This client file is already open, most likely in another Handbreadth window. " +
		"Close that one and try again. Nothing was changed.",
	ErrReadOnlyFolder: "Handbreadth cannot write in the folder of the client file. " +
		"Choose a folder of your own, or ask whoever looks after this computer for the right to write there.",
	ErrDamaged: "The client file is damaged. It was left exactly as it is. " +
		"Restore your latest backup, and keep the damaged file: some of it may still be saved.",
	ErrForeign: "This is not a Handbreadth client file; another program made it. It was left as it is. " +
		"Choose another file.",
	ErrNewerVersion: "This client file was last used with a newer Handbreadth. It was left as it is. " +
		"Install the newer Handbreadth on this computer to open it.",
	ErrDiskFull: "The disk is full, so the last change was not kept; everything before it is safe. " +
		"Make some room and save again.",
	ErrDisk: "The disk reported a fault, so the last change may not be kept. " +
		"Make a backup on another disk now.",
	ErrUpdate: "The client file is from an older Handbreadth and could not be brought up to date. " +
		"It was left as it is, and a copy lies beside it. Go on with the older Handbreadth until this is solved.",
	ErrNotFound: "This entry is not in the client file; it may have been deleted.",
	ErrConflict: "Someone saved this entry after you opened it. Open it again to see the newer text, " +
		"then make your change.",
	ErrImmutable:     "Visits, plans and saved versions are kept as they were made. Make a new one instead.",
	ErrExists:        "There is already a file with this name. It was left as it is. Choose another name.",
	ErrLocked:        "The client file is locked. Enter the passphrase to go on.",
	ErrNotSealed:     "This client file has no passphrase yet. Set one first.",
	ErrAlreadySealed: "This client file has a passphrase already. You can change it in the settings.",
	ErrWrongPassphrase: "This is not the passphrase. Look whether capitals are locked and which keyboard is set, " +
		"then try again. The recovery sheet opens the file as well.",
	ErrTooSoon: "Too many wrong passphrases one after the other. Wait a moment, then try again.",
	ErrWrongCode: "This recovery code belongs to another client file, or to an earlier recovery sheet. " +
		"Look for the newest sheet.",
	ErrWeakPassphrase: "This passphrase is too easy to guess. Choose a longer one.",
	ErrTrailBroken: "The record of who did what is not whole. The client files themselves are not touched by this. " +
		"Keep a copy of the file as it is, and compare with your latest backup.",
	ErrFolderGone: "The folder for backups is not there, so no backup was made. If it is on a stick or another disk, " +
		"plug that in and try again, or choose another folder.",
	ErrOldBackupsLeft: "The backup was made and checked, but older ones that it replaces could not be removed from the folder. " +
		"Look whether the folder may be written in.",
	ErrNotABackup: "This is not a Handbreadth backup. It was left as it is. Choose another file.",
	ErrTracesLeft: "The client is deleted. Traces of the text may remain inside the file " +
		"until Handbreadth has been closed and opened again.",
}

const plainUnknown = "Something went wrong with the client file. What was saved before is safe. " +
	"Try again; if it happens again, the log has the details."

// UserError is a failure with words for the person at the desk (Plain), apart
// from what belongs in the log (Error).
type UserError struct {
	Plain string
	kind  error
	cause error
}

// Error is the text for the log: the sentinel and what caused it.
func (e *UserError) Error() string {
	if e.cause == nil {
		return "store: " + e.kind.Error()
	}
	return "store: " + e.kind.Error() + ": " + e.cause.Error()
}

// Unwrap gives the sentinel and the cause to errors.Is and errors.As.
func (e *UserError) Unwrap() []error {
	if e.cause == nil {
		return []error{e.kind}
	}
	return []error{e.kind, e.cause}
}

// fail makes the error of a sentinel; cause may be nil.
func fail(kind, cause error) error {
	return &UserError{Plain: plainWords[kind], kind: kind, cause: cause}
}

// Plain returns the words to show for an error of this package: never empty,
// never technical. A nil error has no words.
func Plain(err error) string {
	var known *UserError
	var problem unit.Problem
	var problems unit.Problems
	switch {
	case err == nil:
		return ""
	case errors.As(err, &known):
		return known.Plain
	case errors.As(err, &problem):
		return problem.Error()
	case errors.As(err, &problems):
		return problems.Error()
	case errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		return "This was stopped before it was done. Nothing was changed."
	}
	return plainUnknown
}

// explain turns what the database said into an error of this package. It is
// the one place where "no rows" becomes ErrNotFound.
func explain(err error) error {
	var known *UserError
	switch {
	case err == nil, errors.As(err, &known):
		return err
	case errors.Is(err, sql.ErrNoRows):
		return fail(ErrNotFound, nil)
	case errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		return err
	}
	if kind := sqliteMeaning(err); kind != nil {
		return fail(kind, err)
	}
	return err
}

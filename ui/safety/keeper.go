// Package safety is the part of the practice page on keeping the client files
// safe: passphrase and recovery sheet, locking, backups and restoring them, the
// record of who did what, and old copies. Restoring has a page of its own for
// the day on which the practice does not open.
package safety

import (
	"context"
	"time"

	"handbreadth/ui/task"
)

// State is what is known of the file at once.
type State struct {
	Demo       bool // the invented practice: nothing of it needs to be kept safe
	Sealed     bool // it has a passphrase
	Unfinished bool // a sealing or a change of the key was interrupted
	SheetTried bool // the recovery code was typed back from its sheet
}

// Inside says what is in a backup, or in the file in use.
type Inside struct {
	MadeAt                 time.Time
	Clients, Visits, Plans int
	LastChange             time.Time // zero: nothing was ever kept
	Sealed                 bool
	Practice               string // the same for all copies of one practice's file
}

// Backup is a backup file and what it says to have.
type Backup struct {
	Path  string
	Bytes int64
	Inside
	Unknown bool // what is inside is not known yet
}

// Backups is what the folder for backups has.
type Backups struct {
	Folder     string // empty: none was chosen
	Gone       string // where the folder is not there: what to do, in plain words
	Last       time.Time
	Due        bool
	DueWords   string
	List       []Backup // the newest first
	Unreadable []string // names of files that cannot be understood
}

// Entry is one line of the record of who did what.
type Entry struct {
	Number int64
	At     time.Time
	Words  string // "Plan 3 printed"
	Who    string // the client's name; empty where it is about the practice, or where the client is deleted
}

// Progress is told how far a long work is, where it runs.
type Progress func(done, total int)

// Restorer makes a backup ready to take the place of the file in use. Its calls
// are made in the background; their errors have plain words.
type Restorer interface {
	// Describe tells what a backup file says to have.
	Describe(ctx context.Context, path string) (Backup, error)
	// Prepare unpacks a backup beside the file in use and checks all of it. The
	// secret is the passphrase or the recovery code of that day, empty for a
	// backup that is not sealed.
	Prepare(ctx context.Context, path, secret string) (Restoring, error)
}

// Restoring is a backup that was unpacked and checked.
type Restoring interface {
	Inside() Inside
	// Present is what the file in use has; false where there is none or it does
	// not open.
	Present() (Inside, bool)
	Discard() error
}

// Keeper keeps the open file of a practice safe. Calls with a context take their
// time and are made in the background; their errors have plain words.
type Keeper interface {
	Restorer
	State() State
	TryCode(ctx context.Context, typed string) error
	ChangeKey(ctx context.Context, progress Progress) error
	Resume(ctx context.Context, progress Progress) error
	Backups(ctx context.Context) (Backups, error)
	SetFolder(ctx context.Context, folder string) error
	BackUp(ctx context.Context) (Backup, error)
	BackUpTo(ctx context.Context, folder string) (Backup, error)
	Rehearse(ctx context.Context, path, secret string) (Inside, error)
	Record(ctx context.Context, before int64, most int) ([]Entry, error)
	CheckRecord(ctx context.Context) (words string, err error)
	OldCopies(ctx context.Context) (int, error)
	RemoveOldCopies(ctx context.Context) (int, error)
}

// Tools is what the pages work with.
type Tools struct {
	Run   task.Runner
	Clock task.Clock       // of pauses; nil: the system's
	Now   func() time.Time // nil: time.Now
}

func (t Tools) now() time.Time {
	if t.Now == nil {
		return time.Now()
	}
	return t.Now()
}

// Question is asked before something that cannot be undone.
type Question struct {
	Title, Words, Yes string
	Do                func()
}

// Ways lead up from the section.
type Ways struct {
	Seal         func() // to choose a first passphrase
	Change       func() // to change it
	Renew        func() // to make a new recovery code
	Lock         func() // locks at once
	LockAfter    func(minutes int)
	ChooseFolder func(chosen func(path string))
	ChooseFile   func(chosen func(path string))
	Ask          func(Question)
	Restore      func(Restoring) // puts the restored file in place of the one in use
	// Wanting is told what is still to be done, nothing where all is in order.
	Wanting func(words string)
}

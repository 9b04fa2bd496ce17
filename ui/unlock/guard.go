// Package unlock has the pages in front of a practice: choosing a passphrase,
// unlocking with it, and the recovery code, which is shown once, printed, and
// tried before it is relied on.
package unlock

import (
	"context"
	"strings"
	"time"

	"handbreadth/ui/task"
)

// Advice on a passphrase as it is typed.
type Advice struct {
	Accepted bool
	Good     bool   // more than just accepted
	Words    string // never empty
}

// Code is a recovery code in its groups. The zero value is none.
type Code struct{ Groups []string }

// String gives the code with blanks between its groups.
func (c Code) String() string { return strings.Join(c.Groups, " ") }

// IsZero reports whether there is no code.
func (c Code) IsZero() bool { return len(c.Groups) == 0 }

// with returns the code with another text in one of its groups.
func (c Code) with(at int, group string) string {
	groups := append([]string(nil), c.Groups...)
	groups[at] = group
	return strings.Join(groups, " ")
}

// Progress is told how far a long work is, where it runs.
type Progress func(done, total int)

// Adviser judges a passphrase as it is typed; it answers at once.
type Adviser func(passphrase string) Advice

// Guard keeps the file of a practice locked. Calls with a context take their
// time and are made in the background; their errors have plain words.
type Guard interface {
	// Wait is how long to wait until the next passphrase may be tried.
	Wait() time.Duration
	Unlock(ctx context.Context, passphrase string) error
	// ReadCode reads a recovery code as people type it. It tries nothing and
	// answers at once; its error says where the slip is.
	ReadCode(typed string) (Code, error)
	// Recover opens the file with the recovery code, gives it a new passphrase
	// and then a new code. Where only the new code could not be made the error
	// says so, and the file is open.
	Recover(ctx context.Context, code Code, passphrase string) (Code, error)
	// Locked reports whether the file is locked.
	Locked() bool
	// Change puts a new passphrase in the place of the old one.
	Change(ctx context.Context, old, passphrase string) error
	// Renew makes a new recovery code, in the place of the one before.
	Renew(ctx context.Context, passphrase string) (Code, error)
	// Confirm notes that the code is on a sheet that was tried.
	Confirm(ctx context.Context, code Code) error
}

// Sheet makes the recovery sheet. Its calls are made in the background.
type Sheet interface {
	SheetName() string // suggested for the file
	PrintSheet(ctx context.Context, code Code) error
	SaveSheet(ctx context.Context, code Code, path string) error
}

// Tools is what the pages work with.
type Tools struct {
	Run   task.Runner
	Clock task.Clock // of pauses; nil: the system's
}

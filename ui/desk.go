package ui

import (
	"context"
	"fmt"
	"image"

	"handbreadth/domain"
	"handbreadth/domain/unit"
	"handbreadth/ui/clients"
	"handbreadth/ui/draft"
	"handbreadth/ui/safety"
	"handbreadth/ui/unlock"
)

// Opener finds and opens the files of the practice. Its methods with a context
// are called in the background.
type Opener interface {
	Begun() bool // a practice was started on this computer
	// Look is what the window wore last, which is known before anything is
	// unlocked; only its look and its size of text mean something.
	Look() Settings
	// Advise judges a passphrase as it is typed; it answers at once.
	Advise(passphrase string) unlock.Advice
	Practice(ctx context.Context) (Door, error)
	Demo(ctx context.Context) (Door, error)
	// Restorer makes a backup ready to take the place of the practice's file.
	safety.Restorer
	// Restore closes the practice's file and puts the restored one in its place.
	// After an error the file is as it was. Nothing is open afterwards.
	Restore(ctx context.Context, restoring safety.Restoring) error
}

// Door is the open file of a practice, locked or not.
type Door interface {
	unlock.Guard
	unlock.Sheet
	Demo() bool // the invented practice, which is never sealed
	Sealed() bool
	Advise(passphrase string) unlock.Advice
	// Seal sets the first passphrase and seals everything. The code is there as
	// soon as the passphrase holds, also with an error.
	Seal(ctx context.Context, passphrase string, progress unlock.Progress) (unlock.Code, error)
	// Enter reads what the list of clients needs.
	Enter(ctx context.Context) (Desk, error)
	// Lock takes the keys out of memory, and all that was read with them, and
	// empties the shelf of papers. The desk that was entered is of no use then.
	Lock(ctx context.Context)
	Keeper() safety.Keeper
	// BackUpIfDue makes the backup of the day where it is not made yet.
	BackUpIfDue(ctx context.Context) error
}

// Desk is the practice's records. Calls with a context read or change the file
// and are made in the background; the others answer from memory.
type Desk interface {
	clients.Book
	Settings() Settings
	SaveSettings(ctx context.Context, s Settings) error
	// Loading reports whether names are still being read, and Names waits for
	// them: until then the list finds what was read so far.
	Loading() bool
	Names(ctx context.Context) error
	Open(ctx context.Context, id string) (File, error)
}

// File is one open client file. Its methods may be called from any goroutine.
type File interface {
	// Form is the intake as it was left: the draft, else the last visit, else a
	// new one with the name and today's date.
	Form() draft.Form
	// Kept is the newest of what was kept; its number is 0 where nothing was.
	Kept() Kept
	// SaveDraft is on the disk when it returns. Turn counts the saves of the
	// shell: one that comes after a later one does nothing.
	SaveDraft(ctx context.Context, turn int, form draft.Form) error
	// Settle brings name, birth date and next visit of the list up to date.
	Settle(ctx context.Context, form draft.Form) error
	// Keep adds the visit and, where the plan may be issued, the plan as its
	// next version; where it is referred, the referral. A plan that is held is
	// refused.
	Keep(ctx context.Context, form draft.Form, plan domain.Plan) (Kept, error)
	// Papers makes papers of this client's plans.
	Papers() Papers
}

// Kept says what was kept of a client, and when.
type Kept struct {
	Number   int // of the plan; 0 for a referral, and where nothing was kept
	On       unit.Date
	Referral bool
	Form     draft.Form // as it was kept; nil where nothing was
}

// Papers makes papers of a plan that is kept. All its methods but PageNames and
// SuggestedName are called in the background.
type Papers interface {
	PageNames() []PageName
	SuggestedName(plan domain.Plan) string
	Pictures(ctx context.Context, plan domain.Plan, kept Kept, choice Choice) ([]image.Image, error)
	Save(ctx context.Context, plan domain.Plan, kept Kept, choice Choice, path string) error
	Print(ctx context.Context, plan domain.Plan, kept Kept, choice Choice) error
}

// String names what was kept: "Plan 1, 2 March 2026".
func (k Kept) String() string {
	switch {
	case k.Referral:
		return "Referred, " + k.On.Long()
	case k.Number == 0:
		return ""
	}
	return fmt.Sprintf("Plan %d, %s", k.Number, k.On.Long())
}

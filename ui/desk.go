package ui

import (
	"context"
	"fmt"
	"image"

	"handbreadth/domain"
	"handbreadth/domain/unit"
	"handbreadth/ui/clients"
	"handbreadth/ui/draft"
)

// Desk is the practice's records. Calls with a context read or change the file
// and are made in the background; the others answer from memory.
type Desk interface {
	clients.Book
	Settings() Settings
	SaveSettings(ctx context.Context, s Settings) error
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

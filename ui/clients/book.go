package clients

import (
	"context"

	"handbreadth/domain/unit"
)

// Row is what a line of the list shows at once.
type Row struct {
	ID        string
	Name      string
	Born      unit.Date // zero: not known yet
	NextVisit unit.Date // zero: none agreed
	Archived  bool
}

// Glance is what of a client has to be read from the file first.
type Glance struct {
	LastVisit unit.Date // zero: none kept yet
	Status    Status
	Plan      int // number of the newest plan; 0: none
}

// Status says how far a client file is.
type Status int

// The states of a client file.
const (
	NotStarted Status = iota
	Begun             // the intake is not complete
	Ready             // a plan could be kept
	Held              // a reason is missing
	Referred          // a referral takes the plan's place
	Kept              // the plan that shows is kept
)

// Book is the list of clients. Find, Row, Today and the notice answer from
// memory; the others read or change the file and are called in the background.
type Book interface {
	// Find returns the ids of the clients whose name matches, in alphabetical
	// order; an empty query finds all, the one opened last first.
	Find(query string, archived bool) []string
	Row(id string) (Row, bool)
	Today() unit.Date
	// RetentionNotice says what a deletion removes, what stays, and what the law
	// may require to keep.
	RetentionNotice() string

	Glances(ctx context.Context, ids []string) (map[string]Glance, error)
	Create(ctx context.Context, name string) (id string, err error)
	Archive(ctx context.Context, id string) error
	Unarchive(ctx context.Context, id string) error
	Delete(ctx context.Context, id string) error
}

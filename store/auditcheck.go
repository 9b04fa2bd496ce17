package store

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jmoiron/sqlx"
)

// TrailState says what a sound audit trail has.
type TrailState struct {
	Entries int64
	First   time.Time // zero where there is no entry
	Last    time.Time
	Link    []byte // the last link: it stands for the whole trail
}

// TrailFault is the first place at which the audit trail is broken. What was
// there before it is sound.
type TrailFault struct {
	Number int64 // of the entry that should be there
	What   string
}

func (f *TrailFault) Error() string { return fmt.Sprintf("audit entry %d: %s", f.Number, f.What) }

// The ways in which a trail breaks.
const (
	faultMissing = "it is missing"
	faultChanged = "it was changed, or the one before it was"
	faultDetails = "its details were changed"
	faultEnd     = "the entries at the end are missing"
	faultAdded   = "it was added past the end"
	faultHead    = "the note of how the trail ends was changed"
)

func trailBroken(number int64, what string) error {
	fault := &TrailFault{Number: number, What: what}
	return &UserError{
		Plain: fmt.Sprintf("The record of who did what is not whole: at entry %d, %s. "+
			"The client files themselves are not touched by this. Keep a copy of the file as it is, "+
			"and compare with your latest backup.", number, what),
		kind: ErrTrailBroken, cause: fault,
	}
}

// CheckTrail walks the whole audit trail: that no entry is missing, that none
// was changed, that every body opens, and that it ends where the sealed head
// says. It fails with ErrTrailBroken, whose TrailFault names the first broken
// place.
func (s *Store) CheckTrail(ctx context.Context) (state TrailState, err error) {
	err = s.read(ctx, func(tx *sqlx.Tx) error {
		state, err = s.checkTrail(ctx, tx)
		return err
	})
	return state, err
}

func (s *Store) checkTrail(ctx context.Context, tx *sqlx.Tx) (state TrailState, err error) {
	head, err := getHead(ctx, tx)
	if err != nil {
		return state, err
	}
	rows, err := tx.QueryxContext(ctx, "SELECT "+auditColumns+" FROM audit ORDER BY number")
	if err != nil {
		return state, err
	}
	defer rows.Close()
	for rows.Next() {
		var row auditRow
		if err := rows.StructScan(&row); errors.Is(err, ErrDamaged) {
			return state, errors.Join(trailBroken(state.Entries+1, faultChanged), err)
		} else if err != nil {
			return state, err
		}
		if err := s.checkEntryAfter(state, row, head); err != nil {
			return state, err
		}
		if state.Entries == 0 {
			state.First = row.At.Time
		}
		state.Entries, state.Last, state.Link = row.Number, row.At.Time, row.Link
	}
	if err := rows.Err(); err != nil {
		return state, err
	}
	return state, s.checkEnd(state, head)
}

// checkEntryAfter compares an entry with what the trail before it promises.
func (s *Store) checkEntryAfter(before TrailState, row auditRow, head auditHead) error {
	next := before.Entries + 1
	switch {
	case row.Number > head.Entries && next > head.Entries:
		return trailBroken(row.Number, faultAdded)
	case row.Number != next:
		return trailBroken(next, faultMissing)
	case !bytes.Equal(row.Link, row.linkAfter(before.Link)):
		return trailBroken(row.Number, faultChanged)
	}
	if _, err := s.openEntry(row); err != nil {
		return errors.Join(trailBroken(row.Number, faultDetails), err)
	}
	return nil
}

// checkEnd compares the end of the trail with its head, in clear and sealed.
func (s *Store) checkEnd(state TrailState, head auditHead) error {
	switch {
	case state.Entries < head.Entries:
		return trailBroken(state.Entries+1, faultEnd)
	case head.Entries == 0:
		return nil
	case !bytes.Equal(state.Link, head.Link):
		return trailBroken(head.Entries, faultHead)
	}
	sealed, err := s.open(head.place(), head.Body)
	if err != nil {
		return errors.Join(trailBroken(head.Entries, faultHead), err)
	}
	if !bytes.Equal(sealed, state.Link) {
		return trailBroken(head.Entries, faultHead)
	}
	return nil
}

// CheckTrailHolds reports whether the trail still has, unchanged, what it had
// when a backup was made: ErrTrailBroken says that entries which the backup
// knows are gone or were written anew. That is also so after a restore of an
// older backup, whose own entry tells of it.
func (s *Store) CheckTrailHolds(ctx context.Context, backup Inside) error {
	if backup.Entries == 0 {
		return nil
	}
	return s.read(ctx, func(tx *sqlx.Tx) error {
		var links [][]byte
		if err := list(ctx, tx, &links, "SELECT link FROM audit WHERE number = ?", backup.Entries); err != nil {
			return err
		}
		switch {
		case len(links) == 0:
			return trailBroken(backup.Entries, faultMissing)
		case !bytes.Equal(links[0], backup.Link):
			return trailBroken(backup.Entries, faultChanged)
		}
		return nil
	})
}

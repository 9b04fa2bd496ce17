package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"time"

	"github.com/jmoiron/sqlx"
)

// Draft is a form as it was typed last. There is one for each client and form;
// Revision counts its saves from 1.
type Draft struct {
	ID       DraftID
	ClientID ClientID
	Form     Form
	Revision int
	SavedAt  time.Time
	Body     []byte
}

type draftRow struct {
	ID       DraftID  `db:"id"`
	ClientID ClientID `db:"client_id"`
	Form     Form     `db:"form"`
	Revision int      `db:"revision"`
	SavedAt  instant  `db:"saved_at"`
	Body     []byte   `db:"body"`
}

const draftColumns = "id, client_id, form, revision, saved_at, body"

func (r draftRow) place() place {
	return place{"draft", fmt.Sprintf("%s/%s/%s", r.ClientID, r.Form, r.ID), "body", r.Revision}
}

func (r draftRow) draft(body []byte) Draft {
	return Draft{
		ID: r.ID, ClientID: r.ClientID, Form: r.Form, Revision: r.Revision, SavedAt: r.SavedAt.Time, Body: body,
	}
}

// SaveDraft keeps the form as it is now, in place of what was typed before. The
// draft is on the disk when it returns without error. When two saves run at the
// same time the later one to start writing wins: send them one after the other.
func (s *Store) SaveDraft(ctx context.Context, id ClientID, form Form, body []byte) (Draft, error) {
	if err := checkName("form", string(form)); err != nil {
		return Draft{}, err
	}
	var row draftRow
	err := s.write(ctx, func(tx *sqlx.Tx) error {
		if err := s.touch(ctx, tx, id); err != nil {
			return err
		}
		err := get(ctx, tx, &row, "SELECT id, revision, saved_at FROM draft WHERE client_id = ? AND form = ?", id, form)
		isFirst := errors.Is(err, sql.ErrNoRows)
		if err != nil && !isFirst {
			return err
		}
		if isFirst {
			row.ID = newID[DraftID]()
		}
		before := row.SavedAt
		row.ClientID, row.Form, row.Revision, row.SavedAt = id, form, row.Revision+1, s.now()
		if row.Body, err = s.seal(row.place(), body); err != nil {
			return err
		}
		if err := putDraft(ctx, tx, row, isFirst); err != nil || !newSitting(before, row.SavedAt) {
			return err
		}
		return s.note(ctx, tx, Changed, id, Detail{What: "draft"})
	})
	if err != nil {
		return Draft{}, err
	}
	return row.draft(body), nil
}

// sitting is how long typing may pause and still be one entry of the audit
// trail: a draft is saved many times a minute.
const sitting = time.Hour

// newSitting reports whether a save belongs to another sitting than the one
// before. A clock that was set back begins one too.
func newSitting(before, now instant) bool {
	pause := now.Sub(before.Time)
	return pause < 0 || pause > sitting
}

func putDraft(ctx context.Context, tx *sqlx.Tx, row draftRow, isFirst bool) error {
	if isFirst {
		_, err := run(ctx, tx, "INSERT INTO draft ("+draftColumns+") VALUES (?, ?, ?, ?, ?, ?)",
			row.ID, row.ClientID, row.Form, row.Revision, row.SavedAt, row.Body)
		return err
	}
	return execOne(ctx, tx, "UPDATE draft SET revision = ?, saved_at = ?, body = ? WHERE client_id = ? AND form = ?",
		row.Revision, row.SavedAt, row.Body, row.ClientID, row.Form)
}

// Draft returns the form as it was typed last, ErrNotFound when there is none.
func (s *Store) Draft(ctx context.Context, id ClientID, form Form) (d Draft, err error) {
	err = s.read(ctx, func(tx *sqlx.Tx) error {
		var row draftRow
		if err := get(ctx, tx, &row,
			"SELECT "+draftColumns+" FROM draft WHERE client_id = ? AND form = ?", id, form); err != nil {
			return err
		}
		d, err = s.openDraft(row)
		return err
	})
	return d, err
}

func (s *Store) openDraft(row draftRow) (Draft, error) {
	body, err := s.open(row.place(), row.Body)
	return row.draft(body), err
}

// DiscardDraft removes a draft; one that is not there is no error.
func (s *Store) DiscardDraft(ctx context.Context, id ClientID, form Form) error {
	return s.write(ctx, func(tx *sqlx.Tx) error {
		removed, err := removeDraft(ctx, tx, id, form)
		if err != nil || removed == 0 {
			return err
		}
		return s.note(ctx, tx, Changed, id, Detail{What: "draft_discarded"})
	})
}

func removeDraft(ctx context.Context, tx *sqlx.Tx, id ClientID, form Form) (int64, error) {
	return run(ctx, tx, "DELETE FROM draft WHERE client_id = ? AND form = ?", id, form)
}

// drafts returns all drafts of a client, in the order of their forms.
func (s *Store) drafts(ctx context.Context, tx *sqlx.Tx, id ClientID) ([]Draft, error) {
	var rows []draftRow
	if err := list(ctx, tx, &rows,
		"SELECT "+draftColumns+" FROM draft WHERE client_id = ? ORDER BY form", id); err != nil {
		return nil, err
	}
	return each(rows, s.openDraft)
}

package store

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"time"

	"github.com/jmoiron/sqlx"
)

// Handout says that something was printed or saved for a client: what, when,
// from which plan, and the SHA-256 of the document, so that a paper can be told
// to be the one that was given. The document itself is not kept: the plan and
// its handout settings make it again.
type Handout struct {
	ID       HandoutID
	ClientID ClientID
	PlanID   PlanID
	Kind     Kind // "handout", "visit_record", "pocket_card" and so on
	MadeAt   time.Time
	SHA256   string // lower-case hexadecimal
}

type handoutRow struct {
	ID       HandoutID `db:"id"`
	ClientID ClientID  `db:"client_id"`
	PlanID   PlanID    `db:"plan_version_id"`
	Kind     Kind      `db:"kind"`
	MadeAt   instant   `db:"made_at"`
	SHA256   string    `db:"sha256"`
}

const handoutColumns = "id, client_id, plan_version_id, kind, made_at, sha256"

func (r handoutRow) handout() Handout {
	return Handout{
		ID: r.ID, ClientID: r.ClientID, PlanID: r.PlanID, Kind: r.Kind, MadeAt: r.MadeAt.Time, SHA256: r.SHA256,
	}
}

// AddHandout notes that this document was made from a plan. It fails with
// ErrNotFound when there is no such plan.
func (s *Store) AddHandout(ctx context.Context, plan PlanID, kind Kind, document []byte) (Handout, error) {
	if err := checkName("kind", string(kind)); err != nil {
		return Handout{}, err
	}
	sum := sha256.Sum256(document)
	row := handoutRow{
		ID: newID[HandoutID](), PlanID: plan, Kind: kind, MadeAt: s.now(), SHA256: hex.EncodeToString(sum[:]),
	}
	err := s.write(ctx, func(tx *sqlx.Tx) error {
		if err := get(ctx, tx, &row.ClientID, "SELECT client_id FROM plan_version WHERE id = ?", plan); err != nil {
			return err
		}
		if err := s.touch(ctx, tx, row.ClientID); err != nil {
			return err
		}
		if _, err := run(ctx, tx, "INSERT INTO handout ("+handoutColumns+") VALUES (?, ?, ?, ?, ?, ?)",
			row.ID, row.ClientID, row.PlanID, row.Kind, row.MadeAt, row.SHA256); err != nil {
			return err
		}
		return s.note(ctx, tx, Printed, row.ClientID, Detail{What: string(kind)})
	})
	if err != nil {
		return Handout{}, err
	}
	return row.handout(), nil
}

// Handouts returns what was made for a client, the earliest first.
func (s *Store) Handouts(ctx context.Context, id ClientID) (handouts []Handout, err error) {
	err = s.read(ctx, func(tx *sqlx.Tx) error {
		handouts, err = listHandouts(ctx, tx, id)
		return err
	})
	return handouts, err
}

func listHandouts(ctx context.Context, tx *sqlx.Tx, id ClientID) ([]Handout, error) {
	var rows []handoutRow
	if err := list(ctx, tx, &rows,
		"SELECT "+handoutColumns+" FROM handout WHERE client_id = ? ORDER BY made_at, id", id); err != nil {
		return nil, err
	}
	handouts := make([]Handout, len(rows))
	for i, row := range rows {
		handouts[i] = row.handout()
	}
	return handouts, nil
}

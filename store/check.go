package store

import (
	"context"
	"errors"

	"github.com/jmoiron/sqlx"
)

// Check looks through the whole open file: its structure, its references, that
// every sealed body opens, and the audit trail. It fails with ErrDamaged or
// ErrTrailBroken.
func (s *Store) Check(ctx context.Context) error {
	return s.read(ctx, func(tx *sqlx.Tx) error {
		if err := integrity(ctx, tx, "integrity_check(1)"); err != nil {
			return err
		}
		if err := s.openEverything(ctx, tx); err != nil {
			return err
		}
		_, err := s.checkTrail(ctx, tx)
		return err
	})
}

func (s *Store) openEverything(ctx context.Context, tx *sqlx.Tx) error {
	return errors.Join(
		openAll(ctx, tx, "SELECT "+recordColumns+" FROM record", s.openRecord),
		openAll(ctx, tx, "SELECT "+draftColumns+" FROM draft", s.openDraft),
		openAll(ctx, tx, "SELECT "+intakeColumns+" FROM intake", s.openIntake),
		openAll(ctx, tx, "SELECT "+planColumns+" FROM plan_version", s.openPlan),
		openAll(ctx, tx, "SELECT "+settingColumns+" FROM setting", s.openSetting),
	)
}

// openAll opens row after row, so that a large file does not have to fit in
// memory.
func openAll[Row, T any](ctx context.Context, tx *sqlx.Tx, query string, open func(Row) (T, error)) error {
	rows, err := tx.QueryxContext(ctx, query)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var row Row
		if err := rows.StructScan(&row); err != nil {
			return err
		}
		if _, err := open(row); err != nil {
			return err
		}
	}
	return rows.Err()
}

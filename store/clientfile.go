package store

import (
	"context"

	"github.com/jmoiron/sqlx"
)

// ClientFile is everything kept on one client, as of one moment.
type ClientFile struct {
	Client   Client
	Records  map[Kind]Record // the newest version of each kind
	Drafts   []Draft         // in the order of their forms
	Intakes  []Intake        // the earliest visit first
	Plans    []Plan          // number 1 first
	Handouts []Handout       // the earliest first
}

// ClientFile reads everything on a client in one transaction. It fails with
// ErrNotFound without the client, and with ErrDamaged when a body cannot be
// opened. It does not mark the client as opened: see MarkOpened.
func (s *Store) ClientFile(ctx context.Context, id ClientID) (f ClientFile, err error) {
	err = s.read(ctx, func(tx *sqlx.Tx) (err error) {
		if f.Client, err = getClient(ctx, tx, id); err != nil {
			return err
		}
		if f.Records, err = s.latestRecords(ctx, tx, id); err != nil {
			return err
		}
		if f.Drafts, err = s.drafts(ctx, tx, id); err != nil {
			return err
		}
		if f.Intakes, err = s.intakes(ctx, tx, id); err != nil {
			return err
		}
		if f.Plans, err = s.plans(ctx, tx, id); err != nil {
			return err
		}
		f.Handouts, err = listHandouts(ctx, tx, id)
		return err
	})
	if err != nil {
		return ClientFile{}, err
	}
	return f, nil
}

// each turns rows into what they stand for, stopping at the first error.
func each[Row, T any](rows []Row, turn func(Row) (T, error)) ([]T, error) {
	out := make([]T, len(rows))
	for i, row := range rows {
		var err error
		if out[i], err = turn(row); err != nil {
			return nil, err
		}
	}
	return out, nil
}

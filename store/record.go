package store

import (
	"context"
	"fmt"
	"time"

	"github.com/jmoiron/sqlx"
)

// Record is one version of what is kept about a client under a kind. Versions
// count from 1 and are only ever added.
type Record struct {
	ID       RecordID
	ClientID ClientID
	Kind     Kind
	Version  int
	SavedAt  time.Time
	Body     []byte // nil where the call says that bodies are left out
}

type recordRow struct {
	ID       RecordID `db:"id"`
	ClientID ClientID `db:"client_id"`
	Kind     Kind     `db:"kind"`
	Version  int      `db:"version"`
	SavedAt  instant  `db:"saved_at"`
	Body     []byte   `db:"body"`
}

const recordColumns = "id, client_id, kind, version, saved_at, body"

// newestOnly keeps the newest version of each kind.
const newestOnly = "version = (SELECT max(version) FROM record newer " +
	"WHERE newer.client_id = record.client_id AND newer.kind = record.kind)"

func (r recordRow) place() place {
	return place{"record", fmt.Sprintf("%s/%s/%s", r.ClientID, r.Kind, r.ID), "body", r.Version}
}

func (s *Store) openRecord(r recordRow) (Record, error) {
	body, err := s.open(r.place(), r.Body)
	return Record{
		ID: r.ID, ClientID: r.ClientID, Kind: r.Kind, Version: r.Version, SavedAt: r.SavedAt.Time, Body: body,
	}, err
}

// SaveRecord adds the version after the one that the caller read (0 when there
// was none). It fails with ErrConflict when that is no longer the newest, and
// with ErrNotFound when there is no such client.
func (s *Store) SaveRecord(ctx context.Context, id ClientID, kind Kind, read int, body []byte) (r Record, err error) {
	err = s.write(ctx, func(tx *sqlx.Tx) error {
		if err := s.touch(ctx, tx, id); err != nil {
			return err
		}
		var newest int
		if err := get(ctx, tx, &newest,
			"SELECT coalesce(max(version), 0) FROM record WHERE client_id = ? AND kind = ?", id, kind); err != nil {
			return err
		}
		if newest != read {
			return fail(ErrConflict, fmt.Errorf("%s of client %s: read version %d, newest is %d", kind, id, read, newest))
		}
		if r, err = s.insertRecord(ctx, tx, id, kind, read+1, body); err != nil {
			return err
		}
		return s.note(ctx, tx, Changed, id, Detail{What: string(kind), Number: r.Version})
	})
	if err != nil {
		return Record{}, err
	}
	return r, nil
}

func (s *Store) insertRecord(
	ctx context.Context, tx *sqlx.Tx, id ClientID, kind Kind, version int, body []byte,
) (Record, error) {
	if err := checkName("kind", string(kind)); err != nil {
		return Record{}, err
	}
	row := recordRow{ID: newID[RecordID](), ClientID: id, Kind: kind, Version: version, SavedAt: s.now()}
	sealed, err := s.seal(row.place(), body)
	if err != nil {
		return Record{}, err
	}
	if _, err := run(ctx, tx, "INSERT INTO record ("+recordColumns+") VALUES (?, ?, ?, ?, ?, ?)",
		row.ID, row.ClientID, row.Kind, row.Version, row.SavedAt, sealed); err != nil {
		return Record{}, err
	}
	return Record{
		ID: row.ID, ClientID: id, Kind: kind, Version: version, SavedAt: row.SavedAt.Time, Body: body,
	}, nil
}

// LatestRecord returns the newest version of a kind, ErrNotFound without one.
func (s *Store) LatestRecord(ctx context.Context, id ClientID, kind Kind) (Record, error) {
	return s.record(ctx, "client_id = ? AND kind = ? ORDER BY version DESC LIMIT 1", id, kind)
}

// RecordAt returns a certain version of a kind, ErrNotFound without it.
func (s *Store) RecordAt(ctx context.Context, id ClientID, kind Kind, version int) (Record, error) {
	return s.record(ctx, "client_id = ? AND kind = ? AND version = ?", id, kind, version)
}

func (s *Store) record(ctx context.Context, where string, args ...any) (r Record, err error) {
	err = s.read(ctx, func(tx *sqlx.Tx) error {
		var row recordRow
		if err := get(ctx, tx, &row, "SELECT "+recordColumns+" FROM record WHERE "+where, args...); err != nil {
			return err
		}
		r, err = s.openRecord(row)
		return err
	})
	return r, err
}

// RecordHistory returns all versions of a kind, the oldest first, without their
// bodies. A kind never saved has none.
func (s *Store) RecordHistory(ctx context.Context, id ClientID, kind Kind) ([]Record, error) {
	var rows []recordRow
	err := s.read(ctx, func(tx *sqlx.Tx) error {
		return list(ctx, tx, &rows, "SELECT id, client_id, kind, version, saved_at FROM record "+
			"WHERE client_id = ? AND kind = ? ORDER BY version", id, kind)
	})
	records := make([]Record, len(rows))
	for i, r := range rows {
		records[i] = Record{ID: r.ID, ClientID: r.ClientID, Kind: r.Kind, Version: r.Version, SavedAt: r.SavedAt.Time}
	}
	return records, err
}

// EachLatest calls visit with the newest version of a kind of every client,
// archived ones included, in no particular order. It stops at the first error
// and returns it. visit must not call the Store.
func (s *Store) EachLatest(ctx context.Context, kind Kind, visit func(Record) error) error {
	return s.read(ctx, func(tx *sqlx.Tx) error {
		rows, err := tx.QueryxContext(ctx,
			tx.Rebind("SELECT "+recordColumns+" FROM record WHERE kind = ? AND "+newestOnly), kind)
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			var row recordRow
			if err := rows.StructScan(&row); err != nil {
				return err
			}
			record, err := s.openRecord(row)
			if err != nil {
				return err
			}
			if err := visit(record); err != nil {
				return err
			}
		}
		return rows.Err()
	})
}

// latestRecords returns the newest version of each kind of a client.
func (s *Store) latestRecords(ctx context.Context, tx *sqlx.Tx, id ClientID) (map[Kind]Record, error) {
	var rows []recordRow
	if err := list(ctx, tx, &rows,
		"SELECT "+recordColumns+" FROM record WHERE client_id = ? AND "+newestOnly, id); err != nil {
		return nil, err
	}
	records := make(map[Kind]Record, len(rows))
	for _, row := range rows {
		record, err := s.openRecord(row)
		if err != nil {
			return nil, err
		}
		records[row.Kind] = record
	}
	return records, nil
}

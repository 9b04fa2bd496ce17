package store

import (
	"context"
	"errors"
	"fmt"

	"github.com/jmoiron/sqlx"

	"handbreadth/store/vault"
)

// sealedValue is one sealed column of one row.
type sealedValue struct {
	column string
	place  place
	body   []byte
}

// sealedRow is a row of a table that has sealed columns.
type sealedRow interface {
	rowKey() any
	sealedValues() []sealedValue
}

// sealedTable is a table with sealed columns, read in the order of its key.
type sealedTable struct {
	name, key string
	first     any // below every key
	page      func(ctx context.Context, tx *sqlx.Tx, after any) ([]sealedRow, error)
}

// rowsAtOnce is how many rows are sealed anew in one transaction. A save waits
// that long at most: some milliseconds.
const rowsAtOnce = 300

func tableOf[Row sealedRow](name, key string, first any, columns string) sealedTable {
	query := fmt.Sprintf("SELECT %s FROM %s WHERE %s > ? ORDER BY %s LIMIT ?", columns, name, key, key)
	return sealedTable{name: name, key: key, first: first, page: func(ctx context.Context, tx *sqlx.Tx, after any) ([]sealedRow, error) {
		var rows []Row
		if err := list(ctx, tx, &rows, query, after, rowsAtOnce); err != nil {
			return nil, err
		}
		out := make([]sealedRow, len(rows))
		for i, row := range rows {
			out[i] = row
		}
		return out, nil
	}}
}

// sealedTables are all tables with sealed columns. A new one must stand here, or
// it is neither sealed at first nor when the key changes; a test compares this
// list with the schema.
var sealedTables = []sealedTable{
	tableOf[recordRow]("record", "id", "", recordColumns),
	tableOf[draftRow]("draft", "id", "", draftColumns),
	tableOf[intakeRow]("intake", "id", "", intakeColumns),
	tableOf[planRow]("plan_version", "id", "", planColumns),
	tableOf[settingRow]("setting", "name", "", settingColumns),
	tableOf[auditRow]("audit", "number", 0, auditColumns),
	tableOf[headRow]("audit_head", "id", 0, "id, entries, link, body"),
}

func (r recordRow) rowKey() any  { return r.ID }
func (r draftRow) rowKey() any   { return r.ID }
func (r intakeRow) rowKey() any  { return r.ID }
func (r planRow) rowKey() any    { return r.ID }
func (r settingRow) rowKey() any { return r.Name }
func (r auditRow) rowKey() any   { return r.Number }
func (r headRow) rowKey() any    { return r.ID }

func (r recordRow) sealedValues() []sealedValue { return []sealedValue{{"body", r.place(), r.Body}} }

func (r draftRow) sealedValues() []sealedValue { return []sealedValue{{"body", r.place(), r.Body}} }

func (r intakeRow) sealedValues() []sealedValue { return []sealedValue{{"body", r.place(), r.Body}} }

func (r planRow) sealedValues() []sealedValue {
	return []sealedValue{
		{"body", r.place("body"), r.Body},
		{"handout_settings", r.place("handout_settings"), r.HandoutSettings},
	}
}

func (r settingRow) sealedValues() []sealedValue { return []sealedValue{{"body", r.place(), r.Body}} }

func (r auditRow) sealedValues() []sealedValue { return []sealedValue{{"body", r.place(), r.Body}} }

func (r headRow) sealedValues() []sealedValue { return []sealedValue{{"body", r.place(), r.Body}} }

// headRow is the head of the audit trail with its key.
type headRow struct {
	ID int `db:"id"`
	auditHead
}

// finish seals every value that is not sealed with the current key, then forgets
// the former key and wipes the file of what was sealed with it, or not sealed.
func (s *Store) finish(ctx context.Context, progress Progress) error {
	ctx, end, err := s.safe.session.within(ctx)
	if err != nil {
		return err
	}
	defer end()
	err = s.sealAll(ctx, progress)
	if err == nil {
		// They hold everything as it was before, and open with what opened it then.
		_, err = s.RemoveOldCopies(ctx)
	}
	if err == nil {
		err = s.settleWork(ctx)
	}
	if errors.Is(context.Cause(ctx), ErrLocked) {
		return fail(ErrLocked, err)
	}
	return err
}

func (s *Store) sealAll(ctx context.Context, progress Progress) error {
	total, err := s.countSealed(ctx)
	if err != nil {
		return err
	}
	done := 0
	report := func(more int) {
		done += more
		if progress != nil {
			progress(done, max(done, total))
		}
	}
	for _, table := range sealedTables {
		for after := table.first; after != nil; {
			var n int
			if after, n, err = s.sealPage(ctx, table, after); err != nil {
				return err
			}
			report(n)
		}
	}
	return nil
}

func (s *Store) countSealed(ctx context.Context) (total int, err error) {
	err = s.read(ctx, func(tx *sqlx.Tx) error {
		for _, table := range sealedTables {
			var n int
			if err := get(ctx, tx, &n, "SELECT count(*) FROM "+table.name); err != nil {
				return err
			}
			total += n
		}
		return nil
	})
	return total, err
}

// sealPage looks at the next rows of a table and seals anew what needs it. It
// returns where to go on, nil at the end, and how many rows it looked at.
func (s *Store) sealPage(ctx context.Context, table sealedTable, after any) (next any, n int, err error) {
	err = s.write(ctx, func(tx *sqlx.Tx) error {
		current, ok := s.safe.keys.Current()
		if !ok {
			return fail(ErrLocked, nil)
		}
		rows, err := table.page(ctx, tx, after)
		if err != nil || len(rows) == 0 {
			return err
		}
		if len(rows) == rowsAtOnce {
			next = rows[len(rows)-1].rowKey()
		}
		n = len(rows)
		changes, err := s.sealedAnew(rows, current)
		if err != nil || len(changes) == 0 {
			return err
		}
		return table.write(ctx, tx, changes)
	})
	if err != nil {
		return nil, 0, err
	}
	return next, n, nil
}

// sealChange is a value sealed anew.
type sealChange struct {
	column string
	body   []byte
	key    any
}

func (s *Store) sealedAnew(rows []sealedRow, current vault.KeyID) ([]sealChange, error) {
	var changes []sealChange
	for _, row := range rows {
		for _, value := range row.sealedValues() {
			if id, ok := vault.KeyOf(value.body); ok && id == current {
				continue
			}
			plain, err := s.open(value.place, value.body)
			if err != nil {
				return nil, err
			}
			sealed, err := s.seal(value.place, plain)
			clear(plain)
			if err != nil {
				return nil, err
			}
			changes = append(changes, sealChange{value.column, sealed, row.rowKey()})
		}
	}
	return changes, nil
}

// write puts the values in place. What is kept for good is the same as before,
// only under another seal: the guards step aside within this one transaction.
func (t sealedTable) write(ctx context.Context, tx *sqlx.Tx, changes []sealChange) error {
	if err := unguard(ctx, tx); err != nil {
		return err
	}
	for _, c := range changes {
		query := fmt.Sprintf("UPDATE %s SET %s = ? WHERE %s = ?", t.name, c.column, t.key)
		if err := execOne(ctx, tx, query, c.body, c.key); err != nil {
			return err
		}
	}
	return mark(ctx, tx)
}

// settleWork forgets the former key and wipes the file. Nothing runs meanwhile,
// and no backup: it would keep the write-ahead log from being cut.
func (s *Store) settleWork(ctx context.Context) error {
	s.backingUp.Lock()
	defer s.backingUp.Unlock()
	s.safe.gate.Lock()
	defer s.safe.gate.Unlock()
	if s.safe.keys == nil {
		return fail(ErrLocked, nil)
	}
	keys, err := s.safe.keys.WithOnlyCurrent()
	if err != nil {
		return explainVault(err)
	}
	err = inTransaction(ctx, s.writer, nil, func(tx *sqlx.Tx) error {
		if err := putRing(ctx, tx, keys.Ring()); err != nil {
			return err
		}
		if err := dropVault(ctx, tx, rowWork); err != nil {
			return err
		}
		return putMeta(ctx, tx, wipeNote, "yes") // until it is wiped, also after a kill
	})
	if err != nil {
		keys.Lock()
		return err
	}
	s.safe.work = ""
	s.use(keys)
	return s.wipeAlone(ctx)
}

// wipeAlone wipes the file while the gate is held.
func (s *Store) wipeAlone(ctx context.Context) error {
	if err := rewrite(ctx, s.writer); err != nil {
		return &UserError{
			Plain: "Everything is sealed. Traces of what was there before may remain inside the file " +
				"until Handbreadth has been closed and opened again.",
			kind: ErrTracesLeft, cause: err,
		}
	}
	return inTransaction(ctx, s.writer, nil, func(tx *sqlx.Tx) error {
		_, err := run(ctx, tx, "DELETE FROM meta WHERE name = ?", wipeNote)
		return err
	})
}

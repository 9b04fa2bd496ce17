package store

import (
	"context"
	"errors"
	"io/fs"
	"os"

	"github.com/jmoiron/sqlx"
)

// Copied says what a backup has.
type Copied struct {
	Path  string
	Bytes int64
	Rows  map[string]int // by table
}

// Backup writes a consistent copy of the client file to path (mode 0600) while
// the program goes on reading, and verifies it: the copy is opened, checked
// completely and counted. Only then does it appear under its name. Saves wait
// until it is done.
//
// The copy is exactly as protected as the file: with PassThrough it is NOT
// encrypted. It fails with ErrExists when there is a file at path already, and
// with ErrDiskFull, ErrReadOnlyFolder or ErrDamaged; there is no copy then.
func (s *Store) Backup(ctx context.Context, path string) (Copied, error) {
	path, err := settle(path)
	if err != nil {
		return Copied{}, err
	}
	if _, err := os.Lstat(path); !errors.Is(err, fs.ErrNotExist) {
		return Copied{}, fail(ErrExists, err)
	}
	// The only write connection is held, so nothing changes between the count
	// and the copy.
	conn, err := s.writer.Connx(ctx)
	if err != nil {
		return Copied{}, explain(err)
	}
	defer conn.Close()
	var version int64
	if err := conn.GetContext(ctx, &version, "SELECT max(version_id) FROM goose_db_version"); err != nil {
		return Copied{}, explain(err)
	}
	if err := writeBeside(path, func(fresh string) error {
		return copyVerified(ctx, conn, fresh, version)
	}); err != nil {
		return Copied{}, err
	}
	return describe(ctx, conn, path)
}

func describe(ctx context.Context, conn *sqlx.Conn, path string) (Copied, error) {
	info, err := os.Stat(path)
	if err != nil {
		return Copied{}, fileTrouble(err)
	}
	rows, err := tableCounts(ctx, conn)
	return Copied{Path: path, Bytes: info.Size(), Rows: rows}, err
}

// Check looks through the whole open file: its structure, its references, and
// that every sealed body opens. It fails with ErrDamaged.
func (s *Store) Check(ctx context.Context) error {
	return s.read(ctx, func(tx *sqlx.Tx) error {
		if err := integrity(ctx, tx, "integrity_check(1)"); err != nil {
			return err
		}
		return s.openEverything(ctx, tx)
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

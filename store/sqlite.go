package store

import (
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"hash/crc32"
	"io"
	"net/url"
	"os"
	"path/filepath"
	"strings"

	"github.com/jmoiron/sqlx"
	"github.com/pressly/goose/v3"
	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// Everything that only SQLite knows is in this file.

const (
	driverName = "sqlite"
	// bindName tells sqlx that parameters are written as question marks.
	bindName = "sqlite3"
	dialect  = goose.DialectSQLite3
	// applicationID marks the file as ours: "Hbrd" as a big-endian integer.
	applicationID = 0x48627264
	// readers is how many reads may run beside each other.
	readers = 4
)

// Settings go into the address, so that every connection of a pool gets them.
const (
	// Full sync makes a commit durable when it returns; secure_delete overwrites
	// what is deleted; temp_store keeps sorting and rebuilding in memory, out of
	// the system's folder for temporary files.
	commonSettings = "?_pragma=busy_timeout(5000)&_pragma=journal_mode(WAL)&_pragma=synchronous(FULL)" +
		"&_pragma=secure_delete(1)&_pragma=trusted_schema(0)&_pragma=temp_store(2)" +
		"&_time_format=sqlite&_txlock=immediate&_defensive=1"
	writerSettings = commonSettings + "&_pragma=foreign_keys(1)"
	// buildSettings lets a migration rebuild a table without its dropping being
	// taken for the deletion of its rows; references are checked afterwards.
	buildSettings  = commonSettings + "&_pragma=foreign_keys(0)"
	readerSettings = "?_pragma=busy_timeout(5000)&_pragma=foreign_keys(1)&_pragma=trusted_schema(0)" +
		"&_pragma=temp_store(2)&_pragma=query_only(1)&_time_format=sqlite&_defensive=1"
	// lookSettings reads a file that nobody changes meanwhile (the lock is
	// held): immutable makes no companion files. It must not be used where a
	// write-ahead log waits to be read.
	lookSettings    = "?mode=ro&immutable=1&_pragma=trusted_schema(0)&_defensive=1"
	lookLogSettings = "?mode=ro&_pragma=busy_timeout(5000)&_pragma=trusted_schema(0)&_defensive=1"
)

// address is the URI of a file, with its settings. It copes with spaces,
// question marks, percent signs and drive letters.
func address(path, settings string) string {
	p := filepath.ToSlash(path)
	if !strings.HasPrefix(p, "/") {
		p = "/" + p
	}
	return (&url.URL{Scheme: "file", Path: p}).String() + settings
}

func openPool(path, settings string, connections int) (*sqlx.DB, error) {
	db, err := sqlx.Open(driverName, address(path, settings))
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(connections)
	db.SetMaxIdleConns(connections)
	return sqlx.NewDb(db.DB, bindName), nil
}

// companions are the files that SQLite keeps beside a database.
func companions(path string) []string {
	return []string{logOf(path), path + "-shm", path + "-journal"}
}

// logOf is the write-ahead log that belongs to a database.
func logOf(path string) string { return path + "-wal" }

// logWaits reports whether a write-ahead log with content lies beside the file:
// the last program did not close it.
func logWaits(path string) bool {
	info, err := os.Stat(logOf(path))
	return err == nil && info.Size() > 0
}

// checkHeader looks at the first bytes only: is it a database, and is it as
// long as it says? The length means nothing while a log waits.
func checkHeader(path string) error {
	f, err := os.Open(path)
	if err != nil {
		return fail(ErrReadOnlyFolder, err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return fail(ErrDisk, err)
	}
	head := make([]byte, 100)
	if _, err := io.ReadFull(f, head); err != nil {
		return fail(ErrDamaged, fmt.Errorf("%d bytes are too few for a database: %w", info.Size(), err))
	}
	if string(head[:16]) != "SQLite format 3\x00" {
		return fail(ErrDamaged, errors.New("not a database"))
	}
	pageSize := int64(binary.BigEndian.Uint16(head[16:]))
	if pageSize == 1 { // the format's way to write 65536
		pageSize = 1 << 16
	}
	want := pageSize * int64(binary.BigEndian.Uint32(head[28:]))
	if !logWaits(path) && info.Size() < want {
		return fail(ErrDamaged, fmt.Errorf("%d bytes long, should be %d", info.Size(), want))
	}
	return nil
}

// openToLook opens an existing file for reading only. The caller holds the lock
// or has just written the file, so that nobody changes it meanwhile.
func openToLook(path string) (*sqlx.DB, error) {
	settings := lookSettings
	if logWaits(path) {
		settings = lookLogSettings
	}
	return openPool(path, settings, 1)
}

// inspect reads the version of an existing file and checks it, without
// changing it. A file that is newer than latest is not checked further.
func inspect(ctx context.Context, path string, latest int64) (version int64, err error) {
	if err := checkHeader(path); err != nil {
		return 0, err
	}
	db, err := openToLook(path)
	if err != nil {
		return 0, explain(err)
	}
	defer db.Close()
	var application int64
	if err := db.GetContext(ctx, &application, "PRAGMA application_id"); err != nil {
		return 0, explain(err)
	}
	if application != applicationID {
		return 0, fail(ErrForeign, fmt.Errorf("application id is %#x", application))
	}
	if err := db.GetContext(ctx, &version, "SELECT max(version_id) FROM goose_db_version"); err != nil {
		return 0, damagedUnlessKnown(err)
	}
	if version > latest {
		return version, nil
	}
	var noted int64
	sum, err := schemaSum(ctx, db)
	if err == nil {
		err = explain(db.GetContext(ctx, &noted, "PRAGMA user_version"))
	}
	if err == nil && noted != sum {
		err = fail(ErrDamaged, fmt.Errorf("the schema has the sum %#x, noted is %#x", sum, noted))
	}
	if err != nil {
		return 0, err
	}
	return version, integrity(ctx, db, "quick_check(1)")
}

// schemaSum is a checksum of how tables, indexes and triggers are written,
// which no other check of the database looks at. It fits the file's free
// number, user_version.
func schemaSum(ctx context.Context, db sqlx.QueryerContext) (int64, error) {
	var parts []string
	const text = `SELECT type || ' ' || name || ' ' || sql FROM sqlite_schema
		WHERE name NOT LIKE 'sqlite\_%' ESCAPE '\' ORDER BY name`
	if err := sqlx.SelectContext(ctx, db, &parts, text); err != nil {
		return 0, explain(err)
	}
	sum := crc32.Checksum([]byte(strings.Join(parts, "\n")), castagnoli)
	return int64(sum >> 1), nil // 31 bits: the number is signed
}

// damagedUnlessKnown explains an error of a statement that a sound file of ours
// always answers.
func damagedUnlessKnown(err error) error {
	var e *sqlite.Error
	if errors.As(err, &e) && sqliteMeaning(err) == nil {
		return fail(ErrDamaged, err)
	}
	return explain(err)
}

// integrity runs one of SQLite's checks and fails with ErrDamaged on the first
// complaint, or on a row that refers to a missing one.
func integrity(ctx context.Context, db sqlx.QueryerContext, check string) error {
	var found []string
	if err := sqlx.SelectContext(ctx, db, &found, "PRAGMA "+check); err != nil {
		return explain(err)
	}
	if len(found) != 1 || found[0] != "ok" {
		return fail(ErrDamaged, errors.New(strings.Join(found, "; ")))
	}
	rows, err := db.QueryContext(ctx, "PRAGMA foreign_key_check")
	if err != nil {
		return explain(err)
	}
	defer rows.Close()
	if rows.Next() {
		return fail(ErrDamaged, errors.New("a row refers to one that is missing"))
	}
	return explain(rows.Err())
}

// tableCounts counts the rows of every table.
func tableCounts(ctx context.Context, db sqlx.QueryerContext) (map[string]int, error) {
	var tables []string
	const list = `SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite\_%' ESCAPE '\'`
	if err := sqlx.SelectContext(ctx, db, &tables, list); err != nil {
		return nil, explain(err)
	}
	counts := make(map[string]int, len(tables))
	for _, table := range tables {
		var n int
		if err := sqlx.GetContext(ctx, db, &n, `SELECT count(*) FROM "`+table+`"`); err != nil {
			return nil, explain(err)
		}
		counts[table] = n
	}
	return counts, nil
}

// copyInto writes a consistent, compact copy to an empty file that exists.
func copyInto(ctx context.Context, db sqlx.ExecerContext, path string) error {
	_, err := db.ExecContext(ctx, "VACUUM INTO ?", path)
	return explain(err)
}

// rewrite writes the whole file anew, because pages that were once split or
// joined keep copies of rows that secure_delete does not reach, and cuts the
// write-ahead log to nothing. It fails with ErrTracesLeft, also when a read is
// still going on.
func rewrite(ctx context.Context, db dbConn) error {
	if _, err := db.ExecContext(ctx, "VACUUM"); err != nil {
		return fail(ErrTracesLeft, explain(err))
	}
	return cutLog(ctx, db)
}

// cutLog brings the write-ahead log into the file and cuts it to nothing. It
// fails with ErrTracesLeft, also when a read is still going on.
func cutLog(ctx context.Context, db dbConn) error {
	var busy, pages, moved int
	if err := db.QueryRowxContext(ctx, "PRAGMA wal_checkpoint(TRUNCATE)").Scan(&busy, &pages, &moved); err != nil {
		return fail(ErrTracesLeft, explain(err))
	}
	if busy != 0 {
		return fail(ErrTracesLeft, errors.New("the log is being read"))
	}
	return nil
}

// guarded are the tables whose rows are kept for good.
var guarded = []string{"record", "intake", "plan_version", "handout"}

// mark writes the file's marks and the triggers that refuse to change what is
// kept for good. A row may go once its client is gone: the deletion of a client
// removes the client first and lets the rest follow.
func mark(ctx context.Context, db dbConn) error {
	statements := []string{fmt.Sprintf("PRAGMA application_id = %d", applicationID)}
	for _, table := range guarded {
		statements = append(statements,
			fmt.Sprintf(`CREATE TRIGGER %[1]s_unchanged BEFORE UPDATE ON %[1]s
				BEGIN SELECT RAISE(ABORT, '%[1]s is kept as it was made'); END`, table),
			fmt.Sprintf(`CREATE TRIGGER %[1]s_kept BEFORE DELETE ON %[1]s
				WHEN EXISTS (SELECT 1 FROM client WHERE id = OLD.client_id)
				BEGIN SELECT RAISE(ABORT, '%[1]s is kept as long as its client'); END`, table))
	}
	statements = append(statements, trailGuards...)
	if err := execAll(ctx, db, statements); err != nil {
		return err
	}
	sum, err := schemaSum(ctx, db)
	if err != nil {
		return err
	}
	return execAll(ctx, db, []string{fmt.Sprintf("PRAGMA user_version = %d", sum)})
}

// trailGuards are the triggers that let the audit trail only grow.
var trailGuards = []string{
	`CREATE TRIGGER audit_unchanged BEFORE UPDATE ON audit
		BEGIN SELECT RAISE(ABORT, 'the audit trail is kept as it was written'); END`,
	`CREATE TRIGGER audit_kept BEFORE DELETE ON audit
		BEGIN SELECT RAISE(ABORT, 'the audit trail is kept whole'); END`,
	`CREATE TRIGGER audit_head_forward BEFORE UPDATE ON audit_head WHEN NEW.entries < OLD.entries
		BEGIN SELECT RAISE(ABORT, 'the audit trail does not shrink'); END`,
	`CREATE TRIGGER audit_head_kept BEFORE DELETE ON audit_head
		BEGIN SELECT RAISE(ABORT, 'the audit trail is kept whole'); END`,
}

// unguard takes the triggers away, so that a migration may rebuild a table.
func unguard(ctx context.Context, db sqlx.ExecerContext) error {
	var statements []string
	for _, table := range guarded {
		statements = append(statements,
			"DROP TRIGGER IF EXISTS "+table+"_unchanged", "DROP TRIGGER IF EXISTS "+table+"_kept")
	}
	for _, trigger := range []string{"audit_unchanged", "audit_kept", "audit_head_forward", "audit_head_kept"} {
		statements = append(statements, "DROP TRIGGER IF EXISTS "+trigger)
	}
	return execAll(ctx, db, statements)
}

func execAll(ctx context.Context, db sqlx.ExecerContext, statements []string) error {
	for _, statement := range statements {
		if _, err := db.ExecContext(ctx, statement); err != nil {
			return explain(err)
		}
	}
	return nil
}

// sqliteMeaning returns the sentinel for what the driver reported, or nil.
func sqliteMeaning(err error) error {
	var e *sqlite.Error
	if !errors.As(err, &e) {
		return nil
	}
	switch e.Code() {
	case sqlite3.SQLITE_CONSTRAINT_UNIQUE, sqlite3.SQLITE_CONSTRAINT_PRIMARYKEY:
		return ErrConflict
	case sqlite3.SQLITE_CONSTRAINT_FOREIGNKEY:
		return ErrNotFound
	case sqlite3.SQLITE_CONSTRAINT_TRIGGER:
		return ErrImmutable
	case sqlite3.SQLITE_IOERR_SHORT_READ:
		return ErrDamaged
	}
	switch e.Code() & 0xff { // the primary code
	case sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_FORMAT:
		return ErrDamaged
	case sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED:
		return ErrInUse
	case sqlite3.SQLITE_FULL:
		return ErrDiskFull
	case sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM:
		return ErrReadOnlyFolder
	case sqlite3.SQLITE_IOERR:
		return ErrDisk
	}
	return nil
}

// onlineCopier is what the driver's connection offers for copies of the pages.
type onlineCopier interface {
	NewBackup(to string) (*sqlite.Backup, error)
}

// copyPagesAtOnce is how many pages are copied between two looks at whether the
// caller still wants the copy.
const copyPagesAtOnce = 1000

// snapshotInto copies the pages of the open file at path into an empty file
// that exists, as of one moment, while others go on reading and writing. It
// returns how many rows each table had at that moment.
func snapshotInto(ctx context.Context, path, fresh string) (_ map[string]int, err error) {
	db, err := openPool(path, readerSettings, 1)
	if err != nil {
		return nil, explain(err)
	}
	defer func() { err = errors.Join(err, explain(db.Close())) }()
	conn, err := db.Connx(ctx)
	if err != nil {
		return nil, explain(err)
	}
	defer conn.Close()
	// One transaction around both: the copy has exactly what was counted.
	if _, err := conn.ExecContext(ctx, "BEGIN DEFERRED"); err != nil {
		return nil, explain(err)
	}
	counts, err := tableCounts(ctx, conn)
	if err != nil {
		return nil, err
	}
	if err := conn.Raw(func(driver any) error { return copyPages(ctx, driver, fresh) }); err != nil {
		return nil, explain(err)
	}
	_, err = conn.ExecContext(ctx, "COMMIT")
	return counts, explain(err)
}

func copyPages(ctx context.Context, driver any, fresh string) (err error) {
	copier, ok := driver.(onlineCopier)
	if !ok {
		return fmt.Errorf("the driver's connection %T cannot copy", driver)
	}
	pages, err := copier.NewBackup(address(fresh, ""))
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, pages.Finish()) }()
	for more := true; more; {
		if err := ctx.Err(); err != nil {
			return err
		}
		if more, err = pages.Step(copyPagesAtOnce); err != nil {
			return err
		}
	}
	return nil
}

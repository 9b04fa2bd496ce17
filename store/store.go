package store

import (
	"context"
	"database/sql"
	"errors"
	"io/fs"
	"sync"
	"time"

	"github.com/jmoiron/sqlx"

	"handbreadth/store/vault"
)

// Options of [Open]. The zero value is usable.
type Options struct {
	// Sealer protects bodies of a file that has no passphrase yet; nil is
	// [PassThrough], which does not encrypt.
	Sealer Sealer
	// Effort is how much work one try of a passphrase costs that is set from now
	// on; 0 is measured then, so that unlocking takes about a second.
	Effort vault.Effort
	// Clock tells the time of each change; nil is time.Now.
	Clock func() time.Time
}

// Store is an open client file. It may be used from several goroutines.
type Store struct {
	path   string
	lock   *fileLock
	writer *sqlx.DB // one connection
	reader *sqlx.DB // several, which cannot write
	sealer Sealer   // changes while safe.gate is held for writing only
	clock  func() time.Time
	safe   safe

	backingUp sync.Mutex // one backup at a time
}

// Open opens the client file at path, making it when it is missing. See the
// package documentation for what it does on the way and how it fails.
func Open(ctx context.Context, path string, opts Options) (*Store, error) {
	return openWith(ctx, path, opts, shipped())
}

func openWith(ctx context.Context, path string, opts Options, migrations fs.FS) (_ *Store, err error) {
	if opts.Sealer == nil {
		opts.Sealer = PassThrough{}
	}
	if opts.Clock == nil {
		opts.Clock = time.Now
	}
	path, err = settle(path)
	if err != nil {
		return nil, err
	}
	lock, err := takeLock(path + lockMark)
	if err != nil {
		return nil, err
	}
	s := &Store{path: path, lock: lock, sealer: opts.Sealer, clock: opts.Clock}
	defer func() {
		if err != nil {
			err = errors.Join(err, s.Close())
		}
	}()
	if err := sweepBeside(path); err != nil {
		return nil, err
	}
	if err := prepare(ctx, path, migrations); err != nil {
		return nil, err
	}
	if s.writer, err = openPool(path, writerSettings, 1); err != nil {
		return nil, explain(err)
	}
	if s.reader, err = openPool(path, readerSettings, readers); err != nil {
		return nil, explain(err)
	}
	for _, db := range []*sqlx.DB{s.writer, s.reader} {
		if err := db.PingContext(ctx); err != nil {
			return nil, explain(err)
		}
	}
	s.safe.effort = opts.Effort
	if err := s.wipeIfDue(ctx); err != nil {
		return nil, err
	}
	if err := s.readSafe(ctx); err != nil {
		return nil, err
	}
	if err := s.settleRestore(ctx); err != nil && !canWait(err) {
		return nil, err
	}
	return s, nil
}

// lockMark ends the name of the lock file.
const lockMark = ".lock"

// Path returns the absolute path of the client file, links followed.
func (s *Store) Path() string { return s.path }

// Close ends all work, brings everything into the one file and lets go of it.
// The Store cannot be used afterwards.
func (s *Store) Close() error {
	s.leave()
	var trouble error
	for _, db := range []*sqlx.DB{s.reader, s.writer} {
		if db != nil {
			trouble = errors.Join(trouble, explain(db.Close()))
		}
	}
	return errors.Join(trouble, s.lock.release())
}

// write runs fn in one transaction of the write connection. When it returns nil
// the change is on the disk; when not, nothing of it was kept. It fails with
// ErrLocked. What is sealed is sealed inside fn: the sealer stays the same there.
func (s *Store) write(ctx context.Context, fn func(tx *sqlx.Tx) error) error {
	return s.unlocked(func() error { return s.writeAny(ctx, fn) })
}

// read runs fn in one transaction that sees one committed state. It fails with
// ErrLocked.
func (s *Store) read(ctx context.Context, fn func(tx *sqlx.Tx) error) error {
	return s.unlocked(func() error { return s.readAny(ctx, fn) })
}

// unlocked runs fn while nobody locks the file. It must not be called inside
// itself: a Lock that waits in between would wait for ever.
func (s *Store) unlocked(fn func() error) error {
	s.safe.gate.RLock()
	defer s.safe.gate.RUnlock()
	if s.safe.isLocked() {
		return fail(ErrLocked, nil)
	}
	return fn()
}

// writeAny is write for what is not sealed: it works while the file is locked.
func (s *Store) writeAny(ctx context.Context, fn func(tx *sqlx.Tx) error) error {
	return inTransaction(ctx, s.writer, nil, fn)
}

// readAny is read for what is not sealed: it works while the file is locked.
func (s *Store) readAny(ctx context.Context, fn func(tx *sqlx.Tx) error) error {
	return inTransaction(ctx, s.reader, &sql.TxOptions{ReadOnly: true}, fn)
}

func inTransaction(ctx context.Context, db *sqlx.DB, opts *sql.TxOptions, fn func(tx *sqlx.Tx) error) error {
	tx, err := db.BeginTxx(ctx, opts)
	if err != nil {
		return explain(err)
	}
	defer tx.Rollback() // after a commit this does nothing
	if err := fn(tx); err != nil {
		return explain(err)
	}
	return explain(tx.Commit())
}

// run executes a statement and returns how many rows it changed.
func run(ctx context.Context, tx *sqlx.Tx, query string, args ...any) (int64, error) {
	result, err := tx.ExecContext(ctx, tx.Rebind(query), args...)
	if err != nil {
		return 0, err
	}
	return result.RowsAffected()
}

// execOne runs a statement that must change exactly one row, else ErrNotFound.
func execOne(ctx context.Context, tx *sqlx.Tx, query string, args ...any) error {
	n, err := run(ctx, tx, query, args...)
	if err == nil && n != 1 {
		err = fail(ErrNotFound, nil)
	}
	return err
}

// get reads one row, sql.ErrNoRows when there is none.
func get(ctx context.Context, tx *sqlx.Tx, dest any, query string, args ...any) error {
	return tx.GetContext(ctx, dest, tx.Rebind(query), args...)
}

// list reads all rows into a slice.
func list(ctx context.Context, tx *sqlx.Tx, dest any, query string, args ...any) error {
	return tx.SelectContext(ctx, dest, tx.Rebind(query), args...)
}

package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"sync"

	"github.com/jmoiron/sqlx"

	"handbreadth/store/vault"
)

// safe is what a Store knows of its keys.
type safe struct {
	// doing lets one call at a time change keys: unlocking, a new passphrase,
	// a rotation.
	doing  sync.Mutex
	effort vault.Effort

	// gate is held for reading by every transaction, and for writing while the
	// sealer changes, so that nothing sealed for before is written after.
	gate      sync.RWMutex
	ring      *vault.Ring // nil: the file has no passphrase
	keys      *vault.Keys // nil: locked, or no passphrase
	former    Sealer      // opens what was kept before the first sealing
	work      string      // on the seals, not finished: "", workSeal or workRotate
	confirmed string      // the mark of the recovery code that was typed back

	trying sync.Mutex
	tries  vault.Tries

	session session
}

func (f *safe) isLocked() bool { return f.ring != nil && f.keys == nil }

const (
	workSeal   = "seal"
	workRotate = "rotate"
)

// The rows of the table vault.
const (
	rowRing      = "ring"
	rowSecond    = "ring_second" // the same again, in case that a sector goes bad
	rowWork      = "work"
	rowTries     = "tries"
	rowConfirmed = "confirmed"
)

// readSafe looks whether the file has a passphrase. A file with a passphrase is
// locked from here on.
func (s *Store) readSafe(ctx context.Context) error {
	rows := map[string][]byte{}
	if err := s.readAny(ctx, func(tx *sqlx.Tx) error {
		var all []struct {
			Name string `db:"name"`
			Body []byte `db:"body"`
		}
		err := list(ctx, tx, &all, "SELECT name, body FROM vault")
		for _, row := range all {
			rows[row.Name] = row.Body
		}
		return err
	}); err != nil {
		return err
	}
	s.safe.former = s.sealer
	s.safe.session.start()
	_ = json.Unmarshal(rows[rowTries], &s.safe.tries) // damaged: counted anew
	if rows[rowRing] == nil && rows[rowSecond] == nil {
		return nil
	}
	ring, err := vault.ParseRing(rows[rowRing])
	if err != nil {
		var second error
		if ring, second = vault.ParseRing(rows[rowSecond]); second != nil {
			return fail(ErrDamaged, fmt.Errorf("both copies of the key ring: %w", errors.Join(err, second)))
		}
	}
	s.safe.ring, s.safe.work, s.safe.confirmed = ring, string(rows[rowWork]), string(rows[rowConfirmed])
	s.sealer = noKeys{}
	return nil
}

func putVault(ctx context.Context, tx *sqlx.Tx, name string, body []byte) error {
	return execOne(ctx, tx, "INSERT INTO vault (name, body) VALUES (?, ?) "+
		"ON CONFLICT (name) DO UPDATE SET body = excluded.body", name, body)
}

func dropVault(ctx context.Context, tx *sqlx.Tx, name string) error {
	_, err := run(ctx, tx, "DELETE FROM vault WHERE name = ?", name)
	return err
}

func putRing(ctx context.Context, tx *sqlx.Tx, ring *vault.Ring) error {
	text := ring.Bytes()
	return errors.Join(putVault(ctx, tx, rowRing, text), putVault(ctx, tx, rowSecond, text))
}

func putTries(ctx context.Context, tx *sqlx.Tx, tries vault.Tries) error {
	body, err := json.Marshal(tries)
	if err != nil {
		return err
	}
	if tries.Wrong > 0 {
		return putVault(ctx, tx, rowTries, body)
	}
	// Most starts have nothing to take back, and write nothing.
	var there int
	err = get(ctx, tx, &there, "SELECT 1 FROM vault WHERE name = ?", rowTries)
	if errors.Is(err, sql.ErrNoRows) {
		return nil
	}
	return errors.Join(err, dropVault(ctx, tx, rowTries))
}

// adopt writes a changed key ring to the file and uses it from then on; begun,
// where it is not empty, is the work that the change begins. Nothing runs
// meanwhile.
func (s *Store) adopt(ctx context.Context, keys *vault.Keys, begun string) error {
	s.safe.gate.Lock()
	defer s.safe.gate.Unlock()
	err := s.writeAny(ctx, func(tx *sqlx.Tx) error {
		if err := putRing(ctx, tx, keys.Ring()); err != nil || begun == "" {
			return err
		}
		return putVault(ctx, tx, rowWork, []byte(begun))
	})
	if err != nil {
		keys.Lock()
		return err
	}
	if begun != "" {
		s.safe.work = begun
	}
	s.use(keys)
	return nil
}

// openKeys returns the keys of the open file, for what is sealed outside of it.
// It fails with ErrLocked, and with ErrNotSealed where there is no passphrase.
// It must not be called inside read or write.
func (s *Store) openKeys() (*vault.Keys, error) {
	s.safe.gate.RLock()
	defer s.safe.gate.RUnlock()
	switch {
	case s.safe.ring == nil:
		return nil, fail(ErrNotSealed, nil)
	case s.safe.keys == nil:
		return nil, fail(ErrLocked, nil)
	}
	return s.safe.keys, nil
}

// session is the time from the unlocking, or the opening of a file without a
// passphrase, to the locking.
type session struct {
	mu    sync.Mutex
	ctx   context.Context
	end   context.CancelFunc
	names []*NameIndex
}

func (x *session) start() {
	x.mu.Lock()
	defer x.mu.Unlock()
	if x.ctx == nil {
		x.ctx, x.end = context.WithCancel(context.Background())
	}
}

// stop ends the session and returns the indexes that belong to it.
func (x *session) stop() []*NameIndex {
	x.mu.Lock()
	defer x.mu.Unlock()
	if x.ctx == nil {
		return nil
	}
	x.end()
	names := x.names
	x.ctx, x.end, x.names = nil, nil, nil
	return names
}

// within returns a context that also ends with the session, ErrLocked outside
// of one.
func (x *session) within(ctx context.Context) (context.Context, context.CancelFunc, error) {
	x.mu.Lock()
	defer x.mu.Unlock()
	if x.ctx == nil {
		return nil, nil, fail(ErrLocked, nil)
	}
	both, cancel := context.WithCancelCause(ctx)
	stop := context.AfterFunc(x.ctx, func() { cancel(fail(ErrLocked, nil)) })
	return both, func() { stop(); cancel(nil) }, nil
}

// join makes an index one of the session, and returns the session's context.
func (x *session) join(index *NameIndex) (context.Context, error) {
	x.mu.Lock()
	defer x.mu.Unlock()
	if x.ctx == nil {
		return nil, fail(ErrLocked, nil)
	}
	x.names = append(x.names, index)
	return x.ctx, nil
}

package store

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jmoiron/sqlx"

	"handbreadth/store/vault"
)

// Sealed reports whether the file has a passphrase.
func (s *Store) Sealed() bool {
	s.safe.gate.RLock()
	defer s.safe.gate.RUnlock()
	return s.safe.ring != nil
}

// Locked reports whether the file has a passphrase that was not given yet, or
// was locked since. Then only Sealed, Locked, UnlockWait, Unlock, Recover, Path
// and Close work; everything else fails with ErrLocked.
func (s *Store) Locked() bool {
	s.safe.gate.RLock()
	defer s.safe.gate.RUnlock()
	return s.safe.isLocked()
}

// Unlock opens a locked file with the passphrase. It takes about a second, and
// cannot be hurried: run it beside the window. It fails with ErrWrongPassphrase,
// with ErrTooSoon after several wrong ones (see UnlockWait), with ErrNotSealed,
// and with ErrDamaged when no copy of the key ring is whole.
//
// Call Resume afterwards: an interrupted sealing or rotation then goes on. On a
// file that is open already the passphrase is checked and nothing else happens.
func (s *Store) Unlock(ctx context.Context, passphrase string) error {
	s.safe.doing.Lock()
	defer s.safe.doing.Unlock()
	keys, wrong, err := s.try(ctx, passphrase)
	if err != nil {
		return err
	}
	if !s.Locked() {
		keys.Lock()
		return nil
	}
	s.enter(keys)
	if wrong == 0 {
		return s.welcome(ctx, Detail{})
	}
	return s.welcome(ctx, Detail{What: "wrong_passphrases_before", Number: wrong})
}

// Recover opens the file with the recovery code and gives it a new passphrase;
// the code stays as it is. It is never delayed: nobody guesses a code. It fails
// with ErrWrongCode, ErrWeakPassphrase and ErrNotSealed; nothing is changed then.
func (s *Store) Recover(ctx context.Context, code vault.RecoveryCode, passphrase string) error {
	s.safe.doing.Lock()
	defer s.safe.doing.Unlock()
	ring, err := s.ring()
	if err != nil {
		return err
	}
	found, err := ring.Recover(code)
	if err != nil {
		return explainVault(err)
	}
	defer found.Lock()
	keys, err := found.WithPassphrase(passphrase, s.safe.effort)
	if err != nil {
		return explainVault(err)
	}
	if err := s.adopt(ctx, keys, ""); err != nil {
		return err
	}
	if err := s.forgetTries(ctx); err != nil {
		return err
	}
	if err := s.cutLog(ctx); err != nil {
		return err
	}
	return s.welcome(ctx, Detail{What: "recovery_code"})
}

// welcome writes the unlocking into the audit trail, and what waited for it.
// What cannot be written on a full disk does not keep the owner out.
func (s *Store) welcome(ctx context.Context, about Detail) error {
	err := s.Note(ctx, Unlocked, "", about)
	if err == nil {
		err = s.settleRestore(ctx)
	}
	if err != nil && canWait(err) {
		return nil
	}
	return err
}

// cutLog takes the former key ring out of the write-ahead log. Where a backup is
// reading that, the next opening wipes the file.
func (s *Store) cutLog(ctx context.Context) error {
	err := fail(ErrTracesLeft, nil)
	if s.backingUp.TryLock() {
		err = s.alone(func() error { return cutLog(ctx, s.writer) })
		s.backingUp.Unlock()
	}
	if errors.Is(err, ErrTracesLeft) {
		return s.writeAny(ctx, func(tx *sqlx.Tx) error { return putMeta(ctx, tx, wipeNote, "yes") })
	}
	return err
}

// alone runs fn while no transaction runs.
func (s *Store) alone(fn func() error) error {
	s.safe.gate.Lock()
	defer s.safe.gate.Unlock()
	return fn()
}

// ring returns the key ring of the file, or ErrNotSealed.
func (s *Store) ring() (*vault.Ring, error) {
	s.safe.gate.RLock()
	defer s.safe.gate.RUnlock()
	if s.safe.ring == nil {
		return nil, fail(ErrNotSealed, nil)
	}
	return s.safe.ring, nil
}

// try unwraps the keys with a passphrase. A try is counted before it is made,
// so that ending the program in the middle does not save it; the right one takes
// the count back. It returns how many wrong ones there were before.
func (s *Store) try(ctx context.Context, passphrase string) (_ *vault.Keys, wrong int, err error) {
	ring, err := s.ring()
	if err != nil {
		return nil, 0, err
	}
	if wait := s.UnlockWait(); wait > 0 {
		return nil, 0, tooSoon(wait)
	}
	wrong = s.countTry(ctx)
	keys, err := ring.Unlock(passphrase)
	if err != nil {
		return nil, wrong, explainVault(err)
	}
	if err := s.forgetTries(ctx); err != nil {
		keys.Lock()
		return nil, wrong, err
	}
	return keys, wrong, nil
}

func tooSoon(wait time.Duration) error {
	seconds := int((wait + time.Second - 1) / time.Second)
	return &UserError{
		Plain: fmt.Sprintf("Too many wrong passphrases one after the other. Try again in %s.", counted(seconds, "second")),
		kind:  ErrTooSoon, cause: fmt.Errorf("%v to wait", wait),
	}
}

func counted(n int, what string) string {
	if n != 1 {
		what += "s"
	}
	return fmt.Sprintf("%d %s", n, what)
}

// UnlockWait is how long to wait until the next passphrase may be tried, mostly
// nothing. A clock that was set back does not make it longer than five minutes.
func (s *Store) UnlockWait() time.Duration {
	s.safe.trying.Lock()
	defer s.safe.trying.Unlock()
	now := s.clock()
	s.safe.tries = s.safe.tries.Seen(now)
	return s.safe.tries.Wait(now)
}

// countTry counts a passphrase as wrong in memory and in the file. A file that
// cannot be written now still lets its owner in.
func (s *Store) countTry(ctx context.Context) (before int) {
	s.safe.trying.Lock()
	defer s.safe.trying.Unlock()
	before = s.safe.tries.Wrong
	s.safe.tries = s.safe.tries.After(s.clock())
	_ = s.writeAny(ctx, func(tx *sqlx.Tx) error { return putTries(ctx, tx, s.safe.tries) })
	return before
}

// forgetTries begins the count anew. What could not be written is written the
// next time; it must not keep the owner out.
func (s *Store) forgetTries(ctx context.Context) error {
	s.safe.trying.Lock()
	defer s.safe.trying.Unlock()
	s.safe.tries = vault.Tries{}
	err := s.writeAny(ctx, func(tx *sqlx.Tx) error { return putTries(ctx, tx, s.safe.tries) })
	if errors.Is(err, ErrDiskFull) || errors.Is(err, ErrReadOnlyFolder) {
		return nil
	}
	return err
}

// Lock takes the keys out of memory. It waits for a save that is on its way,
// stops what runs in the background, and empties the indexes of names. What
// comes after fails with ErrLocked. A file without a passphrase has nothing to
// lock with: nothing happens.
func (s *Store) Lock() {
	s.safe.gate.RLock()
	locked := s.safe.ring == nil || s.safe.isLocked()
	s.safe.gate.RUnlock()
	if !locked {
		s.leave()
	}
}

// leave ends the session: see Lock and Close.
func (s *Store) leave() {
	names := s.safe.session.stop()
	for _, index := range names {
		index.close()
	}
	s.safe.gate.Lock()
	defer s.safe.gate.Unlock()
	if s.safe.keys == nil {
		return
	}
	s.safe.keys.Lock()
	s.safe.keys = nil
	s.sealer = noKeys{}
}

// enter makes the keys those of the Store and begins a session.
func (s *Store) enter(keys *vault.Keys) {
	s.safe.gate.Lock()
	defer s.safe.gate.Unlock()
	s.use(keys)
}

// use puts the keys in place of the former ones. The gate is held.
func (s *Store) use(keys *vault.Keys) {
	if former := s.safe.keys; former != nil && former != keys {
		former.Lock()
	}
	s.safe.keys, s.safe.ring = keys, keys.Ring()
	s.sealer = keys
	if s.safe.work == workSeal {
		s.sealer = halfSealed{keys, s.safe.former}
	}
	s.safe.session.start()
}

// noKeys is the sealer of a locked file.
type noKeys struct{}

func (noKeys) Seal(string, string, string, int, []byte) ([]byte, error) { return nil, vault.ErrLocked }

func (noKeys) Open(string, string, string, int, []byte) ([]byte, error) { return nil, vault.ErrLocked }

// halfSealed is the sealer of a file whose first sealing is not finished: it
// seals what is new and still opens what was there before. Once it is finished,
// a value that nobody sealed is refused.
type halfSealed struct {
	*vault.Keys
	former Sealer
}

// Open implements Sealer.
func (h halfSealed) Open(table, rowID, column string, version int, sealed []byte) ([]byte, error) {
	if _, ok := vault.KeyOf(sealed); !ok {
		return h.former.Open(table, rowID, column, version, sealed)
	}
	return h.Keys.Open(table, rowID, column, version, sealed)
}

// explainVault turns an error of the vault into one of this package.
func explainVault(err error) error {
	if errors.Is(err, ErrLocked) {
		return fail(ErrLocked, nil)
	}
	for _, known := range []struct{ vault, ours error }{
		{vault.ErrPassphrase, ErrWrongPassphrase},
		{vault.ErrCode, ErrWrongCode},
		{vault.ErrRing, ErrDamaged},
	} {
		if errors.Is(err, known.vault) {
			return fail(known.ours, err)
		}
	}
	if weak := new(vault.WeakError); errors.As(err, &weak) {
		return &UserError{Plain: weak.Advice.Words, kind: ErrWeakPassphrase, cause: err}
	}
	if slip := new(vault.CodeProblem); errors.As(err, &slip) {
		return &UserError{Plain: slip.Plain, kind: ErrWrongCode, cause: err}
	}
	return err
}

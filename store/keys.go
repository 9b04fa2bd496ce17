package store

import (
	"context"
	"errors"

	"github.com/jmoiron/sqlx"

	"handbreadth/store/vault"
)

// Progress is told how far a long work is. Both count entries of the file.
type Progress func(done, total int)

// SetPassphrase gives the file its first passphrase: from here on everything new
// is sealed, then everything that is there already, then the file is wiped of
// what it was, and the unsealed copies beside it (see OldCopies) are removed.
//
// The recovery code is returned as soon as the passphrase holds, even with an
// error: show it, it cannot be had again. Cancelled or killed on the way, the
// file has its passphrase, and Resume goes on after the next Unlock. It fails
// with ErrWeakPassphrase and with ErrAlreadySealed; nothing is changed then.
// Unsealed backups elsewhere are not touched.
func (s *Store) SetPassphrase(ctx context.Context, passphrase string, progress Progress) (vault.RecoveryCode, error) {
	s.safe.doing.Lock()
	defer s.safe.doing.Unlock()
	if s.Sealed() {
		return vault.RecoveryCode{}, fail(ErrAlreadySealed, nil)
	}
	keys, code, err := vault.Create(passphrase, s.safe.effort)
	if err != nil {
		return vault.RecoveryCode{}, explainVault(err)
	}
	if err := s.adopt(ctx, keys, workSeal); err != nil {
		return vault.RecoveryCode{}, err
	}
	if err := s.noteKeys(ctx, "passphrase"); err != nil {
		return code, err
	}
	return code, s.finish(ctx, progress)
}

// noteKeys writes a change of the keys into the audit trail. On a full disk it
// is left out: the change itself is made.
func (s *Store) noteKeys(ctx context.Context, what string) error {
	if err := s.Note(ctx, Changed, "", Detail{What: what}); err != nil && !canWait(err) {
		return err
	}
	return nil
}

// ChangePassphrase puts a new passphrase in the place of the old one. Copies of
// the file and backups made before still open with the old one: where somebody
// else knows it, call RotateKey as well and make a new backup. It fails with
// ErrWrongPassphrase, ErrTooSoon, ErrWeakPassphrase and ErrLocked.
func (s *Store) ChangePassphrase(ctx context.Context, old, passphrase string) error {
	return s.changeRing(ctx, "passphrase", old, func(keys *vault.Keys) (*vault.Keys, error) {
		return keys.WithPassphrase(passphrase, s.safe.effort)
	})
}

// NewRecoveryCode makes a new recovery code; the former one no longer opens the
// file. It asks for the passphrase, so that nobody makes one at a desk that was
// left open. It fails with ErrWrongPassphrase, ErrTooSoon and ErrLocked.
func (s *Store) NewRecoveryCode(ctx context.Context, passphrase string) (code vault.RecoveryCode, err error) {
	err = s.changeRing(ctx, "recovery_code", passphrase, func(keys *vault.Keys) (next *vault.Keys, err error) {
		next, code, err = keys.WithRecoveryCode()
		return next, err
	})
	if err != nil {
		return vault.RecoveryCode{}, err
	}
	return code, nil
}

// changeRing checks the passphrase and puts a key ring in place of which something
// is new.
func (s *Store) changeRing(
	ctx context.Context, what, passphrase string, change func(*vault.Keys) (*vault.Keys, error),
) error {
	s.safe.doing.Lock()
	defer s.safe.doing.Unlock()
	if _, err := s.openKeys(); err != nil {
		return err
	}
	found, _, err := s.try(ctx, passphrase)
	if err != nil {
		return err
	}
	defer found.Lock()
	keys, err := change(found)
	if err != nil {
		return explainVault(err)
	}
	if err := s.adopt(ctx, keys, ""); err != nil {
		return err
	}
	if err := s.cutLog(ctx); err != nil {
		return err
	}
	return s.noteKeys(ctx, what)
}

// ConfirmRecoveryCode checks a code that was typed back from the sheet, and
// notes that the sheet is good. It fails with ErrWrongCode and ErrLocked.
func (s *Store) ConfirmRecoveryCode(ctx context.Context, code vault.RecoveryCode) error {
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
	found.Lock()
	mark := ring.CodeMark()
	err = s.write(ctx, func(tx *sqlx.Tx) error { return putVault(ctx, tx, rowConfirmed, []byte(mark)) })
	if err != nil {
		return err
	}
	s.safe.gate.Lock()
	defer s.safe.gate.Unlock()
	s.safe.confirmed = mark
	return nil
}

// RecoveryConfirmed reports whether the present recovery code was typed back
// from its sheet.
func (s *Store) RecoveryConfirmed() bool {
	s.safe.gate.RLock()
	defer s.safe.gate.RUnlock()
	return s.safe.ring != nil && s.safe.confirmed == s.safe.ring.CodeMark()
}

// RotateKey makes a new data key, seals everything with it, and forgets the
// former one. It needs neither passphrase nor code. Cancelled or killed on the
// way, both keys stay in use, and Resume goes on. It fails with ErrLocked and
// ErrNotSealed.
func (s *Store) RotateKey(ctx context.Context, progress Progress) error {
	s.safe.doing.Lock()
	defer s.safe.doing.Unlock()
	keys, err := s.openKeys()
	if err != nil {
		return err
	}
	if s.Unfinished() {
		if err := s.finish(ctx, nil); err != nil {
			return err
		}
		if keys, err = s.openKeys(); err != nil {
			return err
		}
	}
	next, err := keys.WithNewKey()
	if err != nil {
		return explainVault(err)
	}
	if err := s.adopt(ctx, next, workRotate); err != nil {
		return err
	}
	if err := s.noteKeys(ctx, "data_key"); err != nil {
		return err
	}
	return s.finish(ctx, progress)
}

// Unfinished reports whether a first sealing or a rotation was interrupted. The
// file works meanwhile.
func (s *Store) Unfinished() bool {
	s.safe.gate.RLock()
	defer s.safe.gate.RUnlock()
	return s.safe.work != ""
}

// Resume goes on with an interrupted first sealing or rotation; where there is
// none it does nothing. It can be cancelled as well. It fails with ErrLocked.
func (s *Store) Resume(ctx context.Context, progress Progress) error {
	s.safe.doing.Lock()
	defer s.safe.doing.Unlock()
	if _, err := s.openKeys(); errors.Is(err, ErrNotSealed) {
		return nil
	} else if err != nil {
		return err
	}
	if !s.Unfinished() {
		return nil
	}
	return s.finish(ctx, progress)
}

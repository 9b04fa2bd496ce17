package store

import (
	"context"
	"crypto/rand"
	"errors"
	"io"

	"handbreadth/store/vault"
)

// container encrypts the content of a backup.
type container interface {
	// seal returns a writer for the content; its Close ends the content and
	// leaves dst open.
	seal(dst io.Writer) (io.WriteCloser, error)
	// open gives the content back, with the key that seal used.
	open(src io.Reader) (io.Reader, error)
}

// opener opens the container of a backup.
type opener func(src io.Reader) (io.Reader, error)

// container returns what encrypts the backups of this file: nil where it has no
// passphrase. It fails with ErrLocked.
func (s *Store) container() (container, error) {
	keys, err := s.openKeys()
	if errors.Is(err, ErrNotSealed) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	return vaultContainer{keys}, nil
}

// vaultContainer is a container of the vault, with the keys of the open file.
type vaultContainer struct{ keys *vault.Keys }

func (c vaultContainer) seal(dst io.Writer) (io.WriteCloser, error) {
	w, err := c.keys.NewWriter(dst)
	return w, explainContainer(err)
}

func (c vaultContainer) open(src io.Reader) (io.Reader, error) {
	found, err := vault.OpenContainer(src)
	if err != nil {
		return nil, explainContainer(err)
	}
	r, err := found.NewReader(c.keys)
	return r, explainContainer(err)
}

// Secret is what a person types to open a backup. The zero value is for backups
// that are not sealed.
type Secret struct {
	passphrase string
	code       vault.RecoveryCode
}

// WithPassphrase opens a backup with the passphrase of the day it was made on.
func WithPassphrase(passphrase string) Secret { return Secret{passphrase: passphrase} }

// WithRecoveryCode opens a backup with the recovery code of its day.
func WithRecoveryCode(code vault.RecoveryCode) Secret { return Secret{code: code} }

func (s Secret) isZero() bool { return s.passphrase == "" && s.code.IsZero() }

// open opens a container. It fails with ErrWrongPassphrase, ErrWrongCode, or
// ErrDamaged.
func (s Secret) open(src io.Reader) (io.Reader, error) {
	found, err := vault.OpenContainer(src)
	if err != nil {
		return nil, explainContainer(err)
	}
	unlock := func() (*vault.Keys, error) { return found.Ring().Recover(s.code) }
	if s.code.IsZero() {
		unlock = func() (*vault.Keys, error) { return found.Ring().Unlock(s.passphrase) }
	}
	keys, err := unlock()
	if err != nil {
		return nil, explainContainer(err)
	}
	defer keys.Lock()
	r, err := found.NewReader(keys)
	return r, explainContainer(err)
}

// unlock opens a restored file, on trial: with the code it gets a passphrase
// that nobody knows.
func (s Secret) unlock(ctx context.Context, file *Store) error {
	switch {
	case !file.Locked():
		return nil
	case s.code.IsZero():
		return file.Unlock(ctx, s.passphrase)
	}
	return file.Recover(ctx, s.code, rand.Text())
}

// explainContainer turns an error of the vault into one for backups.
func explainContainer(err error) error {
	switch {
	case err == nil:
		return nil
	case errors.Is(err, vault.ErrContainer), errors.Is(err, vault.ErrRing), errors.Is(err, vault.ErrKey):
		return backupDamaged(err)
	}
	return explainVault(err)
}

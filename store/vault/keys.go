package vault

import (
	"crypto/rand"
	"fmt"
	"slices"
	"sync"

	"filippo.io/age"
)

// Keys are the data keys in memory, with the key ring that they came from. They
// seal and open values; they may be used from several goroutines. After
// [Keys.Lock] nothing but ErrLocked comes from them.
type Keys struct {
	mu      sync.RWMutex
	ring    *Ring
	keys    []*dataKey // in the order of the ring; the last one seals
	readers readers
}

type dataKey struct {
	id  KeyID
	key [keySize]byte
}

// readers are the public halves of the passphrase's and of the recovery code's
// identity: what a new data key is wrapped for, without knowing either.
type readers struct{ passphrase, recovery *age.X25519Recipient }

func newDataKey(taken []*dataKey) *dataKey {
	k := &dataKey{}
	rand.Read(k.key[:])
	for {
		rand.Read(k.id[:])
		if !slices.ContainsFunc(taken, func(other *dataKey) bool { return other.id == k.id }) {
			return k
		}
	}
}

// Seal protects a value that belongs at a place. Only [Keys.Open] for the same
// place gives it back. It fails with ErrLocked.
func (k *Keys) Seal(table, rowID, column string, version int, plain []byte) ([]byte, error) {
	k.mu.RLock()
	defer k.mu.RUnlock()
	if len(k.keys) == 0 {
		return nil, ErrLocked
	}
	with := k.keys[len(k.keys)-1]
	return sealValue(&with.key, with.id, placeOf(with.id, table, rowID, column, version), plain)
}

// Open gives back what was sealed for this place. It fails with ErrValue when
// the value was changed, cut short or sealed for another place, with ErrKey
// when none of the keys is the one it was sealed with, and with ErrLocked.
func (k *Keys) Open(table, rowID, column string, version int, sealed []byte) ([]byte, error) {
	k.mu.RLock()
	defer k.mu.RUnlock()
	if len(k.keys) == 0 {
		return nil, ErrLocked
	}
	id, ok := KeyOf(sealed)
	if !ok {
		return nil, ErrValue
	}
	with := k.find(id)
	if with == nil {
		return nil, fmt.Errorf("%w: %s", ErrKey, id)
	}
	return openValue(&with.key, placeOf(id, table, rowID, column, version), sealed)
}

func (k *Keys) find(id KeyID) *dataKey {
	for _, key := range k.keys {
		if key.id == id {
			return key
		}
	}
	return nil
}

// Current returns the id of the key that seals, and false when locked.
func (k *Keys) Current() (KeyID, bool) {
	k.mu.RLock()
	defer k.mu.RUnlock()
	if len(k.keys) == 0 {
		return KeyID{}, false
	}
	return k.keys[len(k.keys)-1].id, true
}

// Rotating reports whether more than one key is in use.
func (k *Keys) Rotating() bool {
	k.mu.RLock()
	defer k.mu.RUnlock()
	return len(k.keys) > 1
}

// Lock overwrites the keys. It waits for a value that is being sealed. What the
// libraries and the passphrase's text leave in memory is given back to the
// system as far as the language allows.
func (k *Keys) Lock() {
	k.mu.Lock()
	defer k.mu.Unlock()
	for _, key := range k.keys {
		clear(key.key[:])
	}
	k.keys, k.readers = nil, readers{}
	tidyMemory()
}

// Ring returns the key ring as it is to be kept. It has no secret in clear.
func (k *Keys) Ring() *Ring {
	k.mu.RLock()
	defer k.mu.RUnlock()
	return k.ring
}

// WithPassphrase returns a ring with the same keys that opens with another
// passphrase from now on. Copies of the former ring still open with the former
// one: see AddKey.
func (k *Keys) WithPassphrase(passphrase string, effort Effort) (*Keys, error) {
	return k.changed(func(next *Keys) (err error) {
		next.readers.passphrase, next.ring.passphrase, err = newPassphraseSlot(passphrase, effort)
		return err
	})
}

// WithRecoveryCode returns a ring with the same keys and a new recovery code.
func (k *Keys) WithRecoveryCode() (*Keys, RecoveryCode, error) {
	code := NewRecoveryCode()
	next, err := k.changed(func(next *Keys) (err error) {
		next.readers.recovery, next.ring.recovery, err = newSlot(code.secret(), codeEffort)
		return err
	})
	return next, code, err
}

// WithNewKey begins a rotation: the ring it returns seals with a new key and
// still opens what the former ones sealed. The new key is wrapped for the
// passphrase and the recovery code of today only.
func (k *Keys) WithNewKey() (*Keys, error) {
	return k.changed(func(next *Keys) error {
		next.keys = append(next.keys, newDataKey(next.keys))
		return nil
	})
}

// WithOnlyCurrent ends a rotation: only the key that seals is left.
func (k *Keys) WithOnlyCurrent() (*Keys, error) {
	return k.changed(func(next *Keys) error {
		last := len(next.keys) - 1
		for _, former := range next.keys[:last] {
			clear(former.key[:])
		}
		next.keys = next.keys[last:]
		return nil
	})
}

// changed copies the keys, lets change work on the copy, and wraps all of it
// anew. The receiver stays as it was, so that a ring that could not be written
// to the file is not in use either.
func (k *Keys) changed(change func(next *Keys) error) (*Keys, error) {
	k.mu.RLock()
	defer k.mu.RUnlock()
	if len(k.keys) == 0 {
		return nil, ErrLocked
	}
	ring := *k.ring
	next := &Keys{ring: &ring, readers: k.readers}
	for _, key := range k.keys {
		same := *key
		next.keys = append(next.keys, &same)
	}
	err := change(next)
	if err == nil {
		err = next.wrap()
	}
	if err != nil {
		next.Lock()
		return nil, err
	}
	return next, nil
}

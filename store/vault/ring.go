package vault

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"hash/crc32"
	"io"
	"slices"
	"strings"

	"filippo.io/age"
)

// Ring is a key ring as it lies in a file: nothing in it is readable without
// the passphrase or the recovery code. It is never changed, only replaced.
//
// The passphrase and the recovery code each wrap an age identity of their own.
// Each data key is wrapped for both identities. Their public halves are sealed
// with the data key, so that whoever may seal can also wrap the next data key,
// and nobody else can.
type Ring struct {
	passphrase []byte // age file, scrypt: the passphrase's identity
	recovery   []byte // age file, scrypt: the recovery code's identity
	keys       []wrappedKey
	readers    []byte // sealed: the public halves
}

type wrappedKey struct {
	id      KeyID
	wrapped []byte // age file for both identities: 32 bytes
}

// ringText is the ring in its text form, one line of JSON.
type ringText struct {
	Passphrase []byte    `json:"passphrase"`
	Recovery   []byte    `json:"recovery"`
	Keys       []keyText `json:"keys"`
	Readers    []byte    `json:"readers"`
}

type keyText struct {
	ID      string `json:"id"`
	Wrapped []byte `json:"wrapped"`
}

const (
	ringTitle = "Handbreadth keys 1 "
	// mostRing bounds the text of a ring; an ordinary one has under 3 kB.
	mostRing = 64 << 10
	// mostKeys bounds the keys of a ring; a rotation has two.
	mostKeys = 8
)

var castagnoli = crc32.MakeTable(crc32.Castagnoli)

// Bytes gives the text form: a title with a checksum (CRC-32C), which tells
// damage from a wrong passphrase, and a line of JSON.
func (r *Ring) Bytes() []byte {
	text := ringText{Passphrase: r.passphrase, Recovery: r.recovery, Readers: r.readers}
	for _, key := range r.keys {
		text.Keys = append(text.Keys, keyText{key.id.String(), key.wrapped})
	}
	line, err := json.Marshal(text)
	if err != nil {
		panic(err) // bytes and texts always marshal
	}
	return fmt.Appendf(nil, "%s%08x\n%s\n", ringTitle, crc32.Checksum(line, castagnoli), line)
}

// ParseRing reads the text form, or fails with ErrRing.
func ParseRing(text []byte) (*Ring, error) {
	title, rest, _ := bytes.Cut(text, []byte("\n"))
	line, ended := bytes.CutSuffix(rest, []byte("\n"))
	switch {
	case len(text) > mostRing:
		return nil, fmt.Errorf("%w: %d bytes are too many", ErrRing, len(text))
	case !ended || string(title) != fmt.Sprintf("%s%08x", ringTitle, crc32.Checksum(line, castagnoli)):
		return nil, fmt.Errorf("%w: the checksum does not match", ErrRing)
	}
	var t ringText
	decoder := json.NewDecoder(bytes.NewReader(line))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&t); err != nil {
		return nil, fmt.Errorf("%w: %w", ErrRing, err)
	}
	if _, err := decoder.Token(); err != io.EOF {
		return nil, fmt.Errorf("%w: more than one ring", ErrRing)
	}
	return t.ring()
}

func (t ringText) ring() (*Ring, error) {
	r := &Ring{passphrase: t.Passphrase, recovery: t.Recovery, readers: t.Readers}
	if n := len(t.Keys); n < 1 || n > mostKeys {
		return nil, fmt.Errorf("%w: %d keys", ErrRing, n)
	}
	for _, key := range t.Keys {
		id, err := hex.DecodeString(key.ID)
		if err != nil || len(id) != len(KeyID{}) || key.ID != strings.ToLower(key.ID) {
			return nil, fmt.Errorf("%w: the key id %q is none", ErrRing, key.ID)
		}
		next := wrappedKey{KeyID(id), key.Wrapped}
		if slices.ContainsFunc(r.keys, func(other wrappedKey) bool { return other.id == next.id }) {
			return nil, fmt.Errorf("%w: key %s is there twice", ErrRing, next.id)
		}
		r.keys = append(r.keys, next)
	}
	return r, nil
}

// CodeMark names the recovery code of the ring without telling it: another code
// has another mark.
func (r *Ring) CodeMark() string {
	sum := sha256.Sum256(r.recovery)
	return hex.EncodeToString(sum[:8])
}

// Create makes a new data key, a recovery code, and the ring that wraps the one
// with the passphrase and with the other. It fails with ErrWeak.
func Create(passphrase string, effort Effort) (*Keys, RecoveryCode, error) {
	code := NewRecoveryCode()
	k := &Keys{ring: &Ring{}, keys: []*dataKey{newDataKey(nil)}}
	var err error
	if k.readers.passphrase, k.ring.passphrase, err = newPassphraseSlot(passphrase, effort); err != nil {
		return nil, RecoveryCode{}, err
	}
	if k.readers.recovery, k.ring.recovery, err = newSlot(code.secret(), codeEffort); err != nil {
		return nil, RecoveryCode{}, err
	}
	if err := k.wrap(); err != nil {
		return nil, RecoveryCode{}, err
	}
	return k, code, nil
}

// wrap fills the ring with the keys in memory.
func (k *Keys) wrap() error {
	k.ring.keys = nil
	for _, key := range k.keys {
		wrapped, err := encrypt(key.key[:], k.readers.passphrase, k.readers.recovery)
		if err != nil {
			return err
		}
		k.ring.keys = append(k.ring.keys, wrappedKey{key.id, wrapped})
	}
	with := k.keys[len(k.keys)-1]
	public := k.readers.passphrase.String() + "\n" + k.readers.recovery.String()
	var err error
	k.ring.readers, err = sealValue(&with.key, with.id, readersPlace(with.id), []byte(public))
	return err
}

func readersPlace(id KeyID) []byte { return placeOf(id, "ring", "", "readers", 1) }

// Unlock takes the keys out of the ring. It fails with ErrPassphrase, or with
// ErrRing when the ring is damaged. It takes as long as the effort says.
func (r *Ring) Unlock(passphrase string) (*Keys, error) {
	identity, err := openSlot(r.passphrase, normal(passphrase), ErrPassphrase)
	if err != nil {
		return nil, err
	}
	return r.open(identity)
}

// Recover takes the keys out of the ring with the recovery code. It fails with
// ErrCode when it is the code of another ring.
func (r *Ring) Recover(code RecoveryCode) (*Keys, error) {
	identity, err := openSlot(r.recovery, code.secret(), ErrCode)
	if err != nil {
		return nil, err
	}
	return r.open(identity)
}

// open unwraps the data keys. A ring that somebody put together from parts is
// refused: its public halves must be those that the data key sealed.
func (r *Ring) open(identity *age.X25519Identity) (*Keys, error) {
	k := &Keys{ring: r}
	for _, key := range r.keys {
		plain, err := decrypt(key.wrapped, identity)
		if err == nil && len(plain) != keySize {
			err = fmt.Errorf("a key of %d bytes", len(plain))
		}
		if err != nil {
			k.Lock()
			return nil, fmt.Errorf("%w: key %s: %w", ErrRing, key.id, err)
		}
		k.keys = append(k.keys, &dataKey{key.id, [keySize]byte(plain)})
		clear(plain)
	}
	if err := k.openReaders(identity); err != nil {
		k.Lock()
		return nil, err
	}
	return k, nil
}

func (k *Keys) openReaders(identity *age.X25519Identity) error {
	with := k.keys[len(k.keys)-1]
	id, ok := KeyOf(k.ring.readers)
	if !ok || id != with.id {
		return fmt.Errorf("%w: its public halves are not sealed with its key", ErrRing)
	}
	text, err := openValue(&with.key, readersPlace(id), k.ring.readers)
	if err != nil {
		return fmt.Errorf("%w: its public halves: %w", ErrRing, err)
	}
	first, second, _ := strings.Cut(string(text), "\n")
	if k.readers.passphrase, err = age.ParseX25519Recipient(first); err == nil {
		k.readers.recovery, err = age.ParseX25519Recipient(second)
	}
	if err != nil {
		return fmt.Errorf("%w: %w", ErrRing, err)
	}
	if own := identity.Recipient().String(); own != first && own != second {
		return fmt.Errorf("%w: its public halves are of another ring", ErrRing)
	}
	return nil
}

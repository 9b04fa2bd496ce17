package vault

import (
	"crypto/cipher"
	"crypto/rand"
	"encoding/binary"
	"encoding/hex"
	"fmt"

	"golang.org/x/crypto/chacha20"
	"golang.org/x/crypto/chacha20poly1305"
)

// A sealed value is
//
//	mark (1 byte) | key id (4) | nonce (24) | ciphertext | tag (16)
//
// where the tag also covers the mark, the key id and the place of the value.

// Mark is the first byte of every sealed value.
const Mark = 0x02

const (
	keySize   = chacha20poly1305.KeySize
	nonceSize = chacha20poly1305.NonceSizeX
	headSize  = 1 + len(KeyID{})
	// Overhead is how many bytes a sealed value is longer than what it holds.
	Overhead = headSize + nonceSize + chacha20poly1305.Overhead
)

// KeyID tells data keys apart. It is random and says nothing about the key.
type KeyID [4]byte

// String gives the id as eight hexadecimal digits.
func (id KeyID) String() string { return hex.EncodeToString(id[:]) }

// KeyOf returns which key a sealed value needs, and false when the bytes are no
// sealed value.
func KeyOf(sealed []byte) (KeyID, bool) {
	if len(sealed) < Overhead || sealed[0] != Mark {
		return KeyID{}, false
	}
	return KeyID(sealed[1:headSize]), true
}

// sealValue seals plain for a place under a random nonce.
func sealValue(key *[keySize]byte, id KeyID, place, plain []byte) ([]byte, error) {
	var nonce [nonceSize]byte
	rand.Read(nonce[:]) // never fails: the program would end
	return sealWith(key, id, nonce, place, plain)
}

func sealWith(key *[keySize]byte, id KeyID, nonce [nonceSize]byte, place, plain []byte) ([]byte, error) {
	out := make([]byte, 0, Overhead+len(plain))
	out = append(out, Mark)
	out = append(out, id[:]...)
	out = append(out, nonce[:]...)
	return xSeal(out, key, nonce[:], plain, place)
}

// openValue gives back what was sealed for a place, or fails with ErrValue.
func openValue(key *[keySize]byte, place, sealed []byte) ([]byte, error) {
	plain, err := xOpen(key, sealed[headSize:headSize+nonceSize], sealed[headSize+nonceSize:], place)
	if err != nil {
		return nil, ErrValue
	}
	return plain, nil
}

// xSeal and xOpen are XChaCha20-Poly1305 as draft-irtf-cfrg-xchacha-03, section
// 2, composes it: HChaCha20 makes a key for this nonce, ChaCha20-Poly1305 does
// the rest. They say what chacha20poly1305.NewX says (a test compares them),
// but leave no second copy of the data key behind that could not be wiped.
func xSeal(out []byte, key *[keySize]byte, nonce, plain, also []byte) ([]byte, error) {
	aead, short, err := forNonce(key, nonce)
	if err != nil {
		return nil, err
	}
	return aead.Seal(out, short, plain, also), nil
}

func xOpen(key *[keySize]byte, nonce, sealed, also []byte) ([]byte, error) {
	aead, short, err := forNonce(key, nonce)
	if err != nil {
		return nil, err
	}
	return aead.Open([]byte{}, short, sealed, also)
}

func forNonce(key *[keySize]byte, nonce []byte) (cipher.AEAD, []byte, error) {
	once, err := chacha20.HChaCha20(key[:], nonce[:16])
	if err != nil {
		return nil, nil, fmt.Errorf("vault: %w", err)
	}
	aead, err := chacha20poly1305.New(once)
	if err != nil {
		return nil, nil, fmt.Errorf("vault: %w", err)
	}
	short := make([]byte, chacha20poly1305.NonceSize) // four zeros, then the rest
	copy(short[4:], nonce[16:])
	return aead, short, nil
}

// placeOf writes a place so that no two places run together: every text has its
// length before it.
func placeOf(id KeyID, table, row, column string, version int) []byte {
	out := make([]byte, 0, headSize+3*4+len(table)+len(row)+len(column)+8)
	out = append(out, Mark)
	out = append(out, id[:]...)
	for _, part := range []string{table, row, column} {
		out = binary.BigEndian.AppendUint32(out, uint32(len(part)))
		out = append(out, part...)
	}
	return binary.BigEndian.AppendUint64(out, uint64(version))
}

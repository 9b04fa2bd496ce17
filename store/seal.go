package store

import (
	"encoding/binary"
	"errors"
	"fmt"
	"hash/crc32"
	"strconv"
)

// Sealer protects one value at rest. Both calls get the place of the value
// (table, row, column, version), so that a sealer can bind a value to its place
// and refuse one that was moved. The row is "client/kind/id", "client/form/id"
// or "client/id": moving a row to another client is a move as well.
//
// Seal returns what is written to the file; Open gives back exactly what was
// sealed, or an error. Both may be called from several goroutines, and must not
// keep or change the slice that they are given.
type Sealer interface {
	Seal(table, rowID, column string, version int, plain []byte) ([]byte, error)
	Open(table, rowID, column string, version int, sealed []byte) ([]byte, error)
}

// PassThrough writes values as they are. IT DOES NOT ENCRYPT: whoever can read
// the file can read every name in it. It is for demonstration data and until
// the practice has set its passphrase.
//
// A value is one marker byte, a CRC-32C (Castagnoli) of place and value, and
// the value. The checksum finds accidents (a flipped bit, a row moved by
// mistake); it is no protection against anyone.
type PassThrough struct{}

// markPlain is the format marker of PassThrough; other sealers use another.
const markPlain = 0x01

const plainHeader = 1 + crc32.Size

var castagnoli = crc32.MakeTable(crc32.Castagnoli)

// Seal never fails.
func (PassThrough) Seal(table, rowID, column string, version int, plain []byte) ([]byte, error) {
	out := make([]byte, plainHeader, plainHeader+len(plain))
	out[0] = markPlain
	binary.BigEndian.PutUint32(out[1:], placeSum(table, rowID, column, version, plain))
	return append(out, plain...), nil
}

// Open fails when the marker is not that of PassThrough, or when the value is
// not the one that was written at this place.
func (PassThrough) Open(table, rowID, column string, version int, sealed []byte) ([]byte, error) {
	if len(sealed) < plainHeader {
		return nil, errors.New("value is too short")
	}
	if sealed[0] != markPlain {
		return nil, fmt.Errorf("value has format %#x, not the unsealed one", sealed[0])
	}
	plain := append([]byte{}, sealed[plainHeader:]...)
	if binary.BigEndian.Uint32(sealed[1:]) != placeSum(table, rowID, column, version, plain) {
		return nil, errors.New("value does not match its checksum")
	}
	return plain, nil
}

// placeSum is the checksum of a value at its place. Lengths go in, so that no
// two places run together.
func placeSum(table, rowID, column string, version int, plain []byte) uint32 {
	var place []byte
	for _, part := range []string{table, rowID, column, strconv.Itoa(version)} {
		place = binary.BigEndian.AppendUint32(place, uint32(len(part)))
		place = append(place, part...)
	}
	return crc32.Update(crc32.Checksum(place, castagnoli), castagnoli, plain)
}

// place says where a sealed value lives.
type place struct {
	table, row, column string
	version            int
}

func (s *Store) seal(p place, plain []byte) ([]byte, error) {
	sealed, err := s.sealer.Seal(p.table, p.row, p.column, p.version, plain)
	if errors.Is(err, ErrLocked) {
		return nil, fail(ErrLocked, nil)
	}
	if err != nil {
		return nil, fmt.Errorf("sealing %s %s.%s: %w", p.row, p.table, p.column, err)
	}
	return sealed, nil
}

// open fails with ErrDamaged when the sealer refuses the value, and with
// ErrLocked.
func (s *Store) open(p place, sealed []byte) ([]byte, error) {
	plain, err := s.sealer.Open(p.table, p.row, p.column, p.version, sealed)
	if errors.Is(err, ErrLocked) {
		return nil, fail(ErrLocked, nil)
	}
	if err != nil {
		return nil, &UserError{
			Plain: "One entry of the client file cannot be read: it is damaged, or it was not written with this key. " +
				"The other entries are not touched by this. Your latest backup may still have it.",
			kind:  ErrDamaged,
			cause: fmt.Errorf("opening %s %s.%s version %d: %w", p.row, p.table, p.column, p.version, err),
		}
	}
	return plain, nil
}

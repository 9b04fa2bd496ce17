package store

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"time"
)

// A backup file is a line that says what it is, a line of JSON (the header), and
// the content: the SHA-256 of the header (32 bytes) and then the whole client
// file. Where the file is sealed the content lies in a container of the vault.
// The header is in clear, so that a folder can be listed without a key; the sum
// inside the content shows whether it was changed. Lines, so that other tools
// can take it apart too:
//
//	tail -n +3 FILE > container        # what package vault tells how to open
//	tail -c +33 content > clients.db

const (
	backupMagic = "Handbreadth copy 1\n"
	// maxHeader is far more than a header needs.
	maxHeader = 1 << 16
)

// Inside says what a backup, or the open file, has.
type Inside struct {
	MadeAt     time.Time      `json:"made_at"`
	Practice   string         `json:"practice"` // random, the same for all copies of one practice's file
	Schema     int64          `json:"schema"`
	Clients    int            `json:"clients"`
	Visits     int            `json:"visits"`
	Plans      int            `json:"plans"`
	LastChange time.Time      `json:"last_change"` // to anything of a client; zero for none
	Sealed     bool           `json:"sealed"`
	Rows       map[string]int `json:"rows"` // by table
	Entries    int64          `json:"entries"`
	Link       []byte         `json:"link,omitempty"` // the last of the audit trail
}

// backupHeader is the header of a backup file.
type backupHeader struct {
	Inside
	Bytes int64  `json:"bytes"` // of the client file
	Sum   []byte `json:"sum"`   // its SHA-256
}

// check refuses what no program wrote.
func (h backupHeader) check() error {
	switch {
	case h.MadeAt.IsZero(), h.Schema < 1, h.Bytes < 1, len(h.Sum) != sha256.Size, len(h.Practice) < practiceShort:
		return errors.New("the header lacks something")
	case h.Clients < 0, h.Visits < 0, h.Plans < 0, h.Entries < 0:
		return errors.New("the header counts less than nothing")
	}
	for table, n := range h.Rows {
		if n < 0 {
			return fmt.Errorf("the header counts %d rows in %q", n, table)
		}
	}
	return nil
}

// encode returns the two lines of the header, and its sum.
func (h backupHeader) encode() (lines []byte, sum [sha256.Size]byte, err error) {
	text, err := json.Marshal(h)
	if err != nil {
		return nil, sum, err
	}
	if len(text) >= maxHeader {
		return nil, sum, fmt.Errorf("a header of %d bytes is too long", len(text))
	}
	return slices.Concat([]byte(backupMagic), text, []byte("\n")), sha256.Sum256(text), nil
}

// backupReader buffers a backup file for readHeader.
func backupReader(src io.Reader) *bufio.Reader { return bufio.NewReaderSize(src, maxHeader) }

// readHeader reads the header of a backup file and leaves src, a backupReader,
// at the content. It fails with ErrNotABackup where the file is something else,
// and with ErrDamaged where it is cut short or cannot be understood.
func readHeader(src *bufio.Reader) (h backupHeader, sum [sha256.Size]byte, err error) {
	magic := make([]byte, len(backupMagic))
	if _, err := io.ReadFull(src, magic); err != nil || string(magic) != backupMagic {
		return h, sum, fail(ErrNotABackup, err)
	}
	line, err := src.ReadSlice('\n')
	if err != nil {
		return h, sum, backupDamaged(fmt.Errorf("the header has no end: %w", err))
	}
	text := line[:len(line)-1]
	if err := json.Unmarshal(text, &h); err != nil {
		return h, sum, backupDamaged(err)
	}
	return h, sha256.Sum256(text), backupDamagedIf(h.check())
}

// readContent writes the client file that a backup has to dst, and checks it
// against the header. src stands where readHeader left it.
func readContent(dst io.Writer, src io.Reader, h backupHeader, headerSum [sha256.Size]byte) error {
	var inner [sha256.Size]byte
	if _, err := io.ReadFull(src, inner[:]); err != nil {
		return backupDamaged(err)
	}
	if inner != headerSum {
		return backupDamaged(errors.New("the header was changed"))
	}
	sum := sha256.New()
	source := &sourceErrors{Reader: src}
	n, err := io.Copy(io.MultiWriter(dst, sum), io.LimitReader(source, h.Bytes))
	switch {
	case source.err != nil:
		return backupDamaged(source.err)
	case err != nil:
		return fileTrouble(err)
	case n != h.Bytes:
		return backupDamaged(fmt.Errorf("%d bytes of %d", n, h.Bytes))
	case !bytes.Equal(sum.Sum(nil), h.Sum):
		return backupDamaged(errors.New("the content was changed"))
	}
	// Only at its end does a container know that nothing is missing.
	if more, err := io.Copy(io.Discard, src); err != nil || more > 0 {
		return backupDamaged(errors.Join(err, fmt.Errorf("%d bytes too many", more)))
	}
	return nil
}

// sourceErrors remembers what reading failed with, so that it can be told from
// a failure to write.
type sourceErrors struct {
	io.Reader
	err error
}

func (s *sourceErrors) Read(p []byte) (int, error) {
	n, err := s.Reader.Read(p)
	if err != nil && !errors.Is(err, io.EOF) {
		s.err = err
	}
	return n, err
}

// backupDamaged is ErrDamaged with the words for a backup.
func backupDamaged(cause error) error {
	return &UserError{
		Plain: "This backup is damaged, so nothing was restored from it. Your client file is as it was. " +
			"Choose another backup; the one before this is the next best.",
		kind: ErrDamaged, cause: cause,
	}
}

func backupDamagedIf(cause error) error {
	if cause == nil {
		return nil
	}
	return backupDamaged(cause)
}

package store

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"maps"
	"testing"
	"time"
)

func sampleHeader() backupHeader {
	return backupHeader{
		Inside: Inside{
			MadeAt: time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC), Practice: "somepractice", Schema: 4, Clients: 3, Visits: 5, Plans: 4,
			LastChange: time.Date(2026, 3, 1, 9, 0, 0, 0, time.UTC), Rows: map[string]int{"client": 3}, Entries: 9, Link: []byte{1, 2},
		},
		Bytes: 11, Sum: bytes.Repeat([]byte{7}, 32),
	}
}

// FuzzReadHeader: whatever the bytes are, the header is read or refused with
// words, never more is read than a header can be, and one that is read is
// written as it was.
func FuzzReadHeader(f *testing.F) {
	good, _, err := sampleHeader().encode()
	if err != nil {
		f.Fatal(err)
	}
	f.Add(good)
	f.Add(good[:len(good)-3])
	f.Add([]byte(backupMagic))
	f.Add([]byte(backupMagic + "{}\n"))
	f.Add([]byte(backupMagic + `{"schema":-1,"bytes":1e99}` + "\n"))
	f.Add([]byte(backupMagic + `{"made_at":"2026-03-02T09:00:00Z","practice":"some` + "\n" + `practice"}` + "\n"))
	f.Add([]byte("SQLite format 3\x00"))
	f.Fuzz(func(t *testing.T, content []byte) {
		src := &countingReader{Reader: bytes.NewReader(content)}
		h, sum, err := readHeader(backupReader(src))
		if src.n > 2*maxHeader {
			t.Fatalf("%d bytes were read", src.n)
		}
		if err != nil {
			if !errors.Is(err, ErrNotABackup) && !errors.Is(err, ErrDamaged) || Plain(err) == plainUnknown {
				t.Fatalf("refused with %v", err)
			}
			return
		}
		written, _, err := h.encode()
		if err != nil {
			return // a moment outside the years that can be written
		}
		again, sumAgain, err := readHeader(backupReader(bytes.NewReader(written)))
		if err != nil || !again.MadeAt.Equal(h.MadeAt) || !maps.Equal(again.Rows, h.Rows) || again.Bytes != h.Bytes || !bytes.Equal(again.Sum, h.Sum) {
			t.Fatalf("%+v became %+v, %v", h, again, err)
		}
		// Content that is not the header's is refused, and no more of it is
		// written than the header says.
		var out bytes.Buffer
		if err := readContent(&out, bytes.NewReader(content), again, sumAgain); err == nil && len(content) != int(h.Bytes)+32 {
			t.Fatalf("%d bytes pass for %d", len(content), h.Bytes)
		}
		if int64(out.Len()) > h.Bytes || sum == [32]byte{} {
			t.Fatalf("%d bytes were written of %d", out.Len(), h.Bytes)
		}
	})
}

type countingReader struct {
	io.Reader
	n int
}

func (r *countingReader) Read(p []byte) (int, error) {
	n, err := r.Reader.Read(p)
	r.n += n
	return n, err
}

func TestHeadersThatNoProgramWrote(t *testing.T) {
	for name, spoil := range map[string]func(h *backupHeader){
		"no moment":     func(h *backupHeader) { h.MadeAt = time.Time{} },
		"no schema":     func(h *backupHeader) { h.Schema = 0 },
		"no content":    func(h *backupHeader) { h.Bytes = 0 },
		"a short sum":   func(h *backupHeader) { h.Sum = h.Sum[:31] },
		"no practice":   func(h *backupHeader) { h.Practice = "" },
		"fewer than no": func(h *backupHeader) { h.Clients = -1 },
		"no such rows":  func(h *backupHeader) { h.Rows["client"] = -3 },
	} {
		h := sampleHeader()
		spoil(&h)
		written, _, err := h.encode()
		if err != nil {
			t.Fatal(err)
		}
		if _, _, err := readHeader(backupReader(bytes.NewReader(written))); !errors.Is(err, ErrDamaged) {
			t.Errorf("%s: %v", name, err)
		}
	}
	long := sampleHeader()
	long.Rows = map[string]int{}
	for i := range 10_000 {
		long.Rows[fmt.Sprint("table", i)] = i
	}
	if _, _, err := long.encode(); err == nil {
		t.Error("a header that is too long is written")
	}
}

package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"handbreadth/domain/unit"
)

// osFiles is the disk.
type osFiles struct{}

// longestRead is more than any consult file; the rest of a longer file, which
// is refused, need not be read.
const longestRead = 2 << 20

// Read returns a file, or the beginning of one that is far too long.
func (osFiles) Read(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer func() { _ = f.Close() }()
	return io.ReadAll(io.LimitReader(f, longestRead))
}

// Same reports whether two paths lead to one file, which need not exist yet.
func (osFiles) Same(a, b string) bool {
	one, errOne := os.Stat(a)
	other, errOther := os.Stat(b)
	if errOne == nil && errOther == nil {
		return os.SameFile(one, other)
	}
	fullA, errA := filepath.Abs(a)
	fullB, errB := filepath.Abs(b)
	return errA == nil && errB == nil && fullA == fullB
}

// Write writes all outputs or none, readable by their owner only: each is
// written whole beside its place, then all are moved into place, and moved
// back where one of them cannot be.
func (osFiles) Write(outputs []output) error {
	moves := make([]move, 0, len(outputs))
	defer func() {
		for _, m := range moves {
			m.clean()
		}
	}()
	for _, o := range outputs {
		m, err := prepare(o)
		if err != nil {
			return unwritable(o, err)
		}
		moves = append(moves, m)
	}
	if failed, err := place(moves); err != nil {
		return unwritable(outputs[failed], err)
	}
	return nil
}

// place moves all files into place, or none: then it says which would not go.
func place(moves []move) (failed int, err error) {
	for i, m := range moves {
		if err := os.Rename(m.written, m.place); err != nil {
			for _, done := range moves[:i] {
				err = errors.Join(err, done.undo())
			}
			return i, err
		}
	}
	return 0, nil
}

func unwritable(o output, err error) error {
	return unit.Problem{
		Field: "-" + o.flag, Given: o.path,
		Accepted: "a file in a folder that exists and may be written (" + cause(err) + ")",
	}
}

// move is a file that waits to be moved into place.
type move struct {
	place   string
	written string // the new file, beside its place
	kept    string // what was in its place before; "" for nothing
}

// prepare writes the new file beside its place and keeps what is there.
func prepare(o output) (m move, err error) {
	m.place = o.path
	before, err := os.Lstat(o.path)
	if err == nil && !before.Mode().IsRegular() {
		return m, errors.New("there is something else than a file of that name")
	}
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return m, err
	}
	existed := err == nil
	if m.written, err = writeBeside(o.path, o.data); err != nil {
		return m, err
	}
	if existed {
		m.kept = m.written + ".before"
		if err = keep(o.path, m.kept); err != nil {
			m.clean()
		}
	}
	return m, err
}

// writeBeside writes a new file to the folder of a path, down to the disk.
// CreateTemp gives it the mode 0600.
func writeBeside(path string, data []byte) (written string, err error) {
	f, err := os.CreateTemp(filepath.Dir(path), ".handbreadth-*")
	if err != nil {
		return "", err
	}
	_, err = f.Write(data)
	err = errors.Join(err, f.Sync(), f.Close())
	if err != nil {
		_ = os.Remove(f.Name())
		return "", err
	}
	return f.Name(), nil
}

// keep gives a file a second name, or copies it where the disk has no links.
func keep(path, second string) error {
	if os.Link(path, second) == nil {
		return nil
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	const ownerOnly = 0o600
	return os.WriteFile(second, data, ownerOnly)
}

// undo puts back what was in the place before.
func (m move) undo() error {
	if m.kept == "" {
		return os.Remove(m.place)
	}
	return os.Rename(m.kept, m.place)
}

// clean removes what is left beside the place.
func (m move) clean() {
	for _, name := range []string{m.written, m.kept} {
		if name != "" {
			_ = os.Remove(name)
		}
	}
}

package store

import (
	"errors"
	"fmt"
	"os"
)

// errLocked is what holdLock returns when someone else holds the lock.
var errLocked = errors.New("lock is held elsewhere")

// fileLock is a lock of the operating system on a small file beside the
// database. The system lets go of it when the program ends, however it ends
// (kill -9 and power loss included), so there is never a stale one to clear up.
// The file itself stays: removing it would let two programs hold "the" lock.
type fileLock struct{ file *os.File }

// takeLock fails with ErrInUse when another Store holds the lock, in this
// program or another, and with ErrReadOnlyFolder when it cannot be made.
func takeLock(path string) (*fileLock, error) {
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, fail(ErrReadOnlyFolder, err)
	}
	err = holdLock(f)
	if err == nil {
		return &fileLock{file: f}, nil
	}
	err = errors.Join(err, f.Close())
	if errors.Is(err, errLocked) {
		return nil, fail(ErrInUse, err)
	}
	return nil, fmt.Errorf("store: locking %s: %w", path, err)
}

// release lets go of the lock.
func (l *fileLock) release() error { return l.file.Close() }

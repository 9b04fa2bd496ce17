//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package store

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// holdLock takes the whole-file lock without waiting. It belongs to the open
// file, so a second opener in the same program is refused too.
func holdLock(f *os.File) error {
	for {
		err := unix.Flock(int(f.Fd()), unix.LOCK_EX|unix.LOCK_NB)
		switch {
		case errors.Is(err, unix.EINTR):
			continue
		case errors.Is(err, unix.EWOULDBLOCK):
			return errLocked
		}
		return err
	}
}

// syncFolder makes a rename in the folder durable.
func syncFolder(path string) error {
	folder, err := os.Open(path)
	if err != nil {
		return err
	}
	return errors.Join(folder.Sync(), folder.Close())
}

// diskFull reports whether the system refused for lack of room.
func diskFull(err error) bool {
	return errors.Is(err, unix.ENOSPC) || errors.Is(err, unix.EDQUOT)
}

// readOnly reports whether the system refused because the disk takes no writes.
func readOnly(err error) bool { return errors.Is(err, unix.EROFS) }

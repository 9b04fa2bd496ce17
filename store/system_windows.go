package store

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// holdLock takes the whole-file lock without waiting. It belongs to the open
// file, so a second opener in the same program is refused too.
func holdLock(f *os.File) error {
	const flags = windows.LOCKFILE_EXCLUSIVE_LOCK | windows.LOCKFILE_FAIL_IMMEDIATELY
	err := windows.LockFileEx(windows.Handle(f.Fd()), flags, 0, 1, 0, new(windows.Overlapped))
	if errors.Is(err, windows.ERROR_LOCK_VIOLATION) || errors.Is(err, windows.ERROR_IO_PENDING) {
		return errLocked
	}
	return err
}

// syncFolder has nothing to do here: Windows journals renames itself and does
// not let a folder be flushed.
func syncFolder(string) error { return nil }

// diskFull reports whether the system refused for lack of room.
func diskFull(err error) bool {
	return errors.Is(err, windows.ERROR_DISK_FULL) || errors.Is(err, windows.ERROR_HANDLE_DISK_FULL)
}

// readOnly reports whether the system refused because the disk takes no writes.
func readOnly(err error) bool { return errors.Is(err, windows.ERROR_WRITE_PROTECT) }

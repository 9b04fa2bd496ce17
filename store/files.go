package store

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

const (
	fileMode   = 0o600
	folderMode = 0o700
	// freshMark ends the name of a file that is being written and not yet whole.
	freshMark = ".new"
)

// writeBeside lets fill write an empty, private file beside path, and puts it
// at path when it is whole and on the disk. When fill fails, path is as it was.
func writeBeside(path string, fill func(fresh string) error) (err error) {
	fresh := path + freshMark
	leftovers := append(companions(fresh), fresh)
	if err := removeAll(leftovers); err != nil {
		return fileTrouble(err)
	}
	f, err := os.OpenFile(fresh, os.O_WRONLY|os.O_CREATE|os.O_EXCL, fileMode)
	if err != nil {
		return fileTrouble(err)
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, removeAll(leftovers))
		}
	}()
	if err := f.Close(); err != nil {
		return fileTrouble(err)
	}
	if err := fill(fresh); err != nil {
		return err
	}
	if logWaits(fresh) {
		return fail(ErrDisk, errors.New("the fresh file was not closed whole"))
	}
	if err := syncFile(fresh); err != nil {
		return fileTrouble(err)
	}
	if err := os.Rename(fresh, path); err != nil {
		return fileTrouble(err)
	}
	return fileTrouble(syncFolder(filepath.Dir(path)))
}

// sweepBeside removes what a killed update, backup, restore or rehearsal left
// half made beside the client file: it may have clients that were deleted since.
// The caller holds the lock.
func sweepBeside(path string) error {
	folder := filepath.Dir(path)
	entries, err := os.ReadDir(folder)
	if err != nil {
		return fileTrouble(err)
	}
	var left []string
	for _, entry := range entries {
		name := filepath.Join(folder, entry.Name())
		end, ours := strings.CutPrefix(entry.Name(), filepath.Base(path)+".")
		switch {
		case ours && isHalfMade("."+end):
			left = append(left, name)
		case entry.IsDir() && strings.HasPrefix(entry.Name(), trialPrefix):
			if err := sweepTrial(name); err != nil {
				return err
			}
		}
	}
	return fileTrouble(removeAll(left))
}

// isHalfMade looks at what follows the name of the client file.
func isHalfMade(end string) bool {
	for _, companion := range companions("") {
		end = strings.TrimSuffix(end, companion)
	}
	return strings.HasSuffix(end, freshMark) || slices.Contains([]string{copyMark, copyMark + pagesMark, restoringMark}, end)
}

// removeAll removes the files that exist.
func removeAll(paths []string) error {
	var trouble error
	for _, path := range paths {
		if err := os.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
			trouble = errors.Join(trouble, err)
		}
	}
	return trouble
}

// syncFile makes the content of a file durable.
func syncFile(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// fileTrouble explains an error of the file system.
func fileTrouble(err error) error {
	var path *fs.PathError
	switch {
	case err == nil:
		return nil
	case diskFull(err):
		return fail(ErrDiskFull, err)
	case readOnly(err), errors.Is(err, fs.ErrPermission), errors.Is(err, fs.ErrNotExist), errors.As(err, &path) && path.Op == "open":
		return fail(ErrReadOnlyFolder, err)
	}
	return fail(ErrDisk, err)
}

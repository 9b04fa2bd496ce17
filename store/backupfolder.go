package store

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// The folder and the names in it.

const (
	folderMarkName = "handbreadth-backups.txt"
	folderMarkText = "Handbreadth keeps its backups in this folder and knows it by this file.\n"
	backupPrefix   = "handbreadth-"
	backupSuffix   = ".backup"
	nameLayout     = "2006-01-02-150405"
	practiceShort  = 8 // letters of the practice's name
)

func markFolder(folder string) error {
	if info, err := os.Stat(folder); err != nil || !info.IsDir() {
		return fail(ErrFolderGone, err)
	}
	return writeBeside(filepath.Join(folder, folderMarkName), func(fresh string) error {
		return fileTrouble(os.WriteFile(fresh, []byte(folderMarkText), fileMode))
	})
}

func isMarked(folder string) bool {
	info, err := os.Stat(filepath.Join(folder, folderMarkName))
	return err == nil && info.Mode().IsRegular()
}

// backupName returns a name for a backup that no file has: the practice, and
// the moment in UTC.
func backupName(folder string, in Inside) string {
	base := backupPrefix + in.Practice[:practiceShort] + "-" + in.MadeAt.UTC().Format(nameLayout)
	return unusedName(filepath.Join(folder, base), backupSuffix)
}

// unusedName returns base and suffix, with a number between them where a file
// has that name already.
func unusedName(base, suffix string) string {
	name := base + suffix
	for n := 2; ; n++ {
		if _, err := os.Lstat(name); errors.Is(err, fs.ErrNotExist) {
			return name
		}
		name = fmt.Sprintf("%s-%d%s", base, n, suffix)
	}
}

func isBackupName(name string) bool {
	return strings.HasPrefix(name, backupPrefix) && strings.HasSuffix(name, backupSuffix)
}

// BackupList is what a folder has.
type BackupList struct {
	List       []Backup // the newest first
	Unreadable []string // files named like backups that cannot be understood
}

// Backups lists the backups in a folder by their headers, those of other
// practices included. What is inside is as the header says, which only a
// restore proves. It fails with ErrFolderGone.
func Backups(folder string) (list BackupList, err error) {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return list, fail(ErrFolderGone, err)
	}
	for _, entry := range entries {
		if !isBackupName(entry.Name()) {
			continue
		}
		b, err := headerOf(filepath.Join(folder, entry.Name()))
		if err != nil {
			list.Unreadable = append(list.Unreadable, b.Path)
			continue
		}
		list.List = append(list.List, b)
	}
	slices.SortStableFunc(list.List, func(a, b Backup) int {
		return cmp.Or(b.MadeAt.Compare(a.MadeAt), cmp.Compare(b.Path, a.Path))
	})
	return list, nil
}

// headerOf reads the header of a backup file.
func headerOf(path string) (Backup, error) {
	b := Backup{Path: path}
	f, err := os.Open(path)
	if err != nil {
		return b, fileTrouble(err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return b, fileTrouble(err)
	}
	h, _, err := readHeader(backupReader(f))
	b.Bytes, b.Inside = info.Size(), h.Inside
	return b, err
}

// rotate removes the backups of the same practice that newer ones supersede,
// never the one just made.
func rotate(folder string, justMade Backup) error {
	all, err := Backups(folder)
	if err != nil {
		return err
	}
	ours := slices.DeleteFunc(all.List, func(b Backup) bool {
		return b.Practice != justMade.Practice || b.Path == justMade.Path
	})
	made := make([]time.Time, len(ours), len(ours)+1)
	for i, b := range ours {
		made[i] = b.MadeAt
	}
	var gone []string
	for _, i := range superseded(append(made, justMade.MadeAt), justMade.MadeAt) {
		if i < len(ours) {
			gone = append(gone, ours[i].Path)
		}
	}
	if err := removeAll(gone); err != nil {
		return fail(ErrOldBackupsLeft, err)
	}
	return nil
}

// sweepFolder removes what killed backups of this practice left half written.
func sweepFolder(folder, practice string) error {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return fail(ErrFolderGone, err)
	}
	var half []string
	for _, entry := range entries {
		if name, ok := strings.CutSuffix(entry.Name(), freshMark); ok &&
			isBackupName(name) && strings.HasPrefix(name, backupPrefix+practice[:practiceShort]) {
			half = append(half, filepath.Join(folder, entry.Name()))
		}
	}
	return fileTrouble(removeAll(half))
}

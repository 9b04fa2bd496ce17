package store

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"

	"github.com/jmoiron/sqlx"
)

// RetentionNotice is what to show before a client is deleted.
func RetentionNotice() string {
	return "Deleting removes everything kept on this client from the client file, for good. It cannot be undone.\n\n" +
		"Records of care may have to be kept for years after the last visit, and longer for children. " +
		"Local law and your professional body decide. If you are not sure, archive the client instead: " +
		"the client leaves the daily list and nothing is lost.\n\n" +
		"Backups made before today still have the client until newer ones take their place: " +
		"the monthly ones after a year. Papers and files that you handed out are not touched.\n\n" +
		"What stays is a line without a name that says when a client was deleted."
}

// DeleteClient removes the client and everything kept on it, in one
// transaction, and then writes the file anew, so that no trace is left in it.
// It cannot be undone. The entries of the audit trail stay; they have no
// identity (see Subject). Copies of the file made earlier are not touched (see
// OldCopies), nor is what the disk itself keeps of replaced blocks.
//
// ErrTracesLeft means that the client is deleted for good, but that the file
// could not be written anew yet; the next Open tries again.
func (s *Store) DeleteClient(ctx context.Context, id ClientID) error {
	err := s.write(ctx, func(tx *sqlx.Tx) error {
		if err := execOne(ctx, tx, "DELETE FROM client WHERE id = ?", id); err != nil {
			return err
		}
		if err := s.note(ctx, tx, Deleted, id, Detail{}); err != nil {
			return err
		}
		_, err := run(ctx, tx, "INSERT INTO meta (name, value) VALUES (?, 'yes') ON CONFLICT (name) DO NOTHING", wipeNote)
		return err
	})
	if err != nil {
		return err
	}
	return s.wipe(ctx)
}

// wipeNote is there from a deletion until its traces are gone. SetMeta cannot
// write a name like this one.
const wipeNote = "Wipe"

// wipe removes the traces of deleted clients from the file.
func (s *Store) wipe(ctx context.Context) error {
	if err := rewrite(ctx, s.writer); err != nil {
		return err
	}
	return s.write(ctx, func(tx *sqlx.Tx) error {
		_, err := run(ctx, tx, "DELETE FROM meta WHERE name = ?", wipeNote)
		return err
	})
}

// wipeIfDue wipes what an earlier deletion had to leave. Traces that still
// cannot be removed do not keep the file from being used.
func (s *Store) wipeIfDue(ctx context.Context) error {
	_, err := s.Meta(ctx, wipeNote)
	if err == nil {
		err = s.wipe(ctx)
	}
	if errors.Is(err, ErrNotFound) || errors.Is(err, ErrTracesLeft) {
		return nil
	}
	return err
}

// Copies beside the file end in one of these marks and more.
const (
	beforeMark  = ".before-v"        // and the version of an update
	restoreMark = ".before-restore-" // and the moment of a restore
)

// OldCopies returns the copies that were made beside the file before updates
// and restores, in the order of their names. They still have every client of
// their time.
func (s *Store) OldCopies() ([]string, error) {
	folder := filepath.Dir(s.path)
	entries, err := os.ReadDir(folder) // sorted by name
	if err != nil {
		return nil, fileTrouble(err)
	}
	var copies []string
	for _, entry := range entries {
		path := filepath.Join(folder, entry.Name())
		if strings.HasPrefix(path, s.path+beforeMark) || strings.HasPrefix(path, s.path+restoreMark) {
			copies = append(copies, path)
		}
	}
	return copies, nil
}

// RemoveOldCopies removes the copies that OldCopies names, and returns how many.
// It cannot be undone: ask before.
func (s *Store) RemoveOldCopies(ctx context.Context) (int, error) {
	copies, err := s.OldCopies()
	if err != nil || len(copies) == 0 {
		return 0, err
	}
	if err := s.Note(ctx, Deleted, "", Detail{What: "old_copies", Number: len(copies)}); err != nil {
		return 0, err
	}
	if err := removeAll(copies); err != nil {
		return 0, fileTrouble(err)
	}
	return len(copies), fileTrouble(syncFolder(filepath.Dir(s.path)))
}

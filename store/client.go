package store

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/jmoiron/sqlx"

	"handbreadth/domain/unit"
)

// Client is what may be known of a client without opening anything sealed.
type Client struct {
	ID           ClientID
	CreatedAt    time.Time
	UpdatedAt    time.Time  // the last change to anything of this client
	LastOpenedAt time.Time  // see MarkOpened
	ArchivedAt   *time.Time // nil while the file is in use
	NextVisit    unit.Date  // zero when none is agreed
}

type clientRow struct {
	ID           ClientID `db:"id"`
	CreatedAt    instant  `db:"created_at"`
	UpdatedAt    instant  `db:"updated_at"`
	LastOpenedAt instant  `db:"last_opened_at"`
	ArchivedAt   *instant `db:"archived_at"`
	NextVisit    day      `db:"next_visit"`
}

const clientColumns = "id, created_at, updated_at, last_opened_at, archived_at, next_visit"

func (r clientRow) client() Client {
	return Client{
		ID: r.ID, CreatedAt: r.CreatedAt.Time, UpdatedAt: r.UpdatedAt.Time,
		LastOpenedAt: r.LastOpenedAt.Time, ArchivedAt: r.ArchivedAt.pointer(), NextVisit: r.NextVisit.Date,
	}
}

// CreateClient makes a client with a new random id, and in the same transaction
// version 1 of each record given, for example the identity.
func (s *Store) CreateClient(ctx context.Context, first map[Kind][]byte) (Client, error) {
	now := s.now()
	row := clientRow{ID: newID[ClientID](), CreatedAt: now, UpdatedAt: now, LastOpenedAt: now}
	err := s.write(ctx, func(tx *sqlx.Tx) error {
		if _, err := run(ctx, tx, "INSERT INTO client ("+clientColumns+") VALUES (?, ?, ?, ?, ?, ?)",
			row.ID, row.CreatedAt, row.UpdatedAt, row.LastOpenedAt, nil, nil); err != nil {
			return err
		}
		for kind, body := range first {
			if _, err := s.insertRecord(ctx, tx, row.ID, kind, 1, body); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return Client{}, err
	}
	return row.client(), nil
}

// Client returns one client, ErrNotFound when there is none.
func (s *Store) Client(ctx context.Context, id ClientID) (c Client, err error) {
	err = s.read(ctx, func(tx *sqlx.Tx) error {
		c, err = getClient(ctx, tx, id)
		return err
	})
	return c, err
}

func getClient(ctx context.Context, tx *sqlx.Tx, id ClientID) (Client, error) {
	var row clientRow
	err := get(ctx, tx, &row, "SELECT "+clientColumns+" FROM client WHERE id = ?", id)
	return row.client(), err
}

// Clients returns all clients, the one opened last first; archived ones only
// when asked for.
func (s *Store) Clients(ctx context.Context, archivedToo bool) ([]Client, error) {
	where := "WHERE archived_at IS NULL "
	if archivedToo {
		where = ""
	}
	return s.clients(ctx, where+"ORDER BY last_opened_at DESC, id")
}

// ClientsWithVisit returns the clients whose next visit is from the first day
// to the last, both included, the earliest first. Archived ones are left out.
func (s *Store) ClientsWithVisit(ctx context.Context, first, last unit.Date) ([]Client, error) {
	if err := errors.Join(checkDay("first day", first), checkDay("last day", last)); err != nil {
		return nil, err
	}
	return s.clients(ctx, "WHERE archived_at IS NULL AND next_visit >= ? AND next_visit <= ? "+
		"ORDER BY next_visit, id", first.String(), last.String())
}

func (s *Store) clients(ctx context.Context, rest string, args ...any) ([]Client, error) {
	var rows []clientRow
	err := s.read(ctx, func(tx *sqlx.Tx) error {
		return list(ctx, tx, &rows, "SELECT "+clientColumns+" FROM client "+rest, args...)
	})
	clients := make([]Client, len(rows))
	for i, row := range rows {
		clients[i] = row.client()
	}
	return clients, err
}

// MarkOpened notes that the client file was opened now.
func (s *Store) MarkOpened(ctx context.Context, id ClientID) error {
	return s.changeClient(ctx, id, "last_opened_at = ?", s.now())
}

// SetNextVisit notes the day of the next visit; the zero date takes it away.
func (s *Store) SetNextVisit(ctx context.Context, id ClientID, next unit.Date) error {
	if !next.IsZero() {
		if err := checkDay("next visit", next); err != nil {
			return err
		}
	}
	return s.changeClient(ctx, id, "updated_at = ?, next_visit = ?", s.now(), day{next})
}

// ArchiveClient takes the client out of the daily list; nothing is removed.
func (s *Store) ArchiveClient(ctx context.Context, id ClientID) error {
	now := s.now()
	return s.changeClient(ctx, id, "updated_at = ?, archived_at = ?", now, now)
}

// UnarchiveClient brings the client back into the daily list.
func (s *Store) UnarchiveClient(ctx context.Context, id ClientID) error {
	return s.changeClient(ctx, id, "updated_at = ?, archived_at = NULL", s.now())
}

func (s *Store) changeClient(ctx context.Context, id ClientID, set string, args ...any) error {
	return s.write(ctx, func(tx *sqlx.Tx) error {
		return execOne(ctx, tx, "UPDATE client SET "+set+" WHERE id = ?", append(args, id)...)
	})
}

// touch notes a change to something of the client, ErrNotFound without client.
func (s *Store) touch(ctx context.Context, tx *sqlx.Tx, id ClientID) error {
	return execOne(ctx, tx, "UPDATE client SET updated_at = ? WHERE id = ?", s.now(), id)
}

// DeleteClient removes the client and everything kept on it, in one
// transaction, and then writes the file anew, so that no trace is left in it.
// It cannot be undone. Copies of the file made earlier are not touched (see
// OldCopies), nor is what the disk itself keeps of replaced blocks.
//
// ErrTracesLeft means that the client is deleted for good, but that the file
// could not be written anew yet; the next Open tries again.
func (s *Store) DeleteClient(ctx context.Context, id ClientID) error {
	err := s.write(ctx, func(tx *sqlx.Tx) error {
		if err := execOne(ctx, tx, "DELETE FROM client WHERE id = ?", id); err != nil {
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

// OldCopies returns the copies that were made beside the file before updates,
// in the order of their names. They still have every client of their time.
func (s *Store) OldCopies() ([]string, error) {
	folder := filepath.Dir(s.path)
	entries, err := os.ReadDir(folder) // sorted by name
	if err != nil {
		return nil, fileTrouble(err)
	}
	var copies []string
	for _, entry := range entries {
		if path := filepath.Join(folder, entry.Name()); strings.HasPrefix(path, s.path+beforeMark) {
			copies = append(copies, path)
		}
	}
	return copies, nil
}

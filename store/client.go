package store

import (
	"context"
	"errors"
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
		return s.note(ctx, tx, Created, row.ID, Detail{})
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
	return s.changeClient(ctx, id, Opened, Detail{}, "last_opened_at = ?", s.now())
}

// SetNextVisit notes the day of the next visit; the zero date takes it away.
func (s *Store) SetNextVisit(ctx context.Context, id ClientID, next unit.Date) error {
	if !next.IsZero() {
		if err := checkDay("next visit", next); err != nil {
			return err
		}
	}
	return s.changeClient(ctx, id, Changed, Detail{What: "next_visit"},
		"updated_at = ?, next_visit = ?", s.now(), day{next})
}

// ArchiveClient takes the client out of the daily list; nothing is removed.
func (s *Store) ArchiveClient(ctx context.Context, id ClientID) error {
	now := s.now()
	return s.changeClient(ctx, id, Changed, Detail{What: "archived"}, "updated_at = ?, archived_at = ?", now, now)
}

// UnarchiveClient brings the client back into the daily list.
func (s *Store) UnarchiveClient(ctx context.Context, id ClientID) error {
	return s.changeClient(ctx, id, Changed, Detail{What: "unarchived"}, "updated_at = ?, archived_at = NULL", s.now())
}

func (s *Store) changeClient(
	ctx context.Context, id ClientID, action Action, about Detail, set string, args ...any,
) error {
	return s.write(ctx, func(tx *sqlx.Tx) error {
		if err := execOne(ctx, tx, "UPDATE client SET "+set+" WHERE id = ?", append(args, id)...); err != nil {
			return err
		}
		return s.note(ctx, tx, action, id, about)
	})
}

// touch dates a change to something of the client, ErrNotFound without client.
func (s *Store) touch(ctx context.Context, tx *sqlx.Tx, id ClientID) error {
	return execOne(ctx, tx, "UPDATE client SET updated_at = ? WHERE id = ?", s.now(), id)
}

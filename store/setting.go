package store

import (
	"context"
	"database/sql"
	"errors"
	"time"

	"github.com/jmoiron/sqlx"
)

// Setting is something that the practice set: its name and address, its
// colours, the bytes of its logo. The body is sealed; Version counts changes.
type Setting struct {
	Name    string
	Version int
	SavedAt time.Time
	Body    []byte
}

type settingRow struct {
	Name    string  `db:"name"`
	Version int     `db:"version"`
	SavedAt instant `db:"saved_at"`
	Body    []byte  `db:"body"`
}

const settingColumns = "name, version, saved_at, body"

func (r settingRow) place() place { return place{"setting", r.Name, "body", r.Version} }

func (s *Store) openSetting(r settingRow) (Setting, error) {
	body, err := s.open(r.place(), r.Body)
	return Setting{Name: r.Name, Version: r.Version, SavedAt: r.SavedAt.Time, Body: body}, err
}

// PutSetting keeps a setting in place of its former value.
func (s *Store) PutSetting(ctx context.Context, name string, body []byte) error {
	if err := checkName("setting", name); err != nil {
		return err
	}
	return s.write(ctx, func(tx *sqlx.Tx) error {
		row := settingRow{Name: name, Version: 1, SavedAt: s.now()}
		query := "INSERT INTO setting (version, saved_at, body, name) VALUES (?, ?, ?, ?)"
		var former int
		err := get(ctx, tx, &former, "SELECT version FROM setting WHERE name = ?", name)
		switch {
		case err == nil:
			row.Version = former + 1
			query = "UPDATE setting SET version = ?, saved_at = ?, body = ? WHERE name = ?"
		case !errors.Is(err, sql.ErrNoRows):
			return err
		}
		sealed, err := s.seal(row.place(), body)
		if err != nil {
			return err
		}
		if err := execOne(ctx, tx, query, row.Version, row.SavedAt, sealed, row.Name); err != nil {
			return err
		}
		return s.note(ctx, tx, Changed, "", Detail{What: name, Number: row.Version})
	})
}

// Setting returns one setting, ErrNotFound when it was never set.
func (s *Store) Setting(ctx context.Context, name string) (v Setting, err error) {
	err = s.read(ctx, func(tx *sqlx.Tx) error {
		var row settingRow
		if err := get(ctx, tx, &row, "SELECT "+settingColumns+" FROM setting WHERE name = ?", name); err != nil {
			return err
		}
		v, err = s.openSetting(row)
		return err
	})
	return v, err
}

// Settings returns all settings in the order of their names.
func (s *Store) Settings(ctx context.Context) (settings []Setting, err error) {
	err = s.read(ctx, func(tx *sqlx.Tx) error {
		var rows []settingRow
		if err := list(ctx, tx, &rows, "SELECT "+settingColumns+" FROM setting ORDER BY name"); err != nil {
			return err
		}
		settings, err = each(rows, s.openSetting)
		return err
	})
	return settings, err
}

// SetMeta notes something of the program's own, in clear: nothing of a client
// or of the practice belongs here.
func (s *Store) SetMeta(ctx context.Context, name, value string) error {
	if err := checkName("note", name); err != nil {
		return err
	}
	return s.write(ctx, func(tx *sqlx.Tx) error { return putMeta(ctx, tx, name, value) })
}

func putMeta(ctx context.Context, tx *sqlx.Tx, name, value string) error {
	return execOne(ctx, tx, "INSERT INTO meta (name, value) VALUES (?, ?) "+
		"ON CONFLICT (name) DO UPDATE SET value = excluded.value", name, value)
}

// Meta returns a note of the program, ErrNotFound when it was never set.
func (s *Store) Meta(ctx context.Context, name string) (value string, err error) {
	err = s.read(ctx, func(tx *sqlx.Tx) error {
		return get(ctx, tx, &value, "SELECT value FROM meta WHERE name = ?", name)
	})
	return value, err
}

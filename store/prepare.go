package store

import (
	"context"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"

	"github.com/jmoiron/sqlx"
	"github.com/pressly/goose/v3"
)

//go:embed migrations/*.sql
var embedded embed.FS

// shipped are the migrations of this program: files numbered from 0001 without
// a gap. A file that was ever released is never edited; a change is a new file.
func shipped() fs.FS {
	files, err := fs.Sub(embedded, "migrations")
	if err != nil {
		panic(err) // the name above is a constant
	}
	return files
}

// latestVersion is the highest number among the migrations.
func latestVersion(migrations fs.FS) (int64, error) {
	names, err := fs.Glob(migrations, "*.sql")
	if err != nil {
		return 0, err
	}
	var latest int64
	for _, name := range names {
		version, err := goose.NumericComponent(name)
		if err != nil {
			return 0, err
		}
		latest = max(latest, version)
	}
	return latest, nil
}

// settle makes the folder and returns the absolute path with links followed,
// so that two names of one file have one lock.
func settle(path string) (string, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return "", fail(ErrReadOnlyFolder, err)
	}
	if err := os.MkdirAll(filepath.Dir(path), folderMode); err != nil {
		return "", fail(ErrReadOnlyFolder, err)
	}
	if followed, err := filepath.EvalSymlinks(path); err == nil {
		return followed, nil
	}
	folder, err := filepath.EvalSymlinks(filepath.Dir(path))
	if err != nil {
		return "", fail(ErrReadOnlyFolder, err)
	}
	return filepath.Join(folder, filepath.Base(path)), nil
}

// prepare makes a new file, or checks an existing one and brings it up to date.
// The caller holds the lock. The file at path is never half made: new content
// is written beside it and renamed, so that a crash at any moment leaves either
// the old file or the new one.
func prepare(ctx context.Context, path string, migrations fs.FS) error {
	latest, err := latestVersion(migrations)
	if err != nil {
		return err
	}
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist) && logWaits(path):
		return fail(ErrDamaged, errors.New("the file is missing, but the log that belongs to it is there"))
	case errors.Is(err, fs.ErrNotExist):
		return writeBeside(path, func(fresh string) error { return build(ctx, fresh, migrations) })
	case err != nil:
		return fileTrouble(err)
	case !info.Mode().IsRegular():
		return fail(ErrForeign, fmt.Errorf("not a file but %s", info.Mode()))
	}
	version, err := inspect(ctx, path, latest)
	switch {
	case err != nil:
		return err
	case version > latest:
		return fail(ErrNewerVersion, fmt.Errorf("file has version %d, this program knows %d", version, latest))
	case version < latest:
		err = upgrade(ctx, path, version, latest, migrations)
	}
	if err == nil && info.Mode().Perm()&^fileMode != 0 {
		err = fileTrouble(os.Chmod(path, fileMode))
	}
	return err
}

// build brings the file, empty or of an older version, up to date in place and
// closes it.
func build(ctx context.Context, path string, migrations fs.FS) (err error) {
	db, err := openPool(path, buildSettings, 1)
	if err != nil {
		return explain(err)
	}
	defer func() { err = errors.Join(err, explain(db.Close())) }()
	if err := unguard(ctx, db); err != nil {
		return err
	}
	provider, err := goose.NewProvider(dialect, db.DB, migrations, goose.WithDisableGlobalRegistry(true))
	if err != nil {
		return err
	}
	if _, err := provider.Up(ctx); err != nil {
		return explain(err)
	}
	return mark(ctx, db)
}

// upgrade keeps a copy of the file as it is, brings a second copy up to date,
// and puts that in place of the file. Whatever fails, the file is untouched.
func upgrade(ctx context.Context, path string, version, latest int64, migrations fs.FS) error {
	db, err := openPool(path, writerSettings, 1)
	if err != nil {
		return explain(err)
	}
	defer db.Close()
	kept := fmt.Sprintf("%s%s%d", path, beforeMark, latest)
	if err := writeBeside(kept, func(fresh string) error {
		return copyVerified(ctx, db, fresh, version)
	}); err != nil {
		return updateTrouble(err)
	}
	return updateTrouble(writeBeside(path, func(fresh string) error {
		if err := copyVerified(ctx, db, fresh, version); err != nil {
			return err
		}
		if err := build(ctx, fresh, migrations); err != nil {
			return err
		}
		if _, err := inspect(ctx, fresh, latest); err != nil {
			return err
		}
		return closeWhole(db, path)
	}))
}

// updateTrouble keeps the errors that the person can act on, and calls the rest
// a failed update.
func updateTrouble(err error) error {
	for _, known := range []error{ErrDiskFull, ErrReadOnlyFolder, ErrInUse, context.Canceled, context.DeadlineExceeded} {
		if err == nil || errors.Is(err, known) {
			return err
		}
	}
	return fail(ErrUpdate, err)
}

// copyVerified copies the database to an empty file and checks the copy: it
// opens, is consistent, has the version, and every table has as many rows.
// Nobody writes to db meanwhile.
func copyVerified(ctx context.Context, db dbConn, path string, version int64) error {
	want, err := tableCounts(ctx, db)
	if err != nil {
		return err
	}
	if err := copyInto(ctx, db, path); err != nil {
		return err
	}
	got, err := verify(ctx, path, version)
	if err != nil {
		return err
	}
	if !maps.Equal(want, got) {
		return fail(ErrDamaged, fmt.Errorf("the copy has rows %v, should have %v", got, want))
	}
	return nil
}

// dbConn is what a pool, a connection and a transaction have in common.
type dbConn interface {
	sqlx.QueryerContext
	sqlx.ExecerContext
}

// verify opens a closed copy, checks all of it and counts its rows.
func verify(ctx context.Context, path string, version int64) (map[string]int, error) {
	found, err := inspect(ctx, path, version)
	if err != nil {
		return nil, err
	}
	if found != version {
		return nil, fail(ErrDamaged, fmt.Errorf("the copy has version %d, should have %d", found, version))
	}
	db, err := openToLook(path)
	if err != nil {
		return nil, explain(err)
	}
	defer db.Close()
	if err := integrity(ctx, db, "integrity_check(1)"); err != nil {
		return nil, err
	}
	return tableCounts(ctx, db)
}

// closeWhole closes the last connection to a file and makes sure that all of
// its content is in the file itself.
func closeWhole(db *sqlx.DB, path string) error {
	if err := db.Close(); err != nil {
		return explain(err)
	}
	if logWaits(path) {
		return fail(ErrInUse, errors.New("another program keeps the log open"))
	}
	return nil
}

package store

import (
	"bufio"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"time"

	"github.com/jmoiron/sqlx"
)

// pagesMark ends the name of the copy of the pages as they are, made on the way.
const pagesMark = "-pages"

// copyOut writes a consistent copy of the open file to working, checks all of
// it, compares its rows with the file's, and notes in h what it has.
func (s *Store) copyOut(ctx context.Context, working string, h *backupHeader) error {
	pages := working + pagesMark
	defer func() { _ = removeAll(append(companions(pages), pages)) }()
	var want map[string]int
	if err := writeBeside(pages, func(fresh string) (err error) {
		want, err = snapshotInto(ctx, s.path, fresh)
		return err
	}); err != nil {
		return err
	}
	if err := compact(ctx, pages, working); err != nil {
		return err
	}
	if err := inspectCopy(ctx, working, h); err != nil {
		return err
	}
	if !maps.Equal(want, h.Rows) {
		return fail(ErrDamaged, fmt.Errorf("the copy has rows %v, should have %v", h.Rows, want))
	}
	return nil
}

// compact writes the file anew without its unused room, where traces of deleted
// rows may lie.
func compact(ctx context.Context, pages, working string) (err error) {
	db, err := openPool(pages, buildSettings, 1)
	if err != nil {
		return explain(err)
	}
	defer func() { err = errors.Join(err, explain(db.Close())) }()
	return writeBeside(working, func(fresh string) error { return copyInto(ctx, db, fresh) })
}

// inspectCopy checks a closed copy completely and notes what it has, its length
// and its sum.
func inspectCopy(ctx context.Context, path string, h *backupHeader) error {
	latest, err := latestVersion(shipped())
	if err != nil {
		return err
	}
	if h.Schema, err = inspect(ctx, path, latest); err != nil {
		return err
	}
	if h.Schema > latest {
		return fail(ErrNewerVersion, fmt.Errorf("the copy has version %d, this program knows %d", h.Schema, latest))
	}
	db, err := openToLook(path)
	if err != nil {
		return explain(err)
	}
	defer db.Close()
	if err := integrity(ctx, db, "integrity_check(1)"); err != nil {
		return err
	}
	if err := look(ctx, db, &h.Inside); err != nil {
		return err
	}
	h.Bytes, h.Sum, err = sumOf(path)
	return err
}

// look counts what a file has; schemas without an audit trail have none of it.
func look(ctx context.Context, db sqlx.QueryerContext, in *Inside) error {
	rows, err := tableCounts(ctx, db)
	if err != nil {
		return err
	}
	in.Rows = rows
	in.Clients, in.Visits, in.Plans = rows["client"], rows["intake"], rows["plan_version"]
	var last *instant
	if err := sqlx.GetContext(ctx, db, &last, "SELECT max(updated_at) FROM client"); err != nil {
		return explain(err)
	}
	in.LastChange, in.Entries, in.Link = time.Time{}, 0, nil
	if last != nil {
		in.LastChange = last.Time
	}
	if rows["audit_head"] == 0 {
		return nil
	}
	var head auditHead
	if err := sqlx.GetContext(ctx, db, &head, "SELECT "+headColumns+" FROM audit_head"); err != nil {
		return explain(err)
	}
	in.Entries, in.Link = head.Entries, head.Link
	return nil
}

func sumOf(path string) (int64, []byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return 0, nil, fileTrouble(err)
	}
	defer f.Close()
	sum := sha256.New()
	n, err := io.Copy(sum, f)
	return n, sum.Sum(nil), fileTrouble(err)
}

// writeBackup writes header and content beside path, reads all of it back, and
// only then gives it its name.
func writeBackup(ctx context.Context, path, working string, h backupHeader, c container) error {
	return writeBeside(path, func(fresh string) error {
		if err := pack(ctx, fresh, working, h, c); err != nil {
			return err
		}
		var open opener
		if c != nil {
			open = c.open
		}
		got, err := unpack(ctx, fresh, io.Discard, open)
		if err == nil && got.Sealed != h.Sealed {
			err = errors.New("the header read back is another")
		}
		if err != nil {
			return fail(ErrDisk, fmt.Errorf("reading the backup back: %w", err))
		}
		return nil
	})
}

// pack writes a backup file.
func pack(ctx context.Context, to, working string, h backupHeader, c container) (err error) {
	in, err := os.Open(working)
	if err != nil {
		return fileTrouble(err)
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_TRUNC, fileMode)
	if err != nil {
		return fileTrouble(err)
	}
	defer func() { err = errors.Join(err, fileTrouble(out.Close())) }()
	head, sum, err := h.encode()
	if err != nil {
		return err
	}
	if _, err := out.Write(head); err != nil {
		return fileTrouble(err)
	}
	var content io.WriteCloser = leftOpen{out}
	if c != nil {
		if content, err = c.seal(out); err != nil {
			return containerTrouble(err)
		}
	}
	if _, err := content.Write(sum[:]); err != nil {
		return containerTrouble(err)
	}
	if _, err := io.Copy(content, stoppable{ctx, in}); err != nil {
		return containerTrouble(err)
	}
	if err := content.Close(); err != nil {
		return containerTrouble(err)
	}
	return fileTrouble(out.Sync())
}

// containerTrouble explains what the disk said under a container, and passes on
// what the container itself said.
func containerTrouble(err error) error {
	var path *fs.PathError
	if diskFull(err) || errors.As(err, &path) {
		return fileTrouble(err)
	}
	return err
}

// unpack reads a backup file, checks all of it and writes its content to dst.
func unpack(ctx context.Context, path string, dst io.Writer, open opener) (backupHeader, error) {
	f, err := os.Open(path)
	if err != nil {
		return backupHeader{}, fileTrouble(err)
	}
	defer f.Close()
	h, err := unpackFrom(backupReader(stoppable{ctx, f}), dst, open)
	if stopped := ctx.Err(); err != nil && stopped != nil {
		err = stopped // not what reading made of it
	}
	return h, err
}

func unpackFrom(src *bufio.Reader, dst io.Writer, open opener) (backupHeader, error) {
	h, sum, err := readHeader(src)
	if err != nil {
		return h, err
	}
	var content io.Reader = src
	if h.Sealed {
		if open == nil {
			return h, &UserError{
				Plain: "This backup is sealed. Enter its passphrase or its recovery code.",
				kind:  ErrWrongPassphrase, cause: errors.New("no secret was given"),
			}
		}
		if content, err = open(content); err != nil {
			return h, err
		}
	}
	return h, readContent(dst, content, h, sum)
}

// leftOpen is a writer whose Close does nothing.
type leftOpen struct{ io.Writer }

func (leftOpen) Close() error { return nil }

// stoppable is a reader that ends with its context.
type stoppable struct {
	ctx context.Context
	io.Reader
}

func (s stoppable) Read(p []byte) (int, error) {
	if err := s.ctx.Err(); err != nil {
		return 0, err
	}
	return s.Reader.Read(p)
}

package store

import (
	"context"
	"errors"
	"maps"
	"slices"

	"github.com/jmoiron/sqlx"
)

// loading is what a NameIndex needs to know while a Store fills it.
type loading struct {
	// touched are the clients that were put or removed meanwhile: what they are
	// called now is newer than what is being read.
	touched map[ClientID]bool
}

// OpenNames returns an index of the clients' names and fills it in the
// background, those opened last first. It can be searched at once, and finds
// what was read so far; Put and Remove work meanwhile, and what they say wins.
// When the file is locked or closed, the index is emptied and stays empty.
//
// nameOf takes the name out of an identity record; it runs in the background,
// one record after the other, also for archived clients, and must not call the
// Store or the index. It fails with ErrLocked.
func (s *Store) OpenNames(nameOf func(Record) (string, error)) (*NameIndex, error) {
	x := &NameIndex{
		byID: map[ClientID]*entry{}, loading: &loading{touched: map[ClientID]bool{}}, filled: make(chan struct{}),
	}
	ctx, err := s.safe.session.join(x)
	if err != nil {
		return nil, err
	}
	go func() { x.finish(s.fillNames(ctx, x, nameOf)) }()
	return x, nil
}

// Loading reports whether names are still being read.
func (x *NameIndex) Loading() bool {
	x.mu.Lock()
	defer x.mu.Unlock()
	return x.loading != nil
}

// Wait returns when all names are read, with what went wrong: ErrLocked when the
// file was locked before, ErrDamaged when a record cannot be opened (all others
// are there), or what nameOf failed with.
func (x *NameIndex) Wait(ctx context.Context) error {
	if x.filled == nil {
		return nil
	}
	select {
	case <-ctx.Done():
		return ctx.Err()
	case <-x.filled:
	}
	x.mu.Lock()
	defer x.mu.Unlock()
	return x.trouble
}

func (x *NameIndex) finish(err error) {
	x.mu.Lock()
	x.loading = nil
	x.trouble = err
	if x.closed && err != nil {
		x.trouble = fail(ErrLocked, nil)
	}
	x.mu.Unlock()
	close(x.filled)
}

// close empties the index for good.
func (x *NameIndex) close() {
	x.mu.Lock()
	defer x.mu.Unlock()
	x.closed = true
	x.byID, x.entries, x.words = map[ClientID]*entry{}, nil, nil
	x.changes++
}

func (x *NameIndex) touch(id ClientID) {
	if x.loading != nil {
		x.loading.touched[id] = true
	}
}

// fewNames is the first batch that goes into the index; each further one is as
// large as all before, so that the work stays in proportion.
const fewNames = 2000

// nameFiller reads names into an index.
type nameFiller struct {
	store   *Store
	index   *NameIndex
	nameOf  func(Record) (string, error)
	known   map[ClientID]bool // read already
	batch   []Name            // read, not in the index yet
	trouble error             // of the first record that gave no name
}

// fillNames reads all names into the index. One record that gives no name does
// not keep the others away.
func (s *Store) fillNames(ctx context.Context, x *NameIndex, nameOf func(Record) (string, error)) error {
	if err := s.makeRoom(ctx, x); err != nil {
		return err
	}
	f := &nameFiller{store: s, index: x, nameOf: nameOf, known: map[ClientID]bool{}}
	err := s.eachIdentity(ctx, recentOnly, f.take)
	f.flush()
	if err == nil {
		err = s.eachIdentity(ctx, everybody, f.take)
		f.flush()
	}
	return errors.Join(err, f.trouble)
}

// take reads one record; a client that was read already is left out.
func (f *nameFiller) take(row recordRow) error {
	if f.known[row.ClientID] {
		return nil
	}
	f.known[row.ClientID] = true
	record, err := f.store.openRecord(row)
	var name string
	if err == nil {
		name, err = f.nameOf(record)
	}
	switch {
	case err == nil:
		f.batch = append(f.batch, Name{record.ClientID, name})
	case errors.Is(err, ErrLocked):
		return err
	case f.trouble == nil:
		f.trouble = err
	}
	if len(f.batch) >= max(fewNames, len(f.known)/2) {
		f.flush()
	}
	return nil
}

func (f *nameFiller) flush() {
	f.index.addMany(f.batch)
	f.batch = nil
}

// makeRoom prepares the index for as many clients as there are, so that it does
// not have to grow while somebody searches.
func (s *Store) makeRoom(ctx context.Context, x *NameIndex) error {
	var clients int
	if err := s.read(ctx, func(tx *sqlx.Tx) error {
		return get(ctx, tx, &clients, "SELECT count(*) FROM client")
	}); err != nil {
		return err
	}
	x.mu.Lock()
	defer x.mu.Unlock()
	roomy := make(map[ClientID]*entry, clients+len(x.byID))
	maps.Copy(roomy, x.byID)
	x.byID = roomy
	return nil
}

// Which identity records to read: all, or those that the list of clients shows
// first.
const (
	everybody  = "SELECT " + recordColumns + " FROM record WHERE kind = ? AND " + newestOnly
	recentOnly = everybody + " AND client_id IN (SELECT id FROM client ORDER BY last_opened_at DESC, id LIMIT 200)"
)

func (s *Store) eachIdentity(ctx context.Context, query string, take func(recordRow) error) error {
	return s.read(ctx, func(tx *sqlx.Tx) error {
		rows, err := tx.QueryxContext(ctx, tx.Rebind(query), KindIdentity)
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			var row recordRow
			if err := rows.Scan(&row.ID, &row.ClientID, &row.Kind, &row.Version, &row.SavedAt, &row.Body); err != nil {
				return err
			}
			if err := take(row); err != nil {
				return err
			}
		}
		return rows.Err()
	})
}

// addMany adds names that were read from the file, each client once; of those
// that were put or removed meanwhile the index knows better. Sorting and merging
// are done beside the index, so that a search does not wait for them.
func (x *NameIndex) addMany(names []Name) {
	if len(names) == 0 {
		return
	}
	fresh := NewNameIndex(names)
	for {
		x.mu.Lock()
		at := x.changes
		known := x.knownBetter()
		entries, words := slices.Clone(x.entries), slices.Clone(x.words)
		x.mu.Unlock()

		entries = merged(entries, slices.DeleteFunc(slices.Clone(fresh.entries), func(e *entry) bool { return known(e.ID) }), byName)
		words = merged(words, slices.DeleteFunc(slices.Clone(fresh.words), func(w word) bool { return known(w.of.ID) }), byText)

		x.mu.Lock()
		if x.changes == at {
			for _, e := range fresh.entries {
				if !known(e.ID) {
					x.byID[e.ID] = e
				}
			}
			x.entries, x.words, x.stale = entries, words, true
			x.changes++
			x.mu.Unlock()
			return
		}
		closed := x.closed
		x.mu.Unlock()
		if closed {
			return
		}
	}
}

// knownBetter returns what is not to be taken from the file any more: clients
// that were put or removed meanwhile, and all of them once the index is closed.
func (x *NameIndex) knownBetter() func(ClientID) bool {
	if x.closed {
		return func(ClientID) bool { return true }
	}
	touched := maps.Clone(x.loading.touched)
	return func(id ClientID) bool { return touched[id] }
}

// merged merges two sorted slices.
func merged[T any](a, b []T, order func(a, b T) int) []T {
	out := make([]T, 0, len(a)+len(b))
	for len(a) > 0 && len(b) > 0 {
		if order(a[0], b[0]) <= 0 {
			out, a = append(out, a[0]), a[1:]
		} else {
			out, b = append(out, b[0]), b[1:]
		}
	}
	return append(append(out, a...), b...)
}

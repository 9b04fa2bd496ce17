package main

import (
	"context"
	"encoding/json"
	"errors"
	"slices"
	"sync"
	"time"

	"handbreadth/domain/unit"
	"handbreadth/store"
	"handbreadth/ui"
)

// watch tells the time at the desk. It changes only while the demo is filled.
type watch struct{ now func() time.Time }

// desk answers the shell from the practice's file. What the list shows at once
// is kept in memory, because names are sealed in the file; it is emptied when
// the file is locked.
type desk struct {
	records  *store.Store
	watch    *watch
	shelf    *shelf
	remember func(ui.Settings) // keeps what is to be known before unlocking; nil: nothing

	mu       sync.Mutex
	index    *store.NameIndex
	people   map[store.ClientID]person
	recent   []store.ClientID // the one opened last first
	settings ui.Settings
}

// person is what the list knows of a client.
type person struct {
	identity identity
	version  int // of the identity record; 0: not read yet
	client   store.Client
}

// identity is the body of an identity record.
type identity struct {
	Name string    `json:"name"`
	Born unit.Date `json:"born"`
}

var _ ui.Desk = (*desk)(nil)

// enterDesk reads what the list needs of an open file that is not locked. Names
// are read in the background.
func enterDesk(ctx context.Context, records *store.Store, w *watch, s *shelf) (*desk, error) {
	d := &desk{records: records, watch: w, shelf: s, people: map[store.ClientID]person{}}
	clients, err := records.Clients(ctx, true)
	if err != nil {
		return nil, err
	}
	for _, c := range clients {
		d.people[c.ID] = person{client: c}
		d.recent = append(d.recent, c.ID)
	}
	if d.settings, err = loadSettings(ctx, records); err != nil {
		return nil, err
	}
	d.index, err = records.OpenNames(d.nameOf)
	return d, err
}

// nameOf takes in an identity as it is read in the background.
func (d *desk) nameOf(r store.Record) (string, error) {
	var i identity
	if err := json.Unmarshal(r.Body, &i); err != nil {
		return "", err
	}
	d.know(r.ClientID, i, r.Version)
	return i.Name, nil
}

// know takes in an identity, unless a newer one is known or the client is gone.
func (d *desk) know(id store.ClientID, i identity, version int) {
	d.mu.Lock()
	defer d.mu.Unlock()
	p, there := d.people[id]
	if there && version > p.version {
		p.identity, p.version = i, version
		d.people[id] = p
	}
}

// empty forgets everything that was read.
func (d *desk) empty() {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.people, d.recent, d.settings = map[store.ClientID]person{}, nil, ui.Settings{}
}

// Loading reports whether names are still being read.
func (d *desk) Loading() bool { return d.index.Loading() }

// Names waits until all names are read.
func (d *desk) Names(ctx context.Context) error { return d.index.Wait(ctx) }

// RetentionNotice says what a deletion removes and what the law may require.
func (d *desk) RetentionNotice() string { return store.RetentionNotice() }

// Today is the day at the desk.
func (d *desk) Today() unit.Date { return unit.FromTime(d.watch.now()) }

// mostFound bounds what a search of names returns; nobody reads further.
const mostFound = 500

// Find returns the ids of the clients whose name matches.
func (d *desk) Find(query string, archived bool) []string {
	d.mu.Lock()
	defer d.mu.Unlock()
	ids := d.recent
	if isSearch(query) {
		ids = nil
		for _, hit := range d.index.Search(query, d.index.Len()) {
			ids = append(ids, hit.ID)
		}
	}
	var found []string
	for _, id := range ids {
		if d.isArchived(id) == archived {
			found = append(found, string(id))
		}
		if isSearch(query) && len(found) == mostFound {
			break
		}
	}
	return found
}

func (d *desk) isArchived(id store.ClientID) bool { return d.people[id].client.ArchivedAt != nil }

// Row returns what the list shows of a client at once.
func (d *desk) Row(id string) (ui.Row, bool) {
	d.mu.Lock()
	defer d.mu.Unlock()
	p, ok := d.people[store.ClientID(id)]
	if !ok {
		return ui.Row{}, false
	}
	return ui.Row{
		ID: id, Name: p.identity.Name, Born: p.identity.Born,
		NextVisit: p.client.NextVisit, Archived: p.client.ArchivedAt != nil,
	}, true
}

// Create makes a client with a name.
func (d *desk) Create(ctx context.Context, name string) (string, error) {
	who := identity{Name: name}
	body, err := json.Marshal(who)
	if err != nil {
		return "", err
	}
	c, err := d.records.CreateClient(ctx, map[store.Kind][]byte{store.KindIdentity: body})
	if err != nil {
		return "", err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	d.people[c.ID] = person{identity: who, version: 1, client: c}
	d.recent = slices.Insert(d.recent, 0, c.ID)
	d.index.Put(c.ID, name)
	return string(c.ID), nil
}

// Archive takes a client out of the daily list.
func (d *desk) Archive(ctx context.Context, id string) error {
	if err := d.records.ArchiveClient(ctx, store.ClientID(id)); err != nil {
		return err
	}
	return d.reread(ctx, store.ClientID(id))
}

// Unarchive brings a client back into the daily list.
func (d *desk) Unarchive(ctx context.Context, id string) error {
	if err := d.records.UnarchiveClient(ctx, store.ClientID(id)); err != nil {
		return err
	}
	return d.reread(ctx, store.ClientID(id))
}

// Delete removes a client for good. Traces that could not be wiped yet are
// wiped when the file is closed, so that is no failure.
func (d *desk) Delete(ctx context.Context, id string) error {
	err := d.records.DeleteClient(ctx, store.ClientID(id))
	if err != nil && !errors.Is(err, store.ErrTracesLeft) {
		return err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	delete(d.people, store.ClientID(id))
	d.index.Remove(store.ClientID(id))
	d.recent = slices.DeleteFunc(d.recent, func(c store.ClientID) bool { return string(c) == id })
	return nil
}

// reread brings what is known of a client up to date.
func (d *desk) reread(ctx context.Context, id store.ClientID) error {
	c, err := d.records.Client(ctx, id)
	if err != nil {
		return err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	p := d.people[id]
	p.client = c
	d.people[id] = p
	return nil
}

// opened puts a client first in the list.
func (d *desk) opened(ctx context.Context, id store.ClientID) error {
	if err := d.records.MarkOpened(ctx, id); err != nil {
		return err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	d.recent = slices.DeleteFunc(d.recent, func(c store.ClientID) bool { return c == id })
	d.recent = slices.Insert(d.recent, 0, id)
	return nil
}

package store

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func nameInBody(r Record) (string, error) { return string(r.Body), nil }

// namedFile makes a sealed file with clients of these names.
func namedFile(t testing.TB, names ...string) (s *Store, ids []ClientID) {
	t.Helper()
	s = mustOpen(t, newPath(t), quick())
	must(s.SetPassphrase(t.Context(), phrase, nil))(t)
	for _, name := range names {
		c := must(s.CreateClient(t.Context(), map[Kind][]byte{KindIdentity: []byte(name)}))(t)
		ids = append(ids, c.ID)
	}
	return s, ids
}

func TestNamesAreReadInTheBackground(t *testing.T) {
	ctx := t.Context()
	s, ids := namedFile(t, "Ottoline Quill", "Bartholomew Fennimore", "Zoë Åkerblom")
	must(s.CreateClient(ctx, nil))(t) // has no identity yet
	if err := s.ArchiveClient(ctx, ids[1]); err != nil {
		t.Fatal(err)
	}
	must(s.SaveRecord(ctx, ids[0], KindIdentity, 1, []byte("Ottoline Quill-Marsh")))(t)
	s = again(t, s)
	if err := s.Unlock(ctx, phrase); err != nil {
		t.Fatal(err)
	}
	names := must(s.OpenNames(nameInBody))(t)
	if err := names.Wait(ctx); err != nil || names.Loading() {
		t.Fatal(err)
	}
	if got := found(names.Search("", 10)); !slices.Equal(got, []string{"Bartholomew Fennimore", "Ottoline Quill-Marsh", "Zoë Åkerblom"}) {
		t.Errorf("found %q", got)
	}
	if got := found(names.Search("aker", 10)); !slices.Equal(got, []string{"Zoë Åkerblom"}) {
		t.Errorf("found %q", got)
	}
	s.Lock()
	if names.Len() != 0 || len(names.Search("", 10)) != 0 {
		t.Error("names are left in a locked program")
	}
	names.Put(ids[0], "Ottoline Quill") // a late answer of something that ran before
	if names.Len() != 0 {
		t.Error("a name came back after the lock")
	}
}

// While the names are being read the index answers, and what is said meanwhile
// is newer than what is read.
func TestTheIndexWorksWhileItIsFilled(t *testing.T) {
	ctx := t.Context()
	s, ids := namedFile(t, "Ottoline Quill", "Bartholomew Fennimore", "Zoë Åkerblom")
	reading, goOn := make(chan struct{}), make(chan struct{})
	first := true
	names := must(s.OpenNames(func(r Record) (string, error) {
		if first {
			first = false
			close(reading)
			<-goOn
		}
		return string(r.Body), nil
	}))(t)
	<-reading
	if !names.Loading() {
		t.Error("it is being read")
	}
	stopped, stop := context.WithCancel(ctx)
	stop()
	if err := names.Wait(stopped); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
	names.Put(ids[0], "Ottoline Marsh")
	names.Remove(ids[1])
	names.Put("new", "Wilhelmina Stove")
	if got := found(names.Search("", 10)); !slices.Equal(got, []string{"Ottoline Marsh", "Wilhelmina Stove"}) {
		t.Errorf("meanwhile found are %q", got)
	}
	close(goOn)
	if err := names.Wait(ctx); err != nil {
		t.Fatal(err)
	}
	if got := found(names.Search("", 10)); !slices.Equal(got, []string{"Ottoline Marsh", "Wilhelmina Stove", "Zoë Åkerblom"}) {
		t.Errorf("afterwards found are %q", got)
	}
}

// Locking while the names are read stops the reading.
func TestLockStopsTheReadingOfNames(t *testing.T) {
	s, _ := namedFile(t, "Ottoline Quill", "Bartholomew Fennimore", "Zoë Åkerblom")
	reading, goOn := make(chan struct{}), make(chan struct{})
	first := true
	names := must(s.OpenNames(func(r Record) (string, error) {
		if first {
			first = false
			close(reading)
			<-goOn
		}
		return string(r.Body), nil
	}))(t)
	<-reading
	locked := make(chan struct{})
	go func() { s.Lock(); close(locked) }()
	<-must(s.safe.session.over())(t)
	close(goOn)
	<-locked
	wantErr(t, names.Wait(t.Context()), ErrLocked)
	if names.Len() != 0 {
		t.Errorf("%d names are left", names.Len())
	}
}

// over returns a channel that closes when the session ends.
func (x *session) over() (<-chan struct{}, error) {
	x.mu.Lock()
	defer x.mu.Unlock()
	if x.ctx == nil {
		closed := make(chan struct{})
		close(closed)
		return closed, nil
	}
	return x.ctx.Done(), nil
}

// A name that cannot be read does not keep the others away, and is told.
func TestOneDamagedNameAmongOthers(t *testing.T) {
	s, ids := namedFile(t, "Ottoline Quill", "Bartholomew Fennimore", "Zoë Åkerblom")
	if err := unguard(t.Context(), s.writer); err != nil {
		t.Fatal(err)
	}
	must(s.writer.Exec("UPDATE record SET version = 7 WHERE client_id = ?", ids[1]))(t)
	names := must(s.OpenNames(nameInBody))(t)
	wantErr(t, names.Wait(t.Context()), ErrDamaged)
	if got := found(names.Search("", 10)); !slices.Equal(got, []string{"Ottoline Quill", "Zoë Åkerblom"}) {
		t.Errorf("found %q", got)
	}
	unreadable := errors.New("no name in it")
	names = must(s.OpenNames(func(r Record) (string, error) {
		if string(r.Body) == "Zoë Åkerblom" {
			return "", unreadable
		}
		return string(r.Body), nil
	}))(t)
	if err := names.Wait(t.Context()); names.Len() != 1 || (!errors.Is(err, unreadable) && !errors.Is(err, ErrDamaged)) {
		t.Errorf("%d names, %v", names.Len(), err)
	}
}

// Adding in any batches, with puts and removals in between, comes to what one
// index of the latest names is.
func TestAddingManyFollowsTheModel(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		name := rapid.SampledFrom([]string{"Anna", "anna", "Änna Bo", "Bo", "bo anna", "", "O'Bo", "Zoë"})
		id := rapid.Custom(func(rt *rapid.T) ClientID { return ClientID(rapid.StringMatching("[a-h]").Draw(rt, "id")) })
		x := &NameIndex{byID: map[ClientID]*entry{}, loading: &loading{touched: map[ClientID]bool{}}, filled: make(chan struct{})}
		model, touched, seen := map[ClientID]string{}, map[ClientID]bool{}, map[ClientID]bool{}
		rt.Repeat(map[string]func(*rapid.T){
			"many": func(rt *rapid.T) {
				var batch []Name
				for range rapid.IntRange(0, 6).Draw(rt, "size") {
					n := Name{id.Draw(rt, "id"), name.Draw(rt, "name")}
					if seen[n.ID] {
						continue // the file has each client once
					}
					seen[n.ID] = true
					batch = append(batch, n)
					if !touched[n.ID] {
						model[n.ID] = n.Name
					}
				}
				x.addMany(batch)
			},
			"put": func(rt *rapid.T) {
				n := Name{id.Draw(rt, "id"), name.Draw(rt, "name")}
				x.Put(n.ID, n.Name)
				model[n.ID], touched[n.ID] = n.Name, true
			},
			"remove": func(rt *rapid.T) {
				gone := id.Draw(rt, "id")
				x.Remove(gone)
				delete(model, gone)
				touched[gone] = true
			},
			"": func(rt *rapid.T) {
				query := rapid.SampledFrom([]string{"", "a", "bo", "an b", "z"}).Draw(rt, "query")
				if got, want := x.Search(query, 5), lookThrough(model, query, 5); !slices.Equal(got, want) {
					rt.Fatalf("%q: %v, want %v", query, got, want)
				}
			},
		})
	})
}

// Searching, putting and filling at the same time.
func TestPutsWhileManyNamesAreRead(t *testing.T) {
	s, _ := namedFile(t)
	const clients = 3000 // more than one batch
	for i := range clients {
		must(s.CreateClient(t.Context(), map[Kind][]byte{KindIdentity: fmt.Appendf(nil, "Anna Number%d", i)}))(t)
	}
	names := must(s.OpenNames(nameInBody))(t)
	for i := 0; names.Loading(); i++ {
		names.Put(ClientID(fmt.Sprint(i%50)), "Somebody Else")
		names.Search("anna num", 5)
	}
	names.Put("0", "Somebody Else")
	if err := names.Wait(t.Context()); err != nil {
		t.Fatal(err)
	}
	if got := len(names.Search("anna", 2*clients)); got != clients {
		t.Errorf("%d of %d are found", got, clients)
	}
}

// BenchmarkNames100k unlocks nothing and reads 100,000 sealed names: until the
// list has the clients opened last, and until all are there. The longest search
// meanwhile is told too.
func BenchmarkNames100k(b *testing.B) {
	s := mustOpen(b, newPath(b), quick())
	must(s.SetPassphrase(b.Context(), phrase, nil))(b)
	insertNamed(b, s, inventedNames(100_000))
	b.ResetTimer()
	for b.Loop() {
		names := must(s.OpenNames(nameInBody))(b)
		if err := names.Wait(b.Context()); err != nil || names.Len() != 100_000 {
			b.Fatal(names.Len(), err)
		}
	}
}

// BenchmarkSearchWhileNamesAreRead searches all the time while 100,000 sealed
// names are read, and tells how long a search took at most.
func BenchmarkSearchWhileNamesAreRead(b *testing.B) {
	s := mustOpen(b, newPath(b), quick())
	must(s.SetPassphrase(b.Context(), phrase, nil))(b)
	insertNamed(b, s, inventedNames(100_000))
	b.ResetTimer()
	var longest, recent float64
	for b.Loop() {
		start := b.Elapsed()
		names := must(s.OpenNames(nameInBody))(b)
		for names.Loading() {
			before := b.Elapsed()
			names.Search("an", 20)
			longest = max(longest, (b.Elapsed()-before).Seconds()*1000)
			if names.Len() > 0 && recent == 0 {
				recent = (b.Elapsed() - start).Seconds() * 1000
			}
		}
	}
	b.ReportMetric(longest, "ms-longest-search")
	b.ReportMetric(recent, "ms-until-first-names")
}

// insertNamed makes clients in one transaction, as one by one would take long.
func insertNamed(t testing.TB, s *Store, names []Name) {
	t.Helper()
	tx := s.writer.MustBeginTx(t.Context(), nil)
	for _, n := range names {
		now := s.now()
		must(run(t.Context(), tx, "INSERT INTO client ("+clientColumns+") VALUES (?, ?, ?, ?, ?, ?)", n.ID, now, now, now, nil, nil))(t)
		must(s.insertRecord(t.Context(), tx, n.ID, KindIdentity, 1, []byte(n.Name)))(t)
	}
	if err := tx.Commit(); err != nil {
		t.Fatal(err)
	}
}

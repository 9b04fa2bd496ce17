package store

import (
	"cmp"
	"slices"
	"strings"
	"sync"
)

// Name is a client's name as the caller read it from the identity record.
type Name struct {
	ID   ClientID
	Name string
}

// Hit is a client whose name matches a search.
type Hit = Name

// NameIndex finds clients by name. It lives in memory only, because names are
// sealed in the file. It may be used from several goroutines.
type NameIndex struct {
	mu      sync.Mutex
	byID    map[ClientID]*entry
	entries []*entry // in the order of results
	words   []word   // in the order of their text
	stale   bool     // ranks do not match entries
	changes int      // counts what changes entries and words
	loading *loading // nil: not filled by a Store, or filled already
	filled  chan struct{}
	trouble error // of the filling
	closed  bool
}

type entry struct {
	Name
	folded string
	words  []string // sorted, without repeats
	rank   int      // position in entries, unless stale
}

type word struct {
	text string
	of   *entry
}

// NewNameIndex makes an index of many names at once, much faster than one Put
// after the other. Of two names with one id the later counts.
func NewNameIndex(names []Name) *NameIndex {
	x := &NameIndex{byID: make(map[ClientID]*entry, len(names)), stale: true}
	for _, n := range names {
		x.byID[n.ID] = newEntry(n)
	}
	for _, e := range x.byID {
		x.entries = append(x.entries, e)
		for _, text := range e.words {
			x.words = append(x.words, word{text, e})
		}
	}
	slices.SortFunc(x.entries, byName)
	slices.SortFunc(x.words, byText)
	return x
}

func newEntry(n Name) *entry {
	folded := fold(n.Name)
	words := nameWords(n.Name, folded)
	slices.Sort(words)
	return &entry{Name: n, folded: folded, words: slices.Compact(words)}
}

// byName is the order of results: by folded name, then by name, then by id.
func byName(a, b *entry) int {
	if order := cmp.Compare(a.folded, b.folded); order != 0 {
		return order
	}
	return cmp.Or(cmp.Compare(a.Name.Name, b.Name.Name), cmp.Compare(a.ID, b.ID))
}

func byText(a, b word) int {
	if order := cmp.Compare(a.text, b.text); order != 0 {
		return order
	}
	return cmp.Compare(a.of.ID, b.of.ID)
}

// Put adds a client, or gives it another name.
func (x *NameIndex) Put(id ClientID, name string) {
	x.mu.Lock()
	defer x.mu.Unlock()
	if x.closed {
		return
	}
	x.touch(id)
	x.remove(id)
	e := newEntry(Name{id, name})
	x.byID[id] = e
	at, _ := slices.BinarySearchFunc(x.entries, e, byName)
	x.entries = slices.Insert(x.entries, at, e)
	for _, text := range e.words {
		w := word{text, e}
		at, _ := slices.BinarySearchFunc(x.words, w, byText)
		x.words = slices.Insert(x.words, at, w)
	}
	x.stale = true
	x.changes++
}

// Remove takes a client out; one that is not there is no error.
func (x *NameIndex) Remove(id ClientID) {
	x.mu.Lock()
	defer x.mu.Unlock()
	x.touch(id)
	x.remove(id)
}

func (x *NameIndex) remove(id ClientID) {
	e, ok := x.byID[id]
	if !ok {
		return
	}
	delete(x.byID, id)
	if at, found := slices.BinarySearchFunc(x.entries, e, byName); found {
		x.entries = slices.Delete(x.entries, at, at+1)
	}
	for _, text := range e.words {
		if at, found := slices.BinarySearchFunc(x.words, word{text, e}, byText); found {
			x.words = slices.Delete(x.words, at, at+1)
		}
	}
	x.stale = true
	x.changes++
}

// Len returns how many clients the index has.
func (x *NameIndex) Len() int {
	x.mu.Lock()
	defer x.mu.Unlock()
	return len(x.entries)
}

// Search returns at most limit clients in alphabetical order, those in whose
// name every word of the query begins some word; upper case, accents and
// apostrophes do not matter. A query without letters finds everybody.
func (x *NameIndex) Search(query string, limit int) []Hit {
	x.mu.Lock()
	defer x.mu.Unlock()
	if limit <= 0 {
		return nil
	}
	prefixes := strings.Fields(fold(query))
	if len(prefixes) == 0 {
		return hits(x.entries[:min(limit, len(x.entries))])
	}
	x.rerank()
	return hits(first(x.candidates(prefixes), prefixes, limit))
}

// rerank numbers the entries by their order, so that results are chosen by
// comparing numbers.
func (x *NameIndex) rerank() {
	if !x.stale {
		return
	}
	for i, e := range x.entries {
		e.rank = i
	}
	x.stale = false
}

// candidates returns the words that begin with the rarest of the prefixes.
func (x *NameIndex) candidates(prefixes []string) []word {
	var rarest []word
	for i, prefix := range prefixes {
		from, _ := slices.BinarySearchFunc(x.words, prefix, func(w word, p string) int { return cmp.Compare(w.text, p) })
		to, _ := slices.BinarySearchFunc(x.words[from:], prefix, func(w word, p string) int {
			if strings.HasPrefix(w.text, p) {
				return -1
			}
			return 1
		})
		if i == 0 || to < len(rarest) {
			rarest = x.words[from : from+to]
		}
	}
	return rarest
}

// first returns the first limit entries in the order of results that match all
// prefixes.
func first(candidates []word, prefixes []string, limit int) []*entry {
	const few = 250 // up to here a sorted list of the best so far is quicker than sorting all
	var best []*entry
	if limit > few {
		for _, w := range candidates {
			if w.of.matches(prefixes) {
				best = append(best, w.of)
			}
		}
		slices.SortFunc(best, byRank)
		best = slices.Compact(best)
		return best[:min(limit, len(best))]
	}
	for _, w := range candidates {
		e := w.of
		if len(best) == limit && e.rank >= best[limit-1].rank {
			continue
		}
		at, found := slices.BinarySearchFunc(best, e, byRank)
		if found || !e.matches(prefixes) {
			continue
		}
		if len(best) == limit {
			best = best[:limit-1]
		}
		best = slices.Insert(best, at, e)
	}
	return best
}

func byRank(a, b *entry) int { return cmp.Compare(a.rank, b.rank) }

// matches reports whether each prefix begins some word of the name.
func (e *entry) matches(prefixes []string) bool {
	for _, prefix := range prefixes {
		at, _ := slices.BinarySearch(e.words, prefix)
		if at == len(e.words) || !strings.HasPrefix(e.words[at], prefix) {
			return false
		}
	}
	return true
}

func hits(entries []*entry) []Hit {
	out := make([]Hit, len(entries))
	for i, e := range entries {
		out[i] = e.Name
	}
	return out
}

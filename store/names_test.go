package store

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"
)

func found(hits []Hit) (names []string) {
	for _, h := range hits {
		names = append(names, h.Name)
	}
	return names
}

func TestSearchFindsNamesAsPeopleTypeThem(t *testing.T) {
	names := []string{
		"Zoë Ünal", "María del Carmen García", "Siobhán O’Brien", "Ærø Sørensen", "Łukasz Wiśniewski",
		"Jean-Luc Straße", "Αλέξης Παππάς", "Юрий Ёлкин", "İpek Yıldız", "d'Arcy Mc'Gee", "Nguyễn Thị Hoa", "Anna Example",
	}
	var list []Name
	for i, name := range names {
		list = append(list, Name{ClientID(fmt.Sprint(i)), name})
	}
	x := NewNameIndex(list)
	for query, want := range map[string]string{
		"zoe": "Zoë Ünal", "UNAL": "Zoë Ünal", "ünal z": "Zoë Ünal", "gar mar": "María del Carmen García",
		"o'br": "Siobhán O’Brien", "obri": "Siobhán O’Brien", "brien": "Siobhán O’Brien", "siobhan": "Siobhán O’Brien",
		"aero": "Ærø Sørensen", "sorensen": "Ærø Sørensen", "lukasz wisn": "Łukasz Wiśniewski",
		"luc": "Jean-Luc Straße", "jean-luc": "Jean-Luc Straße", "strasse": "Jean-Luc Straße", "STRASSE": "Jean-Luc Straße",
		"παππασ": "Αλέξης Παππάς", "αλεξ": "Αλέξης Παππάς", "елк": "Юрий Ёлкин", "ipek yildiz": "İpek Yıldız",
		"arcy": "d'Arcy Mc'Gee", "mcgee": "d'Arcy Mc'Gee", "nguyen": "Nguyễn Thị Hoa", "  anna ,": "Anna Example",
		"anna anna": "Anna Example",
	} {
		if got := found(x.Search(query, 10)); !slices.Equal(got, []string{want}) {
			t.Errorf("%q finds %q, want %q", query, got, want)
		}
	}
	for _, query := range []string{"nna", "garcia pedro", "zzz", "rien", "zoe2"} {
		if got := found(x.Search(query, 10)); len(got) > 0 {
			t.Errorf("%q finds %q", query, got)
		}
	}
	if got := found(x.Search("", 3)); !slices.Equal(got, []string{"Ærø Sørensen", "Anna Example", "d'Arcy Mc'Gee"}) {
		t.Errorf("nothing typed gives %q", got)
	}
	if got := x.Search("a", 0); len(got) > 0 {
		t.Errorf("limit 0 gives %v", got)
	}
}

// The index finds what a plain look through all names finds, in the same order,
// after any changes.
func TestSearchFollowsTheModel(t *testing.T) {
	part := rapid.SampledFrom([]string{"ann", "anna", "Änna", "ann-a", "o'a", "o a", "bo", "b", "an", "ß", "ss", "", "  ", "1"})
	name := rapid.Custom(func(rt *rapid.T) string {
		return strings.Join(rapid.SliceOfN(part, 0, 3).Draw(rt, "parts"), " ")
	})
	id := rapid.Custom(func(rt *rapid.T) ClientID { return ClientID(rapid.StringMatching("[a-f]").Draw(rt, "id")) })
	rapid.Check(t, func(rt *rapid.T) {
		model := map[ClientID]string{}
		var start []Name
		for range rapid.IntRange(0, 6).Draw(rt, "at start") {
			n := Name{id.Draw(rt, "id"), name.Draw(rt, "name")}
			start = append(start, n)
			model[n.ID] = n.Name
		}
		x := NewNameIndex(start)
		rt.Repeat(map[string]func(*rapid.T){
			"put": func(rt *rapid.T) {
				id, name := id.Draw(rt, "id"), name.Draw(rt, "name")
				x.Put(id, name)
				model[id] = name
			},
			"remove": func(rt *rapid.T) {
				id := id.Draw(rt, "id")
				x.Remove(id)
				delete(model, id)
			},
			"": func(rt *rapid.T) {
				query, limit := name.Draw(rt, "query"), rapid.SampledFrom([]int{1, 2, 3, 8, 1000}).Draw(rt, "limit")
				if got, want := x.Search(query, limit), lookThrough(model, query, limit); !slices.Equal(got, want) {
					rt.Fatalf("%q, at most %d: %v, want %v", query, limit, got, want)
				}
				if x.Len() != len(model) {
					rt.Fatalf("%d names, want %d", x.Len(), len(model))
				}
			},
		})
	})
}

func lookThrough(names map[ClientID]string, query string, limit int) []Hit {
	out := []Hit{}
	for id, name := range names {
		if everyPrefix(strings.Fields(fold(query)), nameWords(name, fold(name))) {
			out = append(out, Hit{id, name})
		}
	}
	slices.SortFunc(out, func(a, b Hit) int {
		return strings.Compare(fold(a.Name)+"\x00"+a.Name+"\x00"+string(a.ID), fold(b.Name)+"\x00"+b.Name+"\x00"+string(b.ID))
	})
	return out[:min(limit, len(out))]
}

func everyPrefix(prefixes, words []string) bool {
	for _, p := range prefixes {
		if !slices.ContainsFunc(words, func(w string) bool { return strings.HasPrefix(w, p) }) {
			return false
		}
	}
	return true
}

func TestNameIndexFromManyGoroutines(t *testing.T) {
	x := NewNameIndex(nil)
	var wg sync.WaitGroup
	for w := range 4 {
		wg.Go(func() {
			for i := range 100 {
				id := ClientID(fmt.Sprintf("%d-%d", w, i))
				x.Put(id, fmt.Sprintf("Anna Number%d", i))
				x.Search("anna num", 5)
				if i%2 == 0 {
					x.Remove(id)
				}
			}
		})
	}
	wg.Wait()
	if got := len(x.Search("number", 1000)); got != 200 || x.Len() != 200 {
		t.Errorf("found %d of %d", got, x.Len())
	}
}

// inventedNames makes names that share beginnings as real ones do.
func inventedNames(n int) []Name {
	rng := rand.New(rand.NewPCG(7, 7))
	syllables := []string{"an", "ma", "ri", "el", "jo", "ka", "to", "be", "sü", "né", "lo", "ra", "mi", "do", "ve", "shi"}
	word := func() string {
		var b strings.Builder
		for range 2 + rng.IntN(3) {
			b.WriteString(syllables[rng.IntN(len(syllables))])
		}
		return strings.ToUpper(b.String()[:1]) + b.String()[1:]
	}
	names := make([]Name, n)
	for i := range names {
		names[i] = Name{newID[ClientID](), word() + " " + word()}
	}
	return names
}

package store

import (
	"bytes"
	"fmt"
	"os"
	"testing"
)

// formBody is as long as an intake form of some eighty fields in JSON.
var formBody = bytes.Repeat([]byte(`{"field":"what was typed here"},`), 120)

func BenchmarkSaveDraft(b *testing.B) {
	s := mustOpen(b, newPath(b), Options{})
	id := newClient(b, s)
	for b.Loop() {
		must(s.SaveDraft(b.Context(), id, FormIntake, formBody))(b)
	}
}

func BenchmarkSearch100k(b *testing.B) {
	names := inventedNames(100_000)
	x := NewNameIndex(names)
	for _, query := range []string{"", "m", "an", "mar jo", "zz", names[4321].Name} {
		for _, limit := range []int{20, 100_000} {
			b.Run(fmt.Sprintf("query=%q/limit=%d", query, limit), func(b *testing.B) {
				for b.Loop() {
					x.Search(query, limit)
				}
			})
		}
	}
	b.Run("put", func(b *testing.B) {
		for b.Loop() {
			x.Put(names[77].ID, "Somebody Else")
			x.Search("some", 20)
		}
	})
}

func BenchmarkBuildNameIndex100k(b *testing.B) {
	names := inventedNames(100_000)
	for b.Loop() {
		NewNameIndex(names)
	}
}

// BenchmarkClientFile reads a client of twelve visits among many others.
func BenchmarkClientFile(b *testing.B) { benchmarkClientFile(b, mustOpen(b, newPath(b), Options{})) }

func benchmarkClientFile(b *testing.B, s *Store) {
	var f full
	for range 200 {
		f = fillClient(b, s, func(string) []byte { return formBody })
	}
	for range 11 {
		i := must(s.AddIntake(b.Context(), NewIntake{
			ClientID: f.client.ID, VisitDate: visitDay, Height: 168, Weight: 72, Body: formBody,
		}))(b)
		must(s.AddPlan(b.Context(), NewPlan{
			ClientID: f.client.ID, IntakeID: i.ID, Body: formBody, HandoutSettings: formBody,
		}))(b)
	}
	for b.Loop() {
		must(s.ClientFile(b.Context(), f.client.ID))(b)
	}
}

// BenchmarkOpen looks at, checks and opens a closed file of 2000 clients.
func BenchmarkOpen(b *testing.B) {
	path := newPath(b)
	s := mustOpen(b, path, Options{})
	for range 2000 {
		fillClient(b, s, func(string) []byte { return formBody })
	}
	mustClose(b, s)
	b.Logf("%d bytes", must(os.Stat(path))(b).Size())
	for b.Loop() {
		mustClose(b, must(Open(b.Context(), path, Options{}))(b))
	}
}

// BenchmarkDeleteClient deletes one client of a few hundred, wiping included.
func BenchmarkDeleteClient(b *testing.B) {
	s := mustOpen(b, newPath(b), Options{})
	for range 300 {
		fillClient(b, s, func(string) []byte { return formBody })
	}
	for b.Loop() {
		b.StopTimer()
		id := fillClient(b, s, func(string) []byte { return formBody }).client.ID
		b.StartTimer()
		if err := s.DeleteClient(b.Context(), id); err != nil {
			b.Fatal(err)
		}
	}
}

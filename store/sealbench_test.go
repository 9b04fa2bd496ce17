package store

import "testing"

// BenchmarkSaveDraftSealed is BenchmarkSaveDraft in a file with a passphrase:
// what sealing adds to a save.
func BenchmarkSaveDraftSealed(b *testing.B) {
	s, _, _ := sealedFile(b, 0)
	id := newClient(b, s)
	for b.Loop() {
		must(s.SaveDraft(b.Context(), id, FormIntake, formBody))(b)
	}
}

// BenchmarkSealOnly and BenchmarkPassThroughOnly are the same body without the
// disk.
func BenchmarkSealOnly(b *testing.B) {
	s, _, _ := sealedFile(b, 0)
	benchmarkSeal(b, s.sealer)
}

func BenchmarkPassThroughOnly(b *testing.B) { benchmarkSeal(b, PassThrough{}) }

func benchmarkSeal(b *testing.B, sealer Sealer) {
	b.SetBytes(int64(len(formBody)))
	for b.Loop() {
		must(sealer.Seal("draft", "client/form/id", "body", 7, formBody))(b)
	}
}

// BenchmarkClientFileSealed is BenchmarkClientFile in a file with a passphrase.
func BenchmarkClientFileSealed(b *testing.B) {
	s := mustOpen(b, newPath(b), quick())
	must(s.SetPassphrase(b.Context(), phrase, nil))(b)
	benchmarkClientFile(b, s)
}

// BenchmarkRotateKey changes the key of 2000 clients; BenchmarkFirstSealing
// gives them a passphrase.
func BenchmarkRotateKey(b *testing.B) {
	s, _, _ := sealedFile(b, 0)
	for range 2000 {
		fillClient(b, s, func(string) []byte { return formBody })
	}
	for b.Loop() {
		if err := s.RotateKey(b.Context(), nil); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFirstSealing(b *testing.B) {
	for b.Loop() {
		b.StopTimer()
		s := mustOpen(b, newPath(b), quick())
		for range 2000 {
			fillClient(b, s, func(string) []byte { return formBody })
		}
		b.StartTimer()
		must(s.SetPassphrase(b.Context(), phrase, nil))(b)
	}
}

// BenchmarkLock locks and unlocks; the passphrase costs nothing here, see
// BenchmarkUnlock of the vault.
func BenchmarkLock(b *testing.B) {
	s, _, _ := sealedFile(b, 0)
	for b.Loop() {
		s.Lock()
		if err := s.Unlock(b.Context(), phrase); err != nil {
			b.Fatal(err)
		}
	}
}
